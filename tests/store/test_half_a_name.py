"""A database that is named by half lies in the folder that the program runs in."""

from __future__ import annotations

from pathlib import Path

import pytest
from conftest import NOW

from finishlog.store.database import open_database
from finishlog.store.things.add import add_room
from finishlog.store.things.read_shop import read_shop


def test_half_a_name_is_another_file_in_another_folder(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    def rooms(folder: str, *, add: bool) -> list[str]:
        (tmp_path / folder).mkdir(exist_ok=True)
        monkeypatch.chdir(tmp_path / folder)
        database = open_database(Path("shop.db"), NOW)
        if add:
            with database.writing("room", "room new attic", NOW, "UTC") as ledger:
                add_room(ledger.connection, "attic")
        with database.reading() as connection:
            return [room.name for room in read_shop(connection, NOW).rooms.values()]

    assert rooms("here", add=True) == ["attic"]
    assert rooms("there", add=False) == []
    assert rooms("here", add=False) == ["attic"]
