"""What is done right draws no alarm; what is spoilt draws the one that it should.

Twenty-eight schedules that are done every day (common practice) are played through the real
commands at 21 °C and 50 %, nights of 20 °C, with the cautious waits of the classes.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.ordinary.playing import Bench, product_name
from tests.ordinary.schedules import ORDINARY, Schedule

SCHEDULES = {schedule.number: schedule for schedule in ORDINARY}


@pytest.mark.thorough
@pytest.mark.parametrize("schedule", ORDINARY, ids=lambda s: str(s.number))
def test_no_coat_of_a_schedule_done_right_draws_an_alarm_ahead(schedule: Schedule, tmp_path: Path):
    assert Bench(tmp_path, schedule).play().alarms == []


@pytest.mark.parametrize("schedule", ORDINARY, ids=lambda s: str(s.number))
def test_a_schedule_done_right_draws_no_alarm(schedule: Schedule, tmp_path: Path):
    """Before its first coat `why` and `plan` see all of it ahead; `ready` and `log` see each."""
    bench = Bench(tmp_path, schedule, ahead=1).play()
    assert bench.alarms == []
    for wood in schedule.woods:
        recipe = bench.program.did("past", wood, now=bench.now.isoformat()).out
        places = [recipe.find(product_name(schedule, product)) for product in _coats(schedule)]
        assert -1 not in places
        assert places == sorted(places)


def test_with_the_window_of_its_can_a_conversion_varnish_draws_none_either(tmp_path: Path):
    """Its can prints both (invented): recoat from 1 h, within 8 h."""
    bench = Bench(tmp_path, SCHEDULES[14])
    conversion = product_name(SCHEDULES[14], "conversion")
    bench.types(f"product label {conversion} --recoat 1h --window 8h")
    assert bench.play().alarms == []


def _coats(schedule: Schedule) -> list[str]:
    """Return the products of a schedule in the order in which they first go on."""
    first = [words.split()[0] for _, words, _ in schedule.lines]
    return [what for what in dict.fromkeys(first) if what in schedule.products]
