"""Worked calendar cases: a coat, its wait, its window, and the evenings of a shop.

Worked by hand, verified with zoneinfo (IANA tz database, 2026 rules: spring Sun 29 March 02:00 to
03:00, autumn Sun 25 October 03:00 to 02:00). Zone Europe/Berlin; the shop is open Monday to Friday
18:00-21:00 and Saturday 09:00-17:00 unless stated. Labels, minutes and parts are invented.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from msgspec.structs import replace

from finishlog.core.finish.classes import Method, Range
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Operation
from finishlog.core.plan.plan import plan
from finishlog.core.plan.results import Chore, Plan, Promise
from finishlog.core.published.facts import Facts
from finishlog.core.published.hands_on import ByMethod, Each, HandsOn
from finishlog.core.shop.hours import ShopHours
from finishlog.core.shop.things import Project
from tests.planned import open_from, tasks_of, work_of
from tests.shop_of import FACTS, START, WATERBORNE, Story, closing, figure

BERLIN = ZoneInfo("Europe/Berlin")
WEEK = [*((day, "18:00", "21:00") for day in range(5)), (5, "09:00", "17:00")]
EVENINGS = open_from(*WEEK, zone="Europe/Berlin")
WITH_SUNDAY = open_from(*WEEK, (6, "09:00", "12:00"), zone="Europe/Berlin")


def _exactly(minutes: float) -> Range:
    return Range(minutes, minutes, "invented")


def timed(
    coat_min: float = 20, scuff_min: float = 15, set_up_min: float = 0, other_min: float = 20
) -> Facts:
    """The facts, with invented minutes at the bench."""
    coat = ByMethod(
        face_min=_exactly(coat_min), set_up_min=_exactly(set_up_min), clean_up_min=_exactly(0)
    )
    hands_on = HandsOn(
        methods=dict.fromkeys(Method, coat),
        work={
            **dict.fromkeys(FACTS.hands_on.work, Each(face_min=_exactly(other_min))),
            Operation.SCUFF: Each(face_min=_exactly(scuff_min)),
        },
        vacuum_min=_exactly(0),
        settle_min=_exactly(0),
        wet_wood_min=_exactly(0),
    )
    return replace(FACTS, hands_on=hands_on)


def berlin(text: str, fold: int = 0) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=BERLIN, fold=fold)


def hour(moment: datetime) -> float:
    return (moment - START) / timedelta(hours=1)


TIMED = timed()


@dataclass(frozen=True)
class Case:
    """One coat of a label (hours to recoat and to sand, window) that ended at a moment."""

    coat_ended: datetime
    recoat_h: float
    window_h: float = 1000.0
    now: datetime | None = None
    hours: ShopHours = EVENINGS
    facts: Facts = TIMED

    def plan(self) -> Plan:
        """Plan the one coat that is left, from `now` or the end of the first."""
        story, label = Story(zone=BERLIN), {}
        for stage in (Stage.RECOAT, Stage.SAND, Stage.DUST_FREE, Stage.TURN):
            label[stage] = figure(self.recoat_h)
        story.part("lid", WATERBORNE, WATERBORNE)
        story.products = {
            key: replace(product, label=label, label_window=closing(self.window_h))
            for key, product in story.products.items()
        }
        ended = hour(self.coat_ended)
        story.read(ended - 1, 23.0, 50.0)
        story.coat(ended, WATERBORNE, label=label, window=closing(self.window_h))
        now = self.now or self.coat_ended
        shop = replace(story.shop, hours=self.hours)
        return plan(shop, story.log(hour(now)), self.facts, now.astimezone(UTC), BERLIN)


def done_at(made: Plan) -> list[tuple[str, str]]:
    """Return what is done when, in Berlin's wall time."""
    return [
        (
            task.operation.value if task.operation else "",
            f"{task.start.astimezone(BERLIN):%a %H:%M}",
        )
        for task in work_of(made)
    ]


def test_dry_after_closing_is_coated_the_next_evening():  # case 1
    made = Case(berlin("2026-03-02 20:30"), recoat_h=2).plan()
    assert done_at(made) == [("coat", "Tue 18:00")]
    assert work_of(made)[0].start == datetime(2026, 3, 3, 17, 0, tzinfo=UTC)


def test_what_does_not_fit_before_closing_waits():  # case 2a
    made = Case(berlin("2026-03-02 18:50"), recoat_h=2).plan()
    assert done_at(made) == [("coat", "Tue 18:00")]


def test_work_may_end_exactly_at_closing():  # case 2b
    made = Case(berlin("2026-03-02 18:50"), recoat_h=2, facts=timed(coat_min=10)).plan()
    assert done_at(made) == [("coat", "Mon 20:50")]


def test_a_spring_night_is_no_shorter_for_the_film():  # case 3
    made = Case(berlin("2026-03-28 16:30"), recoat_h=16, hours=WITH_SUNDAY).plan()
    assert done_at(made) == [("coat", "Sun 09:30")]
    assert work_of(made)[0].start == datetime(2026, 3, 29, 7, 30, tzinfo=UTC)


def test_an_autumn_night_closes_the_window_before_the_shop_opens():  # case 4
    made = Case(berlin("2026-10-24 16:30"), recoat_h=12, window_h=17, hours=WITH_SUNDAY).plan()
    assert done_at(made) == [("scuff", "Sun 09:00"), ("coat", "Sun 09:15")]
    assert work_of(made)[1].start == datetime(2026, 10, 25, 8, 15, tzinfo=UTC)
    assert work_of(made)[0].missed == berlin("2026-10-25 08:30", fold=1)


@pytest.mark.parametrize("day", ["2026-03-29", "2026-10-25"])
def test_one_to_five_is_three_hours_in_spring_and_five_in_autumn(day):  # cases 5a, 5b
    """A job longer than any opening is not planned; one that fills the night is."""
    length = {"2026-03-29": 180.0, "2026-10-25": 300.0}[day]
    night = open_from((6, "01:00", "05:00"), zone="Europe/Berlin")
    story = Story(zone=BERLIN)
    story.part("lid", Operation.SAND)
    now = berlin(f"{day} 00:30")
    shop = replace(story.shop, hours=night)
    fits = plan(shop, story.log(0), timed(other_min=length), now.astimezone(UTC), BERLIN)
    assert [t.start for t in work_of(fits)] == [berlin(f"{day} 01:00").astimezone(UTC)]
    assert work_of(fits)[0].end == berlin(f"{day} 05:00").astimezone(UTC)


def test_friday_past_midnight_is_one_visit():  # case 6
    late = open_from((4, "22:00", "02:00"), (5, "09:00", "17:00"), zone="Europe/Berlin")
    merged = open_from(
        (4, "18:00", "00:00"), (5, "00:00", "02:00"), (5, "09:00", "17:00"), zone="Europe/Berlin"
    )
    for hours in (late, merged):
        ready = Case(berlin("2026-03-06 21:15"), 2, hours=hours, facts=timed(coat_min=90))
        assert done_at(ready.plan()) == [("coat", "Fri 23:15")]
        too_late = Case(berlin("2026-03-06 22:45"), 2, hours=hours, facts=timed(coat_min=90))
        assert done_at(too_late.plan()) == [("coat", "Sat 09:00")]


def test_a_window_that_closes_while_the_shop_is_shut_costs_a_scuff():  # case 7
    made = Case(berlin("2026-03-03 20:00"), recoat_h=4, window_h=20).plan()
    assert done_at(made) == [("scuff", "Wed 18:00"), ("coat", "Wed 18:15")]
    assert made.missed == 1


def test_the_same_evening_needs_no_scuff():  # case 8a
    made = Case(berlin("2026-03-02 18:10"), 2, window_h=24, facts=timed(coat_min=30)).plan()
    assert done_at(made) == [("coat", "Mon 20:10")]
    assert made.missed == 0


def test_the_next_evening_just_before_the_window_closes_needs_none():  # case 8b
    made = Case(
        berlin("2026-03-02 18:10"), 2, 24, berlin("2026-03-02 20:45"), facts=timed(coat_min=30)
    ).plan()
    assert done_at(made) == [("coat", "Tue 18:00")]


def test_set_up_counts_against_the_window():  # case 8c
    """With a set-up of 15 minutes the brush is wet at 18:15, and the window closes at 18:10."""
    made = Case(
        berlin("2026-03-02 18:10"),
        2,
        24,
        berlin("2026-03-02 20:45"),
        facts=timed(coat_min=30, set_up_min=15),
    ).plan()
    assert done_at(made) == [("scuff", "Mon 20:45"), ("coat", "Tue 18:15")]
    assert work_of(made)[0].end == berlin("2026-03-02 21:00").astimezone(UTC)
    set_up = [t for t in tasks_of(made) if t.chore is Chore.SET_UP]
    assert [t.start for t in set_up] == [berlin("2026-03-03 18:00").astimezone(UTC)]


def test_a_weekend_outlasts_a_window_of_two_days():  # case 9
    made = Case(berlin("2026-03-07 16:00"), recoat_h=24, window_h=48).plan()
    assert done_at(made) == [("scuff", "Mon 18:00"), ("coat", "Mon 18:15")]


def test_a_window_is_open_to_its_last_minute():  # case 9, inclusive
    made = Case(berlin("2026-03-07 16:00"), recoat_h=24, window_h=50).plan()
    assert done_at(made) == [("coat", "Mon 18:00")]
    assert made.missed == 0


def _three_steps(due: datetime) -> Plan:
    """Plan coat, 16 h, coat, 24 h, rub-out, packed as it is done: 30, 30 and 45 minutes."""
    story = Story(zone=BERLIN)
    story.part("lid", WATERBORNE, WATERBORNE, Operation.RUB)
    label = {
        Stage.RECOAT: figure(16),
        Stage.RUB: figure(24),
        Stage.PACK: figure(24),
        Stage.TOUCH: figure(0),
    }
    product = next(iter(story.products))
    story.products[product] = replace(
        story.products[product], label=label, label_window=closing(1000)
    )
    now = berlin("2026-03-02 18:00")
    story.read(hour(now) - 1, 23.0, 50.0)
    shop = replace(story.shop, hours=EVENINGS, projects=(Project(1, "cabinet", due),))
    facts = timed(coat_min=30, other_min=45)
    return plan(shop, story.log(hour(now)), facts, now.astimezone(UTC), BERLIN)


def test_slack_is_counted_in_shop_minutes():  # case 10: ES 18:00, 18:00, 18:30; slack 465 min
    made = _three_steps(berlin("2026-03-06 21:00"))
    assert done_at(made) == [("coat", "Mon 18:00"), ("coat", "Tue 18:00"), ("rub-out", "Wed 18:30")]
    project = made.projects[0]
    assert project.promise is Promise.HOLDS
    assert project.packed == berlin("2026-03-04 19:15").astimezone(UTC)
    assert project.slack_shop_min == 465
    # Elapsed 49 h 45 min from the start of the rub-out to its latest start, so from end to due.
    assert project.slack_h == 49.75


def test_due_as_it_is_packed_leaves_no_evening_spare():
    made = _three_steps(berlin("2026-03-04 19:15"))
    assert made.projects[0].promise is Promise.TIGHT
    assert made.projects[0].slack_shop_min == 0


def test_the_evening_before_the_due_date_is_kept_free():
    made = _three_steps(berlin("2026-03-05 21:00"))
    assert made.projects[0].promise is Promise.HOLDS
    assert made.projects[0].spare == (
        berlin("2026-03-05 18:00").astimezone(UTC),
        berlin("2026-03-05 21:00").astimezone(UTC),
    )


def test_too_late_says_by_how_many_openings():
    made = _three_steps(berlin("2026-03-03 12:00"))
    project = made.projects[0]
    assert project.promise is Promise.LATE
    # Tuesday and Wednesday evening lie between noon on Tuesday and packing.
    assert project.late_openings == 2
    assert project.slack_h == -31.25
