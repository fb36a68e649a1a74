"""An hour as people say it. It is Tuesday 24 November, 21:05, or half past midnight after it."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from run import Finishlog, furnished
from terminal_session import TerminalSession

from finishlog.cli.typed.times.moments import moment
from finishlog.core.log.shown_times import happened
from finishlog.errors import UsageFault
from tests.rows import every_row

BERLIN = ZoneInfo("Europe/Berlin")
NOW = datetime(2026, 11, 24, 21, 5, tzinfo=BERLIN)
AFTER_MIDNIGHT = datetime(2026, 11, 25, 0, 30, tzinfo=BERLIN)


def echoed(typed: str, now: datetime = NOW) -> str:
    return happened(moment(typed, now, BERLIN), now, BERLIN)


def refused(typed: str, now: datetime = NOW) -> tuple[str, str]:
    with pytest.raises(UsageFault) as fault:
        moment(typed, now, BERLIN)
    return fault.value.message, fault.value.hint


@pytest.mark.parametrize("typed", ["9pm", "9 PM", "21:00", "21.00", "9:00 p.m.", "9 tonight"])
def test_nine_in_the_evening_however_it_is_written(typed):
    assert echoed(typed) == "21:00"


@every_row(
    ("typed", "readings"),
    [
        ("9", "9:00 or 21:00"),
        ("at 9", "9:00 or 21:00"),
        ("nine", "9:00 or 21:00"),
        ("9 o'clock", "9:00 or 21:00"),
        ("half past nine", "9:30 or 21:30"),
        ("quarter to ten", "9:45 or 21:45"),
        # Half past eight to one who thinks in German or Dutch, half past nine in Britain.
        ("half nine", "8:30 or 9:30 or 20:30 or 21:30"),
        ("half one", "0:30 or 1:30 or 12:30 or 13:30"),
    ],
)
def test_an_hour_of_the_morning_or_the_evening_is_refused_with_its_readings(typed, readings):
    message, hint = refused(typed)
    assert message.endswith(f"could be {readings}")
    assert hint == f"type {readings}"


def test_the_readings_can_be_typed_as_they_stand():
    assert refused("yesterday 9")[1] == "type yesterday 9:00 or yesterday 21:00"
    assert refused("mon 9")[1] == "type mon 9:00 or mon 21:00"
    message, hint = refused("half nine mon evening")
    assert message == "'half nine' could be 20:30 or 21:30"
    assert hint == "type mon evening 20:30 or mon evening 21:30"
    assert echoed("mon evening 20:30") == "Mon 20:30"


@every_row(
    ("typed", "meant"),
    [
        ("this evening 7:30", "19:30"),
        ("9 in the morning", "09:00"),
        ("quarter past one this afternoon", "13:15"),
        ("mon evening 7", "Mon 19:00"),
        ("last night 1", "01:00"),
        ("last night 12:30", "00:30"),
        ("yesterday 21", "Mon 21:00"),
        ("yesterday evening at nine", "Mon 21:00"),
    ],
)
def test_the_part_of_the_day_says_which_half_is_meant(typed, meant):
    assert echoed(typed) == meant


@pytest.mark.parametrize("typed", ["21", "tue 23", "24 nov 7", "9 9", "half nine ago", "13 a"])
def test_a_figure_that_may_be_a_date_is_not_taken_for_an_hour(typed):
    assert refused(typed)[0] == f"cannot read {typed!r} as a time"


@pytest.mark.parametrize("typed", ["evening", "this evening", "yesterday evening", "tue evening"])
def test_half_an_hour_after_midnight_the_evening_is_the_one_just_past(typed):
    # The echo names the day, which is no longer today's.
    assert echoed(typed, AFTER_MIDNIGHT) == "Tue 18:00 to 22:00"


def test_half_an_hour_after_midnight():
    assert echoed("tonight", AFTER_MIDNIGHT) == "Tue 18:00 to Wed 00:30"
    assert echoed("this morning", AFTER_MIDNIGHT) == "Tue 06:00 to 12:00"
    assert echoed("mon evening", AFTER_MIDNIGHT) == "Mon 18:00 to 22:00"
    assert echoed("20:30 this evening", AFTER_MIDNIGHT) == "Tue 20:30"
    assert refused("19:30", AFTER_MIDNIGHT)[1] == 'did you mean "yesterday 19:30"?'


def test_hours_and_minutes_may_be_a_length_or_a_clock():
    assert refused("21h30") == (
        "'21h30' says how long, not when",
        'type "21h30 ago", or 21:30 if you meant the clock',
    )


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return furnished(tmp_path)


def test_at_a_terminal_the_two_readings_are_asked_for(shop: Finishlog):
    with TerminalSession(shop, "log", "leg", "oil", "--at", "mon 9") as session:
        session.answer("number:", "2")
    assert session.code == 0, session.screen
    assert "1  mon 9:00" in session.screen
    assert "Mon 21:00  leg ×12: coat" in session.screen


def test_at_a_terminal_an_evening_to_come_is_asked_for(shop: Finishlog):
    with TerminalSession(shop, "log", "leg", "oil", "--at", "22:30") as session:
        session.answer("number:", "1")
    assert session.code == 0, session.screen
    assert "Mon 22:30  leg" in session.screen


def test_at_a_terminal_no_answer_records_nothing(shop: Finishlog):
    before = shop.database.read_bytes()
    with TerminalSession(shop, "log", "leg", "oil", "--at", "10/11") as session:
        session.answer("number:", "")
    assert session.code == 2
    assert "10 Nov or 11 Oct" in session.screen
    assert shop.database.read_bytes() == before


def test_at_a_terminal_fahrenheit_typed_as_celsius_is_asked_for(shop: Finishlog):
    with TerminalSession(shop, "air", "64C", "58%") as session:
        session.answer("number:", "1")
    assert session.code == 0, session.screen
    assert "64 °C is no temperature of a shop. Which?" in session.screen
    assert "17.8 °C, 58 %" in session.screen


def test_at_a_terminal_a_very_short_wait_is_asked_for(shop: Finishlog):
    words = ("product", "new", "quick", "--class", "waterborne-clear", "--recoat", "4min")
    with TerminalSession(shop, *words) as session:
        session.answer("number:", "1")
    assert session.code == 0, session.screen
    assert "4 min is very short for a finish" in session.screen
    assert shop("product", "new", "other", *words[3:]).err == (
        "finishlog: 4 min is very short for a finish; type 4min! if the can says so\n"
    )
    shop.did("product", "new", "other", *words[3:-1], "4min!")
