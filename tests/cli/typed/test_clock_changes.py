"""Drying is elapsed time: a clock change in the night alters the wall time, not the hours.

Cases worked out against zoneinfo: a coat at 22:00 on the Saturday before the clocks change, 12 h
needed. New York 2026: autumn 09:00 on Sunday, spring 11:00; London the same.
"""

from __future__ import annotations

from datetime import datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from run import Finishlog

CASES = [
    ("America/New_York", "2026-10-31T22:00-04:00", "Sun 09:00"),
    ("America/New_York", "2026-03-07T22:00-05:00", "Sun 11:00"),
    ("Europe/London", "2026-10-24T22:00+01:00", "Sun 09:00"),
    ("Europe/London", "2026-03-28T22:00+00:00", "Sun 11:00"),
]


def shop(folder: Path, zone: str, now: str) -> Finishlog:
    program = Finishlog(folder, now, {"FINISHLOG_ZONE": zone})
    program.did("product", "new", "topcoat", "--class", "waterborne-clear", "--recoat", "12h",
                "--window", "48h")  # fmt: skip
    program.did("part", "new", "cabinet/case", "--species", "ash")
    program.did("air", "23C", "50%")
    return program


@pytest.mark.parametrize(("zone", "coated", "ready"), CASES)
def test_twelve_hours_over_the_night_of_the_change(
    tmp_path: Path, zone: str, coated: str, ready: str
):
    program = shop(tmp_path, zone, coated)
    program.did("log", "case", "topcoat")
    assert f"recoat      after {ready}" in program.did("when", "case").out
    [line] = program.did("when", "case", "--json").document["answer"]["lines"]
    high = datetime.fromisoformat(line["standing"]["high"])
    assert high - datetime.fromisoformat(coated) == timedelta(hours=12)
    assert high.astimezone(ZoneInfo(zone)).strftime("%a %H:%M") == ready


def test_an_hour_that_occurs_twice_is_asked_for_with_its_offset(tmp_path: Path):
    program = shop(tmp_path, "Europe/London", "2026-10-25T12:00+00:00")
    refused = program("log", "case", "topcoat", "--at", "01:30")
    assert refused.code == 2
    assert "+01:00" in refused.err
    assert "+00:00" in refused.err
    program.did("log", "case", "topcoat", "--at", "2026-10-25 01:30+01:00")


def test_an_entry_made_two_days_late_lands_where_it_belongs(tmp_path: Path):
    """Coats on Wednesday and Friday are logged; Thursday's was forgotten and is added on Saturday.

    The last coat is still Friday's: nothing counts from Thursday.
    """
    program = shop(tmp_path, "Europe/London", "2026-11-18T19:00+00:00")
    program.did("log", "case", "topcoat")
    program.did("log", "case", "topcoat", now="2026-11-20T19:30+00:00")
    before = program.did("when", "case", "--json", now="2026-11-21T09:00+00:00").document
    late = program.did("log", "case", "topcoat", "--at", "Thu 19:00", now="2026-11-21T09:00+00:00")
    assert "it lands before 1 later entry" in late.out
    after = program.did("when", "case", "--json", now="2026-11-21T09:00+00:00").document
    times = [d["answer"]["lines"][0]["standing"]["high"] for d in (before, after)]
    assert times[0] == times[1]
    coats = program.did("on", "case", now="2026-11-21T09:00+00:00").out
    assert [line.split(",")[1].strip().split()[0] for line in coats.splitlines() if "coat " in line
            and "topcoat" in line][:3] == ["Wed", "Thu", "Fri"]  # fmt: skip
