"""Dilution ventilation: the older table, what never needs less air, what a thinner is of.

The worked examples and figures from outside stand in `published_checks.csv`. `memory`: the figure
of the source was not seen, its arithmetic was.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from finishlog.core.measure.units import Volume, to_base
from finishlog.core.safety import ventilation as v
from finishlog.facts.load import load_facts
from tests.examples import examples
from tests.rows import every_row

VAPOURS = load_facts().vapours
SOLVENTS = VAPOURS.solvents
FT3_L = 28.316846592
# What Table G-11 of 29 CFR 1910.94 holds, from memory: ft³ of vapour a gallon, LEL %, ft³ of air.
G_11 = {
    "acetone": (44.0, 2.6, 6593.2),
    "butyl-acetate": (24.8, 1.7, 5736.1),
    "butanol": (35.2, 1.4, 9916.3),
    "butoxyethanol": (24.8, 1.1, 8919.0),
    "ethyl-acetate": (32.8, 2.5, 5116.8),
    "ethanol": (55.2, 4.3, 4914.1),
    "methanol": (80.8, 7.3, 4104.2),
    "mek": (36.0, 1.8, 7856.0),
    "naphtha": (22.4, 0.9, 9866.0),
    "mineral-spirits": (23.2, 1.0, 9187.2),
    "isopropanol": (44.0, 2.0, 8624.0),
    "toluene": (30.4, 1.4, 8564.1),
    "turpentine": (20.8, 0.8, 10316.8),
    "xylene": (26.4, 1.0, 10454.4),
}


def of(solvent: str, ml: float) -> v.Leaves:
    return v.Leaves(SOLVENTS[solvent], ml)


def evening(solvent: str, ml: float, hours: float = 1.0) -> list[v.Release]:
    return [v.Release((of(solvent, ml),), 0.0, hours)]


def litres_a_gallon_in_ft3(solvent: str) -> float:
    return of(solvent, 1000 * to_base(1, Volume.US_GALLON)).vapour_l / FT3_L


@every_row("solvent", G_11)
def test_air_a_gallon_against_fire(solvent):
    """Table G-11, memory: 4 (100 - LEL) / LEL for each ft³ of vapour."""
    vapour, lel, air = G_11[solvent]
    assert v.air_for_fire(vapour, lel) == pytest.approx(air, abs=0.6)


@every_row("solvent", [s for s in G_11 if s not in {"mineral-spirits", "naphtha"}])
def test_a_gallon_gives_the_vapour_of_the_table(solvent):
    """Table G-11, memory, within 5 %: its two naphthas are mixtures and are not held to it."""
    assert litres_a_gallon_in_ft3(solvent) == pytest.approx(G_11[solvent][0], rel=0.05)


def test_without_exhaust_nothing_is_purged():
    assert v.purge_h(v.Vented(100), 10) is None


def test_a_quarter_of_the_explosive_limit_is_far_over_what_may_be_breathed():
    """As with toluene, 2,750 ppm against 200 (NIOSH Pocket Guide, read)."""
    for solvent in SOLVENTS.values():
        assert solvent.lel_pct * 1e4 / 4 > solvent.day_ppm


@every_row("solvent", [s for s in SOLVENTS if SOLVENTS[s].older_lel_pct])
def test_current_explosive_limits_never_ask_for_less_air_than_the_older_table(solvent):
    """29 CFR 1910.94 Table G-11, memory, against NIOSH, NFPA 497 and IEC 60079-20-1, read."""
    found, vapour = SOLVENTS[solvent], litres_a_gallon_in_ft3(solvent)
    assert found.lel_pct <= found.older_lel_pct == G_11[solvent][1]
    assert v.air_for_fire(vapour, found.lel_pct) >= v.air_for_fire(vapour, G_11[solvent][1])


@every_row("key", ["conversion-varnish", "lacquer-postcatalysed", "lacquer-precatalysed"])
def test_the_solids_of_acid_cured_classes_leave_what_was_measured(key):
    """EPA/600/A-97/005: volatiles 64 to 73 % by weight; solids are heavier than what leaves, so
    by volume at least as much of it leaves.
    """
    solids = load_facts().classes[key].solids_vol_pct
    assert 100 - solids.high >= VAPOURS.acid_cured_volatile_pct.low - 10
    assert 100 - solids.low >= VAPOURS.acid_cured_volatile_pct.high - 5


rooms = st.builds(
    v.Vented,
    st.floats(10, 500),
    st.one_of(st.none(), st.floats(1, 5000)),
    st.floats(1, 10),
)
liquids = st.sampled_from(sorted(SOLVENTS))
amounts = st.floats(1, 2000)
times = st.floats(0.1, 8)


def worst(air: v.Air) -> tuple[float, ...]:
    return (air.of_lel, air.of_short or 0.0, air.of_day, air.needs_m3_h)


def no_less(one: v.Air, other: v.Air) -> bool:
    return all(a >= b * (1 - 1e-9) for a, b in zip(worst(one), worst(other), strict=True))


@examples(60)
@given(rooms, liquids, amounts, times, st.floats(1, 5))
def test_more_solvent_never_needs_less(room, liquid, ml, hours, more):
    one, other = evening(liquid, ml, hours), evening(liquid, ml * more, hours)
    assert no_less(v.air_of(other, room), v.air_of(one, room))


@examples(60)
@given(rooms, liquids, amounts, times, st.floats(1, 10))
def test_worse_mixing_or_a_smaller_room_never_needs_less(room, liquid, ml, hours, worse):
    work = evening(liquid, ml, hours)
    mixed = v.Vented(room.volume_m3, room.exhaust_m3_h, min(10, room.mixing * worse))
    small = v.Vented(room.volume_m3 / worse, room.exhaust_m3_h, room.mixing)
    assert no_less(v.air_of(work, mixed), v.air_of(work, room))
    assert no_less(v.air_of(work, small), v.air_of(work, room))


@examples(60)
@given(rooms, liquids, amounts, times, st.floats(0.1, 1))
def test_a_lower_limit_never_needs_less(room, liquid, ml, hours, lower):
    from msgspec.structs import replace

    known = SOLVENTS[liquid]
    strict = replace(
        known,
        lel_pct=known.lel_pct * lower,
        day_ppm=known.day_ppm * lower,
        short_ppm=known.short_ppm and known.short_ppm * lower,
    )
    work = [v.Release((v.Leaves(strict, ml),), 0, hours)]
    assert no_less(v.air_of(work, room), v.air_of(evening(liquid, ml, hours), room))


@examples(40)
@given(liquids, liquids, amounts, amounts, st.floats(10, 500))
def test_a_second_solvent_beside_the_first_never_needs_less(one, other, ml, more, volume):
    room = v.Vented(volume)
    both = [v.Release((of(one, ml), of(other, more)))]
    assert no_less(v.air_of(both, room), v.air_of(evening(one, ml), room))


@examples(40)
@given(rooms, liquids, amounts, times)
@example(v.Vented(60, 300), "mineral-spirits", 275.0, 1.0)
def test_between_two_evenings_it_falls_far_enough(room, liquid, ml, hours):
    """Played again and again, so far apart, it never comes over the limit that it keeps to."""
    work = evening(liquid, ml, hours)
    apart = v.between_h(work, room)
    if apart is None:
        return
    again = [v.Release(work[0].leaves, n * max(apart, hours), hours) for n in range(12)]
    air = v.air_of(again, room)
    assert max(air.of_lel / v.TENTH, air.of_short or 0.0) <= 1 + 1e-9


def test_a_mixture_has_its_main_parts_by_vapour_or_by_weight():
    """Over a tenth of what leaves, by either; toluene (20 ppm, Ontario) makes it no answer."""
    thinner = [v.Leaves(s, 100 * share) for s, share in VAPOURS.of_carrier("butyl-acetate")]
    assert v.main_parts(thinner)[0].name == "toluene"
    assert v.is_no_answer(v.main_parts(thinner)[0])
    spirits = [of("mineral-spirits", 100)]
    assert not v.is_no_answer(spirits[0].solvent)
    assert v.is_poor_answer(spirits)
    assert not v.is_poor_answer([of("ethanol", 100)])


@every_row(
    ("name", "leaves"),
    [
        ("mineral spirits", {"mineral spirits"}),
        ("white spirit", {"mineral spirits"}),
        ("Paint thinner, odorless", {"mineral spirits"}),
        ("gum turpentine", {"turpentine"}),
        ("VM&P naphtha", {"VM&P naphtha"}),
        ("methylated spirits", {"alcohol"}),
        ("xylol", {"xylene"}),
        ("lacquer thinner", {"toluene", "acetone", "butyl acetate", "isopropanol", "xylene",
                             "2-butoxyethanol"}),
        ("boiled linseed oil", set()),
        ("water", set()),
        ("Japan drier", set()),
    ],
)  # fmt: skip
def test_a_thinner_is_known_by_its_name(name, leaves):
    """What it is called in the trade: common practice."""
    found = VAPOURS.of_name(name, load_facts().chemistry)
    assert {solvent.name for solvent, _ in found} == leaves


def test_the_limits_in_ppm_are_those_in_milligrams():
    """350 and 1,800 mg/m³ of Stoddard solvent at 144 g/mol: about 60 and 306 ppm (1989 PEL
    project page, read); 1 ppm of toluene is 3.77 mg/m³ (NIOSH Pocket Guide).
    """
    spirits = SOLVENTS["mineral-spirits"]
    assert spirits.day_ppm == pytest.approx(350 / 144 * 24.45, abs=0.1)
    assert spirits.short_ppm == pytest.approx(1800 / 144 * 24.45, abs=0.1)
    assert pytest.approx(3.77, abs=0.01) == SOLVENTS["toluene"].molar_mass / 24.45
    assert math.isclose(SOLVENTS["naphtha"].day_ppm, 350 / 114 * 24.45, abs_tol=0.1)


@examples(40)
@given(rooms, liquids, amounts, times, st.floats(1, 5), st.integers(0, 3))
def test_what_is_worse_is_never_named_less(room, liquid, ml, hours, worse, how):
    """More of it, a smaller room, worse mixing or no fan: the word for it is none milder."""
    named = list(v.Weighs)
    before = v.air_of(evening(liquid, ml, hours), room)
    if how == 0:
        after = v.air_of(evening(liquid, ml * worse, hours), room)
    else:
        volume = room.volume_m3 / worse if how == 1 else room.volume_m3
        exhaust = None if how == 3 else room.exhaust_m3_h
        mixing = min(10, room.mixing * worse) if how == 2 else room.mixing
        after = v.air_of(evening(liquid, ml, hours), v.Vented(volume, exhaust, mixing))
    assert named.index(after.weighs) >= named.index(before.weighs)
    assert after.times_over >= before.times_over * (1 - 1e-9)
