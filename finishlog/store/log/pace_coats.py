"""Find the coats whose checks and sanding tell how fast they dried, also on what was put away."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence, Set
from datetime import datetime
from functools import cache
from typing import Any, NamedTuple

from msgspec import Struct
from sqlalchemy import (
    ColumnElement,
    Connection,
    FromClause,
    Select,
    String,
    or_,
    select,
    type_coerce,
    union_all,
)

from finishlog.core.log.entries import Check, Coat, Target, Work
from finishlog.core.log.kinds import kind_of
from finishlog.core.log.words import SOFT, Operation
from finishlog.store.log import kept
from finishlog.store.log.heads import (
    Head,
    heads_of,
    read_amendments,
    read_targets,
    read_withdrawals,
)
from finishlog.store.log.in_force import fates, withdrawn_acts
from finishlog.store.schema import tables
from finishlog.store.schema.asked import among, ask, question
from finishlog.store.schema.rows import rows_of

_SANDED = (Operation.SAND, Operation.SCUFF)

# So many of the shop's newest checks, and of its sandings, are looked through: years of a busy
# shop. What lies further back would cost every start, and tells little of how it dries now.
_LOOK_BACK = 1000
_AT_ONCE = 250


class CheckedCoat(Struct, frozen=True):
    """A coat, zones of it that tell all its checks and sanding do, and from when to when."""

    entry: int
    product: int
    targets: frozenset[Target]
    start: datetime
    end: datetime


def failed_lately(connection: Connection, products: Set[int], gone: Gone | None = None) -> set[int]:
    """Find those of some products that a failed check found soft."""
    found: set[int] = set()
    gone = gone or what_is_gone(connection)
    for some in _shares(_newest_checks(connection)):
        failed = [event.id for event in some if event.found in SOFT]
        found |= _coats_under(connection, failed, products - found, gone).keys()
        if found >= products:
            break
    return found


def checked_coats(
    connection: Connection, products: Collection[int], newest: int, gone: Gone | None = None
) -> tuple[CheckedCoat, ...]:
    """Find of each product the coats that were checked or sanded last, before their next coat."""
    found: dict[int, dict[int, CheckedCoat | None]] = {product: {} for product in products}
    gone = gone or what_is_gone(connection)
    events = _newest_checks(connection) + _newest_sandings(connection)
    for some in _shares(sorted(events, key=lambda event: event.at, reverse=True)):
        wanted = {product for product, seen in found.items() if len(_told(seen)) < newest}
        if not wanted:
            break
        under = _coats_under(connection, [event.id for event in some], wanted, gone)
        left = {of: [on for on in under[of] if on not in found[of]] for of in wanted}
        while these := {
            coat: of
            for of, coats in left.items()
            for coat in coats[: newest - len(_told(found[of]))]
        }:
            for coat_id, checked in _checked(connection, these, gone):
                found[these[coat_id]][coat_id] = checked
            left = {of: [on for on in coats if on not in these] for of, coats in left.items()}
    return tuple(each for _, seen in sorted(found.items()) for each in _told(seen))


def _told(seen: Mapping[int, CheckedCoat | None]) -> list[CheckedCoat]:
    return [coat for coat in seen.values() if coat is not None]


class _Event(NamedTuple):
    """A check with what it found, or a sanding; `at`: text that is in the order of time."""

    id: int
    at: str
    found: str | None = None


def _newest_checks(connection: Connection) -> list[_Event]:
    return kept.whole(
        connection, "checks", lambda: [_Event(*row) for row in ask(connection, _checks)]
    )


def _newest_sandings(connection: Connection) -> list[_Event]:
    return kept.whole(
        connection, "sandings", lambda: [_Event(*row) for row in ask(connection, _sandings)]
    )


def _newest() -> Select[Any]:
    of = tables.entry.c
    newest = select(of.id, type_coerce(of.latest_at, String))
    return newest.order_by(of.latest_at.desc(), of.id.desc()).limit(_LOOK_BACK)


@question()
def _checks() -> Select[Any]:
    of, check = tables.entry.c, tables.film_check
    # An outer join, so that the entries are gone through in the order of time and no further.
    found = _newest().add_columns(check.c.found).outerjoin(check, check.c.entry_id == of.id)
    return found.where(of.kind == kind_of(Check))


@question()
def _sandings() -> Select[Any]:
    of, work = tables.entry.c, tables.work
    sanded = _newest().join(work, work.c.entry_id == of.id)
    return sanded.where(of.kind == kind_of(Work), work.c.operation.in_(_SANDED))


def _shares(events: Sequence[_Event]) -> Iterator[Sequence[_Event]]:
    for n in range(0, len(events), _AT_ONCE):
        yield events[n : n + _AT_ONCE]


class Gone(NamedTuple):
    """The acts that were taken back, and the entries that an amendment left behind."""

    acts: Set[int]
    entries: Set[int]


def what_is_gone(connection: Connection) -> Gone:
    """Read what no longer holds."""
    withdrawn = withdrawn_acts(read_withdrawals(connection))
    amending = read_amendments(connection)
    amended = {link.supersedes for link in amending if link.supersedes is not None}
    first = (head.link for head in heads_of(connection, amended).values())
    links = {link.entry: link for link in (*amending, *first)}
    fate = fates(links.values(), withdrawn)
    return Gone(withdrawn.keys(), {id_ for id_, of in fate.items() if not of.in_force})


class _Met(NamedTuple):
    """What lay on a zone and what came then, each with where it was.

    Of a zone that was divided: what it is `now`, and `was` each of these logged as.
    """

    then: FromClause
    on: FromClause
    there: FromClause
    under: FromClause
    now: FromClause
    was: FromClause

    def on_one_zone(self, one: FromClause, other: FromClause) -> ColumnElement[bool]:
        """Tell what may have been logged on the same zone, also before that was divided.

        As a list, which an index is searched by; a condition with OR would walk the whole piece.
        """
        now, was = self.now, self.was
        logged_as = union_all(
            select(one.c.zone_id).correlate(one),
            select(was.c.was_zone_id)
            .join_from(now, was, was.c.zone_id == now.c.zone_id)
            .where(now.c.was_zone_id == one.c.zone_id)
            .correlate(one),
        )
        return (other.c.piece_id == one.c.piece_id) & other.c.zone_id.in_(logged_as)


@cache
def _met() -> _Met:
    entry, target, was = tables.entry, tables.entry_target, tables.zone_was
    return _Met(
        then=entry.alias("then"),
        on=entry.alias("on"),
        there=target.alias("there"),
        under=target.alias("under"),
        now=was.alias("now"),
        was=was.alias("as"),
    )


@question(by=lambda: _met().then.c.id)
def _lay_under() -> Select[Any]:
    met, coat = _met(), tables.coat
    then, on, there, under = met.then, met.on, met.there, met.under
    return (
        select(
            then.c.id,
            there.c.piece_id,
            there.c.zone_id,
            coat.c.product_id,
            on.c.act_id,
            type_coerce(on.c.latest_at, String),
            on.c.id,
        )
        .join_from(then, there, there.c.entry_id == then.c.id)
        .join(under, met.on_one_zone(there, under))
        # By its own table: the index by kind and time would be walked to its end for each row.
        .join(coat, coat.c.entry_id == under.c.entry_id)
        .join(on, on.c.id == coat.c.entry_id)
        .where(on.c.latest_at <= then.c.latest_at, among(coat.c.product_id, "products"))
    )


def _coats_under(
    connection: Connection, events: Sequence[int], products: Collection[int], gone: Gone
) -> dict[int, list[int]]:
    """Find by product which coats lay where some checks and sandings were made, in their order.

    A rough sieve: another product may lie over them by then.
    """
    newest: dict[tuple[int, ...], tuple[str, int]] = {}
    for *where, act, at, on_id in rows_of(connection, _lay_under, events, products=products):
        if act not in gone.acts and on_id not in gone.entries:
            newest[tuple(where)] = max(newest.get(tuple(where), ("", 0)), (at, on_id))
    place = {event: n for n, event in enumerate(events)}
    rows = sorted(
        (place[event], product, -on_id) for (event, *_, product), (_, on_id) in newest.items()
    )
    found: dict[int, dict[int, None]] = defaultdict(dict)
    for _, product, on_id in rows:
        found[product].setdefault(-on_id)
    return defaultdict(list, {product: list(coats) for product, coats in found.items()})


def _checked(
    connection: Connection, coats: Mapping[int, int], gone: Gone
) -> Iterator[tuple[int, CheckedCoat | None]]:
    """Look at what was done on some coats, of which product each is, before the next one.

    None: neither check nor sanding.
    """
    later = _later(connection, coats)
    ids = {*coats, *(e for reached in later.values() for on in reached.values() for e in on)}
    standing = _standing(connection, ids, gone)
    for each, product in coats.items():
        told: dict[frozenset[int], Target] = {}
        for target, entries in sorted(later[each].items()) if each in standing else ():
            told.setdefault(_until_next_coat(standing[each], entries, standing), target)
        told.pop(frozenset(), None)
        yield each, _told_by(told, product, standing[each], standing) if told else None


def _told_by(
    told: Mapping[frozenset[int], Target], product: int, on: Head, standing: Mapping[int, Head]
) -> CheckedCoat:
    end = max(standing[event].when.latest for events in told for event in events)
    return CheckedCoat(on.id, product, frozenset(told.values()), on.when.earliest, end)


def _until_next_coat(
    on: Head, entries: Iterable[int], standing: Mapping[int, Head]
) -> frozenset[int]:
    """Return the checks and the sanding between a coat and the next one on a zone."""
    since = sorted(
        (standing[e] for e in entries if e in standing), key=lambda head: head.when.order
    )
    found = set()
    for head in since:
        if head.when.order > on.when.order:
            if head.kind == kind_of(Coat):
                break
            found.add(head.id)
    return frozenset(found)


@question(by=lambda: _met().on.c.id)
def _came_then() -> Select[Any]:
    met, work = _met(), tables.work
    then, on, there, under = met.then, met.on, met.there, met.under
    return (
        select(on.c.id, then.c.id)
        .join_from(on, under, under.c.entry_id == on.c.id)
        .join(there, met.on_one_zone(under, there))
        .join(then, then.c.id == there.c.entry_id)
        .outerjoin(work, work.c.entry_id == then.c.id)
        .where(then.c.latest_at >= on.c.latest_at, then.c.id != on.c.id)
        .where(
            or_(
                then.c.kind.in_((kind_of(Coat), kind_of(Check))),
                work.c.operation.in_(_SANDED),
            )
        )
    )


def _later(connection: Connection, coats: Collection[int]) -> dict[int, dict[Target, list[int]]]:
    """Read which coats, checks and sanding came after some coats, by coat and zone."""
    found: dict[int, dict[Target, list[int]]] = defaultdict(lambda: defaultdict(list))
    since = {(row[0], row[1]) for row in rows_of(connection, _came_then, coats)}
    reached = read_targets(connection, {entry for pair in since for entry in pair})
    for coat_id, entry_id in sorted(since):
        for target in reached[coat_id] & reached[entry_id]:
            found[coat_id][target].append(entry_id)
    return found


def _standing(connection: Connection, ids: Collection[int], gone: Gone) -> dict[int, Head]:
    """Read those of some entries that are in force."""
    return {
        id_: head
        for id_, head in heads_of(connection, ids).items()
        if head.act not in gone.acts and id_ not in gone.entries
    }


def rooms_given(connection: Connection, pieces: Collection[int]) -> dict[int, int | None]:
    """Read in which room the parts of some pieces are said to stand, by piece."""
    return {row[0]: row[1] for row in rows_of(connection, _rooms, pieces)}


@question(by=lambda: tables.piece.c.id)
def _rooms() -> Select[Any]:
    piece, part = tables.piece, tables.part
    return select(piece.c.id, part.c.room_id).join_from(piece, part)


@question(by=lambda: tables.piece.c.id)
def _woods() -> Select[Any]:
    piece, part, face, zone = tables.piece, tables.part, tables.face, tables.zone
    return select(piece.c.id, zone.c.id, zone.c.species, part.c.species).select_from(
        piece.join(part).join(face, face.c.part_id == part.c.id).join(zone)
    )


def woods_given(connection: Connection, zones: Collection[Target]) -> dict[Target, str | None]:
    """Read of which wood some zones are: their own, else their part's; None: not said."""
    rows = rows_of(connection, _woods, {target.piece for target in zones})
    woods = {Target(row[0], row[1]): row[2] or row[3] for row in rows}
    return {target: woods.get(target) for target in zones}
