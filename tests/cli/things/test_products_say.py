"""What the person says of a product beyond its hours, typed, told and taken back.

The cans and the reasons are invented. That oil below a waterborne film wants days, and that waxy
shellac under it fails, are rows of facts/data/overcoats.toml with their sources.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

from finishlog import errors

SHOP = """
20T08:00 shop hours 'mon-sun 8:00-22:00'
20T08:00 room new bench --night 23C
20T08:00 room usual bench 0:23C/50% 12:23C/50%
20T08:00 product new varnish --class oil-polyurethane
20T08:00 product new stain --class wiping-stain
20T08:00 product new sealer --class shellac-2lb
20T08:00 product new waxy --class shellac-waxy
20T08:00 product new clear --class waterborne-clear
20T08:01 steps new two stain varnish
20T08:01 part new hall/top --species oak --steps two
20T08:02 air 23C 50%
20T08:02 log top stain
20T08:05 log top wipe
25T08:00 air 23C 50%
"""
NOW = "2026-11-25T08:05+00:00"


def at(day_and_hour: str) -> str:
    return f"2026-11-{day_and_hour}+00:00"


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    program = Finishlog(tmp_path)
    program.environment = {**program.environment, "FINISHLOG_ZONE": "UTC"}
    return program.played(SHOP, now="2026-11-{}+00:00")


def says(shop: Finishlog, *words: str, now: str = NOW) -> int:
    """Say something of the varnish; return the act."""
    done = shop.did("product", "says", "varnish", *words, "--json", now=now)
    return int(done.document["answer"]["act"])


def verdict(shop: Finishlog, now: str = NOW) -> str:
    (why,) = shop.did("why", "top", "--json", now=now).document["answer"]
    return str(why["standing"]["answer"])


def test_silence_where_nothing_is_said(shop: Finishlog):
    assert verdict(shop) == "go"
    assert "your rule" not in shop.did("why", "top", now=NOW).out


def test_ready_why_plan_and_log_say_the_same_rule_and_undo_takes_it_back(shop: Finishlog):
    act = says(shop, "--not-over", "oil-stain", "--because", "it lifts it")
    rule = f"your rule (act {act}): not over oil wiping stain: it lifts it"
    assert verdict(shop) == "stopped by what is underneath"
    for question in (("ready",), ("why", "top"), ("plan",)):
        assert rule in shop.did(*question, now=NOW).out, question
    logged = shop.did("log", "top", "varnish", now=NOW).out
    assert f"stop: top: {rule}" in logged
    shop.did("undo", now=NOW)
    assert rule in shop.did("ready", now=NOW).out
    shop.did("undo", str(act), now=NOW)
    assert verdict(shop) == "go"
    assert rule not in shop.did("plan", now=NOW).out


def test_a_barrier_that_is_needed_is_named_and_ends_it(shop: Finishlog):
    act = says(shop, "--needs", "dewaxed shellac", "--over", "stain")
    said = shop.did("why", "top", now=NOW).out
    assert f"your rule (act {act}): it needs dewaxed shellac, 2 lb cut" in said
    assert verdict(shop) == "stopped by what is underneath"
    shop.did("log", "top", "sealer", now=NOW)
    assert verdict(shop, at("26T08:00")) != "stopped by what is underneath"


def test_a_longer_wait_enters_the_clock_without_a_reason(shop: Finishlog):
    assert verdict(shop) == "go"
    says(shop, "--wait", "7d", "--over", "oil-stain")
    (why,) = shop.did("why", "top", "--json", now=NOW).document["answer"]
    assert why["standing"]["answer"] == "drying"
    assert why["standing"]["high"] == "2026-11-27T08:02:00Z"


def test_a_published_row_that_is_overruled_says_so_with_reason_and_act(shop: Finishlog):
    shop.did("part", "new", "hall/lid", "--species", "oak", now=NOW)
    shop.did("log", "lid", "waxy", "--at", "2026-11-20 09:00", now=NOW)
    stopped = shop.did("log", "lid", "clear", now=NOW).out
    assert "stop: lid: over waxy shellac" in stopped
    shop.did("undo", now=NOW)
    overrule = ("--overrule", "waxy-shellac-under-varnish", "--because", "held on three boards")
    done = shop.did("product", "says", "clear", *overrule, "--json", now=NOW)
    act = done.document["answer"]["act"]
    assert "stop: lid" not in shop.did("log", "lid", "clear", now=NOW).out
    assert verdict_of_lid(shop) != "stopped by what is underneath"
    shop.did("undo", str(act), now=at("26T08:05"))
    assert verdict_of_lid(shop) == "stopped by what is underneath"


def verdict_of_lid(shop: Finishlog) -> str:
    (why,) = shop.did("why", "lid", "--json", now=at("26T08:06")).document["answer"]
    return str(why["standing"]["answer"])


def test_coats_a_day_and_most_coats_hold_the_next(shop: Finishlog):
    shop.did("part", "new", "hall/rail", "--species", "oak", now=NOW)
    shop.did("product", "says", "sealer", "--coats-a-day", "2", "--most-coats", "3", now=NOW)
    shop.did("log", "rail", "sealer", now=at("25T09:00"))
    shop.did("log", "rail", "sealer", now=at("25T12:00"))
    (why,) = shop.did("why", "rail", "--json", now=at("25T15:00")).document["answer"]
    assert (why["standing"]["answer"], why["standing"]["high"]) == (
        "drying",
        "2026-11-26T09:00:00Z",
    )
    shop.did("log", "rail", "sealer", now=at("26T09:00"))
    why_not = shop.did("why", "rail", now=at("27T12:00")).out
    assert "no more coats of it, 3 are on" in why_not


@pytest.fixture
def fast(shop: Finishlog) -> Finishlog:
    """A varnish that melts in within 2 h, or is scuffed after a day: the trade's own case."""
    shop.did("product", "label", "varnish", "--window", "0-2h, 24h- scuffed", now=NOW)
    shop.did("part", "new", "hall/box", "--species", "oak", now=NOW)
    shop.did("log", "box", "varnish", now=at("25T10:00"))
    return shop


@pytest.mark.parametrize(
    ("hour", "answer"),
    [
        ("25T11:00", "go"),
        ("25T15:00", "dead zone"),
        ("26T11:00", "go after scuffing"),
    ],
)
def test_a_window_with_a_gap(fast: Finishlog, hour: str, answer: str):
    fast.did("air", "23C", "50%", now=at(hour))
    (why,) = fast.did("why", "box", "--json", now=at(hour)).document["answer"]
    assert why["standing"]["answer"] == answer
    assert "your rule" not in fast.did("why", "box", now=at(hour)).out
    if answer == "dead zone":
        assert why["standing"]["high"] == "2026-11-26T10:00:00Z"
        assert "scuff and recoat after Thu 10:00" in fast.did("ready", now=at(hour)).out


def test_a_window_that_was_not_said_is_asked_from_when_on(shop: Finishlog):
    refused = shop("product", "label", "varnish", "--window", "2h", "--sand", "24h", now=NOW)
    assert refused.code == errors.USAGE
    assert "--window 0-2h" in refused.err


def test_no_window_is_said_in_each_answer_that_it_changes(shop: Finishlog):
    act = says(shop, "--no-window", "--because", "it melts in")
    shop.did("part", "new", "hall/box", "--species", "oak", now=NOW)
    shop.did("log", "box", "varnish", now=at("25T10:00"))
    shop.did("undo", str(act), now=at("25T10:05"))
    shop.did("air", "23C", "50%", now=at("29T10:00"))
    said = shop.did("why", "box", now=at("29T10:00")).out
    # The coat keeps the window it went on by, as it keeps its hours.
    assert "as you said: it melts in" in said
    assert "go: dry enough to recoat" in said


def test_product_show_lists_what_is_said_with_act_and_reason(shop: Finishlog):
    act = says(shop, "--not-on", "oily", "--because", "it stays soft")
    shown = shop.did("product", "show", "varnish", now=NOW).out
    assert "YOU SAY" in shown
    assert f"not on oily  it stays soft  act {act}" in shown
    shop.did("undo", now=NOW)
    assert "YOU SAY" not in shop.did("product", "show", "varnish", now=NOW).out


FILE = """
[products.hard]
class = "oil-polyurethane"
says = [
  {not-over = ["any-stain"], because = "it lifts it"},
  {coats-a-day = 2},
]
"""


def test_a_project_file_says_it_too_and_tells_what_differs(shop: Finishlog):
    path = shop.folder / "hard.toml"
    path.write_text(FILE)
    shop.did("project", "load", str(path), now=NOW)
    shown = shop.did("product", "show", "hard", now=NOW).out
    assert "not over stain" in shown
    assert "2 coats a day at most" in shown
    path.write_text(FILE.replace("coats-a-day = 2", "coats-a-day = 1"))
    answer = shop.did("project", "load", str(path), "--json", now=NOW).document["answer"]
    (differs,) = answer["differs"]
    assert differs["to_change"] == "finishlog product says hard --coats-a-day 1"


def test_a_window_that_begins_before_the_recoat_time_on_record_needs_a_reason(shop: Finishlog):
    shop.did("product", "label", "clear", "--recoat", "2h")
    words = ("product", "says", "clear", "--window", "0-4h, 24h- scuffed")
    answer = shop(*words)
    assert answer.code == errors.USAGE
    assert "recoat after 2 h is on record, and a window from 0 h on" in answer.err
    assert "--because" in answer.err
    shop.did(*words, "--because", "the sheet of the can")
    # From it on, or where none is on record, a window is only that.
    shop.did("product", "says", "varnish", "--window", "0-1h, 48h-")
