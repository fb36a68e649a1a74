"""A finding: one thing that a rule has to say of a zone, as a value; its words stand at the edge.

Whatever decides is a field here. Severity (`Level`) and what it answers to an act (`Answer`) are
two things: a note may bind, and a stop may only be something to know.
"""

from __future__ import annotations

from datetime import datetime, timedelta
from enum import StrEnum

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.finish.stage_time import StageTime
from finishlog.core.measure.compared import Compared

# Comes with every advice to warm something: solvent vapour finds a flame or a motor.
NO_FLAME = "no flame, glowing wire or blower in the vapour"


# Rules that another one asks after.
AIR_UNREAD = "air-unread"
BLUSH = "blush"
NIGHT_UNTOLD = "night-untold"
HEATER_UNTOLD = "heater-untold"
PLACE_UNTOLD = "place-untold"
SIZE_UNTOLD = "size-untold"
FLAME = "flame"
SPARKS = "sparks"
AT_HOME = "at-home"
POT_LIFE = "pot-life"
WOOD_WARMS_UP = "wood-warms-up"
PAIR = "pair"
WHICH_KIND = "which-kind"
NO_SCUFFING = "no-scuffing"
WENT_WRONG_BEFORE = "went-wrong-before"
COATS_A_DAY = "coats-a-day"
BROKEN_OFF = "broken-off"
KEPT_TOO_YOUNG = "kept-too-young"
OVER_ITS_LIMIT = "over-its-limit"
LEFT_IN_PART = "left-in-part"
DIRTY_JOINT = "dirty-joint"
GLUE_FACE_OLD = "glue-face-old"
PASSED_TOO_SOON = "passed-too-soon"
CARTRIDGE = "cartridge"
# Notes that ask: they stand in sight, once.
TOLD_ONCE = frozenset({"look-first", "stirred-untold", "two-batches"})
# What the person ends at once: undated, it yields to a film that is not dry by then.
OF_TONIGHT = frozenset({FLAME})
# What hurts people: before all else of its level that an act is told.
HURTS = frozenset(
    {
        FLAME,
        "heater",
        SPARKS,
        AT_HOME,
        "reacts",
        "poison-made",
        "makes-poison",
        "dust-of-bleach",
        "lead",
        "lead-found",
        "isocyanate-sprayed",
        "isocyanate-dust",
        "chlorinated-indoors",
        "cartridge",
        "isocyanate-heated",
        "by-your-sheet",
        "chromate-dust",
    }
)


class Level(StrEnum):
    """How much a finding weighs: its words and its colour, never its place in the order."""

    NOTE = "note"
    CAUTION = "caution"
    STOP = "stop"


class Act(StrEnum):
    """What a person may want to do with a zone; `work`: by hand, what asks nothing of the film."""

    COAT = "coat"
    WIPE = "wipe"
    SAND = "sand"
    SCUFF = "scuff"
    WORK = "work"
    TURN = "turn"
    CLAMP = "clamp"
    GLUE_UP = "glue-up"
    STACK = "stack"
    PACK = "pack"
    CLOSE = "close"
    USE = "use"
    RUB = "rub"
    STORE = "store"
    HAND_OVER = "hand-over"
    TAKE_OFF = "take-off"
    # Nothing: it is left as it is.
    REST = "rest"


class Answer(StrEnum):
    """May the next step be done on this zone now?"""

    GO = "go"
    SCUFF = "go after scuffing"
    TEST = "test first"
    DRYING = "drying"
    DEAD_ZONE = "dead zone"
    NOT_IN_THIS_AIR = "not in this air"
    BLOCKED = "blocked"
    STALLED = "stalled"
    SUSPECT = "suspect"
    UNDERNEATH = "stopped by what is underneath"
    WAITS = "waits for"
    DEADLINE = "hard deadline running"
    SET_ASIDE = "set aside"
    DONE = "done"


class Deed(StrEnum):
    """What to do about an answer, in a word, where it is not the next step."""

    NEXT_STEP = ""
    WIPE_OFF = "wipe off"
    MEND = "mend"
    COAT = "coat"
    CHECK_AGAIN = "check again"
    OTHERWISE = "do it otherwise"
    LEAVE = "leave it"


class In(StrEnum):
    """What a figure of a finding is counted in, inside."""

    CELSIUS = "celsius"
    APART_CELSIUS = "apart_celsius"
    PCT = "pct"
    HOURS = "hours"
    MINUTES = "minutes"
    DAYS = "days"
    MICROMETRES = "micrometres"
    COUNT = "count"


class Figured(Struct, frozen=True):
    """One figure that was measured, or is wanted."""

    value: float
    unit: In


# What else the words of a finding name: a product, a wood, a moment, words of a published row.
Value = str | float | datetime | timedelta | tuple[str, ...] | None


class Finding(Compared, frozen=True):
    """One thing that a rule found: how much it weighs, what it answers, until when, by what.

    `rule`: its id, by which the edge words it; `measured` and `wanted`, and what else its words
    name, are values in `says`. `answer`: what it says to the act that was asked, None: it is only
    to be known; `high` (UTC) when that ends, by the clock `wait` where one counts it, None: no
    date ends it. `closes`: by when something must be done. `mended_by`: what its own remedy names,
    by `Asked.does`, beside what its rule names.
    `scuff`: the film is to be scuffed first. `plain`: the answer itself tells it, and it is not
    listed beside. `acts`: what it rests on, by their numbers. `on` names the parts that it is
    about, where an act named several things or one; `room` the room, where there are several.
    """

    # Two zones may be told one thing whose hours differ.
    aside = frozenset({"low", "high", "closes", "wait", "acts", "plain", "mended_by"})

    rule: str
    level: Level = Level.NOTE
    measured: Figured | None = None
    wanted: Figured | None = None
    says: tuple[tuple[str, Value], ...] = ()
    source: str = ""
    answer: Answer | None = None
    low: datetime | None = None
    high: datetime | None = None
    closes: datetime | None = None
    wait: StageTime | None = None
    deed: Deed = Deed.NEXT_STEP
    scuff: bool = False
    plain: bool = False
    acts: tuple[int, ...] = ()
    mended_by: frozenset[str] = frozenset()
    on: tuple[str, ...] = ()
    room: str = ""
    # No time makes it safe, only what it asks to be tested.
    by_test: bool = False
    # Whoever stands there leaves before reading on.
    get_out: bool = False
    # What was done on record, that is judged again: `act 12, oil`; the members of a joint.
    about: str = ""
    # What binds elsewhere, an edge for its face.
    because_of: Finding | None = None
    # And what binds there beside it.
    besides: tuple[Finding, ...] = ()

    def value(self, name: str) -> Value:
        """Return what it says under a name; None: nothing."""
        return next((value for key, value in self.says if key == name), None)


def finding(
    rule: str,
    level: Level = Level.NOTE,
    source: str = "",
    *,
    measured: Figured | None = None,
    wanted: Figured | None = None,
    answer: Answer | None = None,
    **says: Value,
) -> Finding:
    """Build a finding; what its words name besides is given by name."""
    return Finding(
        rule, level, measured, wanted, tuple(sorted(says.items())), source, answer=answer
    )


def plainly(rule: str, answer: Answer, **says: Value) -> Finding:
    """Build a finding that the answer itself tells: it is listed nowhere else."""
    return Finding(rule, says=tuple(sorted(says.items())), answer=answer, plain=True)


def also(found: Finding, **says: Value) -> Finding:
    """Return a finding that says more."""
    return replace(found, says=tuple(sorted((*found.says, *says.items()))))


def is_lesson(found: Finding) -> bool:
    """Tell whether it is what went wrong before, and nothing has eased that since."""
    return found.rule == WENT_WRONG_BEFORE and found.level is Level.CAUTION


def is_told_once(found: Finding) -> bool:
    """Tell whether a list of parts says it in sight, of the first that it is about."""
    old_cartridge = found.rule == CARTRIDGE and found.level is Level.CAUTION
    return is_lesson(found) or old_cartridge or found.rule in TOLD_ONCE


def celsius(value: float) -> Figured:
    """Return a temperature (°C) as a figure."""
    return Figured(value, In.CELSIUS)


def apart_celsius(value: float) -> Figured:
    """Return how far two temperatures (°C) are apart as a figure."""
    return Figured(value, In.APART_CELSIUS)


def pct(value: float) -> Figured:
    """Return a percentage as a figure."""
    return Figured(value, In.PCT)


def micrometres(value: float) -> Figured:
    """Return the thickness of a film (µm) as a figure."""
    return Figured(value, In.MICROMETRES)


def count(value: float) -> Figured:
    """Return how many as a figure."""
    return Figured(value, In.COUNT)


def hours(value: float) -> Figured:
    """Return hours as a figure."""
    return Figured(value, In.HOURS)


def minutes(value: float) -> Figured:
    """Return minutes as a figure."""
    return Figured(value, In.MINUTES)
