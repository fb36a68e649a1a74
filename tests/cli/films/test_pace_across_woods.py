"""One tacky coat on an oily wood is no news of maple; where learning moves a date it is said.

The shop and its hours are invented. That the oil of some woods keeps varnish soft: common practice.
"""

from __future__ import annotations

import shlex
from pathlib import Path

import pytest
from run import Finishlog

SHOP = """
02T07:00 product new varnish --class alkyd-varnish --tack-free 6h --recoat 24h
02T07:00 product new sealer --class shellac-2lb
02T07:00 steps new s varnish*3
02T07:00 part new box/lid --species rosewood --steps s
02T07:00 part new desk/top --species maple --steps s
02T07:00 part new desk/side --species cherry --steps s
02T08:00 air 20C 50%
02T09:00 log lid varnish
03T08:00 air 20C 50%
04T08:00 air 20C 50%
04T09:00 log top varnish
04T09:05 log side varnish
"""


@pytest.fixture
def program(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path).played(SHOP, now="2026-11-{}:00+00:00")


def play(program: Finishlog, story: str) -> str:
    said = ""
    for line in story.strip().splitlines():
        moment, *words = shlex.split(line)
        said = program.did(*words, now=f"2026-11-{moment}:00+00:00").out
    return said


def recoat(program: Finishlog, part: str) -> str:
    answer = program.did("when", part, "--json", now="2026-11-04T12:00:00+00:00").document["answer"]
    return str(answer["lines"][0]["standing"]["high"])


def test_a_tacky_coat_on_rosewood_leaves_maple_alone(program: Finishlog):
    before = recoat(program, "top")
    play(program, "04T11:00 check lid tacky")
    assert recoat(program, "top") == before
    assert "your pace" not in program.did("ready", now="2026-11-04T12:00:00+00:00").out


def test_a_tacky_coat_on_maple_moves_cherry_and_both_screens_say_so(program: Finishlog):
    before = recoat(program, "side")
    said = play(program, "05T07:00 air 20C 50%\n05T07:30 check top tacky")
    assert recoat(program, "side") > before
    (moved,) = (line for line in said.splitlines() if line.startswith("moved    desk/side"))
    assert "after Thu 12 Nov, was after Fri 20:30" in moved
    assert "your pace is" in moved
    assert "first coats on bare wood, from 1 coat: act 11" in moved
    evening = program.did("ready", now="2026-11-05T07:40:00+00:00").out
    lid, side = (line for line in evening.splitlines() if "your pace moved it: " in line)
    assert "by the label alone after Fri 20:30" in side, "as `check` said that it was"
    assert side.endswith("after Thu 12 Nov (act 11)")
    assert "by the label alone reached" in lid


def test_other_coats_wait_three_times_the_label_at_most(program: Finishlog):
    """Tacky after five days where the label says 6 h is no matter of pace."""
    days = ("05", "06", "07", "08", "09")
    hours = [f"{day}T{hour}:00" for day in days for hour in ("08", "20")]
    play(program, "\n".join(f"{hour} air 20C 50%" for hour in hours))
    play(
        program,
        """
        09T20:10 check top tacky
        09T20:20 part new desk/back --species maple --steps s
        09T20:30 log back varnish
        """,
    )
    now = "2026-11-09T20:40:00+00:00"
    assert "other coats wait 3 × at most" in program.did("product", "show", "varnish", now=now).out
    asked = program.did("when", "back", "--json", now=now).document["answer"]["lines"][0]
    assert asked["standing"]["learnt"]["factor"] == 3
    # Before it may be scuffed, too: days, not months.
    assert asked["standing"]["high"] < "2026-11-20"
