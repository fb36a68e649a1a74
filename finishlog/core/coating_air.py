"""May this product go on in this air? Limits forbid; what is unknown is said."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from itertools import pairwise

from finishlog.core.air import Air, dew_point_c
from finishlog.core.book import DryingFigures
from finishlog.core.findings import NO_FLAME, Finding, Level
from finishlog.core.finishes import COMMON_PRACTICE, FinishClass, Method
from finishlog.core.room_air import RoomAir, Stay

# Wood follows the air slowly: last night's cold is still in it.
_NIGHT = timedelta(hours=12)
# Our own rule: the "several hours" that a part carried in from the cold is left to warm up.
_WARMS_UP = timedelta(hours=6)


def surface_c(room: RoomAir, now: datetime) -> float | None:
    """Return the wood's temperature (°C) when nobody measured it: the colder of room and night."""
    reading = room.measured_at(now)
    if reading is None:
        return None
    lately = [r.air.temperature_c for r in room.readings if now - _NIGHT <= r.when.latest <= now]
    return min([reading.air.temperature_c, *lately])


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
    left = [(stay.air, following.since) for stay, following in pairwise(stays)]
    found = [(air.measured_at(at), at) for air, at in left if now - _WARMS_UP < at <= now]
    return [(r.air.temperature_c, at + _WARMS_UP) for r, at in found if r is not None]


def _too_cold(of: FinishClass, air: Air, wood_c: float, figures: DryingFigures) -> bool:
    least = of.limits.min_c
    sweats = wood_c - dew_point_c(air) < figures.dew_margin_c
    return sweats or (least is not None and wood_c < least.value)


def air_findings(
    of: FinishClass,
    method: Method | None,
    room: RoomAir,
    now: datetime,
    figures: DryingFigures,
    stays: Sequence[Stay] = (),
) -> tuple[Finding, ...]:
    """Return what speaks against putting this class on now; empty: nothing does.

    `stays`: the rooms that the piece stood in, up to this one.
    """
    reading = room.read_lately(now)
    surface = surface_c(room, now)
    if reading is None or surface is None:
        return (
            Finding(
                Level.CAUTION,
                "the room's air was not read in the last hours",
                "log it: finishlog air 17C 58%",
            ),
        )
    found = [
        *_bounds(of, reading.air),
        *_dew(reading.air, surface, figures),
        *_blush(of, method, reading.air),
        *_tonight(of, room),
    ]
    if cold_wood_until(of, room, now, figures, stays) is not None:
        found.append(_cold_wood(of, min(wood for wood, _ in _brought_along(stays, now))))
    return tuple(found)


def _bounds(of: FinishClass, air: Air) -> Iterator[Finding]:
    limits, t, rh = of.limits, air.temperature_c, air.humidity_pct
    if limits.min_c and t < limits.min_c.value:
        yield Finding(
            Level.STOP,
            f"{t:.1f} °C is below the {limits.min_c.value:.0f} °C that {of.name} needs",
            f"warm the room and the part first: {NO_FLAME}",
            limits.min_c.source,
        )
    if limits.max_c and t > limits.max_c.value:
        yield Finding(
            Level.STOP,
            f"{t:.1f} °C is above the {limits.max_c.value:.0f} °C limit for {of.name}",
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
    if surface - dew < figures.dew_margin_c:
        yield Finding(
            Level.STOP,
            f"wood at about {surface:.1f} °C is less than {figures.dew_margin_c:.0f} °C above "
            f"the dew point of {dew:.1f} °C",
            f"warm the wood or dry the air: {NO_FLAME}",
            figures.dew_margin_source,
        )


def _blush(of: FinishClass, method: Method | None, air: Air) -> Iterator[Finding]:
    """The two blush rules in circulation; both are about spraying, and they contradict."""
    limits = of.limits
    used = method or of.methods[0]
    if used is not Method.SPRAY or limits.blush_dew_gap_c is None:
        return
    gap = air.temperature_c - dew_point_c(air)
    if gap < limits.blush_dew_gap_c.value:
        humid = limits.blush_rh_pct
        other = (
            f", though {air.humidity_pct:.0f} % RH passes the {humid.value:.0f} % rule"
            if (humid and air.humidity_pct <= humid.value)
            else ""
        )
        yield Finding(
            Level.CAUTION,
            f"risk of blush: air is only {gap:.1f} °C above its dew point, the rule asks "
            f"{limits.blush_dew_gap_c.value:.0f} °C{other}",
            "spray a sample first, or wait for drier air",
            limits.blush_dew_gap_c.source,
        )


def _cold_wood(of: FinishClass, wood_c: float) -> Finding:
    """A warm room does not warm the wood and the can at once; damp settles on them meanwhile."""
    hours = _WARMS_UP // timedelta(hours=1)
    return Finding(
        Level.CAUTION,
        f"the wood came from {wood_c:.1f} °C less than {hours} h ago: it may be too cold yet for "
        f"{of.name}, and sweat",
        "let the part and the can warm up for some hours, until neither feels cold",
        COMMON_PRACTICE,
    )


def _tonight(of: FinishClass, room: RoomAir) -> Iterator[Finding]:
    """Cold in the first night damages some films for good."""
    limits, night = of.limits, room.coldest_night_c
    if limits.warm_first_h and limits.min_c and night is not None and night < limits.min_c.value:
        yield Finding(
            Level.CAUTION,
            f"the room's coldest night is {night:.0f} °C; {of.name} needs "
            f"{limits.min_c.value:.0f} °C for its first {limits.warm_first_h.value:.0f} h",
            f"keep the heat on tonight, or coat in the morning: {NO_FLAME}",
            limits.warm_first_h.source,
        )
