"""A face that is divided after its coats: screens say what they said, until one half differs."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog
from test_refusals import refused

from finishlog import errors

MORNING, NEXT, LATER = (f"2026-11-{day}T08:00+00:00" for day in (20, 22, 24))

# An invented chest of drawers.
SHOP = """
room new shop --night 18C
shop hours 'mon-fri 18:00-21:00'
product new varnish --class alkyd-varnish
product new oil --class linseed-boiled
steps new clear varnish varnish
part new chest/side -n 2 --species oak --face outside --face inside:hidden
part new chest/top --species oak --face top=field,rim:walnut --face under:hidden
part steps side --as clear
air 20C 50%
log side varnish
log top oil
"""


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path).played(SHOP, now=MORNING)


def divide(shop: Finishlog, part: str = "side", how: str = "outside=upper,lower") -> str:
    return shop.did("part", "edit", part, "--face", how, now=NEXT).out


QUESTIONS = (
    *("ready", "on side", "when side", "past oak", "rags", "plan chest", "leave", "on top"),
    "past varnish",
)


def test_no_screen_moves(shop: Finishlog):
    shop.did("check", "side", "tacky", "--face", "outside", now=NEXT)
    before = [shop.did(*each.split(), now=NEXT).out for each in QUESTIONS]
    assert "outside: divided into upper, lower, each with all that is on record" in divide(shop)
    divide(shop, "side", "outside/lower=lower,plinth")
    divide(shop, "top", "top/rim=rim,corner")
    assert [shop.did(*each.split(), now=NEXT).out for each in QUESTIONS] == before


def test_then_each_goes_its_own_way(shop: Finishlog):
    divide(shop)
    shop.did("check", "side:1", "tacky", "--face", "upper", now=LATER)
    said = shop.did("on", "side", now=LATER).out
    assert "side:1, outside/upper" in said
    assert "touch failed: tacky" in said
    shop.did("log", "side@outside/lower", "varnish", now=LATER)
    coats = {
        tuple(group["standing"]["faces"]): len(group["coats"])
        for group in shop.did("on", "side:2@outside", "--json", now=LATER).document["answer"]
    }
    assert coats == {("outside/upper",): 1, ("outside/lower",): 2}


def test_history_tells_of_the_division_and_of_the_whole_before_it(shop: Finishlog):
    divide(shop)
    said = shop.did("history", "side", now=NEXT).out
    assert "chest/side ×2: coat varnish" in said
    assert "zones of outside: upper,lower" in said


def test_an_act_from_before_is_taken_back_from_both(shop: Finishlog):
    act = shop.did("log", "side@outside", "varnish", "--json", now=NEXT).document["answer"]["act"]
    divide(shop)
    shop.did("undo", str(act), "--never-happened", now=LATER)
    said = shop.did("on", "side", now=LATER).out
    assert "outside/" not in said
    assert "  coat 2  " not in said


def test_an_act_from_before_is_put_right_to_one_half(shop: Finishlog):
    act = shop.did("check", "side@outside", "tacky", "--json", now=NEXT).document["answer"]["act"]
    divide(shop)
    shop.did("amend", str(act), "--face", "upper", now=LATER)
    said = shop.did("on", "side", now=LATER).out
    assert "outside/upper" in said
    assert said.count("tacky") == 1


def test_steps_may_go_on_apart(shop: Finishlog):
    divide(shop)
    shop.did("steps", "new", "two", "varnish", "varnish@outside/upper")
    shop.did("part", "steps", "side", "--as", "two")
    ready = shop.did("on", "side:1@outside", "--json", now=LATER).document["answer"]
    to_come = {tuple(g["standing"]["faces"]): len(g["to_come"]) for g in ready}
    assert to_come == {("outside/upper",): 1, ("outside/lower",): 0}


REFUSED = [
    ("top=field,rim,edge", errors.USAGE, "--face top/field=field,edge"),
    ("top/nose=a,b", errors.NO_SUCH_THING, "it has top/field, top/rim, under"),
    ("top/field=rim,rest", errors.USAGE, "has a zone rim beside it"),
    ("top/field", errors.USAGE, "write top/field=left,right"),
    ("top/field:hidden=a,b", errors.USAGE, "only divided"),
    ("top/field=a,a", errors.USAGE, "named twice"),
]


@pytest.mark.parametrize(("how", "code", "said"), REFUSED)
def test_what_is_refused_says_what_to_type(shop: Finishlog, how: str, code: int, said: str):
    refused(shop("part", "edit", "top", "--face", how), code, said)


def test_a_zone_is_named_by_itself_where_one_alone_is_called_so(shop: Finishlog):
    assert "top/rim: divided into rim, corner" in divide(shop, "top", "rim=rim,corner")
    divide(shop, "top", "under=rim,rest")
    refused(shop("part", "edit", "top", "--face", "rim=a,b"), errors.USAGE, "top/rim or under/rim")


def test_a_hidden_face_that_is_divided_stays_hidden(shop: Finishlog):
    divide(shop, "top", "under=left,right")
    assert "under:hidden=left,right" in shop.did("part", "show", "top").out
    shop.did("part", "edit", "side", "--face", "inside:show=left,right")
    assert "inside=left,right" in shop.did("part", "show", "side").out


def test_several_at_once(shop: Finishlog):
    words = ("--face", "outside=upper,lower", "--face", "outside/upper=upper,corner")
    shop.did("part", "edit", "side", *words, now=NEXT)
    assert "outside=upper,corner,lower" in shop.did("part", "show", "side").out
