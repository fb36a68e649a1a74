"""Proportion: a coat some minutes early gets few words, one that is far too early a stop.

Times are shown to the half hour, so what lies within it is nobody's fault (common practice).
"""

from __future__ import annotations

from datetime import datetime, timedelta
from pathlib import Path

import pytest
from run import Finishlog

FIRST = datetime.fromisoformat("2026-05-01T09:00+00:00")
SHOP = """
room new shop --night 22C
product new clear --class waterborne-clear --recoat 4h --window 24h
product new thin --class shellac-1lb --recoat 30min
part new gift/tray --species ash
part new gift/box --species ash
air 23C 50%
log tray clear
log box thin
"""


@pytest.fixture
def tray(tmp_path: Path) -> Finishlog:
    """A tray with one coat in standard air; the label says 4 h to recoat, and 24 h."""
    return Finishlog(tmp_path).played(SHOP, now=FIRST.isoformat())


def warned(tray: Finishlog, minutes: int, *words: str) -> list[str]:
    now = (FIRST + timedelta(minutes=minutes)).isoformat()
    tray.did("air", "23C", "50%", now=now)
    logged = tray.did("log", *words, "--json", now=now).document["answer"]
    return [f"{w['level']}: {w['sentence']}" for w in logged["warnings"]]


@pytest.mark.parametrize("minutes", [4, 15])
def test_some_minutes_early_are_a_few_words(tray, minutes):
    assert warned(tray, 240 - minutes, "tray", "clear") == [f"caution: {minutes} min early"]


@pytest.mark.parametrize(("minutes", "done"), [(16, "3.7"), (60, "3.0"), (200, "0.6")])
def test_far_too_early_is_a_stop(tray, minutes, done):
    """In standard air a label hour is an hour."""
    said = f"stop: drying: recoat over clear not reached (label 4 h, {done} done)"
    assert said in warned(tray, 240 - minutes, "tray", "clear")


def test_of_a_short_wait_only_a_tenth_is_hardly_anything(tray):
    assert warned(tray, 27, "box", "thin") == ["caution: 3 min early"]


def test_of_a_short_wait_a_third_is_a_stop(tray):
    assert warned(tray, 20, "box", "thin") == [
        "stop: drying: recoat over thin not reached (label 0.5 h, 0.3 done)"
    ]


def test_ready_keeps_to_the_minimum_of_the_label(tray):
    """What was done is judged in proportion; nobody is sent to a coat sooner than the label."""
    answers = {}
    for minutes in (236, 241):
        now = (FIRST + timedelta(minutes=minutes)).isoformat()
        tray.did("air", "23C", "50%", now=now)
        (why,) = tray.did("why", "tray", "--json", now=now).document["answer"]
        answers[minutes] = why["standing"]["answer"]
    assert answers == {236: "drying", 241: "go"}
