"""Amounts of every class: how far a litre goes, how thick, what stays, how long it keeps.

The table is copied in the units that its readings were collected in, and stands apart from the
facts, so that a slip of a conversion shows. Its basis: spread, wet film and life in the can common
practice but for the six months of catalysed lacquer (a woodworking magazine on oily exotic woods)
and of shellac (a woodworking reference page); solids from memory.
"""

from __future__ import annotations

import pytest

from finishlog.core.finish.classes import COMMON_PRACTICE, FROM_MEMORY, Range
from finishlog.core.published.sources import by_ids
from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()
Reading = tuple[float, float] | None

# NIST SP 811: 1 ft2 = 0.09290304 m2, 1 US gal = 3.785411784 L, 1 mil = 25.4 um.
M2_PER_L = 0.09290304 / 3.785411784
UM = 25.4
# A month is a twelfth of 365 days; facts hold whole days.
DAYS = 365 / 12

# ft2/US gal, mil wet, % solids by volume, months once opened (or mixed, or dissolved).
READINGS: dict[str, tuple[Reading, Reading, Reading, Reading]] = {
    "alcohol-dye": ((300, 500), (1, 2), (0, 2), (12, 36)),
    "alkyd-varnish": ((400, 500), (2, 4), (40, 50), (6, 24)),
    "bleach-chlorine": ((150, 250), None, None, (12, 24)),
    "ammonia-fume": (None, None, None, None),
    "dichromate-stain": ((150, 250), None, None, None),
    "iron-vinegar": ((150, 250), None, None, None),
    "lye-stain": ((150, 250), None, None, None),
    "permanganate-stain": ((150, 250), None, None, None),
    "tannin-wash": ((150, 250), None, None, None),
    "bleach-oxalic": ((150, 250), None, None, (12, 24)),
    "bleach-two-part": ((150, 250), None, None, (12, 24)),
    "boiled-linseed-oil": ((400, 600), (0.5, 2), (100, 100), (6, 24)),
    "conversion-varnish": ((150, 350), (3, 5), (28, 40), (12, 36)),
    "french-polish": (None, (0, 0.5), (9.8, 17.9), (6, 6)),
    "gel-stain": ((300, 500), (1, 3), (30, 45), (6, 24)),
    "glaze": ((600, 900), (0.5, 1), (20, 40), (6, 24)),
    "hardwax-oil": ((600, 1200), (0.7, 2), (60, 100), (6, 24)),
    "heat-bodied-oil": ((400, 600), (1, 2), (40, 60), (6, 24)),
    "lacquer-brushed": ((250, 400), (4, 6), (16, 25), (12, 36)),
    "lacquer-cab-acrylic": ((150, 300), (3, 5), (14, 22), (12, 36)),
    "lacquer-postcatalysed": ((150, 300), (3, 5), (20, 30), (12, 36)),
    "lacquer-precatalysed": ((150, 300), (3, 5), (18, 25), (6, 6)),
    "lacquer-sanding-sealer": ((200, 350), (3, 5), None, (12, 36)),
    "lacquer-sprayed": ((150, 300), (3, 5), (14, 22), (12, 36)),
    "latex-enamel": ((350, 450), (4, 4), (32, 42), (12, 24)),
    "milk-paint": ((200, 400), (3, 5), (30, 40), None),
    "mineral-oil": ((250, 500), None, (100, 100), (12, 60)),
    "oil-enamel": ((400, 500), (3, 4), (45, 55), (6, 24)),
    "oil-polyurethane": ((400, 600), (2.5, 4), (40, 50), (6, 24)),
    "oil-varnish-blend": ((300, 500), (1, 3), (25, 40), (6, 24)),
    "paste-filler": ((150, 300), None, (50, 65), (6, 24)),
    "paste-wax": ((800, 1500), None, (20, 35), (12, 36)),
    "pigmented-shellac": ((350, 450), (3, 4), (28, 35), (12, 36)),
    "acrylic-primer": ((300, 400), (4, 4), (32, 42), (12, 24)),
    "epoxy-filler": (None, None, (100, 100), (12, 24)),
    "epoxy-pour": ((6.8, 13.6), (118, 236), (100, 100), (12, 24)),
    "epoxy-seal": ((250, 400), (2, 6), (60, 100), (12, 24)),
    "oil-primer": ((300, 400), (3, 4), (45, 60), (6, 24)),
    "putty-solvent": (None, None, (35, 60), (12, 24)),
    "putty-water": (None, None, (50, 70), (12, 24)),
    "wax-stick": (None, None, (100, 100), (36, 120)),
    # From the least to the most of its kinds.
    "polyurethane-unknown": ((350, 600), (2.5, 4), (25, 50), (6, 24)),
    "shellac-1lb": ((500, 700), (2, 3), (9.8, 9.8), (6, 6)),
    "shellac-2lb": ((400, 600), (2, 4), (17.9, 17.9), (6, 6)),
    "shellac-3lb": ((300, 500), (3, 5), (24.7, 24.7), (6, 6)),
    "shellac-waxy": ((300, 500), (3, 5), (24.7, 35.3), (6, 6)),
    "soap": ((400, 600), (2, 4), (2, 10), None),
    "spar-varnish": ((400, 500), (2, 4), (45, 55), (6, 24)),
    "tannin-sealer": ((400, 600), (2, 4), (10, 20), (12, 24)),
    "toner": ((400, 800), (0.5, 2), (3, 12), (12, 36)),
    "tung-oil": ((350, 500), (0.5, 2), (100, 100), (6, 24)),
    "unknown": (None, None, None, None),
    "vinyl-sealer": ((200, 350), (2, 4), (12, 20), (12, 36)),
    "washcoat": ((500, 700), (2, 3), (5, 10), (12, 36)),
    "water-dye": ((150, 300), (3, 6), (0, 2), (6, 12)),
    "water-filler": ((150, 300), None, (50, 65), (12, 24)),
    "waterborne-clear": ((350, 500), (3, 4), (25, 32), (12, 24)),
    "waterborne-oil-modified": ((350, 500), (3, 4), (25, 32), (12, 24)),
    "waterborne-two-part": ((350, 500), (3, 5), (28, 35), (12, 24)),
    "wiping-stain": ((400, 600), (1, 3), (15, 30), (6, 24)),
    "wiping-varnish": ((500, 800), (1, 2), (20, 25), (6, 24)),
}


def same(found: Range | None, reading: Reading, size: float, digits: float) -> bool:
    """Tell whether a range or one that stands beside it is the reading, to its own digits."""
    if reading is None or found is None:
        return False
    wanted = pytest.approx([end * size for end in reading], rel=digits)
    return any([one.low, one.high] == wanted for one in (found, *found.also))


def test_every_class_has_its_row():
    assert set(READINGS) == set(FACTS.classes)


@every_row("key", READINGS)
def test_spread_and_film_are_the_readings_in_si(key):
    of, (spread, film, _, _) = FACTS.finish_class(key), READINGS[key]
    assert (of.spread_m2_per_l is None) == (spread is None)
    assert spread is None or same(of.spread_m2_per_l, spread, M2_PER_L, 0.005)
    assert (of.wet_film_um is None) == (film is None)
    assert film is None or same(of.wet_film_um, film, UM, 0.005)


@every_row("key", [k for k, row in READINGS.items() if row[2]])
def test_solids_by_volume_are_from_memory_and_say_so(key):
    solids = FACTS.finish_class(key).solids_vol_pct
    assert same(solids, READINGS[key][2], 1, 1e-9)
    assert solids is not None
    assert solids.source == FROM_MEMORY


@every_row("key", [k for k, row in READINGS.items() if row[3]])
def test_what_is_open_keeps_no_longer_than_the_reading(key):
    keeps, months = FACTS.finish_class(key).shelf_opened_d, READINGS[key][3]
    assert keeps is not None
    assert months is not None
    assert keeps.low <= months[0] * DAYS
    # Of dissolved shellac one page gives a year: the range holds it, the short end counts.
    assert keeps.high <= max(months[1], 12) * DAYS


# Woodworking magazine, finishing oily exotic woods: catalysed lacquer keeps about six months.
# Trade press: past its date more catalyst does not bring it back.
def test_precatalysed_lacquer_keeps_six_months_and_is_not_revived():
    of = FACTS.finish_class("lacquer-precatalysed")
    assert of.shelf_opened_d == Range(
        182, 182, "oily-exotics-article", of.shelf_opened_d.note if of.shelf_opened_d else ""
    )
    assert any(
        "does not bring it back (catalysed-shelf-dates)" in by_ids(note) for note in of.notes
    )


# Woodworking reference page: about six months after dissolving shellac no longer dries hard.
@pytest.mark.parametrize(
    "key", ["shellac-1lb", "shellac-2lb", "shellac-3lb", "shellac-waxy", "french-polish"]
)
def test_dissolved_shellac_keeps_about_six_months_and_the_shorter_reading_counts(key):
    keeps = FACTS.finish_class(key).shelf_opened_d
    assert keeps is not None
    assert same(keeps, (6, 6), DAYS, 0.005)
    assert keeps.low < 182


# Arithmetic, both densities from memory: alcohol 6.6 lb/US gal, resin of specific gravity 1.10
# (9.17 lb/US gal); a cut is pounds of resin to a US gallon of alcohol.
@pytest.mark.parametrize(
    ("key", "low_cut", "high_cut"),
    [
        ("shellac-1lb", 1, 1),
        ("shellac-2lb", 2, 2),
        ("shellac-3lb", 3, 3),
        ("shellac-waxy", 3, 5),
        ("french-polish", 1, 2),
    ],
)
def test_solids_of_shellac_follow_from_its_cut(key, low_cut, high_cut):
    of = FACTS.finish_class(key)
    volume = [100 * (cut / 9.17) / (1 + cut / 9.17) for cut in (low_cut, high_cut)]
    assert of.solids_vol_pct is not None
    assert [of.solids_vol_pct.low, of.solids_vol_pct.high] == pytest.approx(volume, abs=0.06)
    if of.solids_wt_pct is not None:
        weight = 100 * low_cut / (low_cut + 6.6)
        assert of.solids_wt_pct.low == pytest.approx(weight, abs=0.5)


# US CID A-A-1546A: rubbing varnish at least 45 % by weight. A-A-2850: waterborne clear at least
# 30 % by weight; its test film is 1.5 mil wet.
def test_what_the_specifications_ask_of_solids_stands_beside_as_weight():
    varnish = FACTS.finish_class("alkyd-varnish").solids_wt_pct
    clear = FACTS.finish_class("waterborne-clear")
    assert varnish is not None
    assert (varnish.low, varnish.source) == (45, "cid-a-a-1546")
    assert clear.solids_wt_pct is not None
    assert (clear.solids_wt_pct.low, clear.solids_wt_pct.source) == (30, "cid-a-a-2850")
    assert same(clear.wet_film_um, (1.5, 1.5), UM, 0.005)


# Trade questions and answers on pre-catalysed lacquer: 4 to 5 mil dry in all, or the film may
# shatter. The same for the other catalysed ones is common practice.
@pytest.mark.parametrize(
    ("key", "source"),
    [
        ("lacquer-precatalysed", "precat-film-build-q-and-a"),
        ("lacquer-postcatalysed", COMMON_PRACTICE),
        ("conversion-varnish", COMMON_PRACTICE),
    ],
)
def test_a_catalysed_film_is_no_thicker_than_4_to_5_mil(key, source):
    limit = FACTS.finish_class(key).dry_film_limit_um
    assert same(limit, (4, 5), UM, 0.005)
    assert limit is not None
    assert limit.source == source


# Common practice: a mix of conversion varnish 8 to 24 h, post-catalysed lacquer 8 to 72 h, two-part
# waterborne 2 to 8 h.
@pytest.mark.parametrize(
    ("key", "low", "high"),
    [
        ("conversion-varnish", 8, 24),
        ("lacquer-postcatalysed", 8, 72),
        ("waterborne-two-part", 2, 8),
        # Minutes, not hours: brushed 15 to 45, poured 30 to 60.
        ("epoxy-seal", 0.25, 0.75),
        ("epoxy-pour", 0.5, 1),
        ("epoxy-filler", 0.25, 0.75),
    ],
)
def test_a_mix_lives_for_hours(key, low, high):
    pot = FACTS.finish_class(key).pot_life_h
    assert pot is not None
    assert (pot.low_h, pot.high_h, pot.source) == (low, high, COMMON_PRACTICE)
