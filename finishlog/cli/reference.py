"""Look up the published facts: class."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answer import show_answer
from finishlog.cli.options import Json, desk

finish_class = typer.Typer(help="Generic kinds of finish, with sources.", no_args_is_help=True)


@finish_class.command("list")
def class_list(context: typer.Context, json: Json = False) -> None:
    """List the classes."""
    from finishlog.asks.classes import classes
    from finishlog.cli.class_pages import classes_page

    here = desk(context)
    answer = classes(here.facts)
    show_answer(here, "class list", answer, json, lambda: classes_page(answer))


@finish_class.command("show")
def class_show(
    context: typer.Context,
    name: Annotated[str, typer.Argument(metavar="CLASS")],
    json: Json = False,
) -> None:
    """Show one class: every figure with its range and source."""
    from finishlog.asks.classes import one_class
    from finishlog.cli.class_pages import class_page

    here = desk(context)
    answer = one_class(here.facts, name)
    show_answer(here, "class show", answer, json, lambda: class_page(answer, here.facts))


def register(app: typer.Typer) -> None:
    """Add the command group."""
    app.add_typer(finish_class, name="class")
