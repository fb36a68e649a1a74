"""What a person types without thinking is read: hours, units, woods, notes, whole projects."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog, furnished

from finishlog.cli.typed.times.durations import hours
from finishlog.cli.typed.times.week import read_week, span_of_day, together, week_words
from finishlog.core.measure.units import (
    OUNCE,
    OUNCES,
    WORDS,
    Area,
    Cut,
    Film,
    Temperature,
    Volume,
    Weight,
)
from finishlog.core.published.species import face_wood
from finishlog.errors import UsageFault
from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return furnished(tmp_path)


@every_row(
    ("typed", "begins", "ends"),
    [
        ("18:00-23:00", "18:00", "23:00"),
        ("7pm-10:30pm", "19:00", "22:30"),
        ("7-10:30pm", "19:00", "22:30"),
        ("9-5pm", "9:00", "17:00"),
        ("9am-12pm", "9:00", "12:00"),
        ("12am-6am", "0:00", "6:00"),
        ("noon-5pm", "12:00", "17:00"),
        ("6pm-midnight", "18:00", "24:00"),
        ("22:00-02:00", "22:00", "2:00"),
        ("10pm-2am", "22:00", "2:00"),
        ("18.30-21.15", "18:30", "21:15"),
    ],
)
def test_hours_are_read_by_both_clocks(typed: str, begins: str, ends: str):
    span = span_of_day(typed)
    assert span is not None
    assert [f"{m // 60}:{m % 60:02}" for m in span] == [begins, ends]


@pytest.mark.parametrize("typed", ["25:00-26:00", "13pm-14pm", "0pm-3pm", "9", "mon-fri", "9-61"])
def test_what_is_no_span_of_hours_is_none(typed: str):
    assert span_of_day(typed) is None


@pytest.mark.parametrize(
    "typed", ["7 pm - 10:30 pm", "7pm – 10:30pm", "7pm to 10:30pm", "19:00 till 22:30"]
)
def test_a_span_in_several_words_is_one(typed: str):
    (word,) = together(typed.split())
    assert span_of_day(word) == (19 * 60, 22 * 60 + 30)


@pytest.mark.parametrize(
    ("typed", "week"),
    [
        ("weekdays 7pm-10:30pm", "mon,tue,wed,thu,fri 19:00-22:30"),
        ("weekends 9-5pm", "sat,sun 9:00-17:00"),
        ("every day noon-5pm", "mon,tue,wed,thu,fri,sat,sun 12:00-17:00"),
    ],
)
def test_shop_hours_as_they_are_said(typed: str, week: str):
    assert week_words(read_week(typed.split())) == week


def test_a_heater_is_told_by_both_clocks(shop: Finishlog):
    page = shop.did("room", "heating", "finishing", "4pm-11pm", "18C").out
    assert "heated 16:00 to 23:00" in page


@pytest.mark.parametrize("typed", ["overnight", "Overnight", "over night", "a night"])
def test_overnight_on_a_can_is_as_long_as_a_night_may_be(typed: str):
    """Common practice: put on in the evening, sanded in the morning; the longer is the wait."""
    assert hours(typed) == (12.0, 16.0)


@pytest.mark.parametrize(
    ("typed", "hint"),
    [
        ("3m", "type 3min, or days: 90d"),
        ("1m", "type 1min, or days: 30d"),
        # So many months no finish takes.
        ("30m", "type 30min"),
    ],
)
def test_a_bare_m_may_be_minutes_or_months_and_both_are_offered(typed: str, hint: str):
    with pytest.raises(UsageFault) as refused:
        hours(typed)
    assert "could be minutes or months" in refused.value.message
    assert refused.value.hint == hint


SETTABLE = {
    "temperature": Temperature,
    "area": Area,
    "volume": Volume,
    "weight": Weight,
    "film": Film,
    "cut": Cut,
}
UNITS = [(name, u, w) for name, of in SETTABLE.items() for u in of for w in WORDS[u].split("|")]


def test_a_setting_takes_a_unit_by_any_of_its_names(shop: Finishlog):
    for name, unit, word in UNITS:
        assert f"({unit.value})" in shop.did("settings", name, word).out, word


def test_an_ounce_is_what_the_setting_measures(shop: Finishlog):
    for word in OUNCES:
        assert f"({OUNCE[Weight].value})" in shop.did("settings", "weight", word).out
        assert f"({OUNCE[Volume].value})" in shop.did("settings", "volume", word).out
    assert shop("settings", "film", "oz").code == 2


def test_a_note_needs_no_option(shop: Finishlog):
    assert "case: note, sticks at the left edge" in (
        shop.did("note", "case", "sticks", "at", "the", "left", "edge").out
    )
    assert "case, doors ×2: note, a run" in shop.did("note", "case", "doors", "a run").out
    assert "doors ×2: note, runs" in shop.did("note", "doors", "runs").out


def test_a_word_that_may_be_a_part_or_the_note_is_never_guessed(shop: Finishlog):
    refused = shop("note", "case", "doors", "stick")
    assert refused.code == 2
    assert "quote the words: finishlog note case 'doors stick'" in refused.err
    assert "case: note, doors stick" in shop.did("note", "case", "doors stick").out


@pytest.mark.parametrize("command", ["ready", "when", "on", "why", "history"])
def test_a_question_takes_a_whole_project(shop: Finishlog, command: str):
    whole = shop.did(command, "cabinet").out
    assert "case" in whole
    assert "stool" not in whole.replace("oil: stools/seat", "")


def test_what_changes_things_takes_no_project_for_its_parts(shop: Finishlog):
    assert shop("part", "archive", "cabinet").code == 3
    assert shop("log", "cabinet", "sand").code == 3


@pytest.mark.parametrize("typed", ["60F", "16 C", "16°C"])
def test_where_only_a_thermometer_hangs_the_water_stays(shop: Finishlog, typed: str):
    """The air of 18:00 was 17.2 °C and 58 %: its dew point stays while nobody brings water in."""
    before = shop.did("air", "17.2C", "58%", "--json").document["answer"]
    answer = shop.did("air", *typed.split(), "--json").document["answer"]
    assert answer["humidity_supposed"]
    assert answer["dew_point_c"] == pytest.approx(before["dew_point_c"], abs=0.05)
    assert "% supposed" in shop.did("ready").out
    assert "supposed" in shop.did("history").out.splitlines()[-1]


def test_a_thermometer_in_a_room_that_nobody_read_is_supposed_damp(tmp_path: Path):
    program = Finishlog(tmp_path)
    page = program.did("air", "60F").out
    assert "75 %" in page
    assert "caution: how damp it is was not read" in page
    amended = program.did("amend", "1", "--air", "60F 50%").out
    assert "amended" in amended
    assert "supposed" not in program.did("ready").out


def test_a_bare_figure_is_no_temperature(shop: Finishlog):
    assert shop("air", "60").code == 2


@pytest.mark.parametrize(
    ("typed", "wood"),
    [
        ("birch plywood", "birch"),
        ("Birch-Ply 18mm", "birch"),
        ("cherry veneer", "cherry"),
        ("walnut veneered MDF", "walnut"),
        # A sheet that does not say of what.
        ("plywood", ""),
        ("oak, white", "oak white"),
    ],
)
def test_a_sheet_shows_its_face_wood(typed: str, wood: str):
    assert face_wood(typed) == wood


def test_a_sheet_takes_a_finish_as_its_face_wood_does(tmp_path: Path):
    found = FACTS.species_named("birch plywood")
    assert found is not None
    assert found.key == "birch"
    program = Finishlog(tmp_path)
    program.did("product", "new", "oil", "--class", "danish-oil")
    program.did("part", "new", "desk/top", "--species", "birch plywood")
    program.did("log", "top", "oil")
    assert "desk/top" in program.did("past", "birch").out
    assert "birch plywood" in program("past", "brich").err
    assert program("past", "oak").code == 3


@pytest.mark.parametrize(
    ("typed", "near"), [("chery", "cherry"), ("swamp ash", "ash"), ("wallnut", "walnut")]
)
def test_a_wood_that_is_not_known_is_offered_the_nearest(shop: Finishlog, typed: str, near: str):
    page = shop.did("part", "new", "cabinet/new", "--species", typed).out
    assert f"did you mean {near}" in page
    assert typed in shop.did("part", "show", "new").out, "what was typed is kept"


def test_a_wood_that_is_like_none_is_only_said_to_be_unknown(shop: Finishlog):
    page = shop.did("part", "new", "cabinet/new", "--species", "zzyzx").out
    assert "no rules are known for 'zzyzx', look at the spelling" in page


@pytest.mark.parametrize(
    ("typed", "key"),
    [
        ("yellow", "yellow-pva"),
        ("white", "white-pva"),
        ("PVA", "white-pva"),
        ("pu", "polyurethane"),
    ],
)
def test_a_glue_by_what_people_call_it(shop: Finishlog, typed: str, key: str):
    assert f"({key})" in shop.did("glue", "show", typed).out
    shop.did("log", "stool", "glue", "--glue", typed)


def test_a_glue_that_may_be_two_is_refused_with_both(shop: Finishlog):
    refused = shop("log", "stool", "glue-up", "--glue", "hide")
    assert refused.code == 3
    assert "hot-hide, liquid-hide" in refused.err


def test_where_no_room_is_on_record_no_sentence_has_a_hole(tmp_path: Path):
    program = Finishlog(tmp_path)
    program.did("product", "new", "varnish", "--class", "waterborne-clear")
    program.did("part", "new", "desk/top")
    program.did("log", "top", "varnish")
    page = program.did("leave").out
    assert "how cold  gets" not in page
    assert "in which room it stands is not on record: finishlog room new NAME" in page


@pytest.mark.parametrize(
    ("typed", "key"),
    [
        (["class", "show", "wipe", "on", "poly"], "(wiping-varnish)"),
        (["species", "show", "white", "oak"], "white-oak"),
        (["glue", "show", "yellow", "glue"], "(yellow-pva)"),
    ],
    ids=str,
)
def test_a_name_of_several_words_is_looked_up_without_quotes(
    shop: Finishlog, typed: list[str], key: str
):
    assert key in shop.did(*typed).out
