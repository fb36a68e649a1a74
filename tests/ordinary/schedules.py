"""Twenty-eight finishing schedules that are done right every day: common practice, no source.

Each act is a line: how long after the one before, then what was done; of a coat on one face the
face. Waits are the cautious ends of the classes, longer by what 21 °C costs. Products are named by
what they are; nothing here is a real product.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import timedelta

# How long after the one before, what was done, and the one wood that it is done on.
Act = tuple[timedelta, str, str | None]


@dataclass(frozen=True)
class Schedule:
    """One schedule as it is done.

    `woods`: the first as named, the others suit as well and are done beside it. `products`: the
    class of each. `mixes`: what is mixed with what hardens it, right before each coat of it. An act
    that ends in `@WOOD` is done on that wood alone. `due`: the acts that its steps are made of,
    where others are done; `moisture_pct`: the wood was measured before all else.
    """

    number: int
    woods: tuple[str, ...]
    products: Mapping[str, str]
    acts: str
    mixes: Mapping[str, str] = field(default_factory=dict)
    due: str = ""
    moisture_pct: float | None = None

    @property
    def lines(self) -> tuple[Act, ...]:
        """Return how long after the one before, the words, and the one wood of every act."""
        return tuple(_act(line) for line in self.acts.strip().splitlines())

    def on(self, wood: str) -> Schedule:
        """Do it on one wood alone."""
        return self._with([n for n in self.lines if n[2] in {None, wood}], woods=(wood,))

    def without(self, words: str) -> Schedule:
        """Leave out every act of these words; the others keep their hours."""
        kept, waited = [], timedelta(0)
        for wait, what, wood in self.lines:
            waited += wait
            if what != words:
                kept.append((waited, what, wood))
                waited = timedelta(0)
        return self._with(kept)

    def waiting(self, wait: timedelta, words: str, times: int | None = None) -> Schedule:
        """Let acts of these words, one or every one, come so long after the one before instead."""
        at = self._places(words)
        late = at if times is None else at[times - 1 : times]
        return self._with(
            [(wait if n in late else each[0], *each[1:]) for n, each in enumerate(self.lines)]
        )

    def before(self, words: str, act: str, times: int = 1) -> Schedule:
        """Do one act more right before the act of these words that comes so many times."""
        at = self._places(words)[times - 1]
        return self._with([*self.lines[:at], _act(act), *self.lines[at:]])

    def up_to(self, words: str, times: int = 1) -> Schedule:
        """End with the act of these words that comes so many times."""
        return self._with(list(self.lines[: self._places(words)[times - 1] + 1]))

    def _places(self, words: str) -> list[int]:
        return [n for n, (_, what, _) in enumerate(self.lines) if what == words]

    def _with(self, acts: Sequence[Act], woods: tuple[str, ...] = ()) -> Schedule:
        lines = [
            f"{wait // timedelta(minutes=1)}m {what}{f' @{wood}' if wood else ''}"
            for wait, what, wood in acts
        ]
        return replace(self, acts="\n".join(lines), woods=woods or self.woods)


def _act(line: str) -> Act:
    wait, words = line.split(maxsplit=1)
    what, _, wood = words.partition(" @")
    unit = {"m": "minutes", "h": "hours", "d": "days"}[wait[-1]]
    return timedelta(**{unit: int(wait[:-1])}), what, wood or None


ORDINARY = (
    Schedule(
        1,
        ("oak", "ash"),
        {"stain": "wiping-stain", "clear": "waterborne-clear", "wax": "paste-wax"},
        """
        0m   sand
        30m  stain
        10m  wipe
        10d  clear
        9h   scuff
        5m   clear
        9h   scuff
        5m   clear
        36d  wax
        1h   wipe
        9d   pack
        """,
    ),
    Schedule(
        2,
        ("maple", "birch"),
        {
            "wash": "washcoat",
            "stain": "wiping-stain",
            "shellac": "shellac-2lb",
            "clear": "waterborne-clear",
        },
        """
        0m   sand
        30m  wash
        30h  stain
        10m  wipe
        30h  shellac
        30h  scuff
        5m   clear
        9h   scuff
        5m   clear
        9h   scuff
        5m   clear
        9d   pack
        """,
    ),
    Schedule(
        3,
        ("cherry", "maple"),
        {
            "dye": "water-dye",
            "shellac": "shellac-2lb",
            "glaze": "glaze",
            "thin": "shellac-1lb",
            "lacquer": "lacquer-sprayed",
            "wax": "paste-wax",
        },
        """
        0m   raise-grain
        14h  sand
        30m  dye
        30h  shellac
        30h  glaze
        15m  wipe
        30h  thin
        5h   lacquer
        3h   lacquer
        3h   lacquer
        36d  rub-out
        1h   wax
        1h   wipe
        9d   pack
        """,
    ),
    Schedule(
        4,
        ("mahogany", "walnut"),
        {"dye": "alcohol-dye", "sealer": "lacquer-sanding-sealer", "lacquer": "lacquer-sprayed"},
        """
        0m   sand
        30m  dye
        2h   sealer
        2h   scuff
        5m   lacquer
        3h   lacquer
        3h   lacquer
        9d   pack
        """,
    ),
    Schedule(
        5,
        ("pine", "poplar"),
        {"stain": "gel-stain", "urethane": "oil-polyurethane"},
        """
        0m   sand
        30m  stain
        4m   wipe
        3d   urethane
        2d   scuff
        5m   urethane
        2d   scuff
        5m   urethane
        9d   pack
        """,
    ),
    Schedule(
        6,
        ("walnut", "mahogany"),
        {"filler": "paste-filler", "varnish": "alkyd-varnish", "wax": "paste-wax"},
        """
        0m   sand
        30m  filler
        9m   wipe
        9d   sand
        5m   varnish
        3d   scuff
        5m   varnish
        3d   scuff
        5m   varnish
        3d   scuff
        5m   varnish
        36d  rub-out
        1h   wax
        1h   wipe
        9d   pack
        """,
    ),
    Schedule(
        7,
        ("walnut", "cherry"),
        {"tung": "tung-oil"},
        """
        0m   sand
        30m  tung
        30m  wipe
        9d   tung
        30m  wipe
        9d   tung
        30m  wipe
        9d   tung
        30m  wipe
        25d  pack
        """,
    ),
    Schedule(
        8,
        ("cherry", "walnut"),
        {"oil": "boiled-linseed-oil", "shellac": "shellac-2lb", "wax": "paste-wax"},
        """
        0m   sand
        30m  oil
        25m  wipe
        9d   shellac
        5h   shellac
        5h   shellac
        5h   shellac
        18d  wax
        1h   wipe
        18d  pack
        """,
    ),
    Schedule(
        9,
        ("walnut", "cherry"),
        {"blend": "oil-varnish-blend", "wax": "paste-wax"},
        """
        0m   sand
        30m  blend
        25m  wipe
        35m  wipe
        2d   blend
        25m  wipe
        2d   blend
        25m  wipe
        36d  wax
        1h   wipe
        9d   pack
        """,
    ),
    Schedule(
        10,
        ("oak", "walnut"),
        {"hardwax": "hardwax-oil"},
        """
        0m   sand
        30m  hardwax
        15m  wipe
        45m  wipe
        2d   hardwax
        15m  wipe
        9d   pack
        """,
    ),
    Schedule(
        11,
        ("ash", "oak"),
        {"hardwax": "hardwax-oil"},
        """
        0m   sand
        30m  hardwax
        15m  wipe
        45m  wipe
        9d   pack
        """,
        mixes={"hardwax": "oil:100ml hardener:10ml --use-by 4h"},
    ),
    Schedule(
        12,
        ("maple", "birch"),
        {"shellac": "shellac-2lb", "wax": "paste-wax"},
        """
        0m   sand
        30m  shellac
        5h   shellac
        5h   shellac
        15h  shellac
        5h   shellac
        5h   shellac
        18d  rub-out
        1h   wax
        1h   wipe
        9d   pack
        """,
    ),
    Schedule(
        13,
        ("rosewood", "mahogany"),
        {"polish": "french-polish"},
        """
        0m   sand
        30m  solvent-wipe @rosewood
        5m   polish
        30h  polish
        30h  polish
        30h  polish
        18d  pack
        """,
    ),
    Schedule(
        14,
        ("maple", "birch"),
        {"sealer": "vinyl-sealer", "conversion": "conversion-varnish"},
        """
        0m   sand
        30m  sealer
        90m  scuff
        2h   conversion
        110m conversion
        9d   pack
        """,
        mixes={"conversion": "varnish:500ml catalyst:50ml --use-by 24h"},
    ),
    Schedule(
        15,
        ("ash", "oak"),
        {"precat": "lacquer-precatalysed"},
        """
        0m   sand
        30m  precat
        3h   precat
        3h   precat
        9d   pack
        """,
    ),
    Schedule(
        16,
        ("white oak", "red oak"),
        {"reactive": "tannin-sealer", "clear": "waterborne-clear"},
        """
        0m   sand
        30m  reactive
        6h   clear
        9h   scuff
        5m   clear
        9d   pack
        """,
    ),
    Schedule(
        17,
        ("poplar", "pine"),
        {"milk": "milk-paint", "blend": "oil-varnish-blend"},
        """
        0m   sand
        30m  milk
        6h   milk
        4d   blend
        25m  wipe
        9d   pack
        """,
    ),
    Schedule(
        18,
        ("pine", "poplar"),
        {"primer": "pigmented-shellac", "enamel": "latex-enamel"},
        """
        0m   sand
        30m  primer
        30h  scuff
        5m   enamel
        30h  scuff
        5m   enamel
        18d  pack
        """,
    ),
    Schedule(
        19,
        ("poplar", "maple"),
        {"undercoat": "oil-enamel", "enamel": "oil-enamel"},
        """
        0m   sand
        30m  undercoat
        3d   scuff
        5m   enamel
        3d   scuff
        5m   enamel
        18d  pack
        """,
    ),
    Schedule(
        20,
        ("ash", "maple"),
        {"bleach": "bleach-two-part", "clear": "waterborne-clear"},
        """
        0m   sand
        30m  bleach
        10h  wipe
        10m  rinse
        4d   sand
        5m   clear
        9h   scuff
        5m   clear
        9h   scuff
        5m   clear
        9d   pack
        """,
    ),
    Schedule(
        21,
        ("oak", "walnut"),
        {"oxalic": "bleach-oxalic", "urethane": "oil-polyurethane"},
        """
        0m   sand
        30m  oxalic
        16h  rinse
        4d   sand
        5m   urethane
        2d   scuff
        5m   urethane
        2d   scuff
        5m   urethane
        9d   pack
        """,
    ),
    Schedule(
        22,
        ("beech", "ash"),
        {"soap": "soap"},
        """
        0m   sand
        30m  soap
        30h  soap
        30h  soap
        9d   pack
        """,
    ),
    Schedule(
        23,
        ("white oak", "teak"),
        {"spar": "spar-varnish"},
        """
        0m   sand
        30m  solvent-wipe @teak
        5m   spar
        3d   scuff
        5m   spar
        3d   scuff
        5m   spar
        3d   scuff
        5m   spar
        3d   scuff
        5m   spar
        3d   scuff
        5m   spar
        18d  pack
        """,
    ),
    Schedule(
        24,
        ("walnut", "maple"),
        {"clear": "waterborne-two-part"},
        """
        0m   sand
        30m  clear
        6h   scuff
        5m   clear
        6h   scuff
        5m   clear
        9d   pack
        """,
        mixes={"clear": "base:500ml crosslinker:25ml"},
    ),
    Schedule(
        25,
        ("ash", "maple"),
        {"clear": "waterborne-clear"},
        """
        0m   sand
        30m  clear back
        285m clear front
        19h  scuff
        5m   clear back
        285m clear front
        19h  scuff
        5m   clear back
        285m clear front
        9d   pack
        """,
    ),
    Schedule(
        26,
        ("teak", "rosewood"),
        {"shellac": "shellac-1lb", "varnish": "alkyd-varnish"},
        """
        0m   sand
        30m  solvent-wipe
        10m  shellac
        30h  scuff
        5m   varnish
        3d   scuff
        5m   varnish
        3d   scuff
        5m   varnish
        9d   pack
        """,
    ),
    # A painted door.
    Schedule(
        27,
        ("poplar", "maple"),
        {"primer": "acrylic-primer", "enamel": "latex-enamel"},
        """
        0m   sand
        30m  primer
        30h  scuff
        5m   enamel
        30h  scuff
        5m   enamel
        18d  pack
        """,
    ),
    # A knot in a top, filled with tinted epoxy; the spot is washed, then all of it sanded.
    Schedule(
        28,
        ("walnut", "cherry"),
        {"resin": "epoxy-filler", "varnish": "wiping-varnish"},
        """
        0m   sand
        30m  resin
        9d   rinse
        14h  sand
        5m   varnish
        2d   scuff
        5m   varnish
        2d   scuff
        5m   varnish
        9d   pack
        """,
        mixes={"resin": "base:10ml hardener:5ml"},
    ),
)
