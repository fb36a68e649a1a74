"""All facts, and all that the program says by itself, read once for what must never be said."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable, Iterator, Sequence
from functools import cache
from pathlib import Path
from typing import Any

import pytest

import finishlog
from tests.dangerous_words import WRONG, dated_law, sentences
from tests.rows import every_row

PACKAGE = Path(finishlog.__file__).parent
DATA = sorted((PACKAGE / "facts").rglob("*.toml"))
MODULES = sorted(PACKAGE.rglob("*.py"))
ROOT = PACKAGE.parent
PROSE = [ROOT / "README.md", ROOT / "DEVELOPERS.md"]
# Every answer that is kept as it was read: screens, walks through whole pieces, the rules.
PLAYED = sorted((ROOT / "tests/golden").rglob("*.txt"))
SAID = [*DATA, *MODULES, *PROSE, *PLAYED, *sorted((ROOT / "sample_data").glob("*.toml"))]


@cache
def texts(path: Path) -> list[str]:
    """Return the sentences of a file: values of facts, texts of a module, lines of a page."""
    text = path.read_text("utf-8")
    if path.suffix == ".toml":
        text = "\n".join(_leaves(tomllib.loads(text)))
    if path.suffix == ".py":
        text = "\n".join(match[1] for match in re.finditer(r'f?"([^"\n]{12,})"', text))
    return list(sentences(text))


def said(among: Sequence[Path], is_wrong: Callable[[str], object]) -> list[str]:
    """Return what should not be said, and in which file."""
    return [f"{path.name}: {each}" for path in among for each in texts(path) if is_wrong(each)]


def _leaves(value: Any) -> Iterator[str]:
    if isinstance(value, dict):
        for key, one in value.items():
            if key not in {"title", "words", "classes", "of", "hazard", "aliases", "source"}:
                yield from _leaves(one)
    elif isinstance(value, list):
        for one in value:
            yield from _leaves(one)
    elif isinstance(value, str):
        yield value


@pytest.mark.parametrize("wrong", WRONG)
def test_nothing_that_is_said(wrong: str):
    assert said(SAID, WRONG[wrong]) == []


@every_row(
    ("wrong", "sentence"),
    [
        ("brings chlorine near what makes it poison", each)
        for each in (
            "Rinse chlorine bleach off, then neutralise it with vinegar and water.",
            "Mix the hypochlorite with a little ammonia for more strength.",
            "After chlorine bleach go on with oxalic acid the same day.",
            "Wipe the chlorine bleach with alcohol, it dries faster.",
            "Follow laundry bleach with peroxide.",
        )
    ]
    + [
        ("praises", each)
        for each in (
            "An approved finish for toys.",
            "Mineral oil is harmless.",
            "By then there is no danger any more.",
            "Once cured it is non-toxic.",
        )
    ]
    + [
        ("calls something safe", each)
        for each in (
            "After three days the rags are safe.",
            "The room can safely be used again.",
            "Use a safer solvent.",
        )
    ]
    + [
        ("trusts what is worn", each)
        for each in (
            "With an organic-vapour mask you are protected.",
            "Gloves and a mask are enough.",
            "A cartridge blocks the vapour.",
        )
    ],
)
def test_the_reader_sees_it(wrong: str, sentence: str):
    assert WRONG[wrong](sentence)


@every_row(
    "sentence",
    [
        "Chlorine bleach with any acid makes poison gas: keep apart.",
        "Rinse chlorine bleach with plenty of water and nothing else.",
        "Rags lifted out of water are not safe yet.",
        "No mask is proof: its sheet names the kind.",
        "Keep solvent in closed original or safety cans.",
        "No time is an all-clear.",
        "Half mask: organic-vapour cartridges and prefilter, fit-tested, clean-shaven.",
    ],
)
def test_what_warns_is_left_alone(sentence: str):
    assert [why for why, is_wrong in WRONG.items() if is_wrong(sentence)] == []


def test_no_dated_law_is_given_as_if_it_held_everywhere():
    assert said(DATA, dated_law) == []


def test_the_reader_of_this_test_sees_a_law_without_its_place():
    assert dated_law("Paint from before 1978 may hold lead.")


# common practice: a nuisance mask is no respirator.
def test_no_dust_mask_is_called_fitted():
    assert said(SAID, lambda each: "fitted dust mask" in each) == []


# No screen shows an air flow: no sentence leans on one.
def test_no_sentence_leans_on_an_air_flow_that_nobody_shows():
    words = re.compile(r"air ?flow (shown|worked out)|look at both", re.I)
    assert said(SAID, words.search) == []
