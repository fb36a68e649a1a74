"""The pages of when, why and on, its grid of pieces and faces, and where a coat may begin."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from datetime import timedelta
from typing import TYPE_CHECKING

from finishlog.asks.look.entry_words import TAKEN_OFF
from finishlog.cli.pages.evening.log_page import standing_words
from finishlog.cli.pages.evening.words import (
    after,
    closing,
    coat_words,
    deed,
    hours_words,
    milestone_words,
    name_of,
    reason,
    title_of,
    together,
    usual_wanted,
)
from finishlog.cli.pages.questions.clock_picture import clock_picture
from finishlog.cli.terminal.page import Page, Section, Tone
from finishlog.cli.typed.figures.measures import show_air
from finishlog.cli.words.finding_lines import remedies
from finishlog.cli.words.finding_words import sentence, short
from finishlog.core.findings import Answer, Finding
from finishlog.core.finish.stages import HANDLING, Stage, shown
from finishlog.core.log.shown_times import length_words
from finishlog.core.log.where import in_brackets
from finishlog.core.log.words import Operation
from finishlog.core.measure.quantities import celsius
from finishlog.core.shop.names import PathName

if TYPE_CHECKING:
    from finishlog.asks.bench.coat_grid import CoatGrid, GridCell, GridLine
    from finishlog.asks.bench.on import CoatLine, On
    from finishlog.asks.bench.starts import Start
    from finishlog.asks.bench.when import When
    from finishlog.asks.bench.why import Option, Why
    from finishlog.asks.look.standing import Standing
    from finishlog.asks.look.went_wrong import AttemptThere, FaultThere
    from finishlog.clock import Clock
    from finishlog.context import Context
    from finishlog.core.air.psychrometrics import Air

# Answers that a time ends.
_WAITS = frozenset({Answer.DRYING, Answer.DEAD_ZONE, Answer.WAITS, Answer.TEST})


def _under_all(line: Standing) -> str:
    """Name the old finish that lies under everything; empty: there is none."""
    return f"{line.old_finish}, age not known" if line.old_finish else ""


def when_page(answer: When, clock: Clock) -> Page:
    """List the stages of each group in the order a person waits for them."""
    page = Page()
    order = [Stage.RECOAT, Stage.SAND, *HANDLING, Stage.CLOSE, Stage.LIGHT_USE, Stage.RUB]
    for line in answer.lines:
        standing = line.standing
        if line.since is None:
            page.section(name_of(standing)).row(_under_all(standing) or "in the white")
            continue
        since = clock.words(line.since)
        section = page.section(f"{name_of(standing)}: {standing.on_it}, {since}")
        for each in sorted(line.stages, key=lambda m: order.index(m.stage)):
            section.row(shown(each.stage), milestone_words(each, clock))
        section.said("window", closing(standing.closes, clock))
        section.each(("fault", _fault(fault, clock)) for fault in standing.faults)
        section.row("next", standing_words(standing, clock, head=""))
        if standing.hours is not None and standing.answer in _WAITS:
            section.row("", hours_words(standing.hours), tone=Tone.FAINT)
    for glue in answer.glue_ups:
        page.section(f"{name_of(glue)}: glue-up").row(_glue(glue, clock))
    return page.lines(usual_wanted(line.standing for line in answer.lines))


def _fault(fault: FaultThere, clock: Clock) -> str:
    when = clock.happened(fault.at)
    return f"{fault.name} on {fault.on}, {when} (act {fault.act})"


def attempt_words(attempt: AttemptThere, clock: Clock) -> str:
    """Tell of a finish that came off: its coats, how, when, after how long, why."""
    coats = ", ".join(f"{n} x {p}" if n > 1 else p for p, n in Counter(attempt.coats).items())
    when = clock.happened(attempt.off_at)
    lasted = length_words(timedelta(hours=attempt.lasted_h))
    why = f": {', '.join(attempt.why)}" if attempt.why else ""
    return f"{coats}, {TAKEN_OFF[attempt.how]} {when} after {lasted}{why}"


def _glue(line: Standing, clock: Clock) -> str:
    return "every member may be clamped" if line.answer is Answer.GO else reason(line, clock)


def why_page(answers: tuple[Why, ...], context: Context) -> Page:
    """Explain each group."""
    page = Page()
    for answer in answers:
        line = answer.standing
        if line.operation == Operation.GLUE_UP:
            section = page.section(f"{name_of(line)}: glue-up")
            section.row("binds", _glue(line, context.clock))
            if line.hours is not None:
                section.row("", hours_words(line.hours))
            _findings(section, line, context)
            _rests_on(section, line)
            continue
        how = f"{standing_words(line, context.clock)}{_counted(line)}"
        section = page.section(f"{name_of(line)}: {how}")
        _on_it(section, answer, context.clock)
        _label(section, answer)
        section.each(("sources", option_words(each, context.clock)) for each in answer.options)
        _air(section, answer, context.clock)
        _clock(section, answer, context.clock)
        section.said("pace", answer.pace)
        for check in answer.checks:
            when = context.clock.words(check.moment)
            found = check.found + in_brackets(check.place)
            section.row("check", f"{check.test}: {found}, {when} (act {check.act})")
        section.row("binds", f"{line.answer.value}: {short(line.because)}")
        if line.hours is not None:
            section.row("", hours_words(line.hours))
        _findings(section, line, context)
        for there in answer.sooner:
            dry = after(there.low, there.high, context.clock)
            where = (
                f"in {there.room}, {show_air(there.air)}"
                if there.room
                else f"here at {_kept_at(there.air)}"
            )
            section.row("sooner", f"{where}, from now: {dry}{_only(there.caution)}")
        for name, words in start_rows(answer.starts, answer.instead, context.clock):
            section.row(name, words)
        section.each((("unknown", unknown) for unknown in answer.unknown), Tone.FAINT)
        _rests_on(section, line)
    return page


def _findings(section: Section, line: Standing, context: Context) -> None:
    for finding, words in zip(line.findings, remedies(line.findings), strict=True):
        name = title_of(finding.source, context.facts.sources)
        section.row("finding", words + (f" [{name}]" if name else ""))


def _counted(line: Standing) -> str:
    """Say in few words how many hours of the clock that decides are done, while it runs."""
    hours = line.hours
    if hours is None or line.answer not in _WAITS or hours.done_h >= hours.high_h:
        return ""
    kind = "label hours" if hours.stage is not None else "h"
    return f"; {hours.done_h:.1f} of {hours.high_h:.3g} {kind} done"


def _kept_at(air: Air) -> str:
    """Say an air to keep a room in: as warm, and no damper, for the one alone may not do it."""
    warm = celsius(air.temperature_c, 1)
    return f"{warm} and at most {air.humidity_pct:.0f} %"


def _on_it(section: Section, answer: Why, clock: Clock) -> None:
    coats = [f"{x.product}, {clock.words(x.put_on)} (act {x.act})" for x in answer.on_it]
    said = ", over ".join(filter(None, (*coats, _under_all(answer.standing))))
    section.row("on it", said or "nothing: in the white")


def _label(section: Section, answer: Why) -> None:
    label = answer.label
    if label is None:
        return
    of = f" of {label.product}" if [label.product] != [x.product for x in answer.on_it[:1]] else ""
    hours = _span(label.low_h, label.high_h)
    section.row(
        "label",
        f"{hours} to {shown(label.stage)}{of} at {show_air(label.at)} ({label.source})",
    )


def _span(low_h: float, high_h: float) -> str:
    return f"{low_h:g}" + (f" to {high_h:g}" if high_h != low_h else "") + " h"


def option_words(option: Option, clock: Clock) -> str:
    """Say what one of the sources that differ asks for, and when that is over here."""
    kind = "" if option.said_by == option.source else f"{option.said_by}, "
    until = option.high
    is_over = until is not None and until <= clock.now
    when = f"over since {clock.words(until)}" if until and is_over else after(None, until, clock)
    held = ", no sooner by its own hours" if option.held else ""
    how = "the most cautious, it binds" if option.binds else "not used"
    hours = _span(option.low_h, option.high_h)
    return f"{hours} ({kind}{option.source}): {when}{held}; {how}"


def _air(section: Section, answer: Why, clock: Clock) -> None:
    if answer.air and answer.read_at:
        read = clock.words(answer.read_at)
        then = "then as usual" if answer.as_usual else "taken to stay"
        act = f" (act {answer.air_act})" if answer.air_act else ""
        section.row("air", f"{show_air(answer.air)}, read {read}, {then}{act}")
    else:
        section.row("air", "not read within a day: label time only, test before you coat")


def _rests_on(section: Section, line: Standing) -> None:
    """Name the acts behind all of it: each is shown whole by `history --act`."""
    if line.acts:
        numbers = ", ".join(map(str, line.acts))
        section.row("acts", f"{numbers} (finishlog history --act {line.acts[-1]})", tone=Tone.FAINT)


def _clock(section: Section, answer: Why, clock: Clock) -> None:
    line = answer.clock
    if line is None:
        return
    pace = "at label time" if line.pace is None else f"at {line.pace:.2f} of it"
    count = f"{line.done_h:.1f} of {line.needed_h:.3g} label hours done"
    over = answer.standing.hours is None and line.done_h >= line.needed_h
    now = "over: another thing binds" if over else f"now {pace}"
    section.row("clock", f"{count}, {now} ({line.by})")
    if line.thick_film > 1:
        how = "flooded on, not wiped off" if line.flooded else "measured thick"
        section.row(
            "",
            f"{how}: {line.thick_film:.2f} × the label's hours (by the square of the "
            "film's thickness, an assumption)",
        )
    known = (
        ("read", line.measured_h),
        ("as last read", line.held_h),
        ("usual", line.usual_h),
        ("unknown", line.unknown_h),
    )
    hours = ", ".join(f"{h:.1f} h {word}" for word, h in known if h >= 0.05)
    if hours:
        section.row("", f"air on the way: {hours}")
    section.each(((what, row) for what, row in clock_picture(line, clock)), Tone.FAINT)


def on_page(answers: tuple[On, ...], clock: Clock) -> Page:
    """List coats by face."""
    page = Page()
    for answer in answers:
        line = answer.standing
        if line.operation == Operation.GLUE_UP:
            page.section(f"{name_of(line)}: glue-up").row("now", _glue(line, clock))
            continue
        wood = f" · {answer.species}" if answer.species else ""
        section = page.section(f"{name_of(line)}{wood}")
        if answer.joint:
            bare = "finish is on it: glue needs bare wood" if answer.coats else "kept bare"
            section.row("joint", f"glue face, {bare}")
        _film_on(section, answer, clock)
        section.each(("passed", f"{words}: not on record") for words in answer.passed_over)
        for aside in answer.aside:
            section.row("besides", f"{aside.what}: no step asked for it (act {aside.act})")
        for said in answer.said:
            when = clock.happened(said.at)
            section.row("said", f"{when}, {said.said} (act {said.act})")
        if answer.to_come:
            section.row("to come", ", ".join(answer.to_come))
        if not answer.joint:
            section.row("now", _now(line, clock))
    return page


def _film_on(section: Section, answer: On, clock: Clock) -> None:
    """List the coats that are on it, what went wrong, and the attempts that came off."""
    number = 0
    for coat in answer.coats:
        when = clock.words(coat.put_on)
        works = zip(coat.abraded, coat.abraded_acts, strict=True)
        said = ", ".join(f"{work} (act {act})" for work, act in works)
        worked = f"{_wiped(coat)}, then {said}" if said else _wiped(coat)
        came = f" from {coat.container}" if coat.container else ""
        said = f"{coat.product}{came}, {when} (act {coat.act}){worked}"
        if coat.stopped is not None:
            section.row("in part", f"{coat.stopped}, broken off: {said}")
            continue
        number += not coat.last
        section.row("on top" if coat.last else f"coat {number}", said)
    old = _under_all(answer.standing)
    if old:
        section.row("under it" if answer.coats else "on it", old)
    elif not answer.coats and not answer.joint:
        section.row("", "in the white")
    section.each(("fault", _fault(fault, clock)) for fault in answer.standing.faults)
    for nth, attempt in enumerate(answer.attempts, 1):
        section.row(f"attempt {nth}", f"{attempt_words(attempt, clock)} (act {attempt.act})")
    if answer.attempts:
        section.row("", f"what is on it now is attempt {len(answer.attempts) + 1}")


def _wiped(coat: CoatLine) -> str:
    if coat.wiped_after_min is None:
        return ""
    after = length_words(timedelta(minutes=coat.wiped_after_min))
    return f", wiped after {after} (act {coat.wiped_act})"


def _now(line: Standing, clock: Clock) -> str:
    if line.answer is Answer.DONE:
        return short(line.because)
    words = standing_words(line, clock)
    return words or f"{deed(line)} {coat_words(line)}"


def start_rows(
    starts: Sequence[Start], instead: tuple[str, ...] | None, clock: Clock
) -> Iterator[tuple[str, str]]:
    """Yield rows of when and where to begin, and what may go on instead."""
    for start in starts:
        yield "start", _there(start) if start.room else _here(start, clock)
    if instead:
        yield "instead", f"of your products this air allows {', '.join(instead)}"
    elif instead is not None:
        yield (
            "instead",
            "this air allows none of your products; other kinds: finishlog class list",
        )


def _there(start: Start) -> str:
    air = f", {show_air(start.air)}" if start.air else ""
    return f"in {start.room}{air}: nothing in its air forbids it now{_only(start.caution)}"


def _only(caution: Finding | None) -> str:
    """Say on what condition, behind what is offered."""
    return f" ({sentence(caution)})" if caution else ""


def _here(start: Start, clock: Clock) -> str:
    """Say when to begin here: not too early, and not too late."""
    if start.earliest is None and start.caution:
        return f"here when the wood is warm enough: {sentence(start.caution)}"
    if start.earliest is None or start.latest is None or start.tack_free is None:
        return "here at no time of the next two days: give it other air, or take another room"
    begins = clock.wait_until(start.earliest)
    last = clock.closes_at(start.latest)
    words = f"here from {begins}, {last} at the latest: tack-free"
    turns = start.turns and clock.words(start.turns)
    stays = f"before the air turns on it at {turns}" if turns else "in air that stays fit"
    return f"{words} {stays}{_only(start.caution)}"


def grid_page(answer: CoatGrid, clock: Clock) -> Page:
    """Lay out coats by piece and face, then what each glue-up still waits for."""
    page = Page()
    rows = ((PathName.read(line.part).within, _row(line)) for line in answer.lines)
    for project, of in together(rows).items():
        page.section(f"{project}: COATS ON EACH FACE").each(of)
    glue = page.section("BEFORE THE GLUE-UP")
    for each in answer.glue_ups:
        ready = each.answer is Answer.GO
        words = "nothing is missing: every member may be clamped" if ready else reason(each, clock)
        glue.row(each.label, words, tone=Tone.GO if ready else Tone.PLAIN)
    return page


def _row(line: GridLine) -> tuple[str, ...]:
    label = f"{line.label} in {line.within}" if line.within else line.label
    return (label, *(_cell(cell) for cell in line.cells))


def _cell(cell: GridCell) -> str:
    """Say how many coats of how many: `front 1 of 3, tape on`."""
    tape = ", tape on" if cell.taped else ""
    if cell.joint:
        return f"{cell.face} {'bare' if not cell.coats else f'NOT BARE: {cell.coats}'}{tape}"
    of = f" of {cell.coats + cell.to_come}" if cell.to_come is not None else ""
    return f"{cell.face} {cell.coats}{of}{tape}"
