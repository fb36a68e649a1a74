"""Instants are kept so that their text sorts as they happened, whatever zone they came in."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta, timezone

import pytest
from conftest import Bench, hours_ago
from hypothesis import given
from hypothesis import strategies as st
from sqlalchemy import Column, MetaData, Table, create_engine, insert, select

from finishlog.core.log.when import at
from finishlog.store.log.read_log import read_log
from finishlog.store.schema.columns import UtcDateTime

KEPT = UtcDateTime()
_SQLITE = create_engine("sqlite://").dialect


def written(moment: datetime) -> str:
    text = KEPT.process_bind_param(moment, _SQLITE)
    assert text is not None
    return text


def read(text: str) -> datetime:
    moment = KEPT.process_result_value(text, _SQLITE)
    assert moment is not None
    return moment


def test_one_instant_in_three_spellings_is_one_text():
    # 16:00 in Greenwich is 01:00 of the next day in Tokyo (UTC+9) and noon in New York (UTC-4).
    spellings = (
        "2026-08-21T16:00:00Z",
        "2026-08-22T01:00:00+09:00",
        "2026-08-21T12:00:00.000-04:00",
    )
    texts = {written(datetime.fromisoformat(spelling)) for spelling in spellings}
    assert texts == {"2026-08-21T16:00:00.000000Z"}


def test_the_last_coat_is_the_last_in_time_however_it_was_spelled(bench: Bench):
    tokyo = datetime.fromisoformat("2026-08-22T00:30:00+09:00")  # 15:30 in Greenwich
    greenwich = datetime.fromisoformat("2026-08-21T16:00:00+00:00")
    last = bench.coat(when=at(greenwich))
    bench.coat(when=at(tokyo))
    with bench.db.reading() as connection:
        log = read_log(connection)
    assert log.entries[-1].id == last
    assert [entry.when.latest.tzinfo for entry in log.entries] == [UTC, UTC]


def test_whole_seconds_and_fractions_sort_together():
    texts = [
        written(datetime.fromisoformat(spelling))
        for spelling in (
            "2026-08-21T16:00Z",
            "2026-08-21T16:00:00.000001Z",
            "2026-08-21T16:00:00.5Z",
            "2026-08-21T16:00:01Z",
        )
    ]
    assert texts == sorted(texts)
    assert {len(text) for text in texts} == {27}


def test_a_time_without_zone_is_refused(bench: Bench):
    naive = datetime(2026, 8, 22, 0, 30)  # noqa: DTZ001
    with pytest.raises(ValueError, match="no time zone"):
        written(naive)
    with pytest.raises(Exception, match="no time zone"):
        bench.coat(when=at(naive))


def test_no_instant_stays_none():
    assert KEPT.process_bind_param(None, _SQLITE) is None
    assert KEPT.process_result_value(None, _SQLITE) is None


MOMENTS = st.datetimes(
    min_value=datetime(2, 1, 1),  # noqa: DTZ001
    max_value=datetime(9998, 12, 31),  # noqa: DTZ001
    timezones=st.integers(-14 * 60, 14 * 60).map(
        lambda minutes: timezone(timedelta(minutes=minutes))
    ),
)


@given(MOMENTS)
def test_every_instant_comes_back_the_same_in_utc(moment: datetime):
    assert read(written(moment)) == moment
    assert read(written(moment)).tzinfo is UTC


@given(MOMENTS, MOMENTS)
def test_text_order_is_time_order(one: datetime, other: datetime):
    assert (written(one) < written(other)) == (one < other)


def test_the_database_compares_instants_not_spellings():
    engine = create_engine("sqlite://")
    table = Table("seen", MetaData(), Column("moment", UtcDateTime))
    table.create(engine)
    noon = hours_ago(0).latest
    with engine.begin() as connection:
        connection.execute(insert(table), [{"moment": noon}])
        later_by_the_clock = noon.astimezone(timezone(timedelta(hours=9)))
        found = connection.scalars(
            select(table.c.moment).where(table.c.moment >= later_by_the_clock)
        )
        assert list(found) == [noon]
    engine.dispose()
