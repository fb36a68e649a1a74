"""Whatever a screen says, `history` finds the acts behind it; and it says what each recorded."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from run import NOW, Finishlog, furnished
from the_demo import the_demo

pytestmark = pytest.mark.thorough

SCREENS = {
    "ready": ("bench", "stopped", "drying", "set_aside", "glue_ups", "milestones", "rags", "mixed"),
    "leave": ("rags", "deadlines", "heat", "tape", "closing", "ready_then", "mixes"),
    "plan": ("projects", "parts", "unplanned"),
}

# What an evening may hold beside coats, so that no kind of line is missing.
STORY = """
shop hours 'mon-fri 18:00-23:00'
project edit cabinet --due 'in 20 days'
room night finishing 5C
part new cabinet/shelf --species ash --steps clear
part new cabinet/tray --species ash
log tray topcoat
log tray mask
log leg oil
aside doors --next 'fit the hinges'
fault case run --where 'left edge'
mix sealer flakes:120g alcohol:1L
rags spread
"""


@pytest.fixture(scope="module", params=["told", "played"])
def shop(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory, for_all_workers: Path
) -> Finishlog:
    """A shop that is only asked."""
    folder = tmp_path_factory.mktemp(request.param)
    if request.param == "played":
        return the_demo(for_all_workers).shop(folder)
    return furnished(folder).played(STORY)


def answer(shop: Finishlog, *words: str) -> Any:
    return shop.did(*words, "--json").document["answer"]


# What was asked in the shops that nobody changes, by shop.
ANSWERED: dict[tuple[Path, tuple[str, ...]], Any] = {}


def asked(shop: Finishlog, *words: str) -> Any:
    """Ask a shop that nobody changes, once."""
    if (shop.folder, words) not in ANSWERED:
        ANSWERED[shop.folder, words] = answer(shop, *words)
    return ANSWERED[shop.folder, words]


def recorded(shop: Finishlog) -> set[int]:
    return {line["act"] for line in asked(shop, "history")}


def every_part(shop: Finishlog) -> list[str]:
    return [part["path"] for part in asked(shop, "part", "list")]


@pytest.mark.parametrize("screen", SCREENS)
def test_every_line_of_a_screen_rests_on_acts_that_history_finds(shop: Finishlog, screen: str):
    there = recorded(shop)
    document = asked(shop, screen)
    lines = [line for place in SCREENS[screen] for line in document[place]]
    assert lines
    for line in lines:
        assert line["acts"], line
        assert set(line["acts"]) <= there


def test_the_air_of_a_room_is_a_reading(shop: Finishlog):
    for room in asked(shop, "ready")["rooms"]:
        assert bool(room["acts"]) == (room["air"] is not None)
        assert set(room["acts"]) <= recorded(shop)


def test_a_planned_task_rests_on_its_parts(shop: Finishlog):
    tasks = [t for s in asked(shop, "plan")["sessions"] for t in s["tasks"]]
    for task in tasks:
        assert bool(task["acts"]) == bool(task["part"]), task


@pytest.mark.parametrize("question", ["when", "why", "on"])
def test_every_answer_about_a_part_names_its_acts(shop: Finishlog, question: str):
    there = recorded(shop)
    found = list(_standings(asked(shop, question, *every_part(shop))))
    assert found
    for line in found:
        assert line["acts"], line
        assert set(line["acts"]) <= there


def _standings(value: Any) -> Iterator[dict[str, Any]]:
    if isinstance(value, dict):
        if "because" in value and "operation" in value:
            yield value
        for each in value.values():
            yield from _standings(each)
    elif isinstance(value, list):
        for each in value:
            yield from _standings(each)


def test_the_acts_of_a_part_are_in_the_history_of_that_part(shop: Finishlog):
    """Not only somewhere: who asks about one part finds them there."""
    for part in every_part(shop)[:4]:
        mine = {line["act"] for line in asked(shop, "history", part)}
        for line in asked(shop, "on", part):
            assert set(line["standing"]["acts"]) <= mine


def test_one_act_is_shown_whole(shop: Finishlog):
    for act in sorted(recorded(shop)):
        page = shop.did("history", "--act", str(act)).out
        assert page.startswith(f"act {act}: ")
        assert "  typed" in page


def test_pages_name_the_acts_that_they_show(shop: Finishlog):
    coated = [g for p in every_part(shop) for g in asked(shop, "on", p) if g["coats"]]
    part, coat = coated[0]["standing"]["part"], coated[0]["coats"][0]
    assert f"(act {coat['act']})" in shop.did("on", part).out
    assert f"(act {coat['act']})" in shop.did("why", part).out
    assert "finishlog history --act" in shop.did("why", part).out


KINDS = [
    ("log case topcoat --method spray --scuffed", "coat topcoat, sprayed, scuffed before"),
    ("log case sand --grit P320", "sand, P320"),
    ("check case prints", "check thumbnail: prints"),
    ("air 18C 57%", "air of finishing: 18 °C, 57 %"),
    ("rags spread", "rags: spread"),
    ("note case -t hello", "note: hello"),
    ("note case --outcome -t flat", "outcome: flat"),
    ("fault case run --where left", "fault run (left)"),
    ("off case --strip --note soft", "taken off to bare wood, stripped, soft"),
    ("off case --to sealer --sanded", "taken off down to sealer, sanded off"),
    ("move case finishing", "moved to finishing"),
    ("aside case --next hinges", "set aside, next: hinges"),
    ("resume case", "taken up again"),
    ("away tomorrow", "away"),
    ("mix sealer flakes:120g alcohol:1L", "mixed"),
    ("log stool glue-up", "glued up"),
    ("handover case --note gone", "handed over, gone"),
    ("review case good -t even", "came out good, even"),
    ("photo case x.jpg -t front", "x.jpg, front"),
    ("undo 21", "takes act 21 back"),
]


@pytest.mark.parametrize(("line", "said"), KINDS, ids=[line for line, _ in KINDS])
def test_every_kind_of_act_says_what_it_recorded(tmp_path: Path, line: str, said: str):
    import shlex

    shop = furnished(tmp_path)
    shop.did(*shlex.split(line))
    last = answer(shop, "history")[-1]
    assert said in last["said"]
    assert said in shop.did("history").out.splitlines()[-1]
    assert said in shop.did("history", "--act", str(last["act"])).out


def test_degrees_are_the_persons_own(tmp_path: Path):
    shop = furnished(tmp_path)
    shop.did("settings", "temperature", "F")
    shop.did("air", "64F", "57%")
    assert "64 °F, 57 %" in shop.did("history").out.splitlines()[-1]


def test_what_was_amended_and_undone_says_by_what(tmp_path: Path):
    shop = furnished(tmp_path)
    shop.did("amend", "19", "--product", "oil")
    shop.did("undo", "21")
    page = shop.did("history", "--act", "19").out
    assert "coat topcoat" in page
    assert "AMENDED by act 23" in page
    assert "amends act 19" in shop.did("history", "--act", "23").out
    assert "UNDONE by act 24" in shop.did("history", "--act", "21").out


def test_typed_later_than_it_happened_shows_both(tmp_path: Path):
    shop = furnished(tmp_path)
    shop.did("log", "leg", "oil", "--at", "yesterday 19:30")
    last = shop.did("history").out.splitlines()[-1]
    assert "Mon 19:30" in last
    assert "typed 21:05" in last


def test_what_changed_about_a_thing_shows_what_it_was(tmp_path: Path):
    shop = furnished(tmp_path)
    shop.did("part", "edit", "doors", "--species", "oak")
    assert "species: oak, was ash" in shop.did("history", "doors").out.splitlines()[-1]
    act = answer(shop, "history", "doors")[-1]["act"]
    assert "species: oak, was ash" in shop.did("history", "--act", str(act)).out


def test_faces_and_pieces_are_named(tmp_path: Path):
    shop = furnished(tmp_path)
    shop.did("log", "doors@back", "sealer")
    shop.did("log", "leg:1-3", "oil", now=NOW)
    page = shop.did("history").out
    assert "cabinet/doors ×2, back: coat sealer" in page
    assert "stools/leg:1-3: coat oil" in page
