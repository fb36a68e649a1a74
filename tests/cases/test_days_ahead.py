"""Questions about the days ahead: a week away, many parts, and where was I."""

from __future__ import annotations

from datetime import datetime

from tests.cases.question import Question
from tests.finisher import Finisher

FC018 = Question(
    "a week away between two coats: is that a problem, and is a scuff enough",
    shows=(
        "coat 2 tonight, coat 3 after the days away, with a scuff and the dust off before it",
        "never too late: what being late costs, which is sanding",
        "nothing is planned while away",
    ),
    trap="the window is missed, so begin again; or nothing is said of scuffing",
)


def test_fc018_a_week_away_costs_a_scuff_and_nothing_else(finisher: Finisher):
    finisher.types(
        "2026-11-15 16:00",
        "product new stain --class wiping-stain",
        "product new poly --class oil-polyurethane",
        "steps new brown stain wipe poly*3",
        "part new nightstand/body --species poplar --steps brown",
        "shop hours 'mon-sun 18:00-22:00'",
        "log body stain",
        "log body wipe",
    )
    finisher.types("2026-11-22 16:00", "air 21C 50%", "log body poly")
    finisher.types("2026-11-23 18:30", "air 21C 50%", "away 'Tue 24 Nov' 'Mon 30 Nov'")
    plan = finisher.reads("2026-11-23 18:30", "plan")
    tonight, _, then = plan.partition(" TUE 1 DEC")
    with FC018.line(1):
        assert "MON 23 NOV" in tonight
        assert "nightstand/body poly 2 of 3" in tonight
        for deed in ("scuff nightstand/body", "vacuum", "nightstand/body poly 3 of 3"):
            assert deed in then
        assert then.index("scuff") < then.index("vacuum") < then.index("poly 3 of 3")
    with FC018.line(3):
        for day in ("24 NOV", "25 NOV", "26 NOV", "27 NOV", "28 NOV", "29 NOV", "30 NOV"):
            assert day not in plan
    finisher.types("2026-11-23 20:20", "log body --scuffed")
    back = finisher.reads("2026-12-01 18:30", "air 21C 50%", "ready")
    last = finisher.reads("2026-12-01 19:30", "log body")
    with FC018.line(2):
        assert "scuff, coat nightstand/body poly 3 of 3" in back
        assert "no scuffing on record; if you did scuff it" in last
    with FC018.trap:
        for said in (plan, back, last):
            assert "too late" not in said
            assert "begin again" not in said
            assert "scuff" in said


FC046 = Question(
    "fifty doors and twenty fronts: which order of coats, and how to keep track of ranges",
    shows=(
        "ranges with clocks of their own; a table of door, face and coats",
        "what is next goes by what closes first, not by the number of the door",
        "a range is logged in one line",
    ),
    trap="one moment for fifty doors that took three hours to spray",
)


def test_fc046_sub_batches_keep_their_own_clocks(finisher: Finisher):
    finisher.types(
        "2026-06-01 07:00",
        "product new catalysed --class conversion-varnish",
        "steps new both catalysed@back*2 catalysed@front*2",
        "part new kitchen/doors -n 50 --face back:hidden --face front --steps both",
        "part new kitchen/fronts -n 20 --face back:hidden --face front --steps both",
        "air 23C 50%",
    )
    finisher.types("2026-06-01 08:30", "log fronts:1-10 --face back --method spray")
    first = finisher.reads("2026-06-01 09:40", "log doors:1-24 --face back --method spray")
    with FC046.line(3):
        assert first.startswith("09:40 doors:1-24, back: coat 1, catalysed")
    ready = finisher.reads("2026-06-01 09:50", "ready")
    with FC046.line(2):
        # The fronts close at 10:30, the doors an hour later; no word of a catalyst came with them.
        assert "fronts:1-10, back catalysed waits for word that its hardener was in it" in ready
        assert ready.index("closes 10:30") < ready.index("closes 11:30")
        assert ready.index("fronts:1-10, back") < ready.index("doors:1-24, back")
        later = finisher.reads("2026-06-01 10:45", "ready").partition("LEAVE ALONE ")[2]
        assert later.startswith("kitchen/doors:1-24, back catalysed")
    finisher.types(
        "2026-06-01 12:45", "log doors:25-50 --face back --method spray --at 'today 11:00 to 12:40'"
    )
    grid = finisher.reads("2026-06-01 12:50", "on kitchen/* --grid")
    early = finisher.reads("2026-06-01 11:20", "when doors:1-24@back")
    late = finisher.reads("2026-06-01 12:50", "when doors:25-50@back")
    with FC046.line(1):
        assert "window closes 11:30" in early
        # A window counts from the first piece of a range, a wait from the last.
        assert "window closes 13:00" in late
        assert "tack-free after 15:00" in late
        assert "then recoat after 14:00; closes 13:00" in late
        assert "doors ×50 back 1 of 2 front 0 of 2" in grid
        assert "fronts:1-10 back 1 of 2 front 0 of 2" in grid
        assert "fronts:11-20 back 0 of 2 front 0 of 2" in grid
    with FC046.trap:
        since = {
            line["standing"]["label"]: line["since"][11:16]
            for line in finisher.asks("2026-06-01 12:50", "when doors")["lines"]
            if line["standing"]["faces"] == ["back"]
        }
        # British summer time: one hour less in UTC.
        assert since == {"doors:1-24, back": "08:40", "doors:25-50, back": "11:40"}


FC101 = Question(
    "back after weeks: what is next in each project, and is it still allowed",
    shows=(
        "one screen, what closes first on top",
        "what was set aside draws no alarm, and says what it needs when it is taken up",
        "the words kept for the next time",
    ),
    trap="everything that was set aside on purpose is overdue",
)


def test_fc101_back_after_weeks_the_screen_says_what_it_needs(finisher: Finisher):
    finisher.types(
        "2026-06-01 08:00",
        "product new clear --class waterborne-clear",
        "product new poly --class oil-polyurethane",
        "can new tin --product clear --opened '1 Jun 2025'",
        "steps new c sand clear*3",
        "steps new p sand poly*3",
        "part new chest/lid --steps c",
        "part new shelf/board --steps p",
        "part new box/body --steps c",
        "part new stool/seat --steps c",
        "log lid sand",
        "log lid clear",
        "log board sand",
        "log board poly",
        "rags spread",
    )
    finisher.types("2026-06-01 08:30", "aside lid --next 'level the run on the left first'")
    finisher.types("2026-06-01 08:30", "aside board")
    finisher.types("2026-07-19 08:00", "air 23C 50%", "log seat sand", "log body sand")
    finisher.types("2026-07-19 08:30", "log seat clear")
    finisher.types("2026-07-19 10:00", "log body clear")
    screen = finisher.types("2026-07-19 14:30", "ready")
    said = " ".join(screen.split())
    with FC101.line(1):
        assert len(screen.splitlines()) <= 24
        bench = said.partition("BENCH NOW")[2]
        assert bench.index("closes 16:30") < bench.index("closes 18:00")
        assert bench.index("stool/seat clear 2 of 3") < bench.index("box/body clear 2 of 3")
        assert "OPEN RAGS 1 poly: shelf/board" in said
        assert "tin was opened" in said
    aside = said.partition("SET ASIDE")[2]
    with FC101.line(2):
        assert "chest/lid when it is taken up: test first, then scuff" in aside
        assert "shelf/board when it is taken up: test first, then scuff" in aside
        assert "lid" not in finisher.types("2026-07-19 14:30", "leave")
    with FC101.line(3):
        assert "next time: level the run on the left first" in aside
        assert "next time: level the run on the left first" in finisher.types(
            "2026-07-19 14:35", "resume lid"
        )
        assert "scuff, coat, clear 2 of 3" in finisher.reads("2026-07-19 14:35", "on chest/lid")
    with FC101.trap:
        assert "OVERDUE" not in aside
        assert "OVERDUE" not in said.partition("MIXED, IN CANS")[2]
        assert "late" not in aside


FC019 = Question(
    "recoat within two hours, or wait a day and sand: where am I after five",
    shows=(
        "two windows with a gap between, and what the second asks for",
        "in the gap: not now, the moment it opens again, and the sanding",
        "before the end of the first it says when that closes",
    ),
    trap="a least wait that is over: go, in the very gap",
)


def test_fc019_between_two_windows_nothing_goes_on(finisher: Finisher):
    finisher.types(
        "2026-05-02 08:00",
        "product new fast --class oil-polyurethane",
        "product says fast --window '0-2h, 24h- scuffed'",
        "part new table/top",
        "air 23C 50%",
    )
    said = finisher.reads("2026-05-02 08:00", "log top fast")
    first = finisher.reads("2026-05-02 09:00", "ready")
    gap = finisher.reads("2026-05-02 13:00", "air 23C 50%", "ready")
    when = finisher.reads("2026-05-02 13:00", "when top")
    early = finisher.reads("2026-05-02 13:05", "log top fast")
    finisher.types("2026-05-02 13:06", "undo")
    again = finisher.reads("2026-05-03 08:10", "air 23C 50%", "ready")
    with FC019.line(1):
        shown = finisher.reads("2026-05-03 08:11", "product show fast")
        assert "closes 2 h" in shown
        assert "open again 24 h for a scuffed film" in shown
        assert "scuff, coat table/top fast, coat 2 its window is open again" in again
    with FC019.line(2):
        assert "LEAVE ALONE table/top" in gap
        assert "scuffing does not help now: scuff and recoat after Sun 08:00" in gap
        assert "recoat dead zone" in when
    with FC019.line(3):
        assert "closes 10:00, later it needs a scuff" in said
        assert "closes 10:00" in first
    with FC019.trap:
        assert "BENCH NOW" not in gap
        assert "stop: top: dead zone" in early


FC016 = Question(
    "a waterborne sealer over oil of two days gums under the paper, and the wedding is on Saturday",
    shows=(
        "the sealer is stopped, with the reason and what is allowed instead",
        "how many coats are on by Saturday, of each schedule, and by when it is late",
        "fit for use is one date, the next film over it another",
    ),
    trap="two days after the oil it may be used, so it may be coated",
)


def test_fc016_what_is_on_by_saturday_is_said_of_each_schedule(finisher: Finisher):
    finisher.types(
        "2026-11-01 10:00",
        "product new oil --class oil-varnish-blend",
        "product new sealer --class waterborne-clear",
        "product new poly --class wiping-varnish",
        "steps new wedding oil sealer poly*3",
        "project new tables --due 2026-11-07",
        "part new tables/nest -n 3 --species cherry --steps wedding",
        "shop hours 'mon-sun 8:00-21:00'",
        "log nest oil",
    )
    finisher.types("2026-11-01 10:20", "log nest wipe")
    tuesday = "2026-11-03 20:00"
    when = finisher.reads(tuesday, "when nest")
    with FC016.line(3):
        # By its class 2 to 8 d to light use; under a film of another class a week at the least.
        assert "light use after Mon 9 Nov, test from Wed 10:00" in when
        assert "recoat blocked: over oil and varnish blend" in when
        assert "Dry enough to use is not dry enough for a film on top" in finisher.reads(
            tuesday, "over oil poly"
        )
    stuck = finisher.reads(tuesday, "plan tables")
    sealed = finisher.reads(tuesday, "log nest sealer")
    with FC016.line(1):
        assert "stop: nest ×3: over oil and varnish blend: Oil keeps weeping" in sealed
        assert "72 h, then dewaxed shellac or vinyl sealer, then waterborne" in sealed
        assert "without one a week at the very least" in sealed
    with FC016.trap:
        assert "BENCH NOW" not in finisher.reads("2026-11-03 19:59", "ready")
        assert "sealer 1 of 1; ready" not in stuck
    finisher.types("2026-11-03 23:00", "check nest gums", "off nest --washed")
    finisher.types("2026-11-04 20:00", "steps new direct poly*3", "part steps nest --as direct")
    direct = finisher.reads("2026-11-04 20:00", "plan tables")
    with FC016.line(2):
        assert "tables due Sat 7 Nov cannot be said: nest ×3 is not planned: over oil" in stuck
        assert "by Sat 7 Nov: nest 1 of 5 coats" in stuck
        assert "late by 7 d (7 openings too few): packed Sun 15 Nov" in direct
        assert "by Sat 7 Nov: nest 3 of 3 coats" in direct
        assert "light use from Sun 15 Nov" in direct


FC021 = Question(
    "a kayak in a place that is open at weekends only and is left soon: two coats a visit",
    shows=(
        "work on Saturdays and Sundays alone, and how many coats are on when the place is left",
        "a coat at the label's least beside one when it is promised: coats and dates of both",
        "the risk is said, and what is done all the same is recorded",
    ),
    trap="coats on weekdays; tacky is the sign to go on",
)


def test_fc021_coats_at_weekends_as_promised_and_at_their_earliest(finisher: Finisher):
    saturday = "2026-06-06 08:00"
    finisher.types(
        saturday,
        "product new varnish --class spar-varnish",
        "steps new boat varnish*4",
        "shop hours 'sat-sun 8:00-20:00'",
        "project new kayak --due 2026-06-21",
        "part new kayak/hull --steps boat",
    )
    plan = finisher.reads(saturday, "plan")
    days = {session["start"] for session in finisher.asks(saturday, "plan")["sessions"]}
    with FC021.line(1):
        assert "by Sun 21 Jun: hull 3 of 4 coats" in plan
        assert {datetime.fromisoformat(day).weekday() for day in days} == {5}
    with FC021.line(2):
        # 24 h by its class at the least, so Saturday and Sunday; 48 h are promised.
        tested = "each film tested and coated at its earliest: hull 4 of 4 coats, packed Mon 29 Jun"
        assert "packed Sun 12 Jul" in plan
        assert tested in plan
    finisher.types(saturday, "log hull")
    finisher.types("2026-06-06 10:00", "check hull tacky")
    with FC021.trap:
        assert "coat kayak/hull" not in finisher.reads("2026-06-06 10:00", "ready")
        for weekday in ("MON", "TUE", "WED", "THU", "FRI"):
            assert f"{weekday} " not in plan
    again = finisher.reads("2026-06-06 10:05", "log hull")
    with FC021.line(3):
        assert "what only seems dry may wrinkle, and costs more than it saves" in plan
        assert "10:05 hull: coat 2, varnish" in again
        assert "stop: hull: the touch check found it tacky" in again
