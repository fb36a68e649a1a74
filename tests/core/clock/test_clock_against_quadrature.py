"""The clock over three days of a logger, against general-purpose quadrature: to one minute.

The table was made by scipy and psychrolib (tests/reference/equivalent_hours.py). The readings are
seeded and invented: -5 to 38 °C, up to 99 % RH, by the hour and every ten minutes; some cross the
limits every night or every afternoon. The clock counts by quarter hours, and the law is an
estimate: more than a minute nobody is shown.
"""

from __future__ import annotations

import csv
from datetime import timedelta
from pathlib import Path

import pytest

from finishlog.core.clock.counting import Clock, Counting
from finishlog.core.clock.reach import gained, reach
from finishlog.core.finish.classes import Limit, Limits, Mechanism
from tests.air_of import ONE_MINUTE_H, SERIES, THREE_DAYS_H, OwnLaw, law, read_room, standing
from tests.rows import every_row
from tests.shop_of import at

# 10 to 32.2 °C: TM 55-1500-345-23; 75 % RH: the oil and water classes.
LIMITS = Limits(Limit(10, ""), Limit(32.2, ""), Limit(75, ""))


def table() -> list[dict[str, str]]:
    """Read the frozen table; its first lines say where it comes from."""
    text = Path(__file__).with_name("equivalent_hours.csv").read_text("utf-8")
    return list(csv.DictReader(x for x in text.splitlines() if not x.startswith("#")))


def counting_of(row: dict[str, str]) -> Counting:
    limits = LIMITS if row["limits"] else None
    return Counting(law(Mechanism(row["mechanism"])), Clock(row["clock"]), limits)


@every_row(
    "row", table(), ids=lambda r: " ".join(r[k] for k in ("series", "mechanism", "clock", "limits"))
)
def test_equivalent_hours_are_those_of_quadrature(row):
    """scipy 1.17.1 integrate.quad with `points=`, psychrolib 2.5.0."""
    rows = SERIES[row["series"]]
    met, end, expected = standing(read_room(*rows)), at(rows[-1][0]), float(row["equivalent_h"])
    counting = counting_of(row)
    assert gained(met, counting, end) == pytest.approx(expected, abs=ONE_MINUTE_H)
    # Where a limit is crossed near the end, a minute of the label may be a night.
    if not row["limits"]:
        minute = timedelta(minutes=1) / counting.pace(met.span_at(end))
        assert abs(reach(expected, met, counting).moment - end) <= minute


def test_air_must_not_be_averaged_before_it_counts():
    """Rates are curved: one pace at the mean air of a day misses part of it (Jensen)."""
    rows = SERIES["frost to heat"]
    mean_c = sum(celsius for _, celsius, _ in rows) / len(rows)
    half = OwnLaw(lambda t, _rh: 2 ** ((t - 43) / 20))
    true = gained(standing(read_room(*rows)), Counting(half, Clock.WAIT), at(THREE_DAYS_H))
    assert true > 1.02 * THREE_DAYS_H * half.k()(mean_c, 50)
