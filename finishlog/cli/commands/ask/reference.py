"""Look up the published facts: species, class, glue."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.answer import show_answer
from finishlog.cli.answering.options import Json, desk

wood = typer.Typer(help="Woods: what they do to a finish.", no_args_is_help=True)
glue = typer.Typer(help="Glues: open, clamps, finish, with sources.", no_args_is_help=True)
finish_class = typer.Typer(help="Generic kinds of finish, with sources.", no_args_is_help=True)


@finish_class.command("list")
def class_list(context: typer.Context, json: Json = False) -> None:
    """List the classes."""
    from finishlog.asks.things.classes import classes
    from finishlog.cli.pages.shop.class_pages import classes_page

    here = desk(context)
    answer = classes(here.facts)
    show_answer(here, "class list", answer, json, lambda: classes_page(answer))


@finish_class.command("show")
def class_show(
    context: typer.Context,
    name: Annotated[list[str], typer.Argument(metavar="CLASS")],
    json: Json = False,
) -> None:
    """Show one class: every figure with its range and source."""
    from finishlog.asks.things.classes import one_class
    from finishlog.cli.pages.shop.class_pages import class_page

    here = desk(context)
    answer = one_class(here.facts, " ".join(name))
    show_answer(
        here, "class show", answer, json, lambda: class_page(answer, here.facts.sources, here.units)
    )


@wood.command("list")
def species_list(context: typer.Context, json: Json = False) -> None:
    """List the woods."""
    from finishlog.asks.things.species import species_list
    from finishlog.cli.pages.shop.species_pages import species_list_page

    here = desk(context)
    answer = species_list(here.facts)
    show_answer(here, "species list", answer, json, lambda: species_list_page(answer))


@wood.command("show")
def species_show(
    context: typer.Context,
    name: Annotated[list[str], typer.Argument(metavar="SPECIES")],
    json: Json = False,
) -> None:
    """Show one wood, and what to heed on it."""
    from finishlog.asks.things.species import one_species, products_in_use
    from finishlog.cli.pages.shop.species_pages import species_page

    here = desk(context)
    mine = products_in_use(here.context) if here.path.exists() else ()
    answer = one_species(here.facts, " ".join(name), mine)
    show_answer(
        here, "species show", answer, json, lambda: species_page(answer, here.facts.sources)
    )


@glue.command("list")
def glue_list(context: typer.Context, json: Json = False) -> None:
    """List the glues."""
    from finishlog.asks.things.glues import glues
    from finishlog.cli.pages.shop.glue_pages import glues_page

    here = desk(context)
    answer = glues(here.facts)
    show_answer(here, "glue list", answer, json, lambda: glues_page(answer))


@glue.command("show")
def glue_show(
    context: typer.Context,
    name: Annotated[list[str], typer.Argument(metavar="GLUE")],
    json: Json = False,
) -> None:
    """Show one glue: every figure with its range and source."""
    from finishlog.asks.things.glues import one_glue
    from finishlog.cli.pages.shop.glue_pages import glue_page

    here = desk(context)
    answer = one_glue(here.facts, " ".join(name))
    show_answer(here, "glue show", answer, json, lambda: glue_page(answer, here.facts.sources))


def register(app: typer.Typer) -> None:
    """Add the command groups."""
    app.add_typer(wood, name="species")
    app.add_typer(finish_class, name="class")
    app.add_typer(glue, name="glue")
