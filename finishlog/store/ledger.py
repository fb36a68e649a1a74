"""Append to the log: one act with its entries, inside the transaction that opened it."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime
from uuid import uuid4

from sqlalchemy import Connection, Table, insert, select

from finishlog import __version__
from finishlog.core.air import Air
from finishlog.core.finishes import FigureSet, Method
from finishlog.core.records import Found, Operation, RagsDeed, Target, Test, When, at
from finishlog.errors import NotFound, UsageFault
from finishlog.store import schema_log as log
from finishlog.store.figures import keep_figures
from finishlog.store.rows import add_row
from finishlog.store.schema_log import EntryKind


class Ledger:
    """One act being recorded. Every method appends one entry and returns its id.

    `supersedes` names the entry that this one corrects; both stay in the log.
    """

    def __init__(self, connection: Connection, act: int, typed_at: datetime, zone: str) -> None:
        self.connection = connection
        self.act_id = act
        self._typed_at = typed_at
        self._zone = zone

    def coat(
        self,
        when: When,
        targets: Iterable[Target],
        *,
        product: int,
        figures: FigureSet,
        method: Method | None = None,
        scuffed_before: bool | None = None,
        wet_film_um: float | None = None,
        container: int | None = None,
        hands_on_min: float | None = None,
        note: str = "",
        supersedes: int | None = None,
    ) -> int:
        """Record one application of a product, with the figures that it is judged by."""
        entry = self._entry(EntryKind.COAT, when, targets, supersedes)
        return self._detail(
            log.coat,
            entry,
            product_id=product,
            figure_set_id=keep_figures(self.connection, figures),
            method=method,
            scuffed_before=scuffed_before,
            wet_film_um=wet_film_um,
            container_id=container,
            hands_on_min=hands_on_min,
            note=note,
        )

    def work(
        self,
        when: When,
        targets: Iterable[Target],
        *,
        operation: Operation,
        grit: str = "",
        supersedes: int | None = None,
    ) -> int:
        """Record work by hand that is not a coat."""
        entry = self._entry(EntryKind.WORK, when, targets, supersedes)
        return self._detail(log.work, entry, operation=operation, grit=grit)

    def film_check(
        self,
        when: When,
        targets: Iterable[Target],
        *,
        test: Test,
        found: Found,
        supersedes: int | None = None,
    ) -> int:
        """Record a test made on a film."""
        entry = self._entry(EntryKind.CHECK, when, targets, supersedes)
        return self._detail(log.film_check, entry, test=test, found=found)

    def joined(
        self,
        when: When,
        targets: Iterable[Target],
        *,
        into: int,
        members: Iterable[int],
        supersedes: int | None = None,
    ) -> int:
        """Record pieces glued up into a piece of an assembly."""
        entry = self._entry(EntryKind.JOINED, when, targets, supersedes)
        self._detail(log.joined, entry, into_piece_id=into)
        return self._pieces(log.joined_member, entry, members)

    def moved(
        self, when: When, *, pieces: Iterable[int], room: int, supersedes: int | None = None
    ) -> int:
        """Record pieces carried into a room."""
        entry = self._entry(EntryKind.MOVED, when, (), supersedes)
        self._detail(log.moved, entry, room_id=room)
        return self._pieces(log.moved_piece, entry, pieces)

    def reading(self, when: When, *, room: int, air: Air, supersedes: int | None = None) -> int:
        """Record the air of a room."""
        entry = self._entry(EntryKind.READING, when, (), supersedes)
        return self._detail(
            log.reading,
            entry,
            room_id=room,
            temperature_c=air.temperature_c,
            humidity_pct=air.humidity_pct,
        )

    def rags_event(
        self,
        when: When,
        *,
        deed: RagsDeed,
        item: int | None = None,
        supersedes: int | None = None,
    ) -> int:
        """Record what was done with rags: of one item (its first coat's entry) or of all."""
        entry = self._entry(EntryKind.RAGS, when, (), supersedes)
        return self._detail(log.rags_event, entry, deed=deed, item_entry_id=item)

    def set_aside(
        self,
        when: When,
        targets: Iterable[Target],
        *,
        reason: str = "",
        supersedes: int | None = None,
    ) -> int:
        """Record that work stops on purpose."""
        entry = self._entry(EntryKind.SET_ASIDE, when, targets, supersedes)
        return self._detail(log.set_aside, entry, reason=reason)

    def resumed(
        self, when: When, targets: Iterable[Target], *, supersedes: int | None = None
    ) -> int:
        """Record that work goes on."""
        entry = self._entry(EntryKind.RESUMED, when, targets, supersedes)
        return self._detail(log.resumed, entry)

    def note(
        self,
        when: When,
        targets: Iterable[Target],
        *,
        text: str,
        outcome: bool = False,
        supersedes: int | None = None,
    ) -> int:
        """Record words, or how a thing came out."""
        entry = self._entry(EntryKind.NOTE, when, targets, supersedes)
        return self._detail(log.written_note, entry, text=text, outcome=outcome)

    def withdraw(self, act: int) -> int:
        """Record that an earlier act is taken back. An undo may be withdrawn like any act.

        NotFound when there is no such act, UsageFault for this act itself.
        """
        if act == self.act_id:
            raise UsageFault("an act cannot take itself back")
        if self.connection.scalar(select(log.act.c.id).where(log.act.c.id == act)) is None:
            raise NotFound(f"there is no act {act}", "see the numbers in: finishlog history")
        entry = self._entry(EntryKind.WITHDRAWAL, at(self._typed_at), (), None)
        return self._detail(log.withdrawal, entry, act_id=act)

    def _entry(
        self,
        kind: EntryKind,
        when: When,
        targets: Iterable[Target],
        supersedes: int | None,
    ) -> int:
        entry = add_row(
            self.connection,
            log.entry,
            uuid=str(uuid4()),
            act_id=self.act_id,
            kind=kind,
            earliest_at=when.earliest,
            latest_at=when.latest,
            sureness=when.sureness,
            tie=when.tie,
            time_zone=self._zone,
            supersedes_id=supersedes,
        )
        rows = [
            {"entry_id": entry, "piece_id": target.piece, "zone_id": target.zone}
            for target in sorted(set(targets))
        ]
        if rows:
            self.connection.execute(insert(log.entry_target), rows)
        return entry

    def _detail(self, table: Table, entry: int, **values: object) -> int:
        self.connection.execute(insert(table).values(entry_id=entry, **values))
        return entry

    def _pieces(self, table: Table, entry: int, pieces: Iterable[int]) -> int:
        rows = [{"entry_id": entry, "piece_id": piece} for piece in sorted(set(pieces))]
        if rows:
            self.connection.execute(insert(table), rows)
        return entry


def open_act(
    connection: Connection, verb: str, words: str, typed_at: datetime, time_zone: str
) -> Ledger:
    """Begin one act. It may stay without entries: adding a project is an act too."""
    act = add_row(
        connection,
        log.act,
        uuid=str(uuid4()),
        verb=verb,
        words=words,
        typed_at=typed_at,
        time_zone=time_zone,
        finishlog_version=__version__,
    )
    return Ledger(connection, act, typed_at, time_zone)
