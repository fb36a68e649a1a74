"""Where it is done, and when: room, shop."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer
from msgspec.structs import replace

from finishlog.cli.answering.answer import Answered, recorded
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import Archived, Name, NoteText
from finishlog.cli.answering.run import Run
from finishlog.cli.commands.shop import usual
from finishlog.cli.commands.shop.kept import may_be_put_away, may_be_renamed
from finishlog.errors import UsageFault

if TYPE_CHECKING:
    from finishlog.acts.air.place import PlaceTold

room = typer.Typer(help="Rooms, their nights and usual days.", no_args_is_help=True)
shop = typer.Typer(help="When the shop is open.", no_args_is_help=True)
usual.register(room)


Has = Annotated[
    str | None,
    typer.Option("--has", metavar="THING", help="pilot,stove,heater,motor ... or none."),
]
Kind = Annotated[
    str | None,
    typer.Option(
        "--kind", metavar="PLACE", help="basement, garage, attached, dwelling or outdoors."
    ),
]
Size = Annotated[str | None, typer.Option("--size", help="60m3, 6x4x2.5m, 20x24x9ft.")]
Exhaust = Annotated[
    str | None,
    typer.Option("--exhaust", metavar="AIR", help="As measured: 300m3/h, 180ft3/min; none."),
]
Mixing = Annotated[
    str | None, typer.Option("--mixing", metavar="1-10", help="1 mixes perfectly, 10 hardly.")
]
Who = Annotated[
    str | None, typer.Option("--lives", metavar="WHO", help="child,pregnant,bird,asthma or none.")
]
Joined = Annotated[
    str | None, typer.Option("--joined", metavar="ROOM:door,...", help="Door, gap or duct.")
]


def _place(
    has: str | None,
    kind: str | None,
    size: str | None,
    exhaust: str | None,
    mixing: str | None,
    lives: str | None,
    joined: str | None,
    out: str | None = None,
) -> PlaceTold:
    """Read what was typed of a room as a place."""
    from finishlog.acts.air.place import PlaceTold
    from finishlog.cli.typed.figures import places

    return PlaceTold(
        has=places.fixtures(has) if has is not None else None,
        kind=places.place_kind(kind) if kind is not None else None,
        volume_m3=places.room_size(size) if size is not None else None,
        exhaust_m3_h=places.exhaust(exhaust) if exhaust is not None else None,
        mixing=places.mixing(mixing) if mixing is not None else None,
        lives=places.lives(lives) if lives is not None else None,
        joined=places.joined(joined) if joined is not None else None,
        out=places.fixtures(out) if out is not None else None,
    )


@command(room, "room new")
def room_new(
    here: Run,
    name: Name,
    night: Annotated[
        str | None, typer.Option("--night", help="The coldest night of the month: 12C.")
    ] = None,
    note: NoteText = "",
    has: Has = None,
    kind: Kind = None,
    size: Size = None,
    exhaust: Exhaust = None,
    mixing: Mixing = None,
    lives: Who = None,
    joined: Joined = None,
) -> Answered:
    """Put a room on record."""
    from finishlog.acts.things.rooms import new_room
    from finishlog.cli.typed.figures.measures import temperature

    coldest = temperature(night, here.temperature) if night else None
    told = _place(has, kind, size, exhaust, mixing, lives, joined)
    return recorded(new_room(here.context, name, coldest, note, told))


@command(room, "room night", settings={"ignore_unknown_options": True})
def room_night(
    here: Run,
    words: Annotated[list[str], typer.Argument(metavar="[ROOM] TEMPERATURE", help="shop 12C")],
) -> Answered:
    """Say how cold a room's nights get, from now on."""
    from finishlog.acts.things.rooms import coldest_night
    from finishlog.cli.typed.figures.measures import show_temperature, temperature
    from finishlog.cli.typed.times.usual_words import room_and

    name, said = room_and(words, r"[+-]?\d.*")
    if not said:
        raise UsageFault("how cold do the nights get?", "finishlog room night shop 12C")
    celsius = temperature(" ".join(said), here.temperature)
    made = coldest_night(here.context, name, celsius)
    return recorded(
        replace(made, detail=f"nights to {show_temperature(celsius, here.temperature)}")
    )


@command(room, "room edit")
def room_edit(
    here: Run,
    name: Name,
    note: Annotated[str | None, typer.Option("--note", help="Words to keep with it.")] = None,
    heater: Annotated[
        str | None,
        typer.Option("--heater", metavar="HEATER", help="sealed, fan, glow, flame; gas, stove ..."),
    ] = None,
    has: Has = None,
    kind: Kind = None,
    size: Size = None,
    exhaust: Exhaust = None,
    mixing: Mixing = None,
    lives: Who = None,
    joined: Joined = None,
    out: Annotated[
        str | None,
        typer.Option("--out", metavar="THING", help="Put out for this evening: pilot; none: lit."),
    ] = None,
) -> Answered:
    """Change a room's note, what heats it, what place it is; its nights: room night."""
    from finishlog.acts.things.rooms import edit_room, heater_word

    heated_by = heater_word(heater) if heater is not None else None
    told = _place(has, kind, size, exhaust, mixing, lives, joined, out)
    return recorded(edit_room(here.context, name, note, heated_by, told))


may_be_renamed(room, "room", "room")


may_be_put_away(
    room,
    "room",
    "room",
    "Put a room away that no open part stands or stood in; its readings stay on record.",
)


@command(room, "room list")
def room_list(here: Run, archived: Archived = False) -> Answered:
    """List the rooms with their last reading."""
    from finishlog.asks.things.there_is import rooms
    from finishlog.cli.pages.shop.shop_pages import rooms_page

    answer = rooms(here.context, archived=archived)
    return Answered(answer, lambda: rooms_page(answer, here.clock))


@command(room, "room show")
def room_show(here: Run, name: Name) -> Answered:
    """Show one room with its readings."""
    from finishlog.asks.things.there_is import one_room
    from finishlog.cli.pages.shop.shop_pages import room_page

    answer = one_room(here.context, name)
    return Answered(answer, lambda: room_page(answer, here.clock))


@command(shop, "shop hours")
def shop_hours(
    here: Run,
    hours: Annotated[
        list[str],
        typer.Argument(metavar="DAYS HOURS...", help="'mon-fri 18:00-23:00' 'sat 9:00-17:00'"),
    ],
) -> Answered:
    """Say when the shop is open, from now on."""
    from finishlog.acts.things.rooms import shop_hours as put
    from finishlog.cli.typed.times.week import read_week, week_words

    week = read_week(hours)
    made = put(here.context, week)
    return recorded(replace(made, detail=week_words(week)))


@command(shop, "shop show")
def shop_show(here: Run) -> Answered:
    """Show the shop's hours, its time zone, and the database."""
    from finishlog.asks.things.there_is import the_shop
    from finishlog.cli.pages.shop.shop_pages import shop_page

    answer = the_shop(here.context)
    return Answered(answer, lambda: shop_page(answer, here.clock))


def register(app: typer.Typer) -> None:
    """Add the command groups."""
    app.add_typer(room, name="room")
    app.add_typer(shop, name="shop")
