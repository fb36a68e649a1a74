"""Finishing schedules: steps."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.answer import show_answer, show_made
from finishlog.cli.answering.options import (
    ALL_WORK,
    Archived,
    Json,
    Name,
    NewName,
    NoteText,
    also,
    desk,
)
from finishlog.core.log.entries import Operation
from finishlog.errors import UsageFault

steps = typer.Typer(help="Finishing schedules: the ordered steps.", no_args_is_help=True)

Steps = Annotated[
    list[str],
    typer.Argument(
        metavar="STEP...",
        help="A product (topcoat*3; of a face or zone: topcoat@back, oil@front/left), or "
        f"{ALL_WORK}",
    ),
]

SomeSteps = Annotated[
    list[str] | None,
    typer.Argument(metavar="[STEP]...", help=f"A product (topcoat*3, topcoat@back), or {ALL_WORK}"),
]


@steps.command("new", epilog=also(Operation))
def steps_new(
    context: typer.Context,
    name: Name,
    step: SomeSteps = None,
    like: Annotated[
        str | None,
        typer.Option("--like", metavar="PART", help="As it was really done on this part."),
    ] = None,
    note: NoteText = "",
    json: Json = False,
) -> None:
    """Put a finishing schedule on record, typed or as it was done on a part."""
    from finishlog.acts.things.steps import new_steps, steps_like

    here = desk(context)
    if step and like:
        raise UsageFault("steps or --like, not both", "finishlog steps edit changes them after")
    if like is not None:
        made = steps_like(here.context, name, like, note)
    else:
        made = new_steps(here.context, name, step or (), note)
    show_made(here, "steps new", made, json)


@steps.command("list")
def steps_list(context: typer.Context, archived: Archived = False, json: Json = False) -> None:
    """List the finishing schedules."""
    from finishlog.asks.things.there_is import schedules
    from finishlog.cli.pages.shop.shop_pages import schedules_page

    here = desk(context)
    answer = schedules(here.context, archived=archived)
    show_answer(here, "steps list", answer, json, lambda: schedules_page(answer))


@steps.command("show")
def steps_show(context: typer.Context, name: Name, json: Json = False) -> None:
    """Show one finishing schedule."""
    from finishlog.asks.things.there_is import one_schedule
    from finishlog.cli.pages.shop.shop_pages import schedule_page

    here = desk(context)
    answer = one_schedule(here.context, name)
    show_answer(here, "steps show", answer, json, lambda: schedule_page(answer))


@steps.command("edit", epilog=also(Operation))
def steps_edit(context: typer.Context, name: Name, step: Steps, json: Json = False) -> None:
    """Replace the steps of a schedule; parts keep the copies that they were given."""
    from finishlog.acts.things.steps import edit_steps

    here = desk(context)
    made = edit_steps(here.context, name, step)
    show_made(here, "steps edit", made, json)


@steps.command("rename")
def steps_rename(context: typer.Context, name: Name, new_name: NewName, json: Json = False) -> None:
    """Give a finishing schedule another name; the old one still finds it."""
    from finishlog.acts.things.steps import rename_steps

    here = desk(context)
    made = rename_steps(here.context, name, new_name)
    show_made(here, "steps rename", made, json)


@steps.command("archive")
def steps_archive(context: typer.Context, name: Name, json: Json = False) -> None:
    """Put a finishing schedule away; parts keep the copies that they were given."""
    from finishlog.acts.things.steps import archive_steps

    here = desk(context)
    made = archive_steps(here.context, name)
    show_made(here, "steps archive", made, json)


@steps.command("restore")
def steps_restore(context: typer.Context, name: Name, json: Json = False) -> None:
    """Bring back a finishing schedule that was put away."""
    from finishlog.acts.things.archiving import bring_back
    from finishlog.core.shop.things import ThingKind

    here = desk(context)
    made = bring_back(here.context, ThingKind.STEPS, name)
    show_made(here, "steps restore", made, json)


def register(app: typer.Typer) -> None:
    """Add the command group."""
    app.add_typer(steps, name="steps")
