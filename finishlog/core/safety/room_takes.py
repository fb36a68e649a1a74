"""How much of a finish a room takes before its air is over a limit, and what an amount makes of it.

Pure arithmetic over what was told of the room; where its size was not, there is no figure.
"""

from __future__ import annotations

from datetime import timedelta

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.place import Place, PlaceKind
from finishlog.core.finish.classes import Method
from finishlog.core.mixing.containers import Container
from finishlog.core.published.facts import Facts
from finishlog.core.published.vapours import AIR_GUN
from finishlog.core.safety.ventilation import (
    TENTH,
    WORST_MIXING,
    Air,
    NoFigure,
    Release,
    Vented,
    air_of,
    between_h,
    is_poor_answer,
    main_parts,
    purge_h,
)
from finishlog.core.safety.what_leaves import WhatLeaves, leaves_of
from finishlog.core.shop.things import Product, Room, Shop

# The session that a coat evaporates in where nobody says how long it took; our own assumption.
AN_HOUR = timedelta(hours=1)
_MEASURE_ML = 1000.0


class Brought(Struct, frozen=True):
    """So much (ml) of a finish put on within so long, as so many pieces (0: not known)."""

    amount_ml: float
    time: timedelta = AN_HOUR
    pieces: int = 0


class MainSolvent(Struct, frozen=True):
    """The main solvent with the lowest limit: its limits in ppm; None: none is known."""

    name: str
    day_ppm: float
    short_ppm: float | None


class RoomTakes(Struct, frozen=True):
    """What a room's air takes of a finish, within an hour or the session. Amounts are ml of it.

    `why_no_figure`: why dilution is no answer; `main`: the main solvent with the lowest limit.
    `poor`: dilution is a poor answer. `volume_m3` None: its size was not told. `day_ml`, `short_ml`
    and `fire_ml`: where the limit of a day, of 15 minutes (None: none known) and a tenth of the
    explosive one are reached. `air`: what an amount makes of it, `purge_h` the hours from tack-free
    on until it is at the day's limit (None: no exhaust measured), `between_h` how many hours apart
    it may be had again, `at_once` how many of the pieces stay below what is passed.
    """

    room: str
    product: str
    outdoors: bool
    why_no_figure: NoFigure | None = None
    main: MainSolvent | None = None
    several: bool = False
    poor: bool = False
    volume_m3: float | None = None
    exhaust_m3_h: float | None = None
    mixing: float = WORST_MIXING
    mixing_told: bool = False
    # What leaves it and its limits, where its safety data sheet says so, are the sheet's.
    by_sheet: bool = False
    day_ml: float | None = None
    short_ml: float | None = None
    fire_ml: float | None = None
    brought: Brought | None = None
    air: Air | None = None
    purge_h: float | None = None
    between_h: float | None = None
    at_once: int | None = None
    # Of what is sprayed: how fast (m/s) air goes through a booth's face; free formaldehyde (%).
    booth_m_per_s: tuple[float, float] | None = None
    formaldehyde_pct: tuple[float, float] | None = None

    @property
    def least_ml(self) -> float | None:
        """The amount from which on some limit is passed."""
        known = [ml for ml in (self.day_ml, self.short_ml, self.fire_ml) if ml is not None]
        return min(known, default=None)


def room_takes(
    room: Room,
    product: Product,
    container: Container | None,
    shop: Shop,
    facts: Facts,
    method: Method | None = None,
    brought: Brought | None = None,
) -> RoomTakes | None:
    """Work out what a room takes of a finish; None: nothing leaves it."""
    leaves = leaves_of(product, container, shop, facts, method)
    if leaves.is_nothing:
        return None
    place = room.place
    said = RoomTakes(
        room.name,
        product.name,
        place.kind is PlaceKind.OUTDOORS,
        leaves.why_no_figure,
        _main(leaves),
        several=len(leaves.shares) > 1,
        poor=is_poor_answer(leaves.of(1.0)),
        volume_m3=place.volume_m3,
        exhaust_m3_h=place.exhaust_m3_h or None,
        mixing=place.mixing or WORST_MIXING,
        mixing_told=place.mixing is not None,
        by_sheet=product.sheet.tells_of_air,
        brought=brought,
        booth_m_per_s=_booth(facts) if leaves.why_no_figure is NoFigure.SPRAYED else None,
        formaldehyde_pct=_formaldehyde(leaves, facts),
    )
    vented = vented_of(place)
    if said.why_no_figure is not None or said.outdoors or vented is None:
        return said
    return _figured(said, leaves, vented, brought)


def _booth(facts: Facts) -> tuple[float, float]:
    speeds = [face.design_m_per_s for face in facts.vapours.booths if face.gun == AIR_GUN]
    return min(speeds), max(speeds)


def _formaldehyde(leaves: WhatLeaves, facts: Facts) -> tuple[float, float] | None:
    free = facts.vapours.formaldehyde_pct
    gives_off = leaves.why_no_figure is NoFigure.FORMALDEHYDE
    return (free.low, free.high) if gives_off else None


def vented_of(place: Place) -> Vented | None:
    """Return a room's air as it was told; None: its size was not."""
    if place.volume_m3 is None:
        return None
    return Vented(place.volume_m3, place.exhaust_m3_h or None, place.mixing or WORST_MIXING)


def _figured(
    said: RoomTakes, leaves: WhatLeaves, vented: Vented, brought: Brought | None
) -> RoomTakes:
    hours = (brought.time if brought else AN_HOUR) / timedelta(hours=1)
    measure = air_of([Release(leaves.of(_MEASURE_ML), 0.0, hours)], vented)
    figures = {
        "day_ml": _MEASURE_ML / measure.of_day,
        "short_ml": _MEASURE_ML / measure.of_short if measure.of_short else None,
        "fire_ml": _MEASURE_ML * TENTH / measure.of_lel,
    }
    found = replace(said, **figures)
    if brought is None:
        return found
    evening = [Release(leaves.of(brought.amount_ml), 0.0, hours)]
    air = air_of(evening, vented)
    of_pieces = int(brought.pieces / air.times_over) if air.times_over > 1 else brought.pieces
    worked = {
        "air": air,
        "purge_h": purge_h(vented, max(air.day_highest, 1.0)),
        "between_h": between_h(evening, vented),
        "at_once": of_pieces if brought.pieces else None,
    }
    return replace(found, **worked)


def _main(leaves: WhatLeaves) -> MainSolvent | None:
    """Return the main solvent that decides."""
    main = leaves.main or next(iter(main_parts(leaves.of(1.0))), None)
    return MainSolvent(main.name, main.day_ppm, main.short_ppm) if main else None
