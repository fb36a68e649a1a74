"""How much dry film a coat leaves: wet film times solids by volume.

US customary arithmetic: 1 US gal over 1 ft2 is 1604.2 mil wet; at 400 ft2/gal and 30 % solids by
volume that is 1.20 mil dry. The class and its range are invented to give those figures.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from finishlog.core.film.build import dry_um, film_build, usual_dry_film_um
from finishlog.core.finish.classes import Range
from finishlog.core.log.words import Operation
from tests.rows import every_row
from tests.shop_of import FACTS, Story

MIL_UM = 25.4
# Usual coats of each at most; what they build must lie within what the film bears. Trade Q&A on
# film build of catalysed lacquer: 4 to 5 mil dry in all; the others common practice.
USUAL_AT_MOST = {
    "alkyd-varnish": 4, "oil-polyurethane": 3, "spar-varnish": 8, "wiping-varnish": 8,
    "heat-bodied-oil": 5, "waterborne-clear": 4, "waterborne-two-part": 3, "shellac-2lb": 6,
    "shellac-3lb": 4, "shellac-waxy": 12, "lacquer-sanding-sealer": 2, "lacquer-sprayed": 5,
    "lacquer-cab-acrylic": 5, "lacquer-brushed": 4, "lacquer-precatalysed": 3,
    "lacquer-postcatalysed": 3, "conversion-varnish": 3, "milk-paint": 3,
}  # fmt: skip


def test_wet_film_times_solids():
    of = FACTS.finish_class("waterborne-clear")
    wet = 1604.2 / 400 * MIL_UM
    made = replace(
        of, wet_film_um=Range(wet, wet, "worked"), solids_vol_pct=Range(30, 30, "worked")
    )
    assert usual_dry_film_um(made) / MIL_UM == pytest.approx(1.20, abs=0.005)


@pytest.mark.parametrize(
    ("wet", "solids", "thinned", "dry"),
    [
        # An estimating guide's sheet: 8 mil wet at 35 % are 2.8 mil dry, thinned by 10 % 2.5.
        (8, 35, 0, 2.8),
        (8, 35, 0.10, 2.545),
        # By definition; and 25 µm dry at 30 %, thinned by 20 %, want 100 µm wet.
        (100, 40, 0, 40),
        (100, 30, 0.20, 25),
        # Spreading rates printed at 65 and 35 % solids: 208.52 and 561 ft2/gal at 5 and 1 mil dry;
        # a gallon is 1604.17 ft2 one mil thick (231 in3).
        (1604.17 / 208.52, 65, 0, 5),
        (1604.17 / 561, 35, 0, 1),
    ],
)
def test_dry_film_is_wet_film_times_solids(wet: float, solids: float, thinned: float, dry: float):
    assert dry_um(wet, solids, thinned) == pytest.approx(dry, rel=0.001)


def test_a_measured_film_counts_instead_of_the_usual_and_sanding_takes_some_off():
    story = Story()
    story.part()
    coat = story.coat(0, "lacquer-sprayed")
    story.entries[-1] = replace(coat, wet_film_um=200.0)
    left = 200 * 0.18
    assert film_build(story.state(1).layers, None, FACTS).total_um == pytest.approx(left)
    story.work(2, Operation.SAND)
    built = film_build(story.state(3).layers, None, FACTS)
    assert built.total_um == pytest.approx(left - FACTS.drying.abrading_takes_um.value)
    # 102 µm is where it may begin to crack.
    assert (built.next_um, built.more) == (pytest.approx(left), 1)


@every_row("key", USUAL_AT_MOST)
def test_what_is_usual_is_never_too_much(key: str):
    of, coats = FACTS.finish_class(key), USUAL_AT_MOST[key]
    assert of.dry_film_limit_um or of.most_coats
    if of.dry_film_limit_um is not None:
        assert coats * usual_dry_film_um(of) <= of.dry_film_limit_um.high
    if of.most_coats is not None:
        assert coats <= of.most_coats.high
