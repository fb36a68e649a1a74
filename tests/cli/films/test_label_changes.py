"""A label that is changed can be put back, and says which coats that are on it would move."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

EVENING = "2026-05-06T19:00+01:00"
LATER = "2026-05-06T20:00+01:00"
KITCHEN = """
room new shop --night 23C
room usual shop 0:23C/50% 12:23C/50%
product new clear --class waterborne-clear --recoat 6h --window 72h
product new other --class waterborne-clear
part new kitchen/door --species ash
part new kitchen/shelf --species ash
air 23C 50%
log door clear
log shelf other
"""


@pytest.fixture
def door(tmp_path: Path) -> Finishlog:
    """A door with a coat of an hour ago; its can was misread: 6 h, where it says 30 h."""
    return Finishlog(tmp_path).played(KITCHEN, now=EVENING)


def recoat(door: Finishlog) -> tuple[float, str]:
    """Return the hours to recoat on the label, and by when the door is judged dry for the next."""
    product = door.did("product", "show", "clear", "--json", now=LATER).document["answer"]
    label = {name: figure for name, figure, *_ in product["stages"]}
    (why,) = door.did("why", "door", "--json", now=LATER).document["answer"]
    return label["recoat"]["high_h"], why["standing"]["high"]


def label(door: Finishlog, *more: str) -> str:
    return door.did("product", "label", "clear", "--recoat", "30h", *more, now=LATER).out


def test_a_changed_label_lists_the_coats_that_are_on_with_both_dates(door):
    before = recoat(door)
    said = label(door)
    assert "keeps    kitchen/door" in said
    assert "by this label after Fri 01:00" in said
    assert "finishlog product label clear --recoat 30h --coats-too" in said
    assert "shelf" not in said
    after = recoat(door)
    assert after[1] == before[1], "a coat keeps what it was judged by"
    assert (before[0], after[0]) == (6, 30)


def test_said_so_all_along_the_coats_are_judged_anew(door):
    before = recoat(door)
    said = label(door, "--coats-too")
    assert "moved    kitchen/door: after Fri 01:00" in said
    assert recoat(door)[1] > before[1]


@pytest.mark.parametrize("more", [(), ("--coats-too",)])
def test_one_undo_takes_all_of_it_back_and_another_brings_it_again(door, more):
    before = recoat(door)
    label(door, *more)
    changed = recoat(door)
    assert changed != before
    undone = door.did("undo", "--json", now=LATER).document["answer"]["act"]
    assert recoat(door) == before
    door.did("undo", str(undone), now=LATER)
    assert recoat(door) == changed


def test_where_no_coat_is_on_nothing_is_listed(door):
    said = door.did("product", "label", "other", "--cured", "800h", now=LATER).out
    assert "keeps" not in said
    assert "moved" not in said
