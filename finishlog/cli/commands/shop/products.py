"""Finishes as you know them, with what their labels say."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.answer import show_answer, show_made
from finishlog.cli.answering.asking import settled
from finishlog.cli.answering.options import Archived, Json, Name, NewName, NoteText, NoteTyped, desk

product = typer.Typer(help="Finishes as you know them.", no_args_is_help=True)

Label = Annotated[str | None, typer.Option(help="What the can says: 4h, 4-6h, 2d, overnight.")]
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
    clamp: Label = None,
    stack: Label = None,
    pack: Label = None,
    light_use: Label = None,
    cured: Label = None,
    window: Window = None,
    label_air: LabelAir = None,
    note: NoteText = "",
    json: Json = False,
) -> None:
    """Put a product on record with what its label says."""
    from finishlog.acts.things.products import new_product
    from finishlog.cli.typed.files.labels import LabelTyped, product_typed

    here = desk(context)
    label = LabelTyped(
        recoat, sand, touch, tack_free, light_use, cured, window, label_air, clamp, stack, pack
    )
    typed = product_typed(name, finish, label, here.temperature, note)
    made = new_product(here.context, typed)
    show_made(here, "product new", made, json)


@product.command("label")
def product_label(
    context: typer.Context,
    name: Name,
    recoat: Label = None,
    sand: Label = None,
    touch: Label = None,
    tack_free: Label = None,
    clamp: Label = None,
    stack: Label = None,
    pack: Label = None,
    light_use: Label = None,
    cured: Label = None,
    window: Window = None,
    label_air: LabelAir = None,
    coats_too: Annotated[
        bool, typer.Option("--coats-too", help="It said so all along: judge the coats that are on.")
    ] = False,
    json: Json = False,
) -> None:
    """Change what a label says from now on; coats that are on keep what they were judged by."""
    from finishlog.acts.things.products import label_product
    from finishlog.cli.pages.evening.log_page import label_page
    from finishlog.cli.typed.files.labels import LabelTyped, product_typed

    here = desk(context)
    label = LabelTyped(
        recoat, sand, touch, tack_free, light_use, cured, window, label_air, clamp, stack, pack
    )
    typed = product_typed(name, "", label, here.temperature)
    labelled = label_product(here.context, typed, coats_too=coats_too)
    show_answer(
        here, "product label", labelled, json, lambda: label_page(labelled, here.words, here.clock)
    )


@product.command("edit")
def product_edit(
    context: typer.Context,
    name: Name,
    finish: Annotated[
        str | None, typer.Option("--class", help="Another class, while no coat was logged.")
    ] = None,
    note: NoteTyped = None,
    json: Json = False,
) -> None:
    """Change a product's class or note; what its label says: product label."""
    from finishlog.acts.things.products import edit_product

    here = desk(context)
    made = edit_product(here.context, name, finish=finish, note=note)
    show_made(here, "product edit", made, json)


@product.command("rename")
def product_rename(
    context: typer.Context, name: Name, new_name: NewName, json: Json = False
) -> None:
    """Give a product another name; the old one still finds it."""
    from finishlog.acts.things.products import rename_product

    here = desk(context)
    made = rename_product(here.context, name, new_name)
    show_made(here, "product rename", made, json)


@product.command("archive")
def product_archive(context: typer.Context, name: Name, json: Json = False) -> None:
    """Put a product away that no open part needs; its coats stay on record."""
    from finishlog.acts.things.products import archive_product

    here = desk(context)
    made = archive_product(here.context, name)
    show_made(here, "product archive", made, json)


@product.command("restore")
def product_restore(context: typer.Context, name: Name, json: Json = False) -> None:
    """Bring back a product that was put away."""
    from finishlog.acts.things.archiving import bring_back
    from finishlog.core.shop.things import ThingKind

    here = desk(context)
    made = bring_back(here.context, ThingKind.PRODUCT, name)
    show_made(here, "product restore", made, json)


@product.command("list")
def product_list(context: typer.Context, archived: Archived = False, json: Json = False) -> None:
    """List the products."""
    from finishlog.asks.things.there_is import products
    from finishlog.cli.pages.shop.shop_pages import products_page

    here = desk(context)
    answer = products(here.context, archived=archived)
    show_answer(here, "product list", answer, json, lambda: products_page(answer))


@product.command("show")
def product_show(context: typer.Context, name: Name, json: Json = False) -> None:
    """Show one product: its figures, where each comes from, and its cautions."""
    from finishlog.asks.things.there_is import one_product
    from finishlog.cli.pages.shop.shop_pages import product_page

    here = desk(context)
    answer = settled(here, (name,), lambda words: one_product(here.context, words[0]))
    show_answer(
        here,
        "product show",
        answer,
        json,
        lambda: product_page(answer, here.facts.sources),
    )


def register(app: typer.Typer) -> None:
    """Add the command group."""
    app.add_typer(product, name="product")
