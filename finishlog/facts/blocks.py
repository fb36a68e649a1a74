"""Read one of many TOML tables of a file: parsing all of them takes longer than a start may."""

from __future__ import annotations

import tomllib

from finishlog.facts.table import Table


def blocks(path: str, name: str) -> tuple[str, ...]:
    """Return the text of each `[[name]]` table of a file that holds nothing else."""
    with open(path, encoding="utf-8") as file:
        return tuple(file.read().split(f"\n[[{name}]]\n")[1:])


def block(path: str, name: str, number: int, text: str) -> Table:
    """Read one table that `blocks` returned."""
    file = path.rpartition("/")[2]
    try:
        return Table(file, f"{name}[{number}].", tomllib.loads(text))
    except tomllib.TOMLDecodeError as error:
        raise ValueError(f"{file}: {name}[{number}]: {error}") from None
