"""The order of work, as common practice has it: no source, the trade's own habit.

Sanded to P220; one sealer and three clear topcoats on the separate parts with the glue faces kept
bare; like parts coated together; glue-up only at `clamp`; hardware after; a test board first. The
steps that say so come with the demo (sample_data/shop.toml), and its cabinet is planned by them.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from run import Finishlog

SAMPLE_DATA = Path(__file__).parents[3] / "sample_data"
MONDAY = "2026-11-02T18:00:00+00:00"

Task = dict[str, Any]


@pytest.fixture(scope="module")
def tasks(tmp_path_factory: pytest.TempPathFactory) -> list[Task]:
    """Every task of the plan of the demo's cabinet in the white, in a warm room."""
    shop = Finishlog(tmp_path_factory.mktemp("shop"), now=MONDAY)
    shop.did("project", "load", str(SAMPLE_DATA / "shop.toml"))
    shop.did("project", "load", str(SAMPLE_DATA / "cabinet.toml"))
    shop.did("room", "night", "finishing", "19C")
    shop.did("shop", "hours", "mon-fri 18:00-23:00", "sat 9:00-17:00")
    shop.did("air", "21C", "50%")
    plan = shop.did("plan", "cabinet", "--json").document["answer"]
    found = [task for session in plan["sessions"] for task in session["tasks"]]
    assert [task["start"] for task in found] == sorted(task["start"] for task in found)
    return found


def of(tasks: list[Task], operation: str, part: str = "", product: str = "") -> list[Task]:
    return [
        t
        for t in tasks
        if t["operation"] == operation
        and part in t["part"]
        and (not product or t["product"] == product)
    ]


def last(tasks: list[Task]) -> str:
    return max(t["end"] for t in tasks)


def first(tasks: list[Task]) -> str:
    return min(t["start"] for t in tasks)


PARTS = ["board", "case", "doors", "panel", "shelves", "drawer"]


@pytest.mark.parametrize("part", PARTS)
def test_sanded_then_sealed_then_three_clear_coats(tasks: list[Task], part: str):
    coats = of(tasks, "coat", f"cabinet/{part}", "topcoat")
    sealers = of(tasks, "coat", f"cabinet/{part}", "sealer")
    faces = {t["label"] for t in sealers}
    for face in faces:
        mine = [t["coat"] for t in coats if t["label"] == face]
        assert mine == [1, 2, 3], face
        assert last([t for t in sealers if t["label"] == face]) <= first(
            [t for t in coats if t["label"] == face]
        )
    assert last(of(tasks, "sand", f"cabinet/{part}")) <= first(sealers)


def test_a_test_board_goes_first(tasks: list[Task]):
    for product in ("sealer", "topcoat"):
        board = of(tasks, "coat", "cabinet/board", product)
        others = [t for t in of(tasks, "coat", "", product) if "board" not in t["part"]]
        assert first(board) < first(others)
    done = last(of(tasks, "coat", "cabinet/board", "topcoat"))
    assert all(
        t["start"] >= done for t in of(tasks, "coat", "", "topcoat") if "board" not in t["part"]
    ), "no part gets its topcoat before the board has all of its own"


def test_glue_faces_are_kept_bare(tasks: list[Task]):
    coated = {t["label"] for t in of(tasks, "coat")}
    assert not any("grooves" in label or "tongues" in label for label in coated)


def test_like_parts_are_coated_together(tasks: list[Task]):
    """One can is opened once a visit: no product is set up twice between two clean-ups of it."""
    open_now: list[str] = []
    for task in tasks:
        if task["chore"] == "set up":
            assert task["product"] not in open_now
            open_now.append(task["product"])
        if task["chore"] == "clean up":
            open_now.remove(task["product"])
        if task["operation"] == "coat":
            assert open_now == [task["product"]]
    together = [t for t in of(tasks, "coat", "", "topcoat") if "board" not in t["part"]]
    set_ups = [t for t in tasks if t["chore"] == "set up" and t["product"] == "topcoat"]
    assert len(set_ups) < len(together) / 2


def test_glue_up_waits_for_clamp_and_hardware_comes_after(tasks: list[Task]):
    """Waterborne bears padded cauls after 24 h at the soonest: common practice."""
    (glue_up,) = of(tasks, "glue-up", "cabinet/carcass")
    (hardware,) = of(tasks, "hardware", "cabinet/carcass")
    members = [*of(tasks, "coat", "cabinet/case"), *of(tasks, "coat", "cabinet/panel")]
    assert last(members)[:10] < glue_up["start"][:10]
    assert glue_up["end"] < hardware["start"]
