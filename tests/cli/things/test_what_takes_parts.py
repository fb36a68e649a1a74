"""Every command that takes parts says how finely it acts: on faces, on pieces, on whole parts.

A new command without a decision fails here; a selection narrower than what a command can change
is refused with what to type instead. All invented.
"""

from __future__ import annotations

import shlex
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from run import Finishlog, furnished
from typer.main import get_command

from finishlog.cli.app import command_line

FACES = "pieces and faces"
PIECES = "pieces"
PARTS = "whole parts"
NAMES = "the name of a new part in its project"
ASKS = "a question: what is shown changes nothing"
AMOUNTS = "amounts of a mix, no parts"

# By command and parameter: how finely it acts, and a line with SELECTION in it.
DECIDED: dict[tuple[str, str], tuple[str, str]] = {
    ("ready", "parts"): (ASKS, ""),
    ("log", "words"): (FACES, "log SELECTION sand"),
    ("check", "words"): (FACES, "check SELECTION dry"),
    ("look", "words"): (FACES, "look SELECTION clean"),
    ("amend", "on"): (FACES, "amend COAT --on SELECTION"),
    ("amend", "amount"): (AMOUNTS, ""),
    ("note", "words"): (FACES, "note SELECTION -t words"),
    ("safety", "about"): (ASKS, ""),
    ("mix", "parts"): (AMOUNTS, ""),
    ("move", "words"): (PIECES, "move SELECTION loft"),
    ("aside", "parts"): (FACES, "aside SELECTION"),
    ("resume", "parts"): (FACES, "resume SELECTION"),
    ("fault", "words"): (FACES, "fault SELECTION run"),
    ("off", "parts"): (FACES, "off SELECTION --to bare"),
    ("moisture", "words"): (FACES, "moisture SELECTION 9%"),
    ("weigh", "words"): (PIECES, "weigh SELECTION 640g"),
    ("surface", "words"): (FACES, "surface SELECTION 18C"),
    ("when", "parts"): (ASKS, ""),
    ("why", "parts"): (ASKS, ""),
    ("on", "parts"): (ASKS, ""),
    ("history", "parts"): (ASKS, ""),
    ("plan", "words"): (ASKS, ""),
    ("handover", "parts"): (PIECES, "handover SELECTION"),
    ("review", "words"): (FACES, "review SELECTION good"),
    ("photo", "words"): (FACES, "photo SELECTION p.jpg"),
    ("part new", "path"): (NAMES, ""),
    ("part new", "like"): (PARTS, "part new desk/other --like SELECTION"),
    ("part steps", "parts"): (PARTS, "part steps SELECTION --as two"),
    ("part archive", "parts"): (PARTS, "part archive SELECTION"),
    ("part restore", "parts"): (PARTS, "part restore SELECTION"),
    ("part rename", "name"): (PARTS, "part rename SELECTION shanks"),
    ("part edit", "name"): (PARTS, "part edit SELECTION --species oak"),
    ("part show", "parts"): (ASKS, ""),
    ("steps new", "like"): (FACES, "steps new third --like SELECTION"),
    ("steps new", "over"): (FACES, "steps new third --over SELECTION"),
    ("steps check", "like"): (ASKS, ""),
}
SHOP = """
room new shop
room new loft
product new seal --class shellac-2lb
steps new one seal
steps new two seal*2
part new desk/legs -n 4 --species ash --face front --face back --steps one
log desk/legs seal
"""


def commands(found: Any = None, path: tuple[str, ...] = ()) -> Iterator[tuple[str, Any]]:
    found = found or get_command(command_line())
    for name, each in getattr(found, "commands", {}).items():
        yield from commands(each, (*path, name))
    if not hasattr(found, "commands"):
        yield " ".join(path), found


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    program = Finishlog(tmp_path)
    for line in SHOP.strip().splitlines():
        program.did(*shlex.split(line))
    return program


def run(shop: Finishlog, line: str, selection: str) -> Any:
    coat = next(h for h in shop.did("history", "--json").document["answer"] if h["kind"] == "coat")
    words = line.replace("SELECTION", selection).replace("COAT", str(coat["act"]))
    return shop(*shlex.split(words))


def narrow() -> list[tuple[str, str]]:
    """Lines with a selection that is narrower than what the command can change."""
    return [
        (line, selection)
        for how, line in DECIDED.values()
        for selection in {PIECES: ["legs@front"], PARTS: ["legs:3", "legs@front"]}.get(how, [])
    ]


def test_every_command_that_takes_parts_has_decided_how_finely_it_acts():
    takes = {
        (name, each.name)
        for name, command in commands()
        for each in command.params
        if any(word in (each.metavar or "") for word in ("PART", "PROJECT"))
    }
    assert takes == set(DECIDED)


@pytest.mark.parametrize(("line", "selection"), narrow())
def test_what_is_narrower_than_it_can_change_is_refused_with_what_to_type(
    shop: Finishlog, line: str, selection: str
):
    if "restore" in line:
        shop.did("part", "archive", "legs")
    before = shop.database.read_bytes()
    answer = run(shop, line, selection)
    assert answer.code == 2, answer
    assert "type desk/legs" in answer.err or "name the part or its pieces" in answer.err
    assert shop.database.read_bytes() == before
    whole = selection.partition("@")[0].partition(":")[0]
    assert run(shop, line, whole).code == 0


@pytest.mark.parametrize(
    "line", [line for how, line in DECIDED.values() if how == FACES], ids=lambda x: x.split()[0]
)
def test_what_acts_on_faces_leaves_the_others_alone(shop: Finishlog, line: str):
    def told(where: str) -> list[str]:
        rows = shop.did("history", where, "--json").document["answer"]
        return [row["words"] for row in rows]

    before = told("legs:1@back")
    answer = run(shop, line, "legs:3@front")
    assert answer.code == 0, answer
    if not line.startswith(("amend", "steps")):
        assert told("legs:1@back") == before
        assert len(told("legs:3@front")) > len(before)


def test_all_the_pieces_by_number_are_the_whole_part(shop: Finishlog):
    shop.did("part", "steps", "legs:1-4", "--as", "two")


def test_zones_are_made_of_what_was_coated_all_round_and_not_beside_it(tmp_path: Path):
    shop = furnished(tmp_path)
    answer = shop("part", "edit", "case", "--face", "front=a,b")
    assert answer.code == 2
    assert "finishlog part edit cabinet/case --face 'all round=a,b'" in answer.err
    shop.did("part", "edit", "cabinet/case", "--face", "all round=a,b")


@pytest.mark.parametrize("kind", ["", ":hidden"])
def test_a_face_is_not_added_beside_one_that_was_coated_all_round(tmp_path: Path, kind: str):
    shop = furnished(tmp_path)
    before = shop.database.read_bytes()
    answer = shop("part", "edit", "case", "--face", f"front{kind}")
    assert answer.code == 2
    assert "finishlog part new cabinet/NAME --like cabinet/case --face front" in answer.err
    assert shop.database.read_bytes() == before
    shop.did("part", "new", "cabinet/front", "--like", "cabinet/case", "--face", f"front{kind}")


def test_a_glue_face_is_added_to_what_was_coated_all_round(tmp_path: Path):
    """The mortise was always there, and is to be kept bare."""
    furnished(tmp_path).did("part", "edit", "case", "--face", "mortise:joint")


@pytest.mark.parametrize("words", [["--on", "case@front"], ["--face", "front"]])
def test_what_is_of_no_face_is_not_amended_to_one(tmp_path: Path, words: list[str]):
    shop = furnished(tmp_path)
    shop.did("room", "new", "loft")
    shop.did("move", "doors", "loft")
    act = shop.did("history", "doors", "--json").document["answer"]
    moved = next(row["act"] for row in act if row["kind"] == "moved")
    assert shop("amend", str(moved), *words).code in {2, 3}
