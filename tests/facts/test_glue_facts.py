"""Glues: open time, clamps, cure, and the wait before finish, each as its source prints it."""

from __future__ import annotations

from finishlog.core.finish.classes import COMMON_PRACTICE, FROM_MEMORY, Figure
from finishlog.core.published.glues import Glue
from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()
KNOWN = {*FACTS.sources, COMMON_PRACTICE, FROM_MEMORY}
MIN = 1 / 60
SECOND = MIN / 60

each_glue = every_row("glue", FACTS.glues, ids=lambda g: g.key)


def glue(name: str) -> Glue:
    found = FACTS.glue_named(name)
    assert found is not None
    return found


def figures(of: Glue) -> list[Figure]:
    return [of.open, of.clamp, of.cure, of.before_finish]


def readings(figure: Figure) -> set[tuple[float, float, str]]:
    return {(round(f.low_h, 4), round(f.high_h, 4), f.source) for f in (figure, *figure.also)}


DIY, REFERENCE, NAVY = "glue-tables-diy", "glue-characteristics", "navedtra-14119"

# Hours open, low and high, and the table of the trade that prints them.
OPEN = [
    ("white PVA", 5 * MIN, 30 * MIN, DIY),
    ("white PVA", 5 * MIN, 5 * MIN, REFERENCE),
    ("yellow PVA", 5 * MIN, 10 * MIN, REFERENCE),
    ("cross-linking PVA", 5 * MIN, 10 * MIN, REFERENCE),
    ("hot hide glue", 1 * MIN, 10 * MIN, DIY),
    ("liquid hide glue", 10 * MIN, 10 * MIN, REFERENCE),
    ("fish glue", 15 * MIN, 30 * MIN, DIY),
    ("casein glue", 15 * MIN, 45 * MIN, DIY),
    ("epoxy", 2 * MIN, 2, DIY),
    ("polyurethane glue", 10 * MIN, 30 * MIN, COMMON_PRACTICE),
    ("urea powder", 20 * MIN, 20 * MIN, REFERENCE),
    ("urea resin", 15 * MIN, 15 * MIN, REFERENCE),
    ("resorcinol", 15 * MIN, 15 * MIN, REFERENCE),
    ("cyanoacrylate", 0.5 * MIN, 5 * MIN, DIY),
]
# Hours in clamps. Urea powder 12 h, its resin 3 h (1 to 3 h in heat); epoxy under light pressure.
CLAMPED = [
    ("white PVA", 20 * MIN, 90 * MIN, DIY),
    ("white PVA", 1, 1, REFERENCE),
    ("yellow PVA", 30 * MIN, 60 * MIN, REFERENCE),
    ("yellow PVA", 30 * MIN, 60 * MIN, NAVY),
    ("cross-linking PVA", 1, 1, REFERENCE),
    ("hot hide glue", 10 * MIN, 90 * MIN, DIY),
    ("liquid hide glue", 12, 12, REFERENCE),
    ("fish glue", 2, 4, DIY),
    ("casein glue", 2, 8, DIY),
    ("epoxy", 4 * MIN, 48, DIY),
    ("polyurethane glue", 1, 4, COMMON_PRACTICE),
    ("urea powder", 12, 12, REFERENCE),
    ("urea resin", 3, 3, REFERENCE),
    ("resorcinol", 10, 10, REFERENCE),
    ("cyanoacrylate", 2 * SECOND, 4, DIY),
    # Wood Handbook, chapter 10: cold pressing holds 15 min to 24 h, by the adhesive.
    ("any", 15 * MIN, 24, "wood-handbook-ch10"),
]


@every_row(("name", "low_h", "high_h", "source"), OPEN)
def test_how_long_a_joint_stays_open(name: str, low_h: float, high_h: float, source: str):
    assert (round(low_h, 4), round(high_h, 4), source) in readings(glue(name).open)


@every_row(("name", "low_h", "high_h", "source"), CLAMPED)
def test_how_long_the_clamps_stay_on(name: str, low_h: float, high_h: float, source: str):
    assert (round(low_h, 4), round(high_h, 4), source) in readings(glue(name).clamp)


# US Navy NAVEDTRA 14119: urea resin sets within 24 h at 70 °F; vinyl sets first in less than 30
# min and is strong in less than an hour; use it above 50 °F, on wood at 70 °F.
def test_what_the_government_manual_prints():
    urea = glue("urea powder")
    assert (urea.cure.high_h, urea.cure.source, urea.cure.at.temperature_c) == (24, NAVY, 21.1)
    for name in ("white PVA", "yellow PVA", "cross-linking PVA"):
        pva = glue(name)
        assert pva.min_c is not None
        assert pva.wood_c is not None
        assert (pva.min_c.value, pva.min_c.source) == (10, NAVY)
        assert (pva.wood_c.value, pva.wood_c.source) == (21.1, NAVY)
    strong = [f for f in glue("yellow PVA").clamp.also if f.source == NAVY]
    assert [(f.low_h, f.high_h) for f in strong] == [(0.5, 1)]
    assert glue("yellow PVA").clamp.high_h >= 1


# University extension chapter: about 7 days after edge-gluing with a water-based glue.
def test_a_joint_of_water_based_glue_is_levelled_after_seven_days():
    for each in FACTS.glues:
        assert (each.level is not None) is each.water_based
        if each.level:
            assert each.level.high_h == 7 * 24
            assert each.level.source == "glue-joint-chapter"


# Epoxy, polyurethane and cyanoacrylate bring no water.
def test_which_glues_bring_no_water():
    dry = {each.key for each in FACTS.glues if not each.water_based}
    assert dry == {"epoxy", "polyurethane", "cyanoacrylate"}


# UFGS 09995: epoxy repairs are fully cured before they are finished.
def test_epoxy_waits_for_its_full_cure_before_a_finish():
    epoxy = glue("epoxy")
    assert epoxy.before_finish.high_h == epoxy.cure.high_h == 168


@each_glue
def test_the_hours_are_in_order(glue: Glue):
    for figure in figures(glue):
        assert 0 < figure.low_h <= figure.typical_h <= figure.high_h
    assert glue.open.low_h <= glue.clamp.high_h <= glue.cure.high_h
    assert glue.clamp.high_h <= glue.before_finish.high_h <= max(glue.cure.high_h, 48)
    # What is promised of the open time is its short end, so that is the one to plan with.
    assert glue.open.typical_h == glue.open.low_h


@each_glue
def test_every_figure_names_its_source(glue: Glue):
    limits = [limit for limit in (glue.min_c, glue.wood_c) if limit]
    for figure in figures(glue):
        assert {f.source for f in (figure, *figure.also)} <= KNOWN
    assert {limit.source for limit in limits} <= KNOWN
    assert glue.notes


def test_a_name_means_one_glue():
    names = [
        {w.casefold().replace("-", " ") for w in (g.key, g.name, *g.aliases)} for g in FACTS.glues
    ]
    assert len(set().union(*names)) == sum(map(len, names))


@each_glue
def test_a_glue_is_found_by_key_name_or_alias_whatever_the_case(glue: Glue):
    for word in (glue.key, glue.name, *glue.aliases):
        assert FACTS.glue_named(f" {word.upper()} ") == glue


def test_a_glue_that_nobody_describes_is_not_guessed():
    assert FACTS.glue_named("chewing gum") is None


# The safety data sheet comes first wherever a glue can hurt.
def test_glues_that_can_hurt_say_so():
    for name in ("epoxy", "polyurethane glue", "urea powder", "urea resin", "resorcinol"):
        assert any("sheet first" in note for note in glue(name).notes), name
    assert any("goggles" in note for note in glue("cyanoacrylate").notes)
