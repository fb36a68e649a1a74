"""The papers that a film is scuffed with: where a caution begins, held to what each class says."""

from __future__ import annotations

import re

from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()
SAYS = re.compile(r"(\d{3})(?: to (\d{3}))? grit")
# The class's own words for between its coats; stain, filler and paint of other kinds say none.
TOLD = {
    key: tuple(float(grit) for grit in found.groups() if grit)
    for key, of in FACTS.classes.items()
    if (found := SAYS.search(of.abrade)) is not None and of.builds_film
}
# Median grain in µm, ISO 6344 (from memory): P80 tears through a film of three coats, about 100 µm.
GRAIN_UM = {80: 201, 100: 162, 120: 125, 150: 100, 180: 82, 220: 68, 240: 58.5, 320: 46.2}


def test_most_classes_say_which_paper():
    assert len(TOLD) >= 20


@every_row("key", TOLD)
def test_what_a_class_says_is_never_a_caution(key: str):
    allowed = FACTS.preparation.grit_between(FACTS.finish_class(key))
    assert allowed is not None
    assert allowed.low <= min(TOLD[key])
    assert max(TOLD[key]) <= allowed.high


@every_row("key", TOLD)
def test_a_caution_begins_within_two_or_three_grades(key: str):
    """P150 to P180 before P220 (common practice), and no grain wider than a whole film is thick."""
    allowed = FACTS.preparation.grit_between(FACTS.finish_class(key))
    assert allowed is not None
    assert allowed.low >= min(TOLD[key]) / 2
    assert GRAIN_UM[int(allowed.low)] <= 100
