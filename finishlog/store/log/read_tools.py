"""Read what was put on with which tool: the coats of open and of finished pieces alike."""

from __future__ import annotations

from sqlalchemy import Connection, select

from finishlog.core.shop.things import Log
from finishlog.store.log.read_log import read_log
from finishlog.store.schema import tables

# A tool is judged by what it had in it last.
_NEWEST = 60


def read_log_of_tools(connection: Connection) -> Log:
    """Read the log of the pieces that the newest coats with a named tool went on."""
    coat, entry, target = tables.coat, tables.entry, tables.entry_target
    newest = (
        select(coat.c.entry_id)
        .join(entry, entry.c.id == coat.c.entry_id)
        .where(coat.c.tool != "")
        .order_by(entry.c.latest_at.desc())
        .limit(_NEWEST)
    )
    pieces = select(target.c.piece_id).distinct().where(target.c.entry_id.in_(newest))
    return read_log(connection, set(connection.scalars(pieces)))
