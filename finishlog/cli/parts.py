"""What is finished: project, part, steps."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answer import show_answer, show_made
from finishlog.cli.asking import settled
from finishlog.cli.options import Json, NoteText, SomeParts, desk

Name = Annotated[str, typer.Argument(metavar="NAME")]

project = typer.Typer(help="Pieces of furniture, or sets.", no_args_is_help=True)
part = typer.Typer(help="What is finished as one kind: doors, legs.", no_args_is_help=True)
steps = typer.Typer(help="Finishing schedules: the ordered steps.", no_args_is_help=True)


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
    show_made(here, "project new", made, json)


@project.command("list")
def project_list(context: typer.Context, json: Json = False) -> None:
    """List the open projects."""
    from finishlog.asks.things import projects
    from finishlog.cli.shop_pages import projects_page

    here = desk(context)
    answer = projects(here.database, here.clock)
    show_answer(here, "project list", answer, json, lambda: projects_page(answer, here.clock))


@project.command("show")
def project_show(context: typer.Context, name: Name, json: Json = False) -> None:
    """Show one project with its parts."""
    from finishlog.asks.things import one_project
    from finishlog.cli.shop_pages import project_page

    here = desk(context)
    answer = one_project(here.database, here.clock, name)
    show_answer(here, "project show", answer, json, lambda: project_page(answer, here.clock))


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
    made = new_part(here.database, here.facts, here.clock, here.words, typed)
    show_made(here, "part new", made, json)


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
    show_made(here, "part steps", made, json)


@part.command("archive")
def part_archive(context: typer.Context, parts: SomeParts, json: Json = False) -> None:
    """Put parts away: the day's screens leave them out, past and history keep them."""
    from finishlog.acts.things import archive
    from finishlog.asks.parts import part_ids

    here = desk(context)
    ids = settled(here, tuple(parts), lambda words: part_ids(here.database, here.clock, words))
    made = archive(here.database, here.facts, here.clock, here.words, ids)
    show_made(here, "part archive", made, json)


@part.command("list")
def part_list(context: typer.Context, json: Json = False) -> None:
    """List the open parts."""
    from finishlog.asks.things import parts
    from finishlog.cli.shop_pages import parts_page

    here = desk(context)
    answer = parts(here.database, here.clock)
    show_answer(here, "part list", answer, json, lambda: parts_page(answer))


@part.command("show")
def part_show(context: typer.Context, parts: SomeParts, json: Json = False) -> None:
    """Show parts with their faces and steps."""
    from finishlog.asks.parts import part_ids
    from finishlog.asks.things import parts as answer_parts
    from finishlog.cli.shop_pages import part_page

    here = desk(context)
    ids = settled(here, tuple(parts), lambda words: part_ids(here.database, here.clock, words))
    answer = [p for p in answer_parts(here.database, here.clock) if p.id in ids]
    show_answer(here, "part show", answer, json, lambda: part_page(answer))


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
    show_made(here, "steps new", made, json)


@steps.command("list")
def steps_list(context: typer.Context, json: Json = False) -> None:
    """List the finishing schedules."""
    from finishlog.asks.things import schedules
    from finishlog.cli.shop_pages import schedules_page

    here = desk(context)
    answer = schedules(here.database, here.clock)
    show_answer(here, "steps list", answer, json, lambda: schedules_page(answer))


@steps.command("show")
def steps_show(context: typer.Context, name: Name, json: Json = False) -> None:
    """Show one finishing schedule."""
    from finishlog.asks.things import one_schedule
    from finishlog.cli.shop_pages import schedule_page

    here = desk(context)
    answer = one_schedule(here.database, here.clock, name)
    show_answer(here, "steps show", answer, json, lambda: schedule_page(answer))


def register(app: typer.Typer) -> None:
    """Add the command groups."""
    for name, group in (("project", project), ("part", part), ("steps", steps)):
        app.add_typer(group, name=name)
