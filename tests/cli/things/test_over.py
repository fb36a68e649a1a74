"""`over` and `class matrix`: may one finish go over another, before anybody has coated anything.

Common practice where no other source stands beside a test.
"""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import pytest
from run import Finishlog

from finishlog.cli.words.finding_words import joined

# An invented shop.
SHOP = """
2026-11-20T08:00 room new shop --night 17C
2026-11-20T08:00 product new clear --class waterborne-clear --recoat 3h
2026-11-20T08:00 product new sealer --class shellac-2lb
2026-11-20T08:00 product new linseed --class boiled-linseed-oil
2026-11-20T08:00 product new varnish --class alkyd-varnish
2026-11-20T08:00 project new box
2026-11-20T08:00 part new box/lid --species ash --room shop
2026-11-20T18:00 air 18C 55%
"""
NOW = "2026-11-20T18:00+00:00"


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path, NOW).played(SHOP, now="{}:00+00:00")


def asked(shop: Finishlog, *words: str) -> dict[str, object]:
    answer: dict[str, object] = shop.did("over", *words, "--json").document["answer"]
    return answer


def test_shellac_dries_before_waterborne_goes_on(shop: Finishlog):
    """2 to 3 h for shellac (US Army TM 43-0139)."""
    out = shop.did("over", "sealer", "clear").out
    assert out.startswith("clear over sealer: yes, once it is dry\n")
    assert "2 h to 3 h" in out
    assert "TM 43-0139" in out


def test_waterborne_never_goes_right_over_oil(shop: Finishlog):
    out = shop.did("over", "linseed", "clear", "--on", "ash").out
    assert out.startswith("clear over linseed, on ash: no")
    assert "dewaxed shellac" in out
    assert asked(shop, "linseed", "clear")["at"] is None


def test_rosewood_keeps_varnish_soft_bare_and_not_over_shellac(shop: Finishlog):
    """Oily wood under an oxidising finish (Woodworking magazine, oily exotic woods)."""
    assert ": no: on rosewood" in shop.did("over", "bare-wood", "varnish", "--on", "rosewood").out
    assert ": yes" in shop.did("over", "sealer", "varnish", "--on", "rosewood").out


@pytest.mark.parametrize(("under", "upper"), [("sealer", "clear"), ("clear", "clear")])
def test_it_is_what_the_bench_says_once_the_coat_is_on(shop: Finishlog, under: str, upper: str):
    """Asked before, or after the lower coat went on this minute: one date."""
    before = asked(shop, under, upper, "--on", "ash")
    shop.did("log", "box/lid", under)
    after = asked_when(shop)
    assert abs(hours(str(before["at"])) - hours(after)) <= 0.5


def asked_when(shop: Finishlog) -> str:
    (line,) = shop.did("when", "box/lid", "--json").document["answer"]["lines"]
    found = next(s for s in line["stages"] if s["stage"] == "recoat")
    return str(found["high"])


def hours(moment: str) -> float:
    return datetime.fromisoformat(moment).timestamp() / 3600


def test_what_the_person_says_of_a_product_counts(shop: Finishlog):
    shop.did("product", "says", "clear", "--not-over", "shellac-2lb", "--because", "the can")
    assert ": no" in shop.did("over", "sealer", "clear").out


def test_a_class_is_asked_without_a_product_and_without_a_shop(tmp_path: Path):
    empty = Finishlog(tmp_path)
    out = empty.did("over", "conversion-varnish", "waterborne-clear").out
    assert out.splitlines()[0].startswith("waterborne clear over conversion varnish: ")
    assert not empty.database.exists()


def test_the_matrix_is_never_silently_ok(shop: Finishlog):
    """Every pair has a rule with its reason and source, or says that nothing is known."""
    pairs = shop.did("class", "matrix", "--json").document["answer"]
    classes = {pair["over"] for pair in pairs}
    assert len(pairs) == len(classes) * (len(classes) + 1)
    for pair in pairs:
        is_told = bool(pair["reason"] and pair["source"])
        assert is_told is (pair["answer"] not in {"recoat", "no rule known", "the wood decides"})
        assert (pair["answer"] == "recoat") is (pair["under"] == pair["over"])
        assert (pair["answer"] == "the wood decides") <= (pair["under"] == "bare-wood")


def test_one_class_of_the_matrix_tells_why(shop: Finishlog):
    out = shop.did("class", "matrix", "paste-wax").out
    assert "Nothing sticks to wax." in out
    assert "common practice" in out


def test_the_grid_fits_eighty_columns(shop: Finishlog):
    assert max(map(len, shop.did("class", "matrix").out.splitlines())) <= 80


def test_a_schedule_that_is_sound_goes_through(shop: Finishlog):
    shop.did("steps", "new", "good", "sand", "sealer", "scuff", "clear", "scuff", "clear")
    out = shop.did("steps", "check", "good", "--on", "ash").out
    assert out.startswith("good on ash: it goes through")
    assert "stop" not in out


def test_a_schedule_stops_where_a_coat_may_never_go(shop: Finishlog):
    shop.did("steps", "new", "bad", "sand", "linseed", "clear", "clear")
    out = shop.did("steps", "check", "bad", "--on", "ash").out
    assert out.startswith("bad on ash: it stops at step 3, clear\n")
    assert "dewaxed shellac" in out
    assert "the step after it was not looked at" in out


def test_a_scuffing_that_is_missing_is_named(shop: Finishlog):
    """Varnish over varnish wants tooth once its window is over."""
    shop.did("steps", "new", "bare", "sand", "varnish", "varnish")
    checked = shop.did("steps", "check", "bare", "--json").document["answer"]["steps"]
    assert [step["scuff"] for step in checked] == [False, False, True]
    shop.did("steps", "new", "scuffed", "sand", "varnish", "scuff", "varnish")
    checked = shop.did("steps", "check", "scuffed", "--json").document["answer"]["steps"]
    assert not any(step["scuff"] for step in checked)


def test_the_wood_decides_whether_a_schedule_goes_through(shop: Finishlog):
    """Oily wood under an oxidising finish (Woodworking magazine, oily exotic woods)."""
    shop.did("steps", "new", "plain", "sand", "varnish")
    assert "goes through" in shop.did("steps", "check", "plain", "--on", "ash").out
    assert "it stops at step 2" in shop.did("steps", "check", "plain", "--on", "rosewood").out


def test_colder_air_never_makes_a_schedule_shorter(shop: Finishlog):
    shop.did("steps", "new", "two", "clear", "scuff", "clear")
    warm = shop.did("steps", "check", "two", "--json").document["answer"]["steps"]
    shop.did("air", "14C", "55%")
    cold = shop.did("steps", "check", "two", "--json").document["answer"]["steps"]
    assert all(c["after_h"] >= w["after_h"] for w, c in zip(warm, cold, strict=True))


@pytest.mark.parametrize(
    ("said", "remedy", "line"),
    [
        ("the same coat again?", "if it is one: undo", "the same coat again? if it is one: undo"),
        ("It blisters. The longest binds.", "Wait", "It blisters. The longest binds. Wait"),
        ("Nothing sticks to wax.", "Strip it", "Nothing sticks to wax. Strip it"),
        ("It blisters.", "", "It blisters"),
        ("", "wait", "wait"),
    ],
)
def test_what_to_do_stands_behind_what_was_found_as_one_sentence(said: str, remedy: str, line: str):
    assert joined(said, remedy) == line


def test_what_is_published_of_several_pairs_alike_is_said_once(shop: Finishlog):
    """Every pair with the class is still named: once below and once above, itself once."""
    pairs = shop.did("class", "matrix", "waterborne-clear", "--json").document["answer"]
    heads = [
        line.partition(": ")[0].partition(" over ")
        for line in shop.did("class", "matrix", "waterborne-clear").out.splitlines()
        if not line.startswith(" ")
    ]
    named = [
        (under, over)
        for overs, _, unders in heads
        for over in overs.split(", ")
        for under in unders.split(", ")
    ]
    assert sorted(named) == sorted((pair["under"], pair["over"]) for pair in pairs)
    assert len(heads) < len(pairs) * 0.6


def test_air_that_nobody_read_asks_for_a_test_of_the_film_and_no_board(shop: Finishlog):
    later = "2026-11-22T18:00+00:00"
    board = shop.did("over", "clear", "oil-varnish-blend", "--on", "ash").out
    assert "on a test board first: " in board
    shop.did("air", "18C", "55%", now="2026-11-26T18:00+00:00")
    out = shop.did("over", "sealer", "clear", "--on", "ash", now=later).out
    assert out.startswith("clear over sealer, on ash: yes, once a test passes: ")


def test_no_stop_ends_twice_and_bare_wood_is_not_waited_for(shop: Finishlog):
    for under, over in (("linseed", "clear"), ("clear", "linseed"), ("varnish", "sealer")):
        out = shop.did("over", under, over, "--on", "ash").out
        assert ".;" not in out
        assert "?;" not in out
    assert shop.did("over", "bare-wood", "clear", "--on", "ash").out.startswith(
        "clear over bare wood, on ash: yes\n"
    )


def test_what_is_wrong_with_the_lower_coat_is_not_asked_of_what_goes_over_it(shop: Finishlog):
    """Wax on bare wood is a mistake of its own; that nothing sticks to wax is the answer."""
    first = shop.did("over", "paste-wax", "clear", "--on", "cherry").out.splitlines()[0]
    assert "Nothing sticks to wax" in first
    assert "Wax sinks into bare wood" not in first


def test_a_bleach_is_not_forbidden_but_waits_for_its_rinse(shop: Finishlog):
    first = shop.did("over", "bleach-oxalic", "varnish", "--on", "oak").out.splitlines()[0]
    assert first.endswith("not yet, it waits for the rinse")


@pytest.mark.parametrize("under", ["gel-stain", "wiping-stain", "glaze", "oil-varnish-blend"])
def test_what_is_wiped_off_is_wiped_in_its_time(shop: Finishlog, under: str):
    """Gel stain leaves only minutes for it."""
    out = shop.did("over", under, "alkyd-varnish", "--on", "pine").out
    assert "was wiped" not in out
    assert ": yes" in out.splitlines()[0]


def test_what_wants_a_hardener_is_mixed_with_it(shop: Finishlog):
    """Nobody mixes for a schedule that is only walked through."""
    shop.did("product", "new", "cv", "--class", "conversion-varnish")
    shop.did("steps", "new", "hard", "sand", "cv", "scuff", "cv")
    assert "hardener" not in shop.did("steps", "check", "hard", "--on", "maple").out


@pytest.mark.parametrize(
    ("under", "upper", "air", "said"),
    [
        # Sprayed lacquer blushes above 65 % RH (trade questions and answers on blush).
        ("bare-wood", "lacquer-sprayed", "20C 80%", {"too-damp": "not now", "blush": "air"}),
        ("sealer", "lacquer-sprayed", "20C 62%", {"blush": "air"}),
        # Alkyd varnish stands still below 10 °C (US Army TM 55-1500-345-23).
        ("bare-wood", "varnish", "18C 50%", {"cold-night-halts": "not tonight", "dew-tonight": ""}),
        # Waterborne needs its warmth for a day, whatever the evening is (Wood Handbook).
        ("sealer", "clear", "20C 40%", {"cold-night-harms": "not tonight"}),
    ],
)
def test_the_air_of_a_room_that_is_named_is_told_beside_what_may_go_over_what(
    shop: Finishlog, under: str, upper: str, air: str, said: dict[str, str]
):
    """As it would be at the coat; the pair itself is answered as without the room."""
    shop.did("room", "new", "garage", "--night=-1C")
    shop.did("air", *air.split(), "--room", "garage")
    out = shop.did("over", under, upper, "--room", "garage").out
    told = asked(shop, under, upper, "--room", "garage")["air"]
    assert isinstance(told, list)
    assert [found["rule"] for found in told] == list(said)
    for head in filter(None, said.values()):
        assert any(line.startswith(f"{head} ") for line in out.splitlines())
    plain = shop.did("over", under, upper).out
    assert ": yes" in plain.splitlines()[0]
    assert out.splitlines()[0] == plain.splitlines()[0]


def test_air_that_suits_a_coat_is_not_spoken_of(shop: Finishlog):
    shop.did("room", "new", "loft", "--night", "19C")
    shop.did("air", "20C", "45%", "--room", "loft")
    for upper in ("varnish", "clear", "lacquer-sprayed", "sealer"):
        assert asked(shop, "bare-wood", upper, "--room", "loft")["air"] == []
    assert asked(shop, "bare-wood", "varnish")["air"] == []


@pytest.mark.parametrize(
    ("steps", "told"),
    [
        # Each face lies open to its own coats alone, in whatever order they are named.
        (
            "varnish@back varnish@front varnish@edges",
            {"varnish@back": 0, "varnish@front": 0, "varnish@edges": 0},
        ),
        # What goes on between on another face does not count.
        ("sealer@back clear@front sealer@back", {"sealer@back": 0, "clear@front": 0}),
        # What is only taped is kept bare: what goes all round does not reach it.
        ("mask@tongue sealer untape@tongue", {"mask@tongue": 0, "sealer": 0, "untape@tongue": 0}),
    ],
)
def test_a_schedule_is_walked_through_face_by_face(
    shop: Finishlog, steps: str, told: dict[str, int]
):
    shop.did("steps", "new", "sides", *steps.split())
    rows = shop.did("steps", "check", "sides", "--json").document["answer"]["steps"]
    first = {row["step"]: row for row in reversed(rows)}
    assert {name: int(row["after_h"]) for name, row in first.items()} == told
    assert not any(row["scuff"] or row["wait"] for row in first.values())


def test_a_coat_all_round_is_told_apart_where_one_face_lacks_its_scuffing(shop: Finishlog):
    shop.did("steps", "new", "sides", *["varnish", "scuff@front", "scuff@back", "varnish"])
    assert "does not say so" not in shop.did("steps", "check", "sides").out
    shop.did("steps", "new", "one", *["varnish", "scuff@front", "varnish@front", "varnish@back"])
    rows = shop.did("steps", "check", "one", "--json").document["answer"]["steps"]
    assert [row["step"] for row in rows if row["scuff"]] == ["varnish@back"]
    shop.did("steps", "new", "mixed", *["varnish@front", "varnish@back", "scuff@back", "varnish"])
    rows = shop.did("steps", "check", "mixed", "--json").document["answer"]["steps"]
    assert {(r["step"], r["number"]): r["scuff"] for r in rows if r["number"] == 4} == {
        ("varnish@front", 4): True,
        ("varnish@back", 4): False,
    }
