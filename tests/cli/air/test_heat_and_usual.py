"""What the air will be: a heater that runs for once, and what a room is usually like."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace
from run import Finishlog, furnished

from finishlog import errors
from finishlog.cli.typed.times.time_heated import heated_span
from finishlog.cli.typed.times.usual_words import (
    read_heating,
    read_hours,
    read_season,
    season_words,
)
from finishlog.core.air.room import RoomAir
from finishlog.core.air.usual_day import UsualDay, UsualHour
from finishlog.core.measure.units import Temperature
from finishlog.errors import UsageFault
from tests.rows import every_row

BERLIN = ZoneInfo("Europe/Berlin")
# A Tuesday, 21:05 on the wall.
EVENING = datetime(2026, 11, 24, 20, 5, tzinfo=UTC)
C = Temperature.CELSIUS


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return furnished(tmp_path)


def span(text: str, now: datetime = EVENING) -> str:
    when = heated_span(text, now, BERLIN)
    first, last = (m.astimezone(BERLIN) for m in (when.earliest, when.latest))
    return f"{first:%d %H:%M} to {last:%d %H:%M}"


@every_row(
    ("typed", "meant"),
    [
        ("tonight 16 till 23", "24 16:00 to 24 23:00"),
        ("16 till 23", "24 16:00 to 24 23:00"),
        ("16-23", "24 16:00 to 24 23:00"),
        ("till 23", "24 21:05 to 24 23:00"),
        ("now till 23:30", "24 21:05 to 24 23:30"),
        ("tonight 7 till 11", "24 19:00 to 24 23:00"),
        ("tonight 22 till 6", "24 22:00 to 25 06:00"),
        ("16 till 6", "24 16:00 to 25 06:00"),
        ("9 till 17", "25 09:00 to 25 17:00"),
        ("Sat 9 till 17", "28 09:00 to 28 17:00"),
        ("Sat 9 till 5", "28 09:00 to 28 17:00"),
        ("from Sat 9:30 to 17:15", "28 09:30 to 28 17:15"),
        ("Fri 18 till Sat 2", "27 18:00 to 28 02:00"),
        ("tomorrow 4pm till 11pm", "25 16:00 to 25 23:00"),
        ("2026-11-28 9 till 17", "28 09:00 to 28 17:00"),
        ("yesterday 16 till 23", "23 16:00 to 23 23:00"),
    ],
)
def test_when_a_heater_runs(typed: str, meant: str):
    assert span(typed) == meant


@pytest.mark.parametrize(
    "typed",
    ["tonight", "soon till late", "23 till 23", "Sat till Sun", "Sat 9 till 2026-11-27 9", "16"],
)
def test_what_is_no_time_of_heating_is_refused(typed: str):
    with pytest.raises(UsageFault):
        heated_span(typed, EVENING, BERLIN)


@given(st.integers(0, 23), st.integers(0, 23), st.integers(0, 13))
def test_two_hours_of_a_day_are_at_most_a_day_apart(begins: int, ends: int, days: int):
    day = (EVENING + timedelta(days=days)).astimezone(BERLIN).date()
    if begins == ends:
        return
    when = heated_span(f"{day} {begins}:00 till {ends}:00", EVENING, BERLIN)
    assert when.earliest.astimezone(BERLIN).hour == begins
    assert when.latest.astimezone(BERLIN).hour % 12 == ends % 12
    assert timedelta() < when.latest - when.earliest < timedelta(days=1)


def test_a_heater_comes_with_its_cautions_and_is_listed(shop: Finishlog):
    answer = shop.did("heat", "tonight", "16", "till", "23", "18C")
    assert answer.out.startswith("finishing: heated 16:00 to 23:00, to 18 °C\n")
    assert "no flame, glowing wire or blower in the vapour" in answer.out
    assert "carbon monoxide" in answer.out
    assert "16:00 to 23:00  to 18 °C" in shop.did("heat").out
    assert "heater in finishing" in shop.did("history").out
    shop.did("undo")
    assert "no heater is on record" in shop.did("heat").out


def test_a_heater_of_which_nothing_says_how_warm_it_gets_says_so(shop: Finishlog):
    assert "add 18C" in shop.did("heat", "Sat", "9", "till", "17").out
    shop.did("room", "heating", "finishing", "16-23", "18C")
    assert "add 18C" not in shop.did("heat", "Sun", "9", "till", "17").out


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        (["0:13C/65%"], [UsualHour(0, 13, 65)]),
        (["17:18C/55%", "7:12C"], [UsualHour(420, 12), UsualHour(1020, 18, 55)]),
        (["7:30:12,5C"], [UsualHour(450, 12.5)]),
        (["7:-2C", "23=50F"], [UsualHour(420, -2), UsualHour(1380, 10)]),
        (["none"], []),
    ],
)
def test_the_points_of_a_day(typed: list[str], meant: list[UsualHour]):
    assert list(read_hours(typed, C)) == meant


def test_heating_and_seasons():
    every = tuple(range(7))
    assert read_heating(["16-23", "18C"], C) == (960, 1380, 18, every)
    assert read_heating(["22:30-6"], C) == (1350, 360, None, every)
    assert read_heating(["18-24"], C) == (1080, 0, None, every)
    assert read_heating(["mon-fri", "18-23", "18C"], C) == (1080, 1380, 18, (0, 1, 2, 3, 4))
    assert read_heating(["sat,sun", "9-17"], C) == (540, 1020, None, (5, 6))
    assert read_heating(["weekends", "9-17"], C) == (540, 1020, None, (5, 6))
    assert read_season("nov-mar") == (11, 3)
    assert read_season("January") == (1, 1)
    assert season_words((11, 3)) == "Nov to Mar"


def test_a_room_need_not_be_named_where_only_one_holds_open_parts(tmp_path: Path):
    program = Finishlog(tmp_path)
    program.did("room", "new", "shop")
    program.did("room", "new", "shed")
    assert program("air", "18C", "50%").code == errors.NO_SUCH_THING, "nothing stands anywhere"
    program.did("part", "new", "desk/leg", "--room", "shop")
    for words in (
        ("air", "18C", "50%"),
        ("heat", "till", "23", "20C"),
        ("room", "usual", "6:8C", "15:16C/50%"),
        ("room", "heating", "mon-fri", "18-23", "18C"),
        ("room", "night", "7C"),
        ("room", "usual"),
    ):
        assert "shop" in program.did(*words).out or words == ("room", "usual")
    program.did("part", "new", "desk/top", "--room", "shed")
    for words in (("air", "18C", "50%"), ("room", "heating", "18-23"), ("room", "night", "7C")):
        refused = program(*words)
        assert (refused.code, "shed, shop" in refused.err) == (errors.NO_SUCH_THING, True)


def test_heating_on_some_days_of_the_week_says_what_it_takes_the_place_of(shop: Finishlog):
    """The 24th of November 2026 is a Tuesday."""
    shop.did("room", "usual", "finishing", "6:8C", "15:8C/50%")
    said = shop.did("room", "heating", "finishing", "mon-fri", "18-23", "18C").out
    assert "heated mon-fri 18:00 to 23:00, to 18 °C" in said
    again = shop.did("room", "heating", "finishing", "sat,sun", "9-17", "18C").out
    assert "in place of: heated mon-fri 18:00 to 23:00, to 18 °C" in again
    hours, told = (UsualHour(0, 8, 50),), EVENING - timedelta(days=2)
    usual = UsualDay(hours, heated=(18 * 60, 23 * 60), heated_c=18, valid_from=told)
    for days, warmth in (((1,), 18), ((0, 2, 3, 4, 5, 6), 8)):
        room = RoomAir(usual=(replace(usual, heated_days=days),), zone=BERLIN, id=1)
        assert room.expected_at(EVENING).temperature_c == warmth


def test_one_heat_typed_twice_is_one_and_of_two_at_once_the_warmer_counts(shop: Finishlog):
    shop.did("heat", "till", "23", "20C")
    assert "the two are one heat" in shop.did("heat", "till", "23", "20C").out
    assert "the warmer counts" in shop.did("heat", "till", "23", "24C").out
    lines = shop.did("heat", "--json").document["answer"]
    assert [(line["temperature_c"], len(line["also"])) for line in lines] == [(20, 1), (24, 0)]
    assert "finishing: on by the log until 23:00" in shop.did("leave").out


BAD = [
    (["room", "usual", "finishing", "7:12"], "°C or °F"),
    (["room", "usual", "finishing", "25:12C"], "no time of the day"),
    (["room", "usual", "finishing", "7:12C", "7:00:13C"], "given twice"),
    (["room", "usual", "finishing", "7:12C/580%"], "580"),
    (["room", "usual", "finishing", "warm"], "0:13C/65%"),
    (["room", "usual", "finishing", "7:12C", "--season", "winter"], "nov-mar"),
    (["room", "usual", "finishing", "--season", "nov-mar"], "needs the hours"),
    (["room", "usual", "finishing", "--days", "3"], "--as-read"),
    (["room", "usual", "finishing", "7:12C", "--as-read"], "say one"),
    (["room", "heating", "finishing", "16-16"], "16-23 18C"),
    (["room", "heating", "finishing", "often"], "16-23 18C"),
    (["room", "heating", "finishing", " "], "16-23 18C"),
]


@pytest.mark.parametrize(("words", "said"), BAD)
def test_what_cannot_be_read_is_refused(shop: Finishlog, words: list[str], said: str):
    answer = shop(*words)
    assert (answer.code, answer.out) == (errors.USAGE, "")
    assert said in answer.err


def days(shop: Finishlog) -> dict[str, dict[str, object]]:
    found = shop.did("room", "usual", "finishing", "--json").document["answer"]["days"]
    return {str(each["day"]["season"]): each for each in found}


def test_a_usual_day_is_drawn_straight_between_its_points(shop: Finishlog):
    shop.did("room", "usual", "finishing", "7:12C/70%", "17:18C/50%")
    drawn = days(shop)["None"]["drawn"]
    by_hour = {each["hour"]: each["air"]["temperature_c"] for each in drawn}
    assert (by_hour[7], by_hour[12], by_hour[17]) == (12, 15, 18)
    # Over midnight too: 18 °C at 17:00 to 12 °C at 7:00, 14 h.
    assert by_hour[0] == pytest.approx(18 - 6 * 7 / 14)


def test_a_season_takes_what_it_does_not_say_from_the_rest_of_the_year(shop: Finishlog):
    shop.did("room", "heating", "finishing", "16-23", "18C", "--season", "nov-mar")
    assert "not known" in shop.did("room", "usual", "finishing").out
    shop.did("room", "usual", "finishing", "0:13C/65%")
    assert days(shop)["[11, 3]"]["day"]["hours"] == days(shop)["None"]["day"]["hours"]
    warm = [each["hour"] for each in days(shop)["[11, 3]"]["drawn"] if each["heated"]]
    assert warm == list(range(16, 23))
    assert not any(each["heated"] for each in days(shop)["None"]["drawn"])
    shop.did("room", "heating", "finishing", "none", "--season", "nov-mar")
    assert days(shop)["[11, 3]"]["day"]["heated"] is None


def test_what_is_set_later_holds_from_then_on_and_the_nights_stay(shop: Finishlog):
    shop.did("room", "usual", "finishing", "7:12C/70%")
    shop.did("room", "night", "finishing", "9C")
    shop.did("room", "usual", "finishing", "7:11C/70%", "--season", "nov")
    shop.did("room", "usual", "finishing", "8:14C/60%")
    answer = shop.did("room", "usual", "finishing", "--json").document["answer"]
    assert answer["coldest_night_c"] == 9
    assert days(shop)["None"]["day"]["hours"] == [
        {"minute": 480, "temperature_c": 14, "humidity_pct": 60}
    ]
    assert days(shop)["[11, 11]"]["day"]["hours"][0]["temperature_c"] == 11
    shop.did("room", "usual", "finishing", "none")
    assert list(days(shop)) == ["[11, 11]"]
    assert "usual day: none" in shop.did("history").out


def test_a_usual_day_as_read_is_the_median_of_each_hour(shop: Finishlog):
    begins = datetime(2026, 11, 22, tzinfo=UTC)
    rows = ["time,temp,rh"]
    for n in range(2 * 24 * 2):
        at = begins + n * timedelta(minutes=30)
        # Midnight is 10 °C, each hour a tenth more; one reading of the second night is odd.
        warm = 10 + at.hour / 10 if n != 48 else 19
        if at.hour != 3:
            rows.append(f"{at:%Y-%m-%dT%H:%M:%SZ},{warm:.1f},60")
    file = shop.folder / "two_days.csv"
    file.write_text("\n".join(rows), encoding="utf-8")
    shop.did("air", "import", str(file), "--zone", "Europe/London")
    answer = shop.did("room", "usual", "finishing", "--as-read", "--days", "3")
    assert "drawn straight over hours without any: 3:00" in answer.out
    hours = days(shop)["None"]["day"]["hours"]
    assert hours[0] == {"minute": 30, "temperature_c": 10.0, "humidity_pct": 60.0}
    assert [each["minute"] for each in hours] == [h * 60 + 30 for h in range(24) if h != 3]


def test_a_few_evening_readings_are_no_usual_day(shop: Finishlog):
    answer = shop("room", "usual", "finishing", "--as-read")
    assert answer.code == errors.NO_SUCH_THING
    assert "none of the night" in answer.err


def test_a_wet_bulb_gives_the_humidity(shop: Finishlog):
    for words in (["21C", "wet", "17C"], ["21C", "--wet-bulb", "17C"], ["69.8F", "wet", "62.6F"]):
        answer = shop.did("air", *words, "--json").document["answer"]
        assert answer["air"]["humidity_pct"] == pytest.approx(67.375, abs=0.01)
        assert answer["wet_bulb_c"] == pytest.approx(17)
    assert "by a wet bulb of 17 °C" in shop.did("air", "21C", "wet", "17C").out
    assert shop.did("air", "21C", "60%", "--json").document["answer"]["wet_bulb_c"] is None


def test_how_cold_the_nights_get_is_asked_once_an_evening(tmp_path: Path):
    """Waterborne needs warmth in its first day; once it is told, or told warm, nobody is asked."""
    program = Finishlog(tmp_path)
    program.did("product", "new", "topcoat", "--class", "waterborne-clear")
    program.did("steps", "new", "s", "topcoat", "topcoat")
    program.did("part", "new", "desk/top", "--steps", "s")
    program.did("part", "new", "desk/leg", "--steps", "s")
    program.did("air", "20C", "50%")
    asks = "was not told"
    screen = program.did("ready").out
    assert "how cold its nights get was not told: finishlog room night shop 8C" in screen
    assert "test, coat" in screen
    assert asks in program.did("log", "top").out
    assert asks not in program.did("log", "leg").out
    program.did("undo")
    program.did("room", "night", "shop", "15C")
    assert asks not in program.did("ready").out
    assert "caution" not in program.did("log", "leg").out
