"""What stands on the pages of the published classes."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from run import Finishlog
from terminal_session import shown

from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()
# What no source prints is common practice or from memory, and each row says which.
BASES = ("published: ", "common practice", "from memory")

# What nobody told of, and a gas.
NEITHER_CAN_NOR_FILM = {"unknown", "ammonia-fume"}


@pytest.fixture
def program(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path)


def section(page: str, title: str) -> list[str]:
    """Return the lines under a title."""
    lines = page.splitlines()
    begin = next(n for n, line in enumerate(lines) if line.startswith(title)) + 1
    end = next((n for n in range(begin, len(lines)) if not lines[n].startswith("  ")), len(lines))
    return lines[begin:end]


def rows(page: str, title: str) -> dict[str, str]:
    """Return the figures under a title by their names; what stands under them is left out."""
    named = [re.split(r"  +", line.strip(), maxsplit=1) for line in section(page, title)]
    first = [line[2] != " " for line in section(page, title)]
    return {name[0]: name[1] for name, is_first in zip(named, first, strict=True) if is_first}


def test_looking_a_finish_up_makes_no_database(program: Finishlog):
    assert program.did("class", "list").err == ""
    assert program.did("class", "show", "conversion varnish").err == ""
    assert not program.database.exists()


def test_every_class_is_on_the_list_under_its_family(program: Finishlog):
    page = program.did("class", "list").out
    for of in FACTS.classes.values():
        assert any(line.split()[0] == of.key for line in section(page, of.family.upper()))


@every_row("key", list(FACTS.classes))
def test_every_figure_says_what_it_rests_on(program: Finishlog, key: str):
    page = program.did("class", "show", key).out
    of = FACTS.finish_class(key)
    hours = rows(page, "HOURS AT 23 °C, 50 % UNLESS SAID")
    assert len(hours) == len(of.stages) + 1 + (of.window.closes is not None)
    film = () if of.key in NEITHER_CAN_NOR_FILM else ("THE CAN AND THE FILM",)
    for title in ("HOURS AT", *film, "LIMITS AND CAUTIONS"):
        for name, words in rows(page, title).items():
            assert any(basis in words for basis in BASES), (name, words)


# Common practice: 150 to 350 ft2/gal, 3 to 5 mil wet, 4 to 5 mil dry in all.
def test_amounts_are_shown_in_the_persons_units(program: Finishlog):
    can = rows(program.did("class", "show", "conversion-varnish").out, "THE CAN")
    assert can["covers"].startswith("3.68 to 8.59 m²/L")
    assert can["wet film"].startswith("76.2 to 127 µm")
    for setting, unit in (("area", "ft2"), ("volume", "gal"), ("film", "mil")):
        program.did("settings", setting, unit)
    can = rows(program.did("class", "show", "conversion-varnish").out, "THE CAN")
    assert can["covers"].startswith("150 to 350 ft²/gal")
    assert can["wet film"].startswith("3 to 5 mil")
    assert can["dry film at most"].startswith("4 to 5 mil")


def test_limits_are_shown_in_the_persons_unit(program: Finishlog):
    assert "18.3 °C" in program.did("class", "show", "conversion-varnish").out
    program.did("settings", "temperature", "F")
    page = program.did("class", "show", "conversion-varnish").out
    # Common practice: 65 °F, the first night included.
    assert rows(page, "LIMITS AND CAUTIONS")["not colder than"].startswith("65 °F")
    assert "HOURS AT 73.4 °F, 50 %" in page


def test_a_source_that_differs_stands_under_the_figure_that_is_used(program: Finishlog):
    page = program.did("class", "show", "tung-oil").out
    lines = section(page, "HOURS AT")
    at = next(n for n, line in enumerate(lines) if line.strip().startswith("recoat"))
    # Woodworking magazine: a week between coats of tung oil.
    assert "3 d to 7 d" in lines[at]
    assert "published: Woodworking magazine, linseed and tung oil" in lines[at]
    assert "also 24 h to 3 d, common practice: not used" in lines[at + 2]


def test_a_film_that_wrinkles_when_it_is_late_says_so(program: Finishlog):
    page = program.did("class", "show", "conversion-varnish").out
    assert "may wrinkle" in rows(page, "LIMITS AND CAUTIONS")["recoated late"]


@pytest.mark.parametrize("key", ["shellac-waxy", "alkyd-varnish", "conversion-varnish"])
def test_at_80_columns_no_line_is_broken_by_the_terminal(program: Finishlog, key: str):
    lines = shown(program, "class", "show", key, NO_COLOR="1").lines
    plain = [re.sub(r"\x1b\[[0-9;]*m", "", line) for line in lines]
    assert max(map(len, plain)) <= 80
    # Nothing of a figure is cut: its words stand whole, one under the other.
    whole = " ".join(" ".join(line.split()) for line in plain)
    for figure in FACTS.finish_class(key).stages.values():
        assert figure.note in whole


def test_a_name_that_is_nearly_right_is_offered(program: Finishlog):
    answer = program("class", "show", "conversion varnsh")
    assert (answer.code, answer.out) == (3, "")
    assert "did you mean: conversion-varnish" in answer.err
    assert "finishlog class list" in program("class", "show", "granite").err
