"""What a wood does to a finish: pores, tannin, oil, pitch, blotching; and how far it moves."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from enum import StrEnum

from finishlog.core.findings import Level
from finishlog.core.finish.classes import Figure, FinishClass, Limit, Method, Published
from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.overcoat import OvercoatAnswer, named_by


class Pores(StrEnum):
    """How the pores lie in the growth ring (Wood Handbook table 16-1)."""

    RING = "ring"
    SEMI_RING = "semi-ring"
    DIFFUSE = "diffuse"
    SOFTWOOD = "softwood"


class WantsFiller(StrEnum):
    """Whether a smooth finish needs its pores filled."""

    YES = "yes"
    NO = "no"
    DEPENDS = "depends"


class Tannin(StrEnum):
    """How much tannin a wood holds for iron, alkali and reactive sealers to find."""

    YES = "yes"
    SOME = "some"
    NO = "no"
    UNKNOWN = "not known"


class WoodKind(StrEnum):
    """What a first coat dries on: only oil and resin keep it soft of themselves."""

    OILY = "oily"
    RESINOUS = "resinous"
    OTHER = "other"


class Condition(StrEnum):
    """What may be on or in a piece of wood whatever its species; some rules hold only then."""

    STEEL_WOOL = "steel wool or iron"
    IRON_STAIN = "iron stain"
    STEARATE = "stearated paper"
    SILICONE = "silicone polish"
    SQUEEZE_OUT = "glue squeeze-out"
    END_GRAIN = "end grain"
    KNOTS = "knots"
    PITCH = "pitch not set"
    COLD = "colder than the room"
    # Another wood, paler, in the same piece.
    PALE_BESIDE = "pale wood beside it"


class Species(Published, frozen=True):
    """One wood as a finisher meets it; every property with the source that backs it.

    `radial_per_pct`, `tangential_per_pct`: change of width per unit of width for each percent of
    moisture content, across a quarter-sawn and a flat-sawn board, from 6 to 14 % (Wood Handbook
    equation 13-2 and table 13-5); None where no value is held.
    """

    key: str
    name: str
    aliases: tuple[str, ...]
    pores: Pores
    pores_source: str
    wants_filler: WantsFiller
    wants_filler_source: str
    tannin: Tannin
    tannin_source: str
    oily: bool
    oily_source: str
    blotches: bool
    blotches_source: str
    pitchy: bool
    pitchy_source: str
    radial_per_pct: Limit | None = None
    tangential_per_pct: Limit | None = None
    note: str = ""
    # Which safety notes its dust brings.
    dust: Hazard = Hazard.DUST

    @property
    def has_coarse_pores(self) -> bool:
        """Tell whether its pores are so wide that a smooth finish wants them filled.

        Ring-porous or not: wide vessels that lie all over the ring breathe and bleed as well.
        """
        return self.wants_filler is WantsFiller.YES

    @property
    def has_open_pores(self) -> bool:
        """Tell whether pores stand open, at the least in its early wood."""
        return self.has_coarse_pores or self.pores in {Pores.RING, Pores.SEMI_RING}

    @property
    def traits(self) -> frozenset[str]:
        """Name what rules about wood speak of.

        Where the tannin is not known, both cautions hold: iron may stain it, and a reactive
        sealer may not colour it.
        """
        found = {
            "any": True,
            "oily": self.oily,
            "blotches": self.blotches,
            "pitchy": self.pitchy,
            "tannin": self.tannin is not Tannin.NO,
            "low-tannin": self.tannin in {Tannin.NO, Tannin.UNKNOWN},
            self.key: True,
        }
        return frozenset(trait for trait, holds in found.items() if holds)

    @property
    def kind(self) -> WoodKind:
        """What kind of wood it is to a first coat."""
        if self.oily:
            return WoodKind.OILY
        return WoodKind.RESINOUS if self.pitchy else WoodKind.OTHER


class WoodRule(Published, frozen=True):
    """What a wood does to a coat on it.

    `wood` holds traits (`oily`, `blotches`, `pitchy`, `tannin`, `low-tannin`, `any`) or species
    keys; `over` as in an overcoat rule. `only_with`: it holds only there. `wait` is hours before
    the coat, when any. `instead`: what to take, before it is done. `weighs`: how much a finding of
    it weighs; None: what its answer says.
    `methods`: it holds only for a coat put on so.
    """

    id: str
    wood: tuple[str, ...]
    over: tuple[str, ...]
    answer: OvercoatAnswer
    reason: str
    source: str
    remedy: str = ""
    instead: str = ""
    barrier: tuple[str, ...] = ()
    only_with: Condition | None = None
    wait: Figure | None = None
    weighs: Level | None = None
    methods: tuple[Method, ...] = ()

    @property
    def is_for_oily(self) -> bool:
        """Tell whether it is about oily woods."""
        return "oily" in self.wood


def rules_for_wood(
    rules: Iterable[WoodRule],
    wood: Species,
    over: FinishClass,
    conditions: Collection[Condition] = (),
) -> tuple[WoodRule, ...]:
    """Select every rule that speaks of this class on this wood, in the order of `rules`.

    A rule that holds only under a condition speaks where that is one of `conditions`.
    """
    return tuple(
        rule
        for rule in rules
        if wood.traits & set(rule.wood)
        and named_by(rule.over, over) is not None
        and (rule.only_with is None or rule.only_with in conditions)
    )


# Sheet goods show their face: birch plywood takes a finish as birch does. It moves otherwise.
_SHEET = frozenset(
    {"plywood", "ply", "veneer", "veneers", "veneered", "mdf", "blockboard", "chipboard", "board"}
)


def face_wood(text: str) -> str:
    """Name the wood that a sheet shows: `birch-plywood 18mm` is birch; a solid wood is itself.

    Empty of a sheet that does not say: `veneer`.
    """
    words = " ".join(text.casefold().replace("-", " ").replace(",", " ").split()).split()
    while words and (words[-1] in _SHEET or words[-1][:1].isdecimal()):
        words.pop()
    return " ".join(words)


_PORES = {
    Pores.RING: "is ring-porous",
    Pores.SEMI_RING: "is semi-ring-porous",
    Pores.DIFFUSE: "is diffuse-porous",
    Pores.SOFTWOOD: "is a softwood",
}
_TANNIN = {
    Tannin.YES: "has tannin",
    Tannin.SOME: "has some tannin",
    Tannin.NO: "has no tannin",
    Tannin.UNKNOWN: "may have tannin",
}


def what_differs(wood: Species, before: Species) -> tuple[str, ...]:
    """Say in what a wood differs from another: pores, tannin, oil, blotching, pitch."""
    pairs = (
        (wood.pores, before.pores, _PORES[wood.pores]),
        (wood.tannin, before.tannin, _TANNIN[wood.tannin]),
        (wood.oily, before.oily, "is oily" if wood.oily else "is not oily"),
        (wood.blotches, before.blotches, "blotches" if wood.blotches else "does not blotch"),
        (wood.pitchy, before.pitchy, "has pitch" if wood.pitchy else "has no pitch"),
    )
    return tuple(words for mine, theirs, words in pairs if mine != theirs)
