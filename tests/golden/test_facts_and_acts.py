"""The table of facts and acts: which rules hear what is on record, and why some hear nothing.

`FINISHLOG_WRITE_GOLDEN=1 pytest tests/golden` writes it anew; read the difference.
"""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from finishlog.asks.things.rules import heard_facts
from finishlog.cli.pages.questions.rules_page import rules_page
from finishlog.cli.terminal.page import plain
from finishlog.core.rules.all import RULES
from finishlog.core.rules.on_record import facts_on_record
from finishlog.core.rules.table import table
from finishlog.facts.load import load_facts
from tests.spoilt import read_spoilt

KEPT = Path(__file__).with_name("rules.txt")
FACTS = load_facts()
CELLS = [
    (f"{fact} for {act}", cell)
    for fact, row in table(FACTS.unread).items()
    for act, cell in row.items()
]


def test_the_table_is_as_it_was_read():
    found = plain(rules_page(heard_facts(FACTS)))
    if os.environ.get("FINISHLOG_WRITE_GOLDEN"):
        KEPT.write_text(found, encoding="utf-8")
    assert found.splitlines() == KEPT.read_text(encoding="utf-8").splitlines()


def test_every_fact_is_heard_for_every_act_or_it_is_said_why_not():
    assert [name for name, cell in CELLS if not cell.rules and not cell.why] == []


def test_nothing_is_called_unread_that_a_rule_reads():
    assert [name for name, cell in CELLS if cell.rules and cell.why] == []


def test_no_two_lines_say_why_of_the_same():
    said = [(fact, act) for each in FACTS.unread for fact in each.facts for act in each.acts]
    assert sorted(x for x in set(said) if said.count(x) > 1) == []


def test_a_rule_reads_only_what_can_be_on_record():
    known = set(facts_on_record())
    assert {rule.id: sorted(rule.reads - known) for rule in RULES if rule.reads - known} == {}


@pytest.mark.parametrize(
    ("good", "bad", "says"),
    [
        ('"photo.path"', '"photo.weight"', "unread.toml: photo.weight: no fact on record"),
        ('"turn"', '"fly"', "unread.toml: .*: Invalid enum value 'fly'"),
        ("\nwhy = ", "\nbecause = ", "unread.toml: .*: Object contains unknown field"),
    ],
)
def test_an_unknown_fact_or_act_is_refused(tmp_path: Path, good: str, bad: str, says: str):
    with pytest.raises(ValueError, match=says):
        read_spoilt(tmp_path, "unread.toml", good, bad)
