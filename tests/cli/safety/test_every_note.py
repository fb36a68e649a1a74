"""Every safety note can be had, and comes by itself with the act that it is about."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from run import Finishlog

from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()
NOTES = {note.id: note for note in FACTS.notes}
# As they stand on the screen of a shop with metric units.
TEXTS = {note.id: re.sub("[⟨⟩]", "", note.text) for note in FACTS.notes}
# Of every act and none: they end what `safety` says.
OF_NO_ACT = {"first", "ready"}

PRODUCTS = {
    "oil": "boiled-linseed-oil",
    "varnish": "alkyd-varnish",
    "nitro": "lacquer-sprayed",
    "cured": "conversion-varnish",
    "two": "waterborne-two-part",
    "water": "waterborne-clear",
    "flakes": "shellac-2lb",
    "whitener": "bleach-chlorine",
    "brightener": "bleach-oxalic",
    "pair": "bleach-two-part",
}


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    things = "".join(
        f"product new {name} --class {key}\npart new job/b-{name} --room shed\n"
        for name, key in PRODUCTS.items()
    )
    return Finishlog(tmp_path, now=at(1)).played("room new shed\n" + things)


def at(day: int, clock: str = "20:00", month: int = 3) -> str:
    return f"2026-{month:02}-{day:02}T{clock}:00+00:00"


def notes_of(shop: Finishlog, *words: str, now: str) -> list[str]:
    """Type it; return the ids of the notes that came with it, as they stand on the screen."""
    said = [
        line.removeprefix("safety: ")
        for line in shop.did(*words, now=now).out.splitlines()
        if line.startswith("safety: ")
    ]
    return [next(id for id, known in TEXTS.items() if known == text) for text in said]


def test_safety_alone_prints_every_note_the_worst_first(shop: Finishlog):
    said = shop.did("safety").out
    places = [said.find(text) for text in TEXTS.values()]
    assert -1 not in places
    assert places == sorted(places)


@every_row("note", FACTS.notes)
def test_every_note_is_found_by_its_hazard(shop: Finishlog, note):
    assert TEXTS[note.id] in shop.did("safety", note.applies_to).out


@pytest.mark.thorough
def test_every_note_but_the_general_ones_comes_with_an_act(shop: Finishlog):
    came: set[str] = set()
    # Evening after evening of the same work: what was read gives way to what was not.
    evenings = {
        "nitro": 10,
        "oil": 4,
        "whitener": 4,
        "brightener": 2,
        "pair": 3,
        "two": 2,
        "cured": 2,
        "flakes": 2,
        "water": 1,
        "varnish": 1,
    }
    work = [name for name, times in evenings.items() for _ in range(times)]
    for day, name in enumerate(work, start=1):
        method = ("--method", "spray") if name in {"nitro", "cured", "varnish"} else ()
        came |= set(notes_of(shop, "log", f"b-{name}", name, *method, now=at(day)))
    parts = ("ammonia:1", "dichromate:1", "lye:1", "epoxy hardener:1", "mekp:1", "citric:1")
    for day in (27, 28):
        for part in parts:
            came |= set(notes_of(shop, "mix", "water", part, "water:9", now=at(day, month=4)))
    shop.did("part", "new", "old/stool", "-n", "30", now=at(1, month=6))
    for day in range(1, 9):
        came |= set(notes_of(shop, "off", f"stool:{day}", now=at(day, month=6)))
    off = ("off", "stool:9", "--note", "dichloromethane")
    came |= set(notes_of(shop, *off, now=at(9, month=6)))
    shop.did("product", "new", "walnut oil", "--class", "tung-oil")
    shop.did("product", "new", "resin", "--class", "epoxy-seal")
    came |= set(notes_of(shop, "log", "stool:12", "resin", now=at(10, month=6)))
    shop.did("product", "new", "block", "--class", "mineral-oil")
    came |= set(notes_of(shop, "log", "stool:11", "block", now=at(10, month=6)))
    came |= set(notes_of(shop, "log", "stool:10", "walnut oil", now=at(10, month=6)))
    shop.did("log", "stool:20", "oil", now=at(20, month=6))
    for day in (21, 22):
        came |= set(notes_of(shop, "off", "stool:20", "--scraped", now=at(day, month=6)))
        shop.did("log", "stool:20", "oil", now=at(day, "21:00", month=6))
    came |= set(notes_of(shop, "log", "stool:20", "sand", now=at(23, month=6)))
    for n, kind in enumerate(("paint", "unknown"), start=1):
        shop.did("part", "new", f"old/chair-{n}", "--old-finish", kind)
        came |= set(notes_of(shop, "off", f"chair-{n}", now=at(23 + n, month=6)))
    for wood in ("oak", "cedar", "teak", "maple"):
        shop.did("part", "new", f"woods/{wood}", "--species", wood, now=at(24, month=6))
        came |= set(notes_of(shop, "log", wood, "sand", now=at(25, month=6)))
    came |= set(notes_of(shop, "heat", "tonight", "16", "till", "23", now=at(26, "12:00", 6)))
    came |= set(notes_of(shop, "project", "new", "crib", now=at(26, month=6)))
    came |= set(notes_of(shop, "part", "new", "kitchen/salad bowl", now=at(26, month=6)))
    asked = {note.id for note in FACTS.notes if note.applies_to == "emergency"}
    said = shop.did("safety", "first", "aid").out
    assert [note for note in asked if TEXTS[note] not in said] == []
    assert NOTES.keys() - came - asked == OF_NO_ACT


def test_the_worst_note_comes_first_at_every_act(shop: Finishlog):
    rank = {id: n for n, id in enumerate(NOTES)}
    for day, name in enumerate(PRODUCTS, start=1):
        came = notes_of(shop, "log", f"b-{name}", name, now=at(day))
        assert came == sorted(came, key=rank.__getitem__)
        assert len(came) <= 3
    assert notes_of(shop, "log", "b-two", "two", now=at(20))[0] == "isocyanate"
    assert notes_of(shop, "log", "b-oil", "oil", now=at(20))[0] == "rags-heat"
    assert notes_of(shop, "log", "b-whitener", "whitener", now=at(20))[0] == "bleach"


def test_the_household_fan_comes_up_when_lacquer_is_sprayed(shop: Finishlog):
    came: set[str] = set()
    for day in range(1, 6):
        line = ("log", "b-nitro", "nitro", "--method", "spray")
        came |= set(notes_of(shop, *line, now=at(day)))
    assert {"spray-fan", "vapour-travels", "vapour-breath"} <= came


def test_a_second_coat_the_same_evening_says_nothing_twice(shop: Finishlog):
    first = notes_of(shop, "log", "b-nitro", "nitro", "--method", "spray", now=at(1))
    again = notes_of(shop, "log", "b-nitro", "nitro", "--method", "spray", now=at(1, "20:40"))
    assert first
    assert not set(first) & set(again)


class TestDust:
    def test_once_a_wood_and_project(self, shop: Finishlog):
        for part in ("desk/top", "desk/leg", "bench/seat"):
            shop.did("part", "new", part, "--species", "white oak")
        shop.did("part", "new", "desk/drawer", "--species", "maple")
        assert "oak-or-beech-dust" in notes_of(shop, "log", "top", "sand", now=at(2))
        assert notes_of(shop, "log", "leg", "sand", now=at(3)) == []
        assert "dust" in notes_of(shop, "log", "drawer", "sand", now=at(4))
        assert "oak-or-beech-dust" in notes_of(shop, "log", "bench/seat", "sand", now=at(5))

    @pytest.mark.parametrize("wood", ["oak", "beech", "teak", "western red cedar", "ash", "koa"])
    def test_no_nuisance_mask_is_called_a_respirator(self, shop: Finishlog, wood: str):
        shop.did("part", "new", "desk/top", "--species", wood)
        said = shop.did("log", "top", "sand", now=at(2)).out
        assert "P2/P3, N95 or better" in said
        assert "fitted dust mask" not in said

    def test_no_word_of_dust_where_none_is_made(self, shop: Finishlog):
        shop.did("part", "new", "desk/top", "--species", "oak")
        for word in ("raise-grain", "mask", "untape"):
            assert notes_of(shop, "log", "top", word, now=at(2)) == []


class TestForWhom:
    @pytest.mark.parametrize(
        ("words", "note"),
        [
            (("project", "new", "baby crib"), "children-cot"),
            (("project", "new", "cradle"), "children"),
            (("project", "new", "table", "--for", "food"), "food"),
            (("part", "new", "gifts/toy train"), "children-old-paint"),
            (("part", "new", "gifts/Cutting-Board"), "food"),
            (("steps", "new", "for cots", "sand", "water"), "children"),
            (("project", "edit", "job", "--for", "child"), "children"),
            (("project", "new", "bed", "--for", "cot"), "children-cot"),
            (("project", "new", "gift", "--for", "toy"), "children"),
            (("project", "new", "gift", "--for", "bowl"), "food"),
        ],
    )
    def test_it_is_said_before_work_begins(self, shop: Finishlog, words, note: str):
        assert note in notes_of(shop, *words, now=at(1))

    def test_who_it_is_for_is_asked_where_only_the_name_says_it(self, shop: Finishlog):
        said = shop.did("part", "new", "crib/rail").out
        assert "finishlog project edit crib --for child" in said

    def test_once_said_of_the_project_its_parts_are_quiet(self, shop: Finishlog):
        shop.did("project", "new", "crib")
        assert notes_of(shop, "part", "new", "crib/crib rail", now=at(1)) == []

    @pytest.mark.parametrize(
        "words",
        [
            ("project", "new", "scotland desk"),
            ("part", "new", "desk/drawer-side"),
            ("part", "new", "desk/sample board", "--board"),
            ("project", "new", "cupboard"),
            ("steps", "new", "clear coat", "sand", "water"),
        ],
    )
    def test_other_names_are_quiet(self, shop: Finishlog, words):
        answer = shop.did(*words)
        assert "safety: " not in answer.out
        assert "--for" not in answer.out


class TestAsked:
    def test_of_a_product_a_project_a_room_a_wood_and_a_topic(self, shop: Finishlog):
        shop.did("part", "new", "desk/top", "--species", "beech", "--room", "shed")
        shop.did("log", "desk/top", "varnish")
        for about, word in (
            ("varnish", "heat and burn without a spark"),
            ("desk", "oak and beech"),
            ("desk", "heat and burn without a spark"),
            ("shed", "heat and burn without a spark"),
            ("western red cedar", "asthma"),
            ("rags", "sander bags"),
            ("vinegar", "poison gas"),
            ("conversion-varnish", "formaldehyde"),
        ):
            said = shop.did("safety", *about.split()).out
            assert word in said, about
            assert "safety data sheet" in said

    @pytest.mark.parametrize(
        ("kind", "mine"), [("project", "table"), ("part", "box/bleach-oxalic")]
    )
    def test_what_is_called_so_comes_before_what_a_class_is_called(self, shop, kind, mine):
        """A table in oil is no casting epoxy for tables, whatever the class is also called."""
        name = mine.split("/")[-1]
        assert "heat and burn without a spark" not in shop.did("safety", name).out
        if kind == "project":
            shop.did("project", "new", mine)
        shop.did("part", "new", mine if kind == "part" else f"{mine}/top", "--species", "ash")
        shop.did("log", mine if kind == "part" else f"{mine}/top", "oil")
        said = shop.did("safety", name).out
        assert "heat and burn without a spark" in said
        assert not re.search("epoxy|oxalic", said)

    def test_what_it_must_be_kept_from_stands_first(self, shop: Finishlog):
        said = shop.did("safety", "whitener").out
        assert said.startswith("KEEP APART")
        assert re.search(r"^ +ammonia +ammonia and chlorine bleach make chloramine", said, re.M)

    def test_of_a_harmless_wood_nothing_burns(self, shop: Finishlog):
        assert "rags" not in shop.did("safety", "maple").out

    def test_a_word_that_is_nothing_known_is_refused_with_the_topics(self, shop: Finishlog):
        answer = shop("safety", "zzz")
        assert answer.code == 3
        assert "self-heating" in answer.err
