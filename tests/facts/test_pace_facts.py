"""How far a pace may lie from the label's: our own assumptions, and said to be."""

from __future__ import annotations

from math import exp
from pathlib import Path

import pytest

from finishlog.facts.load import HERE, Facts
from finishlog.facts.pace_file import read_pace

FIGURES = Facts().pace


def test_nine_shops_in_ten_lie_where_the_basis_says():
    """exp(-+1.645 sd) of a log-normal pace."""
    assert exp(1.6449 * FIGURES.spread) == pytest.approx(1.78, abs=0.005)
    assert exp(-1.6449 * FIGURES.spread) == pytest.approx(0.56, abs=0.005)


def test_both_say_that_they_are_assumed():
    assert len(FIGURES.basis) == 2
    assert all(words.startswith("Our own assumption") for words in FIGURES.basis)


@pytest.mark.parametrize(
    ("was", "becomes"),
    [("assumed = true", "assumed = false"), ("0.35", "0"), ("value = 0.15", "valu = 0.15")],
)
def test_a_figure_that_does_not_say_so_is_refused(tmp_path: Path, was: str, becomes: str):
    path = tmp_path / "pace.toml"
    text = Path(HERE, "pace.toml").read_text("utf-8")
    path.write_text(text.replace(was, becomes, 1), "utf-8")
    with pytest.raises(ValueError, match=r"pace\.toml"):
        read_pace(str(path))
