"""What a young film met that damages it for good: cold in its first hours, dew on it or under it.

Waterborne, catalysed and two-part films (those with `warm_first_h`) may feel dry after cold or dew
and stay weak. Any film that went on over dew lies on water. No date and no "dry" lifts the doubt; a
scratch that holds does, or taking it off.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta
from typing import NamedTuple

from msgspec import Struct

from finishlog.core.air.met import AirMet, carried_from, remembered
from finishlog.core.air.psychrometrics import Air, dew_point_c
from finishlog.core.air.span import AirSpan, Known
from finishlog.core.clock.air_to_come import wood_c
from finishlog.core.clock.counting import DEW_PCT
from finishlog.core.film.layers import Layer
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found


class Sweating(NamedTuple):
    """Wood, or the film below, no warmer than the dew point of the air that it stood in (°C)."""

    surface_c: float
    dew_c: float


class Damage(Struct, frozen=True):
    """A stretch that damages: how cold it was (°C), None: dew lay on it. `over`: its end.

    `under`: the dew lay below it.
    """

    cold_c: float | None
    over: datetime
    under: Sweating | None = None


def damages(layer: Layer) -> tuple[Damage, ...]:
    """Return what readings show that a young film met, in order of time."""
    met = [*_cold(layer), *_dew(layer), *_dew_under(layer)]
    return tuple(sorted(met, key=lambda damage: damage.over))


def _cold(layer: Layer) -> Iterator[Damage]:
    limits = layer.of.limits
    if limits.warm_first_h is None or limits.min_c is None:
        return
    until, least = young_until(layer), limits.min_c.least
    for span in read_below(layer.air, until, least):
        yield Damage(span.coldest_c, min(span.end or until, until))
    for felt in layer.felt:
        cold = felt.temperature_c is not None and felt.temperature_c < least
        if cold and felt.when.latest < until:
            yield Damage(felt.temperature_c, max(felt.when.latest, layer.put_on))


def _dew(layer: Layer) -> Iterator[Damage]:
    """Yield when dew lay on a wet film: the air was saturated, or the film at its dew point."""
    if layer.of.limits.warm_first_h is None:
        return
    tack_free = layer.coat.figures.stages.get(Stage.TACK_FREE)
    dry = layer.waits(tack_free).high if tack_free else None
    wet_until = dry or young_until(layer)
    for span in read_damp(layer.air, wet_until):
        yield Damage(None, min(span.end or wet_until, wet_until))
    for felt in layer.felt:
        since = felt.when.latest
        if layer.put_on < since < wet_until and _sweating(layer, felt.temperature_c, since):
            yield Damage(None, since)


def _dew_under(layer: Layer) -> Iterator[Damage]:
    """Yield the dew that lay below a film: what it went on was felt to be at its dew point."""
    wet = _sweating(layer, _felt_c(layer), layer.put_on) if layer.of.builds_film else None
    if wet is not None:
        yield Damage(None, layer.put_on, wet)


def _felt_c(layer: Layer) -> float | None:
    """Return how cold (°C) a surface was when a coat went on it, as it was felt; None: it was not.

    What was felt last tells.
    """
    felt = [e.temperature_c for e in layer.felt if e.when.latest <= layer.put_on]
    return next((celsius for celsius in reversed(felt) if celsius is not None), None)


def _sweating(layer: Layer, surface_c: float | None, moment: datetime) -> Sweating | None:
    """Return dew on a surface of a temperature (°C); None: there was none, or nobody read the air.

    Within the margin of the dew point a coat is warned of (core.rules.air); at it water lies there.
    """
    air = _air(layer.air, moment)
    if air is None or surface_c is None or surface_c > dew_point_c(air):
        return None
    return Sweating(surface_c, dew_point_c(air))


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


def flaked(layer: Layer) -> bool:
    """Tell whether the last scratch through a layer took it off."""
    return bool(layer.scratches) and layer.scratches[-1].found is Found.FLAKES


def perhaps_too_cold(layer: Layer) -> float | None:
    """Return the cold (°C) that its first hours may have met, though no reading shows it.

    None when there was none, or a scratch since then found that the film holds.
    """
    limits = layer.of.limits
    if limits.warm_first_h is None or limits.min_c is None:
        return None
    supposed = _coldest_supposed(layer.air, young_until(layer))
    brought = _brought_along(layer) if _felt_c(layer) is None else []
    coldest = min([c for c in (supposed, *brought) if c is not None], default=None)
    cold = coldest is not None and coldest < limits.min_c.least
    return coldest if cold and not _holds(layer) else None


def perhaps_sweating(layer: Layer) -> Sweating | None:
    """Return the dew that may have lain below a film, though nobody felt its wood.

    By the room that it was carried from, and by the night. None when there was none, or a scratch
    since then found that the film holds.
    """
    if not layer.of.builds_film or _felt_c(layer) is not None or _holds(layer):
        return None

    def sweating() -> Sweating | None:
        air, room = _air(layer.air, layer.put_on), layer.air.legs[0].room
        wood = [wood_c(room, layer.put_on, air)] if air is not None else []
        return _sweating(layer, min([*wood, *_brought_along(layer)], default=None), layer.put_on)

    return remembered(layer.air, ("sweating", layer.before, layer.put_on), sweating)


def _holds(layer: Layer) -> bool:
    return bool(layer.scratches) and layer.scratches[-1].found is Found.HOLDS


def _brought_along(layer: Layer) -> list[float]:
    """Return how cold (°C) the rooms were that it was carried from in the hours before the coat."""
    left = [] if layer.before is None else carried_from(layer.before, layer.put_on)
    return [reading.temperature_c for reading, _ in left]


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
