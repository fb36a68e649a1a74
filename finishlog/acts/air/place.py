"""Put on record what kind of place a room is, what burns in it, how it airs, where it leads to."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from msgspec import Struct
from msgspec.structs import replace

from finishlog.asks.bench.vapour_there import hanging
from finishlog.asks.look.look import Look, look
from finishlog.context import Context
from finishlog.core.air.place import Fixture, Lives, Opening, PlaceKind
from finishlog.core.findings import Finding, Level
from finishlog.core.measure.quantities import cubic_metres, cubic_metres_an_hour
from finishlog.core.safety.ignition import of_films, reached_from, standing_in
from finishlog.core.safety.whats_in import in_coat
from finishlog.core.shop.things import Room, Shop, ThingKind
from finishlog.core.zone.grouping import labels_of
from finishlog.errors import UsageFault
from finishlog.picking import pick_room
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.changes import changed
from finishlog.store.things.edit import set_joins, set_value

_NOTHING, _NOT_SAID = "nothing", "not said"
# Figures of a room, by the columns that they stand in.
_MEASURED = ("volume_m3", "exhaust_m3_h", "mixing")


class PlaceTold(Struct, frozen=True):
    """What was told of a room now; None: not a word of it. m³, m³/h; exhaust 0: none measured.

    `joined`: rooms by their names, and what leads there. `out`: what was put out for this evening.
    """

    has: tuple[Fixture, ...] | None = None
    kind: PlaceKind | None = None
    volume_m3: float | None = None
    exhaust_m3_h: float | None = None
    mixing: float | None = None
    lives: tuple[Lives, ...] | None = None
    joined: tuple[tuple[str, Opening], ...] | None = None
    out: tuple[Fixture, ...] | None = None

    @property
    def says_nothing(self) -> bool:
        """Tell whether not a word was told."""
        return all(getattr(self, name) is None for name in self.__struct_fields__)


NOTHING_TOLD = PlaceTold()


def put_place(
    context: Context, ledger: Ledger, shop: Shop, room: Room, told: PlaceTold
) -> list[str]:
    """Put on record what was told of a room, within an act; return it in words."""
    now, place = context.clock.now, room.place
    # What is put out stands there.
    has = told.has
    if told.out:
        has = tuple(dict.fromkeys((*(has if has is not None else place.has or ()), *told.out)))
    said: dict[str, tuple[object, str, str]] = {}
    if has is not None:
        was = _words(place.has) if place.has is not None else _NOT_SAID
        said["has"] = (" ".join(has), was, _words(has))
    if told.lives is not None:
        said["lives"] = (" ".join(told.lives), _words(place.lives), _words(told.lives))
    if told.out is not None:
        said["put_out"] = (" ".join(told.out), _words(place.out), _words(told.out))
        said["out_at"] = (now if told.out else None, "", "tonight" if told.out else "lit")
    if told.kind is not None:
        said["kind"] = (told.kind.value, place.kind or _NOT_SAID, told.kind.value)
    for name in _MEASURED:
        becomes, before = getattr(told, name), getattr(place, name)
        if becomes is not None:
            said[name] = (becomes, f"{before:g}" if before else _NOT_SAID, f"{becomes:g}")
    for column, (value, was, shown) in said.items():
        set_value(ledger, ThingKind.ROOM, room.id, column, value, (was, shown))
    if told.joined is not None:
        left = _join(ledger, shop, room, told.joined)
        return [*_in_words(told), *left]
    return list(_in_words(told))


def lit_now(context: Context, ledger: Ledger, room: Room) -> tuple[Finding, ...]:
    """Say what burns where vapour hangs that a film gave off and nobody aired, by the films."""
    seen = look(context, ledger.connection)
    return tuple(_lit(room.id, seen))


def _lit(room: int, seen: Look) -> Iterator[Finding]:
    now = seen.clock.now
    for found in hanging(seen).values():
        states = [state for state, _ in found]
        tops = [state.top for state in states if state.top]
        films = ((top.of, in_coat(top.coat, seen.shop)) for top in tops)
        vapour = of_films(films, seen.facts, now)
        for through, beside in reached_from(states[0].room):
            if vapour is not None and beside.id == room:
                lit = standing_in(vapour, beside, now, through)
                yield from (replace(f, on=labels_of(states)) for f in lit if f.level is Level.STOP)


def _join(
    ledger: Ledger, shop: Shop, room: Room, joined: Iterable[tuple[str, Opening]]
) -> list[str]:
    """Say which rooms one leads to, in place of those that it led to; name what is left out."""
    to: Mapping[int, Opening] = {pick_room(shop, name).id: by for name, by in joined}
    if room.id in to:
        raise UsageFault(f"{room.name} does not lead to itself", "name another room")
    set_joins(ledger.connection, room.id, to)
    names = {each.room: shop.rooms[each.room].name for each in room.place.joins}
    becomes = ", ".join(f"{shop.rooms[other].name} by {by}" for other, by in to.items())
    changed(ledger, ThingKind.ROOM, room.id, "leads to", ", ".join(names.values()), becomes)
    gone = [name for other, name in names.items() if other not in to]
    return [f"leads no more to: {_words(gone)}"] if gone else []


def _words(found: Iterable[str]) -> str:
    return ", ".join(found) or _NOTHING


def _in_words(told: PlaceTold) -> Iterator[str]:
    if told.has is not None:
        yield f"has: {_words(told.has)}"
    if told.kind is not None:
        yield told.kind.value
    if told.volume_m3 is not None:
        yield cubic_metres(told.volume_m3)
    if told.exhaust_m3_h is not None:
        flow = cubic_metres_an_hour(told.exhaust_m3_h)
        yield f"exhaust {flow}" if told.exhaust_m3_h else "no exhaust that was measured"
    if told.mixing is not None:
        yield f"mixing {told.mixing:g}"
    if told.lives is not None:
        yield f"lives there: {_words(told.lives)}"
    if told.joined is not None:
        yield f"leads to: {_words(f'{name} by {by}' for name, by in told.joined)}"
    if told.out is not None:
        yield f"out tonight: {_words(told.out)}" if told.out else "lit again"
