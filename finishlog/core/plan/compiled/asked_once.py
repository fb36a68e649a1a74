"""What no clock says of a task: the rule that held it up as its story was told, and until when."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime

from msgspec.structs import replace

from finishlog.core.findings import Answer
from finishlog.core.log.entries import Target
from finishlog.core.plan.compiled.story import Deed, Story
from finishlog.core.plan.jobs import after_solvent_wipe
from finishlog.core.plan.shop_ahead import ShopAhead
from finishlog.core.plan.waits import Held, held_up


def held_by(story: Story, ahead: ShopAhead, deed: Deed, at: datetime) -> Held | None:
    """Return what else holds a task up once all its clocks are over; None: what is minded anyway.

    The bench is asked, of the story as far as it was told. The search minds wet films beside, and
    air that a coat does not go on in.
    """
    shop = replace(ahead.shop, parts=story.parts)
    then = ShopAhead(
        shop,
        ahead.log,
        ahead.facts,
        ahead.now,
        ahead.zone,
        paces=ahead.paces,
        lessons=ahead.lessons,
        rooms=ahead.rooms,
        cans=ahead.cans,
    )
    for each in story.deeds[: deed.number]:
        then.put(*each.entries)
    found = next(_held(then, deed.on, at), None)
    return None if found is None or found.answer is Answer.NOT_IN_THIS_AIR else found


def _held(then: ShopAhead, on: frozenset[Target], at: datetime) -> Iterator[Held]:
    near = replace(then.around(at), wet_films={})
    states = [after_solvent_wipe(z) or z for z in then.zones_at(on)]
    for state in then.judged(states, near):
        held = held_up(state, near) if state.progress.next is not None else None
        if held is not None:
            yield held
