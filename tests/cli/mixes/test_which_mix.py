"""From which of several open mixes did it come? Asked, never guessed and never left out.

All invented.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog, furnished
from terminal_session import TerminalSession


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return furnished(tmp_path).played(
        "mix topcoat water:50ml topcoat:500ml --name thick\n"
        "mix topcoat water:90ml topcoat:500ml --name 'thin one'"
    )


def test_in_a_script_it_is_refused_with_what_to_type(shop: Finishlog):
    before = shop.database.read_bytes()
    answer = shop("log", "doors", "topcoat")
    assert answer.code == 3
    assert "2 of topcoat stand open" in answer.err
    assert "--from thick or --from 'thin one'" in answer.err
    assert shop.database.read_bytes() == before
    assert "from thin one" in shop.did("log", "doors", "topcoat", "--from", "thin one").out


def test_none_of_them_is_an_answer(shop: Finishlog):
    assert "from thi" not in shop.did("log", "doors", "topcoat", "--from", "none").out


def test_at_a_terminal_it_is_asked(shop: Finishlog):
    with TerminalSession(shop, "log", "case", "topcoat", "--scuffed") as session:
        session.answer("2 of topcoat stand open. Which?", "2")
    assert session.code == 0, session.screen
    assert "from thin one" in session.screen


def test_at_a_terminal_a_beginning_that_fits_two_is_asked_too(shop: Finishlog):
    with TerminalSession(shop, "log", "case", "topcoat", "--scuffed", "--from", "th") as session:
        session.answer("'th' fits 2 cans or mixes. Which?", "1")
    assert session.code == 0, session.screen
    assert "from thick" in session.screen


def test_one_that_was_thrown_out_or_is_not_to_be_used_is_no_question(shop: Finishlog):
    shop.did("can", "thrown-out", "thin one")
    assert "from thick" in shop.did("log", "doors", "topcoat").out


def test_two_opened_cans_are_asked_about_as_well(tmp_path: Path):
    program = furnished(tmp_path)
    for name in ("tin-1", "tin-2"):
        program.did("can", "new", name, "--product", "sealer")
    program.did("can", "opened", "tin-1")
    program.did("log", "doors", "sealer")
    program.did("can", "opened", "tin-2")
    answer = program("log", "leg", "sealer")
    assert answer.code == 3
    assert "--from tin-1 or --from tin-2" in answer.err
