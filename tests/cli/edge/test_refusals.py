"""Wrong input ends with one clear line on stderr, the right exit code, and nothing changed."""

from __future__ import annotations

import os
import signal
import sqlite3
import subprocess
import time
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest
from run import PROGRAM, Answer, Finishlog, furnished
from typer.main import get_command

from finishlog import errors
from finishlog.cli.app import command_line
from tests.once import blank
from tests.rows import every_row


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return furnished(tmp_path)


def refused(answer: Answer, code: int, *words: str) -> None:
    """One line on stderr that holds `words`, nothing on stdout, no traceback."""
    assert answer.code == code, answer
    assert answer.out == ""
    lines = answer.err.splitlines()
    assert len(lines) == 1, answer.err
    assert lines[0].startswith("finishlog: ")
    for each in words:
        assert each in lines[0]


USAGE = [
    (["frobnicate"], "finishlog --help"),
    (["log"], "PART... [WHAT]"),
    (["ready", "--frobnicate"], "--frobnicate"),
    (["log", "case", "topcoat", "--method", "roll"], "brush"),
    (["log", "case", "topcoat", "--flooded", "--thin"], "say the opposite"),
    (["log", "case", "topcoat", "--at", "soon"], "cannot read 'soon' as a time", "2h ago"),
    (["log", "case", "topcoat", "--at", ""], "cannot read ''"),
    (["log", "case", "topcoat", "--at", "tomorrow 9:00"], "still to come"),
    (["log", "case", "topcoat", "--at", "in 2h"], "still to come"),
    (["log", "case", "topcoat", "--at", "10/11"], "10 Nov or 11 Oct"),
    (["log", "case", "topcoat", "--at", "30m"], "30m ago"),
    (["log", "case", "topcoat", "--at", "3mo ago"], "2026-11-24"),
    (["log", "case", "topcoat", "--at", "25:00"], "no time of a clock"),
    (["log", "case", "topcoat", "--at", "31 Feb"], "does not exist"),
    (["log", "seat:3-1", "oil"], "type 1-3"),
    (["log", "seat:x", "oil"], "legs:1-3"),
    (["log", "a/b/c", "topcoat"], "a face is told by @: a/b@c"),
    (["log", "doors@", "topcoat"], "doors@back"),
    (["log", "leg"], "it has no steps", "finishlog log stools/leg PRODUCT"),
    (["check", "case"], "finishlog check case prints"),
    (["look", "case"], "finishlog look doors clean"),
    (["look", "case", "tacky"], "it finds glue, scratches, snipe"),
    (["check", "case", "maybe"], "'maybe'", "tacky", "no-smell"),
    (["check", "case", "dry", "--test", "xray"], "thumbnail"),
    (["check", "case", "powder", "--test", "touch"], "it finds tacky, dry"),
    (["air", "63", "58%"], "63 °C", "63F"),
    (["air", "17C", "580%"], "580 %", "58%"),
    (["air", "17C", "0.58"], "type 58%"),
    (["air", "17"], "type both"),
    (["air", "17C", "58%", "--at", "tomorrow"], "still to come"),
    (["air", "17C", "wet", "21C"], "not warmer", "finishlog air 21C wet 17C"),
    (["air", "30C", "wet", "2C"], "no air is so dry"),
    (["air", "17C", "58%", "--dry-run"], "--dry-run", "finishlog air import FILE.csv"),
    (["air", "import"], "finishlog air import FILE.csv"),
    (["heat", "tonight"], "finishlog heat tonight 16 till 23 18C"),
    (["heat", "23", "till", "23"], "over before it begins"),
    (["heat", "today", "9", "till", "24", "Dec", "9"], "finishlog room heating ROOM 16-23 18C"),
    (["room", "usual", "finishing", "7:12"], "0:13C/65% 7:12C 17:18C/55%"),
    (["room", "heating", "finishing", "16"], "16-23 18C"),
    (["rags", "burn"], "spread, water, lifted, can, stiff, gone"),
    (["undo", "x"], "'x'"),
    (["product", "says", "topcoat"], "nothing is said", "--not-over oil-stain"),
    (["product", "says", "topcoat", "--over", "oil-stain"], "--over oil-stain alone", "--wait 72h"),
    (["product", "says", "topcoat", "--wait", "3d"], "a wait over what?", "--over"),
    (["product", "says", "topcoat", "--coats-a-day", "0"], "type 1 or more"),
    (["product", "says", "topcoat", "--no-window"], "needs a reason", "--because"),
    (
        ["product", "says", "topcoat", "--wait", "1h", "--over", "boiled-linseed-oil"],
        "a shorter wait needs a reason",
        "--because",
    ),
    (
        ["product", "says", "topcoat", "--overrule", "linseed-under-waterborne"],
        "overruled with a reason",
        "--because",
    ),
    (["product", "says", "topcoat", "--window", "48h, 2h-"], "one after the other", "0-1h, 48h-"),
    (["product", "says", "topcoat", "--window", "1h, 2h-3h, 4h-"], "is no window"),
    (["product", "label", "topcoat", "--window", "2h-"], "never closes", "--no-window"),
    (["product", "label", "topcoat", "--window", "1h, 5h-"], "before 3 h to recoat"),
    (["product", "label", "topcoat", "--recoat", "3h", "--window", "0-1h"], "say one of the two"),
    (["product", "label", "topcoat", "--recoat", "16h@70F, 6h@55F"], "colder is never sooner"),
    (["product", "label", "topcoat", "--recoat", "6h@21C", "--recoat", "8h@21C"], "21 °C twice"),
    (["undo", "1"], "act 1 cannot be undone"),
    (["undo", "19"], "did the finish go on?", "finishlog undo 19 --never-happened"),
    (["fault", "case"], "finishlog fault doors run"),
    (["fault", "case", "gremlins"], "'gremlins'", "run, blush, fisheye"),
    (["off", "case", "--to", "topcoat", "--sanded", "--strip"], "say one", "--scraped"),
    (["moisture", "case"], "finishlog moisture doors 11%"),
    (["moisture", "case", "damp"], "'damp'", "type 11%"),
    (["moisture", "case", "58C"], "'58C'", "type 11%"),
    (["moisture", "case", "90%"], "90 % is no moisture", "90%!"),
    (["moisture", "case", "300%!"], "300 % is no moisture"),
    (["moisture", "case", "11%", "--air", "20C 50%"], "logs nothing"),
    (["weigh", "case"], "finishlog weigh bowl 642g"),
    (["weigh", "case", "2 litres"], "is a volume, not a weight"),
    (["surface", "case"], "finishlog surface doors 14C"),
    (["surface", "case", "63"], "63F"),
    (["movement", "ash"], "WIDTH"),
    (["over", "sealer"], "finishlog over sealer PRODUCT"),
    (["movement", "ash", "300mm", "--from", "8%"], "--to"),
    (["movement", "ash", "300", "--from", "8%", "--to", "9%"], "no unit", "300 mm"),
    (["movement", "ash", "3kg", "--from", "8%", "--to", "9%"], "is a weight, not a width"),
    (["movement", "ash", "9in", "--from", "dry", "--to", "9%"], "'20C 35%'"),
    (["movement", "ash", "9in", "--from", "8%", "--to", "35%"], "does not move", "'20C 35%'"),
    (["amend", "19", "--moisture", "9%"], "no moisture"),
    (["amend", "19"], "nothing to amend", "--at"),
    (["amend", "19", "--found", "dry"], "no found"),
    (["amend", "15", "--product", "oil"], "no product"),
    (["amend", "21", "--found", "maybe"], "'maybe'"),
    (["note", "case"], "finishlog note case"),
    (["handover", "doors@back"], "name the part or its pieces"),
    (["handover"], "PART"),
    (["review", "case"], "finishlog review case good"),
    (["review", "case", "splendid"], "good, fair, failed"),
    (["photo", "case"], "finishlog photo case case.jpg"),
    (["photo", "case", " "], "finishlog photo PART FILE"),
    (["past", "--pairs"], "finishlog past --pairs sealer topcoat"),
    (["steps", "new", "s", "--like", "leg"], "nothing was done on leg"),
    (["steps", "new", "s", "sand", "--like", "case"], "one of them"),
    (["project", "new", "x", "--for", "the-cat"], "food, child, cot, toy or anyone"),
    (["project", "new", "a/b"], "'a/b' cannot name a project"),
    (["project", "new", ""], "cannot name"),
    (["project", "new", "scuff"], "kind of work"),
    (["project", "new", "cabinet"], "already"),
    (["project", "new", "x", "--due", "yesterday"], "past"),
    (["plan", "cabinet", "--due", "yesterday"], "past"),
    (["plan", "cabinet", "--due", "soon"], "'soon'"),
    (["plan", "--due", "Sat 5 Dec"], "finishlog plan cabinet or stools --due"),
    (["project", "new", "x", "--due", "10/11"], "10 Nov or 11 Oct"),
    (["part", "new", "case"], "PROJECT/PART"),
    (["part", "new", "cabinet/case"], "already"),
    (["part", "new", "cabinet/scuff"], "kind of work"),
    (["part", "new", "a/b/c"], "cannot name"),
    (["part", "new", "cabinet/"], "cannot name"),
    (["part", "new", "cabinet/x", "-n", "0"], "at least one piece"),
    (["part", "new", "cabinet/x", "-n", "-2"], "at least one piece"),
    (["part", "new", "cabinet/x", "-n", "many"], "'many'"),
    (["part", "new", "cabinet/x", "-n", "5000"], "5000"),
    (["part", "new", "cabinet/x", "--face", "back:up"], "back:hidden"),
    (["part", "new", "cabinet/x", "--face", "a", "--face", "a"], "'a'"),
    (["part", "new", "cabinet/x", "--of", "case:x"], "side:2"),
    (["part", "new", "cabinet/x", "--of", "case:0"], "side:2"),
    (["steps", "new", "s", "topcoat*0"], "topcoat*3"),
    (["steps", "new", "s", "topcoat*x"], "topcoat*3"),
    (["steps", "new", "clear", "sand"], "already"),
    (["steps", "new", "scuff", "sand"], "kind of work"),
    (["product", "new", "topcoat", "--class", "waterborne-clear"], "already"),
    (["product", "new", "scuff", "--class", "waterborne-clear"], "kind of work"),
    (["product", "new", "coat", "--class", "waterborne-clear"], "kind of work"),
    (["product", "new", "p"], "--class"),
    (["product", "new", "p", "--class", "waterborne-clear", "--recoat", "4"], "4h"),
    (["product", "new", "p", "--class", "waterborne-clear", "--recoat", "6-4h"], "4-6h"),
    (["product", "new", "p", "--class", "waterborne-clear", "--recoat", "3mo"], "90d"),
    (["product", "label", "topcoat"], "--recoat"),
    (["mix", "topcoat"], "base:500ml"),
    (["clean", " "], "finishlog clean gun1"),
    (["respirator", "half", "worn"], "finishlog respirator half worn 2h"),
    (
        ["product", "new", "x", "--class", "waterborne-clear", "--sheen", "shimmer"],
        "'shimmer'",
        "satin",
    ),
    (["mix", "sealer", "flakes:8oz", "alcohol:1qt"], "8 fl oz or 8 oz wt"),
    (["can", "new", "can-1", "--product", "topcoat", "--amount", "8oz"], "8 fl oz"),
    (["room", "new", "a/b"], "cannot name"),
    (["room", "new", "r", "--night", "63"], "63F"),
    (["shop", "hours", "never"], "mon-fri 18:00-23:00"),
    (["shop", "hours", "mon-fri"], "mon-fri 18:00-23:00"),
    (["shop", "hours", "mon", "25:00-26:00"], "no time of the day"),
    (["shop", "hours", "mon", "18:00-18:00"], "18:00-18:00"),
    (["settings", "temperature", "K"], "C or F"),
    (["settings", "temperature"], "finishlog settings temperature VALUE"),
    (["settings", "zone", "Nowhere"], "Europe/Berlin"),
    # A word too many goes to the option that is missing, or that it names.
    (["can", "new", "wb"], "--product is missing", "finishlog can new wb --product PRODUCT"),
    (["can", "new", "tin", "wb"], "finishlog can new tin --product wb"),
    (["can", "new", "--product", "oil"], "NAME is missing", "finishlog can new NAME --product oil"),
    (["part", "steps", "rail", "s"], "finishlog part steps rail --as s"),
    (["part", "steps", "rail"], "--as is missing", "finishlog part steps rail --as STEPS"),
    (["product", "new", "wb", "waterborne-clear"], "new wb --class waterborne-clear"),
    (["product", "label", "oil", "recoat", "4h"], "finishlog product label oil --recoat 4h"),
    (["product", "label", "oil", "4h"], "'4h' is too many", "--recoat, --sand"),
    (["movement", "ash", "9in", "8%", "9%"], "movement ash 9in --from 8% --to 9%"),
    (["part", "new", "cabinet", "rail"], "finishlog part new cabinet/rail"),
    (["part", "new", "cabinet/rail", "4"], "finishlog part new cabinet/rail --count 4"),
    (["project", "new", "chest", "Sat"], "finishlog project new chest --due Sat"),
    (["amend", "19", "19:30"], "finishlog amend 19 --at 19:30"),
    (["undo", "5", "6"], "'6' is too many", "finishlog undo 5"),
    (["room", "rename", "finishing"], "finishlog room rename finishing NEW-NAME"),
    # An option by another name; one without its value; a value that it does not take.
    (["part", "new", "cabinet/x", "--wood", "ash"], "part new cabinet/x --species ash"),
    (["log", "case", "topcoat", "--time", "19:30"], "finishlog log case topcoat --at 19:30"),
    (["log", "case", "topcoat", "--flod"], "finishlog log case topcoat --flooded"),
    (["plan", "--for", "2h"], "plan has no --for", "--due"),
    (["log", "case", "topcoat", "--from"], "log case topcoat --from CAN", "can or mix"),
    (["undo", "last"], "'last' is no number", "finishlog undo ACT"),
    (["log", "case", "topcoat", "--method", "roller"], "--method takes no 'roller'", "spray"),
    # What a group of commands has not.
    (["can", "topcoat"], "can has no 'topcoat'", "finishlog can show topcoat"),
    (["room", "move", "case", "finishing"], "finishlog move case finishing"),
    (["part", "shwo", "case"], "finishlog part show case"),
    # Words in another order, or without the option that they belong to.
    (["log", "topcoat", "case"], "'topcoat' stands last", "finishlog log case topcoat"),
    (["log", "stool", "glue-up", "seat"], "finishlog log stool seat glue-up"),
    (["log", "case", "topcoat", "sealer"], "two things", "log case topcoat, then finishlog log"),
    (["log", "case", "topcoat", "at", "19:30"], "finishlog log case topcoat --at 19:30"),
    (["log", "case", "topcoat", "yesterday"], "finishlog log case topcoat --at yesterday"),
    (["log", "case", "sand", "p220"], "finishlog log case sand --grit P220"),
    (["check", "dry", "case"], "finishlog check case dry"),
    (["fault", "run", "case"], "finishlog fault case run"),
    (["review", "good", "case"], "finishlog review case good"),
    (["moisture", "11%", "case"], "finishlog moisture case 11%"),
    (["weigh", "642g", "case"], "finishlog weigh case 642g"),
    (["surface", "14C", "case"], "finishlog surface case 14C"),
    (["move", "finishing", "case"], "the room stands last", "finishlog move case finishing"),
    (["photo", "x.jpg", "case"], "the file stands last", "finishlog photo case x.jpg"),
    (["rags", "1", "spread"], "finishlog rags spread 1"),
    (["check", "seat", "tacky", "20:00"], "finishlog check seat tacky --at 20:00"),
    (["photo", "seat.png", "seat"], "finishlog photo seat seat.png"),
    (["product", "rename", "sealer", "to", "first"], "finishlog product rename sealer first"),
    (["part", "rename", "seat", "sitting", "board"], "part rename seat 'sitting board'"),
    (["off", "case", "sealer"], "finishlog off case --to sealer"),
    (["why", "19"], "finishlog history --act 19"),
    (["off", "case", "bare"], "finishlog off case --to bare"),
    (["history", "19"], "finishlog history --act 19"),
    (["why", "topcoat"], "is a product, no part", "finishlog product show topcoat"),
    (["on", "clear"], "is a finishing schedule, no part", "finishlog steps show clear"),
    (["when", "case", "tomorrow"], "is a time, no part", "finishlog when case"),
    (["air", "garage", "41F", "60%"], "air 41F 60% --room garage", "finishlog room new garage"),
    (["air", "17C", "58%", "finishing"], "finishlog air 17C 58% --room finishing"),
    # Steps that were typed as one word, or counted in other words.
    (["steps", "new", "s", "sand", "varn scuff varn"], "steps new NAME varn scuff varn"),
    (["steps", "new", "s", "sand,sealer,topcoat"], "steps new NAME sand sealer topcoat"),
    (["steps", "new", "s", "4x varn"], "varn*4"),
    (["steps", "new", "s", "3x", "topcoat"], "topcoat*3"),
    (["steps", "new", "s", "topcoat", "x", "3"], "topcoat*3"),
    (["steps", "new", "s", "topcoat*"], "topcoat*3"),
]


@every_row(("words", "said"), [(w, said) for w, *said in USAGE])
def test_what_cannot_be_read_is_refused_with_what_to_type(
    shop: Finishlog, words: list[str], said: list[str]
):
    before = shop.database.read_bytes()
    refused(shop(*words), errors.USAGE, *said)
    assert shop.database.read_bytes() == before


def commands() -> list[tuple[str, ...]]:
    """Every command as it is typed, groups left out."""
    top: Any = get_command(command_line())
    found = []
    for name, command in top.commands.items():
        found += [(name, each) for each in getattr(command, "commands", ())] or [(name,)]
    return found


@pytest.mark.thorough
@every_row("command", commands, ids=" ".join)
@every_row("more", [("--frobnicate",), ("--json", "--nots", "x"), ()])
def test_every_command_says_what_to_type(
    tmp_path: Path, command: tuple[str, ...], more: tuple[str, ...]
):
    """Without its words, with an option that it has not: one line, and no page of help to read."""
    shop = furnished(tmp_path)
    before = shop.database.read_bytes()
    answer = shop(*command, *more)
    if answer.code in {0, errors.ANSWER_IS_BAD} and not more:
        return
    refused(answer, answer.code)
    assert answer.code in {errors.USAGE, errors.NO_SUCH_THING}
    assert "--help" not in answer.err
    assert "; " in answer.err or "? " in answer.err
    assert shop.database.read_bytes() == before


NO_SUCH_THING = [
    (["log", "nothing/such", "topcoat"], "finishlog part new nothing/such"),
    (["log", "nothing", "topcoat"], "finishlog part new PROJECT/nothing"),
    (["log", "door", "topcoat"], "cabinet/doors, cabinet/door-stop"),
    (["log", "case", "mystery"], "finishlog product new mystery --class CLASS"),
    (["log", "case@inside", "topcoat"], "cabinet/case@all round"),
    (["log", "seat:9", "oil"], "stools/seat:1-4"),
    (["log", "cabinet/*", "mystery"], "finishlog product new mystery --class CLASS"),
    (["check", "nothing", "dry"], "finishlog part new PROJECT/nothing"),
    (["air", "17C", "58%", "--room", "attic"], "finishing"),
    (["rags", "spread", "7"], "1 oil"),
    (["rags", "spread", "wax"], "1 oil"),
    (["moisture", "nothing", "11%"], "no part"),
    (["surface", "nothing", "14C"], "no part"),
    (["steps", "check", "nix"], "no steps are called 'nix'"),
    (["over", "mud", "topcoat"], "no class is called 'mud'"),
    (["movement", "ironwood", "9in", "--from", "8%", "--to", "9%"], "'ironwood'"),
    (["movement", "oak", "9in", "--from", "8%", "--to", "9%"], "red-oak, white-oak"),
    (["undo", "999"], "finishlog history"),
    (["amend", "999", "--at", "2h ago"], "finishlog history"),
    (["fault", "nothing", "run"], "finishlog part new PROJECT/nothing"),
    (["fault", "case", "mended"], "no fault stands there"),
    (["off", "nothing"], "finishlog part new PROJECT/nothing"),
    (["off", "case", "--to", "oil"], "topcoat (act 19)"),
    (["amend", "19", "--on", "nothing"], "no part"),
    (["amend", "19", "--face", "inside"], "all round"),
    (["amend", "19", "--product", "polish"], "finishlog product new polish"),
    (["note", "nothing", "-t", "x"], "no part"),
    (["when", "nothing"], "no part"),
    (["why", "nothing"], "no part"),
    (["on", "nothing"], "no part"),
    (["history", "nothing"], "no part"),
    (["ready", "nothing"], "no part"),
    (["ready", "door"], "cabinet/doors, cabinet/door-stop"),
    (["past", "teak"], "ash, cherry"),
    (["past", "--pairs", "oil", "sealer"], "no coat of sealer over oil"),
    (["past", "--pairs", "polish"], "no product"),
    (["history", "--act", "999"], "finishlog history"),
    (["handover", "nothing"], "no part"),
    (["handover", "nothing", "--card"], "no part"),
    (["review", "nothing", "good"], "no part"),
    (["photo", "nothing", "x.jpg"], "no part"),
    (["plan", "nothing"], "cabinet, stools"),
    (["project", "show", "none"], "cabinet, stools"),
    (["part", "new", "cabinet/x", "--steps", "none"], "clear"),
    (["part", "new", "cabinet/x", "--room", "attic"], "finishing"),
    (["part", "new", "cabinet/x", "--of", "none:1"], "none"),
    (["part", "steps", "case", "--as", "none"], "clear"),
    (["part", "show", "none"], "no part"),
    (["steps", "new", "s", "frobnicate"], "finishlog product new frobnicate --class CLASS"),
    (["steps", "show", "none"], "clear"),
    (["product", "new", "p", "--class", "zzz"], "finishlog class list"),
    (["product", "show", "none"], "finishlog product new none"),
    (["move", "case", "garage"], "finishlog room new garage"),
    (["product", "label", "none", "--recoat", "4h"], "finishlog product new none"),
    (["room", "night", "attic", "12C"], "finishing"),
    (["room", "show", "attic"], "finishing"),
    (["class", "show", "zzz"], "finishlog class list"),
    (["class", "show", "oil"], "hardwax-oil"),
]


@every_row(("words", "said"), NO_SUCH_THING)
def test_what_is_not_there_or_fits_several_is_refused(shop: Finishlog, words: list[str], said: str):
    before = shop.database.read_bytes()
    refused(shop(*words), errors.NO_SUCH_THING, said)
    assert shop.database.read_bytes() == before


def test_the_remedy_can_be_typed_as_it_stands(shop: Finishlog):
    remedy = shop("log", "stools/rail", "oil").err.split("finishlog part new ")[1].split()[0]
    shop.did("part", "new", remedy)
    shop.did("log", "stools/rail", "oil")


def with_a_database(folder: Path) -> Finishlog:
    """A database of one's own that is empty: that it was made has been said."""
    program = Finishlog(folder)
    program.database.write_bytes(blank())
    return program


def test_nothing_to_undo(tmp_path: Path):
    refused(with_a_database(tmp_path)("undo"), errors.NO_SUCH_THING, "nothing to undo")


def test_no_rags_are_open(tmp_path: Path):
    program = with_a_database(tmp_path)
    refused(program("rags", "gone"), errors.NO_SUCH_THING, "no rags are open")


def test_a_wrong_command_in_a_process_of_its_own(shop: Finishlog):
    refused(shop.apart("log", "nothing", "topcoat"), errors.NO_SUCH_THING, "no part")


@pytest.mark.parametrize("words", [[], ["project"], ["part"], ["class"]], ids=str)
def test_a_group_by_itself_shows_its_help_beside_the_answer(shop: Finishlog, words: list[str]):
    answer = shop(*words)
    assert answer.code == errors.USAGE
    assert answer.out == ""
    assert answer.err.startswith("Usage: finishlog")


@pytest.mark.parametrize(
    ("variables", "said"),
    [
        ({"FINISHLOG_NOW": "soon"}, "2026-11-24T21:05+00:00"),
        ({"FINISHLOG_NOW": "2026-11-24T21:05"}, "offset"),
        ({"FINISHLOG_NOW": "0001-01-01T00:00+00:00"}, "FINISHLOG_NOW"),
        ({"FINISHLOG_NOW": "0001-01-01T00:00+10:00"}, "FINISHLOG_NOW"),
        ({"FINISHLOG_NOW": "9999-12-31T23:59+00:00"}, "FINISHLOG_NOW"),
        ({"FINISHLOG_ZONE": "Mars/Base"}, "Europe/Berlin"),
        ({"FINISHLOG_ZONE": "Europe"}, "Europe/Berlin"),
        ({"FINISHLOG_ZONE": "../x"}, "Europe/Berlin"),
    ],
    ids=str,
)
def test_an_environment_that_cannot_be_read(shop: Finishlog, variables: dict[str, str], said: str):
    shop.environment = variables
    refused(shop("ready"), errors.USAGE, said)


def test_bytes_that_are_no_text(shop: Finishlog):
    refused(shop("note", "case", "-t", os.fsdecode(b"\xff")), errors.USAGE, "UTF-8")


def test_a_file_that_is_no_database_is_left_as_it_was(shop: Finishlog):
    shop.database.write_text("a shopping list\n" * 100)
    refused(shop("ready"), errors.DATABASE, "not a finishlog database", "untouched")
    assert shop.database.read_text() == "a shopping list\n" * 100


def test_a_database_of_another_program(shop: Finishlog):
    shop.database.unlink()
    with closing(sqlite3.connect(shop.database)) as connection:
        connection.execute("CREATE TABLE thing (id)")
    refused(shop("ready"), errors.DATABASE, "another program", "FINISHLOG_DB")


def test_a_newer_database(shop: Finishlog):
    with closing(sqlite3.connect(shop.database)) as connection, connection:
        connection.execute("UPDATE alembic_version SET version_num = '9999'")
    before = shop.database.read_bytes()
    refused(shop("ready"), errors.DATABASE, "newer finishlog", "9999")
    assert shop.database.read_bytes() == before


def test_a_damaged_database(shop: Finishlog):
    shop.database.write_bytes(shop.database.read_bytes()[:9000])
    refused(shop("ready"), errors.DATABASE, "damaged", "backup")


def test_a_database_in_use(shop: Finishlog):
    with closing(sqlite3.connect(shop.database, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        refused(shop("air", "17C", "58%"), errors.DATABASE, "in use", "nothing was changed")
        shop.did("ready")


def test_a_folder_is_no_database(shop: Finishlog):
    refused(shop("--db", str(shop.folder), "ready"), errors.DATABASE, str(shop.folder))


def test_a_database_inside_a_file(shop: Finishlog):
    inside = shop.database / "inside.db"
    refused(shop("--db", str(inside), "ready"), errors.DATABASE, str(shop.database))


def test_a_home_that_does_not_exist(shop: Finishlog):
    shop.environment = {"FINISHLOG_DB": "~nobody-of-that-name/shop.db"}
    refused(shop("ready"), errors.USAGE, "FINISHLOG_DB")


def test_a_fault_of_ours_is_one_line_and_the_rest_is_in_the_log(
    shop: Finishlog, monkeypatch: pytest.MonkeyPatch
):
    def breaks(*_: object, **__: object) -> None:
        raise RuntimeError("the bench fell over")

    monkeypatch.setattr("finishlog.asks.bench.ready.ready", breaks)
    log = shop.folder / ".local" / "share" / "finishlog" / "fault.log"
    refused(shop("ready"), errors.OUR_FAULT, "a fault of ours (RuntimeError)", str(log))
    assert "the bench fell over" in log.read_text()
    assert "Traceback" in log.read_text()


def test_a_fault_of_ours_where_nothing_can_be_written(
    shop: Finishlog, monkeypatch: pytest.MonkeyPatch
):
    def breaks(*_: object) -> None:
        raise RuntimeError

    monkeypatch.setattr("finishlog.asks.bench.ready.ready", breaks)
    shop.environment = {"XDG_DATA_HOME": str(shop.database)}
    refused(shop("ready"), errors.OUR_FAULT, "a fault of ours", "cannot be written")


def test_ctrl_c_while_the_database_is_waited_for(shop: Finishlog):
    """The lock keeps the command waiting, so that the signal finds it at work."""
    with closing(sqlite3.connect(shop.database, isolation_level=None)) as other:
        other.execute("BEGIN EXCLUSIVE")
        # A shell lets what runs in its background ignore the signal, and so would the command.
        before = signal.signal(signal.SIGINT, signal.default_int_handler)
        with subprocess.Popen(
            [*PROGRAM, "air", "17C", "58%"],
            env=shop.variables(),
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        ) as program:
            signal.signal(signal.SIGINT, before)
            _wait_until_it_has_open(program.pid, shop.database)
            program.send_signal(signal.SIGINT)
            out, err = program.communicate(timeout=30)
    assert program.returncode == errors.INTERRUPTED, err
    assert out == ""
    assert "Traceback" not in err
    assert "act 23" not in shop.did("history").out


def _wait_until_it_has_open(process: int, file: Path) -> None:
    """Wait until a process has a file open, or is past the time that imports may take."""
    files = Path(f"/proc/{process}/fd")
    if not files.is_dir():
        time.sleep(3)
        return
    for _ in range(1000):
        if str(file) in {_target(each) for each in files.iterdir()}:
            return
        time.sleep(0.01)


def _target(link: Path) -> str:
    try:
        return os.readlink(link)
    except OSError:
        return ""
