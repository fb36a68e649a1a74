"""Read the safety notes and the figures for oily rags."""

from __future__ import annotations

from finishlog.core.published.safety_notes import RagsFigures, SafetyNote
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
    can, gel, never = (table.table(k) for k in ("can", "stiff_after_gel_h", "never_stiff"))
    never.text("source")
    found = RagsFigures(
        gels=frozenset(gel.words("classes")),
        stiff_after_gel_h=limit(gel),
        never_stiff=frozenset(never.words("classes")),
        can_emptied_by=can.text("emptied_by"),
        can_source=can.text("source"),
        overdue_after_h=limit(table.table("overdue_after_h")),
        overdue_halves_per_c=limit(table.table("overdue_halves_per_c")),
        overdue_reference_c=limit(table.table("overdue_reference_c")),
        overdue_at_once_from_c=limit(table.table("overdue_at_once_from_c")),
        stiff_after_h=limit(table.table("stiff_after_h")),
        stiff_counts_from_c=limit(table.table("stiff_counts_from_c")),
        film_counts_until_d=limit(table.table("film_counts_until_d")),
        ask_under_water_d=limit(table.table("ask_under_water_d")),
    )
    for inner in (can, never, table):
        inner.nothing_else()
    return found
