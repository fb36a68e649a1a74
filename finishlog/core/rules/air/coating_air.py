"""May this product go on in this air? Limits forbid; what is unknown is said."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta

from msgspec.structs import replace

from finishlog.core.air.met import Stay, air_met, carried_from
from finishlog.core.air.psychrometrics import Air, dew_point_c
from finishlog.core.air.room import RoomAir
from finishlog.core.air.span import AirPoint
from finishlog.core.clock.air_to_come import Felt, allowed_from, coldest_ahead, wood_c
from finishlog.core.film.layers import SURFACE_HOLDS, WARMS_UP
from finishlog.core.findings import (
    AIR_UNREAD,
    BLUSH,
    NIGHT_UNTOLD,
    WOOD_WARMS_UP,
    Answer,
    Figured,
    Finding,
    Level,
    apart_celsius,
    celsius,
    finding,
    hours,
    pct,
)
from finishlog.core.finish.classes import COMMON_PRACTICE, FinishClass, Limit, Method
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import AnyEntry, PieceReading
from finishlog.core.published.drying import DryingFigures
from finishlog.core.rules.reads import AIR
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

# Readings so far apart tell whether it gets warmer now. Our own rule.
_LATELY = timedelta(hours=3)

# What is said of the room as it is, and named with it where there are several.
AIR_RULES = frozenset(
    {
        AIR_UNREAD,
        "too-cold",
        "too-hot",
        "too-damp",
        "humidity-supposed",
        "near-dew-point",
        "wood-too-cold",
        "cold-night-harms",
        "cold-night-halts",
        "hot",
        "dew-tonight",
    }
)

# What is no fault of the air now, but of the hours until the film is dry.
OF_THE_NIGHT = frozenset({"cold-night-harms", "cold-night-halts", "dew-tonight"})

# What the air forbids holds a coat, what it makes doubtful asks for a test.
_ANSWERS = {Level.STOP: Answer.NOT_IN_THIS_AIR, Level.CAUTION: Answer.TEST, Level.NOTE: None}


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
    of: FinishClass,
    room: RoomAir,
    now: datetime,
    figures: DryingFigures,
    stays: Sequence[Stay],
    told: Sequence[AnyEntry] = (),
) -> datetime | None:
    """Return when wood that was carried in too cold for a coat is as warm as its room.

    None where it is warm enough, or was felt to be since, and where the room itself is not.
    """
    reading, surface = room.read_lately(now), surface_c(room, now)
    if reading is None or surface is None or _too_cold(of, reading.air, surface, figures):
        return None
    brought = _brought_along(stays, now)
    cold = [at for wood, at in brought if _too_cold(of, reading.air, wood, figures)]
    felt = [f.celsius for f in felt_lately(told) if stays and stays[-1].since <= f.since]
    if (
        felt
        and measured_c(told, now) is not None
        and not _too_cold(of, reading.air, felt[-1], figures)
    ):
        return None
    return max(cold, default=None)


def _brought_along(stays: Sequence[Stay], now: datetime) -> list[tuple[float, datetime]]:
    """Return (°C, until) of the rooms that a piece was lately carried from."""
    left = carried_from(air_met(stays, now - WARMS_UP), now)
    return [(reading.temperature_c, at + WARMS_UP) for reading, at in left]


def _too_cold(of: FinishClass, air: Air, wood_c: float, figures: DryingFigures) -> bool:
    least = of.limits.min_c
    sweats = wood_c - dew_point_c(air) < figures.dew_margin_c.value
    return sweats or (least is not None and wood_c < least.least)


def air_findings(
    of: FinishClass,
    method: Method | None,
    room: RoomAir,
    now: datetime,
    figures: DryingFigures,
    told: Sequence[AnyEntry] = (),
) -> tuple[Finding, ...]:
    """Return what speaks against putting this class on now; empty: nothing does.

    `told`: what reached the piece.
    """
    reading = room.read_lately(now)
    surface = surface_c(room, now, told)
    if reading is None or surface is None:
        last = room.measured_at(now)
        ago = hours((now - last.at) / timedelta(hours=1)) if last else None
        return (finding(AIR_UNREAD, Level.CAUTION, measured=ago),)
    return (
        *_bounds(of, reading.air),
        *_untold_water(of, room, reading, now),
        *_dew(reading.air, surface, figures),
        *_cold_surface(of, reading.air, surface),
        *_blush(of, method, reading.air),
        *_hot(of, room, now, figures),
        *_ahead(of, room, now),
        *_dew_ahead(of, reading.air, room, now, figures),
    )


@rule(
    "air",
    binds=COAT,
    source="the class; facts: drying",
    reads=f"{AIR} reading.humidity_supposed piece-reading.when piece-reading.temperature_c",
)
def air(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What the air forbids, doubts or holds ready for a coat, now and in the night ahead."""
    if asked.over is None or not asked.over.dries:
        return
    room, now, figures = zone.room, around.now, around.facts.drying
    for found in air_findings(asked.over, asked.method, room, now, figures, zone.entries):
        answer = _ANSWERS[found.level]
        high = None
        if answer is Answer.NOT_IN_THIS_AIR:
            margin, felt = figures.dew_margin_c.value, felt_lately(zone.entries)
            high = allowed_from(asked.over.limits, margin, room, now, felt)
        yield replace(found, answer=answer, high=high)


@rule(
    WOOD_WARMS_UP,
    binds=COAT,
    source=COMMON_PRACTICE,
    reads=f"{AIR} piece-reading.when piece-reading.temperature_c",
)
def wood_warms_up(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Wood carried in from the cold is no warmer for the room at once; damp settles on it.

    A coat waits for the part and the can.
    """
    now, stays = around.now, zone.stays
    until = asked.over and cold_wood_until(
        asked.over, zone.room, now, around.facts.drying, stays, zone.entries
    )
    if asked.over is None or until is None:
        return
    found = finding(
        WOOD_WARMS_UP,
        Level.CAUTION,
        COMMON_PRACTICE,
        measured=celsius(min(wood for wood, _ in _brought_along(stays, now))),
        answer=Answer.WAITS,
        of=asked.over.name,
        within_h=WARMS_UP / timedelta(hours=1),
    )
    yield replace(found, high=until)


def _bounds(of: FinishClass, air: Air) -> Iterator[Finding]:
    limits, t, rh = of.limits, air.temperature_c, air.humidity_pct
    if limits.min_c and t < limits.min_c.least:
        yield _limit("too-cold", limits.min_c, celsius(t), celsius(limits.min_c.value), of)
    if limits.max_c and t > limits.max_c.most:
        yield _limit("too-hot", limits.max_c, celsius(t), celsius(limits.max_c.value), of)
    if limits.max_rh_pct and rh > limits.max_rh_pct.value:
        yield _limit("too-damp", limits.max_rh_pct, pct(rh), pct(limits.max_rh_pct.value), of)


def _untold_water(
    of: FinishClass, room: RoomAir, reading: AirPoint, now: datetime
) -> Iterator[Finding]:
    """Ask how damp it is, where only a thermometer was read and the class has a limit."""
    most = of.limits.max_rh_pct
    if most is not None and room.supposes_water(now):
        yield finding(
            "humidity-supposed",
            Level.CAUTION,
            most.source,
            measured=pct(reading.humidity_pct),
            wanted=pct(most.value),
            of=of.name,
            c=reading.temperature_c,
        )


def driest_asked(of: FinishClass, room: RoomAir, now: datetime) -> Limit | None:
    """Return the limit (% RH) that binds where the air is damper than it; None: none is passed."""
    reading, limits = room.read_lately(now), (of.limits.max_rh_pct, of.limits.blush_rh_pct)
    rh = reading.humidity_pct if reading else 0.0
    return min((x for x in limits if x and rh > x.value), key=lambda x: x.value, default=None)


def _limit(
    rule_: str, limit: Limit, measured: Figured, wanted: Figured, of: FinishClass
) -> Finding:
    return finding(rule_, Level.STOP, limit.source, measured=measured, wanted=wanted, of=of.name)


def _dew(air: Air, surface: float, figures: DryingFigures) -> Iterator[Finding]:
    dew = dew_point_c(air)
    if surface - dew < figures.dew_margin_c.value:
        yield finding(
            "near-dew-point",
            Level.STOP,
            figures.dew_margin_c.source,
            measured=celsius(surface),
            wanted=apart_celsius(figures.dew_margin_c.value),
            dew_c=dew,
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
        yield finding(
            BLUSH,
            Level.NOTE if passes else Level.CAUTION,
            limits.blush_dew_gap_c.source,
            measured=apart_celsius(gap),
            wanted=apart_celsius(limits.blush_dew_gap_c.value),
            rh=air.humidity_pct,
            passes=humid.value if humid and passes else None,
        )


def _cold_surface(of: FinishClass, air: Air, surface: float) -> Iterator[Finding]:
    """The limit is about the wood as well: a cold part in a warm room is too cold."""
    least = of.limits.min_c
    if least is not None and surface < least.least <= air.temperature_c:
        yield finding(
            "wood-too-cold",
            Level.CAUTION,
            least.source,
            measured=celsius(surface),
            wanted=celsius(least.value),
            of=of.name,
        )


def _ahead(of: FinishClass, room: RoomAir, now: datetime) -> Iterator[Finding]:
    """Cold in the first night damages some films for good, and holds up any."""
    limits, tack_free = of.limits, of.stages.get(Stage.TACK_FREE)
    if limits.min_c is None:
        return
    harms = limits.warm_first_h
    if harms is None and tack_free is not None and not tack_free.high_h:
        return  # dry as it goes on, it meets no night
    hours = harms.value if harms else (tack_free.high_h if tack_free else 0.0)
    coldest = coldest_ahead(room, now, timedelta(hours=hours))
    if coldest is None:
        yield _untold(of, limits.min_c, room, now, hours)
        return
    if coldest >= limits.min_c.least:
        return
    yield finding(
        "cold-night-harms" if harms else "cold-night-halts",
        Level.CAUTION if harms else Level.NOTE,
        harms.source if harms else limits.min_c.source,
        measured=celsius(coldest),
        wanted=celsius(limits.min_c.value),
        of=of.name,
        first_h=hours,
    )


def _untold(of: FinishClass, least: Limit, room: RoomAir, now: datetime, hours: float) -> Finding:
    """Ask how cold it gets: a reading says nothing of the night, nor of the room unheated.

    It is asked before a film that cold damages, and where a heater is known to stop; else it is
    only noted.
    """
    ahead = room.course.between(now, now + timedelta(hours=hours))
    stops = any(span.heated_since is not None for span in ahead)
    harms = of.limits.warm_first_h is not None
    return finding(
        NIGHT_UNTOLD,
        Level.CAUTION if stops or harms else Level.NOTE,
        least.source,
        wanted=celsius(least.value),
        of=of.name,
        in_room=room.name,
        heater="stops" if stops else "",
        first_h=hours if harms else None,
    )


def _hot(
    of: FinishClass, room: RoomAir, now: datetime, figures: DryingFigures
) -> Iterator[Finding]:
    """A film in hot air skins over before it has flowed out, the more so while it gets hotter."""
    reading = room.read_lately(now)
    if reading is None or reading.temperature_c <= figures.hot_c.value or not of.builds_film:
        return
    yield finding(
        "hot",
        source=figures.hot_c.source,
        measured=celsius(reading.temperature_c),
        change_c=_change(room, reading),
    )


def _change(room: RoomAir, reading: AirPoint) -> float | None:
    """Return how the last readings rise (°C), or fall; None: there is but one."""
    before = [r for r in room.readings if reading.at - _LATELY <= r.at < reading.at]
    return reading.temperature_c - before[0].temperature_c if before else None


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
        yield finding(
            "dew-tonight",
            Level.CAUTION,
            figures.dew_margin_c.source,
            measured=celsius(coldest),
            dew_c=dew,
        )
