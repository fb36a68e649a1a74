"""What a transaction has read of the log, kept: entries never change, so each is read once."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable
from typing import TypeVar

from sqlalchemy import Connection

_T = TypeVar("_T")


def by_id(
    connection: Connection,
    what: str,
    ids: Collection[int],
    read: Callable[[Collection[int]], Iterable[tuple[int, _T]]],
) -> dict[int, _T]:
    """Return by id what there is of some ids; only what was not read before is read now."""
    known: dict[int, _T] = whole(connection, what, dict)
    missing = [id_ for id_ in ids if id_ not in known]
    if missing:
        known.update(read(missing))
    return {id_: known[id_] for id_ in ids if id_ in known}


def whole(connection: Connection, what: str, read: Callable[[], _T]) -> _T:
    """Return what there is, read once.

    A new transaction begins with nothing (`engine_sqlite`): others may have written before it.
    """
    if what not in connection.info:
        connection.info[what] = read()
    found: _T = connection.info[what]
    return found


def forget(connection: Connection, *what: str) -> None:
    """Let something be read anew: it was added to, or what it names was changed."""
    for each in what:
        connection.info.pop(each, None)
