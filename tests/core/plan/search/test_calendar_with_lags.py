"""Waits, windows and opening hours, worked by hand: coats of one part on the calendar of Berlin.

Each case was worked by hand on the days on which summer time begins and ends in 2026 (Sunday
29 March, Sunday 25 October; time zone database). Shop hours are those of our own tables; drying
runs in elapsed time, work lies in one opening.
"""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from finishlog.core.plan.search.decode import decode, plan_of
from finishlog.core.plan.search.latest import earliest, latest
from finishlog.core.plan.search.policy import PREPARE, Policy
from finishlog.core.plan.search.shop import (
    After,
    CompiledShop,
    Plan,
    Product,
    Task,
    Window,
)
from finishlog.core.plan.search.tables import Tables
from finishlog.core.shop.hours import intervals
from tests.checked_shop import checked
from tests.planned import open_from

BERLIN = ZoneInfo("Europe/Berlin")
H = 60
WEEK = (*((day, "18:00", "21:00") for day in range(5)), (5, "09:00", "17:00"))
NO_SET_UP, WITH_SET_UP = Product(0, 0), Product(15, 0)


def local(day: int, month: int, time: str) -> datetime:
    """Return a time of 2026 on the wall in Berlin."""
    hour, minute = map(int, time.split(":"))
    return datetime(2026, month, day, hour, minute, tzinfo=BERLIN)


class Wall:
    """Minutes from the midnight before a day, and back to the time on the wall."""

    def __init__(self, day: int, month: int, *hours: tuple[int, str, str]) -> None:
        self.origin = local(day, month, "00:00").astimezone(UTC)
        end = self.origin + timedelta(days=14)
        found = intervals(open_from(*(hours or WEEK), zone="Europe/Berlin"), self.origin, end)
        self.openings = tuple((self.at(a), self.at(b)) for a, b in found)

    def at(self, moment: datetime) -> int:
        return int((moment.astimezone(UTC) - self.origin) / timedelta(minutes=1))

    def on(self, day: int, month: int, time: str) -> int:
        return self.at(local(day, month, time))

    def said(self, minute: int) -> str:
        moment = self.origin + timedelta(minutes=minute)
        return moment.astimezone(BERLIN).strftime("%a %d %b %H:%M %Z")

    def shop(self, *tasks: Task, product: Product = NO_SET_UP) -> CompiledShop:
        return CompiledShop(openings=self.openings, products=(product,), tasks=tasks)


def planned(shop: CompiledShop) -> Plan:
    """Decode a shop in the order of its tasks, and hold it against the checker."""
    tables = Tables(shop)
    states = decode(tables, Policy(PREPARE), [float(n) for n in range(len(shop.tasks))])
    plan = plan_of(tables, states[-1])
    assert plan.is_whole
    checked(shop, plan)
    return plan


def two_coats(
    ends: int, ready: int, minutes: int, window: int | None = None, abrade: int = 15
) -> tuple[Task, Task]:
    """Return a coat that ends at a minute, and the next one: what it waits, until it closes."""
    return (
        Task(minutes=10, part=0, product=0, not_before=ends - 10),
        Task(
            minutes=minutes,
            part=0,
            product=0,
            after=(After(0, ready),),
            window=None if window is None else Window(0, window, ready, abrade),
        ),
    )


def test_1_a_coat_that_is_ready_at_night_waits_for_the_next_opening():
    wall = Wall(2, 3)
    coats = two_coats(wall.on(2, 3, "20:30"), ready=2 * H, minutes=20)
    assert wall.said(planned(wall.shop(*coats)).starts[1]) == "Tue 03 Mar 18:00 CET"


@pytest.mark.parametrize(
    ("minutes", "starts"), [(20, "Tue 03 Mar 18:00 CET"), (10, "Mon 02 Mar 20:50 CET")]
)
def test_2_work_ends_by_closing_and_not_behind_it(minutes, starts):
    wall = Wall(2, 3)
    task = Task(minutes=minutes, part=0, not_before=wall.on(2, 3, "20:50"))
    assert wall.said(planned(wall.shop(task)).starts[0]) == starts


def test_3_a_coat_dries_through_the_hour_that_spring_leaves_out():
    wall = Wall(28, 3, *WEEK, (6, "09:00", "12:00"))
    coats = two_coats(wall.on(28, 3, "16:30"), ready=16 * H, minutes=20)
    plan = planned(wall.shop(*coats))
    assert wall.said(plan.starts[1]) == "Sun 29 Mar 09:30 CEST"


def test_4_a_window_closes_an_hour_earlier_on_the_wall_in_autumn():
    wall = Wall(24, 10, *WEEK, (6, "09:00", "12:00"))
    coats = two_coats(wall.on(24, 10, "16:30"), ready=12 * H, minutes=20, window=17 * H)
    plan = planned(wall.shop(*coats))
    assert wall.said(dict(plan.abrades)[1]) == "Sun 25 Oct 09:00 CET"
    assert wall.said(plan.starts[1]) == "Sun 25 Oct 09:15 CET"


@pytest.mark.parametrize(
    ("day", "month", "opening", "length", "begins"),
    [
        (29, 3, "01:00", 3 * H, "Sun 29 Mar 01:00 CET"),
        (25, 10, "01:00", 5 * H, "Sun 25 Oct 01:00 CEST"),
        (29, 3, "02:30", 2 * H, "Sun 29 Mar 03:00 CEST"),
        (25, 10, "02:30", 3 * H + 30, "Sun 25 Oct 02:30 CEST"),
    ],
)
def test_5_an_opening_is_as_long_as_it_is_in_elapsed_time(day, month, opening, length, begins):
    """Worked by hand of case 5c: from 00:30 to 04:00 in UTC, three and a half hours."""
    wall = Wall(day, month, (6, opening, "05:00"))
    fits = planned(wall.shop(Task(minutes=length, part=0)))
    assert wall.said(fits.starts[0]) == begins
    too_long = Tables(wall.shop(Task(minutes=length + 1, part=0)))
    opens, closing = wall.openings[0]
    assert closing - opens == length
    assert decode(too_long, Policy(PREPARE), [0.0])[-1].starts[0] not in range(opens, closing)


HOURS_OVER_MIDNIGHT = (
    ((4, "22:00", "02:00"), (5, "09:00", "17:00")),
    ((4, "18:00", "00:00"), (5, "00:00", "02:00"), (5, "09:00", "17:00")),
)


@pytest.mark.parametrize("hours", HOURS_OVER_MIDNIGHT)
@pytest.mark.parametrize(
    ("ready", "starts"),
    [((6, 3, "23:15"), "Fri 06 Mar 23:15 CET"), ((7, 3, "00:45"), "Sat 07 Mar 09:00 CET")],
)
def test_6_an_evening_over_midnight_is_one_opening(hours, ready, starts):
    wall = Wall(2, 3, *hours)
    task = Task(minutes=90, part=0, not_before=wall.on(*ready))
    assert wall.said(planned(wall.shop(task)).starts[0]) == starts


def test_7_a_window_that_closes_while_the_shop_is_shut_costs_an_abrading():
    wall = Wall(2, 3)
    coats = two_coats(wall.on(3, 3, "20:00"), ready=4 * H, minutes=20, window=20 * H)
    plan = planned(wall.shop(*coats))
    assert wall.said(dict(plan.abrades)[1]) == "Wed 04 Mar 18:00 CET"
    assert wall.said(plan.starts[1]) == "Wed 04 Mar 18:15 CET"


def test_8a_a_window_that_is_open_costs_nothing():
    wall = Wall(2, 3)
    coats = two_coats(wall.on(2, 3, "18:10"), ready=2 * H, minutes=30, window=24 * H)
    plan = planned(wall.shop(*coats))
    assert wall.said(plan.starts[1]) == "Mon 02 Mar 20:10 CET"
    assert plan.abrades == ()


def busy_until_a_quarter_to_nine(wall: Wall) -> Task:
    """Return work by hand that begins at once and is not interrupted."""
    return Task(minutes=155, part=1, not_before=wall.on(2, 3, "18:10"))


def test_8b_the_next_opening_is_within_the_window_to_the_minute():
    wall = Wall(2, 3)
    coats = two_coats(wall.on(2, 3, "18:10"), ready=2 * H, minutes=30, window=24 * H)
    plan = planned(wall.shop(*coats, busy_until_a_quarter_to_nine(wall)))
    assert wall.said(plan.starts[2]) == "Mon 02 Mar 18:10 CET"
    assert wall.said(plan.starts[1]) == "Tue 03 Mar 18:00 CET"
    assert plan.abrades == ()


def test_8c_set_up_counts_against_the_window():
    """Common practice: the film waits for the brush, not for the person."""
    wall = Wall(2, 3)
    first = Task(minutes=10, part=0, not_before=wall.on(2, 3, "18:00"))
    _, second = two_coats(0, ready=2 * H, minutes=30, window=24 * H)
    shop = wall.shop(first, second, busy_until_a_quarter_to_nine(wall), product=WITH_SET_UP)
    plan = planned(shop)
    assert wall.said(dict(plan.abrades)[1]) == "Mon 02 Mar 20:45 CET"
    assert [wall.said(s) for _, s, _ in plan.sessions] == ["Tue 03 Mar 18:00 CET"]
    assert wall.said(plan.starts[1]) == "Tue 03 Mar 18:15 CET"


@pytest.mark.parametrize(
    ("window", "abrades", "starts"),
    [
        (48 * H, ["Mon 09 Mar 18:00 CET"], "Mon 09 Mar 18:15 CET"),
        (50 * H, [], "Mon 09 Mar 18:00 CET"),
    ],
)
def test_9_a_window_over_the_weekend_is_inclusive(window, abrades, starts):
    wall = Wall(2, 3)
    coats = two_coats(wall.on(7, 3, "16:00"), ready=24 * H, minutes=20, window=window)
    plan = planned(wall.shop(*coats))
    assert [wall.said(start) for _, start in plan.abrades] == abrades
    assert wall.said(plan.starts[1]) == starts


def test_10_first_and_last_starts_of_a_chain_that_is_due():
    wall = Wall(2, 3)
    tables = Tables(
        wall.shop(
            Task(minutes=30, part=0, product=0, not_before=wall.on(2, 3, "18:00")),
            Task(minutes=30, part=0, product=0, after=(After(0, 16 * H),)),
            Task(minutes=45, part=0, after=(After(1, 24 * H),)),
        )
    )
    first, last = earliest(tables), latest(tables, wall.on(6, 3, "21:00")).start
    assert [wall.said(s)[:16] for s in first] == [
        "Mon 02 Mar 18:00",
        "Tue 03 Mar 18:00",
        "Wed 04 Mar 18:30",
    ]
    assert [wall.said(s)[:16] for s in last] == [
        "Wed 04 Mar 20:30",
        "Thu 05 Mar 19:45",
        "Fri 06 Mar 20:15",
    ]
    slack = [b - a for a, b in zip(first, last, strict=True)]
    assert slack == [50 * H + 30, 49 * H + 45, 49 * H + 45]
    assert [_open(wall, a, b) for a, b in zip(first, last, strict=True)] == [510, 465, 465]


def _open(wall: Wall, since: int, until: int) -> int:
    """Return the shop minutes between two."""
    return sum(max(0, min(b, until) - max(a, since)) for a, b in wall.openings)


@pytest.mark.parametrize(("starts", "missed"), [("20:30", 0), ("20:29", 1)])
def test_11_a_coat_that_stands_fixed_bounds_the_one_beneath_from_below(starts, missed):
    wall = Wall(2, 3)
    fixed = wall.on(7, 3, "09:00")
    plan = planned(
        wall.shop(
            Task(minutes=30, part=0, product=0, not_before=wall.on(5, 3, starts)),
            Task(
                minutes=20,
                part=0,
                product=0,
                after=(After(0, 4 * H),),
                not_before=fixed,
                window=Window(0, 36 * H, 4 * H, 15),
            ),
        )
    )
    assert wall.said(plan.starts[0]) == f"Thu 05 Mar {starts} CET"
    assert len(plan.abrades) == missed
    assert (plan.starts[1] == fixed) == (missed == 0)
