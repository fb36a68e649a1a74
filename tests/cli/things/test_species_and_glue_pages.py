"""`species` and `glue`: every figure with its basis, and what the person's finishes want."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from run import Finishlog, furnished
from terminal_session import shown

from finishlog import errors
from finishlog.facts.load import load_facts

FACTS = load_facts()
COLOUR = re.compile(r"\x1b\[[0-9;]*m")


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return furnished(tmp_path)


@pytest.fixture
def empty(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path)


def section(out: str, title: str) -> list[str]:
    """Return the lines under a title, up to the next one at the margin."""
    lines = out.splitlines()
    start = next(n for n, line in enumerate(lines) if line.startswith(title)) + 1
    rest = lines[start:]
    end = next((n for n, line in enumerate(rest) if not line.startswith(" ")), len(rest))
    return rest[:end]


def test_every_wood_is_listed_with_what_sets_it_apart(empty: Finishlog):
    out = empty.did("species", "list").out
    assert len(out.splitlines()) == len(FACTS.species)
    assert re.search(r"^teak +teak +oily$", out, re.MULTILINE)
    assert re.search(r"^red-oak .* filler, tannin$", out, re.MULTILINE)


# Wood Handbook, tables 13-5 and 16-1; woodworking magazine, April 2004, which woods blotch.
def test_a_wood_shows_each_property_with_its_source(empty: Finishlog):
    out = empty.did("species", "show", "cherry").out
    assert "0.248 %" in out
    assert "0.126 %" in out
    nature = section(out, "WHAT IT IS")
    assert any("pores" in x and "diffuse-porous" in x and "table 16-1" in x for x in nature)
    assert any("stain" in x and "blotches" in x and "April 2004" in x for x in nature)
    assert any("tannin" in x and "from memory" in x for x in nature)


def test_a_wood_of_which_no_movement_is_held_says_nothing_of_it(empty: Finishlog):
    out = empty.did("species", "show", "oak").out
    assert "HOW FAR IT MOVES" not in out
    assert "name the group" in out


def test_what_a_persons_own_finishes_want_comes_first(shop: Finishlog):
    """The shop has waterborne and hardwax oil: both want shellac on teak, shellac wants nothing."""
    out = shop.did("species", "show", "teak").out
    mine = "\n".join(section(out, "YOUR FINISHES ON IT"))
    assert "barrier  oil: The wood's extractives keep an oxidising finish from curing" in mine
    assert "barrier  topcoat: The finish dries but loses its grip" in mine
    assert "Wipe with solvent and within minutes" in mine
    assert "sealer" not in mine
    others = "\n".join(section(out, "OTHER FINISHES ON IT"))
    assert "thinned by half" in others
    assert out.index("YOUR FINISHES") < out.index("OTHER FINISHES")


def test_water_raises_the_grain_of_every_wood(shop: Finishlog):
    mine = section(shop.did("species", "show", "ash").out, "YOUR FINISHES ON IT")
    assert any("topcoat: Water raises the grain." in line for line in mine)
    assert any("three fast finishes" in line for line in mine)


def test_a_finish_that_was_put_away_is_no_longer_the_persons(shop: Finishlog):
    shop.did("product", "new", "tung", "--class", "tung-oil")
    teak = ("species", "show", "teak")
    assert "oil, tung: The wood's extractives" in shop.did(*teak).out
    shop.did("product", "archive", "tung")
    assert "oil: The wood's extractives" in shop.did(*teak).out


def test_what_holds_only_in_places_says_where(empty: Finishlog):
    where = "\n".join(section(empty.did("species", "show", "red oak").out, "WHERE THERE IS"))
    for words in ("steel wool or iron: Steel wool leaves iron", "end grain:", "knots:"):
        assert words in where


@pytest.mark.parametrize("words", [["species", "show", "ash"], ["glue", "show", "epoxy"]])
def test_looking_something_up_makes_no_database(empty: Finishlog, words: list[str]):
    answer = empty.did(*words)
    assert answer.err == ""
    assert not empty.database.exists()


def test_every_glue_is_listed_with_what_it_promises(empty: Finishlog):
    out = empty.did("glue", "list").out
    assert re.search(r"yellow PVA +5 min +1 h +24 h$", out, re.MULTILINE)
    assert re.search(r"epoxy +2 min +2 d +7 d$", out, re.MULTILINE)
    assert len(out.splitlines()) == len(FACTS.glues) + 1


# Woodworking reference table; US Navy NAVEDTRA 14119; university extension chapter.
def test_a_glue_shows_each_figure_with_its_source(empty: Finishlog):
    out = empty.did("glue", "show", "yellow pva").out
    assert re.search(r"open +5 min to 10 min +published: Woodworking reference table", out)
    assert re.search(r"in clamps +30 min to 1 h +published: Woodworking reference table", out)
    assert re.search(r"level a joint +7 d +published: University extension chapter", out)
    assert re.search(r"not colder than +10 °C +published: US Navy NAVEDTRA 14119", out)
    assert re.search(r"sand, finish +24 h +common practice", out)


def test_warmth_is_shown_in_the_persons_own_unit(shop: Finishlog):
    shop.did("settings", "temperature", "F")
    out = shop.did("glue", "show", "white pva").out
    assert re.search(r"not colder than +50 °F", out)
    assert re.search(r"wood at +70 °F", out)


def test_seconds_stay_seconds(empty: Finishlog):
    assert "2 s to 4 h" in empty.did("glue", "show", "cyanoacrylate").out


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["species", "show", "chery"], "cherry"),
        (["species", "show", "mpale"], "maple"),
        (["species", "show", "qqq"], "finishlog species list"),
        (["species", "show", "white"], "white-oak"),
        (["glue", "show", "gum"], "yellow-pva"),
        (["glue", "show", "hide"], "liquid-hide"),
    ],
)
def test_a_name_that_nobody_knows_is_refused_with_what_to_type(
    empty: Finishlog, words: list[str], says: str
):
    answer = empty(*words)
    assert answer.code == errors.NO_SUCH_THING
    assert says in answer.err
    assert len(answer.err.splitlines()) == 1


@pytest.mark.parametrize(
    "words",
    [["species", "show", "teak"], ["species", "list"], ["glue", "show", "epoxy"], ["glue", "list"]],
    ids=" ".join,
)
def test_a_page_fits_eighty_columns(shop: Finishlog, words: list[str]):
    session = shown(shop, *words, columns=80)
    assert session.code == 0
    lines = [COLOUR.sub("", line) for line in session.lines]
    assert max(map(len, lines)) <= 80
    assert "".join("".join(lines).split()) == "".join(shop.did(*words).out.split())


def test_every_wood_and_every_glue_has_its_page(empty: Finishlog):
    for wood in FACTS.species:
        assert f"({wood.key})" in empty.did("species", "show", wood.key).out
    for glue in FACTS.glues:
        assert f"({glue.key})" in empty.did("glue", "show", glue.key).out
