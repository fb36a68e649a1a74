"""The safety data sheet of a product, through the commands. Shop and figures are invented."""

from __future__ import annotations

import shlex
from pathlib import Path

import pytest
from run import Finishlog

SHOP = """
room new shed --night 12C
air 18C 55% --room shed
room edit shed --size 60m3 --exhaust 300m3/h --has none
product new ridge --class spar-varnish
product new pair --class waterborne-two-part
part new boat/thwart --species teak --room shed
part new boat/knee --species larch --room shed
"""


@pytest.fixture
def shed(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path).played(SHOP)


def said(shop: Finishlog, typed: str) -> str:
    return shop.did(*shlex.split(typed)).out


def air(shop: Finishlog) -> dict[str, object]:
    asked = shlex.split("safety shed --of ridge --amount 100ml --json")
    return shop.did(*asked).document["answer"]["air"][0]


def test_its_figures_are_reckoned_with_and_named(shed: Finishlog):
    by_class = air(shed)
    said(shed, "product sheet ridge --solvent 50% --density 0.78 --limit 100ppm --lel 0.3%")
    by_sheet = air(shed)
    # Half of 0.78 kg in a litre, of 0.78 g/ml and 144 g/mol: 24.1 L a mole at 21 °C.
    assert by_sheet["air"]["vapour_l"] == pytest.approx(24.1 * 0.5 * 100 * 0.78 / 144)
    assert by_sheet["main"]["day_ppm"] == 100
    assert (by_class["by_sheet"], by_sheet["by_sheet"]) == (False, True)
    assert "as your sheet says" in said(shed, "safety shed --of ridge")
    said(shed, "undo")
    assert air(shed) == by_class
    assert "as your sheet says" not in said(shed, "safety shed --of ridge")


def test_less_than_its_class_is_used_and_said(shed: Finishlog):
    said(shed, "mix pair base:100ml hardener:10ml")
    assert "do not spray pair" in said(shed, "log thwart pair --method spray")
    said(shed, "undo")
    assert "less than its class: isocyanate" in said(
        shed, "product sheet pair --free-of isocyanate"
    )
    assert "do not spray" not in said(shed, "log thwart pair --method spray")
    said(shed, "product sheet ridge --flash 143F")
    assert "category 4" in said(shed, "safety ridge")
    about = said(shed, "safety pair")
    assert "left out, by your sheet alone" in about
    assert "\nISOCYANATE\n" not in about


def test_rags_go_by_the_sheet(shed: Finishlog):
    said(shed, "product sheet ridge --free-of 'self heating'")
    said(shed, "log knee ridge")
    assert "no rags are open" in said(shed, "rags")
    said(shed, "product sheet ridge --holds self-heating")
    assert "ridge" in said(shed, "rags")


def test_where_it_lies_is_shown_and_missing_is_one_note(shed: Finishlog, tmp_path: Path):
    file = tmp_path / "ridge.pdf"
    assert "(nothing lies there now)" in said(shed, f"product edit ridge --sds {file}")
    assert said(shed, "safety ridge").count("look for it") == 1
    file.write_text("invented")
    assert f"file  {file}\n" in said(shed, "safety ridge")
    assert str(file) not in said(shed, "log knee ridge")
    said(shed, "product edit ridge --sds ''")
    assert "YOUR SHEET" not in said(shed, "safety ridge")


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("ridge", "nothing is said"),
        ("ridge --lel 60%", "0.1 to 30 is possible"),
        ("ridge --limit 50", "50ppm"),
        ("ridge --solvent 45%", "--density 0.9"),
        ("ridge --carrier petrol", "no carrier"),
        ("ridge --free-of formaldehide", "did you mean formaldehyde"),
        ("ridge --free-of amine --holds amine", "in it and not in it"),
        ("ridge --density 90", "0.6 to 2.5 is possible"),
        ("ridge --flash 3800F", "0 to 600 is possible"),
    ],
)
def test_what_cannot_be_is_refused_in_one_line(typed: str, says: str, tmp_path: Path):
    shop = Finishlog(tmp_path).played(SHOP)
    refused = shop("product", "sheet", *shlex.split(typed))
    assert (refused.code, refused.out) == (2, "")
    assert says in refused.err
    assert len(refused.err.strip().splitlines()) == 1
