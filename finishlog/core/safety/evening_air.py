"""What the coats of one evening come to in the air of one room, and what would do.

A sum of what was measured, by the arithmetic of `ventilation`; where dilution is no answer to one
of them, or the room's size was not told, there is no figure.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime, timedelta

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.place import PlaceKind
from finishlog.core.finish.classes import Method
from finishlog.core.mixing.containers import Container
from finishlog.core.published.facts import Facts
from finishlog.core.safety.room_takes import AN_HOUR, vented_of
from finishlog.core.safety.ventilation import Air, Leaves, Release, Vented, Weighs, air_of
from finishlog.core.safety.what_leaves import WhatLeaves, leaves_of
from finishlog.core.shop.things import Product, Room, Shop

_HOUR = timedelta(hours=1)
# How far apart two coats are looked for that stay below the limits, and in what steps.
_LATEST_H, _STEP_H = 24.0, 0.5
_FINE = 1 / 256


class OneCoat(Struct, frozen=True):
    """So much (ml; None: not measured) of a finish, from a moment on, on so many pieces.

    `time`: within how long it leaves; never less than an hour is taken.
    """

    product: Product
    start: datetime
    amount_ml: float | None = None
    container: Container | None = None
    method: Method | None = None
    time: timedelta = AN_HOUR
    pieces: int = 1


class EveningAir(Struct, frozen=True):
    """What an evening comes to in a room, its last coat with it. m³, m³/h; amounts in ml.

    `before`: what it came to without the last. Of the last one: `less_ml`, and `fewer` of its
    `pieces`, stay below every limit (None: none of it does); `later_h`: hours behind the others at
    which all of it does (None: no exhaust was measured, or never); `instead`: films in water that
    are on record. `unmeasured`: what went on and nobody measured.
    """

    room: str
    volume_m3: float
    exhaust_m3_h: float | None
    mixing: float
    mixing_told: bool
    amounts: tuple[tuple[str, float], ...]
    air: Air
    before: Weighs
    pieces: int
    unmeasured: tuple[str, ...] = ()
    less_ml: float | None = None
    fewer: int | None = None
    later_h: float | None = None
    instead: tuple[str, ...] = ()

    @property
    def passes(self) -> bool:
        """Tell whether its last coat passes a limit that was not passed before."""
        return _ORDER.index(self.air.weighs) > _ORDER.index(self.before)


_ORDER = (Weighs.UNDER, Weighs.OVER_DAY, Weighs.NOT_ENOUGH)


def evening_air(
    room: Room, coats: Sequence[OneCoat], shop: Shop, facts: Facts
) -> EveningAir | None:
    """Sum up the coats of an evening in a room, the last of them last; None: there is no figure."""
    vented = vented_of(room.place)
    if vented is None or room.place.kind is PlaceKind.OUTDOORS:
        return None
    each = [(coat, leaves_of(coat.product, coat.container, shop, facts, coat.method))
            for coat in coats]  # fmt: skip
    if any(leaves.why_no_figure is not None for _, leaves in each):
        return None
    left = [(coat, leaves) for coat, leaves in each if not leaves.is_nothing]
    known = [(coat, leaves) for coat, leaves in left if coat.amount_ml is not None]
    if not known or known[-1][0] is not coats[-1]:
        return None
    began = min(coat.start for coat, _ in known)
    releases = [_release(coat, leaves, began) for coat, leaves in known]
    amounts: dict[str, float] = {}
    for coat, _ in known:
        amounts[coat.product.name] = amounts.get(coat.product.name, 0.0) + (coat.amount_ml or 0.0)
    unmeasured = (coat.product.name for coat, _ in left if coat.amount_ml is None)
    place = room.place
    before = air_of(releases[:-1], vented).weighs if releases[:-1] else Weighs.UNDER
    found = EveningAir(
        room.name,
        vented.volume_m3,
        vented.exhaust_m3_h,
        vented.mixing,
        place.mixing is not None,
        tuple(amounts.items()),
        air_of(releases, vented),
        before,
        coats[-1].pieces,
        tuple(dict.fromkeys(unmeasured)),
    )
    return _with_what_would_do(found, coats[-1], releases, vented, shop, facts)


def _release(coat: OneCoat, leaves: WhatLeaves, began: datetime) -> Release:
    within = max(coat.time, AN_HOUR) / _HOUR
    return Release(leaves.of(coat.amount_ml or 0.0), (coat.start - began) / _HOUR, within)


def _with_what_would_do(
    found: EveningAir,
    last: OneCoat,
    releases: Sequence[Release],
    vented: Vented,
    shop: Shop,
    facts: Facts,
) -> EveningAir:
    if found.air.weighs is Weighs.UNDER:
        return found
    *others, mine = releases
    share = _share_below(others, mine, vented)
    return replace(
        found,
        less_ml=share * (last.amount_ml or 0.0) or None,
        fewer=int(share * last.pieces) or None,
        later_h=_later(others, mine, vented),
        instead=_in_water(last.product, shop, facts),
    )


def _share_below(others: Sequence[Release], mine: Release, vented: Vented) -> float:
    """Return how much of the last one stays below every limit, rounded down; 0: nothing."""
    low, high = 0.0, 1.0
    while high - low > _FINE:
        middle = (low + high) / 2
        part = replace(mine, leaves=tuple(_part(each, middle) for each in mine.leaves))
        under = air_of([*others, part], vented).weighs is Weighs.UNDER
        low, high = (middle, high) if under else (low, middle)
    return low


def _part(leaves: Leaves, share: float) -> Leaves:
    return replace(leaves, ml=leaves.ml * share)


def _later(others: Sequence[Release], mine: Release, vented: Vented) -> float | None:
    """Return how many hours after the others the last one passes no limit; None: never."""
    if not others or not vented.changes_h or air_of([mine], vented).weighs is not Weighs.UNDER:
        return None
    ended = max(each.start_h + each.hours for each in others)
    steps = (_STEP_H * n for n in range(int(_LATEST_H / _STEP_H) + 1))
    return next(
        (
            gap
            for gap in steps
            if air_of([*others, replace(mine, start_h=ended + gap)], vented).weighs is Weighs.UNDER
        ),
        None,
    )


def _in_water(product: Product, shop: Shop, facts: Facts) -> tuple[str, ...]:
    """Name films of the person's that give off nothing that is counted here."""
    film = facts.finish_class(product.class_key).builds_film
    return tuple(
        each.name
        for each in shop.products.values()
        if not each.archived
        and each.id != product.id
        and facts.finish_class(each.class_key).builds_film is film
        and leaves_of(each, None, shop, facts).is_nothing
        and facts.finish_class(each.class_key).carrier == "water"
    )
