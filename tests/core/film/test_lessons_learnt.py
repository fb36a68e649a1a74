"""How finishes came out, pair by pair: which coat a fault or a review speaks of. All is invented.

What a kind of fault blames is common practice: what lets go blames the bond, what swells or cracks
the coat right under it, what colours unevenly the wood.
"""

from __future__ import annotations

from msgspec.structs import replace

from finishlog.core.film.lessons import CameOut, Lessons
from finishlog.core.findings import WENT_WRONG_BEFORE
from finishlog.core.published.fault_kinds import Blames
from finishlog.core.verdict.fold import decide
from tests.rows import every_row
from tests.shop_of import FACTS
from tests.stories.of_lessons import STORIES
from tests.stories.telling import Told, scene

DYE, SEAL, CLEAR = "alcohol-dye", "shellac-2lb", "waterborne-clear"
FILM = f"{DYE} 08:00; {SEAL} +1d; {CLEAR} +1d; {CLEAR} +1d"


def came_out(line: str) -> tuple[CameOut, ...]:
    """Return all that a story taught, in the order of what lies on the wood."""
    lessons = scene(f"{line}; ask rest +1d").around.lessons
    return tuple(each for told in lessons.by_classes.values() for each in told)


def pairs(line: str) -> set[tuple[str, str, str]]:
    return {
        (each.pair.under.of if each.pair.under else "", each.pair.over.of, each.outcome.value)
        for each in came_out(f"walnut top; no-air; {line}")
    }


@every_row(
    ("line", "wanted"),
    [
        # What lets go: the coat on the one below, and the finish on what it lies on.
        (f"{FILM}; fault peel +9d", {(CLEAR, CLEAR, "failed"), (SEAL, CLEAR, "failed")}),
        (f"{FILM}; fault craze +9d", {(CLEAR, CLEAR, "failed")}),
        (f"{CLEAR} 08:00; fault craze +9d", set()),
        (f"{CLEAR} 08:00; fault fisheye +5m", {("", CLEAR, "failed")}),
        (f"{FILM}; fault blotch", {("", DYE, "failed")}),
        # A review is of the whole; a failed one of what met in it.
        (
            f"{FILM}; review failed +30d",
            {("", DYE, "failed"), (DYE, SEAL, "failed"), (SEAL, CLEAR, "failed")},
        ),
        (
            f"{FILM}; review fair +30d",
            {("", DYE, "fair"), (DYE, SEAL, "fair"), (SEAL, CLEAR, "fair"), (CLEAR, CLEAR, "fair")},
        ),
        # A fault names what a failed review does not; one after a good review still counts.
        (f"{FILM}; fault craze +9d; review failed +30d", {(CLEAR, CLEAR, "failed")}),
        (f"{FILM}; review good +9d; fault craze +300d", {(CLEAR, CLEAR, "failed")}),
        (f"{SEAL} 08:00; fault craze; review good +9d", {("", SEAL, "good")}),
        # Taken off down to a coat and done again: the pair failed once and came out well once.
        (
            f"{SEAL} 08:00; {CLEAR} +1d; fault peel +9d; off {SEAL}; {CLEAR} +1d; review good +90d",
            {(SEAL, CLEAR, "failed"), (SEAL, CLEAR, "good"), ("", SEAL, "good")},
        ),
        # The review before it came off is not one of what went on since.
        (f"{SEAL} 08:00; review failed +9d; off bare; {CLEAR} +1d", {("", SEAL, "failed")}),
        # Colour for a bare spot lies over no film.
        (
            f"{DYE} 08:00; {SEAL} +1d; fault rubbed-through; {DYE}; review good +9d",
            {("", DYE, "good"), (DYE, SEAL, "good")},
        ),
        # Nobody said anything, or took it off without a word.
        (FILM, set()),
        (f"{SEAL} 08:00; off bare +3d", set()),
    ],
)  # fmt: skip
def test_which_pairs_are_told_of(line: str, wanted: set[tuple[str, str, str]]):
    assert pairs(line) == wanted


def test_the_wood_under_an_old_finish_is_not_told_of():
    told = came_out(f"walnut old-varnish top; no-air; {FILM}; review failed +30d")
    assert {each.pair.under.of if each.pair.under else "" for each in told} == {DYE, SEAL}


def test_faces_alike_are_one_finish_and_parts_are_not():
    line = f"walnut top/front+back and walnut rail; no-air; {SEAL} 08:00; rail: {SEAL}"
    told = came_out(f"{line}; review failed +30d; rail: review failed")
    assert len(told) == 2


def test_what_air_hands_or_an_accident_makes_blames_nothing():
    """Invented here; a fault that is nobody's is told by its causes, and every kind decides."""
    blamed = {known.kind.value for known in FACTS.faults if known.blames is not Blames.NOTHING}
    assert blamed == {
        "fisheye", "wrinkle", "blister", "peel", "craze", "blotch", "wrong-colour", "bleed-back"
    }  # fmt: skip


@every_row("told", STORIES["went-wrong-before"], ids=lambda told: told.line)
def test_what_was_learnt_moves_no_date_and_stops_nobody(told: Told):
    at = scene(told.line)
    without = decide(at.zone, at.asked, replace(at.around, lessons=Lessons.none))
    left = tuple(f for f in at.verdict.findings if f.rule != WENT_WRONG_BEFORE)
    assert replace(at.verdict, findings=left) == without
