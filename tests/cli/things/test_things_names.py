"""A thing that is renamed is still found by its old name; what is put away comes back whole."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog
from test_refusals import refused

from finishlog import errors

MORNING = "2026-11-24T09:00+00:00"
LAST_YEAR = "2025-03-01T09:00+00:00"

# An invented shop.
SHOP = """
room new finishing --night 13C
product new sealer --class shellac-2lb
product new oil --class hardwax-oil
steps new clear sealer
project new cabinet
part new cabinet/door -n 2 --species ash --steps clear
part new cabinet/case --species ash
"""


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path).played(SHOP, now=LAST_YEAR)


def paths(shop: Finishlog, *options: str) -> list[str]:
    return [p["path"] for p in shop.did("part", "list", *options, "--json").document["answer"]]


def test_a_renamed_part_is_found_by_its_old_name_and_told_the_new(shop: Finishlog):
    shop.did("part", "rename", "door", "wing")
    assert "wing ×2 (once called cabinet/door)" in shop.did("check", "door", "dry").out
    answer = shop.did("why", "cabinet/door")
    assert "cabinet/wing" in answer.out
    assert "cabinet/door is called cabinet/wing now" in answer.err
    assert "once door" in shop.did("part", "list").out


def test_so_is_a_part_of_a_renamed_project(shop: Finishlog):
    shop.did("project", "rename", "cabinet", "wall-cabinet")
    shop.did("part", "rename", "door", "wing")
    for typed in ("cabinet/door", "cabinet/wing", "wall-cabinet/door", "wall/wi", "cabinet/*"):
        assert "wall-cabinet/wing" in shop.did("on", typed).out
    assert "once cabinet" in shop.did("project", "list").out


def test_a_part_whose_project_was_renamed_too_is_still_one_part_by_its_bare_old_name(
    shop: Finishlog,
):
    shop.did("part", "rename", "door", "wing")
    shop.did("project", "rename", "cabinet", "wall-cabinet")
    for typed in ("door", "door:1"):
        assert "wall-cabinet/wing" in shop.did("on", typed).out


@pytest.mark.parametrize(
    ("kind", "old", "new", "use"),
    [
        ("product", "oil", "hard-oil", ["log", "case", "oil"]),
        ("room", "finishing", "spray", ["air", "18C", "50%", "--room", "finishing"]),
        ("steps", "clear", "sealed", ["part", "steps", "case", "--as", "clear"]),
        ("project", "cabinet", "wall", ["project", "show", "cabinet"]),
    ],
)
def test_every_kind_of_thing_keeps_its_old_name(
    shop: Finishlog, kind: str, old: str, new: str, use: list[str]
):
    shop.did(kind, "rename", old, new)
    assert new in shop.did(*use).out
    assert f"once {old}" in shop.did(kind, "list").out


def test_a_name_that_a_living_thing_has_means_that_thing(shop: Finishlog):
    shop.did("part", "rename", "door", "wing")
    shop.did("part", "new", "cabinet/door")
    assert "cabinet/wing" not in shop.did("on", "door").out


def test_an_old_name_beside_a_mere_beginning_is_not_guessed(shop: Finishlog):
    shop.did("part", "rename", "door", "wing")
    shop.did("part", "new", "cabinet/door-stop")
    refused(shop("on", "door"), errors.NO_SUCH_THING, "cabinet/wing", "cabinet/door-stop")


def test_renaming_back_leaves_one_old_name(shop: Finishlog):
    shop.did("part", "rename", "door", "wing")
    shop.did("part", "rename", "wing", "door")
    line = shop.did("part", "show", "door", "--json").document["answer"][0]
    assert line["old_names"] == ["wing"]


TAKEN = [
    (["part", "rename", "door", "case"], "already a part", "another name"),
    (["part", "rename", "door", "door"], "called 'door' already", "another name"),
    (["part", "rename", "door", "chest/door"], "stays in its project", "door"),
    (["part", "rename", "door", "a:b"], "cannot name a part", "letters"),
    (["product", "rename", "oil", "sealer"], "already a product", "another name"),
    (["product", "rename", "oil", "scuff"], "kind of work", "another"),
    (["room", "rename", "finishing", ""], "cannot name a room", "letters"),
    (["project", "rename", "nothing", "x"], "no project is called", "cabinet"),
]


@pytest.mark.parametrize(("words", "wrong", "hint"), TAKEN)
def test_a_name_that_cannot_be_had_is_refused(
    shop: Finishlog, words: list[str], wrong: str, hint: str
):
    code = errors.NO_SUCH_THING if "nothing" in words else errors.USAGE
    refused(shop(*words), code, wrong, hint)


def test_a_name_that_still_finds_another_is_refused(shop: Finishlog):
    shop.did("part", "rename", "door", "wing")
    refused(shop("part", "rename", "case", "door"), errors.USAGE, "'wing' was called before")


def test_a_rename_stands_in_the_history_of_the_part(shop: Finishlog):
    shop.did("part", "rename", "door", "wing")
    said = shop.did("history", "wing").out
    assert "part new cabinet/door" in said
    assert "part rename door wing" in said
    assert "name: wing, was door" in said


def test_a_part_is_put_away_and_brought_back(shop: Finishlog):
    shop.did("part", "archive", "door")
    assert paths(shop) == ["cabinet/case"]
    assert paths(shop, "--archived") == ["cabinet/door"]
    refused(shop("on", "door"), errors.NO_SUCH_THING, "part restore cabinet/door")
    refused(shop("log", "door", "oil"), errors.NO_SUCH_THING, "cabinet/door was put away")
    shop.did("part", "restore", "door")
    assert sorted(paths(shop)) == ["cabinet/case", "cabinet/door"]
    assert paths(shop, "--archived") == []


def test_a_project_is_put_away_with_its_parts(shop: Finishlog):
    assert "2 parts with it" in shop.did("project", "archive", "cabinet").out
    assert paths(shop) == []
    refused(shop("part", "restore", "door"), errors.USAGE, "project restore cabinet")
    refused(shop("on", "door"), errors.NO_SUCH_THING, "project restore cabinet")
    shop.did("project", "restore", "cabinet")
    assert sorted(paths(shop)) == ["cabinet/case", "cabinet/door"]


def test_a_part_of_a_project_that_was_put_away_comes_back_with_it_alone(shop: Finishlog):
    shop.did("part", "archive", "door")
    shop.did("project", "archive", "cabinet")
    refused(shop("part", "restore", "door"), errors.USAGE, "finishlog project restore cabinet")


def test_nothing_is_put_away_while_its_rags_are_open(shop: Finishlog):
    shop.did("log", "case", "oil")
    refused(shop("part", "archive", "case"), errors.USAGE, "rags of oil", "finishlog rags")
    refused(shop("project", "archive", "cabinet"), errors.USAGE, "rags of oil")


def test_what_open_work_needs_is_not_put_away(shop: Finishlog):
    refused(shop("product", "archive", "sealer"), errors.USAGE, "cabinet/door", "steps clear")
    refused(shop("room", "archive", "finishing"), errors.USAGE, "cabinet/case", "cabinet/door")
    shop.did("log", "case", "oil")
    refused(shop("product", "archive", "oil"), errors.USAGE, "cabinet/case")


def test_a_product_that_was_put_away_is_not_offered_but_its_coats_keep_its_name(shop: Finishlog):
    shop.did("log", "case", "oil", now=MORNING)
    shop.did("rags", "gone")
    shop.did("part", "archive", "case")
    shop.did("product", "archive", "oil")
    refused(shop("log", "door", "oil"), errors.NO_SUCH_THING, "product restore oil")
    assert "oil" not in shop.did("product", "list").out
    assert "oil" in shop.did("past", "ash").out
    said = shop.did("part", "restore", "case").out
    assert "also back: product oil" in said
    assert "oil" in shop.did("product", "list").out


def test_steps_that_were_put_away_stay_on_the_parts_that_have_them(shop: Finishlog):
    shop.did("steps", "archive", "clear")
    refused(shop("part", "steps", "case", "--as", "clear"), errors.NO_SUCH_THING, "no steps")
    assert "sealer" in shop.did("part", "show", "door").out
    shop.did("steps", "restore", "clear")
    shop.did("part", "steps", "case", "--as", "clear")


def test_a_name_may_be_used_again_and_last_years_thing_gets_its_year(shop: Finishlog):
    shop.did("project", "archive", "cabinet", now="2025-12-01T09:00+00:00")
    said = shop.did("project", "new", "cabinet").out
    assert "is called cabinet-2025 now" in said
    assert "finishlog project restore cabinet-2025" in said
    shop.did("part", "new", "cabinet/door")
    assert paths(shop) == ["cabinet/door"]
    shop.did("project", "restore", "cabinet-2025")
    assert "cabinet-2025/door" in paths(shop)


def test_so_does_a_part_and_a_product(shop: Finishlog):
    shop.did("part", "archive", "case", now="2025-12-01T09:00+00:00")
    assert "called case-2025 now" in shop.did("part", "new", "cabinet/case").out
    shop.did("product", "archive", "oil", now="2025-12-01T09:00+00:00")
    said = shop.did("product", "new", "oil", "--class", "hardwax-oil").out
    assert "called oil-2025 now" in said


def test_twice_in_a_year_it_gets_a_number(shop: Finishlog):
    for _ in range(2):
        shop.did("part", "archive", "cabinet/case", now="2025-12-01T09:00+00:00")
        shop.did("part", "new", "cabinet/case", now="2025-12-02T09:00+00:00")
    assert paths(shop, "--archived") == ["cabinet/case-2025", "cabinet/case-2025-2"]


def test_what_was_never_put_away_names_what_was(shop: Finishlog):
    refused(shop("product", "restore", "oil"), errors.NO_SUCH_THING, "put away: none")
    shop.did("product", "archive", "oil")
    refused(shop("product", "restore", "sealer"), errors.NO_SUCH_THING, "put away: oil")
