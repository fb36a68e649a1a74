"""The pages of on: what is on a part, face by face, and its grid of pieces and faces."""

from __future__ import annotations

from datetime import timedelta
from typing import TYPE_CHECKING

from finishlog.cli.pages.evening.log_page import standing_words
from finishlog.cli.pages.evening.state_words import kept_row, prepared_rows
from finishlog.cli.pages.evening.words import (
    coat_words,
    deed,
    name_of,
    reason,
    together,
)
from finishlog.cli.pages.questions.question_pages import (
    attempt_words,
    fault_words,
    film_rows,
    glue_words,
    old_finish_words,
)
from finishlog.cli.terminal.page import Page, Section, Tone
from finishlog.cli.words.finding_words import short
from finishlog.core.findings import Answer
from finishlog.core.finish.stages import shown
from finishlog.core.log.shown_times import length_words
from finishlog.core.log.words import Operation
from finishlog.core.shop.names import PathName

if TYPE_CHECKING:
    from finishlog.asks.bench.coat_grid import CoatGrid, GridCell, GridLine
    from finishlog.asks.bench.on import CoatLine, On
    from finishlog.asks.look.standing import Standing
    from finishlog.clock import Clock

_HANDLED = {Operation.STACK: "stacked", Operation.PACK: "packed", Operation.USE: "in use"}


def on_page(answers: tuple[On, ...], clock: Clock) -> Page:
    """List coats by face."""
    page = Page()
    for answer in answers:
        line = answer.standing
        if line.operation == Operation.GLUE_UP:
            page.section(f"{name_of(line)}: glue-up").row("now", glue_words(line, clock))
            continue
        wood = f" · {answer.species}" if answer.species else ""
        section = page.section(f"{name_of(line)}{wood}")
        if answer.joint:
            bare = "finish is on it: glue needs bare wood" if answer.coats else "kept bare"
            section.row("joint", f"glue face, {bare}")
        _film_on(section, answer, clock)
        section.each(film_rows(answer.film))
        section.each(prepared_rows(line, clock))
        section.said("kept", kept_row(line, clock))
        for each in answer.handled:
            aged = length_words(timedelta(hours=each.age_h))
            early = f", before {shown(each.before)}" if each.before else ""
            when = f"{clock.words(each.at)}, after {aged}{early} (act {each.act})"
            section.row(_HANDLED[each.what], when)
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
        if coat.earlier:
            section.row("earlier", f"{said}: lies below, no coat of these steps")
            continue
        number += not coat.last
        section.row("on top" if coat.last else f"coat {number}", said)
    old = old_finish_words(answer.standing)
    if old:
        section.row("under it" if answer.coats else "on it", old)
    elif not answer.coats and not answer.joint:
        section.row("", "in the white")
    section.each(("fault", fault_words(fault, clock)) for fault in answer.standing.faults)
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
