"""Look up the published facts: species, class, glue."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.command import command
from finishlog.cli.answering.run import Run

wood = typer.Typer(help="Woods: what they do to a finish.", no_args_is_help=True)
glue = typer.Typer(help="Glues: open, clamps, finish, with sources.", no_args_is_help=True)
finish_class = typer.Typer(help="Generic kinds of finish, with sources.", no_args_is_help=True)


@command(finish_class, "class list")
def class_list(here: Run) -> Answered:
    """List the classes."""
    from finishlog.asks.things.classes import classes
    from finishlog.cli.pages.shop.class_pages import classes_page

    answer = classes(here.facts)
    return Answered(answer, lambda: classes_page(answer))


@command(finish_class, "class show")
def class_show(here: Run, name: Annotated[list[str], typer.Argument(metavar="CLASS")]) -> Answered:
    """Show one class: every figure with its range and source."""
    from finishlog.asks.things.classes import one_class
    from finishlog.cli.pages.shop.class_pages import class_page

    answer = one_class(here.facts, " ".join(name))
    return Answered(answer, lambda: class_page(answer, here.facts.sources, here.units))


@command(finish_class, "class matrix")
def class_matrix(
    here: Run, name: Annotated[list[str] | None, typer.Argument(metavar="[CLASS]")] = None
) -> Answered:
    """Show what may go over what: all classes in a grid, or one with the reason of each pair."""
    from finishlog.asks.things.classes import pairs
    from finishlog.cli.pages.questions.over_page import matrix_page, over_one_page

    one = " ".join(name or ())
    answer = pairs(here.facts, one or None)
    return Answered(
        answer, lambda: over_one_page(answer, here.facts.sources) if one else matrix_page(answer)
    )


@command(wood, "species list")
def species_list(here: Run) -> Answered:
    """List the woods."""
    from finishlog.asks.things.species import species_list
    from finishlog.cli.pages.shop.species_pages import species_list_page

    answer = species_list(here.facts)
    return Answered(answer, lambda: species_list_page(answer))


@command(wood, "species show")
def species_show(
    here: Run, name: Annotated[list[str], typer.Argument(metavar="SPECIES")]
) -> Answered:
    """Show one wood, and what to heed on it."""
    from finishlog.asks.things.species import one_species, products_in_use
    from finishlog.cli.pages.shop.species_pages import species_page

    mine = products_in_use(here.context) if here.path.exists() else ()
    answer = one_species(here.facts, " ".join(name), mine)
    return Answered(answer, lambda: species_page(answer, here.facts.sources))


@command(glue, "glue list")
def glue_list(here: Run) -> Answered:
    """List the glues."""
    from finishlog.asks.things.glues import glues
    from finishlog.cli.pages.shop.glue_pages import glues_page

    answer = glues(here.facts)
    return Answered(answer, lambda: glues_page(answer))


@command(glue, "glue show")
def glue_show(here: Run, name: Annotated[list[str], typer.Argument(metavar="GLUE")]) -> Answered:
    """Show one glue: every figure with its range and source."""
    from finishlog.asks.things.glues import one_glue
    from finishlog.cli.pages.shop.glue_pages import glue_page

    answer = one_glue(here.facts, " ".join(name))
    return Answered(answer, lambda: glue_page(answer, here.facts.sources))


def register(app: typer.Typer) -> None:
    """Add the command groups."""
    app.add_typer(wood, name="species")
    app.add_typer(finish_class, name="class")
    app.add_typer(glue, name="glue")
