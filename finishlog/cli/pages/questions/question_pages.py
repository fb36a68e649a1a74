"""The pages of when and why, and where a coat may begin."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from datetime import timedelta
from typing import TYPE_CHECKING

from finishlog.asks.look.entry_words import TAKEN_OFF
from finishlog.cli.pages.evening.log_page import standing_words
from finishlog.cli.pages.evening.state_words import kept_row, prepared_rows
from finishlog.cli.pages.evening.words import (
    after,
    closing,
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
from finishlog.core.measure.quantities import celsius, micrometres

if TYPE_CHECKING:
    from finishlog.asks.bench.starts import Start
    from finishlog.asks.bench.when import When
    from finishlog.asks.bench.why import ClockLine, OnIt, Option, Why
    from finishlog.asks.look.earlier_coats import Beside, CoatBeside
    from finishlog.asks.look.standing import Standing
    from finishlog.asks.look.went_wrong import AttemptThere, FaultThere
    from finishlog.clock import Clock
    from finishlog.context import Context
    from finishlog.core.air.psychrometrics import Air
    from finishlog.core.bench.milestones import Milestone
    from finishlog.core.film.build import CoatBuild, FilmBuild

# Answers that a time ends.
_WAITS = frozenset({Answer.DRYING, Answer.DEAD_ZONE, Answer.WAITS, Answer.TEST})


def old_finish_words(line: Standing) -> str:
    """Name the old finish that lies under everything; empty: there is none."""
    return f"{line.old_finish}, age not known" if line.old_finish else ""


def when_page(answer: When, clock: Clock) -> Page:
    """List the stages of each group in the order a person waits for them."""
    page = Page()
    order = [Stage.RECOAT, Stage.SAND, *HANDLING, Stage.CLOSE, Stage.LIGHT_USE, Stage.RUB]
    for line in answer.lines:
        standing = line.standing
        if line.since is None:
            section = page.section(name_of(standing))
            section.row(old_finish_words(standing) or "in the white")
            section.each(prepared_rows(standing, clock))
            continue
        since = clock.words(line.since)
        section = page.section(f"{name_of(standing)}: {standing.on_it}, {since}")
        for each in sorted(line.stages, key=lambda m: order.index(m.stage)):
            section.row(shown(each.stage), f"{milestone_words(each, clock)}{_for_what(each)}")
            if each.stage is Stage.PACK and line.ship is not None:
                section.row(
                    "ship", f"{milestone_words(line.ship, clock)} · wrapped, handed to a carrier"
                )
        section.said("window", closing(standing.closes, clock))
        section.each(("fault", fault_words(fault, clock)) for fault in standing.faults)
        section.row("next", standing_words(standing, clock, head=""))
        if standing.hours is not None and standing.answer in _WAITS:
            section.row("", hours_words(standing.hours), tone=Tone.FAINT)
    for glue in answer.glue_ups:
        page.section(f"{name_of(glue)}: glue-up").row(glue_words(glue, clock))
    return page.lines(usual_wanted(line.standing for line in answer.lines))


# What a stage of handling is for, where its name does not say it. common practice
_FOR = {
    Stage.TURN: "handled; a floor walked on in socks",
    Stage.STACK: "with separators",
    Stage.LIGHT_USE: "nothing left on it, nothing hot or wet, no cloth",
    Stage.CURED: "rugs, cloths, felt pads; nothing glued on, no rubber, at any age",
}


def _for_what(each: Milestone) -> str:
    """Say what a stage is for, and what puts it off."""
    if each.blocked:
        return ""
    longer = f" (half as long again: {', '.join(each.longer)})" if each.longer else ""
    return longer + (f" · {_FOR[each.stage]}" if each.stage in _FOR else "")


def fault_words(fault: FaultThere, clock: Clock) -> str:
    """Name a fault that stands, on what, since when."""
    when = clock.happened(fault.at)
    return f"{fault.name} on {fault.on}, {when} (act {fault.act})"


def attempt_words(attempt: AttemptThere, clock: Clock) -> str:
    """Tell of a finish that came off: its coats, how, when, after how long, why."""
    coats = ", ".join(f"{n} x {p}" if n > 1 else p for p, n in Counter(attempt.coats).items())
    when = clock.happened(attempt.off_at)
    lasted = length_words(timedelta(hours=attempt.lasted_h))
    why = f": {', '.join(attempt.why)}" if attempt.why else ""
    return f"{coats}, {TAKEN_OFF[attempt.how]} {when} after {lasted}{why}"


def film_rows(film: FilmBuild | None) -> Iterator[tuple[str, str]]:
    """Say how thick a film is in all, where a coat was measured or little more fits on it."""
    if film is None or film.limit is None or film.more is None or not film.coats:
        return
    if film.more > 1 and not any(coat.told for coat in film.coats):
        return
    more = {0: "no more such coat", 1: "1 more such coat"}.get(
        film.more, f"{film.more} more such coats"
    )
    limit = f"{micrometres(film.limit.low)} to {micrometres(film.limit.high)} in all at most"
    yield "film", f"about {micrometres(film.total_um)} dry; {limit}: {more}"
    for told, acts in together((_built(coat), coat.act) for coat in film.coats).items():
        of = f"act{'s' if len(acts) > 1 else ''} {', '.join(str(act) for act in acts)}"
        yield "", f"{told} ({of})"


def _built(coat: CoatBuild) -> str:
    """Say what one coat left: wet film times solids, less what was sanded off."""
    wet = f"{micrometres(coat.wet_um)} wet, {'as measured' if coat.told else 'as is usual'}"
    thinned = f" thinned by {coat.thinned:.0%}".replace("%", " %") if coat.thinned else ""
    sanded = f", less {micrometres(coat.sanded_um)} by sanding" if coat.sanded_um else ""
    dry = micrometres(coat.dry_um)
    return f"{wet}, at {coat.solids_pct:g} % solids{thinned}: {dry} dry{sanded}"


def glue_words(line: Standing, clock: Clock) -> str:
    """Say whether a glue-up may begin, or what it waits for."""
    return "every member may be clamped" if line.answer is Answer.GO else reason(line, clock)


def why_page(answers: tuple[Why, ...], context: Context) -> Page:
    """Explain each group."""
    page = Page()
    for answer in answers:
        line = answer.standing
        if line.operation == Operation.GLUE_UP:
            section = page.section(f"{name_of(line)}: glue-up")
            section.row("binds", glue_words(line, context.clock))
            if line.hours is not None:
                section.row("", hours_words(line.hours))
            _findings(section, line, context)
            _rests_on(section, line)
            continue
        how = f"{standing_words(line, context.clock)}{_counted(line)}"
        section = page.section(f"{name_of(line)}: {how}")
        _on_it(section, answer, context.clock)
        section.each(prepared_rows(line, context.clock))
        section.said("kept", kept_row(line, context.clock))
        _label(section, answer)
        section.each(("sources", option_words(each, context.clock)) for each in answer.options)
        _air(section, answer, context.clock)
        _clock(section, answer, context.clock)
        section.said("pace", answer.pace)
        section.each(film_rows(answer.film))
        for check in answer.checks:
            when = context.clock.words(check.moment)
            found = check.found + in_brackets(check.place)
            section.row("check", f"{check.test}: {found}, {when} (act {check.act})")
        section.each(beside_rows(answer.beside, context.clock))
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
        for name, words in start_rows(answer, context.clock):
            section.row(name, words)
        section.each((("unknown", unknown) for unknown in answer.unknown), Tone.FAINT)
        _rests_on(section, line)
    return page


def beside_rows(beside: Beside | None, clock: Clock) -> Iterator[tuple[str, str]]:
    """Lay a coat that is slow beside earlier ones of its product."""
    if beside is None:
        return
    yield "beside", f"now: {_in_air(beside.now)}; soft after {_h(beside.now.hours)}"
    for coat in beside.earlier:
        ended = "dry by a check" if coat.passed else "coated again"
        where = f"{clock.day_of(coat.put_on)}, {', '.join(coat.parts)}"
        yield "", f"{where}: {_in_air(coat)}; {ended} after {_h(coat.hours)} (act {coat.act})"


def _in_air(coat: CoatBeside) -> str:
    air = show_air(coat.air) if coat.air else "air not read"
    cold = coat.coldest_c
    if coat.air and cold is not None and cold < coat.air.temperature_c:
        air += f", down to {celsius(cold, 1)}"
    thick = f", {micrometres(coat.wet_film_um)} wet" if coat.wet_film_um else ""
    return air + (thick or ", thickness not logged")


def _h(hours: float) -> str:
    return f"{hours:.3g} h"


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


def _not_stirred(on_it: OnIt) -> str:
    return ", not stirred" if on_it.stirred is False else ""


def _on_it(section: Section, answer: Why, clock: Clock) -> None:
    coats = [
        f"{x.product}, {clock.words(x.put_on)}{_not_stirred(x)} (act {x.act})" for x in answer.on_it
    ]
    said = ", over ".join(filter(None, (*coats, old_finish_words(answer.standing))))
    section.row("on it", said or "nothing: in the white")


def _label(section: Section, answer: Why) -> None:
    label = answer.label
    if label is None:
        return
    of = f" of {label.product}" if [label.product] != [x.product for x in answer.on_it[:1]] else ""
    hours = _span(label.low_h, label.high_h)
    colder = "".join(
        f", {_span(row.low_h, row.high_h)} at {celsius(row.temperature_c, 1)}"
        for row in label.colder
    )
    section.row(
        "label",
        f"{hours} to {shown(label.stage)}{of} at {show_air(label.at)}{colder} ({label.source})",
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
    section.row("clock", f"{count}, {now} ({_by(line)})")
    if line.below_c is not None and line.at_c is not None:
        coldest = celsius(line.below_c, 1)
        section.row(
            "",
            f"down to {coldest} on the way, colder than any row of the can "
            f"({celsius(line.at_c, 1)}): slower from there {line.by}",
        )
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


def _by(line: ClockLine) -> str:
    """Say by what the label hours are counted: the can's own rows, or a law."""
    return line.by if line.at_c is None else "between the rows of your can"


def start_rows(answer: Why, clock: Clock) -> Iterator[tuple[str, str]]:
    """Yield rows of when and where to begin, what may go on instead, how warm each wants it."""
    for start in answer.starts:
        yield "start", _there(start) if start.room else _here(start, clock)
    if answer.instead:
        yield "instead", f"of your products this air allows {', '.join(answer.instead)}"
    elif answer.instead is not None:
        yield "instead", "this air allows none of your products; other kinds: finishlog class list"
        if answer.tried:
            kinds = "; ".join(answer.tried)
            yield "", f"below what is published finishers use {kinds}: try it on a sample board"
    if answer.least:
        least = ", ".join(f"{name} {celsius(warm)}" for name, warm in answer.least)
        yield "least", f"{least}; as warm as that all the time until it is tack-free"


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
    if start.early is not None:
        try_it = f"only if {start.early:g} h are enough, the early end of its hours; test it"
        keep = "keep the air fit, or carry it in"
        before = turns or clock.words(start.tack_free)
        return f"{words} before {before} {try_it} by then, else {keep}{_only(start.caution)}"
    stays = f"before the air turns on it at {turns}" if turns else "in air that stays fit"
    return f"{words} {stays}{_only(start.caution)}"
