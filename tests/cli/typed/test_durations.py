"""Waits of a label, lengths of time and hands-on minutes as they are typed."""

from __future__ import annotations

from datetime import timedelta

import pytest

from finishlog.cli.typed.times.durations import Hours, duration, hours, minutes
from finishlog.errors import UsageFault
from tests.rows import every_row


@every_row(
    ("typed", "low", "high"),
    [
        ("4h", 4, 4),
        ("30min", 0.5, 0.5),
        ("30 minutes", 0.5, 0.5),
        ("1h30m", 1.5, 1.5),
        ("1/2 day", 12, 12),
        ("2d", 48, 48),
        ("1 week", 168, 168),
        ("1h30", 1.5, 1.5),
        ("1 h 30 min", 1.5, 1.5),
        ("1,5h", 1.5, 1.5),
        ("4-6h", 4, 6),
        ("4–6 h", 4, 6),
        ("4 to 6 hours", 4, 6),
        ("half an hour", 0.5, 0.5),
        ("two days", 48, 48),
        ("24h-48h", 24, 48),
        ("30min-1h", 0.5, 1),
    ],
)
def test_the_waits_of_a_label(typed, low, high):
    assert hours(typed) == Hours(low, high)


@every_row("typed", ["4", "", "4x", "0h", "-4h", "500d", "1:30", "6-4h", "h", "4-h"])
def test_what_is_no_wait_is_refused(typed):
    with pytest.raises(UsageFault):
        hours(typed)


@pytest.mark.parametrize("read", [hours, duration])
def test_thirty_m_is_never_months(read):
    for typed in ("30m", "30 m"):
        with pytest.raises(UsageFault, match="minutes or months") as fault:
            read(typed)
        assert fault.value.hint.startswith("type 30min")


@every_row(
    ("typed", "days"),
    [("3mo", "90d"), ("3 months", "90d"), ("1 year", "365d"), ("half a year", "182d")],
)
@every_row("read", [hours, duration])
def test_months_are_refused_for_days(read, typed, days):
    with pytest.raises(UsageFault, match="no one length") as fault:
        read(typed)
    assert fault.value.hint == f"type days: {days}"


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("4min", "4 min is very short for a finish"),
        ("4-6min", "4 min is very short for a finish"),
        ("200d", "200 d is very long for a finish"),
        ("1d-40wk", "280 d is very long for a finish"),
    ],
)
def test_an_unlikely_figure_of_a_label_is_taken_only_when_it_is_insisted_on(typed, said):
    with pytest.raises(UsageFault) as fault:
        hours(typed)
    assert fault.value.message == said
    assert fault.value.hint == f"type {typed}! if the can says so"
    assert hours(f"{typed}!").low_h > 0


def test_thirty_months_on_a_label_are_not_read_however_they_are_typed():
    for typed in ("30 months", "30mo!", "900d!"):
        with pytest.raises(UsageFault):
            hours(typed)


@every_row(
    ("typed", "meant"),
    [
        ("40min", timedelta(minutes=40)),
        ("2 h", timedelta(hours=2)),
        ("1h30", timedelta(minutes=90)),
        ("1h 30m", timedelta(minutes=90)),
        ("3 d", timedelta(days=3)),
        ("2 wk", timedelta(days=14)),
        ("1,5 h", timedelta(minutes=90)),
        ("half an hour", timedelta(minutes=30)),
        ("½ day", timedelta(hours=12)),
    ],
)
def test_a_duration(typed, meant):
    assert duration(typed) == meant


@pytest.mark.parametrize(
    ("typed", "hint"),
    [
        ("4", "type 4h, 4min or 4d"),
        ("", "type 40min, 2h, 1h30, 3d or 2wk"),
        ("a while", "type 40min, 2h, 1h30, 3d or 2wk"),
        ("0h", "type 40min, 2h, 1h30, 3d or 2wk"),
        ("4000d", "type 40min, 2h, 1h30, 3d or 2wk"),
        ("1,000h", "type 1000h or 1.000h"),
        ("1/0 h", "type 40min, 2h, 1h30, 3d or 2wk"),
    ],
)
def test_what_is_no_duration_is_refused_with_what_to_type(typed, hint):
    with pytest.raises(UsageFault) as fault:
        duration(typed)
    assert fault.value.hint == hint


@pytest.mark.parametrize(
    ("typed", "meant"), [("45", 45), ("45m", 45), ("45 min", 45), ("1h30", 90), ("11h!", 660)]
)
def test_hands_on_minutes(typed, meant):
    assert minutes(typed) == meant


@pytest.mark.parametrize("typed", ["", "0", "11h", "2d", "a lot", "1,000"])
def test_what_hands_cannot_take_is_refused(typed):
    with pytest.raises(UsageFault) as fault:
        minutes(typed)
    assert fault.value.hint
