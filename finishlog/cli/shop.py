"""Set up and look at what there is: project, part, steps, product, room, shop."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.asking import settled
from finishlog.cli.desk import Desk
from finishlog.cli.json_answer import show_json
from finishlog.cli.options import Json, NoteText, SomeParts, desk
from finishlog.cli.screen import show

Name = Annotated[str, typer.Argument(metavar="NAME")]

project = typer.Typer(help="Pieces of furniture, or sets.", no_args_is_help=True)
part = typer.Typer(help="What is finished as one kind: doors, legs.", no_args_is_help=True)
steps = typer.Typer(help="Finishing schedules: the ordered steps.", no_args_is_help=True)
product = typer.Typer(help="Finishes as you know them.", no_args_is_help=True)
room = typer.Typer(help="Rooms and how cold their nights get.", no_args_is_help=True)
shop = typer.Typer(help="When the shop is open; the units you type.", no_args_is_help=True)


def _made(here: Desk, command: str, made: object, json: bool) -> None:
    from finishlog.acts.things import Made
    from finishlog.cli.shop_pages import made_page

    assert isinstance(made, Made)
    if json:
        show_json(command, here.clock.now, made)
    else:
        show(made_page(made))


@project.command("new")
def project_new(
    context: typer.Context,
    name: Name,
    due: Annotated[
        str | None, typer.Option("--due", metavar="WHEN", help="Packed by: 'Sat 5 Dec'.")
    ] = None,
    note: NoteText = "",
    json: Json = False,
) -> None:
    """Put a project on record."""
    from finishlog.acts.things import new_project
    from finishlog.cli.moments import due_moment

    here = desk(context)
    by = due_moment(due, here.clock.now, here.clock.zone) if due else None
    made = new_project(here.database, here.clock, here.words, name, by, note)
    _made(here, "project new", made, json)


@project.command("list")
def project_list(context: typer.Context, json: Json = False) -> None:
    """List the open projects."""
    from finishlog.asks.things import projects
    from finishlog.cli.shop_pages import projects_page

    here = desk(context)
    answer = projects(here.database, here.clock)
    if json:
        show_json("project list", here.clock.now, answer)
    else:
        show(projects_page(answer, here.clock))


@project.command("show")
def project_show(context: typer.Context, name: Name, json: Json = False) -> None:
    """Show one project with its parts."""
    from finishlog.asks.things import one_project
    from finishlog.cli.shop_pages import project_page

    here = desk(context)
    answer = one_project(here.database, here.clock, name)
    if json:
        show_json("project show", here.clock.now, answer)
    else:
        show(project_page(answer, here.clock))


@part.command("new")
def part_new(
    context: typer.Context,
    path: Annotated[str, typer.Argument(metavar="PROJECT/NAME")],
    count: Annotated[int, typer.Option("--count", "-n", help="How many pieces.")] = 1,
    species: Annotated[str | None, typer.Option("--species", help="ash, cherry ...")] = None,
    face: Annotated[
        list[str] | None,
        typer.Option("--face", help="front, back:hidden, tenon:joint; repeat. Else all round."),
    ] = None,
    steps: Annotated[str | None, typer.Option("--steps", help="A finishing schedule.")] = None,
    room: Annotated[str | None, typer.Option("--room", help="Where it stands.")] = None,
    of: Annotated[
        list[str] | None,
        typer.Option("--of", help="An assembly: what one piece is made of, side:2; repeat."),
    ] = None,
    board: Annotated[bool, typer.Option("--board", help="A sample board.")] = False,
    note: NoteText = "",
    json: Json = False,
) -> None:
    """Put a part on record, and its project when that is new."""
    from finishlog.acts.things import PartTyped, new_part

    here = desk(context)
    typed = PartTyped(
        path, count, species, tuple(face or ()), steps, room, tuple(of or ()), board, note
    )
    made = new_part(here.database, here.clock, here.words, typed)
    _made(here, "part new", made, json)


@part.command("steps")
def part_steps(
    context: typer.Context,
    parts: SomeParts,
    name: Annotated[str, typer.Option("--as", metavar="STEPS", help="Which schedule.")],
    json: Json = False,
) -> None:
    """Copy a finishing schedule onto parts."""
    from finishlog.acts.things import give_steps
    from finishlog.asks.parts import part_ids

    here = desk(context)
    ids = settled(here, tuple(parts), lambda words: part_ids(here.database, here.clock, words))
    made = give_steps(here.database, here.clock, here.words, ids, name)
    _made(here, "part steps", made, json)


@part.command("archive")
def part_archive(context: typer.Context, parts: SomeParts, json: Json = False) -> None:
    """Put parts away: the day's screens leave them out, past and history keep them."""
    from finishlog.acts.things import archive
    from finishlog.asks.parts import part_ids

    here = desk(context)
    ids = settled(here, tuple(parts), lambda words: part_ids(here.database, here.clock, words))
    made = archive(here.database, here.facts, here.clock, here.words, ids)
    _made(here, "part archive", made, json)


@part.command("list")
def part_list(context: typer.Context, json: Json = False) -> None:
    """List the open parts."""
    from finishlog.asks.things import parts
    from finishlog.cli.shop_pages import parts_page

    here = desk(context)
    answer = parts(here.database, here.clock)
    if json:
        show_json("part list", here.clock.now, answer)
    else:
        show(parts_page(answer))


@part.command("show")
def part_show(context: typer.Context, parts: SomeParts, json: Json = False) -> None:
    """Show parts with their faces and steps."""
    from finishlog.asks.parts import part_ids
    from finishlog.asks.things import parts as answer_parts
    from finishlog.cli.shop_pages import part_page

    here = desk(context)
    ids = settled(here, tuple(parts), lambda words: part_ids(here.database, here.clock, words))
    answer = [p for p in answer_parts(here.database, here.clock) if p.id in ids]
    if json:
        show_json("part show", here.clock.now, answer)
    else:
        show(part_page(answer))


@steps.command("new")
def steps_new(
    context: typer.Context,
    name: Name,
    step: Annotated[
        list[str],
        typer.Argument(metavar="STEP...", help="sand, a product, topcoat*3, scuff, topcoat@back."),
    ],
    note: NoteText = "",
    json: Json = False,
) -> None:
    """Put a finishing schedule on record."""
    from finishlog.acts.things import new_steps

    here = desk(context)
    made = new_steps(here.database, here.clock, here.words, name, step, note)
    _made(here, "steps new", made, json)


@steps.command("list")
def steps_list(context: typer.Context, json: Json = False) -> None:
    """List the finishing schedules."""
    from finishlog.asks.things import schedules
    from finishlog.cli.shop_pages import schedules_page

    here = desk(context)
    answer = schedules(here.database, here.clock)
    if json:
        show_json("steps list", here.clock.now, answer)
    else:
        show(schedules_page(answer))


@steps.command("show")
def steps_show(context: typer.Context, name: Name, json: Json = False) -> None:
    """Show one finishing schedule."""
    from finishlog.asks.things import one_schedule
    from finishlog.cli.shop_pages import schedule_page

    here = desk(context)
    answer = one_schedule(here.database, here.clock, name)
    if json:
        show_json("steps show", here.clock.now, answer)
    else:
        show(schedule_page(answer))


Label = Annotated[str | None, typer.Option(help="What the can says: 4h, 4-6h, 2d.")]
Window = Annotated[str | None, typer.Option(help="Recoat without scuffing until: 24h.")]
LabelAir = Annotated[str | None, typer.Option(help="The air the label speaks of: '21C 50%'.")]


@product.command("new")
def product_new(
    context: typer.Context,
    name: Name,
    finish: Annotated[str, typer.Option("--class", help="finishlog class list shows them.")],
    recoat: Label = None,
    sand: Label = None,
    touch: Label = None,
    tack_free: Label = None,
    light_use: Label = None,
    cured: Label = None,
    window: Window = None,
    label_air: LabelAir = None,
    note: NoteText = "",
    json: Json = False,
) -> None:
    """Put a product on record with what its label says."""
    from finishlog.acts.things import new_product
    from finishlog.cli.labels import LabelTyped, product_typed

    here = desk(context)
    label = LabelTyped(recoat, sand, touch, tack_free, light_use, cured, window, label_air)
    typed = product_typed(name, finish, label, here.temperature, note)
    made = new_product(here.database, here.facts, here.clock, here.words, typed)
    _made(here, "product new", made, json)


@product.command("label")
def product_label(
    context: typer.Context,
    name: Name,
    recoat: Label = None,
    sand: Label = None,
    touch: Label = None,
    tack_free: Label = None,
    light_use: Label = None,
    cured: Label = None,
    window: Window = None,
    label_air: LabelAir = None,
    json: Json = False,
) -> None:
    """Change what a label says from now on; coats that are on keep what they were judged by."""
    from finishlog.acts.things import label_product
    from finishlog.cli.labels import LabelTyped, product_typed

    here = desk(context)
    label = LabelTyped(recoat, sand, touch, tack_free, light_use, cured, window, label_air)
    typed = product_typed(name, "", label, here.temperature)
    made = label_product(here.database, here.clock, here.words, typed)
    _made(here, "product label", made, json)


@product.command("list")
def product_list(context: typer.Context, json: Json = False) -> None:
    """List the products."""
    from finishlog.asks.things import products
    from finishlog.cli.shop_pages import products_page

    here = desk(context)
    answer = products(here.database, here.facts, here.clock)
    if json:
        show_json("product list", here.clock.now, answer)
    else:
        show(products_page(answer))


@product.command("show")
def product_show(context: typer.Context, name: Name, json: Json = False) -> None:
    """Show one product: its figures, where each comes from, and its cautions."""
    from finishlog.asks.things import one_product
    from finishlog.cli.shop_pages import product_page

    here = desk(context)
    answer = settled(
        here, (name,), lambda words: one_product(here.database, here.facts, here.clock, words[0])
    )
    if json:
        show_json("product show", here.clock.now, answer)
    else:
        show(product_page(answer, here.facts, here.temperature))


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
    from finishlog.acts.things import new_room
    from finishlog.cli.measures import temperature

    here = desk(context)
    coldest = temperature(night, here.temperature) if night else None
    made = new_room(here.database, here.clock, here.words, name, coldest, note)
    _made(here, "room new", made, json)


@room.command("night")
def room_night(
    context: typer.Context,
    name: Name,
    coldest: Annotated[str, typer.Argument(metavar="TEMPERATURE", help="12C")],
    json: Json = False,
) -> None:
    """Say how cold a room's nights get, from now on."""
    from finishlog.acts.things import coldest_night
    from finishlog.cli.measures import temperature

    here = desk(context)
    celsius = temperature(coldest, here.temperature)
    made = coldest_night(here.database, here.clock, here.words, name, celsius)
    _made(here, "room night", made, json)


@room.command("list")
def room_list(context: typer.Context, json: Json = False) -> None:
    """List the rooms with their last reading."""
    from finishlog.asks.things import rooms
    from finishlog.cli.shop_pages import rooms_page

    here = desk(context)
    answer = rooms(here.database, here.clock)
    if json:
        show_json("room list", here.clock.now, answer)
    else:
        show(rooms_page(answer, here.clock, here.temperature))


@room.command("show")
def room_show(context: typer.Context, name: Name, json: Json = False) -> None:
    """Show one room with its readings."""
    from finishlog.asks.things import one_room
    from finishlog.cli.shop_pages import room_page

    here = desk(context)
    answer = one_room(here.database, here.clock, name)
    if json:
        show_json("room show", here.clock.now, answer)
    else:
        show(room_page(answer, here.clock, here.temperature))


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
    from finishlog.acts.things import shop_hours as put
    from finishlog.cli.week import read_week

    here = desk(context)
    made = put(here.database, here.clock, here.words, read_week(hours))
    _made(here, "shop hours", made, json)


@shop.command("units")
def shop_units(
    context: typer.Context,
    temperature: Annotated[str, typer.Argument(metavar="C|F")],
    json: Json = False,
) -> None:
    """Say in which unit you type and read temperatures."""
    from finishlog.acts.things import temperature_in

    here = desk(context)
    made = temperature_in(here.database, here.clock, here.words, temperature)
    _made(here, "shop units", made, json)


@shop.command("show")
def shop_show(context: typer.Context, json: Json = False) -> None:
    """Show the shop's hours, its time zone, and the database."""
    from finishlog.asks.things import the_shop
    from finishlog.cli.shop_pages import shop_page

    here = desk(context)
    answer = the_shop(here.database, here.clock)
    if json:
        show_json("shop show", here.clock.now, answer)
    else:
        show(shop_page(answer, here.clock))


def register(app: typer.Typer) -> None:
    """Add the command groups."""
    for name, group in (
        ("project", project),
        ("part", part),
        ("steps", steps),
        ("product", product),
        ("room", room),
        ("shop", shop),
    ):
        app.add_typer(group, name=name)
