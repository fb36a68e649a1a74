"""The pages of when, why, on, history and past."""

from __future__ import annotations

from typing import TYPE_CHECKING

from finishlog.cli.log_page import standing_words
from finishlog.cli.measures import show_air
from finishlog.cli.screen import Page, Section, Tone
from finishlog.cli.words import closing, coat_words, deed, milestone_words, reason, remedies
from finishlog.core.shown_times import clock_words, happened
from finishlog.core.stages import HANDLING, Stage, shown
from finishlog.core.units import Temperature
from finishlog.core.verdicts import Answer

if TYPE_CHECKING:
    from finishlog.asks.history import HistoryLine
    from finishlog.asks.on import On
    from finishlog.asks.past import Past, PastCoat, PastFinish
    from finishlog.asks.standing import Standing
    from finishlog.asks.when import When
    from finishlog.asks.why import Why
    from finishlog.clock import Clock
    from finishlog.facts.load import Facts


def _name(line: Standing) -> str:
    return f"{line.part.split('/')[0]}/{line.label}"


def when_page(answer: When, clock: Clock) -> Page:
    """List the stages of each group in the order a person waits for them."""
    page = Page()
    order = [Stage.RECOAT, Stage.SAND, *HANDLING, Stage.CLOSE, Stage.LIGHT_USE, Stage.RUB]
    for line in answer.lines:
        standing = line.standing
        if line.since is None:
            page.section(_name(standing)).row("in the white")
            continue
        since = clock_words(line.since, clock.now, clock.zone)
        section = page.section(f"{_name(standing)}: {standing.on_it}, {since}")
        for each in sorted(line.stages, key=lambda m: order.index(m.stage)):
            section.row(shown(each.stage), milestone_words(each, clock))
        shuts = closing(standing.closes, clock)
        if shuts:
            section.row("window", shuts)
        section.row("next", standing_words(standing, clock))
    for glue in answer.glue_ups:
        page.section(f"{_name(glue)}: glue-up").row(_glue(glue, clock))
    return page


def _glue(line: Standing, clock: Clock) -> str:
    return "every member may be clamped" if line.answer is Answer.GO else reason(line, clock)


def why_page(answers: tuple[Why, ...], facts: Facts, clock: Clock, unit: Temperature) -> Page:
    """Explain each group."""
    page = Page()
    for answer in answers:
        line = answer.standing
        if line.operation == "glue-up":
            page.section(f"{_name(line)}: glue-up").row("binds", _glue(line, clock))
            continue
        section = page.section(f"{_name(line)}: {standing_words(line, clock)}")
        _on_it(section, answer, clock)
        _label(section, answer, unit)
        _air(section, answer, clock, unit)
        _clock(section, answer)
        for check in answer.checks:
            when = clock_words(check.moment, clock.now, clock.zone)
            section.row("check", f"{check.test}: {check.found}, {when} (act {check.act})")
        section.row("binds", f"{line.answer.value}: {line.because}")
        for finding, words in zip(line.findings, remedies(line.findings), strict=True):
            source = facts.sources.get(finding.source)
            name = source.title if source else finding.source
            section.row("finding", words + (f" [{name}]" if name else ""))
        for unknown in answer.unknown:
            section.row("unknown", unknown, tone=Tone.FAINT)
    return page


def _on_it(section: Section, answer: Why, clock: Clock) -> None:
    coats = [
        f"{x.product}, {clock_words(x.put_on, clock.now, clock.zone)} (act {x.act})"
        for x in answer.on_it
    ]
    section.row("on it", ", over ".join(coats) or "nothing: in the white")


def _label(section: Section, answer: Why, unit: Temperature) -> None:
    label = answer.label
    if label is None:
        return
    hours = f"{label.low_h:g}" + (f" to {label.high_h:g}" if label.high_h != label.low_h else "")
    section.row(
        "label", f"{hours} h to {shown(label.stage)} at {show_air(label.at, unit)} ({label.source})"
    )
    for also in label.also:
        section.row("", f"another source: {also}; the longer is used", tone=Tone.FAINT)


def _air(section: Section, answer: Why, clock: Clock, unit: Temperature) -> None:
    if answer.air and answer.read_at:
        read = clock_words(answer.read_at, clock.now, clock.zone)
        section.row("air", f"{show_air(answer.air, unit)}, read {read}, taken to stay")
    else:
        section.row("air", "not read within a day: label time only, test before you coat")


def _clock(section: Section, answer: Why) -> None:
    if answer.clock is None:
        return
    pace = "at label time" if answer.clock.pace is None else f"at {answer.clock.pace:.2f} of it"
    section.row(
        "clock",
        f"{answer.clock.done_h:.1f} of {answer.clock.needed_h:g} label hours done, now {pace} "
        f"({answer.clock.by})",
    )


def on_page(answers: tuple[On, ...], clock: Clock) -> Page:
    """List coats by face."""
    page = Page()
    for answer in answers:
        line = answer.standing
        wood = f" · {answer.species}" if answer.species else ""
        section = page.section(f"{_name(line)}{wood}")
        if answer.joint:
            section.row("joint", "glue face, kept bare")
        for number, coat in enumerate(answer.coats, 1):
            when = clock_words(coat.put_on, clock.now, clock.zone)
            worked = f", then {', '.join(coat.abraded)}" if coat.abraded else ""
            section.row(f"coat {number}", f"{coat.product}, {when}{worked} (act {coat.act})")
        if not answer.coats and not answer.joint:
            section.row("", "in the white")
        for words in answer.passed_over:
            section.row("passed", f"{words}: not on record")
        for words in answer.aside:
            section.row("besides", f"{words}: no step asked for it")
        if answer.to_come:
            section.row("to come", ", ".join(answer.to_come))
        if not answer.joint:
            section.row("now", _now(line, clock))
    return page


def _now(line: Standing, clock: Clock) -> str:
    if line.answer is Answer.DONE:
        return line.because
    words = standing_words(line, clock)
    return words or f"{deed(line)} {coat_words(line)}"


def history_page(lines: tuple[HistoryLine, ...], clock: Clock) -> Page:
    """List acts in the order of typing: when it happened, the words typed, what became of it."""
    page = Page()
    if not lines:
        page.line("nothing is on record")
    section = page.section()
    shown: set[tuple[str, ...]] = set()
    for line in lines:
        typed = clock_words(line.typed_at, clock.now, clock.zone)
        when = happened(line.happened, clock.now, clock.zone) if line.happened else typed
        late = f"typed {typed}" if when != typed else ""
        fate = "; ".join(x for x in (_fate(line), late) if x)
        cells = (str(line.act), when, ", ".join(line.parts), fate, line.words)
        if cells not in shown:
            section.row(*cells, tone=Tone.PLAIN if line.in_force else Tone.FAINT)
        shown.add(cells)
    return page


def _fate(line: HistoryLine) -> str:
    if line.withdrawn_by:
        return f"UNDONE by act {line.withdrawn_by}"
    if line.amended_by:
        return f"AMENDED by act {line.amended_by}"
    if line.amends:
        return f"amends act {line.amends}"
    if line.withdraws:
        return f"undoes act {line.withdraws}"
    return ""


def past_page(answer: Past, clock: Clock, unit: Temperature) -> Page:
    """List finishes on a wood, newest first."""
    page = Page()
    for finish in answer.finishes:
        section = page.section(_past_head(finish))
        for coat in finish.coats:
            section.row(*_past_coat(coat, clock, unit))
        for text in finish.outcomes:
            section.row("outcome", text)
        for text in finish.notes:
            section.row("note", text)
        if not finish.outcomes:
            section.row("outcome", "none on record", tone=Tone.FAINT)
    return page


def _past_head(finish: PastFinish) -> str:
    faces = f", {' and '.join(finish.faces)}" if finish.faces != ("all round",) else ""
    board = ", sample board" if finish.is_board else ""
    return f"{finish.part}{faces} · {finish.species}{board}"


def _past_coat(coat: PastCoat, clock: Clock, unit: Temperature) -> tuple[str, ...]:
    bits = []
    if coat.hours_since_last is not None:
        bits.append(f"after {coat.hours_since_last:g} h{_label_words(coat)}")
    if coat.air:
        bits.append(show_air(coat.air, unit))
    if coat.worked:
        bits.append(f"then {', '.join(coat.worked)}")
    bits += coat.checks
    return coat.product, clock_words(coat.put_on, clock.now, clock.zone), ", ".join(bits)


def _label_words(coat: PastCoat) -> str:
    if coat.label_low_h is None or coat.label_high_h is None:
        return ""
    low, high = coat.label_low_h, coat.label_high_h
    return f" (label {low:g}{f' to {high:g}' if high != low else ''} h)"
