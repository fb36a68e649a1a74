"""Sample data: commands in a TOML file, and project files to load, each so long before now."""

from __future__ import annotations

import shlex
import tomllib
from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

from msgspec import Struct

from finishlog.cli.typed.times.durations import length
from finishlog.errors import BadData


class Typed(Struct, frozen=True):
    """One command as it was typed, and how long before now."""

    ago: timedelta
    words: tuple[str, ...]

    @property
    def line(self) -> str:
        """The command as a person would type it."""
        return f"finishlog {shlex.join(self.words)}"


def folder() -> Path:
    """Find the sample data: in the wheel, else beside the package."""
    package = Path(__file__).resolve().parents[3]
    for found in (package / "_sample_data", package.parent / "sample_data"):
        if (found / "shop.toml").is_file():
            return found
    raise BadData("the sample data did not come with this installation", "install finishlog again")


def commands(path: Path) -> Iterator[Typed]:
    """Read the commands of a file in their order; BadData names what is wrong."""
    try:
        entries = tomllib.loads(path.read_text(encoding="utf-8"))["entry"]
        for entry in entries:
            ago = length(entry["ago"])
            if ago is None:
                raise ValueError(f"ago = {entry['ago']!r} is no length of time")
            if "load" in entry:
                yield Typed(ago, ("project", "load", str(path.with_name(entry["load"]))))
            for line in entry.get("do", ()):
                yield Typed(ago, tuple(shlex.split(line)))
    except (KeyError, TypeError, ValueError) as fault:
        raise BadData(f"{path.name}: {fault}", "see the files beside it for the form") from None
