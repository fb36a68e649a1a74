"""A plan that was searched for, held to what every plan is held to, and against one made forward.

Schedules are common practice, figures the published ones, pieces and hours invented.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from finishlog.core.log.words import Operation
from finishlog.core.plan.forward import Forward
from finishlog.core.plan.results import Chore, Plan
from finishlog.core.plan.search.search import search
from finishlog.core.plan.searched import searched
from tests.compiled_plan import Made
from tests.planned import (
    EVENINGS,
    check_bench,
    check_dust,
    check_hours,
    check_nothing_vanished,
    open_from,
    shop_read,
    shop_with,
    work_of,
)
from tests.shop_of import FACTS, SHELLAC, WATERBORNE, Story, at
from tests.shops_at_random import shop_at_random

pytestmark = pytest.mark.thorough

SAND, SCUFF = Operation.SAND, Operation.SCUFF


def forward_of(made: Made) -> Forward:
    """Make ready to plan a shop forward."""
    due = {p.id: p.due for p in made.shop.projects if p.due is not None}
    return Forward(
        made.shop, made.log, made.facts, made.now, made.zone, due, made.paces, made.lessons
    )


def both(made: Made) -> tuple[Plan, Plan]:
    """Return the plan that was searched for, and the one made forward."""
    forward = forward_of(made)
    found = searched(forward)
    assert found is not None
    forward.run()
    return found, forward.plan()


def set_ups(plan: Plan) -> int:
    return sum(t.chore is Chore.SET_UP for s in plan.sessions for t in s.tasks)


def finished(plan: Plan):
    return max(t.end for t in work_of(plan))


@pytest.mark.parametrize("number", [2, 11, 23])
def test_it_passes_every_check_of_a_plan(number):
    made = shop_at_random(number, 4)
    found, forward = both(made)
    check_hours(found, made.shop.hours)
    check_bench(found, made.shop, made.log)
    check_nothing_vanished(found, made.shop, made.log)
    if len(made.shop.rooms) == 1:
        check_dust(found, FACTS.hands_on)
    assert len(found.unplanned) <= len(forward.unplanned)


@pytest.mark.parametrize("number", [1, 3])
def test_of_a_dozen_parts_it_ends_no_later_and_misses_fewer_windows(number):
    found, forward = both(shop_at_random(number, 12))
    assert finished(found) <= finished(forward)
    assert found.missed <= forward.missed
    assert set_ups(found) <= set_ups(forward)


def test_a_batch_is_coated_to_its_last_piece_before_a_window_closes():
    """Of many pieces the window of each counts, not of the first alone."""
    story = shop_read(23.0, 50.0)
    part = story.part("slats", WATERBORNE, pieces=20, species="ash")
    story.coat(-7.0, WATERBORNE, part)
    story.parts[0] = replace(part, steps=(*part.steps, replace(part.steps[0], position=2)))
    made = Made(shop_with(story, open_from(*((d, "18:00", "22:00") for d in range(7)))),
                story.log(0), FACTS, at(0), story.zone)  # fmt: skip
    found = searched(forward_of(made))
    assert found is not None
    check_bench(found, made.shop, made.log)
    coat = work_of(found, Operation.COAT)[0]
    assert coat.closes is None or coat.end <= coat.closes or found.missed > 0


def test_what_no_task_is_made_of_is_left_out_by_name():
    story = shop_read(23.0, 50.0)
    story.part("lid", SAND, SHELLAC, species="oak")
    bad = story.part("door", SAND, SHELLAC, WATERBORNE, species="ash")
    story.coat(-60, "waterborne-two-part", bad, mixed=False)
    made = Made(shop_with(story, EVENINGS), story.log(0), FACTS, at(0), story.zone)
    found, forward = both(made)
    assert [u.part.name for u in found.unplanned] == [u.part.name for u in forward.unplanned]
    assert {t.part.name for t in work_of(found) if t.part} == {"lid"}


def test_nothing_to_do_is_no_plan_to_search_for():
    story = Story()
    story.part("lid", species="oak")
    made = Made(shop_with(story, EVENINGS), story.log(0), FACTS, at(0), story.zone)
    assert searched(forward_of(made)) is None


def test_a_search_ends_where_the_openings_do():
    """Where some way of working would not be done by the last opening another one is."""
    story = Story()
    story.part("sides", *[WATERBORNE] * 4, faces=("front", "back"))
    week = open_from((0, "18:00", "21:00"), (2, "18:00", "21:00"), (5, "09:00", "12:30"))
    made = Made(shop_with(story, week), story.log(0), FACTS, at(0), story.zone)
    whole = made.compiled().shop
    found = search(whole, 400).plan
    last = sum(opens <= found.finish for opens, _ in whole.openings)
    assert found.is_whole
    for count in range(last + 1):
        fewer = search(replace(whole, openings=whole.openings[:count]), 400).plan
        assert fewer.is_whole == (count >= last)
