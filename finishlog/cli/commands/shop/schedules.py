"""Finishing schedules: steps."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered, recorded
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import (
    ALL_WORK,
    Archived,
    Name,
    NoteText,
    also,
)
from finishlog.cli.answering.run import Run
from finishlog.cli.commands.shop.kept import may_be_put_away, may_be_renamed
from finishlog.core.log.words import Operation
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


@command(steps, "steps new", epilog=also(Operation))
def steps_new(
    here: Run,
    name: Name,
    step: SomeSteps = None,
    like: Annotated[
        str | None,
        typer.Option("--like", metavar="PART", help="As it was really done on this part."),
    ] = None,
    over: Annotated[
        str | None,
        typer.Option("--over", metavar="PART", help="Its last finish once more, over what is on."),
    ] = None,
    note: NoteText = "",
) -> Answered:
    """Put a finishing schedule on record, typed, as it was done on a part, or over that."""
    from finishlog.acts.things.steps import new_steps, steps_like

    if sum(map(bool, (step, like, over))) > 1:
        raise UsageFault(
            "steps, --like or --over, one of them", "finishlog steps edit changes them after"
        )
    taken = like if like is not None else over
    if taken is not None:
        return recorded(steps_like(here.context, name, taken, note, over=like is None))
    return recorded(new_steps(here.context, name, step or (), note))


@command(steps, "steps list")
def steps_list(here: Run, archived: Archived = False) -> Answered:
    """List the finishing schedules."""
    from finishlog.asks.things.there_is import schedules
    from finishlog.cli.pages.shop.shop_pages import schedules_page

    answer = schedules(here.context, archived=archived)
    return Answered(answer, lambda: schedules_page(answer))


@command(steps, "steps show")
def steps_show(here: Run, name: Name) -> Answered:
    """Show one finishing schedule."""
    from finishlog.asks.things.there_is import one_schedule
    from finishlog.cli.pages.shop.shop_pages import schedule_page

    answer = one_schedule(here.context, name)
    return Answered(answer, lambda: schedule_page(answer))


@command(steps, "steps check")
def steps_check(
    here: Run,
    name: Name,
    wood: Annotated[
        str | None, typer.Option("--on", metavar="SPECIES", help="The wood below: oak.")
    ] = None,
    room: Annotated[str | None, typer.Option("--room", help="Where it dries.")] = None,
    like: Annotated[
        str | None, typer.Option("--like", metavar="PART", help="Beside what was done on this.")
    ] = None,
) -> Answered:
    """Walk through a schedule before anything is coated: what stops it, how long it takes."""
    from finishlog.asks.things.over import check_steps
    from finishlog.cli.pages.questions.over_page import steps_page

    answer = check_steps(here.context, name, wood=wood, room=room, like=like)
    return Answered(answer, lambda: steps_page(answer, here.facts.sources))


@command(steps, "steps edit", epilog=also(Operation))
def steps_edit(here: Run, name: Name, step: Steps) -> Answered:
    """Replace the steps of a schedule; parts keep the copies that they were given."""
    from finishlog.acts.things.steps import edit_steps

    return recorded(edit_steps(here.context, name, step))


may_be_renamed(steps, "steps", "finishing schedule")


may_be_put_away(
    steps,
    "steps",
    "finishing schedule",
    "Put a finishing schedule away; parts keep the copies that they were given.",
)


def register(app: typer.Typer) -> None:
    """Add the command group."""
    app.add_typer(steps, name="steps")
