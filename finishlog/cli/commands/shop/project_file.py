"""Read a project file: TOML, written by hand.

project = "cabinet"
due = 2026-12-05

[rooms.finishing]
night = "13C"

[products.topcoat]
class = "waterborne-clear"
recoat = "3h"

[steps]
clear = ["sand", "sealer", "topcoat*3"]

[parts.doors]
count = 2
species = "ash"
faces = ["front", "back:hidden", "edges:edge"]
steps = "clear"
"""

from __future__ import annotations

import difflib
import tomllib
from collections.abc import Collection, Iterator, Mapping
from datetime import UTC, date, datetime, time
from pathlib import Path
from typing import NoReturn

from msgspec.structs import replace

from finishlog.acts.things.own_rules import SaysTyped
from finishlog.acts.things.parts import PartTyped
from finishlog.acts.things.products import ProductTyped, sheen_word
from finishlog.acts.things.project_file import (
    PartInFile,
    ProductInFile,
    ProjectFile,
    RoomInFile,
    SaysInFile,
    StepsInFile,
    at_place,
)
from finishlog.cli.answering.run import Run
from finishlog.cli.typed.figures.measures import temperature
from finishlog.cli.typed.files.labels import product_typed, says_typed
from finishlog.cli.typed.files.typed_file import bytes_of
from finishlog.cli.typed.times.moments import due_moment
from finishlog.core.finish.stages import ON_A_LABEL
from finishlog.core.log.when import OUR_YEARS
from finishlog.core.published.care import UsedFor
from finishlog.errors import BadData

TOP = ("project", "due", "for", "note", "rooms", "products", "steps", "parts")
ROOM = ("night", "note")
LABEL = (*(stage.value for stage in ON_A_LABEL), "window")
PRODUCT = ("class", *LABEL, "label-air", "sheen", "note", "says")
_SEVERAL = ("not-over", "needs", "not-on", "overrule")
_COUNTS = ("coats-a-day", "most-coats")
_TIMES = ("wait", "window", "label-air")
SAYS = (*_SEVERAL, *_COUNTS, *_TIMES, "over", "because", "thickest", "no-window")
PART = ("count", "species", "faces", "steps", "room", "of", "board", "like", "old_finish", "note")

_EXAMPLE: dict[type, str] = {
    str: 'write text in quotes: "ash"',
    int: "write a number: 12",
    bool: "write true or false",
    list: 'write texts in brackets: ["front", "back:hidden"]',
    dict: "write it as a table: [parts.doors]",
}


class _Table:
    """One table of the file: gives its values by key, and says where a fault is."""

    def __init__(
        self, file: str, place: str, values: Mapping[str, object], known: Collection[str]
    ) -> None:
        self.file, self.place, self.values = file, place, values
        for key in values:
            if key not in known:
                near = difflib.get_close_matches(key, known, n=1) or [", ".join(known)]
                self.refuse(key, "no such key", f"did you mean {near[0]}?")

    def refuse(self, key: str, wrong: str, hint: str) -> NoReturn:
        """Say what is wrong at a key."""
        raise BadData(f"{self.file}: {self.at(key)}: {wrong}", hint)

    def at(self, key: str) -> str:
        """Name a key with its table."""
        return f"[{self.place}] {key}" if self.place else key

    def text(self, key: str) -> str | None:
        """Return a text; None when the key is missing."""
        value = self._of(key, str)
        return None if value is None else str(value)

    def count(self, key: str) -> int:
        """Return a whole number; 1 when the key is missing."""
        value = self._of(key, int)
        return value if isinstance(value, int) else 1

    def yes(self, key: str) -> bool:
        """Return a yes or no; no when the key is missing."""
        return bool(self._of(key, bool))

    def texts(self, key: str) -> tuple[str, ...]:
        """Return some texts; none when the key is missing."""
        found = self._of(key, list)
        texts = found if isinstance(found, list) else []
        if not all(isinstance(each, str) for each in texts):
            self.refuse(key, "not all of it is text", _EXAMPLE[list])
        return tuple(texts)

    def names(self, key: str) -> Mapping[str, object]:
        """Return what stands by its name in a table; nothing when the table is missing."""
        found = self._of(key, dict)
        return found if isinstance(found, dict) else {}

    def tables(self, key: str, known: Collection[str]) -> Iterator[tuple[str, _Table]]:
        """Yield the named tables of a table."""
        for name, values in self.names(key).items():
            if not isinstance(values, dict):
                self.refuse(f"{key}.{name}", "this is no table", f"write [{key}.{name}]")
            yield name, _Table(self.file, f"{key}.{name}", values, known)

    def rows(self, key: str, known: Collection[str]) -> Iterator[_Table]:
        """Yield the tables of a list of tables; none where the key is missing."""
        found = self._of(key, list)
        for values in found if isinstance(found, list) else []:
            if not isinstance(values, dict):
                self.refuse(key, "this is no table", f"write [[{self.at(key)}]]")
            yield _Table(self.file, f"{self.place}.{key}", values, known)

    def _of(self, key: str, kind: type) -> object:
        value = self.values.get(key)
        # A bool is an int to Python, not to a person.
        if value is not None and type(value) is not kind:
            self.refuse(key, f"{value!r} cannot stand here", _EXAMPLE[kind])
        return value


def read_project_file(path: Path, here: Run) -> ProjectFile:
    """Read a file; BadData says where and what is wrong, NotFound that there is no such file."""
    try:
        values = tomllib.loads(bytes_of(path).decode("utf-8"))
    except UnicodeDecodeError:
        raise BadData(f"{path.name} is no text", "write the project in a text file") from None
    except RecursionError:
        raise BadData(f"{path.name}: too many [ inside one another", "one [ ] is enough") from None
    except ValueError as fault:
        # Of TOML, or of a number with more digits than Python reads.
        raise BadData(f"{path.name}: {fault}", "texts stand in quotes, tables in [ ]") from None
    top = _Table(path.name, "", values, TOP)
    if not top.text("project") and any(key in values for key in ("parts", "due", "note")):
        top.refuse("project", "parts need a project", 'write at the top: project = "cabinet"')
    return ProjectFile(
        file=path.name,
        project=top.text("project") or "",
        due=_due(top, here),
        used_for=_used_for(top),
        note=top.text("note"),
        rooms=tuple(_room(name, t, here) for name, t in top.tables("rooms", ROOM)),
        products=tuple(_product(name, t, here) for name, t in top.tables("products", PRODUCT)),
        steps=tuple(_steps(top)),
        parts=tuple(_part(name, t) for name, t in top.tables("parts", PART)),
    )


def _used_for(top: _Table) -> UsedFor | None:
    """Read whom it is for, where that makes a difference."""
    typed = top.text("for")
    known = {each.value: each for each in UsedFor}
    if typed is not None and typed not in known:
        top.refuse("for", f"{typed!r} is nobody known here", f"write one of: {', '.join(known)}")
    return known[typed] if typed else None


def _due(top: _Table, here: Run) -> datetime | None:
    """Read the date: one of TOML's own is due by its end, also when it is past; or words."""
    zone, value = here.clock.zone, top.values.get("due")
    if isinstance(value, date) and value.year not in OUR_YEARS:
        top.refuse("due", f"{value} is not of our time", f"write the year: {here.clock.now.year}")
    if isinstance(value, datetime):
        return (value if value.tzinfo else value.replace(tzinfo=zone)).astimezone(UTC)
    if isinstance(value, date):
        return datetime.combine(value, time(23, 59), zone).astimezone(UTC)
    words = top.text("due")
    with at_place(top.file, "due"):
        return due_moment(words, here.clock.now, zone) if words else None


def _room(name: str, table: _Table, here: Run) -> RoomInFile:
    night = table.text("night")
    with at_place(table.file, table.at("night")):
        coldest = temperature(night, here.temperature) if night else None
    return RoomInFile(name, coldest, table.text("note"))


def _product(name: str, table: _Table, here: Run) -> ProductInFile:
    finish = table.text("class")
    if finish is None:
        table.refuse("class", "it is missing", "finishlog class list shows the classes")
    shines = table.text("sheen")
    with at_place(table.file, table.at("sheen")):
        sheen = sheen_word(shines) if shines else None
    typed = ProductTyped(name, finish, {}, None, table.text("note") or "", sheen)
    for key in (key for key in LABEL if key in table.values):
        with at_place(table.file, table.at(key)):
            said = {key: table.text(key), "label-air": table.text("label-air")}
            read = product_typed(name, typed.class_typed, said, here.temperature)
        label = {**typed.label, **read.label}
        typed = replace(typed, label=label, window=read.window or typed.window)
    says = tuple(_says(each, here) for each in table.rows("says", SAYS))
    return ProductInFile(typed, frozenset(table.values), says)


def _says(table: _Table, here: Run) -> SaysInFile:
    """Read one thing that is said of a product: with the words of the command's options."""
    several = {key: table.texts(key) for key in _SEVERAL}
    counts = {key: table.count(key) for key in _COUNTS if key in table.values}
    words = {key: table.text(key) for key in (*_TIMES, "over", "because", "thickest")}
    no_window = {"no-window": table.yes("no-window")}
    given = {**several, **counts, **words, **no_window}
    options = {key.replace("-", "_"): value for key, value in given.items() if value}
    said = SaysTyped(
        several["not-over"],
        several["needs"],
        words["over"] or "",
        coats_a_day=counts.get("coats-a-day"),
        most_coats=counts.get("most-coats"),
        not_on=several["not-on"],
        overrule=several["overrule"],
        because=words["because"] or "",
    )
    with at_place(table.file, table.place):
        return SaysInFile(says_typed(said, {**words, **no_window}, here.temperature), options)


def _steps(top: _Table) -> Iterator[StepsInFile]:
    named = _Table(top.file, "steps", top.names("steps"), top.names("steps"))
    for name in named.values:
        yield StepsInFile(name, named.texts(name))


def _part(name: str, table: _Table) -> PartInFile:
    typed = PartTyped(
        path=name,
        count=table.count("count"),
        species=table.text("species"),
        faces=table.texts("faces"),
        steps=table.text("steps"),
        room=table.text("room"),
        needs=table.texts("of"),
        board=table.yes("board"),
        note=table.text("note") or "",
        like=table.text("like"),
        old_finish=table.text("old_finish"),
    )
    return PartInFile(typed, frozenset(table.values))
