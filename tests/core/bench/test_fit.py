"""What fits into the minutes that a person has: common practice of an evening at the bench.

Dust before coats, then vacuum and settle; one set-up and one clean-up for like coats. The minutes
themselves are spans of the trade (facts/data, common practice), taken at the longer end.
"""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.bench.fit import DUSTY, Chore, fit, takes_min
from finishlog.core.finish.classes import Method
from finishlog.core.log.words import Operation
from finishlog.core.published.hands_on import minutes_at_it
from tests.shop_of import FACTS

HANDS = FACTS.hands_on


def coat(number: int, product: str = "topcoat", *, pieces: int = 1, scuff: bool = False) -> Chore:
    return Chore(number, Operation.COAT, product, Method.BRUSH, pieces, 1, scuff)


def test_one_coat_takes_its_set_up_and_clean_up_with_it():
    at_it = minutes_at_it(HANDS, Operation.COAT, Method.BRUSH, 1, 1)
    brush = HANDS.methods[Method.BRUSH]
    around = brush.set_up_min.high + brush.clean_up_min.high
    assert takes_min([coat(1)], HANDS) == at_it + around


def test_like_coats_share_the_set_up_and_the_clean_up():
    together = takes_min([coat(1), coat(2)], HANDS)
    apart = takes_min([coat(1)], HANDS) + takes_min([coat(2)], HANDS)
    kit = (
        HANDS.methods[Method.BRUSH].set_up_min.high + HANDS.methods[Method.BRUSH].clean_up_min.high
    )
    assert apart - together == kit


def test_two_products_are_two_kits():
    kit = (
        HANDS.methods[Method.BRUSH].set_up_min.high + HANDS.methods[Method.BRUSH].clean_up_min.high
    )
    two = takes_min([coat(1), coat(2, "sealer")], HANDS)
    assert two == takes_min([coat(1), coat(2)], HANDS) + kit


def test_scuffing_before_a_coat_costs_the_vacuum_and_the_settling_dust():
    scuff = minutes_at_it(HANDS, Operation.SCUFF, None, 1, 1)
    dust = HANDS.vacuum_min.high + HANDS.settle_min.high
    assert takes_min([coat(1, scuff=True)], HANDS) == takes_min([coat(1)], HANDS) + scuff + dust


def test_dust_comes_first_and_like_coats_stand_together():
    chores = [
        coat(0, "topcoat"),
        coat(1, "sealer"),
        Chore(2, Operation.SCUFF),
        coat(3, "topcoat", scuff=True),
    ]
    order = [c.number for c in fit(chores, 1000, HANDS).chosen]
    assert order == [2, 3, 0, 1]


def test_the_most_urgent_is_chosen_first_and_a_shorter_one_may_still_fit():
    big, small = coat(0, pieces=30), coat(1)
    visit = fit([big, small], takes_min([small], HANDS), HANDS)
    assert visit.chosen == (small,)
    assert visit.left_out == (big,)


def test_no_minutes_no_work():
    assert fit([coat(0)], 0, HANDS).chosen == ()


CHORES = st.lists(
    st.builds(
        Chore,
        st.integers(0, 50),
        st.sampled_from([Operation.COAT, Operation.SCUFF, Operation.SAND, Operation.HARDWARE]),
        st.sampled_from(["topcoat", "sealer", "oil"]),
        st.sampled_from([None, *Method]),
        st.integers(1, 12),
        st.integers(1, 2),
        st.booleans(),
    ),
    max_size=8,
)


@given(CHORES, st.floats(0, 400))
def test_what_is_said_to_fit_does(chores: list[Chore], minutes: float):
    visit = fit(chores, minutes, HANDS)
    assert visit.takes_min <= minutes
    assert visit.takes_min == takes_min(visit.chosen, HANDS)
    assert sorted(map(id, (*visit.chosen, *visit.left_out))) == sorted(map(id, chores))
    dusty = [c.operation in DUSTY for c in visit.chosen]
    assert dusty == sorted(dusty, reverse=True)


@given(CHORES, st.floats(0, 300), st.floats(0, 200))
def test_more_time_never_leaves_less_done_of_what_is_most_urgent(
    chores: list[Chore], minutes: float, more: float
):
    if not chores:
        return
    first = chores[0]
    if first in fit(chores, minutes, HANDS).chosen:
        assert first in fit(chores, minutes + more, HANDS).chosen
