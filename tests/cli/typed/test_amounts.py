"""Volumes, weights, wet films and shellac cuts as they are typed at the bench."""

from __future__ import annotations

import pytest

from finishlog.cli.typed.figures.amounts import (
    Amount,
    amount,
    cut,
    film,
    volume,
)
from finishlog.cli.typed.figures.unclear import Unclear
from finishlog.core.measure.units import Volume, Weight
from finishlog.errors import UsageFault
from tests.rows import every_row


def grams(typed: str) -> float:
    return amount(typed).weight_g


def refused(read, typed, *more) -> tuple[str, str]:
    with pytest.raises(UsageFault) as fault:
        read(typed, *more)
    assert "\n" not in fault.value.message + fault.value.hint
    return fault.value.message, fault.value.hint


@every_row(
    ("typed", "litres"),
    [
        ("250 ml", 0.25),
        ("0.25 L", 0.25),
        ("0,25 l", 0.25),
        # US measures by NIST SP 811, appendix B.
        ("1 gal", 3.785411784),
        ("1 us gallon", 3.785411784),
        ("1/2 gal", 1.892705892),
        ("half a gallon", 1.892705892),
        ("a quart", 0.946352946),
        ("1 1/2 qt", 1.419529419),
        ("½ US pt", 0.2365882365),
        ("8 fl oz", 0.2365882365),
        ("8 fl. oz.", 0.2365882365),
    ],
)
def test_a_volume(typed, litres):
    assert volume(typed) == pytest.approx(litres, rel=1e-12)


@pytest.mark.parametrize(
    ("typed", "weight_g"),
    [
        *(("80 g", 80), ("80g", 80), ("1.5 kg", 1500), ("2 lbs", 907.18474)),
        *(("8 oz wt", 226.796185), ("8 oz by weight", 226.796185)),
    ],
)
def test_a_weight(typed, weight_g):
    assert grams(typed) == pytest.approx(weight_g, rel=1e-12)


def test_an_ounce_is_fluid_or_a_weight_and_is_refused_until_it_says_which():
    said = "8 oz could be fluid, which is a volume, or a weight"
    assert refused(volume, "8 oz") == (said, "type 8 fl oz")
    assert refused(amount, "8 oz") == (said, "type 8 fl oz or 8 oz wt")


def test_an_amount_is_by_volume_or_by_weight():
    assert amount("250 ml") == Amount(volume_l=0.25)
    assert amount("80 g") == Amount(weight_g=80)
    assert amount("80", Weight.GRAM) == Amount(weight_g=80)
    assert amount("2", Volume.LITRE) == Amount(volume_l=2)


def test_a_volume_is_no_weight():
    assert refused(volume, "80 g")[0] == "'80 g' is a weight, not a volume"


def test_a_number_without_a_unit_takes_the_persons_own_or_is_refused():
    assert volume("500", Volume.MILLILITRE) == 0.5
    assert refused(volume, "500") == ("'500' has no unit", "type 250 ml, 1 qt or 8 fl oz")


@pytest.mark.parametrize("typed", ["3.2 m2", "3.2m²", "3.2 sq m", "3.2 square metres"])
def test_an_area_is_no_volume(typed):
    assert refused(volume, typed)[0] == f"{typed!r} is an area, not a volume"


@pytest.mark.parametrize("typed", ["4 mil", "4 mils", "101.6 um", "101.6 µm", "101.6 microns"])
def test_a_wet_film(typed):
    assert film(typed) == pytest.approx(101.6)


@pytest.mark.parametrize("typed", ["2 lb cut", "2lb", "2-lb cut", "2#", "2 pound cut", "2 lb/gal"])
def test_a_shellac_cut(typed):
    # 2 lb to 1 US gal, NIST SP 811: 2 x 119.826 g/L.
    assert cut(typed) == pytest.approx(239.653, abs=5e-4)
    assert cut("240 g/L") == 240


def test_a_thousand_with_a_comma_may_be_one():
    said = ("1,000 could be 1000 or 1.000", "type 1000 ml or 1.000 ml")
    assert refused(volume, "1,000 ml") == said


@pytest.mark.parametrize(
    ("read", "typed", "insisted"),
    [
        (volume, "500 L", "500 L!"),
        (volume, "0.1 ml", "0.1 ml!"),
        (grams, "80 kg", "80 kg!"),
        (film, "40 mil", "40 mil!"),
        (cut, "9 lb", "9 lb cut!"),
    ],
)
def test_what_is_unlikely_is_read_when_it_is_insisted_on(read, typed, insisted):
    assert refused(read, typed)[1] == f"type {insisted}"
    assert read(insisted) > 0


@every_row("read", [volume, amount, film, cut])
@every_row("typed", ["", "some", "-2 L", "0 ml", "1/0 qt", "1 imp pint", "99999 gal!"])
def test_what_cannot_be_read_is_refused_with_what_to_type(read, typed):
    assert refused(read, typed)[1].startswith("type ")


def test_a_pint_says_which_where_the_shop_does_not_measure_in_those_of_the_us():
    """0.4732 L, or 0.5683 L by the Weights and Measures Act 1985, schedule 1."""
    with pytest.raises(Unclear) as asked:
        amount("1.5pt", home=Volume.LITRE)
    us, imperial = (
        amount(typed, home=Volume.LITRE).volume_l for typed in asked.value.choices.values()
    )
    assert (us, imperial) == (pytest.approx(0.7098, abs=5e-5), pytest.approx(0.8524, abs=5e-4))
    assert amount("1.5pt", home=Volume.US_QUART).volume_l == us
