"""The clock's equivalent hours against scipy and psychrolib, asked live.

The frozen table of tests/core is made again on the way. A missing library fails the test: what
re-proves a figure must never pass by not running.
"""

from __future__ import annotations

import csv

import pytest

from finishlog.core.clock.counting import Counting
from finishlog.core.clock.reach import gained
from finishlog.core.finish.classes import Limit, Limits
from tests.air_of import (
    ONE_MINUTE_H,
    SERIES,
    THREE_DAYS_H,
    law,
    nights,
    noisy,
    read_room,
    standing,
    wandering,
)
from tests.reference.equivalent_hours import (
    DRIES_BY,
    FROZEN,
    LEAST_C,
    MOST_C,
    MOST_PCT,
    WAYS,
    cases,
    equivalent_h,
)
from tests.shop_of import at

LIMITS = Limits(Limit(LEAST_C, ""), Limit(MOST_C, ""), Limit(MOST_PCT, ""))

pytestmark = pytest.mark.reference


def frozen() -> dict[tuple[str, ...], float]:
    lines = [x for x in FROZEN.read_text("utf-8").splitlines() if not x.startswith("#")]
    *_, column = lines[0].split(",")
    rows = csv.DictReader(lines)
    return {tuple(v for k, v in row.items() if k != column): float(row[column]) for row in rows}


@pytest.mark.parametrize("name", SERIES)
def test_the_frozen_table_is_what_the_libraries_give(name):
    known = frozen()
    assert len(known) == len(list(cases()))
    for series, mechanism, clock, limits in cases():
        if series == name:
            key = (name, mechanism.value, clock.value, "limits" if limits else "")
            live = equivalent_h(SERIES[name], mechanism, clock, limits)
            assert known[key] == pytest.approx(live, abs=1e-10), key


@pytest.mark.parametrize("seed", range(20, 26))
@pytest.mark.parametrize("mechanism", DRIES_BY)
@pytest.mark.parametrize(("clock", "limits"), WAYS)
def test_other_days_than_the_frozen_ones(seed, mechanism, clock, limits):
    """To one minute over three days."""
    kinds = (wandering(seed, 1.5, 5), noisy(seed, (-5, 38), (20, 99)), nights(seed, 12, 5, 1))
    rows = kinds[seed % len(kinds)]
    counting = Counting(law(mechanism), clock, LIMITS if limits else None)
    ours = gained(standing(read_room(*rows)), counting, at(THREE_DAYS_H))
    expected = equivalent_h(rows, mechanism, clock, limits)
    assert ours == pytest.approx(expected, abs=ONE_MINUTE_H)
