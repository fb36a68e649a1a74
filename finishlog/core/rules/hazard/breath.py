"""What hurts the lungs of whoever sprays it, warms it, or sands it young: isocyanate."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime

from finishlog.core.air.room import RoomAir
from finishlog.core.film.attempts import ABRADING as DRY_STRIPPING
from finishlog.core.film.layers import Layer
from finishlog.core.findings import Act, Answer, Finding, Level, also, finding
from finishlog.core.finish.classes import FinishClass
from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.sheet import YOUR_SHEET
from finishlog.core.log.words import Operation, Stripping
from finishlog.core.mixing.chemistry import Ingredient
from finishlog.core.published.chemistry import Substance
from finishlog.core.rules.reads import AIR, AIR_SUPPLY, COMES, LAYERS, SAYS, WAIT
from finishlog.core.rules.rule import ABRADING, COAT, rule
from finishlog.core.safety.hazards import hazards_in, spared_by_sheet
from finishlog.core.safety.heated import is_hot
from finishlog.core.safety.oily_waste import is_sprayed
from finishlog.core.safety.whats_in import in_film
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

_ISOCYANATE = "niosh-isocyanate-alerts"
# Dust by a machine, or by dry paper on all of it; a scuff by hand is a few strokes.
_SANDS = frozenset({Operation.SAND, Operation.LEVEL})


def _brings(over: FinishClass, asked: Asked) -> Ingredient:
    """Return what goes on, as the person calls it."""
    return asked.comes or Ingredient(over.name, over.key)


@rule(
    "isocyanate-sprayed",
    binds=COAT,
    source=_ISOCYANATE,
    reads=f"{COMES} {AIR_SUPPLY}",
)
def sprayed(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Isocyanate is sprayed with supplied air and a trained set-up, or it is not sprayed."""
    if asked.over is None or not is_sprayed(asked.method, asked.over):
        return
    what = _brings(asked.over, asked)
    if Hazard.ISOCYANATE not in hazards_in(what, around.facts):
        return
    found = finding("isocyanate-sprayed", Level.STOP, _ISOCYANATE, answer=Answer.BLOCKED)
    if around.breathes_through(Hazard.ISOCYANATE):
        found = finding("isocyanate-supplied", source=_ISOCYANATE)
    yield also(found, of=what.name)


@rule("by-your-sheet", binds=COAT, source=YOUR_SHEET, reads=COMES)
def by_your_sheet(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What a class has and the sheet rules out is not warned of; that this is so is said."""
    less = spared_by_sheet(asked.comes, around.facts) if asked.comes is not None else ()
    if asked.comes is not None and less:
        yield finding("by-your-sheet", source=YOUR_SHEET, of=asked.comes.name, less=less)


@rule(
    "isocyanate-heated",
    binds=COAT | {Act.WIPE, Act.WORK, Act.RUB, Act.TAKE_OFF},
    source=_ISOCYANATE,
    reads=(
        f"{COMES} {LAYERS} {AIR} {AIR_SUPPLY} coat.container coat.product coat.note container.when"
    ),
)
def heated(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Heat drives isocyanate out of what holds it, wet or hard: supplied air, or no heat."""
    gun = is_hot(asked.comes)
    over = asked.over
    holds = [_brings(over, asked).name] if over and _is_isocyanate(over, asked, around) else []
    if gun:
        holds += [y.coat.product_name for y in zone.layers if _holds_it(y, around)]
    elif over is None or not is_hot_room(over, zone.room, around.now):
        return
    for name in holds[:1]:
        supplied = around.breathes_through(Hazard.ISOCYANATE)
        yield isocyanate_heated(name, "" if gun else zone.room.name, supplied=supplied)


def isocyanate_heated(name: str, in_room: str, *, supplied: bool) -> Finding:
    """Say that heat drives isocyanate out of a film; `in_room`: of a room that is too hot."""
    level, answer = (Level.NOTE, None) if supplied else (Level.STOP, Answer.BLOCKED)
    found = finding("isocyanate-heated", level, _ISOCYANATE, answer=answer)
    return also(found, of=name, in_room=in_room)


def is_hot_room(over: FinishClass, room: RoomAir, moment: datetime) -> bool:
    """Tell whether a room was read lately hotter than a class is put on in at all."""
    read, most = room.read_lately(moment), over.limits.max_c
    return read is not None and most is not None and read.air.temperature_c > most.value


def _is_isocyanate(over: FinishClass, asked: Asked, around: Around) -> bool:
    return Hazard.ISOCYANATE in hazards_in(_brings(over, asked), around.facts)


@rule(
    "isocyanate-dust",
    binds=ABRADING | {Act.TAKE_OFF},
    source=_ISOCYANATE,
    reads=f"{WAIT} {AIR_SUPPLY} {SAYS} product.name coat.note mix-part.name container.when",
)
def dust(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A young film with isocyanate is not sanded dry: what has not reacted is in its dust."""
    if asked.operation is None and asked.stripping not in DRY_STRIPPING:
        return
    young = [
        layer.coat.product_name
        for layer in zone.layers
        if _holds_it(layer, around) and not layer.is_hard_by(around.now)
    ]
    if not young:
        return
    raises = asked.operation in _SANDS or asked.stripping is Stripping.SAND_THROUGH
    stops = raises and not around.breathes_through(Hazard.ISOCYANATE)
    level = Level.STOP if stops else Level.NOTE
    found = finding("isocyanate-dust", level, _ISOCYANATE, answer=Answer.BLOCKED if stops else None)
    yield also(found, of=young[-1])


def _holds_it(layer: Layer, around: Around) -> bool:
    """Tell whether a film holds isocyanate: by its class and name, or by the mix it came from."""
    film = in_film(layer.coat, around.products.get(layer.coat.product))
    mix = layer.came_from.state if layer.came_from is not None else None
    if mix is not None and Substance.ISOCYANATE in mix.holds:
        return True
    return Hazard.ISOCYANATE in hazards_in(film, around.facts)
