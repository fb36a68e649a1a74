"""May this product go on in this air? Limits forbid; what is unknown is said."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta

from msgspec.structs import replace

from finishlog.core.air.met import Stay, air_met, carried_from
from finishlog.core.air.psychrometrics import Air, dew_point_c
from finishlog.core.air.room import RoomAir
from finishlog.core.air.span import AirPoint
from finishlog.core.clock.air_to_come import Felt, coldest_ahead, wood_c
from finishlog.core.commands import Do
from finishlog.core.film.layers import SURFACE_HOLDS, WARMS_UP
from finishlog.core.findings import NO_FLAME, Finding, Level, Rule
from finishlog.core.finish.classes import COMMON_PRACTICE, FinishClass, Method
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import AnyEntry, PieceReading
from finishlog.core.measure.quantities import apart, celsius, typed_celsius
from finishlog.core.published.drying import DryingFigures

# Readings so far apart tell whether it gets warmer now. Our own rule.
_LATELY = timedelta(hours=3)


def surface_c(room: RoomAir, now: datetime, told: Sequence[AnyEntry] = ()) -> float | None:
    """Return the wood's temperature (°C): as measured, else the colder of the room and last night.

    `told`: what reached the piece. None: neither the wood nor the room was read.
    """
    measured = measured_c(told, now)
    if measured is not None:
        return measured
    reading = room.measured_at(now)
    if reading is None:
        return None
    return wood_c(room, now, reading.air)


def measured_c(told: Sequence[AnyEntry], now: datetime) -> float | None:
    """Return the temperature of the wood (°C) as it was measured lately, None: it was not."""
    tells = [felt.celsius for felt in felt_lately(told) if felt.since <= now <= felt.until]
    return tells[-1] if tells else None


def felt_lately(told: Sequence[AnyEntry]) -> tuple[Felt, ...]:
    """Return what was measured of the wood, oldest first; each tells of the next hours only."""
    return tuple(
        Felt(e.when.latest, e.when.latest + SURFACE_HOLDS, e.temperature_c)
        for e in told
        if isinstance(e, PieceReading) and e.temperature_c is not None
    )


def cold_wood_until(
    of: FinishClass, room: RoomAir, now: datetime, figures: DryingFigures, stays: Sequence[Stay]
) -> datetime | None:
    """Return when wood that was carried in too cold for a coat is as warm as its room.

    None where it is warm enough, and where the room itself is not.
    """
    reading, surface = room.read_lately(now), surface_c(room, now)
    if reading is None or surface is None or _too_cold(of, reading.air, surface, figures):
        return None
    brought = _brought_along(stays, now)
    cold = [at for wood, at in brought if _too_cold(of, reading.air, wood, figures)]
    return max(cold, default=None)


def _brought_along(stays: Sequence[Stay], now: datetime) -> list[tuple[float, datetime]]:
    """Return (°C, until) of the rooms that a piece was lately carried from."""
    left = carried_from(air_met(stays, now - WARMS_UP), now)
    return [(reading.temperature_c, at + WARMS_UP) for reading, at in left]


def _too_cold(of: FinishClass, air: Air, wood_c: float, figures: DryingFigures) -> bool:
    least = of.limits.min_c
    sweats = wood_c - dew_point_c(air) < figures.dew_margin_c.value
    return sweats or (least is not None and wood_c < least.value)


def air_findings(
    of: FinishClass,
    method: Method | None,
    room: RoomAir,
    now: datetime,
    figures: DryingFigures,
    stays: Sequence[Stay] = (),
    told: Sequence[AnyEntry] = (),
) -> tuple[Finding, ...]:
    """Return what speaks against putting this class on now; empty: nothing does.

    `stays`: the rooms that the piece stood in, up to this one; `told`: what reached it.
    """
    reading = room.read_lately(now)
    surface = surface_c(room, now, told)
    if reading is None or surface is None:
        return (
            Finding(
                Level.CAUTION,
                "the room's air was not read in the last hours",
                f"log it: {Do.AIR(typed_celsius(17), '58%')}",
                rule=Rule.AIR,
            ),
        )
    found = [
        *_bounds(of, reading.air),
        *_dew(reading.air, surface, figures),
        *_cold_surface(of, reading.air, surface),
        *_blush(of, method, reading.air),
        *_hot(of, room, now, figures),
        *_ahead(of, room, now),
        *_dew_ahead(of, reading.air, room, now, figures),
    ]
    if cold_wood_until(of, room, now, figures, stays) is not None:
        found.append(_cold_wood(of, min(wood for wood, _ in _brought_along(stays, now))))
    return tuple(replace(each, rule=each.rule or Rule.AIR) for each in found)


def _bounds(of: FinishClass, air: Air) -> Iterator[Finding]:
    limits, t, rh = of.limits, air.temperature_c, air.humidity_pct
    if limits.min_c and t < limits.min_c.value:
        yield Finding(
            Level.STOP,
            f"{celsius(t, 1)} is below the {celsius(limits.min_c.value)} that {of.name} needs",
            f"warm the room and the part first: {NO_FLAME}",
            limits.min_c.source,
        )
    if limits.max_c and t > limits.max_c.value:
        yield Finding(
            Level.STOP,
            f"{celsius(t, 1)} is above the {celsius(limits.max_c.value)} limit for {of.name}",
            "wait for a cooler hour",
            limits.max_c.source,
        )
    if limits.max_rh_pct and rh > limits.max_rh_pct.value:
        yield Finding(
            Level.STOP,
            f"{rh:.0f} % RH is above the {limits.max_rh_pct.value:.0f} % limit for {of.name}",
            "dry the air or wait",
            limits.max_rh_pct.source,
        )


def _dew(air: Air, surface: float, figures: DryingFigures) -> Iterator[Finding]:
    dew = dew_point_c(air)
    if surface - dew < figures.dew_margin_c.value:
        margin = apart(figures.dew_margin_c.value)
        yield Finding(
            Level.STOP,
            f"wood at about {celsius(surface, 1)} is less than {margin} above the dew point of "
            f"{celsius(dew, 1)}",
            f"warm the wood or dry the air: {NO_FLAME}",
            figures.dew_margin_c.source,
        )


def _blush(of: FinishClass, method: Method | None, air: Air) -> Iterator[Finding]:
    """The two blush rules in circulation; both are about spraying, and they contradict.

    The gap to the dew point would forbid standard air (10.98 °C at 23 °C and 50 %): it is told,
    and the limit of moisture decides.
    """
    limits = of.limits
    used = method or of.methods[0]
    if used is not Method.SPRAY or limits.blush_dew_gap_c is None:
        return
    gap = air.temperature_c - dew_point_c(air)
    if gap < limits.blush_dew_gap_c.value:
        humid = limits.blush_rh_pct
        passes = humid is not None and air.humidity_pct <= humid.value
        other = (
            f", though {air.humidity_pct:.0f} % RH passes the {humid.value:.0f} % rule"
            if humid and passes
            else ""
        )
        yield Finding(
            Level.NOTE if passes else Level.CAUTION,
            f"risk of blush: air is only {apart(gap, 1)} above its dew point, the rule asks "
            f"{apart(limits.blush_dew_gap_c.value)}{other}",
            "spray a sample first, or wait for drier air",
            limits.blush_dew_gap_c.source,
            rule=Rule.BLUSH,
        )


def _cold_wood(of: FinishClass, wood_c: float) -> Finding:
    """A warm room does not warm the wood and the can at once; damp settles on them meanwhile."""
    hours = WARMS_UP // timedelta(hours=1)
    return Finding(
        Level.CAUTION,
        f"the wood came from {celsius(wood_c, 1)} less than {hours} h ago: it may be too cold "
        f"yet for {of.name}, and sweat",
        "let the part and the can warm up for some hours, until neither feels cold",
        COMMON_PRACTICE,
    )


def _cold_surface(of: FinishClass, air: Air, surface: float) -> Iterator[Finding]:
    """The limit is about the wood as well: a cold part in a warm room is too cold."""
    least = of.limits.min_c
    if least is not None and surface < least.value <= air.temperature_c:
        yield Finding(
            Level.CAUTION,
            f"the wood is about {celsius(surface, 1)}, colder than the room and than the "
            f"{celsius(least.value)} that {of.name} needs",
            "let it warm up; to be sure measure it: "
            f"{Do.SURFACE('PART', typed_celsius(15))}; {NO_FLAME}",
            least.source,
        )


def _ahead(of: FinishClass, room: RoomAir, now: datetime) -> Iterator[Finding]:
    """Cold in the first night damages some films for good, and holds up any."""
    limits, tack_free = of.limits, of.stages.get(Stage.TACK_FREE)
    if limits.min_c is None:
        return
    harms = limits.warm_first_h
    hours = harms.value if harms else (tack_free.high_h if tack_free else 0.0)
    coldest = coldest_ahead(room, now, timedelta(hours=hours))
    if coldest is None:
        yield _untold(of, room, now, hours)
        return
    if coldest >= limits.min_c.value:
        return
    needs = f"{of.name} needs {celsius(limits.min_c.value)}"
    if harms:
        yield Finding(
            Level.CAUTION,
            f"the room's coldest night is {celsius(coldest)}; {needs} for its first "
            f"{harms.value:.0f} h",
            f"keep the heat on tonight, or coat in the morning: {NO_FLAME}",
            harms.source,
        )
    else:
        yield Finding(
            Level.NOTE,
            f"the room goes to {celsius(coldest)} before it is tack-free; {needs}, and "
            "stands still",
            f"keep the heat on, or coat in the morning: {NO_FLAME}",
            limits.min_c.source,
        )


def _untold(of: FinishClass, room: RoomAir, now: datetime, hours: float) -> Finding:
    """Ask how cold it gets: a reading says nothing of the night, nor of the room unheated.

    It is asked before a film that cold damages, and where a heater is known to stop; else it is
    only noted.
    """
    limits = of.limits
    assert limits.min_c is not None
    ahead = room.course.between(now, now + timedelta(hours=hours))
    stops = any(span.heated_since is not None for span in ahead)
    asks = stops or limits.warm_first_h is not None
    how = "without its heater" if stops else "at night"
    first = f"for its first {hours:.0f} h" if limits.warm_first_h else "until it is tack-free"
    return Finding(
        Level.CAUTION if asks else Level.NOTE,
        f"how cold {room.name or 'the room'} gets {how} was not told; {of.name} needs "
        f"{celsius(limits.min_c.value)} {first}",
        f"say it once: {Do.ROOM_NIGHT(room.name, typed_celsius(8))}",
        limits.min_c.source,
        rule=Rule.NIGHT_UNTOLD,
    )


def _hot(
    of: FinishClass, room: RoomAir, now: datetime, figures: DryingFigures
) -> Iterator[Finding]:
    """A film in hot air skins over before it has flowed out, the more so while it gets hotter."""
    reading = room.read_lately(now)
    if reading is None or reading.temperature_c <= figures.hot_c.value or not of.builds_film:
        return
    yield Finding(
        Level.NOTE,
        f"{celsius(reading.temperature_c, 1)} is hot: a film skins over before it has flowed out, "
        f"and its hours get no shorter; {_trend(room, reading)}",
        "thin coats, out of the sun, early in the morning or while it gets cooler",
        figures.hot_c.source,
    )


def _trend(room: RoomAir, reading: AirPoint) -> str:
    """Say whether the last readings rise or fall."""
    before = [r for r in room.readings if reading.at - _LATELY <= r.at < reading.at]
    if not before:
        return "does it rise or fall? read it again in an hour"
    change = reading.temperature_c - before[0].temperature_c
    return f"it {'rises' if change > 0 else 'falls' if change < 0 else 'stays'}"


def _dew_ahead(
    of: FinishClass, air: Air, room: RoomAir, now: datetime, figures: DryingFigures
) -> Iterator[Finding]:
    """A wet film that cools to the dew point of this evening's air fogs in the night."""
    tack_free, dew = of.stages.get(Stage.TACK_FREE), dew_point_c(air)
    if tack_free is None or not of.builds_film:
        return
    coldest = room.coldest_between(now, now + timedelta(hours=tack_free.high_h))
    if (
        coldest is not None
        and coldest - dew < figures.dew_margin_c.value <= air.temperature_c - dew
    ):
        yield Finding(
            Level.CAUTION,
            f"dew may fog it before it is tack-free: the room goes to {celsius(coldest, 1)}, the "
            f"dew point of this air is {celsius(dew, 1)}",
            f"keep it warm until then, or begin early in the day: {NO_FLAME}",
            figures.dew_margin_c.source,
        )
