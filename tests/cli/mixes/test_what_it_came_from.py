"""What a coat came from reaches its film: asked, not dated, and lifted by what tells otherwise.

Common practice throughout; parts, products and hours are invented.
"""

from __future__ import annotations

import pytest

from tests.finisher import Finisher

MONDAY = "2026-06-01"
# No date ends it. What it could take a coat from, once it is answered, is said behind that.
UNDATED = {"high": None}


@pytest.fixture
def bench(finisher: Finisher) -> Finisher:
    """Set up a warm room, opening hours and two parts that get a two-part finish twice."""
    finisher.types(
        f"{MONDAY} 17:00",
        "room new shop --night 20C",
        "room usual shop 5:20C/50% 14:22C/50%",
        "product new clear --class waterborne-two-part",
        "product new varnish --class alkyd-varnish",
        "steps new twice clear clear",
        "part new desk/top --steps twice",
        "part new desk/leg --steps twice",
        "steps new once clear",
        "part new desk/shelf --steps once",
        "shop hours mon-sun 9-21",
        "air 21C 50%",
    )
    return finisher


def standing(bench: Finisher, when: str, part: str = "top") -> dict[str, object]:
    (line,) = bench.asks(when, f"when {part}")["lines"]
    found: dict[str, object] = line["standing"]
    return found


def dates(bench: Finisher, when: str, part: str = "top") -> list[object]:
    """Return every date that `plan` has for a part: its tasks, and its packing."""
    plan = bench.asks(when, "plan")
    tasks = [task for session in plan["sessions"] for task in session["tasks"]]
    packed = [each["pack"]["at"] for each in plan["parts"] if each["part"].endswith(part)]
    mine = [task["operation"] for task in tasks if task["part"].endswith(part)]
    return [*mine, *(at for at in packed if at)]


def test_used_right_it_is_silent_and_dated(bench: Finisher):
    bench.types(f"{MONDAY} 18:00", "mix clear base:300ml hardener:30ml --name pot")
    said = bench.types(f"{MONDAY} 18:10", "log top clear")
    assert "clear from pot, 10:1" in said
    for word in ("caution", "stop", "hardener"):
        assert word not in said
    assert standing(bench, f"{MONDAY} 18:11")["answer"] == "drying"
    assert dates(bench, f"{MONDAY} 18:11")


def test_a_hardener_that_nobody_logged_is_asked_for_once_and_nothing_is_dated(bench: Finisher):
    said = bench.reads(f"{MONDAY} 18:10", "log top clear")
    assert said.count("was the hardener of clear in it?") == 1
    assert "mix clear base:AMOUNT hardener:AMOUNT --at WHEN" in said
    assert "was the hardener" not in bench.types(f"{MONDAY} 18:20", "log leg clear")
    then = standing(bench, "2026-06-02 18:00")
    assert then["answer"] == "waits for"
    assert then.items() >= UNDATED.items()
    assert "waits for word that its hardener was in it" in bench.reads("2026-06-02 18:00", "ready")
    assert dates(bench, "2026-06-02 18:00") == []
    assert bench.stage("2026-06-02 18:00", "top", "pack")["blocked"]


def test_after_the_last_coat_packing_is_not_dated_either(bench: Finisher):
    bench.types(f"{MONDAY} 18:10", "log shelf clear")
    bench.types("2026-06-20 18:00", "air 21C 50%")
    assert dates(bench, "2026-06-20 18:00", "shelf") == []
    assert "hardener" in bench.types("2026-06-20 18:00", "ready")
    bench.types("2026-06-20 18:00", "check shelf holds")
    assert standing(bench, "2026-06-20 18:00", "shelf")["answer"] == "done"


def test_the_mix_that_is_logged_late_answers_it_for_all(bench: Finisher):
    bench.types(f"{MONDAY} 18:10", "log top clear", "log leg clear")
    bench.types("2026-06-02 09:00", f"mix clear base:300ml hardener:30ml --at '{MONDAY} 18:00'")
    for part in ("top", "leg"):
        now = standing(bench, "2026-06-02 09:01", part)
        assert now["answer"] != "waits for"
        assert "hardener" not in str(now)
        assert dates(bench, "2026-06-02 09:01", part)


def test_a_word_of_it_in_a_note_answers_it_and_a_denial_does_not(bench: Finisher):
    said = bench.types(f"{MONDAY} 18:10", "log top clear --note 'with 10 % hardener'")
    assert "was the hardener" not in said
    said = bench.types(f"{MONDAY} 18:20", "log leg clear --note 'no hardener'")
    assert "was the hardener of clear in it?" in said


def test_a_pot_without_its_hardener_stops_until_a_scratch_holds(bench: Finisher):
    bench.types(f"{MONDAY} 18:00", "mix clear base:300ml water:15ml --name pot")
    said = bench.types(f"{MONDAY} 18:10", "log top clear")
    assert "stop: clear came from pot, which was mixed without its hardener" in said
    late = "2026-08-01 18:00"
    bench.types(late, "air 21C 50%")
    assert standing(bench, late)["answer"] == "suspect"
    assert standing(bench, late).items() >= UNDATED.items()
    assert "mixed without its hardener" in bench.types(late, "ready")
    assert dates(bench, late) == []
    bench.types(late, "check top no-print")
    assert standing(bench, late)["answer"] == "suspect"
    bench.types(late, "check top holds")
    assert standing(bench, late)["answer"] in {"go", "go after scuffing"}
    assert dates(bench, late)


def test_it_stops_too_when_the_pot_was_put_away_long_ago(bench: Finisher):
    bench.types(f"{MONDAY} 18:00", "mix clear base:300ml --name pot")
    bench.types(f"{MONDAY} 18:10", "log top clear", "can thrown-out pot")
    bench.types("2026-08-01 18:00", "mix clear base:300ml hardener:30ml --name fresh")
    assert standing(bench, "2026-08-01 18:01")["answer"] == "suspect"


def test_a_mix_past_its_pot_life_marks_its_coat_until_a_check_holds(bench: Finisher):
    bench.types(f"{MONDAY} 17:10", "mix clear base:300ml hardener:30ml --name pot")
    assert "past its pot life by" in bench.types(f"{MONDAY} 20:10", "log top clear")
    day = "2026-06-03 18:00"
    bench.types(day, "air 21C 50%")
    assert standing(bench, day)["answer"] == "test first"
    assert "past its pot life" in bench.types(day, "ready")
    bench.types(day, "check top no-print")
    assert standing(bench, day)["answer"] in {"go", "go after scuffing"}


def test_a_can_condemned_later_reaches_what_came_from_it_by_a_jar_as_well(bench: Finisher):
    bench.types(
        f"{MONDAY} 18:00",
        "can new tin --product varnish --opened now",
        "can new other --product varnish",
        "mix varnish varnish:100ml spirits:20ml --from tin --name thin",
    )
    bench.types(f"{MONDAY} 18:10", "log top varnish --from thin", "log leg varnish --from other")
    said = bench.types("2026-06-03 18:00", "can condemned tin --note 'stays soft'")
    assert "coats from it: desk/top" in said
    assert "desk/leg" not in said
    bench.types("2026-06-20 18:00", "air 21C 50%")
    (top,), (leg,) = (bench.whys("2026-06-20 18:00", part) for part in ("top", "leg"))
    assert top["standing"]["answer"] == "test first"
    assert "came from tin, which is since marked: do not use: stays soft" in str(top)
    assert "tin" not in str(leg["standing"]["findings"])
    bench.types("2026-06-20 18:01", "check top no-print")
    assert "which is since marked" not in str(bench.whys("2026-06-20 18:02", "top"))


def test_old_shellac_has_no_date_until_a_check_finds_it_dry(bench: Finisher):
    bench.types(
        f"{MONDAY} 18:00",
        "product new shellac --class shellac-2lb",
        "can new jug --jar --product shellac --opened '1 Mar 2025'",
        "part new desk/box",
    )
    said = bench.types(f"{MONDAY} 18:10", "log box shellac --from jug")
    assert said.count("jug was opened") == 1
    day = "2026-06-03 18:00"
    bench.types(day, "air 21C 50%")
    assert standing(bench, day, "box")["answer"] == "waits for"
    assert standing(bench, day, "box").items() >= UNDATED.items()
    bench.types(day, "check box dry")
    assert standing(bench, day, "box")["answer"] == "go"


def test_one_cause_is_said_once_at_the_next_coat(bench: Finisher):
    bench.types(
        f"{MONDAY} 18:00",
        "product new one --class waterborne-clear",
        "can new tin --product one --opened '1 May 2026'",
        "part new desk/box",
        "can frozen tin",
    )
    assert "stop: tin froze" in bench.types(f"{MONDAY} 18:10", "log box one --from tin")
    bench.types("2026-06-02 18:00", "air 21C 50%")
    again = bench.types("2026-06-02 18:01", "log box one --from tin --scuffed")
    assert again.count("tin, which had frozen") == 1
    assert "tin froze" not in again
