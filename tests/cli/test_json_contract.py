"""`--json`: one document in one envelope, with keys that stay; a new key is added here too."""

from __future__ import annotations

import json
import re
import shlex
from collections.abc import Iterator
from pathlib import Path

import pytest
from run import NOW, Finishlog, furnished
from terminal_session import shown
from typer.main import get_command

from finishlog import errors
from finishlog.cli.app import command_line

FIGURE = "also at high_h low_h note source typical_h"
WINDOW = "closes kind note source"
STANDING = (
    "answer because closes coat coats faces findings high label layers low milestone on_it"
    " operation part pieces product scuff_first waits_for"
)
RAGS = "dust number opened overdue parts product remarks since state stiff_from"
WHEN = "earliest latest sureness tie"
AIR = "humidity_pct temperature_c"
FINDING = "level remedy sentence source"
MADE = {"": "detail kind name"}
LOGGED = {
    "": "act after at entries_after_it labels late notes operation product rags warnings",
    "at": WHEN,
    "after[]": STANDING,
    "rags[]": RAGS,
}
PART = "faces id is_board made_of path pieces room species steps steps_name"
PRODUCT = {
    "": "class_key class_name name of self_heating stages window",
    "window": WINDOW,
}
CLASS = (
    "abrade builds_film carrier coats family hazards key limits mechanism methods name notes"
    " readings self_heating self_heating_source stages topcoat window wipe_off_h"
)
ROOM = {
    "": "coldest_night_c name readings",
    "readings[]": "act air at",
    "readings[].air": AIR,
}

# Every command, with a line that it ends well with, and the keys of its answer by their place.
CONTRACT: dict[str, tuple[str, dict[str, str]]] = {
    "ready": (
        "",
        {
            "": "bench drying empty glue_ups milestones next_at next_what now rags rooms set_aside"
            " shop_open shop_opens stopped",
            "bench[]": STANDING,
            "drying[]": STANDING,
            "glue_ups[]": STANDING,
            "rags[]": RAGS,
            "rooms[]": "air coldest_night_c dew_point_c fitness read_at room",
            "rooms[].air": AIR,
        },
    ),
    "log": ("case topcoat", LOGGED | {"warnings[]": FINDING}),
    "check": (
        "case dry",
        {
            "": "act at blocks found in_the_white labels proves standings test",
            "at": WHEN,
            "standings[]": STANDING,
        },
    ),
    "air": ("18C 57%", {"": "act air at dew_point_c room room_is_new", "air": AIR, "at": WHEN}),
    "rags": ("", {"[]": RAGS}),
    "undo": (
        "21",
        {"": "act again withdrawn", "withdrawn": "act is_coat is_undo typed_at verb words"},
    ),
    "amend": (
        '19 --at "3h ago"',
        {
            "": "act amends kind now_is standings was",
            "was": WHEN,
            "now_is": WHEN,
            "standings[]": STANDING,
        },
    ),
    "note": ("case -t sound", {"": "act at labels outcome text", "at": WHEN}),
    "when": (
        "case",
        {
            "": "glue_ups lines now",
            "lines[]": "since stages standing",
            "lines[].standing": STANDING,
            "lines[].stages[]": "air_read blocked high low missing stage",
        },
    ),
    "why": (
        "case",
        {
            "[]": "air checks clock label on_it read_at standing unknown",
            "[].standing": STANDING,
            "[].label": "also at high_h low_h product source stage",
            "[].clock": "by done_h needed_h pace",
            "[].checks[]": "act found moment test",
            "[].on_it[]": "act product put_on",
        },
    ),
    "on": (
        "case",
        {
            "[]": "aside coats joint passed_over species standing to_come",
            "[].coats[]": "abraded act product put_on",
            "[].standing": STANDING,
        },
    ),
    "history": (
        "case",
        {
            "[]": "act amended_by amends happened in_force kind parts typed_at verb withdrawn_by"
            " withdraws words",
            "[].happened": WHEN,
        },
    ),
    "past": (
        "ash",
        {
            "": "finishes species",
            "finishes[]": "coats faces is_board notes outcomes part species steps",
            "finishes[].coats[]": "air checks hours_since_last label_high_h label_low_h product"
            " put_on worked",
        },
    ),
    "project new": ("table", MADE),
    "project list": ("", {"[]": "due name note parts", "[].parts[]": PART}),
    "project show": ("cabinet", {"": "due name note parts", "parts[]": PART}),
    "part new": ("cabinet/shelf -n 2", MADE),
    "part steps": ("leg --as clear", MADE),
    "part archive": ("leg", MADE),
    "part list": ("", {"[]": PART}),
    "part show": ("case", {"[]": PART}),
    "steps new": ("oiled sand oil*2", MADE),
    "steps list": ("", {"[]": "name steps"}),
    "steps show": ("clear", {"": "name steps"}),
    "product new": ("wax --class paste-wax", MADE),
    "product label": ("topcoat --recoat 4h", MADE),
    "product list": ("", {f"[]{'.' if k else ''}{k}": v for k, v in PRODUCT.items()}),
    "product show": ("topcoat", PRODUCT),
    "room new": ("attic", MADE),
    "room night": ("finishing 12C", MADE),
    "room list": ("", {f"[]{'.' if k else ''}{k}": v for k, v in ROOM.items()}),
    "room show": ("finishing", ROOM),
    "shop hours": ("mon-fri 18:00-23:00", MADE),
    "shop units": ("F", MADE),
    "shop show": ("", {"": "database open_parts time_zone week"}),
    "class list": ("", {"[]": "family key name self_heating"}),
    "class show": ("shellac", {"": CLASS, "window": WINDOW}),
}
# The same command that asks and that records.
ALSO: dict[str, tuple[str, dict[str, str]]] = {
    "rags spread": ("", {"": "act at deed items remarks still_open", "still_open[]": RAGS}),
    "log leg": ("topcoat --method spray", LOGGED | {"notes[]": "applies_to id source text"}),
}
# A command that has no answer of its own: it shows the others at work.
WITHOUT = {"demo"}

INSTANT = re.compile(r"\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(?:\.\d{6})?Z")
LOOKS_LIKE_ONE = re.compile(r"\d{4}-\d{2}-\d{2}[T ]\d{2}:")


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return furnished(tmp_path)


def _commands() -> Iterator[str]:
    for name, command in get_command(command_line()).commands.items():  # type: ignore[attr-defined]
        below = getattr(command, "commands", None)
        yield from (f"{name} {each}" for each in below) if below else (name,)


def test_every_command_stands_in_the_contract():
    assert sorted(set(_commands()) - WITHOUT) == sorted(CONTRACT)


@pytest.mark.parametrize("command", [*CONTRACT, *ALSO])
def test_the_envelope_and_the_keys(shop: Finishlog, command: str):
    line, keys = (CONTRACT | ALSO)[command]
    shop.environment = {"FORCE_COLOR": "1", "COLUMNS": "20", "TERM": "xterm-256color"}
    answer = shop.did(*command.split(), *shlex.split(line), "--json")
    assert answer.err == ""
    assert "\x1b" not in answer.out
    document = answer.document
    assert list(document) == ["answer", "command", "finishlog", "now"]
    assert document["finishlog"] == 1
    assert command.startswith(document["command"])
    assert document["now"] == NOW.replace("+00:00", "Z")
    # Sorted all the way down, and one document with a newline at its end.
    assert answer.out == json.dumps(document, indent=2, sort_keys=True, ensure_ascii=False) + "\n"
    for place, wanted in keys.items():
        found = list(_at(document["answer"], place))
        assert found, f"nothing at {place!r} to look at"
        assert {" ".join(each) for each in found} == {wanted}, place


def _at(value: object, place: str) -> Iterator[dict[str, object]]:
    """Yield the objects at a place such as `lines[].standing`."""
    step, _, rest = place.partition(".")
    name, _, many = step.partition("[")
    if name:
        assert isinstance(value, dict)
        value = value[name]
    for each in value if many else [value]:  # type: ignore[attr-defined]
        if rest:
            yield from _at(each, rest)
        elif each is not None:
            assert isinstance(each, dict)
            yield each


@pytest.mark.parametrize("command", [*CONTRACT, *ALSO])
def test_every_instant_is_utc_and_says_so(shop: Finishlog, command: str):
    line, _ = (CONTRACT | ALSO)[command]
    shop.environment = {"FINISHLOG_ZONE": "Australia/Adelaide"}
    document = shop.did(*command.split(), *shlex.split(line), "--json").document
    instants = [x for x in _strings(document) if LOOKS_LIKE_ONE.match(x)]
    assert instants
    assert [x for x in instants if not INSTANT.fullmatch(x)] == []


def _strings(value: object) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict | list):
        for each in value.values() if isinstance(value, dict) else value:
            yield from _strings(each)


@pytest.mark.parametrize("words", [["when", "nothing"], ["log", "case", "topcoat", "--at", "soon"]])
def test_a_refusal_is_on_stderr_only(shop: Finishlog, words: list[str]):
    answer = shop(*words, "--json")
    assert answer.code in {errors.USAGE, errors.NO_SUCH_THING}
    assert answer.out == ""
    assert len(answer.err.splitlines()) == 1


def test_at_a_terminal_it_is_the_same_document(shop: Finishlog):
    session = shown(shop, "ready", "--json", columns=40)
    assert session.screen.replace("\r\n", "\n") == shop.did("ready", "--json").out


def test_numbers_carry_their_unit_in_the_key_and_are_si(shop: Finishlog):
    shop.did("shop", "units", "F")
    room = shop.did("ready", "--json").document["answer"]["rooms"][0]
    assert room["air"] == {"temperature_c": 17.2, "humidity_pct": 58.0}
    assert "63 °F" in shop.did("ready").out
