"""What a young film met: air that damages it for good, or may have."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from finishlog.core.clock.counting import outside
from finishlog.core.film.damage import (
    Sweating,
    damages,
    flaked,
    is_suspect,
    perhaps_sweating,
    perhaps_too_cold,
)
from finishlog.core.film.layers import Layer
from finishlog.core.findings import Answer, Finding, Level, also, celsius, finding
from finishlog.core.finish.classes import COMMON_PRACTICE, WindowKind
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found, Operation
from finishlog.core.published.facts import Facts
from finishlog.core.rules.reads import AIR, LAYERS, STAGE, WAIT
from finishlog.core.rules.rule import COAT, EVERY, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState


@rule(
    "suspect",
    binds=EVERY,
    source=COMMON_PRACTICE,
    reads=f"{STAGE} check.test piece-reading.when piece-reading.temperature_c product.name",
    mended_by="off",
)
def suspect(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A film that met cold or dew while it was young, or went on over dew, may stay weak.

    No date and no "dry" lifts that; a scratch that holds does, or taking it off.
    """
    layer = next((each for each in zone.layers if is_suspect(each)), None)
    if layer is not None:
        found = replace(_met(layer, around.facts), level=Level.STOP, answer=Answer.SUSPECT)
        flakes = "flakes" if flaked(layer) else ""
        said = also(found, of=layer.coat.product_name, flakes=flakes)
        by = frozenset({Operation.SAND, Operation.SCUFF} if flakes else ())
        yield replace(said, mended_by=by, acts=(layer.coat.act,))


def _met(layer: Layer, facts: Facts) -> Finding:
    met, least = damages(layer), layer.of.limits.min_c
    cold = [each.cold_c for each in met if each.cold_c is not None]
    if cold and least is not None:
        found = finding("met-cold", source=least.source)
        return replace(found, measured=celsius(min(cold)), wanted=celsius(least.value))
    under = [each.under for each in met if each.under is not None]
    if under:
        return _over_dew("over-dew", under[0], facts)
    return finding("met-dew", source=COMMON_PRACTICE)


def _over_dew(rule_: str, met: Sweating, facts: Facts) -> Finding:
    found = finding(rule_, source=facts.drying.dew_margin_c.source, dew_c=met.dew_c)
    return replace(found, measured=celsius(met.surface_c))


@rule(
    "perhaps-cold",
    binds=COAT,
    source=COMMON_PRACTICE,
    reads=f"{AIR} {LAYERS} check.test check.found product.class_key piece-reading.when"
    " piece-reading.temperature_c",
)
def perhaps_cold(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A film may have met the cold of its nights, or lie on the dew of wood that nobody felt."""
    for layer in zone.layers:
        cold, dew = perhaps_too_cold(layer), perhaps_sweating(layer)
        if cold is not None or dew is not None:
            found = finding("perhaps-cold", measured=None if cold is None else celsius(cold))
            if dew is not None and cold is None:
                found = _over_dew("perhaps-over-dew", dew, around.facts)
            yield replace(found, answer=Answer.TEST, plain=True)
            return


@rule(
    "not-proved-through",
    binds=COAT,
    source=COMMON_PRACTICE,
    reads=f"{WAIT} check.found product.label_window",
)
def not_proved_through(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A film that dried outside its limits may be dry on top only, until it sands to powder."""
    top = zone.top
    if top is None or not top.of.builds_film or Stage.SAND not in top.coat.figures.stages:
        return
    met = top.wet_outside_limits()
    proved = any(c.found in {Found.POWDER, Found.RESISTS} for c in top.checks)
    if met is None or proved or top.coat.figures.window.kind is WindowKind.MELTS_IN:
        return
    air = next(a for a in met.nearest if outside(top.of.limits, a.temperature_c, a.humidity_pct))
    found = finding(
        "not-proved-through",
        measured=celsius(air.temperature_c),
        answer=Answer.TEST,
        rh=air.humidity_pct,
    )
    yield replace(found, plain=True)
