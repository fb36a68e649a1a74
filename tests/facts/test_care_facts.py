"""What stands on a care card: every line has a source, and none of them has a date."""

from __future__ import annotations

import re

import pytest

from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.published.care import CareKind, CareRule
from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()
RULES = FACTS.care.rules
CLASSES = FACTS.classes.values()


def of_kind(kind: CareKind) -> list[CareRule]:
    return [rule for rule in RULES if rule.kind is kind]


@every_row("rule", RULES, ids=lambda rule: rule.text[:30])
def test_a_rule_names_finishes_that_there_are(rule: CareRule):
    known = {of.key for of in CLASSES} | {of.family for of in CLASSES}
    assert rule.on <= known


@every_row("rule", RULES, ids=lambda rule: rule.text[:30])
def test_a_rule_has_its_source(rule: CareRule):
    assert rule.source in FACTS.sources or rule.source == COMMON_PRACTICE


@every_row("rule", of_kind(CareKind.NEVER), ids=lambda rule: rule.text[:30])
def test_never_has_no_term(rule: CareRule):
    assert not re.search(r"\b(until|after|before|days?|weeks?|months?|hours?)\b", rule.text)


def test_nothing_is_called_safe():
    assert not [rule for rule in RULES if re.search(r"\bsafe\b", rule.text)]


def test_no_two_lines_say_the_same():
    assert len({rule.text for rule in RULES}) == len(RULES)


@every_row("of", [c for c in CLASSES if c.topcoat], ids=lambda of: of.key)
def test_every_topcoat_has_a_way_to_care_for_it_and_something_never_to_do(of):
    kinds = [rule.kind for rule in RULES if rule.holds_on(of, None)]
    assert kinds.count(CareKind.NEVER) >= 2
    assert kinds.count(CareKind.CARE) >= 2


def test_wax_is_renewed_every_one_to_four_years():
    """National Park Service, Conserve O Gram 7/2, waxing furniture."""
    (wax,) = [r for r in of_kind(CareKind.CARE) if r.on == {"wax"}]
    assert "one to four years" in wax.text
    assert wax.source == "conserve-o-gram-7-2"


@pytest.mark.parametrize("word", ["face to face", "closed-cell foam", "corrugated", "newsprint"])
def test_packing_is_as_finishing_teachers_say(word: str):
    """A finishing-education page on packing and stacking, and trade answers on packaging."""
    (line,) = [r for r in of_kind(CareKind.PACKING) if word in r.text]
    assert line.source == "pack-and-stack"
