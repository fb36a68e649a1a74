"""What each kind of entry has of its own, read into the core's records: a query a kind."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Collection, Iterator, Mapping
from datetime import datetime
from typing import Any, TypedDict

from sqlalchemy import Connection, Table, select

from finishlog.core.air.psychrometrics import Air
from finishlog.core.finish.classes import Method
from finishlog.core.log import entries as records
from finishlog.core.log.entries import AnyEntry, Target, When
from finishlog.store.log.figures import read_figures
from finishlog.store.schema import log
from finishlog.store.schema.log import EntryKind
from finishlog.store.schema.rows import rows_of
from finishlog.store.schema.things import product


class Common(TypedDict):
    """The fields that every record has."""

    id: int
    act: int
    when: When
    typed_at: datetime
    targets: frozenset[Target]


# The records to fill by entry id, and which of them to ask for (None: read the table whole).
Commons = Mapping[int, Common]
Ids = Collection[int] | None
Reader = Callable[[Connection, Commons, Ids], Iterator[AnyEntry]]


def _details(
    connection: Connection, of: Commons, ids: Ids, table: Table, *names: str
) -> Iterator[tuple[Common, list[Any]]]:
    """Yield the common part and the named columns of every entry asked for."""
    query = select(table.c.entry_id, *(table.c[name] for name in names))
    for entry, *values in rows_of(connection, query, table.c.entry_id, ids):
        if entry in of:
            yield of[entry], values


def _pieces(connection: Connection, table: Table, ids: Ids) -> dict[int, frozenset[int]]:
    found: dict[int, set[int]] = defaultdict(set)
    query = select(table.c.entry_id, table.c.piece_id)
    for entry, piece in rows_of(connection, query, table.c.entry_id, ids):
        found[entry].add(piece)
    return {entry: frozenset(pieces) for entry, pieces in found.items()}


_COAT = (
    "product_id",
    "figure_set_id",
    "method",
    "scuffed_before",
    "wet_film_um",
    "container_id",
    "hands_on_min",
    "note",
)


def _coats(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    products = {row.id: row.name for row in connection.execute(select(product))}
    rows = list(_details(connection, of, ids, log.coat, *_COAT))
    figures = read_figures(connection, {values[1] for _, values in rows})
    for common, (product_id, set_id, method, scuffed, wet_film, can, minutes, note) in rows:
        yield records.Coat(
            **common,
            product=product_id,
            product_name=products[product_id],
            figures=figures[set_id],
            method=Method(method) if method else None,
            scuffed_before=scuffed,
            wet_film_um=wet_film,
            container=can,
            hands_on_min=minutes,
            note=note,
        )


def _work(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    rows = _details(connection, of, ids, log.work, "operation", "grit", "note")
    for common, (operation, grit, note) in rows:
        yield records.Work(**common, operation=records.Operation(operation), grit=grit, note=note)


def _checks(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    rows = _details(connection, of, ids, log.film_check, "test", "found", "note")
    for common, (test, found, note) in rows:
        yield records.Check(
            **common, test=records.Test(test), found=records.Found(found), note=note
        )


def _faults(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    rows = _details(connection, of, ids, log.fault, "what", "place", "remedy")
    for common, (what, place, remedy) in rows:
        yield records.Fault(**common, what=records.FaultKind(what), place=place, remedy=remedy)


def _stripped(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    rows = _details(connection, of, ids, log.stripped, "operation", "survives_entry_id", "note")
    for common, (operation, survives, note) in rows:
        yield records.Stripped(
            **common, operation=records.Stripping(operation), survives=survives, note=note
        )


def _joined(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    members = _pieces(connection, log.joined_member, ids)
    for common, (into, glue) in _details(connection, of, ids, log.joined, "into_piece_id", "glue"):
        pieces = members.get(common["id"], frozenset())
        yield records.Joined(**common, into=into, members=pieces, glue=glue)


def _moved(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    pieces = _pieces(connection, log.moved_piece, ids)
    for common, (room,) in _details(connection, of, ids, log.moved, "room_id"):
        yield records.Moved(**common, pieces=pieces.get(common["id"], frozenset()), room=room)


def _readings(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    names = ("room_id", "temperature_c", "humidity_pct", "wet_bulb_c", "humidity_supposed")
    for common, (room, *air, wet, supposed) in _details(connection, of, ids, log.reading, *names):
        yield records.Reading(
            **common, room=room, air=Air(*air), wet_bulb_c=wet, humidity_supposed=bool(supposed)
        )


def _imported(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    names = ("room_id", "file_name", "count")
    for common, (room, name, count) in _details(connection, of, ids, log.air_import, *names):
        yield records.AirImported(**common, room=room, file_name=name, count=count)


def _piece_readings(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    names = ("temperature_c", "moisture_pct")
    for common, (warm, moist) in _details(connection, of, ids, log.piece_reading, *names):
        yield records.PieceReading(**common, temperature_c=warm, moisture_pct=moist)


def _heated(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    names = ("room_id", "temperature_c")
    for common, (room, warm) in _details(connection, of, ids, log.heat, *names):
        yield records.Heated(**common, room=room, temperature_c=warm)


def _rags(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    rows = _details(connection, of, ids, log.rags_event, "deed", "item_entry_id")
    for common, (deed, item) in rows:
        yield records.RagsEvent(**common, deed=records.RagsDeed(deed), item=item)


def _set_aside(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    for common, (reason,) in _details(connection, of, ids, log.set_aside, "reason"):
        yield records.SetAside(**common, reason=reason)


def _resumed(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    for common, _ in _details(connection, of, ids, log.resumed):
        yield records.Resumed(**common)


def _notes(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    for common, (text, outcome) in _details(
        connection, of, ids, log.written_note, "text", "outcome"
    ):
        yield records.Note(**common, text=text, outcome=outcome)


def _container_events(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    rows = _details(connection, of, ids, log.container_event, "container_id", "deed", "note")
    for common, (container, deed, note) in rows:
        yield records.ContainerEvent(
            **common, container=container, deed=records.ContainerDeed(deed), note=note
        )


def _away(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    for common, (reason,) in _details(connection, of, ids, log.away, "reason"):
        yield records.Away(**common, reason=reason)


def _handed_over(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    for common, (note,) in _details(connection, of, ids, log.handover, "note"):
        yield records.HandedOver(**common, note=note)


def _reviews(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    for common, (outcome, text) in _details(connection, of, ids, log.review, "outcome", "text"):
        yield records.Review(**common, outcome=records.Outcome(outcome), text=text)


def _photos(connection: Connection, of: Commons, ids: Ids) -> Iterator[AnyEntry]:
    for common, (path, note) in _details(connection, of, ids, log.photo, "path", "note"):
        yield records.Photo(**common, path=path, note=note)


# The kinds that the core has a record for.
READERS: Mapping[EntryKind, Reader] = {
    EntryKind.COAT: _coats,
    EntryKind.WORK: _work,
    EntryKind.CHECK: _checks,
    EntryKind.FAULT: _faults,
    EntryKind.STRIPPED: _stripped,
    EntryKind.JOINED: _joined,
    EntryKind.MOVED: _moved,
    EntryKind.READING: _readings,
    EntryKind.AIR_IMPORT: _imported,
    EntryKind.PIECE_READING: _piece_readings,
    EntryKind.HEAT: _heated,
    EntryKind.CONTAINER: _container_events,
    EntryKind.RAGS: _rags,
    EntryKind.AWAY: _away,
    EntryKind.HANDOVER: _handed_over,
    EntryKind.REVIEW: _reviews,
    EntryKind.PHOTO: _photos,
    EntryKind.SET_ASIDE: _set_aside,
    EntryKind.RESUMED: _resumed,
    EntryKind.NOTE: _notes,
}
