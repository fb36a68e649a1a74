"""How far a coat goes, how thick it is, what stays of it, how long a can and a mix keep.

Copied in the units that the trade uses; the facts hold them in m²/L, µm and days, rounded to
three figures. Spread, wet film and shelf are `common practice`, solids by volume `from memory`.
"""

from __future__ import annotations

from typing import NamedTuple

import pytest

from finishlog.core.finish.classes import COMMON_PRACTICE, FROM_MEMORY, FinishClass, Range
from finishlog.core.published.sources import cited
from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()
CLASSES = {of.key: of for of in FACTS.classes.values()}
Ends = tuple[float, float] | None

# 1 US gallon 3.785412 L, 1 ft 0.3048 m exactly, 1 mil 25.4 µm exactly, 12 months 365 days.
M2_PER_L = 0.3048**2 / 3.785412
UM = 25.4
DAYS = 365 / 12


class Row(NamedTuple):
    spread_ft2_per_gal: Ends
    wet_film_mil: Ends
    solids_vol_pct: Ends
    shelf_months: Ends


TRADE = {
    "boiled-linseed-oil": Row((400, 600), (0.5, 2), (100, 100), (6, 24)),
    "tung-oil": Row((350, 500), (0.5, 2), (100, 100), (6, 24)),
    "heat-bodied-oil": Row((400, 600), (1, 2), (40, 60), (6, 24)),
    "oil-varnish-blend": Row((300, 500), (1, 3), (25, 40), (6, 24)),
    "hardwax-oil": Row((600, 1200), (0.7, 2), (60, 100), (6, 24)),
    "alkyd-varnish": Row((400, 500), (2, 4), (40, 50), (6, 24)),
    "oil-polyurethane": Row((400, 600), (2.5, 4), (40, 50), (6, 24)),
    "wiping-varnish": Row((500, 800), (1, 2), (20, 25), (6, 24)),
    "spar-varnish": Row((400, 500), (2, 4), (45, 55), (6, 24)),
    "shellac-1lb": Row((500, 700), (2, 3), (9.8, 9.8), (6, 6)),
    "shellac-2lb": Row((400, 600), (2, 4), (17.9, 17.9), (6, 6)),
    "shellac-3lb": Row((300, 500), (3, 5), (24.7, 24.7), (6, 6)),
    "shellac-waxy": Row((300, 500), (3, 5), (24.7, 35.3), (6, 6)),
    "french-polish": Row(None, (0, 0.5), (9.8, 17.9), (6, 6)),
    "lacquer-brushed": Row((250, 400), (4, 6), (16, 25), (12, 36)),
    "lacquer-sprayed": Row((150, 300), (3, 5), (14, 22), (12, 36)),
    "lacquer-cab-acrylic": Row((150, 300), (3, 5), (14, 22), (12, 36)),
    "lacquer-precatalysed": Row((150, 300), (3, 5), (18, 25), (6, 6)),
    "lacquer-postcatalysed": Row((150, 300), (3, 5), (20, 30), (12, 36)),
    "conversion-varnish": Row((150, 350), (3, 5), (28, 40), (12, 36)),
    "waterborne-clear": Row((350, 500), (3, 4), (25, 32), (12, 24)),
    "waterborne-oil-modified": Row((350, 500), (3, 4), (25, 32), (12, 24)),
    # From the least to the most of its kinds.
    "polyurethane-unknown": Row((350, 600), (2.5, 4), (25, 50), (6, 24)),
    "unknown": Row(None, None, None, None),
    "waterborne-two-part": Row((350, 500), (3, 5), (28, 35), (12, 24)),
    "tannin-sealer": Row((400, 600), (2, 4), (10, 20), (12, 24)),
    "lacquer-sanding-sealer": Row((200, 350), (3, 5), (13, 20), (12, 36)),
    "vinyl-sealer": Row((200, 350), (2, 4), (12, 20), (12, 36)),
    "wiping-stain": Row((400, 600), (1, 3), (15, 30), (6, 24)),
    "gel-stain": Row((300, 500), (1, 3), (30, 45), (6, 24)),
    "water-dye": Row((150, 300), (3, 6), (0, 2), (6, 12)),
    "alcohol-dye": Row((300, 500), (1, 2), (0, 2), (12, 36)),
    "paste-filler": Row((150, 300), None, (50, 65), (6, 24)),
    "water-filler": Row((150, 300), None, (50, 65), (12, 24)),
    "glaze": Row((600, 900), (0.5, 1), (20, 40), (6, 24)),
    "toner": Row((400, 800), (0.5, 2), (3, 12), (12, 36)),
    "washcoat": Row((500, 700), (2, 3), (5, 10), (12, 36)),
    "paste-wax": Row((800, 1500), None, (20, 35), (12, 36)),
    "milk-paint": Row((200, 400), (3, 5), (30, 40), None),
    "oil-enamel": Row((400, 500), (3, 4), (45, 55), (6, 24)),
    "latex-enamel": Row((350, 450), (4, 4), (32, 42), (12, 24)),
    "mineral-oil": Row((250, 500), None, (100, 100), (12, 60)),
    "soap": Row((400, 600), (2, 4), (2, 10), None),
    "ammonia-fume": Row(None, None, None, None),
    "dichromate-stain": Row((150, 250), None, None, None),
    "iron-vinegar": Row((150, 250), None, None, None),
    "lye-stain": Row((150, 250), None, None, None),
    "permanganate-stain": Row((150, 250), None, None, None),
    "tannin-wash": Row((150, 250), None, None, None),
    "bleach-oxalic": Row((150, 250), None, None, (12, 24)),
    "bleach-two-part": Row((150, 250), None, None, (12, 24)),
    "bleach-chlorine": Row((150, 250), None, None, (12, 24)),
    "pigmented-shellac": Row((350, 450), (3, 4), (28, 35), (12, 36)),
    "oil-primer": Row((300, 400), (3, 4), (45, 60), (6, 24)),
    "acrylic-primer": Row((300, 400), (4, 4), (32, 42), (12, 24)),
    "epoxy-seal": Row((250, 400), (2, 6), (60, 100), (12, 24)),
    # A pour of 3 to 6 mm: 1604.17 ft² mil to the gallon.
    "epoxy-pour": Row((6.8, 13.6), (118, 236), (100, 100), (12, 24)),
    "epoxy-filler": Row(None, None, (100, 100), (12, 24)),
    "putty-water": Row(None, None, (50, 70), (12, 24)),
    "putty-solvent": Row(None, None, (35, 60), (12, 24)),
    "wax-stick": Row(None, None, (100, 100), (36, 120)),
}
each = every_row(("key", "row"), TRADE.items(), ids=TRADE)


def agrees(held: Range | None, printed: Ends, factor: float = 1) -> bool:
    """Tell whether a class holds a pair of ends, as its figure or as a reading beside it."""
    if held is None or printed is None:
        return held is None and printed is None
    want = [factor * end for end in printed]
    return any([r.low, r.high] == pytest.approx(want, rel=5e-3) for r in (held, *held.also))


def test_every_finish_is_in_the_table():
    assert set(TRADE) == set(CLASSES)


@each
def test_the_spread_of_a_coat(key, row):
    spread = CLASSES[key].spread_m2_per_l
    assert agrees(spread, row.spread_ft2_per_gal, M2_PER_L)
    assert spread is None or spread.source == COMMON_PRACTICE


@each
def test_the_wet_film_of_a_coat(key, row):
    wet = CLASSES[key].wet_film_um
    assert agrees(wet, row.wet_film_mil, UM)
    assert wet is None or wet.source == COMMON_PRACTICE


@each
def test_the_solids_by_volume(key, row):
    solids = CLASSES[key].solids_vol_pct
    assert agrees(solids, row.solids_vol_pct)
    assert solids is None or solids.source == FROM_MEMORY


@each
def test_how_long_an_opened_can_keeps(key, row):
    if row.shelf_months is not None:
        assert agrees(CLASSES[key].shelf_opened_d, row.shelf_months, DAYS)


# Common practice: soap in water keeps some days. Essay on milk paint: the powder keeps without
# limit.
def test_soap_keeps_days_once_mixed_and_milk_paint_keeps_as_powder():
    assert CLASSES["soap"].shelf_opened_d.high <= 7
    assert CLASSES["milk-paint"].shelf_opened_d is None
    assert any("powder keeps without limit" in note for note in CLASSES["milk-paint"].notes)


# Woodworking reference on shellac: six months after dissolving; other pages 3 months to a year.
@pytest.mark.parametrize("of", [c for c in CLASSES.values() if c.family == "shellac"])
def test_dissolved_shellac_is_relied_on_no_longer_than_the_shortest_source(of):
    assert of.shelf_opened_d.source == "shellac-reference"
    assert of.shelf_opened_d.low < 182 <= of.shelf_opened_d.high


# Woodworking magazine, oily exotics: catalysed lacquer about six months in the can.
def test_precatalysed_lacquer_keeps_six_months():
    shelf = CLASSES["lacquer-precatalysed"].shelf_opened_d
    assert (shelf.high, shelf.source) == (182, "oily-exotics-article")


# Common practice, hours once mixed. Essay on milk paint: days at best, 24 to 48 h.
@pytest.mark.parametrize(
    ("key", "low", "high", "source"),
    [
        ("lacquer-postcatalysed", 8, 72, COMMON_PRACTICE),
        ("conversion-varnish", 8, 24, COMMON_PRACTICE),
        ("waterborne-two-part", 2, 8, COMMON_PRACTICE),
        ("milk-paint", 24, 48, "milk-paint-essay"),
    ],
)
def test_a_mix_lives_for_hours(key, low, high, source):
    pot = CLASSES[key].pot_life_h
    assert (pot.low_h, pot.high_h, pot.source) == (low, high, source)


# US CID A-A-1546A, A-A-2850 and A-A-1572: nonvolatile at least 45, 30 and 21 %.
@pytest.mark.parametrize(
    ("key", "least", "source"),
    [
        ("alkyd-varnish", 45, "cid-a-a-1546"),
        ("waterborne-clear", 30, "cid-a-a-2850"),
        ("lacquer-sanding-sealer", 21, "cid-a-a-1572"),
    ],
)
def test_the_solids_that_a_specification_asks_for(key, least, source):
    solids = CLASSES[key].solids_wt_pct
    assert (solids.low, solids.source) == (least, source)


# Trade questions and answers: 4 to 5 mil of pre-catalysed lacquer in all, or it may shatter.
def test_a_precatalysed_film_is_no_thicker_than_five_mil():
    limit = CLASSES["lacquer-precatalysed"].dry_film_limit_um
    assert limit.source == "precat-film-build-q-and-a"
    assert (limit.low, limit.high) == pytest.approx((4 * UM, 5 * UM), rel=5e-3)


# US Army TM 43-0139: oil paint on new wood, 500 to 600 ft² to the gallon.
def test_the_army_spreads_oil_paint_further():
    (army,) = CLASSES["oil-enamel"].spread_m2_per_l.also
    assert army.source == "tm-43-0139"
    assert (army.low, army.high) == pytest.approx((500 * M2_PER_L, 600 * M2_PER_L), rel=5e-3)


# What is printed of the number of coats.
@pytest.mark.parametrize(
    ("key", "coats", "source"),
    [
        ("boiled-linseed-oil", "4 to 12", "homemakers-chat-1941"),
        ("tung-oil", "5 to 6", "tung-and-linseed-article"),
        ("oil-varnish-blend", "3", "danish-type-oil-entry"),
        ("alkyd-varnish", "2 to 4", "lumber-and-its-uses"),
        ("paste-filler", "1 to 2", "essentials-1908"),
        ("paste-wax", "1 to 2", "essentials-1908"),
        ("latex-enamel", "1 of primer and 1 to 2", "mil-hdbk-1110"),
    ],
)
def test_the_coats_that_a_source_counts(key, coats, source):
    held = CLASSES[key].coats
    assert held.startswith(f"{coats} ")
    assert cited([held]) == (source,)


# Arithmetic: a litre on a square metre is 1000 µm thick, so no coat is thicker than what was put
# on; at 400 ft² to the gallon that is 4.01 mil.
def test_four_hundred_square_feet_to_the_gallon_is_four_mil_wet():
    assert 1000 / (400 * M2_PER_L) / UM == pytest.approx(4.01, abs=0.005)


def measured() -> list[FinishClass]:
    return [of for of in CLASSES.values() if of.spread_m2_per_l and of.wet_film_um]


@every_row("of", measured(), ids=lambda c: c.key)
def test_no_film_is_thicker_than_the_liquid_that_made_it(of):
    assert of.spread_m2_per_l.low * of.wet_film_um.low <= 1000


BRUSHED = ("alkyd-varnish", "oil-polyurethane", "spar-varnish", "oil-enamel", "latex-enamel")


@every_row("key", [*BRUSHED, "waterborne-clear", "shellac-2lb", "milk-paint"])
def test_what_is_brushed_and_not_wiped_leaves_the_film_that_its_spread_says(key):
    spread, wet = CLASSES[key].spread_m2_per_l, CLASSES[key].wet_film_um
    thin, thick = 1000 / spread.high, 1000 / spread.low
    assert wet.low <= 1.02 * thick
    assert thin <= 1.02 * wet.high
