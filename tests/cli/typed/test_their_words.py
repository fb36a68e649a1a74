"""What people say is understood: the trade's other words, one table by kind of word, all of it."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path

import pytest
from run import Finishlog, furnished
from typer.main import get_command

from finishlog.acts.film.check import found_word
from finishlog.acts.film.check import test_word as read_test
from finishlog.acts.film.rags import deed_word
from finishlog.acts.meant.what import work_or_product
from finishlog.acts.pieces.review import outcome_word
from finishlog.acts.things.faces import read_faces
from finishlog.cli.app import MODULES, SAID_FOR, command_line
from finishlog.core.film.checks import FOUND_BY
from finishlog.core.log.words import Found, Operation, Outcome, RagsDeed, Test
from finishlog.core.shop.hours import ShopHours
from finishlog.core.shop.things import FaceKind, Shop
from finishlog.core.shop.trade_words import DUE_SAID, SAID_AS, WORK, meant, plain_word
from finishlog.errors import Ambiguous
from finishlog.facts.load import load_facts
from tests.rows import every_row

EVERY_WORD = [(kind, word) for kind, words in SAID_AS.items() for word in words]
CLEAR = [(kind, word) for kind, word in EVERY_WORD if len(SAID_AS[kind][word]) == 1]
TWO = [(kind, word) for kind, word in EVERY_WORD if len(SAID_AS[kind][word]) > 1]


def of(kind: type[StrEnum]) -> list[str]:
    return [word for of_kind, word in CLEAR if of_kind is kind]


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return furnished(tmp_path)


def test_no_word_of_theirs_hides_one_of_ours():
    for kind, word in EVERY_WORD:
        assert word == plain_word(word)
        assert word not in {each.value for each in kind}
        assert set(meant(kind, word.replace("-", " ").upper())) == set(SAID_AS[kind][word]), word


def test_every_kind_has_words_and_every_one_of_ours_means_itself():
    for kind, words in SAID_AS.items():
        assert words
        for each in kind:
            if each is not Operation.COAT:
                assert meant(kind, each.value) == (each,)


@every_row("word", of(Operation))
def test_work_is_understood_by_what_people_call_it(word: str):
    nothing = Shop((), (), {}, {}, ShopHours((), "UTC"))
    found = work_or_product(nothing, word.replace("-", " "), load_facts())
    assert found == (SAID_AS[Operation][word][0], None)


def test_it_is_logged_and_stands_in_steps_as_ours(shop: Finishlog):
    assert "door-stop: mask" in shop.did("log", "door-stop", "taped").out
    # A figure by itself is the grit of the work before it.
    words = [word for word in of(Operation) if not word.isdecimal()]
    shop.did("steps", "new", "mine", *words)
    shown = shop.did("steps", "show", "mine", "--json").document["answer"]["steps"]
    assert shown == [SAID_AS[Operation][word][0].value for word in words]


@every_row("word", of(Found))
def test_a_check_is_understood(word: str):
    assert found_word(word) is SAID_AS[Found][word][0]


@every_row("word", of(RagsDeed))
def test_what_was_done_with_rags_is_understood(word: str):
    assert deed_word(word) is SAID_AS[RagsDeed][word][0]


def test_no_word_that_leaves_rags_dangerous_counts_as_dealt_with(shop: Finishlog):
    """Common practice: binned, heaped or bagged they burn as well."""
    for word in ("bin", "binned", "trash", "heap", "pile", "bag", "dry", "washed", "out"):
        refused = shop("rags", word)
        assert refused.code == 2, word
        assert "spread, water, lifted, can, stiff, gone" in refused.err


@every_row("word", of(Outcome))
def test_how_it_came_out_is_understood(word: str):
    assert outcome_word(word) is SAID_AS[Outcome][word][0]


@every_row("word", of(FaceKind))
def test_what_a_face_is_for_is_understood(word: str):
    (face,) = read_faces([f"side:{word}"])
    assert face.kind is SAID_AS[FaceKind][word][0]


@every_row("word", of(Test))
def test_how_a_film_was_tested_is_understood(word: str):
    (ours,) = SAID_AS[Test][word]
    finds = next(found for found in Found if found in FOUND_BY[Test(ours)])
    assert read_test(word, finds) is ours


@pytest.mark.parametrize(("kind", "word"), TWO, ids=str)
def test_a_word_for_two_things_is_asked_not_guessed(kind: type[StrEnum], word: str):
    readers = {Found: found_word, RagsDeed: deed_word, Outcome: outcome_word}
    if kind in readers:
        with pytest.raises(Ambiguous) as asked:
            readers[kind](word)
        assert len(asked.value.candidates) > 1


def test_work_that_may_be_two_is_refused_with_both(shop: Finishlog):
    before = shop.did("history", "doors").out
    for word in (w for k, w in TWO if k is Operation):
        refused = shop("log", "doors", word)
        assert refused.code == 3
        for ours in SAID_AS[Operation][word]:
            assert ours.value in refused.err
    assert shop.did("history", "doors").out == before


def test_a_product_of_that_name_goes_before_their_word_for_work(shop: Finishlog):
    shop.did("product", "new", "polish", "--class", "paste-wax")
    assert "coat 1, polish" in shop.did("log", "door-stop", "polish").out


def test_our_own_word_goes_before_a_product(shop: Finishlog):
    shop.did("product", "new", "sand-sealer", "--class", "shellac-2lb")
    assert "door-stop: sand " in shop.did("log", "door-stop", "sand").out


def test_a_word_for_work_that_begins_a_part_is_asked(shop: Finishlog):
    """`glue` may be the glue-up of what was named, or the part glue-block beside it."""
    shop.did("part", "new", "cabinet/glue-block")
    refused = shop("log", "door-stop", "glue")
    assert refused.code == 3
    assert "cabinet/glue-block" in refused.err
    assert "glue-up" in refused.err


def test_a_name_of_a_part_and_a_product_is_settled_as_the_answer_says(shop: Finishlog):
    shop.did("part", "new", "boat/spar")
    shop.did("part", "new", "boat/oar")
    shop.did("product", "new", "spar", "--class", "alkyd-varnish")
    refused = shop("log", "oar", "spar")
    assert refused.code == 3
    assert "type one of: boat/spar, product:spar" in refused.err
    assert "oar: coat 1, spar" in shop.did("log", "oar", "product:spar").out
    assert "spar: coat 1, spar" in shop.did("log", "boat/spar", "product:spar").out


def test_a_whole_name_is_meant_before_a_mere_beginning(shop: Finishlog):
    for part in ("boat/spar", "boat/oar", "boat/keelson"):
        shop.did("part", "new", part)
    shop.did("product", "new", "spar-oil", "--class", "alkyd-varnish")
    shop.did("product", "new", "keel", "--class", "alkyd-varnish")
    assert "it has no steps" in shop("log", "oar", "spar").err
    assert "oar: coat 1, keel" in shop.did("log", "oar", "keel").out


TAKES_WORK = ("log", "steps new", "steps edit")


def test_these_are_the_commands_that_take_work():
    found = set()
    for name, command in get_command(command_line()).commands.items():  # type: ignore[attr-defined]
        for below, each in getattr(command, "commands", {"": command}).items():
            if any(
                "WHAT" in str(p.metavar)
                or "[STEP]" in str(p.metavar)
                or str(p.metavar) == "STEP..."
                for p in each.params
            ):
                found.add(f"{name} {below}".strip())
    assert found == set(TAKES_WORK)


@pytest.mark.parametrize("command", TAKES_WORK)
def test_help_lists_all_work(tmp_path: Path, command: str):
    page = " ".join(Finishlog(tmp_path)(*command.split(), "--help").out.split())
    # A page breaks its lines behind a hyphen too.
    page = page.replace("- ", "-")
    missing = [word for word in WORK if f" {word}," not in f" {page.replace('.', ',')}"]
    assert missing == []


@pytest.mark.parametrize(
    ("command", "kind"),
    [
        ("check", Found),
        ("check", Test),
        ("rags", RagsDeed),
        ("review", Outcome),
        ("part new", FaceKind),
        ("log", Operation),
    ],
    ids=str,
)
def test_help_tells_our_words_and_what_else_is_understood(
    tmp_path: Path, command: str, kind: type[StrEnum]
):
    page = " ".join(Finishlog(tmp_path)(*command.split(), "--help").out.split())
    ours = [each.value for each in kind if each is not Operation.COAT]
    assert [word for word in ours if word not in page] == []
    theirs = [word.replace("-", " ") for word in SAID_AS[kind]]
    assert [word for word in theirs if word not in page] == []


@pytest.mark.parametrize(
    "typed",
    [["sand 180", "sealer"], ["sand", "180", "sealer"], ["sanding", "180 grit", "sealer"]],
    ids=str,
)
def test_a_step_keeps_its_grit(shop: Finishlog, typed: list[str]):
    shop.did("steps", "new", "mine", *typed, "scuff p320", "topcoat*2")
    shown = shop.did("steps", "show", "mine").out
    for line in ("sand (180)", "scuff (P320)", "sealer", "topcoat"):
        assert line in shown
    shop.did("part", "steps", "doors", "--as", "mine")
    assert "sand (180)" in shop.did("on", "doors").out


def test_a_product_that_ends_in_a_figure_is_no_grit(shop: Finishlog):
    shop.did("product", "new", "sealer-2", "--class", "shellac-2lb")
    shop.did("steps", "new", "mine", "sand", "sealer-2")
    assert "sealer-2" in shop.did("steps", "show", "mine").out


def test_what_has_no_grit_is_refused_with_one(shop: Finishlog):
    refused = shop("steps", "new", "mine", "rinse 180")
    assert refused.code == 2
    assert "rinse has no grit" in refused.err


@every_row("word", sorted({w for said in SAID_FOR.values() for w in said.split()}))
def test_what_people_say_for_a_command_is_offered_and_not_run(tmp_path: Path, word: str):
    assert word not in MODULES
    program = Finishlog(tmp_path)
    refused = program(word)
    assert refused.code == 2
    assert refused.err.count("\n") == 1
    assert all(
        f"finishlog {c}" in refused.err for c, said in SAID_FOR.items() if word in said.split()
    )
    assert not program.database.exists()


def test_a_misspelt_command_is_offered_the_right_one(tmp_path: Path):
    assert "did you mean finishlog history?" in Finishlog(tmp_path)("histroy").err


def test_a_word_of_several_needs_no_quotes(shop: Finishlog):
    shop.did("product", "new", "danish oil", "--class", "danish-oil")
    assert "door-stop: wipe" in shop.did("log", "door-stop", "wipe", "off").out
    assert "coat 1, danish oil" in shop.did("log", "door-stop", "danish", "oil").out
    assert "no-print" in shop.did("check", "case", "no", "print").out
    assert "touch, dry" in shop.did("check", "case", "dry", "to", "the", "touch").out
    assert "came out fair" in shop.did("review", "case", "so", "so").out
    assert "fisheye" in shop.did("fault", "case", "fish", "eyes").out


def test_parts_are_never_swallowed_by_a_word_of_several(shop: Finishlog):
    """`wipe off` is one word; a part called wipe-rack and the step off are not."""
    shop.did("part", "new", "cabinet/no")
    page = shop.did("log", "case", "no", "scuff").out
    assert "case" in page
    assert "no" in page


@pytest.mark.parametrize("word", sorted(DUE_SAID))
def test_done_is_the_step_that_is_due(shop: Finishlog, word: str):
    assert "door-stop: sand" in shop.did("log", "door-stop", word).out


def test_a_coat_of_a_product_is_said_in_the_order_of_speech(shop: Finishlog):
    shop.did("log", "door-stop", "sand")
    assert "door-stop: coat 1, sealer" in shop.did("log", "door-stop", "coat", "sealer").out


def test_coat_alone_is_the_coat_that_is_due_and_no_other_step(shop: Finishlog):
    refused = shop("log", "door-stop", "coat")
    assert refused.code == 2
    assert "sand is due, no coat" in refused.err
    shop.did("log", "door-stop", "sand")
    assert "door-stop: coat 1, sealer" in shop.did("log", "door-stop", "coat").out


@pytest.mark.parametrize(
    ("typed", "command"),
    [
        (["log", "case", "strip"], "finishlog off PART"),
        (["log", "case", "sticky"], "finishlog check PART"),
        (["fault", "case", "sticky"], "finishlog check PART"),
        (["fault", "case", "scuff"], "finishlog log PART"),
        (["check", "case", "scuffed"], "finishlog log PART"),
        (["check", "case", "wrinkle"], "finishlog fault PART"),
        (["log", "sand"], "finishlog log PART sand"),
    ],
    ids=str,
)
def test_a_word_of_another_command_is_sent_there(shop: Finishlog, typed: list[str], command: str):
    refused = shop(*typed)
    assert refused.code in {2, 3}
    assert command in refused.err
    assert refused.err.count("\n") == 1


@pytest.mark.parametrize("word", ["ok", "good", "fine", "hard", "cured"])
def test_a_verdict_is_no_check(shop: Finishlog, word: str):
    """A film that feels hard may be soft inside: what was found is asked for, not a verdict."""
    assert "is no test" in shop("check", "case", word).err


@pytest.mark.parametrize("command", ["ready", "when", "on"])
def test_all_is_everything(shop: Finishlog, command: str):
    page = shop.did(command, "all").out
    assert "case" in page
    assert "seat" in page
