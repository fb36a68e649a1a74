"""Dilution ventilation against published rules and worked examples; each row says where it is from.

Figures in ft³, pints and gallons are checked by the same functions as those in litres: they take
vapour and air in one unit. `memory`: the figure of the source was not seen, its arithmetic was.
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
# ft³ of vapour a pint of liquid at 70 °F, of SG = 1 and 1 g/mol (read: university formula sheet).
FT3_A_PINT = 387 * 8.33 / 8
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


@every_row(
    ("vapour", "lel", "air"),
    [*G_11.values(), (30.4, 1.4, 8564.1), (30.4, 1.1, 10932.9), (55.2, 3.3, 6470.1)],
    ids=[*(f"29 CFR 1910.94 Table G-11, {s}, memory" for s in G_11), "worked example, memory",
         "toluene, LEL of the NIOSH Pocket Guide, read", "ethanol, the same, read"],
)  # fmt: skip
def test_air_a_gallon_against_fire(vapour, lel, air):
    assert v.air_for_fire(vapour, lel) == pytest.approx(air, abs=0.6)


def test_a_quart_of_toluene_in_an_hour_takes_35_68_ft3_a_minute():
    """29 CFR 1910.94(c)(6)(ii), last step; memory, arithmetic re-run."""
    assert v.air_for_fire(30.4, 1.4) / 4 / 60 == pytest.approx(35.68, abs=0.05)


@every_row("solvent", [s for s in G_11 if s not in {"mineral-spirits", "naphtha"}])
def test_a_gallon_gives_the_vapour_of_the_table(solvent):
    """Table G-11, memory, within 5 %: its two naphthas are mixtures and are not held to it."""
    assert litres_a_gallon_in_ft3(solvent) == pytest.approx(G_11[solvent][0], rel=0.05)


def test_the_constant_of_the_manual():
    """387 ft³ a pound-mole and 8.33 lb a gallon: 403 ft³ a pint (read); 24.1 L a mole."""
    assert FT3_A_PINT == pytest.approx(403, abs=1)
    assert 387 * FT3_L / 453.59237 == pytest.approx(v.MOLAR_L, abs=0.1)


def health_ft3_min(gravity: float, pints_h: float, mass: float, ppm: float, mixing: float) -> float:
    return v.exhaust_for_health(403 * gravity * pints_h / 60 / mass, ppm, mixing)


@every_row(
    ("given", "wanted", "within"),
    [
        ((1.32, 1.5, 133.4, 350, 1), 284.8, 1),
        ((1.32, 1.5, 133.4, 350, 5), 1424, 2),
        ((0.78, 1, 144, 100, 5), 1819, 1),
    ],
    ids=["ventilation manual, memory", "the same, K 5, memory", "mineral spirits, own arithmetic"],
)
def test_exhaust_for_health(given, wanted, within):
    assert health_ft3_min(*given) == pytest.approx(wanted, abs=within)


def test_exhaust_against_fire_of_hot_xylol():
    """Ventilation manual, memory: 2 pt/h, C 10, B 0.7; 159 ft³/min, at 350 °F 243."""
    vapour = 403 * 0.88 * 2 / 60 / 106
    found = v.exhaust_for_fire(vapour, 1.0 * 0.7, safety=10)
    assert found == pytest.approx(159.3, abs=1)
    assert found * 810 / 530 == pytest.approx(243, abs=1)


def test_build_up_of_the_worked_example():
    """1.4 ft³/min in 75,000 ft³ with 2,500 ft³/min: 171.90 ppm after 11 min (read: documentation
    of an open industrial-hygiene library), and 175 ppm after 11.24 min (read, same place).
    """
    changes = 2500 * 60 / 75000

    def ppm(minutes: float) -> float:
        return 1e6 * 1.4 * 60 / 75000 * v.risen(changes, minutes / 60)

    assert ppm(11) == pytest.approx(171.90, abs=0.05)
    assert ppm(11.24) == pytest.approx(175, abs=0.1)


def test_four_changes_leave_1_83_per_cent():
    """Purge equation, read; 1,000 m³/h in 100 m³, mixed perfectly."""
    room = v.Vented(100, 1000, mixing=1)
    assert v.purge_h(room, 1 / 0.0183) * room.changes_h == pytest.approx(4.0, abs=0.01)
    assert v.purge_h(v.Vented(100), 10) is None


def test_several_vapours_are_over_together():
    """Form of 29 CFR 1910.1000(d)(2)(i), read in a state twin."""
    assert v.share_of_limits([(40, 200), (300, 1000), (60, 100)]) == pytest.approx(1.1)


def test_air_changes():
    """500 ft³/min in 20 × 24 × 9 ft: 6.94 an hour, by definition."""
    assert v.Vented(20 * 24 * 9, 500 * 60, mixing=1).changes_h == pytest.approx(6.94, abs=0.01)


def test_the_mixture_limit_of_toluene_and_acetone():
    """Le Chatelier, half and half by vapour, LEL 1.1 and 2.5: 1.53 % (own arithmetic)."""
    half = [of("toluene", 1.0), of("acetone", 1.0)]
    even = [v.Leaves(e.solvent, e.ml / e.vapour_l) for e in half]
    assert v.mixed_lel_pct(even) == pytest.approx(2 / (1 / 1.0 + 1 / 2.5))
    assert 2 / (1 / 1.1 + 1 / 2.5) == pytest.approx(1.53, abs=0.01)


def test_a_quarter_of_the_explosive_limit_is_far_over_what_may_be_breathed():
    """Toluene, LEL 1.1 %: 2,750 ppm against a limit of 200, 13.75 times (NIOSH Pocket Guide)."""
    assert 1.1e4 / 4 / 200 == pytest.approx(13.75)
    for solvent in SOLVENTS.values():
        assert solvent.lel_pct * 1e4 / 4 > solvent.day_ppm


def test_spirits_in_a_room_as_worked_out_by_hand():
    """275 ml of mineral spirits in an hour, 60 m³, 300 m³/h, K 10 (own arithmetic)."""
    air = v.air_of(evening("mineral-spirits", 275), v.Vented(60, 300))
    assert air.vapour_l == pytest.approx(35.9, abs=0.1)
    assert air.shut_ppm == pytest.approx(600, abs=5)
    assert air.highest_ppm == pytest.approx(471, abs=2)
    assert v.air_of(evening("mineral-spirits", 275), v.Vented(60)).of_lel == pytest.approx(
        0.1, abs=0.001
    )
    assert air.of_short == pytest.approx(471 / 306, abs=0.01)
    assert air.of_day > 1
    assert (air.weighs, air.governs) == (v.Weighs.NOT_ENOUGH, v.Governs.HEALTH)


@every_row("solvent", [s for s in SOLVENTS if SOLVENTS[s].older_lel_pct])
def test_current_explosive_limits_never_ask_for_less_air_than_the_older_table(solvent):
    """29 CFR 1910.94 Table G-11, memory, against NIOSH, NFPA 497 and IEC 60079-20-1, read."""
    found, vapour = SOLVENTS[solvent], litres_a_gallon_in_ft3(solvent)
    assert found.lel_pct <= found.older_lel_pct == G_11[solvent][1]
    assert v.air_for_fire(vapour, found.lel_pct) >= v.air_for_fire(vapour, G_11[solvent][1])


@every_row(
    ("design", "low", "high"),
    [(50, 50, 75), (100, 75, 125), (100, 75, 125), (150, 125, 175), (150, 125, 175),
     (200, 150, 250)],
    ids=str,
)  # fmt: skip
def test_booth_velocities_are_those_of_table_g_10(design, low, high):
    """29 CFR 1910.94 Table G-10, ft/min, read in a state twin (WAC 296-62-11019 Table 14)."""
    found = {
        tuple(round(speed / 0.00508) for speed in (b.design_m_per_s, *_ends(b)))
        for b in VAPOURS.booths
    }
    assert (design, low, high) in found
    assert len(VAPOURS.booths) == 6


def _ends(face):
    return face.range_m_per_s.low, face.range_m_per_s.high


def test_a_booth_of_8_by_7_ft_draws_5600_ft3_a_minute():
    """100 ft/min through the open face: 29 CFR 1910.107(b)(5)(i), read."""
    face = next(b for b in VAPOURS.booths if b.large and b.gun == "air")
    flow_m3_s = face.design_m_per_s * (8 * 0.3048) * (7 * 0.3048)
    assert flow_m3_s * 60 * 1000 / FT3_L == pytest.approx(5600, abs=1)


def test_free_formaldehyde_of_acid_cured_finish_alone_is_over_any_limit():
    """EPA/600/A-97/005: 0.15 to 0.58 % by weight. 100 ml (1 g/ml at the least) in 60 m³, shut,
    against 0.75 ppm (29 CFR 1910.1048, memory).
    """
    least_g = 100 * 1.0 * VAPOURS.formaldehyde_pct.low / 100
    assert v.vapour_l(least_g, 30.03) / 60 * 1e3 > 0.75
    assert (VAPOURS.formaldehyde_pct.low, VAPOURS.formaldehyde_pct.high) == (0.15, 0.58)
    assert VAPOURS.acid_cured_volatile_pct.low == 64
    assert VAPOURS.acid_cured_volatile_pct.high == 73


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
    # What is held over a day falls with the room's volume no slower than its air is changed.
    assert v.air_of(work, small).of_lel >= v.air_of(work, room).of_lel * (1 - 1e-9)
    assert v.air_of(work, small).needs_m3_h == v.air_of(work, room).needs_m3_h


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
