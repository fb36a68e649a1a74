"""What a rule reads of the record, seen while it runs.

Every kind of entry and of thing tells when a field of it is looked at. A value that was worked out
before the rule ran counts as the facts that it came from (`DERIVED`).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from functools import cache
from inspect import getmembers
from typing import Any

import pytest
from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.room import RoomAir
from finishlog.core.air.span import AirPoint
from finishlog.core.film.layers import Layer
from finishlog.core.finish.classes import FigureSet
from finishlog.core.log.kinds import OF_THE_WORK
from finishlog.core.mixing import containers
from finishlog.core.mixing.came_from import CameFrom
from finishlog.core.mixing.containers import ContainerState
from finishlog.core.rules.on_record import facts_on_record, name_of_thing
from finishlog.core.rules.rule import Rule
from finishlog.core.shop import things
from finishlog.core.shop.respirators import Mask
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import FilmStages, ZoneState
from tests.stories.telling import Scene

_STOOD = "part.room moved.when moved.room moved.pieces"
_READ = "reading.when reading.room reading.air air-import.room"
_FORETOLD = "room.coldest_night_c room.usual heat.when heat.room heat.temperature_c"
_AIR = f"{_STOOD} {_READ} {_FORETOLD}"
_WOOD = "part.species zone.species"
_TAUGHT = f"{_WOOD} coat.product coat.method coat.container"

# Worked out before a rule runs: which facts each came from.
DERIVED: Mapping[tuple[type, str], str] = {
    (FigureSet, "class_key"): "product.class_key",
    (FigureSet, "stages"): "product.class_key product.label",
    (FigureSet, "window"): "product.class_key product.label_window",
    (Layer, "of"): "product.class_key",
    (Layer, "air"): f"coat.when {_AIR}",
    (Layer, "window_air"): f"coat.when {_AIR}",
    (Layer, "air_again"): "fault.what work.operation work.when stripped.survives",
    (Layer, "air_rinsed"): f"work.operation work.when {_AIR}",
    (Layer, "before"): f"coat.when {_AIR}",
    (Layer, "abraded"): "work.operation",
    (Layer, "wipes"): "work.operation",
    (Layer, "washed"): "work.operation",
    (Layer, "on_a_spot"): "fault.what product.class_key",
    (Layer, "scratches"): "check.test",
    (Layer, "laid_bare"): "stripped.survives",
    (Layer, "felt"): "piece-reading.when coat.when",
    (Layer, "pace"): _TAUGHT,
    (Layer, "wood"): _WOOD,
    (Layer, "came_from"): "coat.container",
    (CameFrom, "state"): "coat.container coat.when container.when",
    (
        CameFrom,
        "hardener",
    ): "coat.container coat.note container.kind mix-part.name product.class_key",
    (CameFrom, "hardener_pct"): "mix-part.name mix-part.parts",
    (CameFrom, "wrong_thinner"): "container.drawn_from mix-part.name product.class_key",
    (CameFrom, "sources"): "coat.container container.drawn_from container.when",
    (CameFrom, "since"): "container.when",
    (CameFrom, "when"): "coat.when",
    (ContainerState, "of"): "product.class_key",
    (ContainerState, "made"): "container.made_at container.when",
    (ContainerState, "opened"): "container.deed container.when",
    (ContainerState, "use_by"): "container.use_by_at container.when product.class_key",
    (ContainerState, "holds"): "mix-part.name",
    (ContainerState, "pot_life"): "product.class_key",
    (ZoneState, "layers"): "coat.when stripped.survives",
    (ZoneState, "progress"): "step.operation step.product step.faces coat.product work.operation",
    (ZoneState, "room"): _STOOD,
    (ZoneState, "stays"): _STOOD,
    (ZoneState, "set_aside"): "set-aside.when resumed.when",
    (ZoneState, "species"): _WOOD,
    (ZoneState, "joined_by"): "joined.members",
    (ZoneState, "masked_since"): "work.operation",
    (
        ZoneState,
        "faults",
    ): (
        "fault.what fault.place product.class_key work.operation work.place check.found"
        " check.place stripped.survives"
    ),
    (ZoneState, "used_for"): "project.used_for",
    (ZoneState, "handed_over"): "handover.when",
    (RoomAir, "readings"): _READ,
    (AirPoint, "supposed"): "reading.humidity_supposed",
    (RoomAir, "coldest_night_c"): "room.coldest_night_c",
    (RoomAir, "usual"): "room.usual",
    (RoomAir, "heats"): "heat.when heat.room heat.temperature_c",
    (RoomAir, "heater"): "room.heater",
    (RoomAir, "place"): "room.place",
    (RoomAir, "near"): "room.place",
    (RoomAir, "course"): f"{_READ} {_FORETOLD}",
    (RoomAir, "answered"): f"{_READ} {_FORETOLD}",
    (RoomAir, "has_colder_nights"): "room.coldest_night_c room.usual",
    (Asked, "then"): "step.operation step.product coat.product",
    (Asked, "comes"): (
        "step.note product.name product.class_key product.note container.note container.drawn_from"
        " mix-part.name mix-part.product product.own_rules"
    ),
    (Mask, "name"): "respirator.name",
    (Mask, "holds"): "respirator.holds respirator.deed",
    (Mask, "opened"): "respirator.when respirator.deed",
    (Mask, "worn"): "respirator.worn_min",
    (Mask, "kept"): "respirator.kept",
    (Around, "wet_films"): f"product.class_key {_STOOD}",
    (Around, "lessons"): (
        "review.outcome review.when review.text fault.what fault.when check.found check.when"
        " stripped.when stripped.survives coat.when coat.product product.name product.class_key"
        f" work.operation part.is_board part.old_finish {_WOOD}"
    ),
}

_FACTS = frozenset(facts_on_record())
_THINGS = {
    kind: name_of_thing(kind)
    for module in (things, containers)
    for _, kind in getmembers(module, lambda each: isinstance(each, type))
    if issubclass(kind, Struct) and kind.__module__ == module.__name__
}
_NAMED: dict[type, str] = {kind: name for name, kind in OF_THE_WORK.items()} | _THINGS
# What a field of the program's own is read from.
_INSTEAD = {"coat.product_name": "product.name"}


@cache
def facts_in(kind: type, field: str) -> frozenset[str]:
    """Return the facts that a field of a value holds; none: it holds no fact by itself."""
    if kind in _NAMED and (kind, field) not in DERIVED:
        fact = f"{_NAMED[kind]}.{field}"
        return frozenset({_INSTEAD.get(fact, fact)}) & _FACTS
    return frozenset(DERIVED.get((kind, field), "").split())


@contextmanager
def watched() -> Iterator[set[str]]:
    """Collect the facts that are looked at meanwhile."""
    seen: set[str] = set()

    def look(of: object, field: str) -> Any:
        seen.update(facts_in(type(of), field))
        return object.__getattribute__(of, field)

    with pytest.MonkeyPatch.context() as patch:
        for kind in {*_NAMED, *(kind for kind, _ in DERIVED)}:
            patch.setattr(kind, "__getattribute__", look)
        yield seen


def read_by(rule: Rule, at: Scene) -> frozenset[str]:
    """Return the facts that a rule reads of a scene; none where it does not bind what is asked."""
    if at.asked.act not in rule.binds:
        return frozenset()
    zone, near = _not_asked_yet(at.zone), _around(at.around)
    with watched() as seen:
        list(rule.find(zone, at.asked, near))
    return frozenset(seen)


def _not_asked_yet(zone: ZoneState) -> ZoneState:
    """Return a zone whose film nobody asked when it is ready."""
    layers = tuple(map(replace, zone.layers))
    return replace(
        zone, layers=layers, stages=FilmStages(layers, shuts=zone.face.meets is not None)
    )


def _around(near: Around) -> Around:
    by_piece = {piece: tuple(map(_not_asked_yet, zones)) for piece, zones in near.by_piece.items()}
    wet = {
        room: tuple((_not_asked_yet(zone), until) for zone, until in films)
        for room, films in near.wet_films.items()
    }
    return replace(near, by_piece=by_piece, wet_films=wet)
