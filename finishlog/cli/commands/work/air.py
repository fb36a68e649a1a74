"""The air of a room: air, and air import."""

from __future__ import annotations

import shlex
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import At
from finishlog.cli.answering.run import Run
from finishlog.core.air.psychrometrics import Air
from finishlog.core.measure.units import Temperature
from finishlog.errors import UsageFault

# `-2C` is a temperature, not an option.
_SETTINGS = {"ignore_unknown_options": True}

_IMPORT = "import"
# What may stand beside the figures of an air.
_SAID_OF_AIR = frozenset({"rh", "rh:", "humidity", "humidity:", "c", "f", "wet"})

# Of a file alone.
TimeColumn = Annotated[
    str | None, typer.Option("--time", metavar="COLUMN", help="Of a file: its column of times.")
]
TemperatureColumn = Annotated[
    str | None, typer.Option("--temperature", metavar="COLUMN", help="Of a file.")
]
HumidityColumn = Annotated[
    str | None, typer.Option("--humidity", metavar="COLUMN", help="Of a file.")
]
FileUnit = Annotated[
    Temperature | None, typer.Option("--unit", help="Of a file that does not say it.")
]
FileZone = Annotated[
    str | None,
    typer.Option("--zone", help="Of a file's times, if not the shop's: Europe/Berlin, +01:00."),
]
TimeFormat = Annotated[
    str | None,
    typer.Option(
        "--time-format", metavar="FORM", help="Of a file: %d.%m.%Y %H:%M, as strptime has it."
    ),
]
DryRun = Annotated[
    bool, typer.Option("--dry-run", help="Say what a file holds, and leave no trace.")
]


def air(
    here: Run,
    words: Annotated[
        list[str],
        typer.Argument(
            metavar="TEMPERATURE HUMIDITY | import FILE",
            help="17.2C 58%; 60F alone; 21C wet 17C; import FILE: a data logger's CSV.",
        ),
    ],
    room: Annotated[
        str | None, typer.Option("--room", help="Which room, if there are more.")
    ] = None,
    at: At = None,
    wet_bulb: Annotated[
        str | None, typer.Option("--wet-bulb", metavar="TEMPERATURE", help="17C: no humidity then.")
    ] = None,
    time: TimeColumn = None,
    temperature: TemperatureColumn = None,
    humidity: HumidityColumn = None,
    unit: FileUnit = None,
    zone: FileZone = None,
    time_format: TimeFormat = None,
    dry_run: DryRun = False,
) -> Answered:
    """Log the air of a room, or take in a data logger's file."""
    of_a_file = {
        "--time": time,
        "--temperature": temperature,
        "--humidity": humidity,
        "--unit": unit,
        "--zone": zone,
        "--time-format": time_format,
        "--dry-run": dry_run or None,
    }
    if words[0] == _IMPORT:
        _no_others({"--at": at, "--wet-bulb": wet_bulb}, "a file has its own")
        if len(words) != 2:
            raise UsageFault("name one file to import", "finishlog air import FILE.csv")
        from finishlog.cli.commands.work.air_import import import_air

        return import_air(
            here,
            Path(words[1]),
            columns={"time": time, "temperature": temperature, "humidity": humidity},
            unit=unit,
            zone=zone,
            time_format=time_format,
            room=room,
            only_try=dry_run,
        )
    _no_others(of_a_file, "it is of a file: finishlog air import FILE.csv")
    _no_room_among(words, here)
    return _one_reading(here, " ".join(words), wet_bulb, at, room)


def _one_reading(
    here: Run, text: str, wet_bulb: str | None, at: str | None, room: str | None
) -> Answered:
    from finishlog.acts.air.air import log_air
    from finishlog.cli.pages.shop.air_page import air_page
    from finishlog.cli.typed.figures.measures import air as read_air
    from finishlog.cli.typed.figures.measures import (
        air_by_wet_bulb,
        temperature_alone,
        wet_bulb_said,
    )

    bulbs = wet_bulb_said(text, wet_bulb)
    typed: Air | float
    if bulbs is None:
        alone = temperature_alone(text, here.temperature)
        typed, wet_c = read_air(text, here.temperature) if alone is None else alone, None
    else:
        typed, wet_c = air_by_wet_bulb(*bulbs, here.temperature)
    answer = log_air(here.context, air=typed, at=here.moment(at), room=room, wet_bulb_c=wet_c)
    return Answered(answer, lambda: air_page(answer, here.clock))


def _no_room_among(words: Sequence[str], here: Run) -> None:
    """Refuse a room that stands before or behind an air: it goes with --room."""
    from finishlog.cli.typed.figures.measures import air as read_air

    for room, rest in ((words[0], words[1:]), (words[-1], words[:-1])):
        if len(rest) < 2 or not room[:1].isalpha() or room.casefold() in _SAID_OF_AIR:
            continue
        try:
            read_air(" ".join(rest), here.temperature)
        except UsageFault:
            continue
        line = shlex.join(["finishlog", "air", *rest, "--room", room])
        raise UsageFault(
            f"{room!r} is no air; a room goes with --room", f"{line}{_made(here, room)}"
        )


def _made(here: Run, room: str) -> str:
    """Say how a room is put on record first, if it is none."""
    from finishlog.asks.things.called_so import called_so
    from finishlog.core.shop.things import ThingKind

    if ThingKind.ROOM in called_so(here.context, room):
        return ""
    return f" (it is not on record yet: {shlex.join(['finishlog', 'room', 'new', room])})"


def _no_others(options: Mapping[str, object], why: str) -> None:
    """Refuse options that would be dropped without a word."""
    for name, value in options.items():
        if value is not None:
            raise UsageFault(f"{name} does not belong here", why)


def register(app: typer.Typer) -> None:
    """Add the command."""
    command(app, "air", settings=_SETTINGS)(air)
