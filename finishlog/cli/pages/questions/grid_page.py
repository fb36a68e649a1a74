"""The page of `on --grid`: pieces down, faces across."""

from __future__ import annotations

from typing import TYPE_CHECKING

from finishlog.cli.pages.evening.words import reason
from finishlog.cli.terminal.page import Page, Tone
from finishlog.core.shop.names import PathName
from finishlog.core.zone.verdict import Answer

if TYPE_CHECKING:
    from finishlog.asks.bench.coat_grid import CoatGrid, GridCell
    from finishlog.clock import Clock


def grid_page(answer: CoatGrid, clock: Clock) -> Page:
    """Lay out coats by piece and face, then what each glue-up still waits for."""
    page = Page()
    by_project: dict[str, list[tuple[str, ...]]] = {}
    for line in answer.lines:
        label = f"{line.label} in {line.within}" if line.within else line.label
        row = (label, *(_cell(cell) for cell in line.cells))
        by_project.setdefault(PathName.read(line.part).within, []).append(row)
    for project, rows in by_project.items():
        section = page.section(f"{project}: COATS ON EACH FACE")
        section.each(rows)
    glue = page.section("BEFORE THE GLUE-UP")
    for each in answer.glue_ups:
        ready = each.answer is Answer.GO
        words = "nothing is missing: every member may be clamped" if ready else reason(each, clock)
        glue.row(each.label, words, tone=Tone.GO if ready else Tone.PLAIN)
    return page


def _cell(cell: GridCell) -> str:
    """Say how many coats of how many: `front 1 of 3, tape on`."""
    tape = ", tape on" if cell.taped else ""
    if cell.joint:
        return f"{cell.face} {'bare' if not cell.coats else f'NOT BARE: {cell.coats}'}{tape}"
    of = f" of {cell.coats + cell.to_come}" if cell.to_come is not None else ""
    return f"{cell.face} {cell.coats}{of}{tape}"
