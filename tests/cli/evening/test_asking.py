"""At a terminal the few missing things are asked; a script is refused with the exact command."""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog, furnished
from terminal_session import TerminalSession

from finishlog import errors


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return furnished(tmp_path)


def test_the_first_coat_in_an_empty_shop_asks_for_the_part_the_wood_and_the_class(tmp_path: Path):
    program = Finishlog(tmp_path)
    with TerminalSession(program, "log", "stool/seat", "varnish") as session:
        session.answer("There is no part 'stool/seat'", "y")
        session.answer("Which wood?", "ash")
        session.answer("There is no product 'varnish'", "")
    # Nothing was chosen: the coat is not on record, the part is.
    assert session.code == errors.NO_SUCH_THING
    with TerminalSession(program, "log", "stool/seat", "varnish") as session:
        session.answer("number:", "oil-polyurethane")
    assert session.code == 0, session.screen
    assert "seat: coat 1, varnish" in session.screen
    assert "varnish" in program.did("on", "stool/seat").out
    assert program.did("part", "show", "seat", "--json").document["answer"][0]["species"] == "ash"


def test_a_product_whose_name_says_nothing_is_asked_by_family(shop: Finishlog):
    with TerminalSession(shop, "log", "case", "mystery") as session:
        session.answer("There is no product 'mystery', nor such work", "y")
        session.answer("What kind of finish is it?", "shellac")
        session.answer("Which kind of shellac?", "shellac-3lb")
        session.answer("topcoat was due. Record this all the same?", "y")
    assert session.code == 0, session.screen
    product = shop.did("product", "show", "mystery", "--json").document["answer"]
    assert product["class_key"] == "shellac-3lb"


def test_a_misspelt_product_is_offered_the_right_one_first(shop: Finishlog):
    with TerminalSession(shop, "log", "seat", "topcaot") as session:
        session.answer("Which did you mean?", "1")
    assert session.code == 0, session.screen
    assert "topcoat" in session.screen
    assert "topcaot" not in shop.did("product", "list").out


def test_misspelt_work_is_offered_before_a_new_product(shop: Finishlog):
    with TerminalSession(shop, "log", "seat", "skuff") as session:
        session.answer("number:", "")
    assert "  1  scuff" in session.screen
    assert "none of these: a new product" in session.screen
    assert "skuff" not in shop.did("product", "list").out


def test_a_new_product_beside_a_near_name_is_made_when_asked_for(shop: Finishlog):
    with TerminalSession(shop, "log", "seat", "topcoats") as session:
        session.answer("Which did you mean?", "none of these: a new product")
        session.answer("What kind of finish is it?", "shellac")
        session.answer("Which kind of shellac?", "shellac-3lb")
    assert session.code == 0, session.screen
    assert "topcoats" in shop.did("product", "list").out


def test_enter_at_the_question_makes_no_product(shop: Finishlog):
    before = shop.did("product", "list").out
    with TerminalSession(shop, "log", "seat", "zzz") as session:
        session.answer("Put a new product on record?", "")
    assert session.code == errors.NO_SUCH_THING
    assert shop.did("product", "list").out == before


def test_a_word_for_two_kinds_of_work_is_asked(shop: Finishlog):
    with TerminalSession(shop, "log", "seat", "polish") as session:
        session.answer("'polish' may be buff or rub-out. Which?", "1")
    assert session.code == 0, session.screen
    assert "seat ×4: buff" in session.screen
    refused = shop("log", "seat", "polish")
    assert (refused.code, refused.err.count("\n")) == (3, 1)
    assert "type one of: buff, rub-out" in refused.err


LATER = "2026-11-26T09:00:00+00:00"
BOTH = "'oil' is a part and a product"


def test_a_word_that_is_a_part_and_a_product_is_asked_also_beside_a_whole_path(shop: Finishlog):
    shop.did("part", "new", "stools/oil")
    refused = shop("log", "stools/seat", "oil", now=LATER)
    assert (refused.code, refused.err.count("\n")) == (errors.NO_SUCH_THING, 1)
    assert BOTH in refused.err
    assert "type one of: stools/oil, product:oil" in refused.err
    with TerminalSession(shop, "log", "stools/leg", "oil") as session:
        session.answer(f"{BOTH}. Which?", "product:oil")
    assert (session.code, "leg ×12: coat 1, oil" in session.screen) == (0, True), session.screen


def test_both_readings_of_such_a_word_can_be_typed(shop: Finishlog):
    shop.did("part", "new", "stools/oil")
    coat = shop.did("log", "stools/seat", "product:oil", now=LATER).out
    assert "seat ×4: coat 2, oil" in coat
    both = shop.did("log", "stools/leg", "stools/oil", "product:oil", now=LATER).out
    assert "on 13 of 13 pieces" in both
    # Named as a part it is no product: nothing is due on either, and nothing is recorded.
    assert shop("log", "stools/leg", "stools/oil", now=LATER).code != 0


def test_a_finding_that_may_be_two_is_asked(shop: Finishlog):
    with TerminalSession(shop, "check", "case", "soft") as session:
        session.answer("'soft' may be tacky or prints. Which?", "2")
    assert session.code == 0, session.screen
    assert "thumbnail, prints" in session.screen


def test_a_part_without_a_project_asks_which_piece_of_furniture(shop: Finishlog):
    with TerminalSession(shop, "log", "rail", "oil") as session:
        session.answer("There is no part 'rail'", "y")
        session.answer("Which piece of furniture", "stools")
        session.answer("Which wood?", "")
    assert session.code == 0, session.screen
    assert "oil" in shop.did("on", "stools/rail").out


def test_no_is_no(shop: Finishlog):
    before = shop.database.read_bytes()
    with TerminalSession(shop, "log", "stools/rail", "oil") as session:
        session.answer("There is no part", "n")
    assert session.code == errors.NO_SUCH_THING
    assert shop.database.read_bytes() == before


def test_in_a_script_the_same_is_refused_with_the_exact_command(tmp_path: Path):
    program = Finishlog(tmp_path)
    answer = program.apart("log", "stool/seat", "varnish")
    assert answer.code == errors.NO_SUCH_THING
    assert "finishlog part new stool/seat" in answer.err
    program.did("part", "new", "stool/seat")
    answer = program.apart("log", "stool/seat", "varnish")
    assert answer.code == errors.NO_SUCH_THING
    assert "finishlog product new varnish --class CLASS" in answer.err
    program.did("product", "new", "varnish", "--class", "oil-polyurethane")
    assert program.apart("log", "stool/seat", "varnish").code == 0


def test_a_name_that_fits_several_is_asked_by_number(shop: Finishlog):
    with TerminalSession(shop, "log", "door", "sand") as session:
        session.answer("number:", "2")
    assert session.code == 0, session.screen
    assert "1  cabinet/doors" in session.screen
    assert "door-stop: sand" in session.screen
    with TerminalSession(shop, "log", "door", "sand") as session:
        session.answer("number:", "cabinet/doors")
    assert "doors ×2: sand" in session.screen


@pytest.mark.parametrize("typed", ["", "0", "3", "-1", "back"])
def test_a_number_that_is_none_of_them_records_nothing(shop: Finishlog, typed: str):
    before = shop.database.read_bytes()
    with TerminalSession(shop, "log", "door", "sand") as session:
        session.answer("number:", typed)
    assert session.code == errors.NO_SUCH_THING
    assert shop.database.read_bytes() == before


def test_undo_of_a_coat_of_some_time_ago_asks_whether_the_finish_went_on(shop: Finishlog):
    before = shop.database.read_bytes()
    with TerminalSession(shop, "undo", "19") as session:
        session.answer("Did the finish go on?", "y")
    assert "stays on record" in session.screen
    assert shop.database.read_bytes() == before
    with TerminalSession(shop, "undo", "19") as session:
        session.answer("Did the finish go on?", "n")
    assert session.code == 0
    assert "withdrawn: act 19" in session.screen


def test_undo_right_after_a_coat_asks_nothing(shop: Finishlog):
    shop.did("log", "leg", "oil")
    with TerminalSession(shop, "undo") as session:
        pass
    assert session.code == 0
    assert "log leg oil" in session.screen


def test_the_questions_stay_out_of_an_answer_that_goes_elsewhere(shop: Finishlog):
    answer = shop.folder / "answer.json"
    with (
        answer.open("w") as out,
        TerminalSession(shop, "log", "door", "sand", "--json", out=out.fileno()) as session,
    ):
        session.answer("number:", "1")
    assert session.code == 0, session.screen
    assert answer.read_text().startswith("{\n")
    assert "number:" in session.screen


def test_ctrl_c_at_a_question_records_nothing(shop: Finishlog):
    before = shop.database.read_bytes()
    with TerminalSession(shop, "log", "door", "sand") as session:
        session.interrupt("number:")
    assert session.code == errors.INTERRUPTED
    assert "Traceback" not in session.screen
    assert shop.database.read_bytes() == before


def test_the_end_of_input_at_a_question_records_nothing(shop: Finishlog):
    before = shop.database.read_bytes()
    with TerminalSession(shop, "log", "door", "sand") as session:
        session.answer("number:", "\x04")
    assert session.code == errors.NO_SUCH_THING
    assert shop.database.read_bytes() == before
