"""Questions about the air of the hours to come."""

from __future__ import annotations

from tests.cases.question import Question
from tests.finisher import Finisher

FC027 = Question(
    "a garage below the least temperature of waterborne: can it be done, how long between coats",
    shows=(
        "a hard stop below the least temperature, in other words than slow",
        "hours for wood and can to warm up before coat 1",
        "the plan indoors, with two or three coats a day in a heated room",
    ),
    trap="the drying time is doubled and a date is printed",
)


def test_fc027_too_cold_for_waterborne_is_not_the_same_as_slow(finisher: Finisher):
    finisher.zone = "America/New_York"
    finisher.types(
        "2026-11-25 06:30",
        "settings temperature F",
        "room new garage",
        "room new dining",
        "product new acrylic --class waterborne-clear",
        "steps new clear acrylic*3",
        "part new cabinet/case --steps clear --room garage",
        "shop hours 'mon-sun 6:00-22:00'",
        "air 48F 60% --room garage",
        "air 69F 45% --room dining",
    )
    stopped = finisher.reads("2026-11-25 06:35", "ready")
    paper = finisher.reads("2026-11-25 06:35", "plan")
    with FC027.line(1):
        assert "cabinet/case not in this air" in stopped
        assert "that waterborne clear needs" in stopped
        assert "NEEDS OTHER AIR cabinet/case coat" in paper
        coated = finisher.reads("2026-11-25 06:36", "log case")
        assert "stop:" in coated
        assert "suspect: met air too cold for it while young" in coated
    with FC027.trap:
        assert "cannot be said" in paper
        assert "FROM WHEN IT MAY BE" not in paper
        assert "after" not in coated
    finisher.types("2026-11-25 06:37", "undo")
    with FC027.line(2):
        moved = finisher.reads("2026-11-25 06:40", "move case dining")
        assert "waits for the wood to warm up (after 13:00)" in moved
        early = finisher.reads("2026-11-25 06:45", "log case")
        assert "let the part and the can warm up for some hours" in early
    finisher.types("2026-11-25 06:46", "undo")
    indoors = finisher.reads("2026-11-25 06:50", "plan")
    with FC027.line(3):
        assert "dining suits: finishlog move cabinet/case dining" in paper
        wednesday = indoors.partition("WED 25 NOV")[2].partition("THU 26 NOV")[0]
        assert 2 <= wednesday.count("cabinet/case acrylic") <= 3
        assert "packed" in indoors


FC032 = Question(
    "varnish in great heat: is heat a factor",
    shows=(
        "an upper limit, and the question whether it rises or falls in the next hour",
        "an early hour of the morning",
        "the wait until the next coat is not shortened by so much heat",
    ),
    trap="hotter is faster, so recoat in half the time",
)


def test_fc032_too_hot_is_not_twice_as_fast(finisher: Finisher):
    finisher.zone = "America/New_York"
    finisher.types(
        "2026-07-09 13:30",
        "product new varnish --class spar-varnish",
        "room new yard",
        "steps new bright varnish*3",
        "part new boat/deck -n 2 --species mahogany --steps bright",
        "air 93F 55%",
    )
    once = finisher.reads("2026-07-09 13:31", "why deck")
    finisher.types("2026-07-09 14:30", "air 95F 55%")
    hot = finisher.reads("2026-07-09 14:31", "why deck")
    ready = finisher.reads("2026-07-09 14:31", "ready")
    with FC032.line(1):
        assert "boat/deck ×2 not in this air" in ready
        assert "limit for spar varnish" in ready
        assert "does it rise or fall? read it again in an hour" in once
        assert "it rises" in hot
    with FC032.line(2):
        assert "early in the morning" in hot
        assert "thin coats, out of the sun" in hot
    finisher.types("2026-07-10 10:00", "air 88F 55%")
    done = finisher.reads("2026-07-10 10:00", "log deck varnish")
    with FC032.line(3):
        assert "its hours get no shorter" in hot
        # By its class 24 to 48 h.
        assert "recoat after Sun 10:00, test from Sat 10:00" in done
    with FC032.trap:
        assert "recoat no date" in finisher.reads("2026-07-10 14:00", "air 95F 55%", "when deck")
