"""Every rule carries its stories: some in which it must speak, some in which it must stay silent.

A story is one line (tests/stories/telling), read into a real log; nothing in it is published. What
a rule rests on stands beside the rule, as its source.
"""

from __future__ import annotations

from collections.abc import Iterator
from importlib import import_module
from itertools import chain
from pathlib import Path

import pytest

from finishlog.cli.words.finding_words import remedy, sentence, short, waits_for
from finishlog.core.findings import Act
from finishlog.core.rules.all import RULES
from finishlog.core.rules.on_record import facts_on_record
from tests.rows import every_row, try_every
from tests.stories.beside import BESIDE
from tests.stories.pairs import proved_by
from tests.stories.reading import DERIVED, read_by, watched
from tests.stories.telling import Teller, Told, scene

HERE = Path(__file__).parent
BY_ID = {rule.id: rule for rule in RULES}
STORIES: dict[str, tuple[Told, ...]] = {}
for file in sorted(HERE.glob("of_*.py")):
    told = import_module(f"tests.stories.{file.stem}").STORIES
    assert not STORIES.keys() & told.keys(), file.name
    STORIES |= told

EACH = [(rule, told) for rule, all_of_it in STORIES.items() for told in all_of_it]


@pytest.mark.parametrize("rule", STORIES)
def test_a_rule_speaks_in_its_stories_and_is_silent_in_the_others(rule: str):
    try_every(((told.line, (rule, told)) for told in STORIES[rule]), _is_true)


def _is_true(rule: str, told: Told) -> None:
    at = scene(told.line)
    of, binds = BY_ID[rule], at.asked.act in BY_ID[rule].binds
    found = list(of.find(at.zone, at.asked, at.around)) if binds else []
    spoke = [f for f in found if not f.plain or f.answer is None or f.answer.value != "go"]
    assert bool(spoke) == told.speaks, [sentence(f) for f in found]
    if told.answer is not None:
        assert told.answer in {f.answer for f in found}
    if told.lets:
        assert {f.answer for f in found} == {None}
    for each in found:
        assert sentence(each)
        assert "None" not in sentence(each) + remedy(each) + short(each) + waits_for(each)
    assert told.says in " ".join(f"{sentence(f)} {remedy(f)}" for f in found)


@every_row(
    ("id_", "told"),
    [(id_, told) for id_, all_of_it in BESIDE.items() for told in all_of_it],
    ids=lambda value: getattr(value, "line", value),
)
def test_what_no_rule_finds_is_told_speaking_and_silent_too(id_: str, told: Told):
    spoke = [f for f in scene(told.line).beside if f.rule == id_]
    assert bool(spoke) == told.speaks, [f.rule for f in scene(told.line).beside]
    assert told.says in " ".join(f"{sentence(f)} {remedy(f)} {waits_for(f)}" for f in spoke)


def test_every_rule_is_told_speaking_and_silent():
    assert STORIES.keys() == BY_ID.keys()
    for rule, all_of_it in STORIES.items():
        assert {told.speaks for told in all_of_it} == {True, False}, rule


@pytest.mark.parametrize("rule", STORIES)
def test_a_rule_reads_what_it_says_it_reads(rule: str):
    of = BY_ID[rule]
    read = frozenset().union(*(read_by(of, scene(told.line)) for told in STORIES[rule]))
    undeclared, unread = " ".join(sorted(read - of.reads)), " ".join(sorted(of.reads - read))
    assert not undeclared, f"read, and not declared: {undeclared}"
    assert not unread, f"declared, and read in no story: {unread}"


def test_what_any_rule_finds_in_any_story_has_its_words():
    for told in {told.line: told for _, told in EACH}.values():
        for each in scene(told.line).found:
            assert sentence(each), each.rule


def _proofs(rule: str) -> Iterator[tuple[str, Act]]:
    return chain.from_iterable(proved_by(BY_ID[rule], told.line) for told in STORIES[rule])


def test_every_rule_and_most_cells_turn_on_a_fact_that_a_story_leaves_out():
    """What a rule finds is another thing without one of the facts it reads; best effort.

    Not provable so is what only tells zones apart, or what checks of other coats taught.
    """
    proofs = {rule: _proofs(rule) for rule in STORIES}
    first = {rule: next(shown, None) for rule, shown in proofs.items()}
    assert [rule for rule, shown in first.items() if shown is None] == []
    cells = {(fact, act) for rule in RULES for fact in rule.reads for act in rule.binds}
    proved = set(first.values())
    for shown in chain.from_iterable(proofs.values()):
        proved.add(shown)
        if len(proved) > len(cells) / 2:
            return
    pytest.fail(f"{len(proved)} of {len(cells)} cells are proved")


def test_what_was_worked_out_before_comes_from_the_facts_that_its_table_names():
    """Each of them is looked at while the state of some story is worked out."""
    with watched() as seen:
        for told in {told.line: told for _, told in EACH}.values():
            Teller(told.line).scene()
    named = {fact for facts in DERIVED.values() for fact in facts.split()}
    assert sorted(named - seen) == []
    assert named <= set(facts_on_record())
