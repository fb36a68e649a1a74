"""`fault`: what it means, what mends it and until when; and where it is seen afterwards."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

from finishlog import errors

# An invented shop: a top in post-catalysed lacquer on a damp day, a chair that comes apart.
SHOP = """
2026-11-23T08:00 room new finishing
2026-11-23T08:00 product new stain --class wiping-stain
2026-11-23T08:00 product new lacquer --class lacquer-postcatalysed
2026-11-23T08:00 product new varnish --class alkyd-varnish
2026-11-23T08:00 project new table
2026-11-23T08:00 part new table/top --species ash
2026-11-23T08:00 part new table/leg -n 2 --species ash
2026-11-23T08:00 part new table/frame --of leg:2
2026-11-23T08:30 air 20C 80%
2026-11-23T20:00 log top stain
2026-11-23T20:05 log top wipe
2026-11-24T08:30 air 20C 80%
2026-11-24T10:00 log top lacquer
2026-11-24T10:00 log leg varnish
"""
SOON = "2026-11-24T10:40:00+00:00"
LATER = "2026-11-24T13:00:00+00:00"


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path, SOON).played(SHOP, now="{}:00+00:00")


def test_the_remedy_comes_with_its_time_by_the_clock(shop: Finishlog):
    out = shop.did("fault", "top", "white haze", "--where", "one end").out
    assert out.startswith("10:40  top: blush (one end)\n")
    assert "only before 12:00" in out
    assert "mist it lightly with retarder" in out


def test_causes_of_the_log_come_before_what_nobody_logged(shop: Finishlog):
    out = shop.did("fault", "top", "blush").out
    assert out.index("80 % RH") < out.index("stain went on 14 h before") < out.index("not logged")


def test_it_heads_the_bench_while_its_deadline_runs(shop: Finishlog):
    shop.did("fault", "top", "blush")
    bench = shop.did("ready", "--json").document["answer"]["bench"]
    assert (bench[0]["answer"], bench[0]["deed"]) == ("hard deadline running", "mend")
    assert "before 12:00" in shop.did("ready").out


def test_too_late_it_says_what_is_left(shop: Finishlog):
    shop.did("fault", "top", "blush")
    assert "cross-linked" in shop.did("ready", now=LATER).out
    assert "too late since 12:00" in shop.did("fault", "top", "blush", now=LATER).out


@pytest.mark.parametrize("question", ["when", "why", "on"])
def test_every_question_shows_it(shop: Finishlog, question: str):
    shop.did("fault", "top", "run", "--where", "left edge")
    assert "run (left edge)" in shop.did(question, "top").out


def test_mended_it_is_out_of_sight_and_in_the_past(shop: Finishlog):
    shop.did("fault", "top", "blush")
    out = shop.did("fault", "top", "mended", "--note", "retarder mist").out
    assert "mended, blush" in out
    assert "blush" not in shop.did("ready").out
    assert "blush, mended: retarder mist" in shop.did("past", "ash").out


def test_mended_without_a_fault_is_refused(shop: Finishlog):
    answer = shop("fault", "top", "mended")
    assert answer.code == errors.NO_SUCH_THING
    assert "no fault stands there" in answer.err


def test_what_only_a_check_ends_says_so(shop: Finishlog):
    shop.did("fault", "top", "wrinkled")
    assert "still stands until a check" in shop.did("fault", "top", "mended").out
    shop.did("check", "top", "holds")
    assert "wrinkle" not in shop.did("when", "top").out


def test_a_coat_over_a_run_is_recorded_and_warned_about(shop: Finishlog):
    shop.did("fault", "top", "run")
    out = shop.did("log", "top", "lacquer", now=LATER).out
    assert "coat 2, lacquer" in out
    assert "stop: top: run on lacquer" in out


def test_sanding_it_is_no_reason_for_a_stop(shop: Finishlog):
    shop.did("fault", "top", "run")
    out = shop.did("log", "top", "sand", now="2026-11-27T10:00:00+00:00").out
    assert "stop: top: run" not in out
    assert "run" not in shop.did("when", "top", now="2026-11-27T10:00:00+00:00").out


def test_undo_and_history(shop: Finishlog):
    shop.did("fault", "top", "run")
    assert "fault top run" in shop.did("history", "top").out
    shop.did("undo")
    assert "run" not in shop.did("when", "top").out


def test_amend(shop: Finishlog):
    shop.did("fault", "top", "run", "--where", "front")
    shop.did("amend", "15", "--at", "10:30", "--note", "left to harden")
    assert "10:30" in shop.did("on", "top").out
    assert "run (front), left to harden" in shop.did("past", "ash").out


def test_an_open_joint_is_glued_up_again(shop: Finishlog):
    at = "2026-12-05T10:00:00+00:00"
    shop.did("log", "frame", "glue-up", now=at)
    shop.did("fault", "frame", "joint opened", now="2026-12-09T10:00:00+00:00")
    ready = shop.did("ready", now="2026-12-09T10:01:00+00:00").out
    assert "table/frame" in ready.split("PUT TOGETHER")[1]
    out = shop.did("log", "frame", "glue-up", now="2026-12-09T11:00:00+00:00").out
    assert "the joint" in out
    assert "open joint" not in shop.did("ready", now="2026-12-09T11:01:00+00:00").out


def test_sanding_a_young_varnish_opens_the_sanders_bag(shop: Finishlog):
    out = shop.did("log", "leg", "sand", now="2026-11-27T10:00:00+00:00").out
    assert "sander bags from oil films younger than 30 days" in out
    assert "Wood dust" in out
    assert "dust and sander bag" in shop.did("rags", now="2026-11-27T10:00:00+00:00").out


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["fault", "top"], "finishlog fault doors run"),
        (["fault", "top", "gremlins"], "type one of: run, blush"),
        (["fault", "top", "peel", "--at", "tomorrow"], "still to come"),
    ],
    ids=str,
)
def test_what_cannot_be_read_is_refused(shop: Finishlog, words: list[str], said: str):
    before = shop.database.read_bytes()
    answer = shop(*words)
    assert answer.code == errors.USAGE, answer
    assert len(answer.err.splitlines()) == 1
    assert said in answer.err
    assert shop.database.read_bytes() == before
