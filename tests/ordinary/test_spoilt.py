"""One thing spoilt at a time in each of the ordinary schedules, and the one alarm that it draws.

The rest of each schedule is done right, so that whatever else spoke would be a false alarm. Common
practice, no source; hours, °C and % are those of the classes.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from finishlog.facts.load import load_facts
from tests.ordinary.playing import Bench, product_name
from tests.ordinary.schedules import ORDINARY, Schedule

pytestmark = pytest.mark.thorough

FACTS = load_facts()
SCHEDULES = {schedule.number: schedule.on(schedule.woods[0]) for schedule in ORDINARY}
COLD = "5C"


def warned(folder: Path, schedule: Schedule, *, night: str = "") -> list[str]:
    """Return what `log` said of the last act; nothing may have been said before it."""
    bench = Bench(folder, schedule, night=night, ahead=0).play()
    last = f"{len(schedule.lines)} {schedule.lines[-1][1]}"
    assert [alarm for alarm in bench.alarms if alarm.act != last] == []
    return [alarm.said for alarm in bench.alarms if alarm.said_by == "log"]


def spoilt(number: int, words: str) -> Schedule:
    """Leave out every act of these words."""
    return SCHEDULES[number].without(words)


def late(number: int, words: str, wait: timedelta, times: int = 1) -> Schedule:
    """Let the act of these words that comes so many times come so long after the one before."""
    return SCHEDULES[number].waiting(wait, words, times).up_to(words, times)


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
    ("number", "oily", "over", "times", "most"),
    [
        (2, "stain", "shellac", 1, "15 min"),
        (8, "oil", "shellac", 1, "30 min"),
        (9, "blend", "blend", 2, "30 min"),
        (10, "hardwax", "hardwax", 2, "20 min"),
    ],
)
def test_surplus_that_set_before_it_was_wiped_stops_the_next_coat(
    number, oily, over, times, most, tmp_path
):
    schedule = SCHEDULES[number].waiting(timedelta(hours=3), "wipe", 1).up_to(over, times)
    name = product_name(schedule, oily)
    assert warned(tmp_path, schedule) == [
        f"stop: {name} was wiped 3 h after it went on, at most {most}: what had set by then stays "
        "soft for good"
    ]


def test_a_glaze_left_to_set_before_it_is_worked_stops_what_goes_over_it(tmp_path):
    """Its open time is 10 to 20 min (common practice); what is too thick peels."""
    schedule = SCHEDULES[3].waiting(timedelta(minutes=50), "wipe", 1).up_to("thin")
    name = product_name(schedule, "glaze")
    assert warned(tmp_path, schedule) == [
        f"stop: {name} was wiped 50 min after it went on, at most 20 min: what had set by then is "
        "too thick to hold what goes over it"
    ]


@pytest.mark.parametrize(
    ("number", "product", "wait_h", "most"),
    [(3, "lacquer", 3, 5), (4, "lacquer", 3, 5), (12, "shellac", 3.75, 6), (15, "precat", 3, 4)],
)
def test_more_coats_in_a_day_than_a_finish_bears_is_told_with_its_figure(
    number, product, wait_h, most, tmp_path
):
    """Each is dry enough by itself; together they hold what they have to let go."""
    schedule = SCHEDULES[number]
    for _ in range(most):
        schedule = schedule.before(product, f"{60 * wait_h:g}m {product}", 2)
    of = FACTS.finish_class(schedule.products[product]).name
    assert warned(tmp_path, schedule.up_to(product, most + 1)) == [
        f"caution: this would be coat {most + 1} of {of} within a day, {most} a day is usual at "
        "most: what each has to let go is shut in"
    ]


@pytest.mark.parametrize(
    ("number", "wait_h", "over", "under", "label", "because"),
    [
        (1, 12, "clear", "stain", "72–168 h, 10.1", ": Oil stain that is not cured makes "
         "waterborne wrinkle, blister or peel."),
        (8, 24, "wax", "shellac", "48–336 h, 20.6", ": The solvent in wax attacks a young film."),
        (17, 3, "blend", "milk", "4–16 h, 2.4", ": Oil sinks into the dry paint and darkens it."),
    ],
)  # fmt: skip
def test_a_coat_that_comes_too_soon_is_stopped_with_its_hours_and_reason(
    number, wait_h, over, under, label, because, tmp_path
):
    schedule = SCHEDULES[number].waiting(timedelta(hours=wait_h), over).up_to(over)
    name = product_name(schedule, under)
    assert warned(tmp_path, schedule) == [
        f"stop: drying: recoat over {name} not reached (label {label} done){because}"
    ]


@pytest.mark.parametrize(
    ("number", "product", "wait_h", "label"),
    [
        (7, "tung", 12, "72–168 h, 10.4"),
        (15, "precat", 0.25, "0.75–2 h, 0.2"),
        (22, "soap", 1, "1–24 h, 0.8"),
        (12, "shellac", 0.25, "2–3 h, 0.2"),
    ],
)
def test_a_second_coat_that_comes_too_soon_is_stopped_with_its_hours(
    number, product, wait_h, label, tmp_path
):
    schedule = late(number, product, timedelta(hours=wait_h), 2)
    name = product_name(schedule, product)
    assert warned(tmp_path, schedule) == [
        f"stop: drying: recoat over {name} not reached (label {label} done)"
    ]


@pytest.mark.parametrize(
    ("number", "work", "times", "stage", "wait_h", "label"),
    [
        (3, "rub-out", 1, "rub", 24, "48–336 h, 20.5"),
        (6, "sand", 2, "sand", 12, "24–168 h, 10.1"),
        (12, "rub-out", 1, "rub", 5, "48–336 h, 4.2"),
        (21, "sand", 2, "sand", 2, "36–48 h, 14.9"),
    ],
)
def test_work_that_comes_too_soon_is_stopped_with_its_hours(
    number, work, times, stage, wait_h, label, tmp_path
):
    schedule = late(number, work, timedelta(hours=wait_h), times)
    assert warned(tmp_path, schedule) == [f"stop: drying: {stage} not reached (label {label} done)"]


@pytest.mark.parametrize(
    ("number", "over", "times"),
    [(5, "urethane", 2), (19, "enamel", 1), (23, "spar", 2), (26, "varnish", 2)],
)
def test_a_film_that_nobody_scuffed_is_asked_about(number, over, times, tmp_path):
    schedule = spoilt(number, "scuff").up_to(over, times)
    assert warned(tmp_path, schedule) == ["caution: no scuffing on record"]


def test_a_window_that_has_closed_is_told_with_its_hours(tmp_path):
    schedule = spoilt(14, "scuff").waiting(timedelta(hours=30), "conversion", 1)
    assert warned(tmp_path, schedule.up_to("conversion")) == [
        "caution: no scuffing on record: 30 h after the coat, its window is 4 h"
    ]


def test_past_the_window_of_an_acid_cure_scuffing_is_no_way_out(tmp_path):
    schedule = SCHEDULES[14].before("conversion", "24h scuff", 2).up_to("conversion", 2)
    assert warned(tmp_path, schedule) == [
        "caution: too late in its cure, its window is 2 h: even a scuffed film may wrinkle until "
        "it is fully hard"
    ]


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


@pytest.mark.parametrize(("number", "over"), [(13, "polish"), (26, "shellac")])
def test_an_oily_wood_that_nobody_wiped_is_told_of(number, over, tmp_path):
    said = warned(tmp_path, spoilt(number, "solvent-wipe").up_to(over))
    assert said == ["caution: oily wood: not wiped with solvent"]


def test_an_oily_wood_whose_oil_came_back_is_told_of(tmp_path):
    said = warned(tmp_path, late(26, "shellac", timedelta(hours=3)))
    assert said == ["caution: wiped with solvent 3 h ago, good for 1 h: the oil is back"]


def test_steel_wool_before_a_waterborne_coat_on_oak_is_a_stop(tmp_path):
    """When it is taken up, while another pad is at hand; and again before the coat."""
    schedule = SCHEDULES[16].before("reactive", "5m steel-wool").up_to("reactive")
    alarms = Bench(tmp_path, schedule, night="", ahead=0).play().alarms
    iron = (
        "on oak, white group: Steel wool leaves iron in the wood; with tannin and water it turns "
        "blue-black."
    )
    said = [alarm.said for alarm in alarms if alarm.said_by == "log"]
    assert said == [
        f"stop: {product_name(schedule, 'reactive')} comes next: {iron}",
        f"stop: {iron}",
    ]


@pytest.mark.parametrize(("number", "bleach"), [(20, "bleach"), (21, "oxalic")])
def test_a_bleach_that_nobody_rinsed_is_not_sanded(number, bleach, tmp_path):
    schedule = spoilt(number, "rinse").up_to("sand", 2)
    name = product_name(schedule, bleach)
    assert warned(tmp_path, schedule) == [
        f"stop: no sanding: {name} is in the wood, no rinse is on record, and the dust is poison"
    ]


def test_a_panel_that_is_turned_onto_a_wet_face_is_a_stop(tmp_path):
    assert warned(tmp_path, late(25, "clear front", timedelta(minutes=20))) == [
        "stop: waits for: face back must bear turning first (label 4 h, 0.2 done)"
    ]


@pytest.mark.parametrize(
    ("number", "left_out", "over"),
    [(3, "thin", "lacquer"), (4, "sealer", "lacquer"), (18, "primer", "enamel")],
)
def test_a_coat_out_of_its_turn_is_told_of(number, left_out, over, tmp_path):
    """The steps say what was due; what is done instead may go on by itself."""
    due = SCHEDULES[number]
    done = due.without(left_out).without("scuff").up_to(over)
    assert warned(tmp_path, replace(done, due=due.acts)) == [
        f"caution: {product_name(due, left_out)} was due"
    ]


@pytest.mark.parametrize("number", [5, 11, 20])
def test_wet_wood_is_told_of_with_its_moisture(number, tmp_path):
    over = {5: "stain", 11: "hardwax", 20: "bleach"}[number]
    schedule = SCHEDULES[number].up_to(over)
    said = warned(tmp_path, replace(schedule, moisture_pct=16))
    assert said == [
        "caution: wood at 16 % moisture: over the 12 % to finish at, 6.8 points over the 9.2 % of "
        "this air"
    ]


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
