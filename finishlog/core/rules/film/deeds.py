"""What was done to the film: how thick it went on, how much lies on it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta
from math import ceil

from msgspec.structs import replace

from finishlog.core.film.build import film_build
from finishlog.core.film.layers import Layer
from finishlog.core.findings import (
    OVER_ITS_LIMIT,
    Act,
    Answer,
    Finding,
    Level,
    count,
    finding,
    micrometres,
)
from finishlog.core.finish.classes import FinishClass, Range
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found
from finishlog.core.rules.film.came_from import LOADED
from finishlog.core.rules.reads import BROKEN_OFF, LAYERS, SAYS, STAGE
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

_BUILT = (
    f"{LAYERS} coat.wet_film_um coat.container mix-part.name mix-part.parts mix-part.product"
    " container.when product.class_key work.operation"
)
_LEAVES = frozenset({Act.USE, Act.PACK, Act.HAND_OVER})
_DAY = timedelta(hours=24)
# A thick film may be dry on top alone; these show it through.
_THROUGH = frozenset({Found.POWDER, Found.NO_PRINT, Found.HOLDS})


@rule(
    "thick-film",
    binds=COAT,
    source="the class",
    reads=f"{STAGE} coat.wet_film_um product.name work.operation",
)
def thick_film(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A film measured thicker than usual is soft inside for long: it is tested before it is buried.

    An oil that was flooded on and wiped off was never that thick.
    """
    top = zone.top
    usual, laid = (top.of.wet_film_um, top.coat.wet_film_um) if top else (None, None)
    if top is None or usual is None or laid is None or laid <= usual.high:
        return
    if top.is_wiped_off or top.of.most_at_once_um is not None:
        return
    hard = zone.date_of(Stage.CURED)
    is_hard = hard is not None and hard.high is not None and hard.high <= around.now
    if is_hard or any(check.found in _THROUGH for check in top.checks):
        return
    found = finding(
        "thick-film",
        Level.CAUTION,
        usual.source,
        measured=micrometres(laid),
        wanted=micrometres(usual.high),
        of=top.coat.product_name,
    )
    yield replace(found, acts=(top.coat.act,))


@rule("coats-a-day", binds=COAT, source="the class", reads=STAGE)
def coats_a_day(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """More coats in a day than a finish lets go of its solvent shut it in.

    Asked of the moment at which the film may take one: by then the day may be over.
    """
    most = asked.over.daily_coats if asked.over else None
    recoat = None if asked.done or most is None else zone.stages.get(Stage.RECOAT)
    at = max(around.now, recoat.low) if recoat and recoat.low else around.now
    today = [each for each in _alike(zone, asked) if each.put_on > at - _DAY]
    if most is None or asked.over is None or len(today) < most.high:
        return
    found = finding(
        "coats-a-day",
        Level.CAUTION,
        most.source,
        measured=count(len(today) + 1),
        wanted=count(most.high),
        of=asked.over.name,
    )
    yield replace(found, acts=tuple(each.coat.act for each in today))


@rule(
    "too-much-film",
    binds=COAT,
    source="the class",
    reads=f"{_BUILT} {BROKEN_OFF}",
)
def too_much_film(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A film thicker in all than its finish bears cracks; else its coats are counted."""
    over = asked.over
    if over is None:
        return
    limit, most, alike = over.dry_film_limit_um, over.most_coats, _alike(zone, asked)
    built = film_build(zone.layers, over, around.facts)
    film = built.total_um + built.next_um
    alike = [each for each in alike if each.coat.is_whole]
    if limit is not None and film > limit.high:
        answer = Answer.UNDERNEATH
        found = finding("too-thick-in-all", Level.STOP, limit.source, answer=answer)
        found = replace(found, measured=micrometres(film), wanted=micrometres(limit.high))
    elif limit is None and most is not None and len(alike) >= most.high:
        found = finding("too-many-coats", Level.CAUTION, most.source, of=over.name)
        found = replace(found, measured=count(len(alike) + 1), wanted=count(most.high))
    else:
        return
    yield replace(found, acts=tuple(each.coat.act for each in alike))


@rule(
    "over-its-limit",
    binds=LOADED,
    source="the class",
    reads=f"{_BUILT} product.name check.found check.when",
)
def over_its_limit(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A film that went over what its finish bears is tested before it is buried, laid on or used.

    That it may crack later no test tells: it is to be known where it leaves.
    """
    limited = [n for n, y in enumerate(zone.layers) if y.of.dry_film_limit_um]
    layers = zone.layers[: limited[-1] + 1] if limited else ()
    limit = layers[-1].of.dry_film_limit_um if layers else None
    film = film_build(layers, None, around.facts).total_um
    if limit is None or film <= limit.high or (asked.over and asked.over.dry_film_limit_um):
        return
    on = layers[-1].coat
    hard = any(c.found in _THROUGH and c.when.order > on.when.order for c in zone.checks)
    if hard and asked.act not in _LEAVES:
        return
    found = finding(
        OVER_ITS_LIMIT,
        Level.NOTE if hard else Level.CAUTION,
        limit.source,
        measured=micrometres(film),
        wanted=micrometres(limit.high),
        answer=None if hard else Answer.TEST,
        of=on.product_name,
        hard="hard" if hard else "",
    )
    yield replace(found, by_test=not hard, acts=tuple(y.coat.act for y in layers))


def _alike(zone: ZoneState, asked: Asked) -> list[Layer]:
    """Return the layers of the finish that is asked."""
    return [each for each in zone.layers if asked.over and each.of.key == asked.over.key]


@rule(
    "too-thick-at-once",
    binds=COAT,
    source="the can, or its class",
    reads=f"{LAYERS} {SAYS} check.found coat.wet_film_um coat.product product.class_key",
)
def too_thick_at_once(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What heats itself as it cures runs hot in a thick mass: the one in the hand, the one below.

    A pour that is on is looked at before it is covered.
    """
    most = around.most_at_once_um(asked.product, asked.over)
    if asked.over is not None and most is not None and (asked.film_um or 0.0) > most.high:
        found = _too_thick("too-thick-at-once", asked.film_um or 0.0, most, asked.over)
        yield replace(found, level=Level.STOP, answer=Answer.UNDERNEATH)
    top = zone.top
    laid = (top.coat.wet_film_um or 0.0) if top else 0.0
    bears = around.most_at_once_um(top.coat.product, top.of) if top else None
    if top is None or bears is None or laid <= bears.high:
        return
    if not any(check.found in _THROUGH for check in top.checks):
        found = _too_thick("went-on-too-thick", laid, bears, top.of)
        yield replace(found, answer=Answer.TEST, acts=(top.coat.act,), by_test=True)


def _too_thick(rule_: str, laid: float, most: Range, of: FinishClass) -> Finding:
    pours, hot = float(ceil(laid / most.low)), "hot" if of.most_at_once_um else ""
    found = finding(rule_, Level.CAUTION, most.source, of=of.name, pours=pours, hot=hot)
    return replace(found, measured=micrometres(laid), wanted=micrometres(most.high))
