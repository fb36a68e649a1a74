"""The verdict on one zone: the fold of what every rule found about the act that is asked.

One short list decides what binds. Weight decides words and colour, never order: drying until
Saturday would lose to too cold until eight, and a failed thumbnail to the clock.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import UTC, datetime

from msgspec.structs import replace

from finishlog.core.findings import OF_TONIGHT, Act, Answer, Deed, Finding, plainly
from finishlog.core.rules.all import findings_of
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import MAY_ACT, Verdict

# What no date ends, only an observation, or taking it off.
UNDATED = frozenset({Answer.SUSPECT, Answer.BLOCKED, Answer.STALLED, Answer.UNDERNEATH})
_ENDS_WITH_TIME = frozenset({Answer.DRYING, Answer.DEAD_ZONE, Answer.WAITS, Answer.NOT_IN_THIS_AIR})
_FAR = datetime.max.replace(tzinfo=UTC)
# Its own clock says from when and by when, whatever else is asked for first.
_BY_THE_CLOCK = MAY_ACT | {Answer.DEADLINE, Answer.DONE}
_MAY_CLOSE = MAY_ACT | {Answer.DRYING, Answer.WAITS, Answer.NOT_IN_THIS_AIR, Answer.DEADLINE}


def decide(zone: ZoneState, asked: Asked, around: Around) -> Verdict:
    """Give the verdict on what is asked. What is set aside is judged as if it were taken up."""
    if not zone.set_aside:
        return fold(findings_of(zone, asked, around), asked)
    then = decide(replace(zone, set_aside=False), asked, around)
    free = then.answer in {Answer.GO, Answer.DONE, Answer.SCUFF}
    aside = plainly(
        "set-aside-free" if free else "set-aside-held",
        Answer.SET_ASIDE,
        needs="" if free else then.answer.value,
        scuff="scuff" if then.scuff_first else "",
    )
    aside = replace(aside, because_of=None if free else then.binds)
    listed = then.findings if asked.done else ()
    return Verdict(Answer.SET_ASIDE, aside, findings=listed, scuff_first=then.scuff_first)


def fold(found: Sequence[Finding], asked: Asked) -> Verdict:
    """Fold findings into one verdict: what binds, its times, what else weighs."""
    binds = _binding(found, asked)
    answer = binds.answer
    assert answer is not None
    counted = next((f for f in found if f.wait and f.plain and f.answer in _CLOCKS), None)
    clock = counted or binds
    timed = clock if answer in _BY_THE_CLOCK and binds.high is None else binds
    closes = [f.closes for f in found if f.closes is not None and f.answer in _MAY_CLOSE]
    low = timed.low if timed.low or answer not in _LOW_BY_THE_CLOCK else clock.low
    if answer is Answer.WAITS and binds.high is None:
        # What no date ends may be answered today: then the film has its own clock.
        low = clock.high
    return Verdict(
        answer,
        binds,
        low,
        timed.high,
        binds.closes or (min(closes, default=None) if answer in _MAY_CLOSE else None),
        tuple(f for f in found if not f.plain),
        any(f.scuff for f in found) and answer in MAY_ACT | _ENDS_WITH_TIME,
        counted.wait if counted else None,
    )


_LOW_BY_THE_CLOCK = frozenset({Answer.TEST, Answer.NOT_IN_THIS_AIR})
# Whose times are those of the film.
_CLOCKS = MAY_ACT | {Answer.DRYING, Answer.DEAD_ZONE}


def _binding(found: Iterable[Finding], asked: Asked) -> Finding:
    """Return the finding that binds.

    A hard deadline that runs; what no date ends; of what ends with time the one that ends last; a
    test; scuffing; go. A coat that is on the way in any case does not wait for a deadline.
    """
    binding = [f for f in found if f.answer is not None]
    if asked.act is Act.REST:
        # Where nothing is asked no test is due: what it tells stands beside, and bars the handling.
        binding = [f for f in binding if f.answer is not Answer.TEST]
    running = [f for f in binding if f.answer is Answer.DEADLINE and f.deed is not Deed.COAT]
    if running and not (asked.done and asked.act is Act.COAT):
        return min(running, key=lambda f: f.closes or _FAR)
    for f in binding:
        if f.answer in UNDATED:
            return f
    waits = [f for f in binding if f.answer in _ENDS_WITH_TIME]
    if waits:
        return max(waits, key=_ends)
    while_good = next((f for f in binding if f.deed is Deed.COAT), None)
    if while_good is not None:
        return while_good
    for answer in (Answer.TEST, Answer.SCUFF, Answer.GO, Answer.DONE):
        for f in binding:
            if f.answer is answer:
                return f
    return plainly("nothing-against", Answer.GO)


def _ends(of: Finding) -> tuple[bool, datetime]:
    """Sort by when it ends, no date last.

    Tonight's air, and what burns in it, is no wait of its own: undated it yields to a film that is
    not dry by then.
    """
    of_tonight = of.answer is Answer.NOT_IN_THIS_AIR or of.rule in OF_TONIGHT
    undated = of.high is None and not of_tonight
    return undated, of.high or datetime.min.replace(tzinfo=UTC)
