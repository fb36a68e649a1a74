"""Wood that is still on its way to the moisture of its air: its trend, its age, where it was.

Moisture content is % of the weight of the dry wood; widths move by USDA Wood Handbook equation
13-2, told in % of a flat-sawn width.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from msgspec.structs import replace

from finishlog.core.findings import Act, Answer, Finding, Level, finding, pct
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.published.moisture import settles_pct
from finishlog.core.rules.reads import MEASURED, OPEN_WOOD, STOOD, WOOD
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.rules.wood.in_store import SETTLED, moved_in_store, moves_by_pct
from finishlog.core.rules.wood.too_wet import measured_moisture, too_wet, trend
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

_JOINS = frozenset({Act.GLUE_UP, Act.CLAMP})


@rule(
    "moisture-trend",
    binds=COAT | _JOINS,
    source=COMMON_PRACTICE,
    reads=f"{OPEN_WOOD} {STOOD} {MEASURED} piece-reading.when piece-reading.moisture_pct",
)
def moisture_trend(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Two readings tell more than one: the wood dries, stands still, or takes up water."""
    went, read = trend(zone.entries), measured_moisture(zone.entries)
    figures = around.facts.moisture
    if went is None or read is None or read.moisture_pct is None or not zone.wood_lies_open:
        return
    point = zone.room.measured_at(around.now)
    if too_wet(read.moisture_pct, point.air if point else None, figures):
        return
    found = finding(
        "moisture-trend",
        source=COMMON_PRACTICE,
        measured=pct(read.moisture_pct),
        change=went[0],
        over=went[1],
    )
    yield replace(found, acts=(read.act,))


@rule(
    "moisture-old",
    binds=COAT | _JOINS,
    source="facts: moisture",
    reads=f"{OPEN_WOOD} {STOOD} {MEASURED} piece-reading.when piece-reading.moisture_pct",
)
def moisture_old(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A reading whose days are over says nothing, once the air would make the wood another."""
    read, figures = measured_moisture(zone.entries), around.facts.moisture
    point = zone.room.measured_at(around.now)
    if read is None or read.moisture_pct is None or point is None or not zone.wood_lies_open:
        return
    age = around.now - read.when.latest
    if age.days < figures.reading_holds_d.value or too_wet(read.moisture_pct, point.air, figures):
        return
    settles = settles_pct(point.air)
    if settles - read.moisture_pct > figures.over_air_pct.value:
        found = finding(
            "moisture-old",
            Level.CAUTION,
            figures.reading_holds_d.source,
            measured=pct(read.moisture_pct),
            answer=Answer.TEST,
            days=float(age.days),
            settles=settles,
        )
        yield replace(found, acts=(read.act,))


@rule(
    "wood-too-dry",
    binds=COAT | _JOINS | {Act.PACK},
    source="facts: moisture",
    reads=f"{WOOD} {STOOD} {MEASURED} piece-reading.when piece-reading.moisture_pct",
)
def wood_too_dry(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Wood drier than its room makes it will swell there: room for that, and panels left loose."""
    read, figures = measured_moisture(zone.entries), around.facts.moisture
    point = zone.room.measured_at(around.now)
    if read is None or read.moisture_pct is None or point is None:
        return
    fresh = (around.now - read.when.latest).days < figures.reading_holds_d.value
    points = settles_pct(point.air) - read.moisture_pct
    if fresh and points > figures.over_air_pct.value:
        found = finding(
            "wood-too-dry",
            source=figures.over_air_pct.source,
            measured=pct(read.moisture_pct),
            settles=settles_pct(point.air),
            moves=moves_by_pct(zone, points, around.facts),
        )
        yield replace(found, acts=(read.act,))


@rule(
    "from-other-air",
    binds=COAT | _JOINS,
    source="facts: moisture",
    reads=f"{OPEN_WOOD} {WOOD} {STOOD} {SETTLED}",
)
def from_other_air(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Bare wood that stood long in air far from this one's settles first, or is measured.

    What was worked here before it stood there says so itself (`moved-in-store`).
    """
    figures, now, stays = around.facts.moisture, around.now, zone.stays
    if len(stays) < 2 or not zone.wood_lies_open:
        return
    came, left = stays[-1].since, stays[-2]
    settle = timedelta(days=figures.settle_d.value)
    read = measured_moisture(zone.entries)
    if now >= came + settle or came - left.since < settle:
        return
    if read is not None and read.when.latest >= came:
        return
    there, here = left.air.measured_at(came), zone.room.measured_at(now)
    if there is None or here is None:
        return
    was, will = settles_pct(there.air), settles_pct(here.air)
    apart = abs(will - was) > figures.over_air_pct.value
    if apart and moved_in_store(zone, now, around.facts) is None:
        yield finding(
            "from-other-air",
            # Nobody measured it: something to know, never a reason to stop.
            Level.NOTE,
            figures.settle_d.source,
            was=was,
            will=will,
            room=left.air.name,
            days=figures.settle_d.value,
            moves=moves_by_pct(zone, will - was, around.facts),
        )
