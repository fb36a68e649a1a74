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

PACKAGE = Path(finishlog.__file__).parent
DATA = sorted((PACKAGE / "facts").rglob("*.toml"))
MODULES = sorted(PACKAGE.rglob("*.py"))
README = PACKAGE.parent / "README.md"
SCREENS = sorted((PACKAGE.parent / "tests/golden/screens").glob("*.txt"))
SAID = [*DATA, *MODULES, README, *SCREENS]

_CHLORINE = re.compile(r"chlorine bleach|hypochlorite", re.I)
_NEVER_WITH_IT = re.compile(r"\b(vinegar|acids?|oxalic|ammonia|peroxide|alcohol|acetone)\b", re.I)
# Words that keep them apart, or say what comes of it.
_APART = re.compile(
    r"\b(never|not?|nothing|none|poisons?|chloroform|gas|away|apart|wrong|dangerous|violent|beside|before|meets?"
    r"|leaves?|stop)\b",
    re.I,
)
# A year of a law holds somewhere: the place stands in the same sentence.
_LAW_YEAR = re.compile(
    r"\b(ban(ned)?|federal|law|rules?|codes?|lead|limit(ed)?)\b.*\b(19|20)\d\d\b"
    r"|\b(19|20)\d\d\b.*\b(ban(ned)?|federal|law|lead)\b",
    re.I,
)
_PLACE = re.compile(r"\b(US|Europe(an)?|EU|Canada|Ontario|UK|United States|ask where you are)\b")


@cache
def texts(path: Path) -> list[str]:
    """Return the sentences of a file: values of facts, texts of a module, lines of a page."""
    text = path.read_text("utf-8")
    if path.suffix == ".toml":
        return list(_leaves(tomllib.loads(text)))
    if path.suffix == ".py":
        return [match[1] for match in re.finditer(r'f?"([^"\n]{12,})"', text)]
    return text.split(". ")


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


def bad(sentence: str) -> bool:
    """Tell whether it brings chlorine bleach together with what makes it poison."""
    both = _CHLORINE.search(sentence) and _NEVER_WITH_IT.search(sentence)
    return bool(both) and not _APART.search(sentence)


@pytest.mark.parametrize(
    "sentence",
    [
        "Rinse chlorine bleach off, then neutralise it with vinegar and water.",
        "Mix the hypochlorite with a little ammonia for more strength.",
        "After chlorine bleach go on with oxalic acid the same day.",
    ],
)
def test_the_reader_of_this_test_sees_bad_advice(sentence: str):
    assert bad(sentence)


def test_nothing_brings_chlorine_bleach_near_acid_ammonia_or_peroxide():
    assert said(SAID, bad) == []


def test_nothing_is_called_approved_or_certified_safe():
    words = re.compile(r"\b(approved|certified safe|perfectly safe|guaranteed)\b", re.I)
    assert said(SAID, words.search) == []


def dated_law(sentence: str) -> bool:
    """Tell whether a law is given by its year and without its place."""
    return bool(_LAW_YEAR.search(sentence)) and not _PLACE.search(sentence)


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
