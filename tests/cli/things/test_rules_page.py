"""`finishlog rules`: what every verdict rests on, and what none hears."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

from finishlog import errors
from finishlog.core.rules.all import RULES


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    """A folder with no shop in it: the rules need none."""
    return Finishlog(tmp_path)


def test_every_rule_is_listed_with_what_it_says(shop: Finishlog):
    listed = [line.split("  ") for line in shop.did("rules").out.splitlines()]
    assert [words[0] for words in listed] == [rule.id for rule in RULES]
    assert all(words[-1].strip().endswith(".") for words in listed)


def test_a_rule_is_found_by_a_part_of_its_name(shop: Finishlog):
    assert "reads" in shop.did("rules", "mend").out
    several = shop("rules", "wood")
    assert (several.code, several.out) == (0, shop.did("rules", "wood").out)
    assert several.out.startswith("wood\n")


def test_one_that_there_is_not_or_two_questions_at_once_are_refused(shop: Finishlog):
    assert shop("rules", "gravity").code == errors.NO_SUCH_THING
    assert shop("rules", "wipe").code == errors.NO_SUCH_THING
    assert shop("rules", "wipe-off", "--table").code == errors.USAGE


def test_the_table_has_every_act_of_every_fact_and_unread_is_what_no_rule_hears(shop: Finishlog):
    rows = shop.did("rules", "--table", "--json").document["answer"]["facts"]
    unread = shop.did("rules", "--unread", "--json").document["answer"]["facts"]
    missing = [
        row["fact"]
        for row in rows
        if any(h["gap"] for h in row["heard"]) or not any(h["rules"] for h in row["heard"])
    ]
    assert [row["fact"] for row in unread] == missing
    assert not any(heard["rules"] for row in unread for heard in row["heard"])
    for row in rows:
        acts = [act for heard in row["heard"] for act in heard["acts"]]
        assert len(acts) == len(set(acts)) == 17
