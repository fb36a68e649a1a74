"""Wood that stood for weeks in other air than it was last worked in has another moisture by now.

What it holds is reckoned by the air of the rooms that it stood in (USDA Wood Handbook, equation
4-5), over the days that thin stock takes to follow; told in points, and % of a flat-sawn width.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta
from typing import NamedTuple

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.met import Leg, air_met
from finishlog.core.air.room import READING_SPEAKS_FOR, READING_STAYS
from finishlog.core.air.span import AirPoint
from finishlog.core.findings import Act, Answer, Finding, Level, finding
from finishlog.core.log.entries import AnyEntry, Check, Coat, PieceReading, Stripped, Work
from finishlog.core.log.words import Operation, Test
from finishlog.core.published.facts import Facts
from finishlog.core.published.moisture import moves_mm, settles_pct
from finishlog.core.rules.reads import MEASURED, OPEN_WOOD, STOOD, WOOD
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

# When it was last worked or measured, and the air since.
SETTLED = (
    f"{MEASURED} reading.humidity_supposed work.operation work.when stripped.when joined.members"
    " joined.when piece-reading.when piece-reading.moisture_pct"
)
_JOINS = frozenset({Act.GLUE_UP, Act.CLAMP})
# The damp of a room goes by the season: so long a reading tells of it, where nobody read again.
_TELLS_FOR = timedelta(days=30)
# Makes wood flat and true again, whatever it was; a light scuff does not.
_FLATTENS = frozenset({Operation.SHAPE, Operation.SAND, Operation.LEVEL})
_LOOKS = frozenset({Test.STRAIGHTEDGE, Test.LOOK})


class Moved(Struct, frozen=True):
    """Wood as it was when last worked or measured (`was`, %), and as its air has made it (`now`).

    `acts`: the readings of that air.
    """

    since: datetime
    was: float
    now: float
    rooms: tuple[str, ...]
    acts: tuple[int, ...]


def moves_by_pct(zone: ZoneState, points: float, facts: Facts) -> float | None:
    """Return how far (% of its width) flat-sawn wood moves for so many points; None: no figure."""
    wood = facts.species_named(zone.species) if zone.species else None
    per_pct = wood.tangential_per_pct if wood else None
    return abs(moves_mm(100.0, per_pct.value, 0.0, points)) if per_pct else None


def moved_in_store(zone: ZoneState, now: datetime, facts: Facts) -> Moved | None:
    """Return how far its air took wood since it was last worked; None: not far, or not known."""
    last, glued = next((e for e in reversed(zone.entries) if _shapes(e)), None), zone.joined_by
    moments = [each.when.latest for each in (last, glued) if each is not None]
    since, settle = max(moments, default=now), timedelta(days=facts.moisture.settle_d.value)
    if now - since < settle:
        return None
    was, then = _by_its_air(zone, since, settle), _by_its_air(zone, now, settle)
    read = last.moisture_pct if isinstance(last, PieceReading) else None
    if last is not None and read is not None and last.when.latest == since:
        was = _Holds(read, (last.act,))
    if was is None or then is None:
        return None
    if abs(then.pct - was.pct) <= facts.moisture.over_air_pct.value:
        return None
    rooms = dict.fromkeys(leg.room.name for leg in air_met(zone.stays, since).upto(now))
    if read is not None and then.pct > was.pct and zone.wood_lies_open:
        # A reading that is too old for the damp of its room says so itself (`moisture-old`).
        return None
    return Moved(since, was.pct, then.pct, tuple(rooms), tuple(sorted({*was.acts, *then.acts})))


def _shapes(entry: AnyEntry) -> bool:
    """Tell whether an entry says what the wood was like: it was measured, worked or coated."""
    if isinstance(entry, PieceReading):
        return entry.moisture_pct is not None
    return isinstance(entry, Coat | Stripped) or (
        isinstance(entry, Work) and entry.operation in _FLATTENS
    )


class _Holds(NamedTuple):
    pct: float
    acts: tuple[int, ...]


def _by_its_air(zone: ZoneState, moment: datetime, settle: timedelta) -> _Holds | None:
    """Return what wood holds by the air it stood in for the days before; None: it was not read."""
    points, long, acts = 0.0, timedelta(), dict[int, None]()
    for leg in air_met(zone.stays, moment - settle).upto(moment):
        for reading, counts in _read_there(leg, moment):
            points += settles_pct(reading.air) * (counts / settle)
            long += counts
            acts[reading.act] = None
    return _Holds(points / (long / settle), tuple(acts)) if long else _by_that_hour(zone, moment)


def _by_that_hour(zone: ZoneState, moment: datetime) -> _Holds | None:
    """Return what wood settles at by a reading of those hours in the room that it stood in then."""
    speaks_for = moment + READING_SPEAKS_FOR
    there = next(air_met(zone.stays, moment).upto(speaks_for), None)
    for reading in there.room.since(moment - READING_STAYS) if there else ():
        if reading.at <= speaks_for and not reading.supposed:
            return _Holds(settles_pct(reading.air), (reading.act,))
    return None


def _read_there(leg: Leg, moment: datetime) -> Iterator[tuple[AirPoint, timedelta]]:
    """Yield the readings that tell of a stay, and for how long each counts: until the next one.

    The first of a stay also counts for what lies before it.
    """
    start, end = leg.start, leg.end or moment
    before = leg.room.read_before(start)
    held = before is not None and start - before.at < _TELLS_FOR
    found = [before] if before is not None and held else []
    found += [r for r in leg.room.since(start) if r.at <= end]
    found = [r for r in found if not r.supposed]
    for n, reading in enumerate(found):
        first = start if n == 0 else reading.at
        yield reading, (found[n + 1].at if n + 1 < len(found) else end) - first


@rule(
    "moved-in-store",
    binds=COAT | _JOINS | {Act.PACK, Act.HAND_OVER, Act.REST},
    source="facts: moisture",
    reads=f"{OPEN_WOOD} {WOOD} {STOOD} {SETTLED} check.test check.when",
)
def in_store(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """It shrank or swelled: bare tongues, joints and wide tops are looked at, and it is measured.

    By the air of the room where it stood, not of the shop it is in. Under a film it is a word.
    """
    moved = moved_in_store(zone, around.now, around.facts)
    if moved is None:
        return
    open_wood = zone.wood_lies_open
    looked = (e for e in zone.entries if isinstance(e, Check) and e.test in _LOOKS)
    if not open_wood and any(e.when.latest > moved.since for e in looked):
        return
    measures = asked.act in _JOINS or (open_wood and asked.act is Act.COAT)
    found = finding(
        "moved-in-store",
        Level.CAUTION if measures or asked.act is Act.COAT else Level.NOTE,
        around.facts.moisture.settle_d.source,
        answer=Answer.TEST if measures else None,
        was=moved.was,
        will=moved.now,
        rooms=moved.rooms,
        days=float((around.now - moved.since).days),
        shrank="shrank" if moved.now < moved.was else "",
        moves=moves_by_pct(zone, moved.now - moved.was, around.facts),
    )
    yield replace(found, acts=moved.acts)
