"""The answer about one zone: a closed set, from the first day."""

from __future__ import annotations

from datetime import datetime
from enum import StrEnum
from typing import TYPE_CHECKING

from msgspec import Struct

from finishlog.core.findings import Finding

if TYPE_CHECKING:
    from finishlog.core.finish.stage_time import StageTime


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


MAY_ACT = frozenset({Answer.GO, Answer.SCUFF, Answer.TEST})


class Verdict(Struct, frozen=True):
    """One answer with its times (UTC) and reasons.

    `low`, `high`: from when it may be possible, by when it is. `closes`: the end of the recoat
    window, or the deadline. `because`: what binds, in a few words; `binds`: the finding that
    does, `wait`: the clock that does; None where something must come first, `waits_for`. None:
    there is no such time. `fault`: the act of the fault that `because` speaks of; None: of none.
    """

    answer: Answer
    because: str
    low: datetime | None = None
    high: datetime | None = None
    closes: datetime | None = None
    waits_for: str = ""
    findings: tuple[Finding, ...] = ()
    # The film has to be scuffed before the coat, and no scuffing is on record.
    scuff_first: bool = False
    deed: Deed = Deed.NEXT_STEP
    binds: Finding | None = None
    wait: StageTime | None = None
    fault: int | None = None
