"""Where it is done, and when: room, shop."""

from __future__ import annotations

from typing import Annotated

import typer
from msgspec.structs import replace

from finishlog.cli.answering.answer import show_answer, show_made
from finishlog.cli.answering.options import Archived, Json, Name, NewName, NoteText, desk
from finishlog.cli.commands.shop import usual
from finishlog.errors import UsageFault

room = typer.Typer(help="Rooms, their nights and usual days.", no_args_is_help=True)
shop = typer.Typer(help="When the shop is open.", no_args_is_help=True)
usual.register(room)


@room.command("new")
def room_new(
    context: typer.Context,
    name: Name,
    night: Annotated[
        str | None, typer.Option("--night", help="The coldest night of the month: 12C.")
    ] = None,
    note: NoteText = "",
    json: Json = False,
) -> None:
    """Put a room on record."""
    from finishlog.acts.things.rooms import new_room
    from finishlog.cli.typed.figures.measures import temperature

    here = desk(context)
    coldest = temperature(night, here.temperature) if night else None
    made = new_room(here.context, name, coldest, note)
    show_made(here, "room new", made, json)


@room.command("night", context_settings={"ignore_unknown_options": True})
def room_night(
    context: typer.Context,
    words: Annotated[list[str], typer.Argument(metavar="[ROOM] TEMPERATURE", help="shop 12C")],
    json: Json = False,
) -> None:
    """Say how cold a room's nights get, from now on."""
    from finishlog.acts.things.rooms import coldest_night
    from finishlog.cli.typed.figures.measures import show_temperature, temperature
    from finishlog.cli.typed.times.usual_words import room_and

    here = desk(context)
    name, said = room_and(words, r"[+-]?\d.*")
    if not said:
        raise UsageFault("how cold do the nights get?", "finishlog room night shop 12C")
    celsius = temperature(" ".join(said), here.temperature)
    made = coldest_night(here.context, name, celsius)
    made = replace(made, detail=f"nights to {show_temperature(celsius, here.temperature)}")
    show_made(here, "room night", made, json)


@room.command("edit")
def room_edit(
    context: typer.Context,
    name: Name,
    note: Annotated[str | None, typer.Option("--note", help="Words to keep with it.")] = None,
    heater: Annotated[
        str | None,
        typer.Option("--heater", metavar="KIND", help="sealed, fan, glow or flame; gas, stove ..."),
    ] = None,
    json: Json = False,
) -> None:
    """Change a room's note or what heats it; how cold its nights get: room night."""
    from finishlog.acts.things.rooms import edit_room, heater_word

    here = desk(context)
    kind = heater_word(heater) if heater is not None else None
    made = edit_room(here.context, name, note, kind)
    show_made(here, "room edit", made, json)


@room.command("rename")
def room_rename(context: typer.Context, name: Name, new_name: NewName, json: Json = False) -> None:
    """Give a room another name; the old one still finds it."""
    from finishlog.acts.things.rooms import rename_room

    here = desk(context)
    made = rename_room(here.context, name, new_name)
    show_made(here, "room rename", made, json)


@room.command("archive")
def room_archive(context: typer.Context, name: Name, json: Json = False) -> None:
    """Put a room away that no open part stands or stood in; its readings stay on record."""
    from finishlog.acts.things.rooms import archive_room

    here = desk(context)
    made = archive_room(here.context, name)
    show_made(here, "room archive", made, json)


@room.command("restore")
def room_restore(context: typer.Context, name: Name, json: Json = False) -> None:
    """Bring back a room that was put away."""
    from finishlog.acts.things.archiving import bring_back
    from finishlog.core.shop.things import ThingKind

    here = desk(context)
    made = bring_back(here.context, ThingKind.ROOM, name)
    show_made(here, "room restore", made, json)


@room.command("list")
def room_list(context: typer.Context, archived: Archived = False, json: Json = False) -> None:
    """List the rooms with their last reading."""
    from finishlog.asks.things.there_is import rooms
    from finishlog.cli.pages.shop.shop_pages import rooms_page

    here = desk(context)
    answer = rooms(here.context, archived=archived)
    show_answer(here, "room list", answer, json, lambda: rooms_page(answer, here.clock))


@room.command("show")
def room_show(context: typer.Context, name: Name, json: Json = False) -> None:
    """Show one room with its readings."""
    from finishlog.asks.things.there_is import one_room
    from finishlog.cli.pages.shop.shop_pages import room_page

    here = desk(context)
    answer = one_room(here.context, name)
    show_answer(here, "room show", answer, json, lambda: room_page(answer, here.clock))


@shop.command("hours")
def shop_hours(
    context: typer.Context,
    hours: Annotated[
        list[str],
        typer.Argument(metavar="DAYS HOURS...", help="'mon-fri 18:00-23:00' 'sat 9:00-17:00'"),
    ],
    json: Json = False,
) -> None:
    """Say when the shop is open, from now on."""
    from finishlog.acts.things.rooms import shop_hours as put
    from finishlog.cli.typed.times.week import read_week, week_words

    here = desk(context)
    week = read_week(hours)
    made = put(here.context, week)
    show_made(here, "shop hours", replace(made, detail=week_words(week)), json)


@shop.command("show")
def shop_show(context: typer.Context, json: Json = False) -> None:
    """Show the shop's hours, its time zone, and the database."""
    from finishlog.asks.things.there_is import the_shop
    from finishlog.cli.pages.shop.shop_pages import shop_page

    here = desk(context)
    answer = the_shop(here.context)
    show_answer(here, "shop show", answer, json, lambda: shop_page(answer, here.clock))


def register(app: typer.Typer) -> None:
    """Add the command groups."""
    app.add_typer(room, name="room")
    app.add_typer(shop, name="shop")
