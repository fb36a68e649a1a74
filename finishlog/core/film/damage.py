"""What a young film met that damages it for good: cold in its first hours, dew while it was wet.

Waterborne, catalysed and two-part films (those with `warm_first_h`) may feel dry after that and
stay weak. No date and no "dry" lifts the doubt; a scratch that holds does, or taking it off.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta

from msgspec import Struct

from finishlog.core.air.met import AirMet, carried_from, remembered
from finishlog.core.air.psychrometrics import Air, dew_point_c
from finishlog.core.air.span import AirSpan, Known
from finishlog.core.clock.counting import DEW_PCT
from finishlog.core.film.layers import Layer
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found


class Damage(Struct, frozen=True):
    """A stretch that damages: how cold it was (°C), None: dew lay on it. `over`: its end."""

    cold_c: float | None
    over: datetime


def damages(layer: Layer) -> tuple[Damage, ...]:
    """Return what readings show that a young film met, in order of time."""
    limits = layer.of.limits
    if limits.warm_first_h is None or limits.min_c is None:
        return ()
    until, least = young_until(layer), limits.min_c.value
    cold = (
        Damage(span.coldest_c, min(span.end or until, until))
        for span in read_below(layer.air, until, least)
    )
    felt = (
        Damage(reading.temperature_c, max(reading.when.latest, layer.put_on))
        for reading in layer.felt
        if reading.temperature_c is not None and reading.temperature_c < least
        if reading.when.latest < until
    )
    return tuple(sorted((*cold, *felt, *_dew(layer)), key=lambda damage: damage.over))


def _dew(layer: Layer) -> Iterator[Damage]:
    """Yield when dew lay on a wet film: the air was saturated, or the wood at its dew point."""
    tack_free = layer.coat.figures.stages.get(Stage.TACK_FREE)
    dry = layer.waits(tack_free).high if tack_free else None
    wet_until = dry or young_until(layer)
    for span in read_damp(layer.air, wet_until):
        yield Damage(None, min(span.end or wet_until, wet_until))
    for reading in layer.felt:
        air = _air(layer.air, reading.when.latest)
        if reading.temperature_c is None or air is None or reading.when.latest >= wet_until:
            continue
        if reading.temperature_c <= dew_point_c(air):
            yield Damage(None, reading.when.latest)


def _air(met: AirMet, moment: datetime) -> Air | None:
    span = met.span_at(max(moment, met.start))
    air = span.airs[0] if span.measured and span.airs else None
    return air if air is not None and air.humidity_pct > 0 else None


def young_until(layer: Layer) -> datetime:
    """Return until when cold damages a film; the coat itself where its class does not mind."""
    first = layer.of.limits.warm_first_h
    return layer.put_on + timedelta(hours=first.value if first else 0.0)


def is_suspect(layer: Layer) -> bool:
    """Tell whether a film met damaging air and no scratch test has cleared it since.

    A scratch counts once that is over, also one through later coats; the last one decides.
    """
    met = damages(layer)
    if not met:
        return False
    since = [c for c in layer.scratches if c.when.earliest >= met[-1].over]
    return not since or since[-1].found is not Found.HOLDS


def perhaps_too_cold(layer: Layer) -> float | None:
    """Return the cold (°C) that its first hours may have met, though no reading shows it.

    None when there was none, or a scratch since then found that the film holds.
    """
    limits = layer.of.limits
    if limits.warm_first_h is None or limits.min_c is None:
        return None
    held = bool(layer.scratches) and layer.scratches[-1].found is Found.HOLDS
    supposed = _coldest_supposed(layer.air, young_until(layer))
    left = [] if layer.before is None else carried_from(layer.before, layer.put_on)
    brought = [reading.temperature_c for reading, _ in left]
    coldest = min([c for c in (supposed, *brought) if c is not None], default=None)
    return coldest if coldest is not None and coldest < limits.min_c.value and not held else None


def _coldest_supposed(met: AirMet, until: datetime) -> float | None:
    def coldest() -> float | None:
        return min((a.temperature_c for s in met.until(until) for a in _not_read(s)), default=None)

    return remembered(met, ("supposed", until), coldest)


def _not_read(span: AirSpan) -> Iterator[Air]:
    """Yield the air of a span that no reading shows."""
    for n, ramp in enumerate(span.ramps):
        if n or span.known is Known.USUAL:
            yield from ramp


def read_below(met: AirMet, until: datetime, least_c: float) -> tuple[AirSpan, ...]:
    """Return the stretches up to a moment that a reading shows as colder than `least_c` (°C)."""

    def below() -> tuple[AirSpan, ...]:
        young = (s for s in met.until(until) if s.measured)
        return tuple(s for s in young if s.coldest_c is not None and s.coldest_c < least_c)

    return remembered(met, ("below", until, least_c), below)


def read_damp(met: AirMet, until: datetime) -> tuple[AirSpan, ...]:
    """Return the stretches up to a moment that a reading shows as saturated with water."""

    def damp() -> tuple[AirSpan, ...]:
        wet = (s for s in met.until(until) if s.measured)
        return tuple(s for s in wet if s.dampest_pct is not None and s.dampest_pct >= DEW_PCT)

    return remembered(met, ("damp", until), damp)
