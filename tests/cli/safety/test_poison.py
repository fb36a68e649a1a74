"""Poison, through the commands: in a pot, and in time on the same wood; and where all is quiet."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

OUT = "leave now, call from outside"
SHOP = """
room new shed
air 20C 50%
product new whitener --class bleach-chlorine
product new brightener --class bleach-oxalic
product new pair --class bleach-two-part
product new ebony --class water-dye --note 'iron in vinegar'
product new clear --class waterborne-clear
product new oil --class alkyd-varnish
part new table/top --species ash --room shed
part new table/leg --species cherry --room shed
"""


def at(day: int, clock: str = "19:00") -> str:
    return f"2026-11-{day:02}T{clock}:00+00:00"


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    """An invented shop of bleaches; every name of a product says nothing of what it is."""
    return Finishlog(tmp_path, now=at(1)).played(SHOP)


def first_line(said: str) -> str:
    return said.splitlines()[0]


class TestInAPot:
    def test_the_stop_stands_before_the_echo_and_sends_out_first(self, shop: Finishlog):
        said = shop.did("mix", "brightener", "oxalic:50g", "chlorine bleach water:1000g").out
        assert first_line(said).startswith(f"stop: {OUT}: ")
        assert said.index("leave now") < said.index("wash") < said.index("mixed:")

    def test_peroxide_with_vinegar(self, shop: Finishlog):
        assert OUT in first_line(shop.did("mix", "pair", "peroxide:1", "vinegar:1").out)

    def test_a_mix_of_a_mix(self, shop: Finishlog):
        shop.did("mix", "whitener", "laundry bleach:1", "water:4", "--name", "jug")
        shop.did("mix", "clear", "jug:100ml", "water:100ml", "--name", "pail")
        said = shop.did("mix", "brightener", "oxalic:1", "pail:1", "--name", "tub").out
        assert OUT in first_line(said)

    def test_drawn_from_a_mix(self, shop: Finishlog):
        shop.did("mix", "whitener", "bleach:1", "water:4", "--name", "jug")
        said = shop.did("mix", "brightener", "--from", "jug", "vinegar:1", "water:1").out
        assert OUT in first_line(said)

    def test_what_was_noted_of_a_mix(self, shop: Finishlog):
        said = shop.did("mix", "whitener", "bleach:1", "water:4", "--note", "a dash of ammonia").out
        assert OUT in first_line(said)

    def test_topped_up_with_what_it_must_not_meet(self, shop: Finishlog):
        shop.did("mix", "whitener", "bleach:1", "water:4", "--name", "jug")
        said = shop.did("mix", "whitener", "lemon juice:1", "water:1", "--name", "jug").out
        assert OUT in first_line(said)

    def test_it_stays_in_sight(self, shop: Finishlog):
        shop.did("mix", "whitener", "bleach:1", "vinegar:1", "--name", "jug")
        assert OUT in shop.did("ready").out
        assert OUT in shop.did("can", "show", "jug").out
        assert OUT in first_line(shop.did("log", "top", "--from", "jug").out)

    @pytest.mark.parametrize(
        ("product", "parts"),
        [
            ("whitener", ("bleach:1", "water:4")),
            ("whitener", ("whitener:1", "water:10")),
            ("brightener", ("brightener:60g", "water:1000g")),
            ("pair", ("part A:1", "part B:1")),
            ("clear", ("clear:10", "water:1")),
            ("oil", ("oil:3", "mineral spirits:1")),
        ],
    )
    def test_done_right_it_is_quiet(self, shop: Finishlog, product: str, parts: tuple[str, ...]):
        said = shop.did("mix", product, *parts, "--note", "no vinegar, no ammonia").out
        assert "stop:" not in said

    def test_petrol_in_a_varnish(self, shop: Finishlog):
        said = shop.did("mix", "oil", "oil:4", "gasoline:1").out
        assert "stop: petrol" in said
        assert "outdoors" in said


class TestLeftStanding:
    def test_a_two_part_bleach_is_never_closed(self, shop: Finishlog):
        shop.did("mix", "pair", "part A:1", "part B:1", "--name", "jug")
        said = shop.did("leave").out
        assert "not yet" in said
        assert "NEVER CLOSE IT, a closed can may burst" in said

    def test_a_hardener_with_no_known_end_is_not_closed_tight(self, shop: Finishlog):
        said = shop.did("mix", "clear", "base:500ml", "hardener:50ml").out
        assert "may hold isocyanate" in said
        assert "may hold isocyanate" in shop.did("log", "top", "clear", now=at(2)).out
        said = shop.did("leave").out
        assert "do not close it tight, do not use it tomorrow" in said
        assert "it keeps" not in said
        assert "not yet" in said

    def test_what_only_was_thinned_keeps(self, shop: Finishlog):
        shop.did("mix", "oil", "oil:3", "mineral spirits:1")
        said = shop.did("leave").out
        assert "it keeps: close it" in said
        assert "not yet" not in said


class TestInTheWood:
    @pytest.mark.parametrize("product", ["whitener", "brightener", "pair"])
    def test_sanding_a_bleach_that_was_not_rinsed_is_stopped_before_and_with_the_act(
        self, shop: Finishlog, product: str
    ):
        board = f"table/{product}-board"
        shop.did("steps", "new", f"s-{product}", product, "sand", "clear")
        shop.did("part", "new", board, "--room", "shed", "--steps", f"s-{product}")
        shop.did("log", board, now=at(2))
        assert "no sanding" in shop.did("ready", now=at(6)).out
        said = shop.did("log", board, "sand", now=at(6)).out
        assert f"no sanding: {product} is in the wood" in said
        assert "stop: " in said
        shop.did("undo", now=at(6))
        shop.did("log", board, "rinse", now=at(6, "20:00"))
        assert "no sanding" not in shop.did("ready", now=at(9)).out
        assert "stop:" not in shop.did("log", board, "sand", now=at(9)).out

    def test_acid_on_chlorine_that_was_not_rinsed(self, shop: Finishlog):
        shop.did("log", "top", "whitener", now=at(2))
        assert OUT in first_line(shop.did("log", "top", "brightener", now=at(8)).out)

    def test_chlorine_on_acid_and_on_peroxide(self, shop: Finishlog):
        shop.did("log", "top", "brightener", now=at(2))
        shop.did("log", "leg", "pair", now=at(2))
        assert OUT in first_line(shop.did("log", "top", "whitener", now=at(8)).out)
        said = first_line(shop.did("log", "leg", "whitener", now=at(8)).out)
        assert "poison gas or a violent reaction" in said

    def test_rinsed_with_vinegar(self, shop: Finishlog):
        shop.did("log", "top", "whitener", now=at(2))
        said = shop.did(
            "log", "top", "rinse", "--note", "vinegar and water", now=at(2, "20:00")
        ).out
        assert OUT in first_line(said)

    def test_a_stain_whose_own_note_says_vinegar(self, shop: Finishlog):
        shop.did("log", "top", "whitener", now=at(2))
        assert OUT in first_line(shop.did("log", "top", "ebony", now=at(8)).out)

    def test_the_plan_of_it_is_stopped_before_the_act(self, shop: Finishlog):
        shop.did("steps", "new", "twice", "whitener", "brightener", "clear")
        shop.did("part", "steps", "top", "--as", "twice")
        shop.did("log", "top", now=at(2))
        said = shop.did("ready", now=at(8)).out
        assert "do not: an acid sets chlorine free" in said

    def test_ammonia_that_is_only_noted_of_the_part(self, shop: Finishlog):
        shop.did("log", "top", "whitener", now=at(2))
        said = shop.did("note", "top", "leg", "-t", "to be fumed with ammonia", now=at(3)).out
        stop = first_line(said)
        assert stop.startswith("stop: top: do not: ammonia and chlorine bleach make chloramine")
        assert f"if it is done: {OUT}" in stop
        quiet = shop.did("note", "top", "no ammonia near this, not even vinegar", now=at(3)).out
        assert "stop:" not in quiet

    def test_chlorine_over_fuming_that_is_only_noted(self, shop: Finishlog):
        shop.did("note", "top", "fumed with ammonia overnight", now=at(2))
        said = shop.did("log", "top", "whitener", now=at(3)).out
        assert "stop: top: do not: ammonia and chlorine bleach make chloramine" in said
        assert "stop:" not in shop.did("log", "leg", "whitener", now=at(3)).out

    def test_a_note_on_wood_that_holds_no_bleach_is_quiet(self, shop: Finishlog):
        shop.did("log", "top", "whitener", now=at(2))
        shop.did("log", "top", "rinse", now=at(3))
        for part in ("top", "leg"):
            assert "stop:" not in shop.did("note", part, "fumed with ammonia", now=at(9)).out

    def test_two_bleaches_are_in_the_wood(self, shop: Finishlog):
        shop.did("log", "top", "brightener", now=at(2))
        shop.did("log", "top", "whitener", now=at(3))
        said = shop.did("log", "top", "sand", now=at(9)).out
        assert "no sanding: brightener and whitener are in the wood" in said

    def test_two_coats_of_one_bleach_say_one_thing(self, shop: Finishlog):
        shop.did("log", "top", "whitener", now=at(2))
        shop.did("log", "top", "whitener", now=at(2, "21:00"))
        shop.did("log", "top", "rinse", now=at(2, "22:00"))
        said = shop.did("log", "top", "clear", now=at(3, "08:00")).out
        assert said.count("Salt and water must leave the wood") == 1

    def test_rinsed_in_between_all_is_quiet(self, shop: Finishlog):
        shop.did("log", "top", "whitener", now=at(2))
        shop.did("log", "top", "rinse", "--note", "plenty of water, no vinegar", now=at(3))
        said = shop.did("log", "top", "brightener", now=at(8)).out
        assert "leave now" not in said
        assert "stop:" not in said

    def test_vinegar_and_water_on_the_two_part_bleach_is_right(self, shop: Finishlog):
        shop.did("log", "leg", "pair", now=at(2))
        said = shop.did("log", "leg", "rinse", "--note", "vinegar and water 1:1", now=at(3)).out
        assert "leave now" not in said
        assert "stop:" not in said

    def test_a_film_shuts_it_in(self, shop: Finishlog):
        shop.did("log", "top", "brightener", now=at(2))
        shop.did("log", "top", "clear", now=at(9))
        assert "no sanding" not in shop.did("log", "top", "sand", now=at(12)).out

    def test_wood_that_was_never_bleached_is_quiet(self, shop: Finishlog):
        assert "stop:" not in shop.did("log", "top", "sand", now=at(2)).out
        assert "leave now" not in shop.did("log", "top", "ebony", now=at(3)).out
