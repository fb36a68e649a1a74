"""Questions about the record: found again, in order, across a change of clocks, begun again."""

from __future__ import annotations

import pytest

from tests.cases.question import Question
from tests.finisher import Finisher, hours

FC078 = Question(
    "which oil went on table one, what goes on the third, how is the second repaired",
    shows=(
        "finishes on one wood side by side: class, coats, days, what became of them",
        "what became of it, said weeks later, is kept with the finish",
        "a piece that was finished takes a repair",
    ),
    trap="the names on the shelf, and a finished piece takes no more entries",
)


def test_fc078_two_products_called_tung_and_two_finishes_on_one_wood(finisher: Finisher):
    finisher.types(
        "2025-01-01 18:00",
        "product new tung-finish --class wiping-varnish",
        "product new tung-oil --class tung-oil",
        "product new wax --class paste-wax",
        "part new tables/one --species cherry",
        "part new tables/two --species cherry",
        "air 21C 50%",
    )
    for day in ("02", "04", "06"):
        finisher.types(f"2025-01-{day} 18:00", "log one tung-finish --scuffed")
    finisher.types("2025-01-20 18:00", "log one wax")
    finisher.types("2025-01-21 18:00", "log one wax")
    for day in ("03", "06", "09", "12", "15"):
        finisher.types(f"2025-02-{day} 18:00", "log two tung-oil", "log two wipe")
    finisher.types("2025-02-17 18:00", "log two wax")
    finisher.types("2025-02-18 18:00", "log two wax")
    finisher.types("2025-03-01 18:00", "handover one two", "review one good")
    finisher.types("2025-04-30 18:00", "review two fair -t 'lost its sheen, chalky'")
    past = finisher.types("2025-05-01 18:00", "past cherry")
    one, two = past.partition("tables/two")[::2]
    with FC078.line(1):
        assert one.count("wiping varnish") == 1
        assert one.count("  tung-finish ") == 3
        assert "pure tung oil" in two
        assert two.count("  tung-oil ") == 5
        assert "after 72 h" in two
        assert "good" in one
    with FC078.line(2):
        assert "fair" in two
        assert "lost its sheen, chalky" in two
        assert "Wed 18:00" in two.partition("lost its sheen")[2]
    with FC078.trap:
        assert "tung oil" not in one
        assert "paste wax" in one
    last_oil = finisher.asks("2025-05-01 18:01", "on two")[0]["coats"][-3]["act"]
    with FC078.line(3):
        over_wax = finisher.types("2025-05-01 18:05", "log two tung-finish")
        assert "Nothing sticks to wax" in over_wax
        finisher.types("2025-05-01 18:06", "undo --never-happened")
        finisher.types("2025-05-01 18:10", f"off two --to {last_oil} --washed")
        repaired = finisher.types("2025-05-02 18:00", "log two tung-finish --scuffed")
        assert "Nothing sticks to wax" not in repaired
        on = finisher.reads("2025-05-02 18:01", "on two")
        assert "coat 5 tung-oil" in on
        assert "coat 6 tung-finish" in on


FC088 = Question(
    "the clocks change while it dries: when are the twelve hours over",
    shows=(
        "elapsed hours are counted; an hour that occurs twice is shown with its offset",
        "01:30 that occurred twice is asked",
        "the same time on another day is one of the clock on the wall, not 24 h",
    ),
    trap="22:00 and twelve hours are 10:00 in both nights",
)


def test_fc088_a_coat_dries_so_many_hours_whatever_the_clocks_do(finisher: Finisher):
    finisher.zone = "America/New_York"
    finisher.types(
        "2026-03-07 18:00",
        "product new varnish --class oil-polyurethane --recoat 12h",
        "part new boat/hull",
        "part new boat/deck",
    )
    finisher.types("2026-03-07 22:00", "air 23C 50%", "log hull varnish")
    spring = finisher.reads("2026-03-07 22:00", "when hull")
    finisher.types("2026-10-31 22:00", "air 23C 50%", "log deck varnish")
    autumn = finisher.reads("2026-10-31 22:00", "when deck")
    finisher.types(
        "2026-10-31 22:05",
        "steps new bright varnish*2",
        "part new boat/rail --steps bright",
        "shop hours 'mon-sun 21:00-23:30'",
    )
    plan = finisher.reads("2026-10-31 22:05", "plan boat")
    with FC088.line(1):
        # Always scuffed, and it sands after a day: 24 h, of which the clocks make 25 or 23.
        assert "recoat after Sun 23:00" in spring
        assert "recoat after Sun 21:00" in autumn
        # Free of dust after 3 h at the earliest, by its class: as it strikes one again.
        assert "test from Sun 01:00-04:00" in autumn
    with FC088.trap:
        assert "Sun 22:00" not in spring
        assert "Sun 22:00" not in autumn
    with FC088.line(2):
        twice = finisher.tries("2026-11-01 12:00", "log hull varnish --at 'today 01:30'")
        assert twice.code == 2
        assert "01:30-04:00" in twice.err
        assert "01:30-05:00" in twice.err
    with FC088.line(3):
        finisher.types("2026-11-01 22:00", "log deck varnish --at 'yesterday 22:30'")
        # 25 h of that night lie between the two, and it is still half past ten in the evening.
        assert "varnish, Sat 22:30" in finisher.reads("2026-11-01 22:30", "on deck")
        assert "SAT 31 OCT, 22:05" in plan
        assert "SUN 1 NOV, 21:" in plan


FC091 = Question(
    "30m was not 30 minutes: how is a mistake put right",
    shows=(
        "units are spelled out; a bare m is refused and explained, and so is what no can says",
        "the last change is taken back, a label as well as one line for fifty doors",
        "a correction checks again and says which dates it moved",
    ),
    trap="the old entry is overwritten, and there is nothing to go back to",
)


def test_fc091_thirty_minutes_are_not_thirty_months(finisher: Finisher):
    when = "2026-05-01 18:00"
    finisher.types(
        when,
        "product new poly --class oil-polyurethane",
        "part new kitchen/doors --count 50",
        "air 23C 50%",
    )
    with FC091.line(1):
        for typed, why in (
            ("--recoat 30m", "'30m' could be minutes or months; type 30min"),
            ("--cured 3m", "'3m' could be minutes or months; type 3min, or days: 90d"),
            ("--recoat +2d", "'+2d'"),
            ("--recoat 900d", "'900d' is no time that a finish takes"),
        ):
            refused = finisher.tries(when, f"product label poly {typed}")
            assert refused.code == 2
            assert why in refused.err
        due = finisher.tries(when, "project new kitchen2 --due 'in 3m'")
        assert (due.code, "minutes or months" in due.err) == (2, True)
    finisher.types("2026-05-01 18:10", "log doors poly")
    with FC091.line(2):
        assert "withdrawn" in finisher.types("2026-05-01 18:20", "undo --never-happened")
        assert "coat 1" not in finisher.reads("2026-05-01 18:21", "on doors")
        assert "in force again" in finisher.types("2026-05-01 18:22", "undo 5")
        assert "kitchen/doors ×50 coat 1 poly" in finisher.reads("2026-05-01 18:23", "on doors")
    changed = finisher.reads("2026-05-02 09:00", "product label poly --recoat 30h --coats-too")
    with FC091.line(3):
        assert "moved kitchen/doors ×50: after Sun 00:30, was after 18:30" in changed
    with FC091.line(2):
        assert "withdrawn" in finisher.types("2026-05-02 09:01", "undo")
        assert "recoat after 18:30" in finisher.reads("2026-05-02 09:02", "ready")
    finisher.types("2026-05-02 19:00", "air 23C 50%", "log doors:1-3 poly --scuffed")
    amended = finisher.reads("2026-05-03 10:00", "amend 4 --at 'Sat 12:00'")
    with FC091.line(3):
        assert "moved kitchen/doors:4-50: after 12:00, was" in amended
        assert "stop: doors:1-3: act 10, poly: drying" in amended
    with FC091.trap:
        history = finisher.reads("2026-05-03 10:01", "history")
        assert "product label poly --recoat 30h" in history
        assert "UNDONE by act 8" in history
        assert "AMENDED by act 11" in history
        assert "4 Fri 18:10 kitchen/doors ×50: coat poly" in history


FC092 = Question(
    "times written in several forms and zones, some taken in from a file: which coat was the last",
    shows=(
        "the last coat is the last, however its time was written",
        "a file whose times name no zone is asked for one",
        "equal instants, and fractions of a second, stand in the order of time",
    ),
    trap="as text, the 22nd at 01:00 comes after the 22nd at 00:30, wherever each was meant",
)


def test_fc092_the_last_coat_is_the_last_whatever_the_clock_it_was_written_by(finisher: Finisher):
    finisher.types(
        "2026-08-21 09:00",
        "product new varnish --class oil-polyurethane",
        "product new over --class oil-polyurethane",
        "part new table/top",
        "part new table/leg",
    )
    later = "2026-08-23 10:00"
    finisher.types(later, "log top over --at '2026-08-22 00:30'")
    finisher.types(later, "log top varnish --at 2026-08-22T01:00:00+09:00")
    finisher.types(later, "log top varnish --at 2026-08-21T16:00:00.5Z")
    finisher.types(later, "log top varnish --at 2026-08-21T16:00:00.25Z")
    finisher.types(later, "log leg varnish --at 2026-08-21T16:00:00Z")
    finisher.types(later, "log leg over --at 2026-08-22T01:00:00+09:00")
    top = finisher.reads(later, "on top")
    leg = finisher.reads(later, "on leg")
    with FC092.line(1):
        assert "coat 4 over, Sat 00:30" in top
        assert "table/top: over, Sat 00:30" in finisher.reads(later, "when top")
    with FC092.line(3):
        for coat, act in ((1, 6), (2, 8), (3, 7)):
            assert f"coat {coat} varnish, Fri 17:00 (act {act})" in top
        assert "coat 1 varnish, Fri 17:00" in leg
        assert "coat 2 over, Fri 17:00" in leg
    with FC092.trap:
        assert "coat 4 varnish" not in top
    logger = finisher.program.folder / "logger.csv"
    logger.write_text("time,temperature_c,humidity\n2026-08-21T16:00:00,20,50\n")
    with FC092.line(2):
        asked = finisher.tries(later, f"air import {logger}")
        assert asked.code == 2
        assert "do not say of which zone they are" in asked.err
        assert "--zone Europe/London" in asked.err
        taken = finisher.reads(later, f"air import {logger} --zone Asia/Tokyo")
        assert "by the clock of Asia/Tokyo" in taken
        assert "Fri 08:00" in taken


FC096 = Question(
    "stripped after a month and done again in another finish: when is it rubbed out now",
    shows=(
        "the first attempt is closed as one that never hardened",
        "what may be done when goes by the new finish, from its last coat",
        "looking back by class shows the failure too",
    ),
    trap="hours of the old coats count, or the attempt is deleted and its lesson with it",
)


def test_fc096_the_first_attempt_is_kept_as_the_failure_that_it_was(finisher: Finisher):
    finisher.types(
        "2026-03-01 18:00",
        "product new nitro --class lacquer-sprayed",
        "product new water --class waterborne-clear",
        "part new guitar/body",
        "air 23C 45%",
        "log body nitro --method spray",
    )
    finisher.types("2026-04-10 18:00", "air 23C 45%")
    never = finisher.reads("2026-04-10 18:10", "check body prints")
    finisher.types("2026-04-10 18:30", "off body --strip")
    for day in ("14", "15", "16"):
        finisher.types(f"2026-04-{day} 08:50", "air 23C 50%", "log body water --scuffed")
        finisher.types(f"2026-04-{day} 14:30", "air 23C 50%", "log body water")
    on = finisher.reads("2026-04-16 15:00", "on body")
    past = finisher.reads("2026-04-16 15:00", "past lacquer-sprayed")
    when = finisher.reads("2026-04-16 15:00", "when body")
    with FC096.line(1):
        assert "stalled: still prints when by its class it might be fully hard" in never
        assert "attempt 1 nitro, stripped Fri" in on
        assert "TAKEN OFF after 40 d, stripped to bare wood" in past
        assert "prints" in past
    with FC096.line(2):
        assert "water, 14:30" in when
        # Three weeks by class, a month at the long end.
        assert "rub after Sun 17 May, test from Fri 8 May" in when
    with FC096.line(3):
        assert past.index("attempt 1 TAKEN OFF") < past.index("attempt 2 what is on it now")
        assert "1 attempt taken off" in past
        assert "attempt 1 TAKEN OFF" in finisher.reads("2026-04-16 15:00", "past waterborne-clear")
    with FC096.trap:
        assert "coat 6 water" in on
        assert "coat 7" not in on
        assert "nitro" in past


FC090 = Question(
    "a coat written down two days late, between two others: are numbers, hours and dates right",
    shows=(
        "coats stand in the order of the work, and when it was typed is kept",
        "what is judged otherwise now is said, of the coats after it too, and stays in sight",
        "what changed: which coats count as others, which dates moved, or that none did",
    ),
    trap="the last one typed is taken as the last coat, and its hours count from Thursday",
)


def test_fc090_a_coat_that_was_forgotten_lands_where_it_belongs(finisher: Finisher):
    poly, top = "product new poly --class oil-polyurethane", "part new table/top"
    leg = "part new table/leg"
    finisher.types("2026-11-25 19:00", poly, top, leg, "log top leg poly")
    finisher.types("2026-11-27 19:30", "log top leg poly --scuffed")
    saturday = "2026-11-28 10:00"
    before = finisher.stage(saturday, "top", "recoat")
    late = finisher.reads(saturday, "log top poly --at 'thu 19:00'")
    on = finisher.reads(saturday, "on top")
    with FC090.line(1):
        assert "coat 1 poly, Wed 19:00 (act 4) coat 2 poly, Thu 19:00 (act 6)" in on
        assert "coat 3 poly, Fri 19:30 (act 5)" in on
        history = finisher.reads(saturday, "history top")
        assert "6 Thu 19:00 table/top: coat poly; typed 10:00" in history
    with FC090.line(3):
        assert "it lands before 1 later entry" in late
        assert "numbers table/top: act 5 is coat 3, was 2 moved no date still to come" in late
    with FC090.trap:
        # A day by its class, from Friday half past seven: as before.
        assert finisher.stage(saturday, "top", "recoat") == before
        assert before["high"] == "2026-11-28T19:30:00Z"
        assert "recoat after 19:30" in late
        assert "poly, Fri 19:30" in finisher.reads(saturday, "when top")
    with FC090.line(2):
        unscuffed = "poly went on over poly with no scuffing on record: it may peel"
        assert f"caution: top: act 5, poly: {unscuffed}" in late
        assert unscuffed in finisher.reads(saturday, "why top")
        assert "not reached" not in late
        # On Friday afternoon, instead, the evening's coat went on over a wet one.
        close = finisher.reads(saturday, "log leg poly --at 'fri 15:00'")
        assert "stop: leg: act 5, poly: drying: scuff and recoat not reached" in close
        assert "(label 6–24 h, 4.5 done)" in close
        assert "numbers table/leg: act 5 is coat 3, was 2" in close


FC095 = Question(
    "gel stain, a clear of the wrong sheen sanded off, then primer and paint: how is it kept",
    shows=(
        "the change is on record with its reason, and what is left is held against the primer",
        "how a product shines is kept, and told of the schedule before its first coat",
        "the steps of the old system are due no more",
    ),
    trap="coats 1 to 12 in one list, and a satin clear still to come",
)


def test_fc095_another_system_begins_with_coat_1_on_what_is_left(finisher: Finisher):
    finisher.types(
        "2026-07-01 10:00",
        "product new gel --class gel-stain",
        "product new clear --class waterborne-clear --sheen semi-gloss",
        "product new primer --class pigmented-shellac",
        "product new paint --class latex-enamel",
        "steps new stained gel*3 clear*3",
        "part new dresser/case --steps stained",
    )
    checked = finisher.reads("2026-07-01 10:01", "steps check stained")
    with FC095.line(2):
        assert "it ends semi-gloss, as its last coat, clear" in checked
        assert "clear: waterborne clear, semi-gloss" in finisher.reads(
            "2026-07-01 10:01", "product show clear"
        )
    for day in ("01", "03", "05"):
        finisher.types(f"2026-07-{day} 10:02", "log case gel")
        finisher.types(f"2026-07-{day} 10:05", "log case wipe")
    finisher.types("2026-07-12 10:00", "log case clear", "fault case wrong-sheen")
    sanded = "off case --to 11 --sanded --note 'semi-gloss, not satin'"
    finisher.types("2026-07-16 10:00", sanded, "steps new painted primer*3 paint*5")
    finisher.types("2026-07-16 10:01", "part steps case --as painted")
    ready = finisher.reads("2026-07-16 10:02", "ready -v")
    on = finisher.reads("2026-07-16 10:02", "on case")
    with FC095.line(1):
        history = finisher.reads("2026-07-16 10:02", "history case")
        assert "steps: painted, was stained · part steps case --as painted" in history
        assert "attempt 1 clear, sanded off" in on
        assert "wrong sheen, semi-gloss, not satin" in on
        assert "coat dresser/case primer 1 of 3" in ready
        assert "over gel stain, oil: Alcohol does not dissolve the oil binder once it is" in ready
        # Paint straight over what is left would have to wait for it.
        straight = finisher.reads("2026-07-16 10:02", "over gel paint")
        assert "wait 3 d to 7 d" in straight
        assert "dewaxed shellac between" in straight
    with FC095.line(3):
        assert "to come primer, primer, primer, paint, paint, paint, paint, paint now" in on
        assert finisher.asks("2026-07-16 10:02", "on case")[0]["aside"] == []
    finisher.types("2026-07-16 10:03", "log case primer --scuffed")
    finisher.types("2026-07-16 14:00", "log case primer --scuffed")
    later = finisher.reads("2026-07-16 14:01", "on case")
    with FC095.trap:
        assert later.count("earlier gel, ") == 3
        assert "coat 1 primer, 10:03" in later
        assert "coat 2 primer, 14:00" in later
        assert "coat 3" not in later
        assert "clear" not in later.partition("to come ")[2]


FC240 = Question(
    "one line at night for six doors: the same as door 3, but 7 sanded back: what is stored",
    shows=(
        "five doors by number with coat 2 and its can, door 7 without one; the typo is asked",
        "it asks when; without an answer it is a span whose later end counts",
        "what 'sanded back' means is asked before the next step of door 7 is shown",
        "one undo takes the whole line back",
    ),
    trap="ten past two for all, a second coat on door 7, or a part that is called dors",
)


def test_fc240_one_line_for_six_doors_asks_what_it_does_not_say(finisher: Finisher):
    finisher.types(
        "2026-11-04 18:00",
        "product new finish --class unknown",
        "can new K2 --product finish",
        "part new kitchen/doors --count 9",
        "log doors finish",
    )
    day = "2026-11-24"
    finisher.types(f"{day} 14:10", "log doors:3 finish --from K2")
    line = "log dors 4-9 same as 3 but 7 sanded back"
    refused = finisher.tries(f"{day} 18:45", line)
    with finisher.at_a_terminal(f"{day} 18:45", line) as session:
        session.answer("no part is called 'dors:4-9'. Which?", "1")
        session.answer("14:10 was the other", "")
        session.answer("'sanded back' on kitchen/doors:7 may be scuffed", "1")
    told = " ".join(session.screen.split())
    with FC240.line(1):
        assert "did you mean kitchen/doors?" in refused.err
        assert "doors:4-6,8-9: coat 2, finish from K2" in told
        assert "on 5 of 5 pieces" in told
        assert "doors:7: no coat, scuff, coat 1 stays" in told
    with FC240.line(2):
        assert "14:10 to 18:45 doors:4-6,8-9" in told
        assert "when was not said: the later end counts" in told
        span = finisher.stage(f"{day} 18:46", "doors:4", "recoat")
        later = finisher.stage(f"{day} 18:46", "doors:3", "recoat")
        assert hours(later["high"], span["high"]) == pytest.approx(4 + 35 / 60, abs=0.6)
    with FC240.line(3):
        assert "may be scuffed (the coat stays), levelled, or down to bare wood" in told
        assert told.index("may be scuffed") < told.index("coat 1 stays ·")
    seen = finisher.reads(f"{day} 18:47", "on doors")
    with FC240.trap:
        assert "kitchen/doors:7 coat 1 finish, Wed 4 Nov 18:00 (act 4), then scuff" in seen
        assert "coat 2 finish from K2, 18:45" in seen
        assert "dors" not in finisher.types(f"{day} 18:47", "part list")
    back = finisher.reads(f"{day} 18:48", "undo", "on doors")
    with FC240.line(4):
        assert "kitchen/doors:1-2,4-9 coat 1 finish, Wed 4 Nov 18:00 (act 4) now" in back
        assert "then scuff" not in back
