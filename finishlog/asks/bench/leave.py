"""May I go? What is still dangerous, what needs warmth, what closes before the next visit.

No answer here says that all is safe: it says what is on record.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime

from msgspec import Struct

from finishlog.asks.bench.heaters import HeatLine as Heater
from finishlog.asks.bench.heaters import heaters
from finishlog.asks.bench.open_cans import MixLine, open_mixes
from finishlog.asks.bench.rags import RagsLine, open_rags, solvent_rags
from finishlog.asks.bench.sprayed_tonight import SprayedTonight, sprayed_tonight
from finishlog.asks.bench.vapour_there import PeopleLine, VapourLine, people_out, vapour_there
from finishlog.asks.look.acts_behind import acts_of
from finishlog.asks.look.look import Look, look
from finishlog.asks.look.standing import Standing, standings
from finishlog.context import Context
from finishlog.core.bench.warmth import A_NIGHT, HeatWanted, heat_wanted
from finishlog.core.clock.air_to_come import coldest_ahead
from finishlog.core.findings import Answer, Finding
from finishlog.core.log.entries import Coat
from finishlog.core.log.words import MaskKept
from finishlog.core.mixing.containers import Lid
from finishlog.core.mixing.keeping import frost_ahead
from finishlog.core.safety.hazards import hazards_of
from finishlog.core.safety.rags import evening_of
from finishlog.core.shop.hours import intervals, is_open, next_opening
from finishlog.core.zone.grouping import groups
from finishlog.core.zone.state import ZoneState


class HeatLine(Struct, frozen=True):
    """Films in one room that want warmth. °C; `until` None: no date in this air."""

    labels: tuple[str, ...]
    room: str
    product: str
    least_c: float
    source: str
    until: datetime | None
    expected_c: float | None
    harms: bool
    acts: tuple[int, ...] = ()


class Closing(Struct, frozen=True):
    """A window or a deadline that ends before the next visit."""

    label: str
    product: str
    closes: datetime
    deadline: bool
    because: Finding
    acts: tuple[int, ...] = ()


class TapeLine(Struct, frozen=True):
    """Tape that is still on."""

    label: str
    since: datetime
    acts: tuple[int, ...] = ()


class FrostLine(Struct, frozen=True):
    """What must not freeze, and the coldest room (°C), since nobody says where it stands."""

    name: str
    product: str
    room: str
    coldest_c: float
    least_c: float
    source: str


class Leave(Struct, frozen=True):
    """What stands in the way of the light switch. `next_visit` None: the hours are unknown."""

    now: datetime
    rags: tuple[RagsLine, ...]
    deadlines: tuple[Closing, ...]
    mixes: tuple[MixLine, ...]
    heat: tuple[HeatLine, ...]
    frost: tuple[FrostLine, ...]
    tape: tuple[TapeLine, ...]
    closing: tuple[Closing, ...]
    next_visit: datetime | None
    # The heaters that run now, by the log.
    heaters: tuple[Heater, ...]
    ready_then: tuple[Standing, ...]
    sprayed: tuple[SprayedTonight, ...] = ()
    solvent_rags: tuple[str, ...] = ()
    vapour: tuple[VapourLine, ...] = ()
    people: tuple[PeopleLine, ...] = ()
    # Cartridges that hang in the open, and are for what went on this evening.
    masks: tuple[str, ...] = ()
    # Bare wood whose preparation is good no longer at the next visit.
    prepared: tuple[Standing, ...] = ()
    # What is kept somewhere and asks for a look before the next visit.
    look_at: tuple[Standing, ...] = ()

    @property
    def not_yet(self) -> bool:
        """Tell whether something must be done before anybody leaves."""
        undone = any(r.is_dangerous for r in self.rags)
        lit = any(line.lit for line in self.vapour)
        return undone or lit or bool(self.deadlines) or any(map(_to_see_to, self.mixes))


def _to_see_to(mix: MixLine) -> bool:
    """Tell whether a mix cannot just be closed and left."""
    return mix.use_by is not None or mix.lid is not Lid.CLOSED


def leave(context: Context) -> Leave:
    """Answer for every open part."""
    with context.reading() as connection:
        return leave_from(look(context, connection))


def leave_from(seen: Look) -> Leave:
    """Answer from a shop that was already looked at."""
    zones, now = seen.bench.in_the_shop, seen.clock.now
    visit = _next_visit(seen)
    lines = standings([z for z in zones if z.progress.next or z.layers], seen)
    running = [s for s in lines if s.answer is Answer.DEADLINE and s.closes]
    drying = [s for s in lines if s.answer is Answer.DRYING and s.high]
    return Leave(
        now=now,
        rags=open_rags(seen),
        deadlines=tuple(_closing(s) for s in running),
        mixes=open_mixes(seen),
        heat=_heat(heat_wanted(zones, now), seen),
        frost=_frost(seen),
        tape=_tape([z for z in zones if z.masked_since]),
        closing=closing_before(seen, now, visit) if visit else (),
        next_visit=visit,
        heaters=tuple(h for h in heaters(seen) if h.span.earliest <= now),
        ready_then=tuple(s for s in drying if visit and s.high and s.high <= visit),
        sprayed=sprayed_tonight(seen),
        solvent_rags=solvent_rags(seen),
        vapour=vapour_there(seen),
        people=people_out(seen),
        masks=_masks(seen),
        look_at=tuple(s for s in lines if _to_look_at(s, now, visit)),
        prepared=tuple(s for s in lines if s not in running and _runs_out(s, now, visit)),
    )


def _to_look_at(line: Standing, now: datetime, visit: datetime | None) -> bool:
    """Tell whether what is kept asks for a look now, or before somebody is here again."""
    by = line.kept.look_by if line.kept else None
    return by is not None and by <= (visit or now)


def _runs_out(line: Standing, now: datetime, visit: datetime | None) -> bool:
    """Tell whether wood is good for its coat now, and at the next visit no longer."""
    return bool(line.prepared and visit and now < line.prepared.until < visit)


def _next_visit(seen: Look) -> datetime | None:
    """Return the next opening after this visit; None when the hours are unknown."""
    hours, leaving = seen.shop.hours, seen.clock.now
    if is_open(hours, seen.clock.now):
        from finishlog.core.shop.hours import HORIZON

        leaving = next(
            (end for _, end in intervals(hours, seen.clock.now, seen.clock.now + HORIZON)),
            seen.clock.now,
        )
    return next_opening(hours, leaving)


def closing_before(seen: Look, since: datetime, until: datetime) -> tuple[Closing, ...]:
    """Return the recoat windows that close between two moments, soonest first."""
    lines = standings([z for z in seen.bench.in_the_shop if z.layers], seen)
    mine = [
        s
        for s in lines
        if s.closes and since < s.closes <= until and s.answer is not Answer.DEADLINE
    ]
    return tuple(sorted((_closing(s) for s in mine), key=lambda c: c.closes))


def _closing(line: Standing) -> Closing:
    assert line.closes is not None
    return Closing(
        label=line.label.full,
        product=line.on_it,
        closes=line.closes,
        deadline=line.answer is Answer.DEADLINE,
        because=line.because,
        acts=line.acts,
    )


def _heat(wanted: Sequence[HeatWanted], seen: Look) -> tuple[HeatLine, ...]:
    """Put films of one product in one room on one line; the longest wait counts."""
    alike: dict[tuple[int | None, str], list[HeatWanted]] = {}
    for each in wanted:
        assert each.state.top is not None
        alike.setdefault((each.state.room.id, each.state.top.coat.product_name), []).append(each)
    rooms = {None: ""} | {r.id: r.name for r in seen.shop.rooms.values()}
    lines = []
    for (room, product), found in alike.items():
        ends = [w.until for w in found]
        known = [e for e in ends if e is not None]
        lines.append(
            HeatLine(
                labels=_labels(w.state for w in found),
                room=rooms.get(room, ""),
                product=product,
                least_c=max(w.least.value for w in found),
                source=found[0].least.source,
                until=max(known) if len(known) == len(ends) else None,
                expected_c=found[0].expected_c,
                harms=any(w.harms for w in found),
                acts=acts_of(w.state for w in found),
            )
        )
    return tuple(lines)


def _frost(seen: Look) -> tuple[FrostLine, ...]:
    cold = {
        room.name: coldest
        for room in seen.shop.rooms.values()
        if (coldest := coldest_ahead(seen.bench.rooms[room.id], seen.clock.now, A_NIGHT, left=True))
        is not None
    }
    if not seen.shop.containers or not cold:
        return ()
    name = min(cold, key=lambda room: cold[room])
    least = seen.facts.keeping.keep_above_c
    return tuple(
        FrostLine(
            name=state.container.name,
            product=seen.shop.products[state.container.product].name,
            room=name,
            coldest_c=cold[name],
            least_c=least.value,
            source=least.source,
        )
        for state in seen.bench.cans.states.values()
        if frost_ahead(state, cold[name], seen.facts.keeping)
    )


def _tape(taped: Sequence[ZoneState]) -> tuple[TapeLine, ...]:
    found = []
    for group in groups(taped):
        since = [z.masked_since.earliest for z in group.states if z.masked_since]
        name = group.label.full
        found.append(TapeLine(name, min(since), acts_of(group.states)))
    return tuple(found)


def _labels(states: Iterable[ZoneState]) -> tuple[str, ...]:
    return tuple(g.label.full for g in groups(states))


def _masks(seen: Look) -> tuple[str, ...]:
    """Name the cartridges that are for the air of this evening, and not on record as in a bag."""
    tonight = evening_of(seen.clock.now, seen.clock.zone)
    coats = (e for e in seen.log.entries if isinstance(e, Coat))
    mine = [c for c in coats if evening_of(c.when.latest, seen.clock.zone) == tonight]
    in_the_air = {h for coat in mine for h in hazards_of(coat, seen.shop, seen.facts)}
    kinds = seen.facts.respirators.kinds
    return tuple(
        mask.name
        for mask in seen.bench.masks
        if mask.holds is not None and mask.kept is not MaskKept.BAG
        if kinds[mask.holds].cartridge and kinds[mask.holds].made_for & in_the_air
    )
