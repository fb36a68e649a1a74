"""Oily rags: opened by the work, closed only by a deed, never by time.

No published time proves a pile of oily rags safe: fire investigators name one hour to three days
after wetting, and fires at 5 to 10 h (safety check C30: opened 16:00 and not cleared, still open
at 1 h, 10 h and 72 h; it never clears itself). Two days flat outdoors until stiff: county fire
officials. A listed can is emptied the same day: 29 CFR 1910.107. Dust of a film up to 30 days
old: city fire bulletin.
"""

from __future__ import annotations

from datetime import date, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishlog.core.rags import RagsItem, RagsState, evening_of, overdue, stiff_from
from finishlog.core.records import Operation, RagsDeed
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


@settings(deadline=None)
@given(
    st.lists(st.tuples(st.floats(0, 47), st.sampled_from(DEEDS_THAT_HOLD)), max_size=4),
    st.floats(48, 24 * 365 * 3),
)
def test_no_time_ever_closes_it(deeds, later_h):
    """Whatever was done short of handing over, and stiff before two days, it stays an open item."""
    story = oiled()
    for hour, deed in deeds:
        story.rags(hour, deed)
    now, later = only(story, 48), only(story, later_h)
    assert later == now
    assert later.is_open


# --- the deeds --------------------------------------------------------------------------------


def test_spread_is_still_open_and_may_be_tested_after_two_days():
    story = oiled()
    story.rags(1, RagsDeed.SPREAD)
    item = only(story, 2)
    assert item.state is RagsState.SPREAD
    assert item.is_open
    assert stiff_from(item, FACTS) == at(49)
    assert not is_overdue(story, 20)


def test_a_thick_paste_lies_three_days_before_stiff_counts():
    """Pastes skin over; three days is the longest after which oily rags burned (investigators)."""
    story = oiled(key=FILLER)
    story.rags(1, RagsDeed.SPREAD)
    assert stiff_from(only(story, 2), FACTS) == at(73)
    story.rags(60, RagsDeed.STIFF)
    story.rags(70, RagsDeed.STIFF)
    assert only(story, 71).remarks == ("found stiff before 72 h: recorded, still open",)
    story.rags(74, RagsDeed.STIFF)
    assert not only(story, 75).is_open


def test_stiff_before_two_days_is_recorded_and_stays_open():
    story = oiled()
    story.rags(1, RagsDeed.SPREAD)
    story.rags(48.9, RagsDeed.STIFF)
    item = only(story, 50)
    assert item.is_open
    assert any("before 48 h" in remark for remark in item.remarks)


def test_stiff_after_two_days_is_gone():
    story = oiled()
    story.rags(1, RagsDeed.SPREAD)
    story.rags(30, RagsDeed.STIFF)
    story.rags(49, RagsDeed.STIFF)
    assert only(story, 50).state is RagsState.GONE
    assert not only(story, 50).is_open
    assert not is_overdue(story, 500)


def test_a_vague_stiff_counts_from_its_earliest_and_a_vague_spread_from_its_latest():
    story = oiled()
    story.rags((1, 4), RagsDeed.SPREAD)
    story.rags((50, 60), RagsDeed.STIFF)
    assert only(story, 61).is_open, "perhaps only 46 h"


@pytest.mark.parametrize("before", [None, RagsDeed.WATER, RagsDeed.CAN])
def test_stiff_without_being_spread_proves_nothing(before):
    """A crumpled rag is stiff outside and hot inside."""
    story = oiled()
    if before:
        story.rags(0.5, before)
    story.rags(200, RagsDeed.STIFF)
    item = only(story, 201)
    assert item.is_open
    assert any("not on record as spread" in remark for remark in item.remarks)


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
    assert stiff_from(spread, FACTS) == at(49)
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


def test_a_second_coat_does_not_make_the_first_rags_younger():
    story = oiled()
    story.coat(0.8, LINSEED)
    assert is_overdue(story, 1)


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


@pytest.mark.parametrize("operation", [Operation.SAND, Operation.SCUFF, Operation.DENIB])
def test_sanding_a_young_film_opens_an_item_of_dust(operation):
    """City fire bulletin: sander bags, up to 30 days after staining."""
    story = oiled(key=VARNISH)
    story.rags(1, RagsDeed.GONE)
    story.work(60, operation)
    first, dust = items(story, 61)
    assert not first.is_open
    assert dust.is_open
    assert dust.from_dust
    assert dust.product == f"our {VARNISH}"


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


def test_a_coat_turns_an_item_of_dust_into_rags():
    story = oiled(key=VARNISH)
    story.rags(1, RagsDeed.GONE)
    story.work(60, Operation.SCUFF)
    story.coat(61, VARNISH)
    assert not items(story, 62)[1].from_dust


# --- whatever happens -------------------------------------------------------------------------


@settings(deadline=None)
@given(
    st.lists(
        st.one_of(
            st.tuples(st.floats(0, 300), st.sampled_from([LINSEED, STAIN, SHELLAC])),
            st.tuples(st.floats(0, 300), st.sampled_from(list(RagsDeed))),
        ),
        max_size=10,
    )
)
def test_only_a_handing_over_or_stiff_after_two_days_ever_closes_an_item(what):
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
                at(h) == item.since and at(h) - item.opened >= timedelta(hours=48) for h in stiff
            )
            assert handed_over or proved
