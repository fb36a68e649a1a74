"""A batch is one act on everything it names: told whole, once, and by name. All invented."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog

SHOP = """
room new shop --night 16C
product new sealer --class shellac-2lb
product new clear --class waterborne-clear --recoat 3h
steps new s sealer scuff clear*2
part new desk/legs -n 4 --species ash --steps s
part new desk/rails -n 2 --species ash --steps s
part new bench/legs -n 2 --species oak --steps s
air 20C 50%
"""
MORNING = "2026-11-21T08:00:00+00:00"
SEALED = "2026-11-21T09:00:00+00:00"
SCUFFED = "2026-11-21T13:00:00+00:00"
COATED = "2026-11-21T13:30:00+00:00"


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    program = Finishlog(tmp_path).played(SHOP, now=MORNING)
    return program.played("log desk/legs rails sealer", now=SEALED)


def layers(shop: Finishlog, part: str) -> list[tuple[str, ...]]:
    lines = shop.did("on", part, "--json").document["answer"]
    return [tuple(coat["product"] for coat in line["coats"]) for line in lines]


def test_a_part_on_which_another_step_was_due_is_recorded_with_the_rest(shop: Finishlog):
    """The scuff was logged on the legs only: the rails get their coat all the same."""
    shop.did("log", "desk/legs", "scuff", now=SCUFFED)
    shop.did("log", "desk/legs", "rails", "clear", now=COATED)
    assert layers(shop, "desk/legs") == [("sealer", "clear")]
    assert layers(shop, "rails") == [("sealer", "clear")]


def test_faces_are_narrowed_within_a_piece_to_those_that_it_is_due_on(shop: Finishlog):
    shop.did("part", "new", "desk/doors", "-n", "2", "--face", "front", "--face", "back")
    shop.did("part", "steps", "doors", "--as", "s")
    shop.did("log", "doors@back", "sealer", now=SEALED)
    page = shop.did("log", "doors", "scuff", now=SCUFFED).out
    assert "doors ×2, back: scuff" in page


def test_without_a_word_it_is_recorded_on_all_or_on_none(shop: Finishlog):
    """The rails have all their steps behind: what was done to them is not known."""
    for word in ("scuff", "clear", "clear"):
        shop.did("log", "rails", word, now=SCUFFED)
    before = shop.database.read_bytes()
    answer = shop("log", "desk/legs", "rails", now=COATED)
    assert answer.code == 2
    assert "rails ×2: all its steps are behind" in answer.err
    assert "or only where scuff is due: finishlog log desk/legs" in answer.err
    assert shop.database.read_bytes() == before
    shop.did("log", "desk/legs", now=COATED)


def test_mending_names_the_parts_on_which_no_fault_stands(shop: Finishlog):
    shop.did("fault", "desk/legs:1", "run", now=SCUFFED)
    answer = shop("fault", "desk/legs:1-2", "mended", now=COATED)
    assert answer.code == 3
    assert "legs:2: no fault stands there" in answer.err
    shop.did("fault", "desk/legs:1", "mended", now=COATED)


def test_what_is_not_glued_up_yet_is_carried_as_its_members(shop: Finishlog):
    shop.did("room", "new", "loft")
    shop.did("part", "new", "desk/frame", "--of", "legs:4", "--of", "rails:2")
    shop.did("move", "frame", "loft", now=SCUFFED)
    again = shop.did("move", "rails", "loft", "--json", now=COATED)
    assert again.document["answer"]["was_there"] is True


def test_the_answer_says_on_how_many_and_puts_what_stands_alike_in_one_line(shop: Finishlog):
    page = shop.did("log", "desk/legs", "rails", "scuff", now=SCUFFED).out.splitlines()
    assert [line for line in page if "scuff ·" in line] == [page[0]]
    assert page[0].startswith("13:00  desk/legs ×4 and rails ×2: scuff · next: coat, clear 1 of 2")
    assert page[-2] == "on 6 of 6 pieces"


def test_what_differs_has_a_line_and_a_caution_of_its_own_by_name(shop: Finishlog):
    shop.did("log", "desk/legs", "scuff", now=SCUFFED)
    page = shop.did("log", "desk/legs", "rails", "clear", now=COATED).out
    (caution,) = [line for line in page.splitlines() if "scuff" in line and "caution" in line]
    assert caution.startswith("caution: rails ×2: ")


def test_parts_of_one_name_in_two_projects_are_told_apart(shop: Finishlog):
    page = shop.did("log", "desk/legs", "bench/legs", "clear", now=COATED).out
    assert "desk/legs ×4: " in page
    assert "bench/legs ×2: " in page
    assert "desk/desk" not in shop.did("ready", now=COATED).out
    assert "bench/legs ×2" in shop.did("ready", now=COATED).out


def test_a_batch_of_seven_pieces_is_short_and_says_nothing_twice(shop: Finishlog):
    """Seven pieces of three parts, coated too early and unscuffed."""
    shop.did("part", "new", "desk/top", "--species", "ash", "--steps", "s")
    shop.did("log", "top", "sealer", now=SEALED)
    parts = ("desk/legs", "rails", "top")
    page = shop.did("log", *parts, "clear", now="2026-11-21T09:20:00+00:00").out
    lines = page.splitlines()
    assert "on 7 of 7 pieces" in page
    assert len(set(lines)) == len(lines)
    said = [line.split(": ", 2)[-1].split("; ")[0] for line in lines]
    assert len(set(said)) == len(said)
    assert len(page.split()) < 100, page


def test_dust_beside_a_wet_film_names_the_film(shop: Finishlog):
    """Scuffing beside a fresh coat: the stop says whose film the dust falls into."""
    shop.did("log", "rails", "clear", now=SCUFFED)
    said = shop.did("log", "desk/legs", "scuff", now="2026-11-21T13:02:00+00:00").out
    (stop,) = [line for line in said.splitlines() if line.startswith("stop: ")]
    assert "in the wet film of rails" in stop


def test_the_step_that_is_due_goes_on_the_parts_of_an_assembly_that_is_not_made(shop: Finishlog):
    """`desk/*` names the frame too: it is not glued up by that, it goes as its members."""
    shop.did("part", "new", "desk/frame", "--of", "legs:4", "--of", "rails:2")
    said = shop.did("log", "desk/*", now=SCUFFED).out
    assert "legs ×4 and rails ×2: scuff" in said
    shop.did("log", "desk/*", "clear", now=COATED)
    assert layers(shop, "desk/legs") == layers(shop, "rails") == [("sealer", "clear")]


def test_the_step_that_is_due_on_an_assembly_alone_is_gluing_it_up(shop: Finishlog):
    shop.did("part", "new", "desk/frame", "--of", "legs:4", "--of", "rails:2")
    assert "glue-up" in shop.did("log", "frame", now="2026-12-21T13:30:00+00:00").out
