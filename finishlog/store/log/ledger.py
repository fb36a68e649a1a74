"""Append to the log: one act with its entries, inside the transaction that opened it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime
from uuid import uuid4

from sqlalchemy import Connection, Table, insert, select

from finishlog import __version__
from finishlog.core.air.psychrometrics import Air
from finishlog.core.finish.classes import FigureSet, Method
from finishlog.core.log.entries import (
    ContainerDeed,
    FaultKind,
    Found,
    Operation,
    Outcome,
    RagsDeed,
    Stripping,
    Target,
    Test,
    When,
    at,
)
from finishlog.errors import NotFound, UsageFault
from finishlog.store.log.figures import keep_figures
from finishlog.store.schema import log
from finishlog.store.schema.log import DownTo, EntryKind
from finishlog.store.schema.rows import add_row


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
        note: str = "",
        supersedes: int | None = None,
    ) -> int:
        """Record work by hand that is not a coat."""
        entry = self._entry(EntryKind.WORK, when, targets, supersedes)
        return self._detail(log.work, entry, operation=operation, grit=grit, note=note)

    def film_check(
        self,
        when: When,
        targets: Iterable[Target],
        *,
        test: Test,
        found: Found,
        note: str = "",
        supersedes: int | None = None,
    ) -> int:
        """Record a test made on a film."""
        entry = self._entry(EntryKind.CHECK, when, targets, supersedes)
        return self._detail(log.film_check, entry, test=test, found=found, note=note)

    def fault(
        self,
        when: When,
        targets: Iterable[Target],
        *,
        what: FaultKind,
        place: str = "",
        remedy: str = "",
        supersedes: int | None = None,
    ) -> int:
        """Record what went wrong, where on the piece, and what was done about it."""
        entry = self._entry(EntryKind.FAULT, when, targets, supersedes)
        return self._detail(log.fault, entry, what=what, place=place, remedy=remedy)

    def stripped(
        self,
        when: When,
        targets: Iterable[Target],
        *,
        operation: Stripping,
        survives: int | None = None,
        note: str = "",
        supersedes: int | None = None,
    ) -> int:
        """Record a film taken off: to bare wood, or down to the coat entry `survives`."""
        entry = self._entry(EntryKind.STRIPPED, when, targets, supersedes)
        return self._detail(
            log.stripped,
            entry,
            operation=operation,
            down_to=DownTo.BARE if survives is None else DownTo.COAT,
            survives_entry_id=survives,
            note=note,
        )

    def joined(
        self,
        when: When,
        targets: Iterable[Target],
        *,
        into: int,
        members: Iterable[int],
        glue: str = "",
        supersedes: int | None = None,
    ) -> int:
        """Record pieces glued up into a piece of an assembly; `glue`: a key of the facts."""
        entry = self._entry(EntryKind.JOINED, when, targets, supersedes)
        self._detail(log.joined, entry, into_piece_id=into, glue=glue)
        return self._pieces(log.joined_member, entry, members)

    def moved(
        self, when: When, *, pieces: Iterable[int], room: int, supersedes: int | None = None
    ) -> int:
        """Record pieces carried into a room."""
        entry = self._entry(EntryKind.MOVED, when, (), supersedes)
        self._detail(log.moved, entry, room_id=room)
        return self._pieces(log.moved_piece, entry, pieces)

    def reading(
        self,
        when: When,
        *,
        room: int,
        air: Air,
        wet_bulb_c: float | None = None,
        humidity_supposed: bool = False,
        supersedes: int | None = None,
    ) -> int:
        """Record the air of a room, and where its humidity came from when it was not read."""
        entry = self._entry(EntryKind.READING, when, (), supersedes)
        return self._detail(
            log.reading,
            entry,
            room_id=room,
            temperature_c=air.temperature_c,
            humidity_pct=air.humidity_pct,
            wet_bulb_c=wet_bulb_c,
            humidity_supposed=humidity_supposed or None,
        )

    def air_imported(
        self, when: When, *, room: int, file_name: str, readings: Sequence[tuple[datetime, Air]]
    ) -> int:
        """Record a logger's file: its readings in order of time, one an instant."""
        entry = self._entry(EntryKind.AIR_IMPORT, when, (), None)
        self._detail(log.air_import, entry, room_id=room, file_name=file_name, count=len(readings))
        rows = [
            {
                "entry_id": entry,
                "at": moment,
                "temperature_c": air.temperature_c,
                "humidity_pct": air.humidity_pct,
            }
            for moment, air in readings
        ]
        if rows:
            self.connection.execute(insert(log.logged_air), rows)
        return entry

    def piece_reading(
        self,
        when: When,
        targets: Iterable[Target],
        *,
        temperature_c: float | None = None,
        moisture_pct: float | None = None,
        supersedes: int | None = None,
    ) -> int:
        """Record a surface temperature (°C) or a wood moisture content (%)."""
        entry = self._entry(EntryKind.PIECE_READING, when, targets, supersedes)
        return self._detail(
            log.piece_reading, entry, temperature_c=temperature_c, moisture_pct=moisture_pct
        )

    def heated(
        self,
        when: When,
        *,
        room: int,
        temperature_c: float | None = None,
        supersedes: int | None = None,
    ) -> int:
        """Record that a heater runs for once, through the span of `when`."""
        entry = self._entry(EntryKind.HEAT, when, (), supersedes)
        return self._detail(log.heat, entry, room_id=room, temperature_c=temperature_c)

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

    def container_event(
        self,
        when: When,
        *,
        container: int,
        deed: ContainerDeed,
        note: str = "",
        supersedes: int | None = None,
    ) -> int:
        """Record what was done with a can, mix or jar, or what befell it."""
        entry = self._entry(EntryKind.CONTAINER, when, (), supersedes)
        return self._detail(
            log.container_event, entry, container_id=container, deed=deed, note=note
        )

    def away(self, when: When, *, reason: str = "", supersedes: int | None = None) -> int:
        """Record that nobody is in the shop from the earliest to the latest moment."""
        entry = self._entry(EntryKind.AWAY, when, (), supersedes)
        return self._detail(log.away, entry, reason=reason)

    def handed_over(
        self,
        when: When,
        targets: Iterable[Target],
        *,
        note: str = "",
        supersedes: int | None = None,
    ) -> int:
        """Record that pieces left the shop."""
        entry = self._entry(EntryKind.HANDOVER, when, targets, supersedes)
        return self._detail(log.handover, entry, note=note)

    def review(
        self,
        when: When,
        targets: Iterable[Target],
        *,
        outcome: Outcome,
        text: str = "",
        supersedes: int | None = None,
    ) -> int:
        """Record how a finish came out."""
        entry = self._entry(EntryKind.REVIEW, when, targets, supersedes)
        return self._detail(log.review, entry, outcome=outcome, text=text)

    def photo(
        self,
        when: When,
        targets: Iterable[Target],
        *,
        path: str,
        note: str = "",
        supersedes: int | None = None,
    ) -> int:
        """Record where a picture lies."""
        entry = self._entry(EntryKind.PHOTO, when, targets, supersedes)
        return self._detail(log.photo, entry, path=path, note=note)

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
