"""Windows that close, and waits that go by what lies underneath."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from tests.finisher import Finisher


def tasks(plan: Any) -> list[tuple[str, str]]:
    return [
        (task["start"][:16], task["operation"] or task["chore"])
        for session in plan["sessions"]
        for task in session["tasks"]
    ]


def answers(lines: Any) -> dict[str, str]:
    return {line["label"]: line["answer"] for line in lines}


def test_between_a_window_that_closed_and_the_scuff_there_is_a_gap(finisher: Finisher):
    """Too set to melt in, too soft to sand: not now, then sanded."""
    finisher.types(
        "2026-11-16 08:00",
        "product new fast --class oil-polyurethane --recoat 30min --window 2h --sand 24h"
        " --label-air '23C 50%'",
        "steps new thin fast*3",
        "part new table/top --species maple --steps thin",
        "shop hours 'mon-sun 8:00-20:00'",
        "air 23C 50%",
        "log top fast",
    )
    early = finisher.types("2026-11-16 09:00", "ready")
    assert "coat  table/top  fast 2 of 3  closes 10:00, later it needs a scuff" in early

    five = finisher.asks("2026-11-16 13:00", "ready")
    assert five["bench"] == []
    (line,) = five["drying"]
    assert line["answer"] == "dead zone"
    assert line["high"] == "2026-11-17T08:00:00Z"
    words = finisher.types("2026-11-16 13:00", "ready")
    assert (
        "too late to bond by itself, too soft to scuff: scuff and recoat after Tue 08:00" in words
    )
    plan = tasks(finisher.asks("2026-11-16 13:00", "plan"))
    assert plan[0] == ("2026-11-17T08:00", "scuff")

    done = finisher.types("2026-11-16 13:01", "log top fast")
    assert "stop: top: dead zone" in done
    finisher.types("2026-11-16 13:02", "undo")
    for hour in ("10:05", "16:00", "20:00"):
        assert answers(finisher.asks(f"2026-11-16 {hour}", "ready")["drying"]) == {
            "top": "dead zone"
        }
    finisher.types("2026-11-17 08:00", "air 23C 50%")
    (line,) = finisher.asks("2026-11-17 08:05", "ready")["bench"]
    assert (line["answer"], line["scuff_first"]) == ("go after scuffing", True)


def test_oil_takes_oil_after_a_day_and_varnish_after_a_week(finisher: Finisher):
    """Sun on cherry is a step and no coat."""
    finisher.types(
        "2026-06-01 18:00",
        "product new oil --class boiled-linseed-oil --recoat 24h --sand 24h",
        "product new poly --class oil-polyurethane",
        "steps new warm oil*2 sun poly*2",
        "part new tables/top --species cherry --steps warm",
        "shop hours 'mon-sun 8:00-21:00'",
        "air 23C 50%",
    )
    plan = finisher.asks("2026-06-01 18:00", "plan")
    coats = [t for s in plan["sessions"] for t in s["tasks"] if t["operation"] == "coat"]
    first, second, varnish, _ = (datetime.fromisoformat(t["start"]) for t in coats)
    assert 24 <= (second - first).total_seconds() / 3600 < 48
    assert (varnish - second).days >= 7
    assert [t["operation"] for s in plan["sessions"] for t in s["tasks"]].count("sun") == 1

    finisher.types("2026-06-01 18:10", "log top oil", "log top wipe")
    (own,) = finisher.asks("2026-06-01 18:10", "when top")["lines"]
    recoat = next(s for s in own["stages"] if s["stage"] == "recoat")
    assert recoat["high"] == "2026-06-02T17:10:00Z"
    finisher.types("2026-06-02 18:10", "air 23C 50%", "log top oil --scuffed", "log top wipe")
    sunned = finisher.types("2026-06-03 18:10", "air 23C 50%", "log top sun")
    assert sunned.splitlines()[0].startswith("18:10  top: sun · recoat after Wed 10 Jun")
    (on,) = finisher.asks("2026-06-03 18:15", "on top")
    assert [coat["product"] for coat in on["coats"]] == ["oil", "oil"]

    finisher.types("2026-06-04 18:00", "air 23C 50%")
    (line,) = finisher.asks("2026-06-04 18:10", "ready")["drying"]
    assert (line["answer"], line["high"]) == ("drying", "2026-06-09T17:10:00Z")
    why = finisher.types("2026-06-04 18:10", "why top")
    assert "A week after the last oil" in why
    assert "stop: top: drying" in finisher.types("2026-06-04 18:15", "log top poly")
