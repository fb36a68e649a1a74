"""The words in the house: the project's alone, with no brand, address or machine in them."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

from finishlog.cli.app import GROUPS
from tests.rows import every_row

ROOT = Path(__file__).parents[1]
FOLDERS = ("finishlog", "tests", "migrations", "sample_data", ".build", ".ci")
KINDS = {".py", ".toml", ".csv", ".md", ""}

# Put together from halves, so that this file does not hold what it looks for.
ADDRESS = re.compile("|".join(("https?:" + "//", r"\bwww" + r"\.", r"\b[\w.]+@[\w-]+\.[a-z]{2,}")))
PLACES = ("home", "root", "tmp", "work", "usr", "opt", "var", "Users", "mnt", "private")
MACHINE_PATH = re.compile(rf"(?<![\w./)}}])/(?:{'|'.join(PLACES)})/|[A-Z]:\\\\")
UNFINISHED = re.compile("|".join(("TO" + "DO", "FIX" + "ME", r"\bX" + r"XX\b", r"\bHA" + r"CK\b")))
TRADE_SIGN = re.compile("[\N{REGISTERED SIGN}\N{TRADE MARK SIGN}\N{COPYRIGHT SIGN}]")

# Capitals inside a sentence of the sample data that are no name of anything made.
PLAIN_CAPITALS = re.compile(
    r"(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun|Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec|RH|I)\b"
    r"|P\d+\b|[CF]\b"
)


def files() -> Iterator[Path]:
    for folder in FOLDERS:
        for file in sorted((ROOT / folder).rglob("*")):
            if file.is_file() and file.suffix in KINDS and "__pycache__" not in file.parts:
                yield file


FILES = [*files(), *(ROOT / name for name in ("README.md", "pyproject.toml"))]


def name(file: Path) -> str:
    return str(file.relative_to(ROOT))


@pytest.mark.parametrize(
    ("sign", "what"),
    [
        (ADDRESS, "an address on the web or of a person"),
        (MACHINE_PATH, "a path of one machine"),
        (UNFINISHED, "a mark of unfinished work"),
    ],
)
def test_no_file_holds(sign: re.Pattern[str], what: str):
    found = [
        f"{name(file)}:{number}: {what}: {line.strip()}"
        for file in FILES
        for number, line in enumerate(file.read_text(encoding="utf-8").splitlines(), 1)
        if sign.search(line) and not line.startswith("#!")
    ]
    assert found == []


def test_nothing_that_is_shipped_bears_a_trade_mark():
    shipped = [file for file in FILES if not file.is_relative_to(ROOT / "tests")]
    assert [name(f) for f in shipped if TRADE_SIGN.search(f.read_text(encoding="utf-8"))] == []


@pytest.mark.parametrize("file", sorted((ROOT / "sample_data").glob("*.toml")), ids=name)
def test_sample_data_names_nothing_that_has_a_name(file: Path):
    """A brand or a person would stand with a capital; wood, finishes and parts do not."""
    text = file.read_text(encoding="utf-8")
    assert re.search(r"(?i)\binvented\b", text), "it says that it is invented"
    said = [value for value in _strings(tomllib.loads(text)) if not value.startswith("--")]
    odd = [
        word
        for value in said
        for word in re.findall(r"(?<![\w-])[A-Z][\w'-]*", value)
        if not PLAIN_CAPITALS.fullmatch(word)
    ]
    assert odd == []


def _strings(value: object) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for each in value.values():
            yield from _strings(each)
    elif isinstance(value, list):
        for each in value:
            yield from _strings(each)


def test_classes_and_their_other_names_are_generic():
    """A class is called what anybody may call it: no word of its names has a capital inside."""
    odd = []
    for file in sorted((ROOT / "finishlog" / "facts" / "data" / "classes").glob("*.toml")):
        data = tomllib.loads(file.read_text(encoding="utf-8"))
        for called in (data["name"], *data.get("aliases", [])):
            odd += [f"{file.stem}: {w}" for w in str(called).split()[1:] if w[:1].isupper()]
    assert odd == []


def test_the_readme_tells_of_every_command():
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    untold = [
        command
        for names in GROUPS.values()
        for command in names
        if not re.search(rf"(?:\b(?:finishlog|fl) |`){re.escape(command)}\b", readme)
    ]
    assert untold == []


@every_row("command", [c for names in GROUPS.values() for c in names])
def test_every_command_says_what_it_is_for(command: str):
    from typer.main import get_command

    from finishlog.cli.app import command_line

    found = get_command(command_line()).commands[command]  # type: ignore[attr-defined]
    assert found.get_short_help_str(60)
    for below in getattr(found, "commands", {}).values():
        assert below.get_short_help_str(60)


def test_every_command_stands_in_one_group():
    from typer.main import get_command

    from finishlog.cli.app import command_line

    listed = [command for names in GROUPS.values() for command in names]
    assert sorted(listed) == sorted(get_command(command_line()).commands)  # type: ignore[attr-defined]
