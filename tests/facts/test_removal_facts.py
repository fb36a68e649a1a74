"""How films come off: every family has a way, the mildest first. common practice throughout."""

from __future__ import annotations

import pytest

from finishlog.core.findings import Level
from finishlog.core.published.removal import removal_finding, removal_of
from finishlog.facts.load import load_facts
from tests.rows import every_row
from tests.worded_in import remedy

FACTS = load_facts()
FAMILIES = {FACTS.finish_class(key).family for key in list(FACTS.classes)}


def test_a_family_stands_in_one_ladder_only_and_is_one_that_there_is():
    named = [family for each in FACTS.removals for family in each.families]
    assert len(named) == len(set(named))
    assert set(named) <= FAMILIES


@every_row("family", sorted(FAMILIES))
def test_every_family_comes_off_somehow(family: str):
    finding = removal_finding(family, FACTS.removals)
    assert finding.level is Level.NOTE
    assert finding.source == "common practice"
    assert remedy(finding)


@pytest.mark.parametrize(
    ("family", "ladder"),
    [
        ("shellac", ["alcohol"]),
        ("lacquer", ["lacquer thinner", "stripper"]),
        ("oil", ["mineral spirits", "lacquer thinner", "stripper"]),
        ("catalysed", ["scraper", "stripper"]),
    ],
)
def test_what_dissolves_it_comes_before_the_stripper(family: str, ladder: list[str]):
    """Shellac in alcohol, lacquer in its thinner; young oil in spirits. common practice"""
    steps = removal_of(family, FACTS.removals).ladder
    assert len(steps) == len(ladder)
    assert all(word in step for word, step in zip(ladder, steps, strict=True))
