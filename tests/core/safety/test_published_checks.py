"""Each published figure and worked example of `published_checks.csv`, asked of the program.

A row names its source and its basis, and the function below that asks the program for it. Figures
in ft³, pints and gallons go through the same functions as litres: vapour and air in one unit.
"""

from __future__ import annotations

import csv
import math
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from msgspec.structs import replace

from finishlog.core.measure.units import Temperature, Volume, from_base, to_base
from finishlog.core.published.vapours import AIR_GUN, Solvent, StoredWhere
from finishlog.core.safety import ventilation as v
from finishlog.core.safety.keeping import flash_category
from finishlog.core.safety.rags import RagsState
from finishlog.facts.load import load_facts
from tests.rows import every_row
from tests.shop_of import LINSEED, Story

FACTS = load_facts()
SOLVENTS = FACTS.vapours.solvents
FT3_L = 28.316846592
# ft³ of vapour a pint of liquid, of SG 1 and 1 g/mol, as the manual's formula has it (C15).
FT3_A_PINT = 403
FT_MIN_M_S = 0.00508
BOILS_HIGH = 100.0

Given = dict[str, str]
Asks = Callable[..., float | list[float]]


def rows() -> Iterator[dict[str, str]]:
    text = Path(__file__).with_name("published_checks.csv").read_text("utf-8")
    yield from csv.DictReader(line for line in text.splitlines() if not line.startswith("#"))


def air_for_fire(lel: float, vapour: float) -> float:
    return v.air_for_fire(vapour, lel)


def air_for_fire_a_minute(lel: float, vapour: float, gallons: float, minutes: float) -> float:
    return v.air_for_fire(vapour * gallons / minutes, lel)


def vapour_of_a_gallon(gravity: float, mass: float) -> float:
    grams = gravity * 1000 * to_base(1, Volume.US_GALLON)
    return v.vapour_l(grams, mass) / FT3_L


def vapour_of_a_pint(gravity: float, mass: float) -> float:
    return vapour_of_a_gallon(gravity, mass) / 8


def build_up(vapour: float, air: float, minutes: float, room: float) -> float:
    return 1e6 * vapour * 60 / room * v.risen(air * 60 / room, minutes / 60)


def time_to(vapour: float, air: float, ppm: float, room: float) -> float:
    """Halve until the minute is found at which it has built up."""
    low, high = 0.0, 60.0
    while high - low > 1e-6:
        middle = (low + high) / 2
        low, high = (middle, high) if build_up(vapour, air, middle, room) < ppm else (low, middle)
    return high


def exhaust_for_health(
    gravity: float, pints_h: float, mass: float, ppm: float, mixing: float
) -> float:
    return v.exhaust_for_health(_vapour_ft3_min(gravity, pints_h, mass), ppm, mixing)


def exhaust_for_fire(
    gravity: float,
    pints_h: float,
    mass: float,
    lel: float,
    hot: float,
    safety: float,
    expands: float,
) -> list[float]:
    found = v.exhaust_for_fire(_vapour_ft3_min(gravity, pints_h, mass), lel * hot, safety)
    return [found, found * expands]


def _vapour_ft3_min(gravity: float, pints_h: float, mass: float) -> float:
    return FT3_A_PINT * gravity * pints_h / 60 / mass


def quarter_of_the_limit(lel: float, ppm: float) -> list[float]:
    """At the exhaust that holds a quarter of the limit a litre an hour is so thin."""
    fire, health = v.exhaust_for_fire(1.0, lel), v.exhaust_for_health(1.0, ppm, 1.0)
    return [1e6 / fire, health / fire]


def milligrams_a_ppm(solvent: str) -> float:
    return SOLVENTS[solvent].molar_mass / 24.45


def limit_of_the_day(solvent: str) -> float:
    return SOLVENTS[solvent].day_ppm


def limit_of_15_minutes(solvent: str) -> float:
    found = SOLVENTS[solvent].short_ppm
    assert found is not None
    return found


def tenth_of_the_limit(lel: float, other: float) -> list[float]:
    return [v.TENTH * each * 1e4 for each in (lel, other)]


def air_changes(air: float, length: float, width: float, height: float) -> float:
    return v.Vented(length * width * height, air * 60, mixing=1).changes_h


def left_after(changes: float) -> float:
    """Ask how long it takes until it is so little, at so many changes in that time."""
    room = v.Vented(100.0, 100.0, mixing=1)
    left = next(n / 1e4 for n in range(1, 10_000) if _purged_by(room, n / 1e4, changes))
    return 100 * left


def _purged_by(room: v.Vented, left: float, hours: float) -> bool:
    found = v.purge_h(room, 1 / left)
    assert found is not None
    return found <= hours


def booth_flow(wide: float, high: float) -> float:
    face = next(f for f in FACTS.vapours.booths if f.large and f.gun == AIR_GUN)
    return face.design_m_per_s / FT_MIN_M_S * wide * high


def booth_speed(gun: str, draught: float, large: float) -> list[float]:
    (face,) = [
        f
        for f in FACTS.vapours.booths
        if f.gun.startswith(gun)
        and f.large == bool(large)
        and f.crossdraught_m_per_s == pytest.approx(draught * FT_MIN_M_S)
    ]
    speeds = (face.design_m_per_s, face.range_m_per_s.low, face.range_m_per_s.high)
    return [speed / FT_MIN_M_S for speed in speeds]


def flash_categories(**fahrenheit: float) -> list[float]:
    points = (to_base(f, Temperature.FAHRENHEIT) for f in fahrenheit.values())
    return [float(flash_category(c, BOILS_HIGH) or 0) for c in points]


def together(**shares: str) -> float:
    pairs = (share.split("/") for share in shares.values())
    return v.share_of_limits((float(found), float(limit)) for found, limit in pairs)


def gallons_kept() -> list[float]:
    return [
        from_base(limit.most_l, Volume.US_GALLON)
        for where, category in (
            (StoredWhere.LOOSE, "1"),
            (StoredWhere.LOOSE, "3"),
            (StoredWhere.CABINET, "3"),
            (StoredWhere.CABINET, "4"),
        )
        for limit in FACTS.storage
        if limit.where is where and category in limit.categories
    ]


def rags_open(**later_h: float) -> list[float]:
    found = []
    for hours in later_h.values():
        story = Story()
        story.part("seats")
        story.coat(-2.0, LINSEED)
        (item,) = story.look(-2.0 + hours).rags
        found.append(float(item.is_open and item.state is RagsState.OPEN))
    return found


def spirits_of_an_evening(ml: float, room: float, exhaust: float) -> list[float]:
    leaves = v.Leaves(SOLVENTS["mineral-spirits"], ml)
    air = v.air_of([v.Release((leaves,))], v.Vented(room, exhaust))
    assert (air.weighs, air.governs) == (v.Weighs.NOT_ENOUGH, v.Governs.HEALTH)
    return [air.vapour_l, air.shut_ppm, air.highest_ppm]


def mixed_limit(lel: float, other: float) -> float:
    even = [_a_litre(replace(SOLVENTS["toluene"], lel_pct=limit)) for limit in (lel, other)]
    return v.mixed_lel_pct(even)


def _a_litre(of: Solvent) -> v.Leaves:
    return v.Leaves(of, 1 / v.Leaves(of, 1.0).vapour_l)


def free_formaldehyde() -> list[float]:
    return [FACTS.vapours.formaldehyde_pct.low, FACTS.vapours.formaldehyde_pct.high]


def acid_cured_leaves() -> list[float]:
    return [FACTS.vapours.acid_cured_volatile_pct.low, FACTS.vapours.acid_cured_volatile_pct.high]


def _asked(row: dict[str, str]) -> list[float]:
    given = dict(each.split("=") for each in row["given"].split())
    ask: Asks = globals()[row["by"]]
    found = ask(**{name: _figure(value) for name, value in given.items()})
    return found if isinstance(found, list) else [found]


def _figure(value: str) -> float | str:
    try:
        return float(value)
    except ValueError:
        return value


@every_row(
    "row", rows, ids=lambda row: f"{row['id']} {row['check']}: {row['source']}, {row['basis']}"
)
def test_the_program_answers_as_it_is_published(row):
    expected = [float(each) for each in row["expected"].split()]
    assert _asked(row) == pytest.approx(expected, rel=0, abs=float(row["within"]))


def test_every_row_names_its_source_and_how_it_was_seen():
    told = list(rows())
    assert [row["id"] for row in told[:30]] == [f"C{n:02}" for n in range(1, 31)]
    assert len({row["id"] for row in told}) == len(told)
    bases = {"read", "from memory", "LEL read", "403 read", "own arithmetic"}
    assert {row["basis"] for row in told} <= bases
    assert all(row["source"] for row in told)


def test_a_later_explosive_limit_takes_more_air_than_the_older_one():
    """C10 over C01 and C11 over C03: the older table lets too little air be enough."""
    known = {row["id"]: _asked(row)[0] for row in rows() if row["by"] == "air_for_fire"}
    assert known["C10"] > known["C01"]
    assert known["C11"] > known["C03"]


def test_a_shop_that_follows_the_limits_on_file_stays_below_what_is_dangerous_at_once():
    """C23: the IDLH of ethanol is a tenth of 3.3 %; the limit on file is lower."""
    for solvent, idlh_ppm in (("ethanol", 3300), ("isopropanol", 2000)):
        assert v.TENTH * SOLVENTS[solvent].lel_pct * 1e4 <= idlh_ppm


@pytest.mark.parametrize(
    ("flash_f", "boils_f", "category"),
    [(-40, 94, "1"), (72, 95, "1"), (72, 96, "2"), (73.4, 300, "3"), (140, 300, "3"),
     (141, 400, "4"),     (199, 500, "4"), (200, 500, None)],
)  # fmt: skip
def test_a_category_turns_where_the_rule_says(flash_f, boils_f, category):
    """29 CFR 1910.106(a)(19), read: 73.4, 140 and 199.4 °F; boiling at 95 °F."""
    flash, boils = (to_base(f, Temperature.FAHRENHEIT) for f in (flash_f, boils_f))
    assert flash_category(flash, boils) == category


def test_free_formaldehyde_alone_is_over_any_limit():
    """EPA/600/A-97/005, read: 100 ml (1 g/ml at the least) in 60 m³, shut, against 0.75 ppm
    (29 CFR 1910.1048, from memory).
    """
    least_g = 100 * 1.0 * FACTS.vapours.formaldehyde_pct.low / 100
    assert v.vapour_l(least_g, 30.03) / 60 * 1e3 > 0.75


def test_the_litre_of_vapour_is_that_of_the_manual():
    """387 ft³ a pound-mole at 70 °F, read: 24.1 L a mole."""
    assert 387 * FT3_L / 453.59237 == pytest.approx(v.MOLAR_L, abs=0.1)
    assert math.isclose(v.MOLAR_L, 8.314462 * 294.26 / 101.325, rel_tol=0.003)
