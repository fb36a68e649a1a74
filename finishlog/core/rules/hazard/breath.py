"""What hurts the lungs of whoever sprays it, or sands it young: isocyanate."""

from __future__ import annotations

from collections.abc import Iterator

from finishlog.core.film.attempts import ABRADING as DRY_STRIPPING
from finishlog.core.film.layers import Layer
from finishlog.core.findings import Act, Answer, Finding, Level, also, finding
from finishlog.core.finish.classes import FinishClass
from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.sheet import YOUR_SHEET
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Operation, Stripping
from finishlog.core.mixing.chemistry import Ingredient
from finishlog.core.rules.hazard.lead import is_hot
from finishlog.core.rules.reads import AIR_SUPPLY, COMES, SAYS, WAIT
from finishlog.core.rules.rule import ABRADING, COAT, rule
from finishlog.core.safety.hazards import hazards_in, spared_by_sheet
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
    "isocyanate-dust",
    binds=ABRADING | {Act.TAKE_OFF},
    source=_ISOCYANATE,
    reads=f"{WAIT} {AIR_SUPPLY} {COMES} {SAYS} product.name coat.note",
)
def dust(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A young film with isocyanate is not sanded dry, and one of any age is not heated."""
    hot = is_hot(asked)
    there = [
        layer.coat.product_name
        for layer in zone.layers
        if Hazard.ISOCYANATE in hazards_in(_film(layer, around), around.facts)
        and (hot or not _is_hard(layer, around))
    ]
    if not there or not (hot or asked.operation or asked.stripping in DRY_STRIPPING):
        return
    raises = hot or asked.operation in _SANDS or asked.stripping is Stripping.SAND_THROUGH
    stops = raises and not around.breathes_through(Hazard.ISOCYANATE)
    level = Level.STOP if stops else Level.NOTE
    found = finding("isocyanate-dust", level, _ISOCYANATE, answer=Answer.BLOCKED if stops else None)
    yield also(found, of=there[-1], hot="hot" if hot else "")


def _film(layer: Layer, around: Around) -> Ingredient:
    return in_film(layer.coat, around.products.get(layer.coat.product))


def _is_hard(layer: Layer, around: Around) -> bool:
    hard = layer.stage(Stage.CURED)
    return hard is not None and hard.high is not None and hard.high <= around.now
