"""The verdict on one zone: the answer to what is asked, its times, what binds, what else weighs."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime

from msgspec import Struct

from finishlog.core.findings import Answer, Deed, Finding, plainly
from finishlog.core.finish.stage_time import StageTime

_OF_A_FAULT = frozenset({"fault", "mend-by"})

MAY_ACT = frozenset({Answer.GO, Answer.SCUFF, Answer.TEST})


class Verdict(Struct, frozen=True):
    """One answer with its times (UTC) and reasons.

    `low`, `high`: from when it may be possible, by when it is. `closes`: the end of the recoat
    window, or the deadline. None: there is no such time. `binds`: the finding that decides;
    `findings`: what else weighs, and what binds where the answer alone does not tell it.
    """

    answer: Answer
    binds: Finding
    low: datetime | None = None
    high: datetime | None = None
    closes: datetime | None = None
    findings: tuple[Finding, ...] = ()
    # The film has to be scuffed before the coat, and no scuffing is on record.
    scuff_first: bool = False
    # The clock of the film, also where something else decides; None: none counts.
    clock: StageTime | None = None

    @property
    def deed(self) -> Deed:
        """What to do about it, where it is not the next step."""
        return self.binds.deed

    @property
    def fault(self) -> int | None:
        """The act of the fault that binds; None: none does."""
        spoken = self.binds.because_of if self.answer is Answer.SET_ASIDE else self.binds
        return spoken.acts[0] if spoken and spoken.rule in _OF_A_FAULT else None

    @property
    def wait(self) -> StageTime | None:
        """The clock that decides, where one does."""
        return self.binds.wait


def of(found: Finding, answer: Answer | None = None) -> Verdict:
    """Return the verdict that one finding makes."""
    decides = answer or found.answer
    assert decides is not None
    listed = () if found.plain else (found,)
    return Verdict(decides, found, found.low, found.high, found.closes, listed, found.scuff)


class Told:
    """A verdict that is worked out when somebody first asks for it."""

    __slots__ = ("_known", "_work_out")

    def __init__(self, work_out: Callable[[], Verdict]) -> None:
        self._work_out = work_out
        self._known: Verdict | None = None

    @property
    def verdict(self) -> Verdict:
        """The verdict."""
        if self._known is None:
            self._known = self._work_out()
        return self._known


def told(verdict: Verdict) -> Told:
    """Return a verdict that is known already."""
    return Told(lambda: verdict)


# Until somebody asks.
NOT_ASKED = told(of(plainly("not-asked", Answer.DONE)))
