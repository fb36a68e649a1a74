"""When and where may a coat begin that this air forbids, or that the night would spoil?"""

from __future__ import annotations

from datetime import datetime

from msgspec import Struct
from msgspec.structs import replace

from finishlog.asks.look.look import Look
from finishlog.context import Context
from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.room import RoomAir
from finishlog.core.clock.counting import Clock, Counting
from finishlog.core.clock.start_times import Wanted, next_starts
from finishlog.core.film.layers import laws_of
from finishlog.core.findings import Answer, Finding, Level, finding
from finishlog.core.finish.classes import FinishClass, Mechanism
from finishlog.core.finish.stages import Stage
from finishlog.core.rules.air.coating_air import air_findings, measured_c
from finishlog.core.verdict.another_room import NOT_AMONG_PEOPLE
from finishlog.core.verdict.due import asked_of
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import MAY_ACT

_MEASURE = finding("wood-may-sweat")


class Start(Struct, frozen=True):
    """A room in which a coat may begin, from when, and when at the latest, in UTC.

    No room: where it stands. No `earliest` there: at no time of the next two days. `tack_free`:
    when what was begun last is; `turns`: when the air is then no longer fit. `caution`: on what
    condition. `early`: only if it is tack-free at the early end of its hours, so many.
    """

    room: str
    earliest: datetime | None
    latest: datetime | None = None
    tack_free: datetime | None = None
    turns: datetime | None = None
    air: Air | None = None
    caution: Finding | None = None
    early: float | None = None


class Begin(Struct, frozen=True):
    """Where and when to begin; the products that may go on in the air there is now.

    `tried`: where there are none, the kinds of topcoat that finishers use in such cold all the
    same; `least`: how warm each of the shop's topcoats wants it, °C, where it is too cold;
    `unknown`: what would have to be said to know more.
    """

    starts: tuple[Start, ...] = ()
    instead: tuple[str, ...] | None = None
    tried: tuple[str, ...] = ()
    least: tuple[tuple[str, float], ...] = ()
    unknown: str = ""


def begin(state: ZoneState, seen: Look) -> Begin:
    """Look for a fit time and room where the air speaks against the coat that is due."""
    answer, over = state.verdict.answer, asked_of(state, seen.shop, seen.facts).over
    barred, waits = answer is Answer.NOT_IN_THIS_AIR, answer is Answer.WAITS
    if over is None or not (barred or waits or answer in MAY_ACT):
        return Begin()
    since = max(seen.clock.now, state.verdict.high or seen.clock.now) if waits else seen.clock.now
    wanted = _wanted(over, state, seen)
    # A room that was never read is read first.
    foretold = state.room.is_foretold and bool(state.room.readings) and wanted is not None
    felt_cold = barred and measured_c(state.entries, seen.clock.now) is not None
    here = (
        _here(state.room, since, wanted, barred=barred, felt_cold=felt_cold)
        if wanted and foretold
        else ()
    )
    if not barred:
        return Begin(tuple(s for s in here if s.earliest is None or s.turns is not None))
    unknown = "" if foretold else "when this room gets fit: say how it usually is: room usual"
    by_room = _forbidden(seen.context, over, state.room)
    instead = _instead(state, seen) if by_room else None
    tried = _tried(state, seen) if instead == () else ()
    there = (*here, *_elsewhere(over, state, seen))
    return Begin(there, instead, tried, _least(over, state, seen), unknown)


def _wanted(over: FinishClass, state: ZoneState, seen: Look) -> Wanted | None:
    """Return what the coat asks of the air, by the can's own hours where it gives them."""
    step, top = state.progress.next, state.top
    product = step.product if step else (top.coat.product if top else None)
    known = seen.shop.products.get(product) if product is not None else None
    figure = {**over.stages, **(known.label if known else {})}.get(Stage.TACK_FREE)
    if figure is None:
        return None
    counting = Counting(laws_of(over, seen.facts)(figure), Clock.WAIT, over.limits)
    dew_margin_c = seen.facts.drying.dew_margin_c.value
    return Wanted(figure.high_h, counting, dew_margin_c, early_h=figure.low_h)


def _here(
    room: RoomAir, since: datetime, wanted: Wanted, *, barred: bool, felt_cold: bool
) -> tuple[Start, ...]:
    found, early = next_starts(room, since, wanted), None
    if found is None:
        early = wanted.early_h
        found = next_starts(room, since, replace(wanted, hours=early))
    if found is None:
        return (Start("", None),)
    # What the air does not forbid now, the wood does: it was measured, or may be too cold.
    barred_by_wood = barred and found.earliest == since
    if barred_by_wood and felt_cold:
        return (Start("", None, caution=_MEASURE),)
    caution = _MEASURE if found.wood_cold or barred_by_wood else None
    times = found.earliest, found.latest, found.tack_free, found.turns
    return (Start("", *times, caution=caution, early=early),)


def _elsewhere(over: FinishClass, state: ZoneState, seen: Look) -> tuple[Start, ...]:
    """Return the other rooms that were read lately and in which nothing forbids it now."""
    found = []
    for number, room in seen.bench.rooms.items():
        reading = room.read_lately(seen.clock.now)
        if number == state.room.id or reading is None or _forbidden(seen.context, over, room):
            continue
        caution = None if over.mechanism is Mechanism.WATER else NOT_AMONG_PEOPLE
        found.append(
            Start(seen.shop.rooms[number].name, seen.clock.now, air=reading.air, caution=caution)
        )
    return tuple(found)


def _instead(state: ZoneState, seen: Look) -> tuple[str, ...]:
    """Return the shop's topcoats that this air does not forbid."""
    return tuple(name for name, of in _topcoats(seen) if _allowed(of, state, seen))


def _tried(state: ZoneState, seen: Look) -> tuple[str, ...]:
    """Return the kinds of topcoat that are tried in such cold, which nothing but that forbids."""
    reading = state.room.measured_at(seen.clock.now)
    if reading is None:
        return ()
    cold = reading.temperature_c
    found = []
    for of in seen.facts.classes.values():
        limits = of.limits
        if of.topcoat and limits.tried_from_c and limits.tried_from_c.value <= cold:
            least = replace(limits, min_c=limits.tried_from_c)
            if _allowed(replace(of, limits=least), state, seen):
                found.append(of.name)
    return tuple(found)


def _least(over: FinishClass, state: ZoneState, seen: Look) -> tuple[tuple[str, float], ...]:
    """Return how warm each of the shop's topcoats wants it, where what is due is too cold."""
    reading, least = state.room.measured_at(seen.clock.now), over.limits.min_c
    if reading is None or least is None or reading.temperature_c >= least.value:
        return ()
    known = {of.name: of.limits.min_c.value for _, of in _topcoats(seen) if of.limits.min_c}
    return tuple(sorted(known.items(), key=lambda of: (of[1], of[0])))


def _topcoats(seen: Look) -> list[tuple[str, FinishClass]]:
    known = sorted(seen.shop.products.values(), key=lambda product: product.name)
    classes = ((p.name, seen.facts.finish_class(p.class_key)) for p in known if not p.archived)
    return [(name, of) for name, of in classes if of.topcoat]


def _allowed(of: FinishClass, state: ZoneState, seen: Look) -> bool:
    return not _forbidden(seen.context, of, state.room)


def _forbidden(context: Context, of: FinishClass, room: RoomAir) -> bool:
    found = air_findings(of, of.methods[0], room, context.clock.now, context.facts.drying)
    return any(finding.level is Level.STOP for finding in found)
