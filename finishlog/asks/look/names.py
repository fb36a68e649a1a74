"""What can be named while a command is being typed."""

from __future__ import annotations

from pathlib import Path

from finishlog.store.names_sqlite import Names, PartNames, read_names, read_species

__all__ = ["Names", "PartNames", "names_on_record", "species_on_record"]


def names_on_record(database: Path) -> Names:
    """Return the names in a database; none when it cannot be read at once."""
    return read_names(database)


def species_on_record(database: Path) -> tuple[str, ...]:
    """Return the woods of every part there ever was; none when they cannot be read at once."""
    return read_species(database)
