"""What a young film met: air that damages it for good, or may have."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from finishlog.core.clock.counting import outside
from finishlog.core.film.damage import damages, is_suspect, perhaps_too_cold
from finishlog.core.findings import Answer, Finding, Level, Sure, celsius, finding
from finishlog.core.finish.classes import COMMON_PRACTICE, WindowKind
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found
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
)
def suspect(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A film that met cold or dew while it was young may feel dry and stay weak.

    No date and no "dry" lifts that; a scratch that holds does, or taking it off.
    """
    layer = next((each for each in zone.layers if is_suspect(each)), None)
    least = layer.of.limits.min_c if layer else None
    if layer is None or least is None:
        return
    cold = [each.cold_c for each in damages(layer) if each.cold_c is not None]
    found = finding(
        "met-cold" if cold else "met-dew",
        Level.STOP,
        least.source if cold else COMMON_PRACTICE,
        measured=celsius(min(cold)) if cold else None,
        wanted=celsius(least.value) if cold else None,
        answer=Answer.SUSPECT,
        of=layer.coat.product_name,
    )
    yield replace(found, acts=(layer.coat.act,))


@rule(
    "perhaps-cold",
    binds=COAT,
    source=COMMON_PRACTICE,
    reads=f"{AIR} {LAYERS} check.test check.found product.class_key",
)
def perhaps_cold(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A film whose first hours nobody read may have met the cold of its nights."""
    for layer in zone.layers:
        cold = perhaps_too_cold(layer)
        if cold is not None:
            found = finding("perhaps-cold", measured=celsius(cold), answer=Answer.TEST)
            yield replace(found, sure=Sure.RECKONED, plain=True)
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
    proved = any(c.found is Found.POWDER for c in top.checks)
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
