"""What one evening does and leaves: told in small shops, with what it rightly lets be.

The rules are those of the bench: set-up before the film is ready, dust before anything wet, hidden
faces before those that show, a second visit only for a reason (common practice).
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from finishlog.core.plan.search.decode import decode, plan_of
from finishlog.core.plan.search.policy import PREPARE, Policy
from finishlog.core.plan.search.shop import (
    After,
    CompiledShop,
    Plan,
    Product,
    Rack,
    Settling,
    Task,
    Window,
)
from finishlog.core.plan.search.tables import Tables
from tests.checked_shop import checked

# Minutes of a first evening from 18:00 to 21:00, and of the next ones.
EVENINGS = tuple((day * 1440 + 1080, day * 1440 + 1260) for day in range(12))
VARNISH = Product(set_up=10, clean_up=15, pot_life=120)


def shop(*tasks: Task, products: tuple[Product, ...] = (VARNISH,)) -> CompiledShop:
    return CompiledShop(openings=EVENINGS, products=products, tasks=tasks)


def planned(of: CompiledShop, batch: int = 1) -> Plan:
    tables = Tables(of)
    rank = [float(number) for number in range(len(of.tasks))]
    plan = plan_of(tables, decode(tables, Policy(PREPARE, batch), rank)[-1])
    assert plan.is_whole
    checked(of, plan)
    return plan


def clock(minute: int) -> str:
    day, rest = divmod(minute, 1440)
    return f"{day} {rest // 60:02}:{rest % 60:02}"


def test_set_up_begins_before_the_film_is_ready():
    """Ready 20:35, shut 21:00: the brush is wet by then, and coat and clean-up still fit."""
    plan = planned(shop(Task(6, 0, product=0, not_before=1235)))
    assert clock(plan.starts[0]) == "0 20:35"
    assert [clock(start) for _, start, _ in plan.sessions] == ["0 20:25"]


def test_a_coat_that_would_not_be_cleaned_up_by_closing_waits():
    plan = planned(shop(Task(11, 0, product=0, not_before=1235)))
    assert clock(plan.starts[0]) == "1 18:10"


def test_coats_of_one_product_are_one_session():
    plan = planned(shop(*(Task(10, part, product=0) for part in range(5))))
    assert len(plan.sessions) == 1


@pytest.mark.parametrize(("pot_life", "sessions"), [(50, 1), (49, 2), (20, 3)])
def test_a_mix_is_not_used_past_its_pot_life(pot_life, sessions):
    mix = Product(set_up=10, clean_up=5, pot_life=pot_life)
    coats = (Task(10, part, product=0) for part in range(5))
    assert len(planned(shop(*coats, products=(mix,))).sessions) == sessions


@pytest.mark.parametrize(("places", "tonight"), [(5, 5), (3, 3), (1, 1)])
def test_a_coat_waits_for_a_place(places, tonight):
    coats = (Task(10, part, product=0, racks=(Rack(0, 1, 600),)) for part in range(5))
    plan = planned(replace(shop(*coats), racks=(places,)))
    assert sum(start < 1260 for start in plan.starts) == tonight


def test_places_of_another_kind_hold_nothing_up():
    hung = Task(10, 0, product=0, racks=(Rack(0, 1, 600),))
    laid = Task(10, 1, product=0, racks=(Rack(1, 1, 600),))
    plan = planned(replace(shop(hung, laid), racks=(1, 1)))
    assert all(start < 1260 for start in plan.starts)


def test_dust_is_made_first_taken_up_and_down_before_a_coat():
    sanded, coated = Task(30, 0, is_dusty=True), Task(10, 1, product=0, wet_until=120)
    plan = planned(replace(shop(sanded, coated), vacuum=10, settle=20))
    assert clock(plan.starts[0]) == "0 18:00"
    assert [clock(start) for _, start in plan.vacuums] == ["0 18:30"]
    assert clock(plan.starts[1]) == "0 19:00"


def test_dust_in_another_room_holds_nothing_up():
    sanded, coated = Task(30, 0, is_dusty=True, room=1), Task(10, 1, product=0)
    plan = planned(replace(shop(sanded, coated), vacuum=10, settle=20))
    assert plan.vacuums == ()
    assert clock(plan.starts[1]) == "0 18:40"


@pytest.mark.parametrize(("wet", "sanded"), [(1110, "0 18:30"), (1400, "1 18:00")])
def test_nothing_is_sanded_beside_a_film_that_takes_dust(wet, sanded):
    room = Settling(0, wet_until=wet)
    plan = planned(replace(shop(Task(20, 0, is_dusty=True)), rooms=(room,)))
    assert clock(plan.starts[0]) == sanded


def test_work_without_dust_goes_on_beside_a_wet_film():
    plan = planned(replace(shop(Task(20, 0)), rooms=(Settling(0, wet_until=1400),)))
    assert clock(plan.starts[0]) == "0 18:00"


def test_hidden_faces_come_before_those_that_show():
    shown = [Task(10, part, product=0, is_show=True) for part in range(3)]
    hidden = [Task(10, part, product=0) for part in range(3, 6)]
    plan = planned(shop(*shown, *hidden))
    assert max(plan.starts[3:]) < min(plan.starts[:3])


def test_what_is_blocked_waits_and_the_rest_goes_on():
    """A spell of cold from 18:00 to 20:00 on the first evening."""
    plan = planned(shop(Task(10, 0, product=0, blocked=((1080, 1200),)), Task(30, 1)))
    assert [clock(start) for start in plan.starts] == ["0 20:00", "0 18:00"]


def two_visits(minutes: int, closes: int = 3 * 1440) -> CompiledShop:
    """Return a shop whose film is ready two hours into the evening, and who leaves after one."""
    first = Task(10, 0, product=0)
    second = Task(
        minutes,
        0,
        product=0,
        after=(After(0, 100),),
        window=Window(0, closes, 100, 15),
    )
    return replace(shop(first, second), patience=45, worth=30)


@pytest.mark.parametrize(
    ("of", "starts"),
    [
        pytest.param(two_visits(5), "1 18:10", id="one face is no reason"),
        pytest.param(two_visits(30), "0 20:00", id="half an hour of work is"),
        pytest.param(two_visits(5, closes=600), "0 20:00", id="a window that closes is"),
        pytest.param(replace(two_visits(5), patience=None), "0 20:00", id="who stays stays"),
        pytest.param(replace(two_visits(5), patience=90), "0 20:00", id="a short wait is none"),
    ],
)
def test_a_second_visit_needs_a_reason(of, starts):
    assert clock(planned(of).starts[1]) == starts


def test_a_product_is_held_back_once_and_then_opened():
    """Four coats are wanted and one is ready: it waits an evening for others, and no longer."""
    plan = planned(shop(Task(10, 0, product=0)), batch=4)
    assert clock(plan.starts[0]) == "1 18:10"


def test_what_would_miss_its_window_is_not_held_back():
    closing = Window(None, closes=1260, sands=0, abrade=15)
    plan = planned(shop(Task(10, 0, product=0, window=closing)), batch=4)
    assert clock(plan.starts[0]) == "0 18:10"
    assert plan.abrades == ()
