"""Where sources differ on a wait `why` shows them side by side, and `ready` stays short."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

# Invented: a shop at 23 °C and 50 % all the time, where an hour is a label hour.
SHOP = """
2026-11-20T08:00 room new shop --night 20C
2026-11-20T08:00 room usual shop 0:23C/50%
2026-11-20T08:00 product new blend --class oil-varnish-blend
2026-11-20T08:00 product new varnish --class alkyd-varnish
2026-11-20T08:00 product new gel --class gel-stain
2026-11-20T08:00 steps new oiled blend varnish
2026-11-20T08:00 steps new stained gel varnish
2026-11-20T08:00 part new chest/lid --species ash --steps oiled --room shop
2026-11-20T08:00 part new chest/tray --species ash --steps stained --room shop
2026-11-24T09:00 air 23C 50%
2026-11-24T09:00 log lid blend
2026-11-24T09:00 log tray gel
2026-11-24T09:03 log tray wipe
2026-11-24T09:10 log lid wipe
2026-11-24T15:00 air 23C 50%
2026-11-24T21:00 air 23C 50%
2026-11-25T03:00 air 23C 50%
2026-11-25T09:00 air 23C 50%
2026-11-25T12:00 air 23C 50%
"""
NOON = "2026-11-25T12:00+00:00"


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path).played(SHOP, now="{}:00+00:00")


def options(shop: Finishlog, part: str) -> list[dict[str, object]]:
    found: list[dict[str, object]] = shop.did("why", part, "--json", now=NOON).document["answer"][
        0
    ]["options"]
    return found


def test_why_gives_each_source_its_hours_and_its_date(shop: Finishlog):
    """A night (a magazine), and a week (common practice): the week binds."""
    lines = [x for x in shop.did("why", "lid", now=NOON).out.splitlines() if "sources  " in x]
    week, night = lines
    assert "72 to 168 h (common practice): after" in week
    assert "the most cautious, it binds" in week
    assert "12 to 24 h (trade press or page, Woodworking magazine, finishing in one day)" in night
    assert "over since 09:00; not used" in night
    ready = shop.did("ready", now=NOON).out
    assert "magazine" not in ready
    assert "not used" not in ready


def test_what_another_source_calls_enough_moves_nothing(shop: Finishlog):
    assert shop.did("ready", "lid", "--json", now=NOON).document["answer"]["bench"] == []
    assert shop.did("log", "lid", "varnish", "--json", now=NOON).document["answer"]["warnings"]


def test_json_has_them_and_is_silent_where_they_agree(shop: Finishlog):
    binding, other = options(shop, "lid")
    assert [binding["binds"], binding["high_h"], other["high_h"]] == [True, 168, 24]
    assert other["said_by"] == "trade press or page"
    assert options(shop, "tray") == []
