"""What the air of a room comes to with a finish, and what would do: for `safety ROOM`."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import timedelta

from msgspec import Struct

from finishlog.asks.look.air_there import air_of, due_air
from finishlog.asks.look.look import Look
from finishlog.core.commands import Do
from finishlog.core.findings import Finding
from finishlog.core.finish.classes import Method
from finishlog.core.safety.ignition import lights, of_films
from finishlog.core.safety.room_takes import AN_HOUR, Brought, RoomTakes
from finishlog.core.safety.whats_in import in_product
from finishlog.core.shop.names import find
from finishlog.core.shop.things import Product, Room, ThingKind
from finishlog.errors import NotFound, UsageFault


class AskedOfAir(Struct, frozen=True):
    """What is asked of a room's air: a product by its name, so much (ml), within so long, how."""

    product: str | None = None
    amount_ml: float | None = None
    time: timedelta | None = None
    method: Method | None = None

    @property
    def is_asked(self) -> bool:
        """Tell whether anything was typed."""
        return self != NOT_ASKED


NOT_ASKED = AskedOfAir()


def air_in(
    room: Room, asked: AskedOfAir, seen: Look
) -> tuple[tuple[RoomTakes, ...], tuple[Finding, ...]]:
    """Return what a room takes of what was named, or is due there, and what lights its vapour.

    UsageFault for an amount of nothing named, where several things are due or none is.
    """
    products = _meant(room, asked, seen)
    found = (_one(room, each, asked, seen) for each in products)
    return tuple(line for line in found if line is not None), _lit(room, products, seen)


def _lit(room: Room, products: Iterable[Product], seen: Look) -> tuple[Finding, ...]:
    """Say what burns, glows or sparks where the vapour of some products would come to."""
    films = ((seen.facts.finish_class(p.class_key), in_product(p)) for p in products)
    now = seen.clock.now
    return tuple(lights(of_films(films, seen.facts, now), seen.bench.rooms[room.id], now))


def _meant(room: Room, asked: AskedOfAir, seen: Look) -> list[Product]:
    due = due_air(seen, [room.id])
    if asked.product is not None:
        products = [_named(asked.product, seen)]
    else:
        names = {line.product for line in due}
        products = [p for p in seen.shop.products.values() if p.name in names and not p.archived]
    if asked.is_asked and len(products) != 1 and asked.product is None:
        raise UsageFault(
            f"of which finish? {', '.join(p.name for p in products) or 'none is due there'}",
            f"say it: {Do.SAFETY.option(of='PRODUCT')}",
        )
    return products


def _one(room: Room, product: Product, asked: AskedOfAir, seen: Look) -> RoomTakes | None:
    pieces = {
        zone.target.piece
        for zone in seen.bench.in_the_shop
        if zone.room.id == room.id
        and zone.progress.next_coat
        and zone.progress.next_coat.product == product.id
    }
    brought = None
    if asked.amount_ml is not None:
        brought = Brought(asked.amount_ml, asked.time or AN_HOUR, len(pieces))
    return air_of(seen, room, product, method=asked.method, brought=brought)


def _named(typed: str, seen: Look) -> Product:
    found = find(typed, list(seen.shop.products.values()), seen.shop.aliases, ThingKind.PRODUCT)
    if len(found) == 1:
        return found[0]
    keys = seen.facts.find_class(typed)
    if not found and len(keys) == 1:
        return Product(0, seen.facts.finish_class(keys[0]).name, keys[0])
    names = ", ".join(p.name for p in found or seen.shop.products.values())
    raise NotFound(f"{typed!r} is no finish of yours", f"there are: {names}")
