"""Every rule carries its stories: some in which it must speak, some in which it must stay silent.

A story is one line (tests/stories/telling), read into a real log; nothing in it is published. What
a rule rests on stands beside the rule, as its source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from importlib import import_module
from itertools import chain
from pathlib import Path

import pytest
from msgspec.structs import replace

from finishlog.cli.words.finding_words import remedy, sentence, short, waits_for
from finishlog.cli.words.said import each_of
from finishlog.core.findings import Act, Finding, Level
from finishlog.core.log.words import Operation, Stripping
from finishlog.core.rules.all import RULES, findings_of
from finishlog.core.rules.on_record import facts_on_record
from finishlog.core.zone.asked import OFF, Asked, taking_off, work_asked
from tests.rows import every_row, try_every
from tests.stories.beside import BESIDE
from tests.stories.pairs import proved_by
from tests.stories.reading import DERIVED, read_by, watched
from tests.stories.telling import Teller, Told, scene
from tests.test_words_at_the_edge import ids_below_the_edge

HERE = Path(__file__).parent
BY_ID = {rule.id: rule for rule in RULES}
STORIES: dict[str, tuple[Told, ...]] = {}
for file in sorted(HERE.glob("of_*.py")):
    told = import_module(f"tests.stories.{file.stem}").STORIES
    assert not STORIES.keys() & told.keys(), file.name
    STORIES |= told

EACH = [(rule, told) for rule, all_of_it in STORIES.items() for told in all_of_it]


@every_row("rule", STORIES)
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


@every_row("rule", STORIES)
def test_a_rule_reads_what_it_says_it_reads(rule: str):
    of = BY_ID[rule]
    read = frozenset().union(*(read_by(of, scene(told.line)) for told in STORIES[rule]))
    undeclared, unread = " ".join(sorted(read - of.reads)), " ".join(sorted(of.reads - read))
    assert not undeclared, f"read, and not declared: {undeclared}"
    assert not unread, f"declared, and read in no story: {unread}"


def test_what_a_rule_may_say_is_worded_with_the_values_of_a_story():
    """Each id that the rules build is found in some story, and all its words can be said of it."""
    worded = set()
    beside = [told for all_of_it in BESIDE.values() for told in all_of_it]
    for line in {told.line for told in (*beside, *(told for _, told in EACH))}:
        for each in (*scene(line).found, *scene(line).beside):
            said = (sentence(each), remedy(each), short(each), waits_for(each))
            assert said[0], (each.rule, line)
            assert "None" not in " ".join(said), (each.rule, line)
            worded.add(each.rule)
    assert sorted(ids_below_the_edge("core/rules/") - worded) == []


def _proofs(rule: str) -> Iterator[tuple[str, Act]]:
    return chain.from_iterable(proved_by(BY_ID[rule], told.line) for told in STORIES[rule])


@pytest.mark.thorough
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


@pytest.mark.thorough
def test_what_was_worked_out_before_comes_from_the_facts_that_its_table_names():
    """Each of them is looked at while the state of some story is worked out."""
    named = {fact for facts in DERIVED.values() for fact in facts.split()}
    with watched() as seen:
        for told in {told.line: told for _, told in EACH}.values():
            if named <= seen:
                break
            Teller(told.line).scene()
    assert sorted(named - seen) == []
    assert named <= set(facts_on_record())


# What a remedy tells to do by hand, and the words that tell it.
_BY_HAND = {
    Operation.WIPE: "wipe",
    Operation.SOLVENT_WIPE: "solvent",
    Operation.SAND: "sand it|sand a|sand off|cut the fuzz",
    Operation.SCUFF: "scuff it|scuff all",
    Operation.RINSE: "rinse",
    Operation.UNTAPE: "untape",
    Operation.GLUE_UP: "glue-up",
}
_OFF = replace(taking_off(Stripping.STRIP), done=True)


def _remedies(of: Finding) -> Iterator[Asked]:
    """Yield what a remedy tells to do, as it is being done; not what it tells to do `once`."""
    words = " ".join((remedy(of), *each_of(of, "remedies")))
    words = re.sub(r"\bonce it is dry [^,;]*", "", words)
    for operation, verb in _BY_HAND.items():
        if re.search(rf"\b(?:{verb})", words):
            yield work_asked(operation, done=True)
    if re.search(r"\btake it off(?!, slowly)|\bstrip", words):
        yield _OFF


def test_no_finding_warns_of_the_act_that_is_its_own_remedy():
    """Over every story: what the words of a remedy name draws no warning of the same kind."""
    warned, silent = set(), set()
    for line in {told.line: None for _, told in EACH}:
        at = scene(line)
        for each in at.found:
            for asked in _remedies(each):
                then = [f for f in findings_of(at.zone, asked, at.around) if f.rule == each.rule]
                mine = [f for f in then if f.value("fault") == each.value("fault")]
                if any(f.answer or f.level is not Level.NOTE for f in mine):
                    warned.add((each.rule, asked.does, each.value("fault"), line))
                elif each.answer or each.level is not Level.NOTE:
                    silent.add(each.rule)
    assert sorted(warned, key=str) == []
    assert len(silent) > 20, sorted(silent)


def test_what_mends_a_rule_is_told_in_a_story_to_be_noted_and_no_more():
    """Every remedy that a rule names and is asked about: its findings are notes to it, or none."""
    for rule in RULES:
        spoken = [told for told in STORIES[rule.id] if told.speaks]
        for does in rule.mended_by:
            asked = _OFF if does == OFF else work_asked(Operation(does), done=True)
            if asked.act not in rule.binds:
                continue
            for told in spoken:
                at = scene(told.line)
                raw = {f.rule for f in rule.find(at.zone, asked, at.around)}
                found = [f for f in findings_of(at.zone, asked, at.around) if f.rule in raw]
                bare = [f for f in found if f.answer or f.level is not Level.NOTE]
                assert bare == [], (rule.id, does, told.line)


@pytest.mark.parametrize(
    ("line", "warns"),
    [
        ("front: alkyd-varnish 08:00; check cupped +5d; ask back: alkyd-varnish +1h", False),
        ("front: alkyd-varnish 08:00; check cupped +5d; ask front: alkyd-varnish +1h", True),
        ("alkyd-varnish 08:00; check cupped +5d; ask back: alkyd-varnish +1h", True),
    ],
)
def test_the_coat_that_balances_a_cupped_part_is_not_warned_of(line: str, warns: bool):
    """Coating the barer face is what the fault itself asks for. common practice"""
    (found,) = (f for f in scene(f"ash panel/front+back; {line}").found if f.rule == "fault")
    assert (found.level is not Level.NOTE, found.answer is not None) == (warns, warns)
