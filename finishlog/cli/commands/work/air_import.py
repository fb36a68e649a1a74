"""Import a data logger's file: read it, take it in, say what was made of it."""

from __future__ import annotations

import re
import sys
from datetime import UTC, timedelta, timezone, tzinfo
from pathlib import Path
from zoneinfo import ZoneInfo

from msgspec import Struct

from finishlog.cli.answering.answer import show_answer
from finishlog.cli.answering.context import Desk
from finishlog.cli.terminal.talk import ask, at_a_terminal, say
from finishlog.cli.typed.files.typed_file import bytes_of
from finishlog.core.logger.file import HowToRead, read_logger_file
from finishlog.core.logger.table import Chosen, UnreadableFile
from finishlog.core.measure.units import Temperature
from finishlog.errors import BadData, UsageFault

# More lines than this take a moment, which a person at a terminal is told.
_MANY = 20_000
_OFFSET = r"(?:UTC|GMT)?(?P<sign>[+-])(?P<h>\d{1,2})(?::?(?P<m>[0-5]\d))?"


class FileTyped(Struct, frozen=True):
    """What the person said of a file; None: the file or the shop says it."""

    time: str | None = None
    temperature: str | None = None
    humidity: str | None = None
    unit: Temperature | None = None
    zone: str | None = None
    day_first: bool | None = None


def import_air(
    here: Desk, path: Path, typed: FileTyped, *, room: str | None, only_try: bool, json: bool
) -> None:
    """Take in a file; BadData names its line and what to type when it cannot be read."""
    from finishlog.acts.air.air_import import take_in_air
    from finishlog.cli.pages.shop.air_page import air_import_page

    how = HowToRead(
        now=here.clock.now,
        zone=_zone(typed.zone) if typed.zone else here.clock.zone,
        usual_unit=here.temperature,
        unit=typed.unit,
        columns=Chosen(typed.time, typed.temperature, typed.humidity),
        day_first=typed.day_first,
        zone_told=typed.zone is not None,
    )
    text = _text(path)
    lines = text.count("\n")
    if lines > _MANY and sys.stderr.isatty():
        say(f"finishlog: reading {lines} lines ...")
    try:
        file = read_logger_file(text, how)
    except UnreadableFile as fault:
        raise BadData(f"{path.name}: {fault.message}", fault.hint) from None
    if not (file.zone_told or only_try):
        _whose_clock(path.name, file.read_as.zone)
    answer = take_in_air(
        here.database,
        here.clock,
        here.words,
        file=file,
        file_name=path.name,
        room=room,
        only_try=only_try,
    )
    show_answer(
        here,
        "air import",
        answer,
        json,
        lambda: air_import_page(answer, here.clock, here.temperature),
    )


def _whose_clock(name: str, zone: str) -> None:
    """Ask whether times that say no zone are of the shop's clock; a script has to say it."""
    message = f"the times of {name} do not say of which zone they are"
    if not at_a_terminal():
        hint = f"by the clock here: --zone {zone}; a logger that keeps winter time: --zone +01:00"
        raise UsageFault(message, hint)
    if not ask(f"{message}. By the clock of {zone}? [y/N]").lower().startswith("y"):
        raise UsageFault("nothing was recorded", "say whose clock: --zone UTC, --zone +01:00")


def _text(path: Path) -> str:
    """Read a file's text: UTF-8, UTF-16 with its mark, or what older Windows programs write."""
    raw = bytes_of(path)
    marked = raw.startswith((b"\xff\xfe", b"\xfe\xff"))
    for code in ("utf-16",) if marked else ("utf-8-sig", "cp1252"):
        try:
            text = raw.decode(code)
        except UnicodeDecodeError:
            continue
        if "\0" not in text:
            return text
    raise BadData(f"{path.name} is no text", "export the readings as CSV")


def _zone(typed: str) -> tzinfo:
    """Read a zone: its name, UTC, or an offset."""
    if typed.upper() in {"UTC", "GMT", "Z"}:
        return UTC
    found = re.fullmatch(_OFFSET, typed.strip(), re.IGNORECASE)
    if found and int(found["h"]) < 15:
        away = timedelta(hours=int(found["h"]), minutes=int(found["m"] or 0))
        return timezone(away if found["sign"] == "+" else -away)
    try:
        return ZoneInfo(typed)
    except (KeyError, ValueError, OSError):
        raise UsageFault(
            f"there is no time zone {typed!r}", "type --zone Europe/Berlin or --zone +01:00"
        ) from None
