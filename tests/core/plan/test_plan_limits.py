"""Where a plan ends: no hours, no steps, other air, too long, away, failed checks. All invented."""

from __future__ import annotations

from datetime import timedelta

import pytest
from msgspec.structs import replace

from finishlog.cli.words.finding_words import plan_reason, short
from finishlog.core.air.usual_day import UsualDay, UsualHour
from finishlog.core.findings import Answer
from finishlog.core.finish.classes import Range
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found, Operation
from finishlog.core.plan.plan import plan
from finishlog.core.plan.results import Chore, Promise
from finishlog.core.shop.hours import ShopHours
from finishlog.core.shop.things import Project
from finishlog.core.zone.verdict import MAY_ACT
from tests.planned import (
    EVENINGS,
    doings,
    first,
    holds,
    open_from,
    plan_of,
    shop_read,
    tasks_of,
    work_of,
)
from tests.shop_of import (
    FACTS,
    SHELLAC,
    VARNISH,
    WATERBORNE,
    Story,
    at,
    figure,
)

SAND, SCUFF, HARDWARE = Operation.SAND, Operation.SCUFF, Operation.HARDWARE


def test_a_batch_longer_than_any_opening_is_split():
    story = shop_read()
    legs = story.part("legs", SAND, pieces=12)
    evening = open_from(*((day, "18:00", "19:00") for day in range(7)))
    made = plan_of(story, hours=evening)
    assert [t.label for t in work_of(made)] == ["legs:1-6", "legs:7-12"]
    assert made.unplanned == ()
    assert {t.part for t in work_of(made)} == {legs}


def test_work_longer_than_any_opening_is_said_not_planned():
    story = shop_read()
    story.part("door", HARDWARE)
    quarter = open_from(*((day, "18:00", "18:15") for day in range(7)))
    made = plan_of(story, hours=quarter)
    assert made.sessions == ()
    assert "longer than the longest opening" in plan_reason(made.unplanned[0].because)


def test_without_hours_nothing_is_planned_and_it_is_said():
    story = shop_read()
    story.part("door", SHELLAC)
    made = plan_of(story, hours=ShopHours((), "UTC"))
    assert made.sessions == ()
    assert plan_reason(made.unplanned[0].because) == "the shop's hours are not on record"


def test_a_part_without_steps_is_said():
    story = shop_read()
    story.part("door")
    assert plan_reason(plan_of(story).unplanned[0].because) == "it has no steps"


@pytest.mark.parametrize(("celsius", "rh"), [(4.0, 50.0), (21.0, 96.0)])
def test_a_room_too_cold_or_too_damp_needs_other_air(celsius, rh):
    """Sanding goes on; the coat is not planned silently."""
    story = shop_read(celsius, rh)
    door = story.part("door", SAND, WATERBORNE)
    made = plan_of(story, due=at(500))
    assert doings(made, door) == ["sand"]
    left = made.unplanned[0]
    assert left.needs_air
    assert left.answer is Answer.NOT_IN_THIS_AIR
    assert made.projects[0].promise is Promise.UNKNOWN


def test_a_coat_waits_for_the_hours_in_which_the_heater_runs():
    """Cold when the shop opens, heated from seven: the same evening, not the next."""
    story = shop_read(6.0, 55.0)
    story.usual(UsualDay((UsualHour(0, 6, 55),), heated=(19 * 60, 23 * 60), heated_c=20))
    door = story.part("door", WATERBORNE)
    verdict = story.verdict(0)
    assert (verdict.answer, verdict.high) == (Answer.NOT_IN_THIS_AIR, at(1))
    made = plan_of(story)
    coat = first(made, door, Operation.COAT)
    assert at(1) <= coat.start < at(2)
    story.read(1.1, 20, 22)
    assert story.verdict(1.2).answer in MAY_ACT


def test_a_room_read_long_ago_is_planned_by_its_usual_day():
    """Too cold on every evening, 10 °C by 11:20, warm at noon: the coat waits for Saturday."""
    story, noon, four = shop_read(6, 60, hour=-30), 12 * 60, 16 * 60
    cold, warm = (6, 60), (18, 30)
    day = ((0, *cold), (noon - 60, *cold), (noon, *warm), (four, *warm), (four + 60, *cold))
    story.usual(UsualDay(tuple(UsualHour(*point) for point in day)))
    door = story.part("door", WATERBORNE)
    saturday = 5 * 24 - 18
    coat = first(plan_of(story), door, Operation.COAT)
    assert at(saturday + 11 + 20 / 60) <= coat.start <= at(saturday + 16)


def test_a_room_that_was_never_read_is_not_planned_against_its_usual_day():
    story = Story()
    story.usual(UsualDay((UsualHour(6 * 60, 2, 60), UsualHour(14 * 60, 7, 55))))
    story.part("door", WATERBORNE)
    assert plan_of(story).sessions == ()


def test_a_room_that_is_never_warm_enough_needs_other_air_for_good():
    story = shop_read(6.0, 55.0)
    story.usual(UsualDay((UsualHour(6 * 60, 2, 60), UsualHour(14 * 60, 7, 55))))
    story.part("door", WATERBORNE)
    made = plan_of(story)
    assert made.sessions == ()
    assert made.unplanned[0].needs_air


def test_a_film_that_stands_still_in_the_cold_needs_other_air():
    story = shop_read(4.0, 50.0)
    story.part("door", VARNISH, VARNISH)
    story.coat(-0.25, VARNISH)
    assert [u.needs_air for u in plan_of(story).unplanned] == [True]


def test_cold_nights_make_waits_longer():
    warm, cold = shop_read(), shop_read()
    cold.cold_nights(12.0)
    ends = []
    for story in (warm, cold):
        story.part("door", *[VARNISH] * 4)
        ends.append(plan_of(story).sessions[-1].end)
    assert ends[0] < ends[1]


def test_a_room_that_was_never_read_is_planned_by_label_hours():
    story = Story()
    story.part("door", SHELLAC, SHELLAC)
    made = plan_of(story)
    assert len(work_of(made)) == 2
    assert not made.parts[0].pack.air_read
    holds(story, made)


def test_what_a_check_blocks_is_not_planned():
    story = shop_read()
    story.part("door", VARNISH, VARNISH)
    story.coat(-48, VARNISH)
    story.check(-1, Found.TACKY)
    made = plan_of(story)
    assert made.sessions == ()
    assert [u.answer for u in made.unplanned] == [Answer.BLOCKED]


def test_nothing_is_planned_while_away():
    story = shop_read()
    story.part("door", SHELLAC)
    trip = (at(-1), at(7 * 24))
    made = plan_of(story, hours=replace(EVENINGS, away=(trip,)))
    assert made.sessions[0].start == at(7 * 24)


def test_what_is_due_first_is_done_first():
    story = shop_read()
    story.part("door", SAND, VARNISH, pieces=2)
    gift = replace(story.part("box", SAND, VARNISH, pieces=2), project=2, project_name="box")
    story.parts[-1] = gift
    hours = open_from(*((day, "18:00", "18:45") for day in range(7)))
    projects = (Project(1, "cabinet"), Project(2, "box", at(24 * 20)))
    shop = replace(story.shop, hours=hours, projects=projects)
    made = plan(shop, story.log(0), FACTS, at(0), story.zone)
    assert work_of(made)[0].part == gift
    later = plan(shop, story.log(0), FACTS, at(0), story.zone, {1: at(24 * 15)})
    assert work_of(later)[0].part == story.parts[0]


def test_a_plan_ends_after_so_many_tasks_and_says_so():
    story = shop_read()
    for n in range(110):
        story.part(f"part {n}", SAND, Operation.MASK, Operation.UNTAPE, HARDWARE, Operation.BUFF)
    always = open_from(*((day, "00:00", "00:00") for day in range(7)))
    made = plan_of(story, hours=always)
    assert 400 <= len(tasks_of(made)) <= 405  # the last visit is still cleaned up
    assert "nothing is planned after" in short(made.stopped)
    assert made.unplanned[0].because == made.stopped


def test_a_plan_ends_half_a_year_ahead_and_says_so():
    story = shop_read()
    story.part("door", VARNISH, VARNISH)
    rare = ShopHours(((at(-1), ()), (at(24 * 170), EVENINGS.patterns[0][1])), "UTC")
    made = plan_of(story, hours=rare)
    assert len(work_of(made, Operation.COAT)) == 2
    story.products[next(iter(story.products))] = replace(
        story.products[next(iter(story.products))], label={Stage.RECOAT: figure(24 * 30)}
    )
    made = plan_of(story, hours=rare)
    assert "further than 180 days" in short(made.stopped)
    assert made.projects[0].promise is Promise.UNKNOWN


def test_a_mix_past_its_pot_life_is_mixed_anew():
    """Two-part: after the pot life the brush is washed and a new mix is made."""
    key = next(c.key for c in FACTS.classes.values() if c.pot_life_h is not None)
    pot_life = FACTS.finish_class(key).pot_life_h
    story = shop_read()
    for n in range(40):
        story.part(f"panel {n}", key, pieces=10)
    always = open_from(*((day, "00:00", "00:00") for day in range(7)))

    usual, hour = FACTS.hands_on, Range(60, 60, "invented")
    methods = {m: replace(each, face_min=hour) for m, each in usual.methods.items()}
    slow = replace(FACTS, hands_on=replace(usual, methods=methods))
    made = plan_of(story, hours=always, facts=slow)
    mixed = None
    for task in tasks_of(made):
        if task.chore is Chore.SET_UP:
            mixed = task.end
        elif task.operation is Operation.COAT:
            assert task.start < mixed + timedelta(hours=pot_life.low_h)
