"""Finishes as you know them, with what their labels say."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered, recorded
from finishlog.cli.answering.asking import settled
from finishlog.cli.answering.command import Table, command
from finishlog.cli.answering.options import Archived, Name, NoteText, NoteTyped
from finishlog.cli.answering.run import Run
from finishlog.cli.commands.shop.kept import may_be_put_away, may_be_renamed
from finishlog.core.finish.stages import ON_A_LABEL

product = typer.Typer(help="Finishes as you know them.", no_args_is_help=True)

_Stage = Annotated[str | None, typer.Option(help="What the can says: 4h, 4-6h, 2d, overnight.")]
_Window = Annotated[
    str | None, typer.Option(help="Recoat without scuffing: 24h, 0-2h, '0-1h, 48h- scuffed'.")
]
_NoWindow = Annotated[bool | None, typer.Option("--no-window", help="It may be recoated for ever.")]
_Air = Annotated[str | None, typer.Option(help="The air the label speaks of: '21C 50%'.")]
Label = Annotated[
    dict[str, str | bool | None],
    Table(
        {
            **dict.fromkeys(ON_A_LABEL, _Stage),
            "window": _Window,
            "no-window": _NoWindow,
            "label-air": _Air,
        }
    ),
]


@command(product, "product new")
def product_new(
    here: Run,
    name: Name,
    finish: Annotated[str, typer.Option("--class", help="finishlog class list shows them.")],
    label: Label,
    note: NoteText = "",
) -> Answered:
    """Put a product on record with what its label says."""
    from finishlog.acts.things.products import new_product
    from finishlog.cli.typed.files.labels import product_typed

    typed = product_typed(name, finish, label, here.temperature, note)
    return recorded(new_product(here.context, typed))


@command(product, "product label")
def product_label(
    here: Run,
    name: Name,
    label: Label,
    coats_too: Annotated[
        bool, typer.Option("--coats-too", help="It said so all along: judge the coats that are on.")
    ] = False,
) -> Answered:
    """Change what a label says from now on; coats that are on keep what they were judged by."""
    from finishlog.acts.things.products import label_product
    from finishlog.cli.pages.evening.log_page import label_page
    from finishlog.cli.typed.files.labels import product_typed

    typed = product_typed(name, "", label, here.temperature)
    labelled = label_product(here.context, typed, coats_too=coats_too)
    return Answered(labelled, lambda: label_page(labelled, here.words, here.clock))


@command(product, "product edit")
def product_edit(
    here: Run,
    name: Name,
    finish: Annotated[
        str | None, typer.Option("--class", help="Another class, while no coat was logged.")
    ] = None,
    note: NoteTyped = None,
) -> Answered:
    """Change a product's class or note; what its label says: product label."""
    from finishlog.acts.things.products import edit_product

    return recorded(edit_product(here.context, name, finish=finish, note=note))


may_be_renamed(product, "product", "product")


may_be_put_away(
    product,
    "product",
    "product",
    "Put a product away that no open part needs; its coats stay on record.",
)


@command(product, "product list")
def product_list(here: Run, archived: Archived = False) -> Answered:
    """List the products."""
    from finishlog.asks.things.there_is import products
    from finishlog.cli.pages.shop.shop_pages import products_page

    answer = products(here.context, archived=archived)
    return Answered(answer, lambda: products_page(answer))


@command(product, "product show")
def product_show(here: Run, name: Name) -> Answered:
    """Show one product: its figures, where each comes from, and its cautions."""
    from finishlog.asks.things.there_is import one_product
    from finishlog.cli.pages.shop.shop_pages import product_page

    answer = settled(here, (name,), lambda words: one_product(here.context, words[0]))
    return Answered(answer, lambda: product_page(answer, here.facts.sources))


def register(app: typer.Typer) -> None:
    """Add the command group."""
    app.add_typer(product, name="product")
