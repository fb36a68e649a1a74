"""The drying stages and the order they come in.

The stages and their names follow ASTM D1640; turn, clamp, stack, pack, close, light use and rub
are the trade's own milestones (common practice).
"""

from __future__ import annotations

from itertools import combinations, pairwise

import pytest

from finishlog.core.finish.stages import HANDLING, ORDER, Stage, shown, with_later
from tests.rows import every_row
from tests.stage_order import NOT_LATER_THAN, implied_by

LINE = (
    Stage.TOUCH,
    Stage.DUST_FREE,
    Stage.TACK_FREE,
    Stage.TURN,
    Stage.CLAMP,
    Stage.STACK,
    Stage.PACK,
    Stage.CURED,
)


def comes_before(early: Stage, late: Stage) -> bool:
    return early is not late and early in implied_by([late])


@pytest.mark.parametrize(("early", "late"), list(pairwise(LINE)))
def test_handling_runs_from_touch_to_fully_hard(early, late):
    """ASTM D1640: set-to-touch, dust-free, tack-free; then common practice."""
    assert comes_before(early, late)
    assert not comes_before(late, early)


def test_the_handling_line_is_these_eight():
    assert HANDLING == LINE


def test_whoever_may_pack_may_also_touch_turn_clamp_and_stack():
    assert implied_by([Stage.PACK]) == frozenset(LINE[: LINE.index(Stage.PACK) + 1])


@every_row(
    ("one", "other", "why"),
    [
        (Stage.RECOAT, Stage.SAND, "sprayed lacquer and waterborne recoat before they sand"),
        (Stage.CLAMP, Stage.RECOAT, "shellac recoats long before it bears a caul"),
        (Stage.TURN, Stage.RECOAT, "shellac and varnish may be turned before they are recoated"),
        (Stage.TACK_FREE, Stage.RECOAT, "lacquer goes wet on tacky"),
        (Stage.STACK, Stage.SAND, "what is stacked need not be sanded"),
        (Stage.CLOSE, Stage.STACK, "a door may be shut that cannot be stacked, and the reverse"),
        (Stage.LIGHT_USE, Stage.PACK, "wrap prints what a hand does not"),
        (Stage.RUB, Stage.CURED, "lacquer is rubbed out at days, hard at weeks"),
    ],
)
def test_no_order_is_claimed_between(one, other, why):
    """Common practice; Stage order as corrected in the reference notes on ASTM D1640."""
    assert not comes_before(one, other), why
    assert not comes_before(other, one), why


@pytest.mark.parametrize("beside", [Stage.RECOAT, Stage.SAND])
def test_recoat_and_sand_stand_beside_the_line_between_touch_and_fully_hard(beside):
    assert comes_before(Stage.TOUCH, beside)
    assert comes_before(beside, Stage.CURED)
    assert beside not in HANDLING


@pytest.mark.parametrize("late", [Stage.CLOSE, Stage.LIGHT_USE, Stage.RUB])
def test_no_tacky_film_is_shut_used_or_rubbed(late):
    assert comes_before(Stage.TACK_FREE, late)


def test_the_order_has_no_circle():
    for one, other in combinations(Stage, 2):
        assert not (comes_before(one, other) and comes_before(other, one))


def test_what_a_check_denies_is_carried_on_by_the_same_order():
    assert ORDER == NOT_LATER_THAN
    for stage in Stage:
        assert with_later([stage]) == {s for s in Stage if stage in implied_by([s])}


def test_every_stage_has_its_place():
    named = {stage for pair in NOT_LATER_THAN for stage in pair}
    assert named == set(Stage)


def test_implied_by_keeps_what_it_is_given():
    assert implied_by([]) == frozenset()
    assert implied_by([Stage.TOUCH]) == {Stage.TOUCH}


def test_cured_is_shown_as_fully_hard_and_never_as_cured():
    """Dry-through of a specification is not fully hard: the words must not invite the mix-up."""
    assert shown(Stage.CURED) == "fully hard"
    assert shown(Stage.LIGHT_USE) == "light use"
    assert shown(Stage.STACK) == "stack"
