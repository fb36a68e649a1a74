"""When may a part be touched, recoated, turned, clamped, stacked, packed, used?"""

from __future__ import annotations

from datetime import datetime

from msgspec import Struct

from finishlog.asks.look.look import Look, look
from finishlog.asks.look.meant import Wanted
from finishlog.asks.look.standing import Standing, glue_up_standings, standing_of
from finishlog.context import Context
from finishlog.core.bench.milestones import Milestone, milestone, to_ship
from finishlog.core.finish.stages import Stage
from finishlog.core.zone.grouping import Group, groups


class WhenLine(Struct, frozen=True):
    """One group of a part: how it stands, every stage with its low and high time, a carrier."""

    standing: Standing
    since: datetime | None
    stages: tuple[Milestone, ...]
    ship: Milestone | None = None


class When(Struct, frozen=True):
    """The stages of some parts, and the glue-ups they wait for."""

    now: datetime
    lines: tuple[WhenLine, ...]
    glue_ups: tuple[Standing, ...]


def when(context: Context, wanted: Wanted) -> When:
    """Answer for what is meant, and for the glue-ups of its parts."""
    with context.reading() as connection:
        seen = look(context, connection)
    zones = wanted.of(seen.bench.zones)
    return When(
        now=context.clock.now,
        lines=tuple(_line(group, seen) for group in groups(zones)),
        glue_ups=glue_up_standings(
            (g for g in seen.bench.glue_ups if g.part.id in wanted.ids), seen
        ),
    )


def _line(group: Group, seen: Look) -> WhenLine:
    found = (milestone(group.states, stage) for stage in Stage)
    top = group.first.top
    return WhenLine(
        standing=standing_of(group, seen),
        since=top.put_on if top else None,
        stages=tuple(m for m in found if m),
        ship=to_ship(group.states),
    )
