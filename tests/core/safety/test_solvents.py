"""The solvents on file against a second opinion, frozen in `solvents.csv` (its first lines)."""

from __future__ import annotations

import pytest

from finishlog.core.safety.keeping import how_kept
from finishlog.facts.load import load_facts
from tests.reference.solvents import frozen
from tests.rows import every_row

FACTS = load_facts()
SOLVENTS = FACTS.vapours.solvents
TOLD = frozen()
# Mixtures of which the library has no figures that could be held against ours.
MIXTURES = {"mineral-spirits", "naphtha"}
# Limits are the lowest found: what the program counts with is never over that of another list.
AT_MOST = {
    "lel_pct": lambda s: s.lel_pct,
    "flash_c": lambda s: s.flash_c,
    "boils_c": lambda s: s.boils_c,
    "day_ppm": lambda s: s.day_ppm,
    "short_ppm": lambda s: s.short_ppm or 0.0,
}
# How far off: masses as printed; densities at 20 or at 25 °C.
WITHIN = {
    "molar_mass_g_per_mol": (lambda s: s.molar_mass, 0.005),
    "density_g_per_ml": (lambda s: s.density, 0.03),
}


def test_no_solvent_is_without_a_second_opinion():
    assert {*TOLD} == {*SOLVENTS} - MIXTURES


@every_row("solvent", TOLD)
def test_what_it_is_agrees(solvent):
    for column, (ours, within) in WITHIN.items():
        known = TOLD[solvent][column]
        assert known is None or ours(SOLVENTS[solvent]) == pytest.approx(known, rel=within), column


@every_row("solvent", TOLD)
def test_no_limit_is_over_that_of_another_list(solvent):
    for column, ours in AT_MOST.items():
        known = TOLD[solvent][column]
        assert known is None or ours(SOLVENTS[solvent]) <= known * 1.0001 + 0.05, column


@every_row("solvent", TOLD)
def test_where_it_begins_to_boil_is_near_it(solvent):
    """A mixture begins lower: of turpentine 154 °C is in most tables (from memory)."""
    boils = TOLD[solvent]["boils_c"]
    assert boils is not None
    assert SOLVENTS[solvent].boils_c == pytest.approx(boils, abs=10)


@every_row(
    ("solvent", "category"),
    [
        ("acetone", "2"), ("toluene", "2"), ("ethanol", "2"), ("ethyl-acetate", "2"),
        ("naphtha", "2"), ("butyl-acetate", "2"), ("turpentine", "3"), ("mineral-spirits", "3"),
        ("butanol", "3"), ("limonene", "3"), ("xylene", "3"), ("butoxyethanol", "4"),
    ],
)  # fmt: skip
def test_the_category_of_a_solvent(solvent, category):
    """29 CFR 1910.106(a)(19), read; flash points of the solvents as read (`vapours.toml`)."""
    kept = how_kept([SOLVENTS[solvent]], FACTS.storage)
    assert kept is not None
    assert kept.category == category


def test_a_mixture_is_kept_as_what_burns_first_in_it():
    thinner = [solvent for solvent, _ in FACTS.vapours.of_carrier("butyl-acetate")]
    kept = how_kept(thinner, FACTS.storage)
    assert kept is not None
    assert (kept.solvent, kept.category) == ("acetone", "2")
    # Of each category both amounts are told, and no larger one where it burns more easily.
    most = {limit.where: limit.most_l for limit in kept.limits}
    assert len(most) == 2
    fourth = how_kept([SOLVENTS["butoxyethanol"]], FACTS.storage)
    assert fourth is not None
    assert all(most[limit.where] <= limit.most_l for limit in fourth.limits)


def test_what_holds_no_solvent_has_no_flash_point():
    assert how_kept([], FACTS.storage) is None
