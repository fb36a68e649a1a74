"""How far a pace may lie from the label's: our own assumptions, and said to be."""

from __future__ import annotations

from math import exp
from pathlib import Path

import pytest

from finishlog.facts.load import load_facts
from tests.spoilt import read_spoilt

FIGURES = load_facts().pace


def test_nine_shops_in_ten_lie_where_the_basis_says():
    """exp(-+1.645 sd) of a log-normal pace."""
    assert exp(1.6449 * FIGURES.spread) == pytest.approx(1.78, abs=0.005)
    assert exp(-1.6449 * FIGURES.spread) == pytest.approx(0.56, abs=0.005)


def test_all_of_them_say_that_they_are_assumed():
    assert len(FIGURES.basis) == 6
    assert all(words.startswith("Our own assumption") for words in FIGURES.basis)


@pytest.mark.parametrize(
    ("was", "becomes"), [("0.35", "0"), ("scatter_ln", "scater_ln"), ("spread_ln = 0.35", "")]
)
def test_a_figure_that_is_none_is_refused(tmp_path: Path, was: str, becomes: str):
    with pytest.raises(ValueError, match=r"pace\.toml"):
        read_spoilt(tmp_path, "pace.toml", was, becomes)
