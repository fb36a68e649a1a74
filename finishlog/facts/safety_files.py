"""Read the safety notes and the figures for oily rags."""

from __future__ import annotations

from finishlog.core.safety_notes import RagsFigures, SafetyNote
from finishlog.facts.table import Table, limit, read


def read_notes(path: str) -> tuple[SafetyNote, ...]:
    """Read safety_notes.toml."""
    table = read(path)
    found = tuple(_note(note) for note in table.tables("notes"))
    table.nothing_else()
    return found


def _note(table: Table) -> SafetyNote:
    found = SafetyNote(
        table.text("id"), table.text("applies_to"), table.text("text"), table.text("source")
    )
    table.nothing_else()
    return found


def read_rags(path: str) -> RagsFigures:
    """Read rags.toml."""
    table = read(path)
    can, thick = table.table("can"), table.table("stiff_after_thick_h")
    found = RagsFigures(
        overdue_after_h=limit(table.table("overdue_after_h")),
        stiff_after_h=limit(table.table("stiff_after_h")),
        thick=frozenset(thick.words("classes")),
        stiff_after_thick_h=limit(thick),
        film_counts_until_d=limit(table.table("film_counts_until_d")),
        can_emptied_by=can.text("emptied_by"),
        can_source=can.text("source"),
    )
    can.nothing_else()
    table.nothing_else()
    return found
