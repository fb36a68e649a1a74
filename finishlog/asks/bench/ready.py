"""What is still dangerous, what may I do now, what closes soon, what must I leave alone?"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import UTC, datetime, timedelta
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from finishlog.asks.bench.fits import Fits, fits_into
from finishlog.asks.bench.open_cans import (
    BeforeLine,
    CanInDoubt,
    MixLine,
    Opens,
    before_work,
    cans_in_doubt,
    open_mixes,
)
from finishlog.asks.bench.rags import RagsLine, open_rags
from finishlog.asks.bench.uneven import UnevenLine, uneven_faces
from finishlog.asks.bench.vapour_there import PeopleLine, VapourLine, people_out, vapour_there
from finishlog.asks.look.acts_behind import acts_of
from finishlog.asks.look.look import Look, look
from finishlog.asks.look.standing import Standing, glue_up_standings, standings
from finishlog.context import Context
from finishlog.core.air.psychrometrics import Air, dew_point_c
from finishlog.core.air.room import RoomAir
from finishlog.core.bench.milestones import furthest
from finishlog.core.clock.air_to_come import coldest_ahead
from finishlog.core.film.layers import ABRADES
from finishlog.core.findings import (
    BLUSH,
    HEATER_UNTOLD,
    NIGHT_UNTOLD,
    Answer,
    Deed,
    Finding,
    Level,
    finding,
)
from finishlog.core.finish.classes import FinishClass
from finishlog.core.finish.stages import Stage
from finishlog.core.rules.air.coating_air import air_findings
from finishlog.core.rules.air.flame import lives_there
from finishlog.core.safety.ignition import lights, of_films
from finishlog.core.safety.whats_in import in_product
from finishlog.core.shop.hours import is_open, next_opening
from finishlog.core.zone.grouping import Label, describe
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import MAY_ACT

if TYPE_CHECKING:
    from finishlog.core.safety.room_takes import RoomTakes

_STOPPED = {Answer.STALLED, Answer.SUSPECT, Answer.UNDERNEATH}
_TONIGHT = timedelta(hours=12)
_NEVER = datetime.max.replace(tzinfo=UTC)
FINE = finding("fine")
_WAITS = {Answer.DRYING, Answer.DEAD_ZONE, Answer.WAITS, Answer.NOT_IN_THIS_AIR}


class RoomLine(Struct, frozen=True):
    """One room's air now; `air` None: not read within a day. `fitness`: (what, how it stands).

    `in_use`: something that minds the air stands there; of an idle room only what was read is said.

    `tonight_c`: the coldest to expect within twelve hours; None: nobody told of a usual day.
    """

    room: str
    read_at: datetime | None
    air: Air | None
    dew_point_c: float | None
    coldest_night_c: float | None
    fitness: tuple[tuple[str, Finding], ...]
    acts: tuple[int, ...] = ()
    tonight_c: float | None = None
    # How cold its nights get was not told, and something that is to go on minds it.
    asks_night: bool = False
    in_use: bool = True
    # Only a thermometer was read.
    humidity_supposed: bool = False


class PartMilestone(Struct, frozen=True):
    """A part whose coats are done: the furthest handling stage reached, and the next."""

    part: str
    label: Label
    reached: Stage | None
    next: Stage | None
    next_at: datetime | None
    blocked: Finding | None
    air_read: bool
    acts: tuple[int, ...] = ()


class Ready(Struct, frozen=True):
    """The one screen of the evening."""

    now: datetime
    rooms: tuple[RoomLine, ...]
    rags: tuple[RagsLine, ...]
    bench: tuple[Standing, ...]
    stopped: tuple[Standing, ...]
    drying: tuple[Standing, ...]
    set_aside: tuple[Standing, ...]
    glue_ups: tuple[Standing, ...]
    milestones: tuple[PartMilestone, ...]
    shop_open: bool | None
    shop_opens: datetime | None
    next_at: datetime | None
    next_what: str
    empty: bool
    fits: Fits | None = None
    mixed: tuple[MixLine, ...] = ()
    cans: tuple[CanInDoubt, ...] = ()
    uneven: tuple[UnevenLine, ...] = ()
    vapour: tuple[VapourLine, ...] = ()
    # Who stays out of which room, and until when at the earliest.
    people: tuple[PeopleLine, ...] = ()
    # What the rooms take of the coats that may go on now; only where it was asked for.
    takes: tuple[RoomTakes, ...] = ()
    # What is stacked, packed or stored, what is to be looked at first.
    kept: tuple[Standing, ...] = ()
    # What stands ready before the cans that are offered are opened.
    before: tuple[BeforeLine, ...] = ()


def ready(
    context: Context, only: Iterable[int] = (), minutes: float | None = None, *, air: bool = False
) -> Ready:
    """Answer for every open part, or for the parts with the ids in `only`.

    With `minutes`, also say what fits into them; with `air`, what the rooms' air takes.
    """
    with context.reading() as connection:
        seen = look(context, connection)
    answer = ready_from(seen, frozenset(only))
    if air:
        # It is worked out for whoever asks for all: a start does without.
        from finishlog.asks.look.air_there import due_air

        mine = [z for z in seen.bench.in_the_shop if not only or z.part.id in frozenset(only)]
        answer = replace(answer, takes=due_air(seen, zones=mine))
    if minutes is None:
        return answer
    return replace(answer, fits=fits_into(answer.bench, minutes, seen.shop.products, context.facts))


def ready_from(seen: Look, only: frozenset[int]) -> Ready:
    """Answer from a shop that was already looked at."""
    zones = [z for z in seen.bench.in_the_shop if not only or z.part.id in only]
    lines = standings([z for z in zones if z.progress.next or z.layers], seen)
    left = [s for s in lines if s.deed is Deed.LEAVE]
    may_act = MAY_ACT | {Answer.BLOCKED, Answer.DEADLINE}
    acting = [s for s in lines if s.answer in may_act and s not in left]
    waiting = [*left, *(s for s in lines if s.answer in _WAITS)]
    glue_ups = glue_up_standings(
        (g for g in seen.bench.glue_ups if not only or g.part.id in only), seen
    )
    soonest = min(
        (s for s in waiting if s.high), key=lambda s: s.high or seen.clock.now, default=None
    )
    hours = seen.shop.hours
    return Ready(
        now=seen.clock.now,
        rooms=tuple(_room(r, zones, seen) for r in seen.shop.rooms),
        rags=open_rags(seen),
        bench=tuple(sorted(acting, key=_urgency)),
        stopped=tuple(s for s in lines if s.answer in _STOPPED),
        drying=tuple(sorted(waiting, key=_soonest)),
        set_aside=tuple(s for s in lines if s.answer is Answer.SET_ASIDE),
        glue_ups=glue_ups,
        milestones=_milestones(zones, seen.clock.now),
        shop_open=is_open(hours, seen.clock.now) if hours.patterns else None,
        shop_opens=next_opening(hours, seen.clock.now),
        next_at=soonest.high if soonest else None,
        next_what=_what(soonest) if soonest else "",
        empty=not seen.shop.parts,
        mixed=open_mixes(seen),
        uneven=uneven_faces(zones, seen),
        vapour=vapour_there(seen),
        people=people_out(seen),
        kept=tuple(sorted((s for s in lines if s.kept), key=_look_first)),
        cans=cans_in_doubt(seen, _still_to_go_on(seen.bench.in_the_shop, seen)),
        before=before_work(_offered(zones), seen),
    )


def _what(line: Standing) -> str:
    """Name what is done next about a line that waits: what is left alone is looked at then."""
    doing = Deed.CHECK_AGAIN.value if line.deed is Deed.LEAVE else line.operation
    return f"{doing} {line.label}".strip()


def _offered(zones: Iterable[ZoneState]) -> Iterator[Opens]:
    """Yield what is opened for the coats that may go on now, after a scuff or a test too."""
    for zone in zones:
        step = zone.progress.next
        if step is not None and step.product is not None and zone.verdict.answer in MAY_ACT:
            yield Opens(step.product, zone.room.id)


def _urgency(line: Standing) -> tuple[bool, bool, bool, datetime]:
    """Sort: deadlines, scuffing and sanding (dust first), then coats, soonest closing first."""
    dusty = line.answer is Answer.SCUFF or line.operation in ABRADES
    closes = line.closes or datetime.max.replace(tzinfo=UTC)
    return (line.answer is not Answer.DEADLINE, not dusty, line.answer is Answer.BLOCKED, closes)


def _look_first(line: Standing) -> datetime:
    return (line.kept and line.kept.look_by) or _NEVER


def _soonest(line: Standing) -> tuple[bool, datetime]:
    """Sort by when it is ready; what no date ends by when its window closes."""
    return line.high is None, line.high or line.closes or _NEVER


def _room(room: int, zones: Sequence[ZoneState], seen: Look) -> RoomLine:
    known, air = seen.shop.rooms[room], seen.bench.rooms[room]
    reading = air.measured_at(seen.clock.now)
    return RoomLine(
        room=known.name,
        read_at=reading.at if reading else None,
        air=reading.air if reading else None,
        dew_point_c=dew_point_c(reading.air) if reading else None,
        coldest_night_c=known.coldest_night_c,
        fitness=tuple(_fitness(air, zones, seen, read=reading is not None)),
        acts=(reading.act,) if reading else (),
        tonight_c=coldest_ahead(air, seen.clock.now, _TONIGHT) if air.is_foretold else None,
        asks_night=_asks_night(air, seen),
        in_use=room in seen.bench.rooms_in_use,
        humidity_supposed=reading is not None and reading.supposed,
    )


def _fitness(
    air: RoomAir, zones: Sequence[ZoneState], seen: Look, *, read: bool
) -> Iterable[tuple[str, Finding]]:
    """Yield, for every product still to go on some zones there, what this air does to it.

    What burns or glows where its vapour comes to goes first: no air is fine beside it, `read` or
    not. In a room where nothing stands, what is to go on elsewhere: why else was its air read?
    """
    here = _still_to_go_on(zones, seen, air.id)
    for product in sorted(here or (_still_to_go_on(zones, seen) if read else ())):
        known = seen.shop.products[product]
        of = seen.facts.finish_class(known.class_key)
        method = of.methods[0]
        what = in_product(known)
        vapour = of_films(((of, what),), seen.facts, seen.clock.now)
        lit = tuple(lights(vapour, air, seen.clock.now))
        home = tuple(lives_there(of, what, method, air, seen.facts))
        if not read and not home and not any(f.level is Level.STOP for f in lit):
            continue
        found = [
            f
            for f in (
                *sorted(lit, key=_stops_first),
                *home,
                *(_said(seen.context, of, air) if read else ()),
            )
            if f.rule not in {NIGHT_UNTOLD, HEATER_UNTOLD}
            # Of two rules that contradict, the one that standard air breaks is a word of `why`.
            and not (f.rule == BLUSH and f.level is Level.NOTE)
        ]
        yield (
            f"{method.value} {known.name}",
            found[0] if found else FINE,
        )


def _stops_first(found: Finding) -> bool:
    return found.level is not Level.STOP


def _said(context: Context, of: FinishClass, air: RoomAir) -> tuple[Finding, ...]:
    return air_findings(of, of.methods[0], air, context.clock.now, context.facts.drying)


def _asks_night(air: RoomAir, seen: Look) -> bool:
    """Tell whether something is still to go on there that minds a night nobody told of."""
    products = (
        seen.shop.products[p] for p in _still_to_go_on(seen.bench.in_the_shop, seen, air.id)
    )
    classes = (seen.facts.finish_class(product.class_key) for product in products)
    found = (f for of in classes for f in _said(seen.context, of, air))
    return any(finding.rule == NIGHT_UNTOLD for finding in found)


def _still_to_go_on(zones: Iterable[ZoneState], seen: Look, room: int | None = None) -> set[int]:
    """Return the products that are still to go on those zones that stand in one room, or on all."""
    due = {
        step.product
        for zone in zones
        if room is None or zone.room.id == room
        for step in zone.progress.steps[zone.progress.done :]
        if step.product is not None
    }
    return due & seen.shop.products.keys()


def _milestones(zones: Sequence[ZoneState], now: datetime) -> tuple[PartMilestone, ...]:
    """Say of each part whose coats are done how far it may be handled."""
    by_part: dict[int, list[ZoneState]] = {}
    for zone in zones:
        by_part.setdefault(zone.part.id, []).append(zone)
    found = []
    for states in by_part.values():
        coated = [z for z in states if z.layers]
        if coated and all(z.verdict.answer is Answer.DONE for z in coated):
            found.append(_part_milestone(coated, now))
    return tuple(found)


def _part_milestone(states: Sequence[ZoneState], now: datetime) -> PartMilestone:
    part = states[0].part
    reached, coming = furthest(states, now)
    return PartMilestone(
        part=part.path,
        label=describe(part, [z.piece.number for z in states], ()),
        reached=reached.stage if reached else None,
        next=coming.stage if coming else None,
        next_at=coming.high if coming else None,
        blocked=coming.blocked if coming else None,
        air_read=coming.air_read if coming else True,
        acts=acts_of(states),
    )
