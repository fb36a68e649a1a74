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


FC026 = Question(
    "the heat goes off for the night: can a coat of varnish go on this evening",
    shows=(
        "how cold the night gets is asked for; hours count above the least temperature alone",
        "the evening's dew point stands beside the surface to come, and dew is warned of",
        "a start in the morning, from when and until when",
    ),
    trap="one temperature is read, that of the evening",
)


def test_fc026_a_coat_this_evening_meets_the_night(finisher: Finisher):
    finisher.zone = "America/New_York"
    finisher.types(
        "2026-11-10 17:30",
        "settings temperature F",
        "product new varnish --class spar-varnish",
        "room new garage",
        "steps new bright varnish*3",
        "part new canoe/hull --steps bright --room garage",
        "air 70F 50%",
    )
    finisher.types("2026-11-10 18:00", "heat today 16 till 21 70F", "heat tomorrow 7 till 22 70F")
    asked = finisher.reads("2026-11-10 18:01", "ready")
    with FC026.line(1):
        assert "how cold its nights get was not told: finishlog room night garage 46F" in asked
        assert "test, coat canoe/hull varnish 1 of 3 how cold garage gets without" in asked
    finisher.types("2026-11-10 18:05", "room night garage 30F")
    why = finisher.reads("2026-11-10 18:06", "why hull")
    with FC026.line(2):
        assert "caution: dew may fog it before it is tack-free: the room goes to 30 °F" in why
        assert "the dew point of this air is 50.5 °F" in why
    with FC026.line(3):
        # 8 h to tack-free at the soonest, 24 h by the cautious end.
        assert "start here from Wed 07:00, Wed 12:30 at the latest: tack-free before Wed 22" in why
        assert "only if 8 h are enough, the early end of its hours; test it by then" in why
    with FC026.trap:
        ready = finisher.reads("2026-11-10 18:06", "ready")
        assert "the room goes to 30 °F before it is tack-free; spar varnish needs 50 °F" in ready
        assert "BENCH NOW coat canoe/hull" not in ready
    # A film that went on all the same gains its hours where it is warm enough, and nowhere else.
    finisher.types("2026-11-10 18:10", "log hull")
    with FC026.line(1):
        at_nine = finisher.why("2026-11-10 21:00", "hull")["clock"]["done_h"]
        by_six = finisher.why("2026-11-11 06:00", "hull")["clock"]["done_h"]
        by_ten = finisher.why("2026-11-11 10:00", "hull")["clock"]["done_h"]
        assert by_six - at_nine < 1
        assert by_ten - by_six > 2


FC036 = Question(
    "varnished outdoors in damp air, rolled into the cooled garage to dry: does it harm",
    shows=(
        "the temperature of the hull itself is asked for, and held against the dew point out there",
        "a coat has two places on record: where it went on, and where it dried",
        "the latest start for which it is tack-free before the evening's dew",
    ),
    trap="one air for each coat, that of the better place",
)


def test_fc036_a_cooled_hull_sweats_outdoors(finisher: Finisher):
    """A hull of 72 °F in air of 88 °F and 70 %: its dew point is 77 °F, by Magnus's formula."""
    finisher.zone = "America/New_York"
    finisher.types(
        "2026-07-09 08:00",
        "settings temperature F",
        "product new varnish --class spar-varnish",
        "room new yard",
        "room new garage",
        "steps new last varnish*2",
        "part new boat/hull --steps last --room garage",
        "room usual yard 6:72F/90% 10:82F/70% 15:88F/60% 20:76F/85% 23:73F/92%",
        "air 72F 50% --room garage",
        "air 88F 70% --room yard",
    )
    moved = finisher.reads("2026-07-09 08:05", "move hull yard")
    with FC036.line(1):
        assert "it comes from 72 °F" in moved
        assert "measured: finishlog surface PART" in moved
        assert "is less than 5.4 °F above the dew point of 77 °F" in moved
        felt = finisher.reads("2026-07-09 08:06", "surface hull 72F")
        assert "yard: dew point 77 °F: it sweats, nothing may go on it" in felt
    finisher.types("2026-07-09 13:00", "air 86F 62% --room yard", "surface hull 86F")
    why = finisher.reads("2026-07-09 13:01", "why hull")
    with FC036.line(3):
        assert (
            "start here from Fri 09:00, Fri 10:00 at the latest: tack-free before Fri 18:00" in why
        )
        assert "only if 8 h are enough" in why
    finisher.types("2026-07-09 13:10", "log hull varnish")
    finisher.types("2026-07-09 13:40", "air 72F 50% --room garage", "move hull garage")
    past = finisher.reads("2026-07-10 08:00", "past varnish")
    with FC036.line(2):
        assert "varnish Thu 13:10 spar varnish, 86 °F, 62 %" in past
        assert "Thu 13:40 dried in garage, 72 °F, 50 %" in past
    with FC036.trap:
        assert past.index("86 °F, 62 %") < past.index("dried in garage, 72 °F, 50 %")
        # It dries by the garage: slower than by the yard's air, which the law counts at most as 1.
        drying = finisher.why("2026-07-10 08:00", "hull")["clock"]["done_h"]
        assert 17.5 < drying < 18.6


FC028 = Question(
    "oil and varnish on a bookcase in a garage at 40 °F: is it too cold",
    shows=(
        "a stop, with three ways out: a warm room, another finish, later",
        "how warm each finish wants it, side by side",
        "coated all the same, the coat stays marked as too cold in what is read years later",
    ),
    trap="a slower drying is reckoned down to 40 °F, and a date is promised",
)


def test_fc028_forty_degrees_is_too_cold_for_oil_and_not_for_shellac(finisher: Finisher):
    finisher.zone = "America/New_York"
    finisher.types(
        "2026-11-10 18:00",
        "settings temperature F",
        "room new garage",
        "product new blend --class oil-varnish-blend",
        "product new wiping --class wiping-varnish",
        "steps new clear blend wiping*2",
        "part new bookcase/case --species cherry --steps clear --room garage",
        "air 40F 60% --room garage",
    )
    without = finisher.reads("2026-11-10 18:01", "why case")
    finisher.types(
        "2026-11-10 18:02",
        "product new shellac --class shellac-2lb",
        "product new acrylic --class waterborne-clear",
        "room new basement",
        "air 66F 45% --room basement",
    )
    why = finisher.reads("2026-11-10 18:03", "why case")
    with FC028.line(1):
        assert "stop: 40 °F is below the 50 °F that oil and varnish blend needs" in without
        assert "instead this air allows none of your products" in without
        assert "below what is published finishers use dewaxed shellac, 1 lb cut; dewaxed" in without
        assert "waxy shellac, 3 to 5 lb cut: try it on a sample board" in without
        assert "start in basement, 66 °F, 45 %: nothing in its air forbids it now" in why
        assert "when this room gets fit: say how it usually is: room usual" in why
    with FC028.line(2):
        assert (
            "least dewaxed shellac, 2 lb cut 50 °F, oil and varnish blend 50 °F, wiping varnish "
            "50 °F, waterborne clear 55 °F" in why
        )
    with FC028.trap:
        logged = finisher.reads("2026-11-10 18:10", "log case blend")
        assert "stop: case: 40 °F is below the 50 °F" in logged
        assert "after" not in finisher.reads("2026-11-10 18:11", "when case")
    with FC028.line(3):
        finisher.types("2026-12-20 10:00", "review case good")
        past = finisher.reads("2027-11-10 10:00", "past cherry")
        assert "40 °F, 60 % (TOO COLD, it needs 50 °F)" in past
    with FC028.line(1):
        finisher.types(
            "2026-12-20 10:00",
            "part new bookcase/door --steps clear --room garage",
            "room usual garage 6:38F/70% 9:62F/50% 21:60F/50% 23:40F/65%",
            "air 40F 60% --room garage",
        )
        later = finisher.reads("2026-12-20 10:02", "why door")
        assert "start here from" in later


FC005 = Question(
    "the can speaks of a warm room, the basement has 64 °F: how far apart do coats go",
    shows=(
        "a product's hours stand with the air that they speak of",
        "at 64 °F a range, told as an estimate that a check of the film decides",
        "a warmer room is offered, and the plan moves with the part",
    ),
    trap="the label's hours as they are, or a tenth more",
)


def test_fc005_a_cool_basement_takes_a_day_or_two_for_a_coat(finisher: Finisher):
    finisher.zone = "America/New_York"
    finisher.types(
        "2026-11-07 18:00",
        "settings temperature F",
        "shop hours 'mon-sun 7:00-23:00'",
        "product new wiping --class wiping-varnish",
        "product new told --class wiping-varnish --recoat 4h --label-air '77F 50%'",
        "room new basement",
        "steps new satin wiping*3",
        "part new gifts/lid --steps satin --room basement",
        "air 64F 50%",
    )
    with FC005.line(1):
        shown = finisher.reads("2026-11-07 18:01", "product show told")
        assert "recoat 4 h at 77 °F, 50 %" in shown
        assert "HOURS AT 73.4 °F, 50 % UNLESS SAID" in shown
    logged = finisher.reads("2026-11-07 18:05", "log lid --method wipe")
    checked = finisher.reads("2026-11-07 20:05", "check lid tacky")
    why = finisher.reads("2026-11-07 20:06", "why lid")
    plan = finisher.reads("2026-11-07 20:06", "plan")
    with FC005.line(2):
        # Scuffed: 12 to 24 h by the class in standard air, at 0.70 of an hour each.
        assert "recoat after Mon 05:00, test from Sun 11:30" in logged
        assert "check again" in checked
        assert "a factor of 2 per 18 °F, an assumption for oil varnish" in why
        assert "the last check found it tacky, and its time is not over" in why
        assert "gifts/lid passes its check (dry) by Mon 05:00: an estimate, check it first" in plan
        assert "MON 9 NOV, 07:00" in plan
    with FC005.trap:
        assert "SAT 7 NOV" not in plan
        assert "SUN 8 NOV" not in plan
    warm = finisher.reads(
        "2026-11-07 20:10", "room new house", "air 69F 45% --room house", "why lid"
    )
    finisher.types("2026-11-07 20:15", "move lid house")
    moved = finisher.reads("2026-11-07 20:16", "plan")
    with FC005.line(3):
        assert "sooner in house, 69 °F, 45 %, from now: after Sun 23:00" in warm
        assert "gifts/lid passes its check (dry) by Sun 23:00" in moved
        assert plan.partition("packed ")[2][:10] == "Sat 21 Nov"
        assert moved.partition("packed ")[2][:10] == "Thu 19 Nov"
