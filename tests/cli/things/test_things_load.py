"""A project is written by hand once and loaded as often as one likes."""

from __future__ import annotations

import shlex
from pathlib import Path

import pytest
from run import Finishlog
from test_refusals import refused

from finishlog import errors
from tests.once import blank

# Invented.
CABINET = """
project = "cabinet"
due = 2026-12-05
note = "for the hall"

[rooms.finishing]
night = "13C"

[products.sealer]
class = "shellac-2lb"

[products.topcoat]
class = "waterborne-clear"
recoat = "3h"
window = "24h"
label-air = "21C 50%"

[steps]
clear = ["sand", "sealer", "scuff", "topcoat*3"]

[parts.case]
species = "ash"
steps = "clear"
room = "finishing"

[parts.doors]
count = 2
species = "ash"
faces = ["back:hidden", "front=field,inlay:walnut", "edges:edge"]
steps = "clear"

[parts.sides]
count = 4

[parts.unit]
of = ["case:1", "sides:2"]
"""


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    program = Finishlog(tmp_path)
    written(program, CABINET)
    # An empty shop on file: what is refused leaves it as it is.
    program.database.write_bytes(blank())
    return program


def written(shop: Finishlog, text: str) -> str:
    path = shop.folder / "cabinet.toml"
    path.write_text(text, encoding="utf-8")
    return str(path)


def loaded(shop: Finishlog, text: str = CABINET, *options: str) -> dict:
    file = written(shop, text)
    return shop.did("project", "load", file, *options, "--json").document["answer"]


def test_everything_in_the_file_is_put_on_record(shop: Finishlog):
    added = loaded(shop)["added"]
    assert added == [
        "room finishing", "product sealer", "product topcoat", "steps clear", "project cabinet",
        "part cabinet/case", "part cabinet/doors", "part cabinet/sides", "part cabinet/unit",
    ]  # fmt: skip
    doors = shop.did("part", "show", "doors", "--json").document["answer"][0]
    assert (doors["pieces"], doors["species"], doors["steps_name"]) == (2, "ash", "clear")
    assert doors["faces"] == ["back:hidden", "front=field,inlay:walnut", "edges:edge"]
    unit = shop.did("part", "show", "unit", "--json").document["answer"][0]
    assert unit["made_of"] == ["case:1", "sides:2"]
    project = shop.did("project", "show", "cabinet", "--json").document["answer"]
    assert (project["due"], project["note"]) == ("2026-12-05T23:59:00Z", "for the hall")
    can = shop.did("product", "show", "topcoat", "--json").document["answer"]
    assert can["window"]["closes"]["low_h"] == 24
    shop.did("log", "doors@inlay", "sealer")


def test_it_is_one_act(shop: Finishlog):
    loaded(shop)
    assert len(shop.did("history", "--json").document["answer"]) == 1
    assert "project load" in shop.did("history", "doors").out


def test_the_same_file_again_adds_nothing_and_says_so(shop: Finishlog):
    loaded(shop)
    before = shop.database.read_bytes()
    again = shop.did("project", "load", written(shop, CABINET)).out
    assert "nothing to add" in again
    assert "as it was: 9" in again
    assert shop.database.read_bytes() == before


def test_a_check_says_what_it_would_do_and_leaves_no_trace(shop: Finishlog):
    before = shop.database.read_bytes()
    answer = loaded(shop, CABINET, "--check")
    assert (len(answer["added"]), answer["only_checked"]) == (9, True)
    assert shop.database.read_bytes() == before
    assert "would be added" in shop.did("project", "load", written(shop, CABINET), "--check").out


CHANGED = [
    ("count = 2", "count = 3"),
    ('night = "13C"', 'night = "9.5C"'),
    ('recoat = "3h"', 'recoat = "3-4h"'),
    ('window = "24h"', 'window = "36h"'),
    ('class = "shellac-2lb"', 'class = "waterborne-clear"'),
    ('clear = ["sand", "sealer", "scuff", "topcoat*3"]', 'clear = ["sealer", "topcoat@front"]'),
    ("due = 2026-12-05", "due = 2026-12-12T18:00:00"),
    ('note = "for the hall"', 'note = "for the landing"'),
    ('species = "ash"\nsteps = "clear"\nroom', 'species = "oak"\nsteps = "clear"\nroom'),
    ('"edges:edge"]', '"edges:edge", "top:hidden"]'),
    ('"back:hidden"', '"back"'),
    ("[parts.sides]\ncount = 4", '[parts.sides]\ncount = 4\nsteps = "clear"\nboard = true'),
]


@pytest.mark.parametrize(("old", "new"), CHANGED)
def test_a_changed_file_changes_nothing_and_says_what_to_type(shop: Finishlog, old: str, new: str):
    loaded(shop)
    assert CABINET.count(old) == 1
    changed = CABINET.replace(old, new)
    before = shop.database.read_bytes()
    answer = loaded(shop, changed)
    assert answer["differs"]
    assert shop.database.read_bytes() == before
    for each in answer["differs"]:
        program, *words = shlex.split(each["to_change"])
        assert program == "finishlog"
        shop.did(*words)
    assert loaded(shop, changed)["differs"] == []


def test_what_the_file_leaves_out_is_left_alone(shop: Finishlog):
    loaded(shop)
    shop.did("part", "edit", "sides", "--species", "beech")
    shop.did("part", "new", "cabinet/shelf")
    assert loaded(shop)["differs"] == []


def test_a_thing_that_was_renamed_is_still_the_one_in_the_file(shop: Finishlog):
    loaded(shop)
    shop.did("part", "rename", "doors", "wings")
    shop.did("project", "rename", "cabinet", "wall")
    assert loaded(shop)["added"] == []


def test_what_was_put_away_is_not_made_again(shop: Finishlog):
    loaded(shop)
    shop.did("part", "archive", "sides")
    answer = loaded(shop)
    assert answer["added"] == []
    assert [d["to_change"] for d in answer["differs"]] == ["finishlog part restore sides"]


def test_what_is_new_in_the_file_is_added_to_the_rest(shop: Finishlog):
    loaded(shop)
    answer = loaded(shop, CABINET + '\n[parts.top]\nlike = "doors"\n')
    assert answer["added"] == ["part cabinet/top"]
    top = shop.did("part", "show", "top", "--json").document["answer"][0]
    assert (top["pieces"], top["species"]) == (1, "ash")


BAD = [
    ("species =", "speces =", "[parts.case] speces", "did you mean species?"),
    ("[rooms.", "[room.", "cabinet.toml: room: ", "did you mean rooms?"),
    ("count = 2", 'count = "2"', "[parts.doors] count: '2'", "write a number"),
    ("count = 2", "count = true", "[parts.doors] count: True", "write a number"),
    ("count = 4", "count = 0", "[parts.sides] count", "--count 12"),
    ('["case:1", "sides:2"]', '"case"', "[parts.unit] of", "in brackets"),
    ('"case:1"', '"cas:1"', "[parts.unit] of: no part 'cas'", "members first"),
    ('"sides:2"', "2", "[parts.unit] of", "in brackets"),
    ('class = "shellac-2lb"', "", "[products.sealer] class: it is missing", "class list"),
    ("shellac-2lb", "shellac-9lb", "[products.sealer] class", "shellac"),
    ('recoat = "3h"', 'recoat = "3 moons"', "[products.topcoat] recoat", "type 4h"),
    ('window = "24h"', 'window = "2h"', "[products.topcoat]", "closes before"),
    ("21C 50%", "21C", "[products.topcoat]", "type both"),
    ("13C", "130C", "[rooms.finishing] night", "130"),
    ('"topcoat*3"', '"topcot*3"', "[steps] clear: no product is called 'topcot'", "product new"),
    ('steps = "clear"\nroom', 'steps = "cleer"\nroom', "[parts.case] steps", "there are: clear"),
    ('room = "finishing"', 'room = "attic"', "[parts.case] room", "there are: finishing"),
    ("back:hidden", "back:wet", "[parts.doors] faces: 'wet'", "back:hidden"),
    ("front=field,inlay:walnut", "back", "[parts.doors] faces", "named twice"),
    ("[parts.doors]", '[parts."do:ors"]', "[parts.do:ors]", "cannot name a part"),
    ("due = 2026-12-05", "due = 2026-11-05", "due: this day is past", "2027"),
    ("due = 2026-12-05", 'due = "10/11"', "due: ", "10 Nov or 11 Oct"),
    ('project = "cabinet"', "", "project: parts need a project", 'project = "cabinet"'),
    ("[parts.case]", "[parts.case", "at line", "quotes"),
]


@pytest.mark.parametrize(("old", "new", "wrong", "hint"), BAD)
def test_a_file_that_cannot_be_read_says_where_and_leaves_nothing(
    shop: Finishlog, old: str, new: str, wrong: str, hint: str
):
    before = shop.database.read_bytes()
    text = CABINET.replace(old, new, 1)
    assert text != CABINET
    refused(shop("project", "load", written(shop, text)), errors.BAD_DATA, wrong, hint)
    assert shop.database.read_bytes() == before


def test_a_file_that_is_not_there_or_is_no_text(shop: Finishlog):
    refused(shop("project", "load", "nowhere.toml"), errors.NO_SUCH_THING, "nowhere.toml")
    (shop.folder / "odd.toml").write_bytes(b"\xff\xfe")
    odd = str(shop.folder / "odd.toml")
    refused(shop("project", "load", odd), errors.BAD_DATA, "odd.toml")


def test_a_file_of_rooms_products_and_steps_needs_no_project(shop: Finishlog):
    shared = CABINET[CABINET.index("[rooms") : CABINET.index("[parts.case]")]
    answer = loaded(shop, shared)
    assert answer["project"] == ""
    assert answer["added"][-1] == "steps clear"
