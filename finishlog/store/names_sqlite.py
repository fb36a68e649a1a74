"""The names of what there is, read in the blink that a completion may take: no SQLAlchemy.

Equal to what the queries of `read_shop` give, and tested so. The file is opened to be read only;
one that is missing, older, newer, locked, damaged or not ours has no names to offer.
"""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path
from typing import NamedTuple

# A person waits at the key: a writer is not waited for longer than this.
PATIENCE_S = 0.05


class PartNames(NamedTuple):
    """`project/part`, its pieces by number, its faces and zones as they are typed."""

    path: str
    pieces: tuple[int, ...] = ()
    faces: tuple[str, ...] = ()


class Names(NamedTuple):
    """What has not been put away, each in the order in which it was put on record."""

    projects: tuple[str, ...] = ()
    parts: tuple[PartNames, ...] = ()
    products: tuple[str, ...] = ()
    rooms: tuple[str, ...] = ()
    steps: tuple[str, ...] = ()
    containers: tuple[str, ...] = ()


def read_names(path: Path) -> Names:
    """Read the names; none when the file cannot be read at once. Nothing is made or written."""
    try:
        with closing(_opened(path)) as connection:
            return Names(
                projects=_names(connection, "project"),
                parts=_parts(connection),
                products=_names(connection, "product"),
                rooms=_names(connection, "room"),
                steps=_names(connection, "steps"),
                containers=_names(connection, "container"),
            )
    except (sqlite3.Error, OSError, ValueError):
        return Names()


def read_species(path: Path) -> tuple[str, ...]:
    """Read the woods of every part and zone there ever was, by name; like `read_names`."""
    query = "SELECT species FROM part UNION SELECT species FROM zone ORDER BY species"
    try:
        with closing(_opened(path)) as connection:
            return tuple(name for (name,) in connection.execute(query) if name)
    except (sqlite3.Error, OSError, ValueError):
        return ()


def _opened(path: Path) -> sqlite3.Connection:
    """Open a file to be read, in one transaction: what is read is of one moment."""
    address = f"{path.absolute().as_uri()}?mode=ro"
    connection = sqlite3.connect(address, uri=True, timeout=PATIENCE_S)
    connection.execute("BEGIN")
    return connection


def _names(connection: sqlite3.Connection, table: str) -> tuple[str, ...]:
    query = f"SELECT name FROM {table} WHERE archived_at IS NULL ORDER BY id"
    return tuple(name for (name,) in connection.execute(query))


def _parts(connection: sqlite3.Connection) -> tuple[PartNames, ...]:
    """Read the open parts, and what they are made of in three queries for all of them."""
    rows = connection.execute(
        "SELECT part.id, project.name || '/' || part.name FROM part"
        " JOIN project ON project.id = part.project_id"
        " WHERE part.archived_at IS NULL AND project.archived_at IS NULL ORDER BY part.id"
    ).fetchall()
    pieces = _inside(connection, "number FROM piece", "number")
    faces = _inside(connection, "name FROM face", "position")
    zones = _inside(
        connection,
        "face.name || '/' || zone.name FROM zone JOIN face ON face.id = zone.face_id"
        " AND zone.name <> '' AND NOT EXISTS (SELECT 1 FROM zone_was"
        " WHERE was_zone_id = zone.id AND zone_id <> zone.id)",
        "face.position, zone.position",
    )
    return tuple(
        PartNames(
            path,
            tuple(int(number) for number in pieces.get(part, ())),
            tuple(str(name) for of in (faces, zones) for name in of.get(part, ())),
        )
        for part, path in rows
    )


def _inside(connection: sqlite3.Connection, what: str, order: str) -> dict[int, list[int | str]]:
    """Read what belongs to open parts, in its order."""
    found: dict[int, list[int | str]] = {}
    query = (
        f"SELECT part_id, {what} WHERE part_id IN"
        " (SELECT part.id FROM part JOIN project ON project.id = part.project_id"
        f" WHERE part.archived_at IS NULL AND project.archived_at IS NULL) ORDER BY {order}"
    )
    for part, value in connection.execute(query):
        found.setdefault(part, []).append(value)
    return found
