"""Read the facts from TOML: what a key is, and may be, stands with the values (core.published)."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path
from typing import Any

import msgspec

from finishlog.core.published.facts import Facts
from finishlog.core.rules.on_record import facts_on_record

DATA = Path(__file__).parent / "data"


def read_facts(folder: Path = DATA) -> Facts:
    """Read all files of a folder; ValueError names file and key of what is wrong."""
    return msgspec.convert(read_tables(folder), Facts)


def read_tables(folder: Path = DATA) -> dict[str, Any]:
    """Read what all files of a folder say, in the shape of `Facts`, and refuse what is wrong."""
    told: dict[str, Any] = {path.stem: _table(path) for path in folder.glob("*.toml")}
    level = told["glues"].pop("sunken_joint")
    # What is no table of figures but a list, or named things, stands under the file's own name.
    for name, table in told.items():
        told[name] = table.pop(name, table)
        if told[name] is not table and table:
            raise ValueError(f"{name}.toml: {', '.join(table)}: not known here")
    told["classes"] = {path.stem: _table(path) for path in sorted(folder.glob("classes/*.toml"))}
    for names, key in (("classes", "key"), ("carriers", "key"), ("sources", "id")):
        told[names] = {name: {**of, key: name} for name, of in told[names].items()}
    told["glues"] = [
        {**glue, "level": level} if glue.get("water_based") else glue for glue in told["glues"]
    ]
    if error := _error(told):
        raise ValueError(_placed(error, told))
    named = {fact for each in told["unread"] for fact in each["facts"]}
    if unknown := sorted(named.difference(facts_on_record())):
        raise ValueError(f"unread.toml: {', '.join(unknown)}: no fact on record")
    return told


def _table(path: Path) -> dict[str, Any]:
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except tomllib.TOMLDecodeError as error:
        raise ValueError(f"{path.name}: {error}") from None


def _error(told: dict[str, Any]) -> str:
    try:
        msgspec.convert(told, Facts)
    except msgspec.ValidationError as error:
        return str(error)
    return ""


def _placed(error: str, told: dict[str, Any]) -> str:
    """Say in which file and under which key it is wrong; `told` keeps little but that."""
    found = re.fullmatch(r"(.*) - at (?:`key` in )?`\$(.*)`", error)
    if found is None:
        return error
    at: Any = told
    place = ""
    for name, number in re.findall(r"\.([\w-]+)|\[(?:([0-9]+)|\.\.\.)\]", found[2]):
        # Of named things the path says no name: it is the one that is wrong by itself.
        key = int(number) if number else name or _wrong_by_itself(at, error, told)
        at, place = at[key], place + (f"[{key}]" if number else f".{key}")
    parts = re.fullmatch(r"(?:\.classes)?\.([\w-]+)\.?(.*)", place)
    return ": ".join(filter(None, (f"{parts[1]}.toml", parts[2], found[1]))) if parts else error


def _wrong_by_itself(at: dict[str, Any], error: str, told: dict[str, Any]) -> str:
    """Find the one of named things that makes this error, and leave it alone with it."""
    for key, value in dict(at).items():
        at.clear()
        at[key] = value
        if _error(told) == error:
            return key
    raise AssertionError(error)
