"""Read published figures from TOML, saying which file and key is wrong when one is."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from enum import StrEnum
from itertools import takewhile
from typing import Any, TypeVar

from finishlog.core.air.psychrometrics import STANDARD_AIR, Air
from finishlog.core.finish.classes import Figure, Limit, Range

Choice = TypeVar("Choice", bound=StrEnum)
Kind = TypeVar("Kind")


class Table:
    """One TOML table that knows where it stands and which of its keys were read."""

    __slots__ = ("_data", "_file", "_unread", "_where")

    def __init__(self, file: str, where: str, data: Mapping[str, Any]) -> None:
        self._file = file
        self._where = where
        self._data = data
        self._unread = set(data)

    def bad(self, key: str, why: str) -> ValueError:
        """Build the error that names the file and the key."""
        return ValueError(f"{self._file}: {self._where}{key}: {why}")

    def _get(self, key: str, kind: type[Kind], what: str) -> Kind:
        self._unread.discard(key)
        if key not in self._data:
            raise self.bad(key, "missing")
        value = self._data[key]
        if not isinstance(value, kind):
            raise self.bad(key, f"must be {what}")
        return value

    def __contains__(self, key: str) -> bool:
        return key in self._data

    def text(self, key: str, default: str | None = None) -> str:
        """Return a text; `default` when the key is absent and a default is given."""
        if default is not None and key not in self._data:
            return default
        return self._get(key, str, "a text")

    def number(self, key: str) -> float:
        """Return a number."""
        value = self._get(key, object, "a number")
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise self.bad(key, "must be a number")
        return float(value)

    def flag(self, key: str, default: bool | None = None) -> bool:
        """Return true or false; `default` when the key is absent and a default is given."""
        if default is not None and key not in self._data:
            return default
        return self._get(key, bool, "true or false")

    def words(self, key: str) -> tuple[str, ...]:
        """Return a list of texts, empty when absent."""
        if key not in self._data:
            return ()
        found = self._get(key, list, "a list of texts")
        if not all(isinstance(word, str) for word in found):
            raise self.bad(key, "must be a list of texts")
        return tuple(found)

    def choice(self, key: str, of: type[Choice]) -> Choice:
        """Return one of a closed set of words."""
        return self._one_of(key, of, self.text(key))

    def choices(self, key: str, of: type[Choice]) -> tuple[Choice, ...]:
        """Return several of a closed set of words."""
        return tuple(self._one_of(key, of, word) for word in self.words(key))

    def _one_of(self, key: str, of: type[Choice], word: str) -> Choice:
        try:
            return of(word)
        except ValueError:
            known = ", ".join(of)
            raise self.bad(key, f"{word!r} is none of: {known}") from None

    def table(self, key: str) -> Table:
        """Return a table inside this one."""
        return Table(self._file, f"{self._where}{key}.", self._get(key, dict, "a table"))

    def tables(self, key: str) -> tuple[Table, ...]:
        """Return a list of tables, empty when absent."""
        if key not in self._data:
            return ()
        found = self._get(key, list, "a list of tables")
        if not all(isinstance(one, dict) for one in found):
            raise self.bad(key, "must be a list of tables")
        return tuple(
            Table(self._file, f"{self._where}{key}[{n}].", one) for n, one in enumerate(found)
        )

    def named(self, key: str) -> dict[str, Table]:
        """Return the tables inside a table by name, empty when absent."""
        if key not in self._data:
            return {}
        inner = self.table(key)
        return {name: inner.table(name) for name in inner._data}

    def nothing_else(self) -> None:
        """Refuse keys that nobody asked for: a misspelt figure must not vanish."""
        for key in sorted(self._unread):
            raise self.bad(key, "is not known here")


def read(path: str) -> Table:
    """Read one TOML file; ValueError names it when it is not TOML."""
    with open(path, encoding="utf-8") as file:
        return _parsed(path, file.read())


def read_top(path: str) -> Table:
    """Read what stands before the first table of a file: names cost no figures."""
    with open(path, encoding="utf-8") as file:
        return _parsed(path, "".join(takewhile(lambda line: not line.startswith("["), file)))


def _parsed(path: str, text: str) -> Table:
    name = path.rpartition("/")[2]
    try:
        return Table(name, "", tomllib.loads(text))
    except tomllib.TOMLDecodeError as error:
        raise ValueError(f"{name}: {error}") from None


def figure(of: Table) -> Figure:
    """Read a range of hours with its source, the air it holds at, and differing readings."""
    low, typical, high = of.number("low_h"), of.number("typical_h"), of.number("high_h")
    if not 0 <= low <= typical <= high:
        raise of.bad("low_h", f"{low}, {typical}, {high} are not in order")
    at = Air(of.number("at_c"), of.number("at_rh_pct")) if "at_c" in of else STANDARD_AIR
    also = tuple(figure(reading) for reading in of.tables("also"))
    found = Figure(low, typical, high, of.text("source"), at, of.text("note", ""), also)
    of.nothing_else()
    return found


def limit(of: Table) -> Limit:
    """Read one value with its source."""
    found = Limit(of.number("value"), of.text("source"))
    of.nothing_else()
    return found


def between(of: Table) -> Range:
    """Read a low and a high value with their source and the readings that differ."""
    low, high = of.number("low"), of.number("high")
    if not 0 <= low <= high:
        raise of.bad("low", f"{low}, {high} are not in order")
    also = tuple(between(reading) for reading in of.tables("also"))
    found = Range(low, high, of.text("source"), of.text("note", ""), also)
    of.nothing_else()
    return found


def wait(of: Table) -> Figure | None:
    """Read the hours of a rule, `wait_low_h` to `wait_high_h`; None when it has none."""
    if "wait_low_h" not in of:
        return None
    low, high = of.number("wait_low_h"), of.number("wait_high_h")
    if not 0 <= low <= high:
        raise of.bad("wait_low_h", f"{low}, {high} are not in order")
    return Figure(low, high, high, of.text("wait_source"))
