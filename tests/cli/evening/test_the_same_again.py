"""On many pieces what another one got: copied is how it went on, never when. All invented."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from run import Finishlog

from finishlog import errors

NOON = "2026-11-24T12:00:00+00:00"
NIGHT = "2026-11-24T20:00:00+00:00"
MORNING = "2026-11-24T08:00:00+00:00"


def did(shop: Finishlog, now: str, line: str) -> str:
    return shop.did(*line.split(), now=now).out


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    shop = Finishlog(tmp_path, environment={"FINISHLOG_ZONE": "Europe/London"})
    for line in (
        "product new clear --class lacquer-sprayed",
        "part new desk/legs --count 6 --face all",
        "part new desk/top --face front --face back:hidden",
        "part new desk/shelves --count 3 --face front --face back:hidden",
        "air 70F 50%",
    ):
        did(shop, MORNING, line)
    return shop


def test_how_it_went_on_is_copied_with_its_thinned_mix_and_its_tool(shop: Finishlog):
    shop.did("mix", "clear", "lacquer:10", "thinner:5", now="2026-11-24T11:00:00+00:00")
    did(shop, NOON, "log legs:1 clear --from mix-1 --film 4mil --method spray --with gun1")
    said = did(shop, NIGHT, "log legs 2-6 same as 1 but 5 --at 12:20")
    assert "12:20  legs:2-4,6: coat 1, clear from mix-1" in said
    assert "on 4 of 4 pieces" in said
    assert "legs:5: nothing logged" in said
    assert "when was not said" not in said
    with closing(sqlite3.connect(shop.database)) as database:
        brought = "method, wet_film_um, tool, container_id, product_id"
        model, others = database.execute(f"SELECT {brought} FROM coat ORDER BY entry_id").fetchall()
    assert model == others
    assert model[:3] == ("spray", pytest.approx(101.6), "gun1")


def test_work_by_hand_goes_on_likewise_and_only_on_its_faces(shop: Finishlog):
    did(shop, NOON, "log shelves:1 clear --face back")
    said = did(shop, NIGHT, "log shelves 2 3 like 1")
    assert "shelves:2-3, back: coat 1" in said
    did(shop, NIGHT, "log legs:1 sand --grit P180 --at 12:00")
    said = did(shop, NIGHT, "log legs same as 1")
    assert "12:00 to 20:00  legs:2-6: sand" in said
    assert "P180" in shop.did("history", "legs:2", now=NIGHT).out


def test_levelled_keeps_the_coat_and_bare_wood_does_not(shop: Finishlog):
    did(shop, MORNING, "log legs clear")
    did(shop, NOON, "log legs:1 clear")
    said = did(shop, NIGHT, "log legs 2 3 4 same as 1 but 4 levelled")
    assert "legs:4: no coat, levelled, coat 1 stays" in said
    said = did(shop, NIGHT, "log legs 5 6 same as 1 but 6 bare wood")
    assert "legs:6: no coat, bare wood ·" in said
    assert "coat" not in shop.did("on", "legs:6", now=NIGHT).out.split("attempt 1")[0]


@pytest.mark.parametrize(
    ("line", "fault"),
    [
        ("log legs 2-6 same as 1", "nothing is on record on legs:1"),
        ("log legs same as top", "nothing is on record on top"),
        ("log top same as legs", "more than one piece"),
        ("log legs:1 same as 1", "nothing is left to log"),
        ("log legs same as 1 --from none", "brings how it went on with it"),
        ("log legz same as 1", "no part is called 'legz'"),
    ],
)
def test_what_cannot_be_the_same_is_refused_with_nothing_recorded(
    shop: Finishlog, line: str, fault: str
):
    before = shop.did("history", now=NIGHT).out
    refused = shop(*line.split(), now=NIGHT)
    assert refused.code in {errors.USAGE, errors.NO_SUCH_THING}
    assert fault in refused.err
    assert shop.did("history", now=NIGHT).out == before
