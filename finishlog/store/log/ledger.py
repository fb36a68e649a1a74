"""Append to the log: one act with its entries, inside the transaction that opened it."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from uuid import uuid4

from msgspec.structs import replace
from sqlalchemy import Connection, insert, select

from finishlog import __version__
from finishlog.core.air.psychrometrics import Air
from finishlog.core.commands import Do
from finishlog.core.log.entries import (
    AirImported,
    AnyEntry,
    Check,
    Entry,
    Fault,
    Review,
    Stripped,
    Work,
)
from finishlog.core.log.kinds import TakenBack, kind_of
from finishlog.core.log.when import at
from finishlog.errors import NotFound, UsageFault
from finishlog.store.log import kept
from finishlog.store.log.rows import put_entry
from finishlog.store.schema import tables
from finishlog.store.schema.entries import AIR
from finishlog.store.schema.rows import add_row

# What was read whole of the log, and is no longer all of it after an entry of a kind.
_TELLS_OF = {
    TakenBack: ("withdrawals",),
    Check: ("checks", "went wrong"),
    Work: ("sandings",),
    Fault: ("went wrong",),
    Review: ("went wrong", "reviewed"),
    Stripped: ("went wrong",),
}


class Ledger:
    """One act being recorded. Every method appends one entry and returns its id.

    `supersedes` names the entry that this one corrects; both stay in the log. `recorded`: what the
    act has appended so far.
    """

    def __init__(self, connection: Connection, act: int, typed_at: datetime, zone: str) -> None:
        self.connection = connection
        self.act_id = act
        self._typed_at = typed_at
        self._zone = zone
        self.recorded: list[AnyEntry] = []

    def record(self, entry: AnyEntry, *, supersedes: int | None = None) -> int:
        """Append an entry; what number, act and moment of typing it says is not looked at."""
        number = self._append(entry, supersedes)
        self.recorded.append(replace(entry, id=number, act=self.act_id, typed_at=self._typed_at))
        return number

    def _append(self, entry: Entry, supersedes: int | None = None) -> int:
        number = add_row(
            self.connection,
            tables.entry,
            uuid=str(uuid4()),
            act_id=self.act_id,
            kind=kind_of(type(entry)),
            earliest_at=entry.when.earliest,
            latest_at=entry.when.latest,
            sureness=entry.when.sureness,
            tie=entry.when.tie,
            time_zone=self._zone,
            supersedes_id=supersedes,
        )
        rows = [
            {"entry_id": number, "piece_id": target.piece, "zone_id": target.zone}
            for target in sorted(entry.targets)
        ]
        if rows:
            self.connection.execute(insert(tables.entry_target), rows)
        put_entry(self.connection, number, entry)
        kept.forget(self.connection, *_TELLS_OF.get(type(entry), ()))
        if supersedes is not None:
            kept.forget(self.connection, "amendments")
        return number

    def record_air(self, entry: AirImported, readings: Sequence[tuple[datetime, Air]]) -> int:
        """Append a logger's file with its readings, in order of time, one an instant."""
        number = self.record(entry)
        rows = [
            {"entry_id": number, "at": moment, **{name: getattr(air, name) for name in AIR}}
            for moment, air in readings
        ]
        if rows:
            self.connection.execute(insert(tables.logged_air), rows)
        return number

    def withdraw(self, act: int) -> int:
        """Record that an earlier act is taken back. An undo may be withdrawn like any act.

        NotFound when there is no such act, UsageFault for this act itself.
        """
        if act == self.act_id:
            raise UsageFault("an act cannot take itself back")
        if self.connection.scalar(select(tables.act.c.id).where(tables.act.c.id == act)) is None:
            raise NotFound(f"there is no act {act}", f"see the numbers in: {Do.HISTORY()}")
        return self._append(TakenBack(when=at(self._typed_at), withdraws=act))


def open_act(
    connection: Connection, verb: str, words: str, typed_at: datetime, time_zone: str
) -> Ledger:
    """Begin one act. It may stay without entries: adding a project is an act too."""
    act = add_row(
        connection,
        tables.act,
        uuid=str(uuid4()),
        verb=verb,
        words=words,
        typed_at=typed_at,
        time_zone=time_zone,
        finishlog_version=__version__,
    )
    return Ledger(connection, act, typed_at, time_zone)
