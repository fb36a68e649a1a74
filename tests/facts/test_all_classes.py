"""All 55 generic finishes are there and hold what is published of them.

The tables below are copied from the sources named beside them and are read from nowhere else.
"""

from __future__ import annotations

import pytest

from finishlog.core.finish.classes import Figure, FinishClass
from finishlog.core.finish.stages import Stage
from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()
CLASSES = {of.key: of for of in FACTS.classes.values()}
MINUTE_H = 1 / 60

BY_FAMILY = {
    "oil": {
        "boiled-linseed-oil",
        "tung-oil",
        "heat-bodied-oil",
        "oil-varnish-blend",
        "hardwax-oil",
    },
    "oil-varnish": {
        "alkyd-varnish",
        "oil-polyurethane",
        "wiping-varnish",
        "spar-varnish",
        "oil-enamel",
        "oil-primer",
    },
    "shellac": {
        "shellac-1lb",
        "shellac-2lb",
        "shellac-3lb",
        "shellac-waxy",
        "french-polish",
        "pigmented-shellac",
    },
    "lacquer": {
        "lacquer-brushed",
        "lacquer-sprayed",
        "lacquer-cab-acrylic",
        "lacquer-sanding-sealer",
        "vinyl-sealer",
        "toner",
    },
    "catalysed": {"lacquer-precatalysed", "lacquer-postcatalysed", "conversion-varnish"},
    "waterborne": {
        "waterborne-clear",
        "waterborne-oil-modified",
        "waterborne-two-part",
        "tannin-sealer",
        "latex-enamel",
        "acrylic-primer",
    },
    "unknown": {"polyurethane-unknown", "unknown"},
    "stain": {"wiping-stain", "gel-stain"},
    "dye": {"water-dye", "alcohol-dye"},
    "filler": {"paste-filler", "water-filler"},
    "glaze": {"glaze"},
    "washcoat": {"washcoat"},
    "putty": {"putty-water", "putty-solvent"},
    "epoxy": {"epoxy-seal", "epoxy-pour", "epoxy-filler"},
    "wax": {"paste-wax", "wax-stick"},
    "paint": {"milk-paint"},
    "soap": {"soap"},
    "non-drying-oil": {"mineral-oil"},
    "chemical": {
        "ammonia-fume",
        "iron-vinegar",
        "lye-stain",
        "dichromate-stain",
        "permanganate-stain",
        "tannin-wash",
    },
    "bleach": {"bleach-oxalic", "bleach-two-part", "bleach-chlorine"},
}

SHELLACS = ("shellac-1lb", "shellac-2lb", "shellac-3lb", "shellac-waxy")
LACQUERS = ("lacquer-brushed", "lacquer-sprayed", "lacquer-cab-acrylic", "lacquer-precatalysed")

# What a source prints: class, where it belongs, lower end, upper end (hours). None: the source
# gives no such end ("at least", "at most").
Printed = tuple[str, str, float | None, float | None]
PRINTED: dict[str, list[Printed]] = {
    # US Army TM 43-0139, para 2-23, shellac: handle 1 h, recoat 2 to 3 h (cuts of 3 to 5 lb),
    # full hardness 24 h.
    "tm-43-0139": [
        *[(key, "turn", 1, 1) for key in SHELLACS],
        *[(key, "light-use", 24, 24) for key in SHELLACS],
        *[(key, "cured", 24, 24) for key in SHELLACS],
        *[(key, "recoat", 2, 3) for key in SHELLACS[1:]],
    ],
    # US CID A-A-1546A: touch 0.5 to 2 h, hard 8 h, no after-tack and no lifting at 24 h.
    "cid-a-a-1546": [
        ("alkyd-varnish", "touch", 0.5, 2),
        ("alkyd-varnish", "turn", 8, 8),
        ("alkyd-varnish", "tack-free", 24, 24),
        ("alkyd-varnish", "recoat-without-lifting", 24, 24),
    ],
    # US CID A-A-1572: recoated with itself and dried 1 h, no lifting.
    "cid-a-a-1572": [("lacquer-sanding-sealer", "recoat", 1, 1)],
    # US CID A-A-2850: set to touch in at most 0.5 h, dry through in at most 24 h.
    "cid-a-a-2850": [
        ("waterborne-clear", "touch", None, 0.5),
        ("waterborne-clear", "turn", None, 24),
        ("waterborne-clear", "dry-through", None, 24),
    ],
    # Ohio Revised Code 3741.09: boiled linseed oil on glass, not tacky in at most 20 h.
    "orc-3741-09": [("boiled-linseed-oil", "tack-free", None, 20)],
    # US Navy NAVEDTRA 14044: filler stands 5 to 10 min, then 24 h before finish coats.
    "navedtra-14044": [
        ("paste-filler", "wipe-off", 5 * MINUTE_H, 10 * MINUTE_H),
        ("paste-filler", "recoat", 24, None),
        ("paste-filler", "sand", 24, None),
    ],
    # UFGS 09995: filler at least 8 h before stain.
    "ufgs-09995": [("paste-filler", "recoat", 8, None)],
    # Conserve O Gram 7/2: wax dries 30 to 60 min, then it is buffed.
    "conserve-o-gram-7-2": [("paste-wax", "buff", 0.5, 1)],
    # Cyclopedia of Architecture (about 1907): second coat at 6 h, later coats 48 h apart.
    "cyclopedia-1907": [("shellac-waxy", "recoat", 6, 6), ("shellac-waxy", "recoat", 48, 48)],
    # Carpentry and Woodwork (1911): oil varnish 48 h or more; wax about weekly.
    "carpentry-and-woodwork-1911": [
        ("alkyd-varnish", "recoat", 48, None),
        ("paste-wax", "recoat", 168, 168),
    ],
    # Essentials of Woodworking (1908): stain 12 h, filler 12 h a coat, shellac as a base 24 h then
    # sanded, wax stands 5 to 10 min and has its next coat after 24 h.
    "essentials-1908": [
        ("wiping-stain", "recoat", 12, 12),
        ("wiping-stain", "turn", 12, 12),
        ("paste-filler", "recoat", 12, 12),
        ("shellac-3lb", "sand", 24, 24),
        ("shellac-waxy", "sand", 24, 24),
        ("paste-wax", "touch", 5 * MINUTE_H, 10 * MINUTE_H),
        ("paste-wax", "recoat", 24, 24),
    ],
    # Elements of Woodwork (about 1910): an oil finish stands about 10 h, then it is rubbed.
    "elements-of-woodwork-1910": [("boiled-linseed-oil", "recoat", 10, 10)],
    # Tool Processes in Woodworking (about 1915): filler stands about 15 min.
    "tool-processes-1915": [("paste-filler", "wipe-off", 0.25, 0.25)],
    # Trade questions and answers, packaging: 4 to 24 h with separators.
    "packaging-q-and-a": [
        ("lacquer-sprayed", "stack", 4, 24),
        ("lacquer-precatalysed", "stack", 4, 24),
    ],
    # Finishing-education page: 48 h before stacking; most finishes 30 days.
    "pack-and-stack": [
        *[(key, "stack", 48, None) for key in CLASSES],
        *[(key, "cured", None, 720) for key in ("alkyd-varnish", "oil-polyurethane")],
        *[(key, "cured", None, 720) for key in ("spar-varnish", "oil-enamel", "latex-enamel")],
        *[(key, "cured", None, 720) for key in ("waterborne-clear", *LACQUERS)],
    ],
    # Woodworking magazine: pure tung oil, a week between coats.
    "tung-and-linseed-article": [("tung-oil", "recoat", 168, 168)],
    # Woodworking magazine, finishing in one day: oil and conditioner overnight (12 to 24 h).
    "finishing-in-one-day": [
        ("oil-varnish-blend", "recoat", 12, 24),
        ("washcoat", "recoat", 12, 24),
    ],
    # General article: hardwax oil, touch 24 h, fully hard in 7 days with drier, 21 without.
    "hardwax-oil-article": [("hardwax-oil", "touch", 24, 24), ("hardwax-oil", "cured", 168, 504)],
    # Woodworking magazine, winter 2011: rub out after 2, 7 and 21 days.
    "rub-out-2011": [
        *[(key, "rub", 48, None) for key in ("shellac-2lb", "lacquer-sprayed")],
        *[(key, "rub", 168, None) for key in ("alkyd-varnish", "oil-polyurethane")],
        ("waterborne-clear", "rub", 504, None),
    ],
    # Practitioner's page and instrument maker's page on French polishing: 24 h between sessions,
    # spit coats 30 min apart.
    "french-polish-sessions": [("french-polish", "recoat", 24, 24)],
    "french-polish-schedule": [("french-polish", "recoat", 0.5, 0.5)],
    # Restoration shop: lacquer at least 1 week, usually 2, before rubbing.
    "restoration-shop": [(key, "rub", 168, 336) for key in LACQUERS[:2]],
    # Trade press on dated lacquers: films are tested at 28 days.
    "catalysed-shelf-dates": [("lacquer-precatalysed", "cured", 672, None)],
    # Trade questions and answers: post-catalysed lacquer 3 warm days.
    "postcat-cure-q-and-a": [("lacquer-postcatalysed", "light-use", 72, 72)],
    # Woodworking magazine, three fast finishes: waterborne 2 to 3 h.
    "three-fast-finishes": [("waterborne-clear", "recoat", None, 3)],
    # Finishing-tip pages: waterborne sands when it powders, 1 to 3 h; several days to a week over
    # oil stain. Trade questions and answers: 72 h over oil.
    "waterborne-powders": [("waterborne-clear", "sand", 1, 3)],
    "waterborne-over-oil-stain": [("wiping-stain", "cured", 72, 168)],
    "waterborne-over-oil-defects": [("wiping-stain", "cured", 72, 72)],
    # General how-to page: oil gel stain, touch 4 to 8 h, 24 to 48 h before a topcoat.
    "gel-stain-page": [("gel-stain", "touch", 4, 8), ("gel-stain", "recoat", 24, 48)],
    # Trade questions and answers: water dye 24 h before sealing.
    "water-dye-q-and-a": [("water-dye", "recoat", 24, 24)],
    # Woodworking magazine, stains and dyes: oil stain overnight.
    "stains-and-dyes": [("wiping-stain", "recoat", 12, 24)],
    # How-to article on pore fillers: oil filler 2 to 7 days before sanding or a topcoat.
    "pore-fillers-article": [
        ("paste-filler", "recoat", 48, 168),
        ("paste-filler", "sand", 48, 168),
        ("paste-filler", "cured", 48, 168),
    ],
    # Recipe for casein paint: about 1 h a coat. Essay on milk paint: mixed, days at best.
    "casein-recipe": [("milk-paint", "touch", 1, 1)],
    "milk-paint-essay": [("milk-paint", "pot-life", 24, 48)],
    # Woodworking magazine, winter 2011: bleaches are washed the next day, then dried overnight.
    "bleaches-2011": [
        ("bleach-oxalic", "after-rinse", 12, 24),
        ("bleach-oxalic", "recoat", 24, 48),
        ("bleach-chlorine", "recoat", 24, 48),
    ],
    # General how-to page: chlorine bleach stands 20 min, then 24 h before sanding or finishing.
    "bleaching-page": [
        ("bleach-chlorine", "dwell", 20 * MINUTE_H, 20 * MINUTE_H),
        ("bleach-chlorine", "recoat", 24, 24),
        ("bleach-chlorine", "sand", 24, 24),
        ("bleach-chlorine", "cured", 24, 24),
    ],
}
ROWS = [(source, *row) for source, rows in PRINTED.items() for row in rows]
STAGES = set(Stage)

# Longer readings that are shown and not promised; each has a note in its class that says why.
NOT_A_WAIT = {
    # Dry through of a test panel is no leave to turn onto points.
    ("waterborne-clear", "turn", "cid-a-a-2850"),
    # Another way of working: eight to twelve coats of a 5 lb cut.
    ("shellac-waxy", "recoat", "cyclopedia-1907"),
    # Of heavier cuts.
    ("shellac-3lb", "sand", "essentials-1908"),
    # A habit, not a wait.
    ("paste-wax", "recoat", "carpentry-and-woodwork-1911"),
}


def used(of: FinishClass, place: str) -> Figure | None:
    """Return the figure that a class goes by: of a stage, a wipe-off, a pot life or a test."""
    if place in STAGES:
        return of.stages.get(Stage(place))
    named = {"wipe-off": of.wipe_off_h, "pot-life": of.pot_life_h}
    return named.get(place) or of.readings.get(place)


def readings(of: FinishClass, place: str, source: str) -> list[Figure]:
    own = used(of, place)
    return [one for one in (own, *own.also) if one.source == source] if own else []


def is_printed(figure: Figure, low: float | None, high: float | None) -> bool:
    ends = ((figure.low_h, low), (figure.high_h, high))
    return all(end is None or mine == pytest.approx(end, abs=1e-6) for mine, end in ends)


def reaches_beyond(figure: Figure, low: float | None, high: float | None) -> bool:
    """Tell whether a figure takes in what is printed and says in a note what else."""
    inside = (low is None or figure.low_h <= low) and (high is None or high <= figure.high_h)
    return inside and bool(figure.note)


@every_row("family", BY_FAMILY)
def test_the_finishes_of_a_family_are_there(family):
    assert {key for key, of in CLASSES.items() if of.family == family} == BY_FAMILY[family]


@pytest.mark.parametrize("of", [of for of in CLASSES.values() if of.may_be], ids=lambda c: c.key)
def test_what_may_be_several_is_as_slow_and_as_tender_as_any_of_them(of):
    """A kind that nobody told: the careful end of all that it may be (common practice)."""
    kinds = [CLASSES[key] for key in of.may_be]
    assert all(not kind.may_be for kind in kinds)
    for stage, figure in of.stages.items():
        told = [kind.stages[stage] for kind in kinds if stage in kind.stages]
        assert (figure.low_h, figure.high_h) == (
            max(each.low_h for each in told),
            max(each.high_h for each in told),
        ), stage
    assert of.limits.min_c.value == max(kind.limits.min_c.value for kind in kinds)
    assert of.limits.max_c.value == min(kind.limits.max_c.value for kind in kinds)
    assert of.limits.max_rh_pct.value == min(kind.limits.max_rh_pct.value for kind in kinds)
    assert of.self_heating is any(kind.self_heating for kind in kinds)
    assert set(of.hazards) >= {h for kind in kinds for h in kind.hazards if h != "waterborne"}


def test_there_are_61_generic_finishes():
    assert len(CLASSES) == 61
    assert set(CLASSES) == set().union(*BY_FAMILY.values())


@every_row(("source", "key", "place", "low", "high"), ROWS)
def test_a_class_holds_what_its_source_prints(source, key, place, low, high):
    """The figure that is used may be wider than its source, with a note; one beside it may not."""
    of = CLASSES[key]
    own, found = used(of, place), readings(of, place, source)
    wider = own in found and reaches_beyond(own, low, high)
    assert wider or any(is_printed(one, low, high) for one in found), found


@every_row(("source", "key", "place", "low", "high"), ROWS)
def test_a_stage_is_promised_no_sooner_than_any_source_has_it(source, key, place, low, high):
    if place in STAGES and (key, place, source) not in NOT_A_WAIT:
        assert CLASSES[key].stages[Stage(place)].high_h >= (low if high is None else high)


@pytest.mark.parametrize(("key", "place", "source"), sorted(NOT_A_WAIT))
def test_a_longer_reading_that_is_not_used_says_why(key, place, source):
    longer = readings(CLASSES[key], place, source)
    assert any(one.high_h > CLASSES[key].stages[Stage(place)].high_h for one in longer)
    assert all(one.note for one in longer)


# A deadline runs the other way: the shortest published one is kept.
def test_filler_is_wiped_by_the_shorter_reading_and_milk_paint_is_used_up_by_it():
    assert CLASSES["paste-filler"].wipe_off_h.high_h <= 0.25
    assert CLASSES["milk-paint"].pot_life_h.low_h == 24
