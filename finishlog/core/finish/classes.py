"""A generic finish: its figures, its recoat window, its limits.

Facts fill these from published tables; a person's label overrides single figures. Hours are
hours at the reference air, temperatures °C, humidity % RH.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from itertools import pairwise
from typing import Annotated

import msgspec
from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.psychrometrics import STANDARD_AIR, Air
from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.stages import Stage
from finishlog.core.measure.as_written import WRITTEN_TO

COMMON_PRACTICE = "common practice"
FROM_MEMORY = "from memory"
YOUR_CAN = "your can"
YOUR_LOG = "your log"


class Mechanism(StrEnum):
    """What makes the film dry; it decides the rate law (core.finish.rate_law)."""

    OXIDATION = "oxidation"
    CROSS_LINKING = "cross-linking"
    WATER = "water leaving"
    ALCOHOL = "alcohol leaving"
    SOLVENT = "solvent leaving"
    # It soaks in and never dries; no air hastens it.
    SOAKING = "soaking in"


# What is hard as soon as it has let go of its solvent; nothing in it reacts.
EVAPORATES = frozenset({Mechanism.WATER, Mechanism.ALCOHOL, Mechanism.SOLVENT})


class WindowKind(StrEnum):
    """What happens to the recoat window as the film ages."""

    MELTS_IN = "melts in for ever"
    CLOSES = "closes at a time"
    ALWAYS_SCUFF = "always scuff"
    NOT_APPLICABLE = "not applicable"


class Sheen(StrEnum):
    """How a finish shines: the traditional names of the gloss levels 1 to 7 (MPI, ASTM D523)."""

    MATTE = "matte"
    VELVET = "velvet"
    EGGSHELL = "eggshell"
    SATIN = "satin"
    SEMI_GLOSS = "semi-gloss"
    GLOSS = "gloss"
    HIGH_GLOSS = "high-gloss"


class Method(StrEnum):
    """How a coat is put on."""

    BRUSH = "brush"
    WIPE = "wipe"
    SPRAY = "spray"


class Published(msgspec.Struct, frozen=True, forbid_unknown_fields=True, gc=False):
    """A published value, decoded from the facts: a key that is no field of it is refused."""


NotNegative = Annotated[float, msgspec.Meta(ge=0)]


def in_order(*ends: float) -> None:
    """Refuse the ends of a range that are turned round."""
    if list(ends) != sorted(ends):
        raise ValueError(f"{', '.join(map(str, ends))} are not in order")


class Colder(Published, frozen=True, array_like=True):
    """Hours to the same stage in colder air, as a can prints a row for each temperature."""

    temperature_c: float
    low_h: NotNegative
    typical_h: NotNegative
    high_h: NotNegative

    def __post_init__(self) -> None:
        in_order(self.low_h, self.typical_h, self.high_h)


class Figure(Published, frozen=True):
    """Hours to a stage at the reference air; the cautious end of the range is the promise.

    `colder`: the same in colder air, from the warmer to the colder, no hours shorter than in warmer
    air; `at` is the warmest.
    `source` is a source id of facts/data, `common practice`, `from memory` or `your can`.
    `also` holds readings of other sources that differ: shown, not used. One that is longer speaks
    of another thing, and its note says of which.
    """

    low_h: NotNegative
    typical_h: NotNegative
    high_h: NotNegative
    source: str
    at: Air = STANDARD_AIR
    note: str = ""
    also: tuple[Figure, ...] = ()
    colder: tuple[Colder, ...] = ()

    def __post_init__(self) -> None:
        in_order(self.low_h, self.typical_h, self.high_h)
        if self.colder:
            if any(cold >= warm for warm, cold in pairwise(self.at_c)):
                raise ValueError(f"{self.at_c}: rows are not in order from the warmest")
            in_order(*(row.low_h for row in self.rows))
            in_order(*(row.typical_h for row in self.rows))
            in_order(*(row.high_h for row in self.rows))

    @property
    def rows(self) -> tuple[Figure | Colder, ...]:
        """Its hours in each of its airs, from the warmest."""
        return (self, *self.colder)

    @property
    def at_c(self) -> tuple[float, ...]:
        """The temperatures (°C) that it speaks of, from the warmest."""
        return (self.at.temperature_c, *(row.temperature_c for row in self.colder))

    def times(self, factor: float) -> Figure:
        """Return it with all its hours multiplied."""
        low, usual, high = (factor * h for h in (self.low_h, self.typical_h, self.high_h))
        colder = tuple(
            Colder(
                row.temperature_c, factor * row.low_h, factor * row.typical_h, factor * row.high_h
            )
            for row in self.colder
        )
        return replace(self, low_h=low, typical_h=usual, high_h=high, colder=colder)

    @property
    def low_end(self) -> Figure:
        """The same with its early end for its end."""
        low = self.low_h
        colder = tuple(Colder(row.temperature_c, *3 * (row.low_h,)) for row in self.colder)
        return replace(self, typical_h=low, high_h=low, colder=colder)

    @property
    def usual(self) -> Figure:
        """The same with its usual hours for both ends."""
        usual = self.typical_h
        colder = tuple(Colder(row.temperature_c, *3 * (row.typical_h,)) for row in self.colder)
        return replace(self, low_h=usual, high_h=usual, colder=colder)

    @property
    def is_span(self) -> bool:
        """Tell whether its two ends differ, in any of its airs."""
        return any(row.low_h < row.high_h for row in self.rows)

    @property
    def sooner(self) -> tuple[Figure, ...]:
        """What other sources call enough and this one does not: none where they agree."""
        return tuple(other for other in self.also if other.high_h < self.high_h)


class Range(Published, frozen=True):
    """A published quantity that is no time; the field that holds it names its unit.

    `also` holds readings of other sources that differ: shown, not used.
    """

    low: NotNegative
    high: NotNegative
    source: str
    note: str = ""
    also: tuple[Range, ...] = ()

    def __post_init__(self) -> None:
        in_order(self.low, self.high)


class Reopening(Published, frozen=True):
    """The second part of a window with a gap: from when a coat may go on again, and how.

    `closes`: until when; None: for good. `scuffed`: the film is scuffed for it.
    """

    opens: Figure
    closes: Figure | None = None
    scuffed: bool = False

    def __post_init__(self) -> None:
        if self.closes is not None:
            in_order(self.opens.low_h, self.closes.low_h)


class RecoatWindow(Published, frozen=True):
    """Until when a next coat bonds without scuffing. `closes` only where the kind is CLOSES.

    `again`: it opens once more after a gap in which nothing goes on, scuffed or not.
    """

    kind: WindowKind
    source: str
    closes: Figure | None = None
    note: str = ""
    again: Reopening | None = None

    def __post_init__(self) -> None:
        if (self.closes is not None) != (self.kind is WindowKind.CLOSES):
            raise ValueError("`closes` belongs to a window that closes, and to no other")
        if self.again is not None:
            if self.closes is None:
                raise ValueError("only a window that closes opens again")
            in_order(self.closes.low_h, self.again.opens.low_h)


class Limit(Published, frozen=True):
    """One bound of the air for putting on a coat and for its first hours."""

    value: float
    source: str

    @property
    def least(self) -> float:
        """What is below this lies under a lower bound: 12.8 °C is a label's 55 °F, rounded."""
        return self.value - WRITTEN_TO

    @property
    def most(self) -> float:
        """What is above this lies over an upper bound: 32.2 °C is a label's 90 °F, rounded."""
        return self.value + WRITTEN_TO


class Limits(Published, frozen=True):
    """The air in which a coat may go on. `None` means that no source gives a bound."""

    min_c: Limit | None = None
    max_c: Limit | None = None
    max_rh_pct: Limit | None = None
    # Cold within so many hours damages the film for good (waterborne, catalysed).
    warm_first_h: Limit | None = None
    # Evaporation chills the film: the two published blush rules (they contradict; both are shown).
    blush_rh_pct: Limit | None = None
    blush_dew_gap_c: Limit | None = None
    # From how cold on finishers use it all the same, against the least that is published.
    tried_from_c: Limit | None = None


class LeftOnTop(Published, frozen=True):
    """What a cure leaves on a film, to be washed off before it is sanded and coated.

    `wash`: with what, `spoils`: what becomes of a coat over it. `colder_c`, `damper_pct`: beyond
    these there is the more of it; it may be there, and not seen, in any air. `id`: by which the
    person says that of their product it does not hold.
    """

    id: str
    name: str
    wash: str
    spoils: str
    colder_c: Limit
    damper_pct: Limit
    source: str
    note: str = ""


class FinishClass(Published, frozen=True):
    """One generic class of finish, as facts/data/classes holds it."""

    key: str
    name: str
    family: str
    mechanism: Mechanism
    carrier: str
    builds_film: bool
    stages: Mapping[Stage, Figure]
    window: RecoatWindow
    limits: Limits
    methods: tuple[Method, ...]
    self_heating: bool
    self_heating_source: str
    # It holds by a scuffed or melting film below; wax lies on any (common practice).
    needs_tooth: bool = True
    # Past the window even a scuffed film may wrinkle until it is fully hard: who says so.
    wrinkles_when_late_source: str | None = None
    # It smells for months where no air moves: not inside drawers and cases, and who says so.
    not_inside_closed_source: str | None = None
    # It fills holes and covers nothing of the face beside them.
    fills_spots: bool = False
    # What its cure leaves on it; None: nothing.
    left_on_top: LeftOnTop | None = None
    # What people call it beside its name.
    aliases: tuple[str, ...] = ()
    # Its kind was not told: the classes that it may be, by key.
    may_be: tuple[str, ...] = ()
    hazards: tuple[Hazard, ...] = ()
    topcoat: bool = True
    # Surplus comes off within these hours of the coat (filler, stain, oil).
    wipe_off_h: Figure | None = None
    coats: str = ""
    abrade: str = ""
    notes: tuple[str, ...] = ()
    # Published readings that are not a stage of ours, kept to be shown and checked.
    readings: Mapping[str, Figure] = {}
    # How long an opened container keeps, in days, and a mix, in hours (mixed or catalysed only).
    shelf_opened_d: Range | None = None
    pot_life_h: Figure | None = None
    # Hardener in % of the rest, without which it never becomes a film; None: it needs none.
    hardener_pct: Range | None = None
    # One coat covers so much, at so thick a wet film; what stays of it when dry, by volume and,
    # where a specification prints that, by weight. A film thicker than the limit is at risk.
    spread_m2_per_l: Range | None = None
    wet_film_um: Range | None = None
    solids_vol_pct: Range | None = None
    solids_wt_pct: Range | None = None
    dry_film_limit_um: Range | None = None
    # Thicker at once it runs hot as it cures; None: no heat of its own to speak of.
    most_at_once_um: Range | None = None
    # So many coats within a day, and in all one upon the other, are usual at most.
    daily_coats: Range | None = None
    most_coats: Range | None = None

    @property
    def dries(self) -> bool:
        """Tell whether it dries at all: what only soaks in heeds no air, and is used next day."""
        return self.mechanism is not Mechanism.SOAKING

    @property
    def is_colour(self) -> bool:
        """Tell whether it is put on for its colour, under a clear finish."""
        return self.family in {"stain", "dye", "glaze", "chemical"} or self.key == "toner"

    @property
    def is_paint(self) -> bool:
        """Tell whether it covers the wood with its own colour, and is itself put under a finish."""
        return self.family == "paint"

    @property
    def goes_on_last(self) -> bool:
        """Tell whether it is the very last layer, which is no coat and waits for none."""
        return self.family == "wax"

    @property
    def after_rinse(self) -> Figure | None:
        """The hours that the wood dries after this was rinsed out of it; None: it is not."""
        return self.readings.get("after-rinse")


class FigureSet(Struct, frozen=True):
    """The figures one coat is judged by: the class's, overridden by the person's label.

    Kept with the coat for ever: a later label or a later edition of the facts does not rewrite it.
    """

    class_key: str
    facts_version: str
    stages: Mapping[Stage, Figure]
    window: RecoatWindow


def judged_by(
    of: FinishClass,
    label: Mapping[Stage, Figure],
    label_window: RecoatWindow | None,
    facts_version: str,
) -> FigureSet:
    """Lay the label's figures over the class's."""
    window = label_window or of.window
    return FigureSet(
        class_key=of.key,
        facts_version=facts_version,
        stages={**of.stages, **_scuffed_from(of, label, window), **label},
        window=window,
    )


def _scuffed_from(
    of: FinishClass, told: Mapping[Stage, Figure], window: RecoatWindow
) -> Mapping[Stage, Figure]:
    """Return from when scuffing may be tried where the can tells a recoat alone.

    A can that says "recoat after 6 h" says nothing of paper: its class still scuffs every coat, by
    its own hours, but from the can's hours on a spot may be tried, and sands to powder or does not.
    common practice
    """
    recoat, sand = told.get(Stage.RECOAT), of.stages.get(Stage.SAND)
    if window.kind is not WindowKind.ALWAYS_SCUFF or recoat is None or sand is None:
        return {}
    if Stage.SAND in told or recoat.low_h >= sand.low_h:
        return {}
    return {Stage.SAND: replace(sand, low_h=recoat.low_h)}
