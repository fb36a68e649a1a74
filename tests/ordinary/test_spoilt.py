"""One thing spoilt at a time, and the one caution that it should draw (common practice).

The rest of each schedule is done right, so that whatever else spoke would be a false alarm.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from tests.ordinary.playing import Bench, product_name
from tests.ordinary.schedules import ORDINARY, Schedule

SCHEDULES = {schedule.number: schedule.on(schedule.woods[0]) for schedule in ORDINARY}
COLD = "5C"


def warned(folder: Path, schedule: Schedule, *, night: str = "") -> list[str]:
    """Return what `log` said of the last act; nothing may have been said before it."""
    bench = Bench(folder, schedule, night=night).play()
    last = f"{len(schedule.lines)} {schedule.lines[-1][1]}"
    assert [alarm for alarm in bench.alarms if alarm.act != last] == []
    return [alarm.said for alarm in bench.alarms if alarm.said_by == "log"]


def spoilt(number: int, words: str) -> Schedule:
    """Leave out every act of these words."""
    return SCHEDULES[number].without(words)


@pytest.mark.parametrize(
    ("number", "oily", "over", "times"),
    [
        (5, "stain", "urethane", 1),
        (6, "filler", "varnish", 1),
        (7, "tung", "tung", 2),
        (9, "blend", "blend", 2),
        (10, "hardwax", "hardwax", 2),
    ],
)
def test_surplus_that_nobody_wiped_off_is_asked_about(number, oily, over, times, tmp_path):
    schedule = spoilt(number, "wipe").without("sand" if number == 6 else "-").up_to(over, times)
    name = product_name(schedule, oily)
    said = f"caution: was the surplus {name} wiped off in time? It is not on record"
    assert warned(tmp_path, schedule) == [said]


@pytest.mark.parametrize(
    ("number", "wait_h", "over", "under", "because"),
    [
        (1, 12, "clear", "stain", "over oil wiping stain: Oil stain that is not cured makes "
         "waterborne wrinkle, blister or peel."),
        (8, 24, "wax", "shellac", "over dewaxed shellac, 2 lb cut: The solvent in wax attacks a "
         "young film."),
        (17, 6, "blend", "milk", "over milk paint: It is porous and spots with water until "
         "something covers it."),
    ],
)  # fmt: skip
def test_a_coat_that_comes_too_soon_is_stopped_with_its_reason(
    number, wait_h, over, under, because, tmp_path
):
    schedule = SCHEDULES[number].waiting(timedelta(hours=wait_h), over).up_to(over)
    name = product_name(schedule, under)
    assert warned(tmp_path, schedule) == [
        f"stop: drying: recoat over {name} not reached",
        f"caution: {because}",
    ]


@pytest.mark.parametrize(
    ("number", "over", "times"),
    [(5, "urethane", 2), (19, "enamel", 1), (23, "spar", 2), (26, "varnish", 2)],
)
def test_a_film_that_nobody_scuffed_is_asked_about(number, over, times, tmp_path):
    schedule = spoilt(number, "scuff").up_to(over, times)
    assert warned(tmp_path, schedule) == ["caution: no scuffing on record"]


@pytest.mark.parametrize(
    ("number", "over", "needs"),
    [
        (14, "conversion", "conversion varnish needs 18 °C"),
        (16, "reactive", "tannin-reactive sealer needs 10 °C"),
        (18, "enamel", "latex enamel needs 13 °C"),
        (24, "clear", "two-part waterborne needs 13 °C"),
    ],
)
def test_a_cold_first_night_is_told_of_before_it_comes(number, over, needs, tmp_path):
    schedule = SCHEDULES[number].up_to(over)
    assert warned(tmp_path, schedule, night=COLD) == [
        f"caution: the room's coldest night is 5 °C; {needs} for its first 24 h"
    ]


@pytest.mark.parametrize(("number", "over"), [(7, "tung"), (9, "blend"), (26, "shellac")])
def test_a_cold_night_is_no_alarm_where_it_only_makes_the_film_slower(number, over, tmp_path):
    schedule = SCHEDULES[number].up_to(over)
    assert warned(tmp_path, schedule, night="11C") == []


def test_an_oily_wood_that_nobody_wiped_is_told_of(tmp_path):
    said = warned(tmp_path, spoilt(26, "solvent-wipe").up_to("shellac"))
    assert said == ["caution: oily wood: not wiped with solvent"]


@pytest.mark.parametrize(
    ("number", "over", "product"),
    [
        (14, "conversion", "conversion-conversion-varnish"),
        (24, "clear", "clear-waterborne-two-part"),
    ],
)
def test_a_hardener_that_is_not_on_record_is_asked_for(number, over, product, tmp_path):
    said = f"caution: was the hardener of {product} in it? Nothing on record says so"
    assert warned(tmp_path, replace(SCHEDULES[number], mixes={}).up_to(over)) == [said]


def test_a_hardener_that_the_finish_does_without_is_not_missed(tmp_path):
    assert warned(tmp_path, replace(SCHEDULES[11], mixes={}).up_to("hardwax")) == []


@pytest.mark.parametrize(
    ("number", "over", "product", "mix"),
    [
        (14, "conversion", "conversion-conversion-varnish", "varnish:500ml thinner:50ml"),
        (24, "clear", "clear-waterborne-two-part", "base:500ml water:25ml"),
    ],
)
def test_a_pot_without_its_hardener_stops_the_film(number, over, product, mix, tmp_path):
    schedule = replace(SCHEDULES[number], mixes={over: mix}).up_to(over)
    (said,) = [each for each in warned(tmp_path, schedule) if each.startswith("stop")]
    assert said == (
        f"stop: {product} came from mix-1, which was mixed without its hardener: it stays soft, "
        "however long"
    )
