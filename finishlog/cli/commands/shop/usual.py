"""What rooms are usually like: room usual, room heating."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.command import command
from finishlog.cli.answering.run import Run
from finishlog.errors import UsageFault

Season = Annotated[
    str | None,
    typer.Option("--season", metavar="MONTHS", help="Only in these months: nov-mar."),
]

# Two weeks hold every day of the week twice.
DAYS_READ = 14


def room_usual(
    here: Run,
    words: Annotated[
        list[str] | None,
        typer.Argument(
            metavar="[ROOM] [HOUR:AIR]...", help="shop 0:13C/65% 7:12C 17:18C/55%; or none."
        ),
    ] = None,
    season: Season = None,
    as_read: Annotated[
        bool, typer.Option("--as-read", help="Take it from the readings on record.")
    ] = False,
    days: Annotated[
        int | None,
        typer.Option("--days", min=1, max=366, help="With --as-read: of how many days, else 14."),
    ] = None,
) -> Answered:
    """Say what a room is like on a usual day, from now on; without hours, show it."""
    from finishlog.acts.air.usual_day import set_usual_day, set_usual_day_as_read
    from finishlog.asks.things.usual_day import room_usual as show
    from finishlog.cli.pages.shop.heating_page import usual_page, usual_set_page
    from finishlog.cli.typed.times.usual_words import (
        DAY_EXAMPLE,
        HOURS_BEGIN,
        read_hours,
        read_season,
        room_and,
    )

    name, hours = room_and(words or [], HOURS_BEGIN)
    months = read_season(season) if season else None
    if as_read and hours:
        raise UsageFault("--as-read and hours are two ways", "say one of them")
    if days is not None and not as_read:
        raise UsageFault("--days needs --as-read", "finishlog room usual ROOM --as-read --days 30")
    if season and not (as_read or hours):
        raise UsageFault("--season needs the hours", f"finishlog room usual ROOM {DAY_EXAMPLE}")
    if not (as_read or hours):
        known = show(here.context, name)
        return Answered(known, lambda: usual_page(known))
    if as_read:
        of_days = days or DAYS_READ
        answer = set_usual_day_as_read(here.context, name, of_days, months)
    else:
        points = read_hours(hours, here.temperature)
        answer = set_usual_day(here.context, name, points, months)
    return Answered(answer, lambda: usual_set_page(answer))


def room_heating(
    here: Run,
    words: Annotated[
        list[str],
        typer.Argument(
            metavar="[ROOM] [DAYS] FROM-UNTIL [TEMPERATURE]",
            help="shop mon-fri 16-23 18C; or none.",
        ),
    ],
    season: Season = None,
) -> Answered:
    """Say when a room is usually heated and how warm it gets, from now on."""
    from finishlog.acts.air.usual_day import set_heating
    from finishlog.cli.pages.shop.heating_page import usual_set_page
    from finishlog.cli.typed.times.usual_words import (
        HEATING_BEGINS,
        read_heating,
        read_season,
        room_and,
    )

    name, when = room_and(words, HEATING_BEGINS)
    heating = read_heating(when, here.temperature)
    months = read_season(season) if season else None
    answer = set_heating(here.context, name, heating, months)
    return Answered(answer, lambda: usual_set_page(answer))


def register(room: typer.Typer) -> None:
    """Add the commands to the group of rooms."""
    # `7:-2C` is an hour, not an option.
    settings = {"ignore_unknown_options": True}
    command(room, "room usual", settings=settings)(room_usual)
    command(room, "room heating", settings=settings)(room_heating)
