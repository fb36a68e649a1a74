"""Questions about dates, the order of things and corrections."""

from __future__ import annotations

from tests.cases.finisher import Finisher

CAN = "product new varnish --class oil-polyurethane --recoat 12h --window 48h --label-air '23C 50%'"


def test_fc088_a_coat_dries_so_many_hours_whatever_the_clocks_do(finisher: Finisher):
    """The night the clocks change, 12 h after 22:00: 9:00 in autumn, 11:00 in spring.

    Drying counts elapsed hours; 10:00 in both cases is the trap. 01:30 that occurs twice is asked.
    """
    finisher.zone = "America/New_York"
    finisher.types("2026-03-07 18:00", CAN, "part new boat/hull", "air 23C 50%")
    for day, ready in (("2026-03-07", "Sun 11:00"), ("2026-10-31", "Sun 09:00")):
        finisher.types(f"{day} 21:50", "air 23C 50%")
        said = finisher.types(f"{day} 22:00", "log hull varnish --scuffed")
        assert f"after {ready}" in said
    twice = finisher.tries("2026-11-01 12:00", "log hull varnish --at 'today 01:30'")
    assert twice.code == 2
    assert "-04:00" in twice.err
    assert "-05:00" in twice.err


def test_fc090_a_coat_written_down_two_days_late_lands_between_the_others(finisher: Finisher):
    """Coats renumber by the time of the work; the last coat and its date stay; it shows as late.

    The trap: what was typed last counts as the last coat.
    """
    finisher.types("2026-11-18 18:00", CAN, "part new table/top", "air 23C 50%")
    finisher.types("2026-11-18 19:00", "log top varnish")
    finisher.types("2026-11-20 19:00", "air 23C 50%")
    finisher.types("2026-11-20 19:30", "log top varnish --scuffed")
    before = finisher.asks("2026-11-21 10:00", "when top")["lines"][0]["standing"]
    said = finisher.types("2026-11-21 10:00", "log top varnish --scuffed --at 'Thu 19:00'")
    assert "lands before 1 later entry" in said
    after = finisher.asks("2026-11-21 10:00", "when top")["lines"][0]["standing"]
    assert (after["low"], after["high"]) == (before["low"], before["high"])
    coats = finisher.asks("2026-11-21 10:00", "on top")[0]["coats"]
    assert [c["put_on"][:16] for c in coats] == [
        "2026-11-18T19:00",
        "2026-11-19T19:00",
        "2026-11-20T19:30",
    ]
    late = finisher.asks("2026-11-21 10:00", "history top")[-1]
    assert late["typed_at"].startswith("2026-11-21")
    assert late["happened"]["latest"].startswith("2026-11-19")
