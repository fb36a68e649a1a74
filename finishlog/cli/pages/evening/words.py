"""How answers and oily rags are put into words: short, the trade's, on every screen the same."""

from __future__ import annotations

import shlex
from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime, timedelta
from typing import TYPE_CHECKING, TypeVar

from finishlog.cli.terminal.page import Page, Tone
from finishlog.cli.words.finding_words import barred_by, remedy, short, waits_for
from finishlog.core.film.checks import TRIED_BY
from finishlog.core.findings import Answer, Deed, Finding, Level
from finishlog.core.finish.stages import Stage, shown
from finishlog.core.log.words import Found, Operation
from finishlog.core.measure.quantities import typed_celsius
from finishlog.core.safety.oily_waste import Handling, Stiffens, Waste
from finishlog.core.safety.rags import RagsState

if TYPE_CHECKING:
    from finishlog.asks.bench.rags import RagsLine
    from finishlog.asks.look.standing import HoursThatBind, LearntDate, Standing
    from finishlog.clock import Clock
    from finishlog.core.bench.milestones import Milestone
    from finishlog.core.log.when import When
    from finishlog.core.published.sources import Source

K = TypeVar("K")
V = TypeVar("V")

SETTLE = "then vacuum, let the dust settle, wipe"

_MAY_BE = {
    Stage.TURN: "turned onto points",
    Stage.CLAMP: "clamped with padded cauls",
    Stage.STACK: "stacked with separators",
    Stage.PACK: "packed",
    Stage.CLOSE: "closed up",
    Stage.LIGHT_USE: "used lightly",
    Stage.RUB: "rubbed out or waxed",
    Stage.RECOAT: "recoated",
    Stage.SAND: "sanded",
}


# The tests that tell when a film is between the earliest and the promised time of a stage. None
# proves it fully hard; what still smells or takes a print is not.
_TRIED = (Found.POWDER, "sand a spot"), (Found.NO_SMELL, "smell"), (Found.NO_PRINT, "thumbnail")
_TRY_IT = {
    stage: ", ".join(words for found, words in _TRIED if found in tried)
    for stage, tried in {**TRIED_BY, Stage.CURED: TRIED_BY[Stage.RUB]}.items()
}


def echo(clock: Clock, at: When, whom: Iterable[str], done: str) -> Page:
    """Begin the page of an act: when it was, on what, and what was done."""
    return Page().line(f"{clock.happened(at)}  {', '.join(whom)}: {done}")


def name_of(line: Standing) -> str:
    """Name what stands so, with its project."""
    return line.label.full


def usual_wanted(lines: Iterable[Standing]) -> list[str]:
    """Ask, once for each room, for the usual day that would move a date by more than a day."""
    rooms = dict.fromkeys(line.usual_wanted for line in lines if line.usual_wanted)
    points = f"6:{typed_celsius(8)} 15:{typed_celsius(16)}"
    return [
        f"what {room} is like on a usual day would move this by more than a day: "
        f"finishlog room usual {shlex.quote(room)} {points}"
        for room in rooms
    ]


def may_be(stage: Stage) -> str:
    """Say what a reached stage allows: `may be packed`, `fully hard`."""
    return f"may be {_MAY_BE[stage]}" if stage in _MAY_BE else shown(stage)


def deed(line: Standing) -> str:
    """Name what to do, in one or two words."""
    match line.answer:
        case Answer.SCUFF:
            return "scuff, coat"
        case Answer.TEST:
            return f"test, {'scuff, ' if line.scuff_first else ''}{line.operation or 'coat'}"
        case Answer.BLOCKED:
            return Deed.MEND if any(map(_is_for_good, line.findings)) else line.deed or _AGAIN
        case Answer.DEADLINE:
            return line.deed
        case _:
            return line.operation or "-"


def coat_words(line: Standing) -> str:
    """Name the coat that is next: `topcoat 2 of 3`."""
    if line.answer is Answer.DEADLINE and line.deed is not Deed.COAT:
        return line.on_it
    if not line.product:
        return ""
    before = "" if line.operation == Operation.COAT else "before "
    which = f" {line.coat} of {line.coats}" if line.coats else f", coat {line.coat}"
    meant = line.stopped is not None and line.on_it == line.product
    stopped = ", broken off" if meant else ""
    return f"{before}{line.product}{which}{stopped}"


def after(low: datetime | None, high: datetime | None, clock: Clock) -> str:
    """Say when a wait is over: by the promise, and from when a test is worth it."""
    if high is None:
        return "no date in this air"
    words = f"after {clock.wait_until(high)}"
    if low is not None and low < high and low > clock.now:
        early = clock.wait_until(low)
        if early != clock.wait_until(high):
            words += f", test from {early}"
    return words


def closing(closes: datetime | None, clock: Clock, after: str = ", later it needs a scuff") -> str:
    """Say when a recoat window closes, and what then; empty when it does not."""
    if closes is None or closes <= clock.now:
        return ""
    return f"closes {clock.closes_at(closes)}{after}"


def reason(line: Standing, clock: Clock) -> str:
    """Say why, and until when, in one line; faults that it does not speak of come behind."""
    why = _reason(line, clock)
    told = {f.name for f in line.faults if f.act == line.fault}
    also = [f.name for f in line.faults if f.name not in told]
    return "; ".join(x for x in (why, ", ".join(also)) if x)


def hours_words(hours: HoursThatBind) -> str:
    """Say which hours decide, how many of them are over, and since which act."""
    span = f"{hours.low_h:.3g}" + (
        f" to {hours.high_h:.3g}" if f"{hours.high_h:.3g}" != f"{hours.low_h:.3g}" else ""
    )
    if hours.stage is None:
        return (
            f"{span} h of {hours.product}, {hours.done_h:.1f} of them over, since act {hours.act}"
        )
    settled = f", settled by the check of act {hours.by_check}" if hours.by_check else ""
    return (
        f"{span} label hours of {hours.product} to {shown(hours.stage)}, {hours.done_h:.1f} done, "
        f"since act {hours.act}{settled}"
    )


def learnt_words(learnt: LearntDate, clock: Clock) -> str:
    """Say how far your own pace moved what a film waits for, and by which acts."""
    acts = f"{'act' if len(learnt.acts) == 1 else 'acts'} {', '.join(map(str, learnt.acts))}"
    label = learnt.by_label
    is_past = label is not None and label <= clock.now
    by_label = "reached" if is_past else after(None, label, clock)
    return (
        f"your pace moved it: by the label alone {by_label}, by yours, "
        f"{learnt.factor:.2g} × its hours, {after(None, learnt.now_is, clock)} ({acts})"
    )


def _reason(line: Standing, clock: Clock) -> str:
    match line.answer:
        case Answer.GO:
            done = line.operation in {Operation.SCUFF, Operation.DENIB, Operation.SAND}
            return SETTLE if done and line.on_it else closing(line.closes, clock)
        case Answer.SCUFF:
            return f"{short(line.because)}; {SETTLE}"
        case Answer.TEST:
            return "; ".join(x for x in (_test(line, clock), closing(line.closes, clock)) if x)
        case Answer.DRYING:
            still = f": {short(line.because)}" if line.high is None else ""
            wait = f"{_next(line)} {after(line.low, line.high, clock)}{still}"
            in_vain = line.high and line.closes and line.closes <= line.high
            after_it = ", before that: scuff it then" if in_vain else ""
            closes = closing(line.closes, clock, after=after_it)
            return "; ".join(filter(None, (wait, closes, _doubted(line))))
        case Answer.DEAD_ZONE:
            again = line.because.value("then")
            return f"{short(line.because)}: {again} {after(line.low, line.high, clock)}"
        case Answer.WAITS:
            until = f" ({after(None, line.high, clock)})" if line.high else ""
            if line.high is None and line.low is not None and line.low > clock.now:
                until = f", then {_next(line)} {after(None, line.low, clock)}"
            waits = f"waits for {waits_for(line.because)}{until}"
            return "; ".join(filter(None, (waits, closing(line.closes, clock, after=""))))
        case Answer.DEADLINE:
            assert line.closes is not None
            return f"{short(line.because)} before {clock.words(line.closes)}"
        case Answer.BLOCKED | Answer.STALLED:
            found = short(line.because)
            stalled = f"{line.answer.value}: " if line.answer is Answer.STALLED else ""
            in_time = line.deed is Deed.LEAVE and line.high is not None
            again = f"check again {after(None, line.high, clock)}" if in_time else ""
            return "; ".join(filter(None, (f"{stalled}{found}", _behind(line), again)))
        case Answer.DONE:
            return short(line.because)
        case Answer.SET_ASIDE:
            return f"set aside; {taken_up(line)}"
        case _:
            return f"{line.answer.value}: {short(line.because)}"


def _doubted(line: Standing) -> str:
    """Name what was done to a film that has to dry and makes it doubtful: it may be mended now."""
    asks = (f for f in line.findings if f.answer is Answer.TEST and f.level is not Level.NOTE)
    return next((short(found) for found in asks if found.acts), "")


_AGAIN = Deed.CHECK_AGAIN
# A film that failed a check: once, or for good; why; that it is late.
_FAILED = frozenset({"check-failed", "stalled", "past-hope"})
_SHOWN = frozenset({"cause-apart", "cause-shown"})
_LATE = frozenset({"late"})


def _behind(line: Standing) -> str:
    """Name what lies behind a film that failed a check, where the log shows it: no hour ends that.

    A cause that it shows; else what else stops the film, or makes it doubtful.
    """
    if line.because.rule not in _FAILED:
        return ""
    others = [f for f in line.findings if f.rule not in _FAILED]
    shown = [f for f in others if f.rule in _SHOWN]
    stops = [f for f in others if f.level is Level.STOP]
    rub = next((remedy(f) for f in others if _is_for_good(f)), "")
    if shown:
        ends_so = shown[0].value("then") or ""
        then = (rub or ends_so) if shown[0].value("helps") else ends_so
        return "; ".join(filter(None, (f"likely {shown[0].value('cause')}", str(then))))
    if rub:
        return rub
    return next(map(short, stops), "") or _doubted(line)


def _is_for_good(of: Finding) -> bool:
    """Tell whether it says that a late film is mended, not waited for."""
    return of.rule in _LATE and of.deed is Deed.MEND


def taken_up(line: Standing) -> str:
    """Say what a part that is set aside needs when it is taken up, and what was meant for it."""
    said = f"; next time: {line.next_time}" if line.next_time else ""
    return f"when it is taken up: {short(line.because)}{said}"


def _next(line: Standing) -> str:
    if line.operation == Operation.COAT:
        return "scuff, recoat" if line.scuff_first else "recoat"
    return line.operation or "next"


def _test(line: Standing, clock: Clock) -> str:
    if line.high is not None and line.high > clock.now:
        return f"may be ready; promised {after(None, line.high, clock)}"
    return short(line.because)


def together(pairs: Iterable[tuple[K, V]]) -> dict[K, list[V]]:
    """Put together what has the same key, in the order in which the keys come."""
    found: dict[K, list[V]] = {}
    for key, value in pairs:
        found.setdefault(key, []).append(value)
    return found


def title_of(source: str, sources: Mapping[str, Source]) -> str:
    """Name a source by its title; what is no id of one stands as it is."""
    return sources[source].title if source in sources else source


def milestone_words(each: Milestone, clock: Clock) -> str:
    """Say when one stage is reached."""
    if each.blocked:
        return f"blocked: {barred_by(each.blocked)}"
    if each.dead_zone:
        over = after(each.low, each.high, clock)
        return f"dead zone, too late to bond by itself, too soft to scuff: scuff and recoat {over}"
    if each.missing:
        return f"no figure for {', '.join(each.missing)}"
    usual = each.better is not None and clock.now < each.better
    better = f"; better {after(None, each.better, clock)}" if usual else ""
    if each.reached(clock.now):
        return f"reached{better}"
    if each.high is None and each.sure is not None and each.sure <= clock.now:
        return "test first: it stood still by the last reading, long ago"
    if each.by_label_only(clock.now):
        return "by label time only: test first, the air was not measured"
    if each.asks and each.is_over(clock.now):
        return f"{each.asks.answer}: {short(each.asks)}"
    if each.low is not None and each.high is not None and each.low <= clock.now < each.high:
        how = f" ({_TRY_IT[each.stage]})" if each.stage in _TRY_IT else ""
        return f"test first{how}{better}; promised {after(None, each.high, clock)}"
    return after(each.low, each.high, clock)


# What was left lying yesterday is asked after: fires have started up to three days later.
_A_NIGHT = timedelta(hours=8)
# To 23 °C nothing is overdue sooner.
_AN_HOUR = timedelta(hours=1)
_WHERE = "where are they, with gloves, pads, wool, paper and dust? "
SOFT_FILM = "from a film that was still soft: it heats more than rags do"
BURNABLE = "they heat no more, and burn as paper does: to the waste as the service says"
HAND_DUST = (
    "the oil film is young: dust and cloth into the water can; with a machine, a bag or a vacuum "
    "log it as sand"
)


def rags_words(line: RagsLine, clock: Clock) -> str:
    """Say where rags are and what to do about them."""
    since = clock.words(line.since)
    match line.state:
        case RagsState.OPEN if line.overdue:
            asked = _WHERE if line.since < clock.now - _A_NIGHT else ""
            warm = " in this warmth" if clock.now - line.since < _AN_HOUR else ""
            return f"open since {since}: OVERDUE{warm}, {asked}{_safe_for(line)}"
        case RagsState.OPEN:
            return f"open since {since}: {_safe_for(line)}"
        case RagsState.SPREAD:
            return f"spread since {since}: {_ripe(line, clock)}"
        case RagsState.WATER if line.asked:
            return (
                f"under water since {since}: are they still covered, the lid on, and when do "
                f"they go? finishlog rags gone {line.number}, or water {line.number}"
            )
        case RagsState.WATER:
            return f"under water since {since}: keep the lid on, hand them over"
        case RagsState.CAN if line.overdue:
            return f"in the can since {since}: OVERDUE, empty it off site today"
        case RagsState.CAN:
            return f"in the can since {since}: empty it off site today"
        case _:
            return line.state.value


def _ripe(line: RagsLine, clock: Clock) -> str:
    """Say from when what lies spread may be tested, and what is asked then."""
    if line.stiffens is Stiffens.NEVER:
        return "these never count as stiff, they stay wet within: into water"
    if line.stiff_from is None:
        return "no date in this cold, only warm hours count: leave them spread, or into water"
    if line.stiff_from <= clock.now:
        return "test them: stiff and crisp right through?"
    return f"test stiff from {clock.wait_until(line.stiff_from)}"


def _safe_for(line: RagsLine) -> str:
    """Say where it may go: a heap stays one whatever is done with it, so only water will do."""
    if line.handling is Handling.CLOTHS and line.stiffens is not Stiffens.NEVER:
        return "spread flat outdoors, or water, or can"
    return "into water in a lidded metal can outdoors, or can"


def rags_name(line: RagsLine) -> str:
    """Name rags by product and where they come from."""
    return f"{rags_made_of(line)}: {', '.join(line.parts)}"


def rags_section(page: Page, lines: Sequence[RagsLine], clock: Clock, *, whole: bool) -> None:
    """List rags that are not closed; `whole`: with what is known of each."""
    tones = {True: Tone.DANGER, False: Tone.PLAIN}
    section = page.section("OPEN RAGS", tones[any(line.is_dangerous for line in lines)])
    for line in lines:
        tone = tones[line.is_dangerous]
        section.row(str(line.number), rags_name(line), rags_words(line, clock), tone=tone)
        done = [f"{d.deed.value} {clock.happened(d.at)}" for d in line.history]
        more = [SOFT_FILM] if line.soft else []
        more += [*line.remarks, *([", ".join(done)] if len(done) > 1 else [])]
        if whole:
            section.each((("", "", words) for words in more), Tone.FAINT)


def rags_made_of(line: RagsLine) -> str:
    """Name rags by product, and what they are where they are no mere rags."""
    waste = "" if line.waste == (Waste.RAGS,) else f" ({', '.join(line.waste)})"
    return f"{line.product}{waste}"
