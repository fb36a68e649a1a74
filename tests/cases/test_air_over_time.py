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
        "part new boat/deck -n 2 --steps bright",
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


FC068 = Question(
    "a heater to hurry the drying: how is it done safely",
    shows=(
        "wherever warmth is advised stands with what not to make it",
        "it is asked whether the blower of the heating is off and its return air shut",
    ),
    trap="too cold, add heat, and not a word more",
)


def test_fc068_whoever_is_told_to_warm_the_room_is_told_with_what_not(finisher: Finisher):
    """All sentences that advise warmth: tests/facts/test_words_of_warmth.py."""
    finisher.types(
        "2026-01-03 09:00",
        "product new poly --class oil-polyurethane",
        "part new house/floor",
        "air 8C 50%",
    )
    coat = finisher.types("2026-01-03 10:00", "log floor poly")
    why = finisher.types("2026-01-03 10:01", "why floor")
    leaving = finisher.types("2026-01-03 22:00", "leave")
    wrinkled = finisher.types("2026-01-04 10:00", "fault floor wrinkle")
    clouds = finisher.types("2026-01-04 10:01", "fault floor blush")
    heated = finisher.types("2026-01-04 10:02", "heat today 11 till 20 20C")
    with FC068.line(1):
        assert "warm the room and the part first: no flame, glowing wire or blower" in coat
        assert "no flame, glowing wire or blower in the vapour" in why
        assert "no flame, no glowing element, no fan heater near wet solvent finish" in leaving
        assert "to warm it no flame, glowing wire or blower in the vapour" in wrinkled
        assert "no flame, glowing wire or blower in the vapour" in heated
    with FC068.line(2):
        assert "is the heating's blower off, and its return air shut?" in leaving
    with FC068.trap:
        for line in "".join((coat, why, leaving, wrinkled, clouds)).splitlines():
            assert "warm the" not in line or "no flame" in line or "outside the vapour" in line
            assert "sooner   here at" not in line or "no flame" in line
        assert "warm" not in clouds
