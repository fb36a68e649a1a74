"""What happened: the log as values.

Every instant is an aware UTC datetime. A vague time ("this evening") is a span: `earliest` to
`latest`. Waits count from the latest, windows and rags from the earliest.
"""

from __future__ import annotations

from datetime import datetime
from enum import StrEnum
from typing import NamedTuple

from msgspec import Struct

from finishlog.core.air.psychrometrics import Air
from finishlog.core.finish.classes import FigureSet, Method

# No work of ours was or will be done outside of these years; a date there is a slip.
OUR_YEARS = range(1970, 2200)


class Sureness(StrEnum):
    """How exactly a time is known."""

    EXACT = "exact"
    ABOUT = "about"
    PART_OF_DAY = "that part of the day"


class When(Struct, frozen=True):
    """The time of the work, not of the typing."""

    earliest: datetime
    latest: datetime
    sureness: Sureness = Sureness.EXACT
    tie: int = 0

    @property
    def order(self) -> tuple[datetime, int]:
        """Sort by the time of the work; ties in the order they were typed."""
        return (self.latest, self.tie)


def at(moment: datetime, tie: int = 0) -> When:
    """Build an exactly known time."""
    return When(moment, moment, Sureness.EXACT, tie)


class Target(NamedTuple):
    """One zone of one piece, by database id."""

    piece: int
    zone: int


class Operation(StrEnum):
    """What is done to a part; the words of steps and of `log`."""

    COAT = "coat"
    SAND = "sand"
    RAISE_GRAIN = "raise-grain"
    DENIB = "denib"
    SCUFF = "scuff"
    MASK = "mask"
    UNTAPE = "untape"
    WIPE = "wipe"
    BUFF = "buff"
    RUB = "rub-out"
    GLUE_UP = "glue-up"
    HARDWARE = "hardware"
    # Wiped with solvent right before a coat (oily wood): the coat must follow within minutes.
    SOLVENT_WIPE = "solvent-wipe"
    RINSE = "rinse"
    STEEL_WOOL = "steel-wool"
    # A fault made good.
    MEND = "mend"
    # A joint cut flush after it was glued up.
    LEVEL = "level"
    SUN = "sun"
    STACK = "stack"
    PACK = "pack"
    # Put to use: loaded, stood on, set with things.
    USE = "use"


class Test(StrEnum):
    """How a film was tested."""

    __test__ = False  # not a pytest class

    TOUCH = "touch"
    THUMBNAIL = "thumbnail"
    SAND = "sand"
    SMELL = "smell"
    SCRATCH = "scratch"


class Found(StrEnum):
    """What a test found. The first four are failures; for what each blocks see film.checks."""

    TACKY = "tacky"
    GUMS = "gums"
    PRINTS = "prints"
    SMELLS = "smells"
    FLAKES = "flakes"
    DRY = "dry"
    NO_PRINT = "no-print"
    POWDER = "powder"
    NO_SMELL = "no-smell"
    HOLDS = "holds"


class RagsDeed(StrEnum):
    """What was done with oily rags."""

    SPREAD = "spread"
    WATER = "water"
    LIFTED = "lifted"
    CAN = "can"
    STIFF = "stiff"
    GONE = "gone"


class FaultKind(StrEnum):
    """What went wrong with a film; what each means stands in facts/data/faults.toml."""

    RUN = "run"
    BLUSH = "blush"
    FISHEYE = "fisheye"
    WRINKLE = "wrinkle"
    BLISTER = "blister"
    BUBBLE = "bubble"
    PEEL = "peel"
    CRAZE = "craze"
    DUST = "dust"
    BRUSH_MARK = "brush-mark"
    ORANGE_PEEL = "orange-peel"
    LAP_MARK = "lap-mark"
    BLOTCH = "blotch"
    WRONG_COLOUR = "wrong-colour"
    WRONG_SHEEN = "wrong-sheen"
    LEFT_THICK = "left-thick"
    BLEED_BACK = "bleed-back"
    RUBBED_THROUGH = "rubbed-through"
    PRINT_MARK = "print-mark"
    DENT = "dent"
    GLUE_SPOT = "glue-spot"
    OPEN_JOINT = "open-joint"
    CUPPED = "cupped"
    OTHER = "other"


class Stripping(StrEnum):
    """How a film comes off."""

    STRIP = "strip"
    SAND_THROUGH = "sand-through"
    SCRAPE = "scrape"
    WASH = "wash"


class ContainerDeed(StrEnum):
    """What is done with a can, mix or jar, or what befell it."""

    OPENED = "opened"
    MIXED = "mixed"
    TOPPED_UP = "topped-up"
    FROZEN = "frozen"
    TESTED = "tested"
    CONDEMNED = "condemned"
    EMPTIED = "emptied"
    THROWN_OUT = "thrown-out"


class Outcome(StrEnum):
    """How a finish came out."""

    GOOD = "good"
    FAIR = "fair"
    FAILED = "failed"


class Entry(Struct, frozen=True, kw_only=True):
    """One thing that happened. `targets` are the zones that it reached."""

    id: int
    act: int
    when: When
    typed_at: datetime
    targets: frozenset[Target] = frozenset()


class Coat(Entry, frozen=True, kw_only=True):
    """One application of a product."""

    product: int
    product_name: str
    figures: FigureSet
    method: Method | None = None
    # None: not said. Assumed not done where it matters.
    scuffed_before: bool | None = None
    wet_film_um: float | None = None
    # The can, mix or jar that it came from, when that was said.
    container: int | None = None
    hands_on_min: float | None = None
    note: str = ""


class Work(Entry, frozen=True, kw_only=True):
    """Anything done by hand that is not a coat."""

    operation: Operation
    grit: str = ""
    note: str = ""


class Check(Entry, frozen=True, kw_only=True):
    """A test made on a film."""

    test: Test
    found: Found
    note: str = ""


class Fault(Entry, frozen=True, kw_only=True):
    """What went wrong, where on the piece, and what was done about it."""

    what: FaultKind
    place: str = ""
    remedy: str = ""


class Stripped(Entry, frozen=True, kw_only=True):
    """A film taken off: to bare wood, or down to the coat entry `survives`."""

    operation: Stripping
    survives: int | None = None
    note: str = ""


class Joined(Entry, frozen=True, kw_only=True):
    """Pieces glued up into one piece of an assembly."""

    into: int
    members: frozenset[int]
    # Key of the glue in facts/data/glues.toml; empty: not said.
    glue: str = ""


class Moved(Entry, frozen=True, kw_only=True):
    """Pieces carried into a room."""

    pieces: frozenset[int]
    room: int


class Reading(Entry, frozen=True, kw_only=True):
    """Temperature and humidity of a room."""

    room: int
    air: Air
    # As read, where the humidity was worked out from it.
    wet_bulb_c: float | None = None
    # Only a thermometer was read: how much water the air holds is supposed.
    humidity_supposed: bool = False


class AirImported(Entry, frozen=True, kw_only=True):
    """The readings of a logger's file, `count` of them, between `when.earliest` and `latest`."""

    room: int
    file_name: str
    count: int


class PieceReading(Entry, frozen=True, kw_only=True):
    """The temperature of a piece's surface (°C), or the moisture of its wood (%)."""

    temperature_c: float | None = None
    moisture_pct: float | None = None


class Heated(Entry, frozen=True, kw_only=True):
    """A heater that runs for once, from `when.earliest` to `when.latest`; may lie in the future.

    `temperature_c` None: as warm as the room gets when it is heated.
    """

    room: int
    temperature_c: float | None = None


class RagsEvent(Entry, frozen=True, kw_only=True):
    """Something done with rags. `item` names one item by its first coat's entry; None: all open."""

    deed: RagsDeed
    item: int | None = None


class SetAside(Entry, frozen=True, kw_only=True):
    """Work on a part stops on purpose; `reason` also says what was meant to come next."""

    reason: str = ""


class Resumed(Entry, frozen=True, kw_only=True):
    """Work on a part goes on."""


class Note(Entry, frozen=True, kw_only=True):
    """Words about a part, or an outcome."""

    text: str
    outcome: bool = False


class ContainerEvent(Entry, frozen=True, kw_only=True):
    """Something done with a can, mix or jar, or that befell it."""

    container: int
    deed: ContainerDeed
    note: str = ""


class Away(Entry, frozen=True, kw_only=True):
    """The shop stands shut from `when.earliest` to `when.latest`."""

    reason: str = ""


class HandedOver(Entry, frozen=True, kw_only=True):
    """A piece left the shop."""

    note: str = ""


class Review(Entry, frozen=True, kw_only=True):
    """How a finish came out, at hand-over or later."""

    outcome: Outcome
    text: str = ""


class Photo(Entry, frozen=True, kw_only=True):
    """A picture, by where its file lies; the file itself is not kept."""

    path: str
    note: str = ""


AnyEntry = (
    Coat
    | Work
    | Check
    | Fault
    | Stripped
    | Joined
    | Moved
    | Reading
    | AirImported
    | PieceReading
    | Heated
    | ContainerEvent
    | RagsEvent
    | Away
    | SetAside
    | Resumed
    | HandedOver
    | Review
    | Note
    | Photo
)
