"""Questions about whoever lives where it dries, and about what somebody breathes through."""

from __future__ import annotations

import re

from tests.cases.question import Question
from tests.finisher import Finisher

POLY = "product new poly --class oil-polyurethane"
# What nobody may read anywhere: that a day, an air or a mask is safe.
CALLS_SAFE = re.compile(r"\bsafe (?:from|after|to)\b|\ball clear\b|\bno danger\b", re.IGNORECASE)

FC069 = Question(
    "how long should vulnerable people stay out of rooms with a fresh oil polyurethane",
    shows=(
        "who lives there is told once: advice to stay out, tied to the last coat, longer in cold "
        "and shut rooms",
        "the doctor and the safety data sheet are named, and nothing is called safe",
    ),
    trap="prints a day after which it is safe",
)


def test_fc069_a_pregnant_partner_sleeps_elsewhere_and_a_doctor_decides(finisher: Finisher):
    finisher.types(
        "2026-11-20 17:00",
        POLY,
        "room new bedrooms --kind dwelling",
        "room new upper --kind dwelling --lives pregnant",
        "room edit bedrooms --joined upper:door",
        "part new house/floor --room bedrooms",
        "part new house/sill --room bedrooms",
    )
    said = finisher.reads("2026-11-20 18:00", "log floor poly")
    with FC069.line(1):
        assert "somebody pregnant out of the house while it goes on, sleeping elsewhere" in said
        assert "back to smell not before Fri 27 Nov 2026 18:00" in said
        assert "advice runs from 3 to 7 d after the last coat" in said
        again = finisher.reads("2026-11-22 18:00", "log sill poly")
        assert "back to smell not before Sun 29 Nov 2026 18:00" in again
        assert "somebody pregnant" in finisher.reads("2026-11-22 19:00", "leave")
        assert "somebody pregnant" in finisher.reads("2026-11-22 19:00", "ready")
        shut = finisher.reads(
            "2026-11-22 20:00", "room edit bedrooms --exhaust none", "safety bedrooms"
        )
        assert "back to smell not before Sun 6 Dec 2026 18:00, longer in a room without" in shut
        finisher.types("2026-11-22 20:10", "air 10C 60% --room bedrooms")
        (cold, _) = finisher.asks("2026-11-22 20:20", "safety bedrooms")["people"]
        assert cold["out"]["slow"]
        assert cold["out"]["look"] > "2026-12-07"
    with FC069.line(2):
        for screen in (said, shut):
            assert "the doctor decides, with the safety data sheet" in screen
            assert not CALLS_SAFE.search(screen)
    with FC069.trap:
        assert "whoever comes in from outdoors smells nothing: a day to look, no promise" in said
        assert "24 h" not in said
        assert "Sat 21 Nov 2026" not in said


FC233 = Question(
    "organic-vapour cartridges that hung open all summer: good for tonight's two hours",
    shows=(
        "210 days since they were opened, 9 h worn, hung open: replaced before the spraying",
        "that nothing smells does not turn it into a plain go",
        "a new pair begins a record of its own, with a reminder of its bag",
        "without such an item nothing is made up about its life in hours",
    ),
    trap="counts the hours alone, and finds them few",
)


def test_fc233_cartridges_that_hung_open_are_replaced_whatever_their_hours(finisher: Finisher):
    finisher.types("2026-11-28 16:00", POLY, "part new job/door")
    untold = finisher.reads("2026-11-28 16:01", "respirator")
    before = finisher.reads("2026-11-28 16:02", "steps new film poly", "part steps door --as film")
    with FC233.line(4):
        assert "no respirator is on record" in untold
        silent = before + finisher.reads("2026-11-28 16:03", "ready")
        assert not re.search(r"\bcartridges?\b|\bd open\b|\bworn\b", silent)
    finisher.types(
        "2026-11-28 16:10",
        "respirator half opened --for organic-vapour --kept open --at '2026-05-02 16:10'",
        "respirator half worn 9h",
    )
    due = finisher.reads("2026-11-28 17:00", "ready")
    with FC233.line(1):
        assert "half: open for 210 d, worn 9 h, hung in the open" in due
        assert "put new cartridges in before this coat" in due
    finisher.types("2026-11-28 17:10", "note door 'nothing smells through the mask'")
    with FC233.line(2):
        assert "caution: half: open for 210 d" in finisher.reads("2026-11-28 17:20", "ready")
        assert "no hours worn and no lack of smell make it good" in due
    sprayed = finisher.reads("2026-11-28 17:30", "log door poly --method spray")
    with FC233.trap:
        assert "half: open for 210 d" in sprayed
        assert "nothing tells what is left of a cartridge" in sprayed
        assert not CALLS_SAFE.search(due + sprayed)
    fresh = finisher.reads("2026-11-28 18:00", "respirator half opened")
    with FC233.line(3):
        assert "open since 18:00; nothing tells what is left of it" in fresh
        assert "worn 9 h" not in fresh
        assert "a date on it, and into a closed bag after each session" in fresh
        kept = finisher.reads("2026-11-28 20:00", "respirator half worn 2h --kept bag")
        assert "worn 2 h" in kept
        assert "into a closed bag" not in kept


FC234 = Question(
    "a parrot lives downstairs while a landing is finished: can she stay, when may she come back",
    shows=(
        "with a bird the plan says: out of the house from the first coat on",
        "the earliest day to look is said, not as a safe one, and another coat moves it",
        "advice runs from four days to three months",
        "the date of people stands apart and is earlier",
    ),
    trap="takes the day or three that people stay out",
)


def test_fc234_a_bird_is_out_of_the_house_for_longer_than_people(finisher: Finisher):
    finisher.types(
        "2026-11-20 16:00",
        POLY,
        "room new upstairs --kind dwelling",
        "room new downstairs --kind dwelling --lives bird",
        "room edit upstairs --joined downstairs:gap",
        "shop hours 'mon-sun 16:00-22:00'",
        "steps new film poly",
        "part new home/landing --room upstairs --steps film",
    )
    plan = finisher.reads("2026-11-20 16:10", "plan")
    with FC234.line(1):
        assert "upstairs: a bird out of the house from the first coat on" in plan
        assert not CALLS_SAFE.search(plan)
    said = finisher.reads("2026-11-20 18:00", "log landing")
    with FC234.line(2):
        assert "a bird out of the house from the first coat on, waterborne too" in said
        assert "back to smell not before Fri 27 Nov 2026 18:00" in said
        assert "a day to look, no promise; another coat begins it again" in said
        assert not CALLS_SAFE.search(said)
    with FC234.line(3):
        assert "advice runs from 4 to 90 d after the last coat); the vet decides" in said
    with FC234.line(4):
        people = "everybody else out of the room: back to smell not before Mon 23 Nov 2026 18:00"
        assert people in said
    with FC234.trap:
        after_people = finisher.reads("2026-11-25 18:00", "ready")
        assert "a bird out of the house" in after_people
        assert "Fri 27 Nov 2026" in after_people
        moved = finisher.reads("2026-11-25 18:10", "log landing poly")
        assert "a bird out of the house" in moved
        assert "Wed 2 Dec 2026" in moved
        assert "Fri 27 Nov" not in moved
