"""The last start is the last one: a minute later, and what it leads to is behind its time."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.plan.search.latest import (
    earliest_start,
    latest_end,
    latest_start,
)
from finishlog.core.plan.search.shop import NEVER, waits
from finishlog.core.plan.search.tables import Tables
from tests.core.plan.search.any_shop import any_shop
from tests.examples import examples

SEEDS = st.integers(0, 1 << 30)


@given(SEEDS, st.integers(0, 20 * 1440))
def test_the_last_end_from_which_a_lag_is_reached_in_time(seed, reached):
    for task in any_shop(seed).tasks:
        for after in task.after:
            end = latest_end(after.ready, reached)
            assert end < 0 or waits(after.ready, end) <= reached
            assert waits(after.ready, max(0, end + 1)) > reached or end < -1


@examples(12)
@given(SEEDS, st.integers(3 * 1440, 40 * 1440))
def test_from_a_last_start_the_first_one_is_itself(seed, end):
    """Whoever is ready only at the last start begins there; a minute later, and it is too late."""
    tables = Tables(any_shop(seed))
    for number, length in enumerate(tables.minutes):
        start, opening = latest_start(tables, number, end)
        if start < 0:
            assert earliest_start(tables, number, 0) + length > end
            continue
        opens, closing = tables.shop.openings[opening]
        assert opens <= start
        assert start + length <= min(end, closing)
        assert earliest_start(tables, number, start) == start
        later = earliest_start(tables, number, start + 1)
        assert later == NEVER or later + length > end
