"""Import a data logger's file: read it, take it in, say what was made of it."""

from __future__ import annotations

import re
import sys
from collections.abc import Mapping
from contextlib import suppress
from datetime import UTC, datetime, tzinfo
from pathlib import Path
from zoneinfo import ZoneInfo

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.run import Run
from finishlog.cli.terminal.talk import ask, at_a_terminal, say
from finishlog.cli.typed.files.typed_file import bytes_of
from finishlog.core.logger.file import HowToRead, read_logger_file
from finishlog.core.logger.table import UnreadableFile
from finishlog.core.measure.units import Temperature
from finishlog.errors import BadData, UsageFault

# More lines than this take a moment, which a person at a terminal is told.
_MANY = 20_000


def import_air(
    here: Run,
    path: Path,
    *,
    columns: Mapping[str, str | None],
    unit: Temperature | None,
    zone: str | None,
    time_format: str | None,
    room: str | None,
    only_try: bool,
) -> Answered:
    """Take in a file; BadData names its line and what to type when it cannot be read."""
    from finishlog.acts.air.air_import import take_in_air
    from finishlog.cli.pages.shop.air_page import air_import_page

    how = HowToRead(
        now=here.clock.now,
        zone=_zone(zone) if zone else here.clock.zone,
        usual_unit=here.temperature,
        unit=unit,
        columns={kind: heading for kind, heading in columns.items() if heading},
        time_format=_checked(time_format),
    )
    text = _text(path)
    if (lines := text.count("\n")) > _MANY and sys.stderr.isatty():
        say(f"finishlog: reading {lines} lines ...")
    try:
        file = read_logger_file(text, how)
    except UnreadableFile as fault:
        raise BadData(f"{path.name}: {fault.message}", fault.hint) from None
    if file.read_as.zone and not (zone or only_try):
        _whose_clock(path.name, file.read_as.zone)
    answer = take_in_air(here.context, file=file, file_name=path.name, room=room, only_try=only_try)
    return Answered(answer, lambda: air_import_page(answer, here.clock), called="air import")


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
        with suppress(UnicodeDecodeError):
            if "\0" not in (text := raw.decode(code)):
                return text
    raise BadData(f"{path.name} is no text", "export the readings as CSV")


def _zone(typed: str) -> tzinfo:
    """Read a zone: its name, or an offset."""
    with suppress(ValueError):
        if (offset := datetime.strptime(typed, "%z").tzinfo) is not None:
            return offset
    try:
        return ZoneInfo(typed)
    except (KeyError, ValueError, OSError):
        hint = "type --zone Europe/Berlin, --zone UTC or --zone +01:00"
        raise UsageFault(f"there is no time zone {typed!r}", hint) from None


def _checked(form: str | None) -> str | None:
    """Refuse a form of times that does not read what it writes."""
    try:
        if form:
            tried = datetime(2000, 1, 31, 13, tzinfo=UTC)
            datetime.strptime(tried.strftime(form), form).replace(tzinfo=UTC)
    except (ValueError, re.error):
        hint = "type --time-format '%d.%m.%Y %H:%M', with the letters of strptime"
        raise UsageFault(f"{form!r} is no form of a time", hint) from None
    return form
