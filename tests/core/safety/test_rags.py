"""Oily rags: opened by the work, closed only by a deed, never by time.

No published time proves a pile of oily rags safe: fire investigators name one hour to three days
after wetting, and fires at 5 to 10 h (safety check C30: opened 16:00 and not cleared, still open
at 1 h, 10 h and 72 h; it never clears itself). Flat outdoors until stiff: county fire officials
say two days or more; three, the longest after which rags are known to have burned, are used. A
listed can is emptied the same day: 29 CFR 1910.107. Dust of a film up to 30 days
old: city fire bulletin.
"""

from __future__ import annotations

from datetime import date, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from finishlog.core.log.words import Operation, RagsDeed
from finishlog.core.mixing.containers import Container, ContainerKind, MixPart
from finishlog.core.safety.oily_waste import Handling, Waste, what_wets
from finishlog.core.safety.rags import (
    NotCounted,
    RagsItem,
    RagsState,
    Severity,
    evening_of,
    may_be_stiff_from,
    overdue,
    severity,
)
from finishlog.core.safety.rags_clock import overdue_from
from finishlog.core.shop.things import Product
from tests.examples import examples
from tests.rows import every_row
from tests.shop_of import (
    BLEND,
    FACTS,
    FILLER,
    LACQUER,
    LINSEED,
    SHELLAC,
    STAIN,
    VARNISH,
    WATERBORNE,
    WAX,
    Story,
    at,
)

FOUR = -2.0  # Monday 16:00
LONDON = ZoneInfo("Europe/London")


def oiled(hour: float = 0.0, *, key: str = LINSEED) -> Story:
    story = Story(zone=LONDON)
    story.part("seats")
    story.coat(hour, key)
    return story


def items(story: Story, hour: float) -> tuple[RagsItem, ...]:
    return story.look(hour).rags


def only(story: Story, hour: float) -> RagsItem:
    (item,) = items(story, hour)
    return item


def is_overdue(story: Story, hour: float) -> bool:
    return overdue(only(story, hour), at(hour), FACTS, story.zone)


# --- never by time ----------------------------------------------------------------------------


@pytest.mark.parametrize("later_h", [1, 10, 72, 30 * 24])
def test_opened_at_four_and_not_cleared_it_is_open(later_h):
    """Safety check C30: still open at 1 h, 10 h and 72 h; never clears itself."""
    story = oiled(FOUR)
    item = only(story, FOUR + later_h)
    assert item.is_open
    assert item.state is RagsState.OPEN
    assert item.opened == at(FOUR)
    assert is_overdue(story, FOUR + later_h)


def test_overdue_after_one_hour():
    """Fires have started about one hour after wetting (fire investigators)."""
    story = oiled(FOUR)
    assert not is_overdue(story, FOUR + 0.99)
    assert is_overdue(story, FOUR + 1)


DEEDS_THAT_HOLD = [RagsDeed.SPREAD, RagsDeed.WATER, RagsDeed.CAN, RagsDeed.LIFTED, RagsDeed.STIFF]


@given(
    st.lists(st.tuples(st.floats(0, 71), st.sampled_from(DEEDS_THAT_HOLD)), max_size=4),
    st.floats(72, 24 * 365 * 3),
)
def test_no_time_ever_closes_it(deeds, later_h):
    """Whatever was done short of handing over, and stiff before three days, it stays open."""
    story = oiled()
    for hour, deed in deeds:
        story.rags(hour, deed)
    now, later = only(story, 72), only(story, later_h)
    assert later == now
    assert later.is_open


# --- the deeds --------------------------------------------------------------------------------


def test_spread_is_still_open_and_may_be_tested_after_three_days():
    story = oiled()
    story.rags(1, RagsDeed.SPREAD)
    item = only(story, 2)
    assert item.state is RagsState.SPREAD
    assert item.is_open
    assert may_be_stiff_from(item, FACTS) == at(73)
    assert not is_overdue(story, 20)


def test_a_gel_lies_longer_before_stiff_counts():
    """A gel skins over and stays wet within (common practice: allow longer)."""
    story = oiled(key="gel-stain")
    story.rags(1, RagsDeed.SPREAD)
    assert may_be_stiff_from(only(story, 2), FACTS) == at(1 + 144)
    story.rags(100, RagsDeed.STIFF)
    assert only(story, 101).remarks == (NotCounted.EARLY,)
    story.rags(146, RagsDeed.STIFF)
    assert not only(story, 147).is_open


@pytest.mark.parametrize("key", [FILLER, WAX])
def test_a_paste_never_counts_as_stiff(key):
    """It stays wet within: water (common practice)."""
    story = oiled(key=key)
    story.rags(1, RagsDeed.SPREAD)
    assert may_be_stiff_from(only(story, 2), FACTS) is None
    story.rags(24 * 60, RagsDeed.STIFF)
    item = only(story, 24 * 61)
    assert (item.state, item.remarks) == (RagsState.SPREAD, (NotCounted.NEVER_STIFF,))


def test_stiff_before_three_days_is_recorded_and_stays_open():
    story = oiled()
    story.rags(1, RagsDeed.SPREAD)
    story.rags(72.9, RagsDeed.STIFF)
    item = only(story, 74)
    assert item.is_open
    assert item.remarks == (NotCounted.EARLY,)
    assert [d.deed for d in item.history] == [RagsDeed.SPREAD, RagsDeed.STIFF]


def test_stiff_after_three_days_is_closed_as_self_heating_and_called_stiff():
    story = oiled()
    story.rags(1, RagsDeed.SPREAD)
    story.rags(30, RagsDeed.STIFF)
    story.rags(73, RagsDeed.STIFF)
    assert only(story, 74).state is RagsState.STIFF
    assert not only(story, 74).is_open
    assert not is_overdue(story, 500)


def test_a_vague_stiff_counts_from_its_earliest_and_a_vague_spread_from_its_latest():
    story = oiled()
    story.rags((1, 4), RagsDeed.SPREAD)
    story.rags((74, 80), RagsDeed.STIFF)
    assert only(story, 81).is_open, "perhaps only 70 h"


@pytest.mark.parametrize("before", [None, RagsDeed.WATER, RagsDeed.CAN])
def test_stiff_without_being_spread_proves_nothing(before):
    """A crumpled rag is stiff outside and hot inside."""
    story = oiled()
    if before:
        story.rags(0.5, before)
    story.rags(200, RagsDeed.STIFF)
    item = only(story, 201)
    assert item.is_open
    assert item.remarks == (NotCounted.NOT_SPREAD,)


def test_water_holds_and_lifted_out_it_is_open_again():
    story = oiled()
    story.rags(0.5, RagsDeed.WATER)
    assert only(story, 100).state is RagsState.WATER
    assert only(story, 100).is_open
    assert not is_overdue(story, 100)
    story.rags(101, RagsDeed.LIFTED)
    assert only(story, 101.5).state is RagsState.OPEN
    assert not is_overdue(story, 101.9)
    assert is_overdue(story, 102)


def test_a_listed_can_is_overdue_the_next_day():
    """29 CFR 1910.107(g)(3): emptied at the end of each day or shift."""
    story = oiled()
    story.rags(0.5, RagsDeed.CAN)
    assert only(story, 3).state is RagsState.CAN
    assert not is_overdue(story, 3)
    assert not is_overdue(story, 9.9), "03:54: still the same evening"
    assert is_overdue(story, 10.1)
    assert is_overdue(story, 24 * 9)


def test_handed_over_is_gone():
    story = oiled()
    story.rags(0.5, RagsDeed.WATER)
    story.rags(40, RagsDeed.GONE)
    assert not only(story, 41).is_open


def test_one_item_may_be_dealt_with_by_name():
    story = oiled()
    stain = story.coat(0.5, STAIN)
    story.rags(1, RagsDeed.SPREAD, item=stain.id)
    oil, stained = items(story, 2)
    assert (oil.state, stained.state) == (RagsState.OPEN, RagsState.SPREAD)


def test_a_deed_for_all_means_all_that_are_open():
    story = oiled()
    story.coat(0.5, STAIN)
    story.rags(1, RagsDeed.SPREAD)
    assert {i.state for i in items(story, 2)} == {RagsState.SPREAD}


def test_what_was_handed_over_last_year_is_not_brought_back_by_a_deed_of_today():
    story = oiled()
    story.rags(1, RagsDeed.GONE)
    for deed in (RagsDeed.SPREAD, RagsDeed.WATER, RagsDeed.LIFTED, RagsDeed.CAN, RagsDeed.STIFF):
        story.rags(24 * 300, deed)
    assert not only(story, 24 * 301).is_open


def test_lifting_rags_out_of_water_leaves_those_that_lie_spread():
    story = oiled()
    story.rags(1, RagsDeed.SPREAD)
    later = story.coat(24, LINSEED)
    story.rags(25, RagsDeed.WATER, item=later.id)
    story.rags(26, RagsDeed.LIFTED)
    spread, lifted = items(story, 27)
    assert spread.state is RagsState.SPREAD
    assert may_be_stiff_from(spread, FACTS) == at(73)
    assert lifted.state is RagsState.OPEN


# --- which item -------------------------------------------------------------------------------


def test_one_item_an_evening_and_product():
    story = oiled()
    story.part("legs")
    story.coat(1, LINSEED, story.named("legs"))
    story.coat(1.5, STAIN, story.named("legs"))
    assert [i.product for i in items(story, 2)] == [f"our {LINSEED}", f"our {STAIN}"]
    assert len(items(story, 2)[0].entries) == 2


def test_past_midnight_is_still_the_same_evening():
    story = oiled(4)  # 22:00
    story.coat(8.5, LINSEED)  # 02:30
    item = only(story, 9)
    assert item.evening == date(2026, 11, 23)
    assert len(item.entries) == 2


def test_after_four_in_the_morning_another_day_begins():
    story = oiled(4)
    story.coat(10.5, LINSEED)
    assert [i.evening.day for i in items(story, 11)] == [23, 24]


def test_the_evening_is_the_evening_here():
    """04:00 is told by the clock on the wall: in June London is an hour ahead of UTC."""
    june = at(0).replace(month=6, day=10, hour=3, minute=30)
    assert evening_of(june, LONDON) == date(2026, 6, 10)
    assert evening_of(june.replace(month=12), LONDON) == date(2026, 12, 9)


def test_a_later_coat_the_same_evening_opens_them_again():
    story = oiled()
    story.rags(1, RagsDeed.SPREAD)
    story.coat(2, LINSEED)
    item = only(story, 2.5)
    assert item.state is RagsState.OPEN
    assert item.opened == at(0)
    assert not is_overdue(story, 2.9)
    assert is_overdue(story, 3)


def test_in_use_there_is_no_heap_each_use_restarts_the_hour_of_what_is_in_the_hand():
    story = oiled()
    story.coat(0.8, LINSEED)
    assert not is_overdue(story, 1.7)
    assert is_overdue(story, 1.8)


def test_what_was_overdue_already_is_not_made_young_by_another_coat():
    story = oiled()
    story.coat(1.2, LINSEED)
    assert is_overdue(story, 1.2)


def test_dust_in_a_bag_is_a_heap_and_grows_no_younger():
    story = oiled(key=VARNISH)
    story.rags(1, RagsDeed.GONE)
    story.work(60, Operation.SAND)
    story.work(60.8, Operation.SAND)
    (bag,) = [i for i in items(story, 61) if i.from_dust]
    assert overdue(bag, at(61), FACTS, story.zone)


def test_a_coat_of_the_next_evening_leaves_the_spread_ones_alone():
    story = oiled()
    story.rags(1, RagsDeed.SPREAD)
    story.coat(24, LINSEED)
    first, second = items(story, 25)
    assert (first.state, second.state) == (RagsState.SPREAD, RagsState.OPEN)


def test_of_a_vague_coat_the_rags_are_as_old_as_they_can_be():
    story = Story(zone=LONDON)
    story.part("seats")
    story.coat((0, 4), LINSEED)
    assert only(story, 4).opened == at(0)
    assert is_overdue(story, 4)


def test_a_deed_that_may_have_come_before_a_vague_coat_does_not_deal_with_its_rags():
    """Oiled "in the evening", spread at 20:00: the last rags may have been wetted at 22:00."""
    story = Story(zone=LONDON)
    story.part("seats")
    story.coat((0, 4), LINSEED)
    story.rags(2, RagsDeed.SPREAD)
    assert only(story, 5).state is RagsState.OPEN


def test_at_one_moment_the_coat_comes_before_the_deed():
    story = oiled(0)
    story.rags(0, RagsDeed.SPREAD)
    assert only(story, 1).state is RagsState.SPREAD


# --- what opens one ---------------------------------------------------------------------------


@pytest.mark.parametrize("key", [LINSEED, BLEND, "hardwax-oil", STAIN, VARNISH, "oil-polyurethane"])
def test_what_dries_by_oxygen_opens_an_item(key):
    """Fire services and a forensic laboratory: oils, oil stains, varnish; the cautious reading."""
    assert only(oiled(key=key), 1).is_open


@pytest.mark.parametrize("key", [WATERBORNE, SHELLAC, LACQUER])
def test_what_does_not_heat_itself_opens_none(key):
    assert items(oiled(key=key), 1) == ()


@pytest.mark.parametrize("operation", [Operation.SAND, Operation.LEVEL])
def test_sanding_or_levelling_a_young_film_opens_an_item_of_dust(operation):
    """City fire bulletin: sander bags, up to 30 days after staining."""
    story = oiled(key=VARNISH)
    story.rags(1, RagsDeed.GONE)
    story.work(60, operation)
    first, dust = items(story, 61)
    assert not first.is_open
    assert dust.is_open
    assert dust.from_dust
    assert dust.product == f"our {VARNISH}"


@pytest.mark.parametrize("operation", [Operation.SCUFF, Operation.DENIB])
def test_a_hand_scuff_of_a_young_film_is_a_line_and_no_item(operation):
    story = oiled(key=VARNISH)
    story.rags(1, RagsDeed.GONE)
    scuff = story.work(60, operation)
    assert [i for i in items(story, 61) if i.is_open] == []
    wet = [w for w in what_wets(story.log(61).entries, FACTS) if w.entry == scuff.id]
    assert [(w.waste, w.by_hand) for w in wet] == [(Waste.DUST, True)]


@pytest.mark.parametrize(
    ("operation", "waste"),
    [
        (Operation.WIPE, Waste.RAGS),
        (Operation.SOLVENT_WIPE, Waste.RAGS),
        (Operation.BUFF, Waste.RAGS),
        (Operation.STEEL_WOOL, Waste.PADS),
        (Operation.RUB, Waste.PADS),
    ],
)
def test_what_touches_a_young_oil_film_is_wet_with_it(operation, waste):
    """Oil that bled back is wiped days later; wool and pads count as rags (NFPA tip sheet)."""
    story = oiled()
    story.rags(1, RagsDeed.GONE)
    story.work(24 * 5, operation)
    (fresh,) = [i for i in items(story, 24 * 5 + 1) if i.is_open]
    assert fresh.made_of == {waste}
    assert fresh.state is RagsState.OPEN


@every_row("key", [WATERBORNE, SHELLAC, LACQUER])
@every_row("operation", list(Operation))
def test_no_work_on_a_film_that_does_not_heat_opens_one(key, operation):
    story = oiled(key=key)
    story.work(24, operation)
    assert items(story, 25) == ()


@pytest.mark.parametrize("operation", [Operation.WIPE, Operation.STEEL_WOOL, Operation.RUB])
def test_what_touches_a_shellac_over_young_oil_is_not_wet_with_oil(operation):
    story = oiled()
    story.rags(1, RagsDeed.GONE)
    story.coat(72, SHELLAC)
    story.work(96, operation)
    assert [i for i in items(story, 97) if i.is_open] == []


@pytest.mark.parametrize("operation", [Operation.SOLVENT_WIPE, Operation.STEEL_WOOL])
def test_bare_wood_leaves_nothing_whatever_it_is_wiped_with(operation):
    story = Story(zone=LONDON)
    story.part("seats", species="teak")
    story.work(0, operation)
    assert items(story, 1) == ()


def test_dust_of_a_film_older_than_thirty_days_opens_none():
    story = oiled(key=VARNISH)
    story.work(24 * 30 + 1, Operation.SAND)
    assert len(items(story, 24 * 31)) == 1
    story.work(24 * 29, Operation.SAND)
    assert len(items(story, 24 * 31)) == 2


def test_an_oil_film_sanded_through_a_coat_that_does_not_heat_is_still_oil():
    story = oiled(key=VARNISH)
    story.coat(60, SHELLAC)
    story.work(70, Operation.SAND)
    assert any(i.from_dust for i in items(story, 71))


def test_sanding_bare_wood_or_shellac_opens_none():
    story = oiled(key=SHELLAC)
    story.work(24, Operation.SAND)
    assert items(story, 25) == ()


def test_dust_and_cloths_of_one_evening_are_kept_apart():
    """Cloths may be spread, dust never: what is done with the one says nothing of the other."""
    story = oiled(key=VARNISH)
    story.rags(1, RagsDeed.GONE)
    story.work(60, Operation.SAND)
    story.coat(61, VARNISH)
    story.rags(61.5, RagsDeed.SPREAD)
    _, dust, cloths = items(story, 62)
    assert (dust.made_of, dust.state) == ({Waste.DUST}, RagsState.OPEN)
    assert dust.remarks == (NotCounted.NEVER_SPREAD,)
    assert (cloths.made_of, cloths.state) == ({Waste.RAGS}, RagsState.SPREAD)


# --- oil in a mix -----------------------------------------------------------------------------


def mixed(base: str, *parts: MixPart, drawn_from: str = "", also: Container | None = None) -> Story:
    """Tell of a coat that came from a mix."""
    story = Story(zone=LONDON)
    story.part("seats")
    product = story.product(base)
    story.products[1] = Product(1, "what is in the jar", SHELLAC)
    mix = Container(9, "mix-1", ContainerKind.MIX, product, parts=parts, drawn_from=drawn_from)
    story.containers = {9: mix} | ({also.id: also} if also else {})
    coat = story.coat(0, base)
    story.entries[-1] = replace(coat, container=9)
    return story


@every_row(
    "name",
    ["linseed", "Boiled Linseed Oil", "tung oil", "turpentine", "citrus thinner", "d-limonene",
     "walnut oil", "oil", "BLO", "long-oil alkyd", "danish oil", "varnish"],
)  # fmt: skip
def test_a_drying_oil_in_any_part_opens_an_item(name):
    """21 CFR 175.300 lists the drying oils; a limonene sheet warns that soaked rags may heat."""
    story = mixed(SHELLAC, MixPart("shellac", 3), MixPart(name, 1))
    assert [i.state for i in items(story, 1)] == [RagsState.OPEN]


@every_row(
    "name",
    ["alcohol", "water", "mineral spirits", "mineral oil", "flakes", "walnut dye", "acetone",
     "white spirit", "paraffin oil", "oil-free retarder", "conversion varnish", "tungsten pigment"],
)  # fmt: skip
@every_row("base", [SHELLAC, WATERBORNE, LACQUER])
def test_what_does_not_dry_by_oxygen_opens_none_in_a_mix(base, name):
    story = mixed(base, MixPart("base", 3), MixPart(name, 1))
    assert items(story, 1) == ()


def test_oil_is_seen_in_a_mix_that_was_mixed_into_another():
    inner = Container(8, "my brew", ContainerKind.JAR, 1, parts=(MixPart("stand oil", 1),))
    assert items(mixed(SHELLAC, MixPart("My Brew", 1), also=inner), 1)
    assert items(mixed(SHELLAC, MixPart("shellac", 1), drawn_from="my brew", also=inner), 1)


def test_a_part_that_is_a_product_counts_by_its_class():
    story = mixed(SHELLAC)
    varnish = story.product(VARNISH)
    story.products[varnish] = replace(story.products[varnish], name="number five")
    story.containers[9] = replace(story.containers[9], parts=(MixPart("number five", 1, varnish),))
    assert items(story, 1)


def test_what_is_noted_of_a_coat_is_no_ingredient():
    story = mixed(SHELLAC, MixPart("flakes", 1))
    story.entries[-1] = replace(story.entries[-1], note="over the linseed oil of last year")
    assert items(story, 1) == ()


def test_mixes_that_name_each_other_come_to_an_end():
    inner = Container(8, "b", ContainerKind.MIX, 1, parts=(MixPart("mix-1", 1),))
    assert items(mixed(SHELLAC, MixPart("b", 1), also=inner), 1) == ()


def test_the_film_of_an_oily_mix_heats_when_it_is_sanded_young():
    story = mixed(SHELLAC, MixPart("linseed", 1))
    story.rags(1, RagsDeed.GONE)
    story.work(50, Operation.SAND)
    assert [i.made_of for i in items(story, 51) if i.is_open] == [{Waste.DUST}]


# --- a clock in air ---------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("celsius", "hours"),
    [(5, 1.0), (23, 1.0), (28, 2**-0.5), (29.9, 2**-0.69), (30, 0.0), (37, 0.0)],
)
def test_an_hour_to_23_degrees_halved_for_each_ten_above_and_at_once_from_thirty(celsius, hours):
    """The reaction about doubles for each 10 °C (fire investigators); 30 °C is our own bound."""
    story = oiled().steady(celsius, since=-12, days=2)
    assert is_overdue(story, hours + 0.001)
    assert hours == 0 or not is_overdue(story, hours - 0.001)


def test_the_room_where_it_was_done_decides_not_a_warm_one_elsewhere():
    story = oiled().steady(20, since=-12, days=2)
    attic = story.another_room()
    story.read(-1, 35, 30, attic)
    assert not is_overdue(story, 0.9)


def test_a_reading_of_last_summer_says_nothing_of_today():
    story = oiled()
    story.read(-24 * 150, 36, 40)
    assert not is_overdue(story, 0.9)


@examples(30)
@given(
    st.lists(st.floats(-10, 45), min_size=4, max_size=4),
    st.lists(st.floats(0, 15), min_size=4, max_size=4),
)
def test_a_warmer_heap_is_never_overdue_later_and_a_colder_cloth_never_stiff_sooner(cold, more):
    def told(airs):
        story = oiled()
        for n, celsius in enumerate(airs):
            story.read(-1 + 20 * n, celsius, 50)
        story.rags(0, RagsDeed.SPREAD)
        near = story.look(200).rags[0].near
        return (
            overdue_from(at(0), near, FACTS.rags),
            may_be_stiff_from(only(story, 200), FACTS) or at(10**5),
        )

    colder = told(cold)
    warmer = told([c + m for c, m in zip(cold, more, strict=True)])
    assert warmer[0] <= colder[0] <= at(1)
    assert colder[1] >= warmer[1] >= at(72)


def test_hours_below_ten_degrees_do_not_count_towards_stiff():
    story = oiled()
    for hour in range(-2, 24 * 12):
        story.read(hour, 14 if hour % 24 < 8 else 2, 60)
    story.rags(0, RagsDeed.SPREAD)
    ripe = may_be_stiff_from(only(story, 24 * 12), FACTS)
    assert ripe is not None
    # Eight warm hours a day, the slopes between the readings counted in part.
    assert at(24 * 7) < ripe < at(24 * 10)


def test_in_frost_no_date_is_given_and_stiff_does_not_count():
    story = oiled().steady(-2, 60, since=-12, days=10)
    story.rags(1, RagsDeed.SPREAD)
    assert may_be_stiff_from(only(story, 24 * 9), FACTS) is None
    story.rags(24 * 9, RagsDeed.STIFF)
    assert only(story, 24 * 9 + 1).is_open


def test_rags_lie_outdoors_so_the_coldest_room_that_is_known_decides():
    story = oiled().steady(20, since=-12, days=10)
    yard = story.another_room("yard")
    story.steady(4, since=-12, days=10, room=yard)
    story.rags(1, RagsDeed.SPREAD)
    assert may_be_stiff_from(only(story, 24 * 9), FACTS) is None


# --- how much to be feared --------------------------------------------------------------------


def feared(story: Story, hour: float) -> Severity:
    return severity(only(story, hour), at(hour), FACTS, story.zone)


def test_fear_is_kept_for_what_is_dangerous():
    story = oiled()
    assert feared(story, 0.1) is Severity.DANGER, "nobody said where they are"
    story.rags(0.5, RagsDeed.SPREAD)
    assert feared(story, 30) is Severity.WATCH
    story.rags(40, RagsDeed.WATER)
    assert feared(story, 41) is Severity.QUIET
    assert feared(story, 40 + 24 * 6.9) is Severity.QUIET
    assert feared(story, 40 + 24 * 7) is Severity.WATCH, "once a week they are asked for"
    story.rags(40 + 24 * 8, RagsDeed.WATER)
    assert feared(story, 40 + 24 * 14) is Severity.QUIET, "looked at, and asked again in a week"
    story.rags(400, RagsDeed.CAN)
    assert feared(story, 400.1) is Severity.QUIET
    assert feared(story, 424) is Severity.DANGER, "a can is emptied the same day"


# --- whatever happens -------------------------------------------------------------------------


@given(
    st.lists(
        st.one_of(
            st.tuples(st.floats(0, 300), st.sampled_from([LINSEED, STAIN, SHELLAC])),
            st.tuples(st.floats(0, 300), st.sampled_from(list(RagsDeed))),
        ),
        max_size=10,
    )
)
def test_only_a_handing_over_or_stiff_after_three_days_ever_closes_an_item(what):
    story = Story(zone=LONDON)
    story.part("seats")
    for hour, thing in what:
        if isinstance(thing, RagsDeed):
            story.rags(hour, thing)
        else:
            story.coat(hour, thing)
    gone = [hour for hour, thing in what if thing is RagsDeed.GONE]
    stiff = [hour for hour, thing in what if thing is RagsDeed.STIFF]
    for item in items(story, 301):
        assert item.state in set(RagsState)
        if not item.is_open:
            handed_over = any(at(h) == item.since for h in gone)
            proved = any(
                at(h) == item.since and at(h) - item.opened >= timedelta(hours=72) for h in stiff
            )
            assert handed_over or proved


# Where each deed leads, written down by hand: state after it, by what it was done with.
_LEADS_TO = {
    RagsDeed.WATER: RagsState.WATER,
    RagsDeed.CAN: RagsState.CAN,
    RagsDeed.LIFTED: RagsState.OPEN,
    RagsDeed.GONE: RagsState.GONE,
}


def expected(state: RagsState, deed: RagsDeed, kind: Handling, lay_h: float) -> RagsState:
    """Say where a deed leads; `lay_h`: for how long they lay spread, in air that counts."""
    if deed in _LEADS_TO:
        return _LEADS_TO[deed]
    if deed is RagsDeed.SPREAD:
        return RagsState.OPEN if kind is Handling.HEAP else RagsState.SPREAD
    ripe = kind is Handling.CLOTHS and state is RagsState.SPREAD and lay_h >= 72
    return RagsState.STIFF if ripe else state


@examples(60)
@given(
    st.lists(
        st.tuples(st.integers(1, 40), st.sampled_from(list(RagsDeed))), min_size=1, max_size=8
    ),
    st.sampled_from([Operation.WIPE, Operation.STEEL_WOOL, Operation.SAND]),
)
def test_whatever_is_done_in_whatever_order_the_state_is_what_the_table_says(deeds, work):
    story = Story(zone=LONDON)
    story.part("seats")
    story.coat(-24, LINSEED)
    story.rags(-23, RagsDeed.GONE)
    wet = story.work(0, work)
    hour, since, state = 0.0, 0.0, RagsState.OPEN
    for gap, deed in deeds:
        hour += gap
        story.rags(hour, deed, item=wet.id)
        (item,) = [i for i in items(story, hour) if wet.id in i.entries]
        before, state = state, expected(state, deed, item.handling, hour - since)
        if deed is not RagsDeed.STIFF or state is not before:
            since = hour
        assert item.state is state
        assert item.is_open is (state not in {RagsState.GONE, RagsState.STIFF})
        assert [d.deed for d in item.history][-1] is deed
