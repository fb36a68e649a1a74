"""Finishes as you know them, with what their labels say."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered, recorded
from finishlog.cli.answering.asking import said, settled
from finishlog.cli.answering.command import Table, command
from finishlog.cli.answering.options import Archived, Name, NoteText, NoteTyped
from finishlog.cli.answering.run import Run
from finishlog.cli.commands.shop.kept import may_be_put_away, may_be_renamed
from finishlog.core.finish.stages import ON_A_LABEL

product = typer.Typer(help="Finishes as you know them.", no_args_is_help=True)

_Stage = Annotated[
    list[str] | None,
    typer.Option(help="What the can says: 4h, 4-6h, overnight; 16h@55F, again for 6h@70F."),
]
_Window = Annotated[
    str | None, typer.Option(help="Recoat without scuffing: 24h, 0-2h, '0-1h, 48h- scuffed'.")
]
_Air = Annotated[str | None, typer.Option(help="The air the label speaks of: '21C 50%'.")]
Label = Annotated[
    dict[str, str | list[str]],
    Table(
        {
            **dict.fromkeys(ON_A_LABEL, _Stage),
            "window": _Window,
            "label-air": _Air,
        }
    ),
]


Shine = Annotated[str, typer.Option("--sheen", help="How it shines: matte, satin, gloss ...")]


@command(product, "product new")
def product_new(
    here: Run,
    name: Name,
    finish: Annotated[str, typer.Option("--class", help="finishlog class list shows them.")],
    label: Label,
    sheen: Shine = "",
    note: NoteText = "",
) -> Answered:
    """Put a product on record with what its label says."""
    from finishlog.acts.things.products import new_product, sheen_word
    from finishlog.cli.typed.files.labels import product_typed

    shines = said(sheen, sheen_word) if sheen else None
    typed = product_typed(name, finish, label, here.temperature, note, shines)
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


@command(
    product,
    "product says",
    epilog="finishlog product says varnish --not-over oil-stain --because 'it lifts it' · "
    "finishlog product says varnish --window '0-1h, 48h-' --coats-a-day 2",
)
def product_says(
    here: Run,
    name: Name,
    not_over: Annotated[
        list[str] | None,
        typer.Option("--not-over", metavar="CLASS", help="It does not go over: a class, any-oil."),
    ] = None,
    needs: Annotated[
        list[str] | None,
        typer.Option("--needs", metavar="CLASS", help="What has to lie between, or below it."),
    ] = None,
    over: Annotated[
        str, typer.Option("--over", metavar="CLASS", help="Over what --needs and --wait hold.")
    ] = "",
    wait: Annotated[str, typer.Option("--wait", help="How long over that: 72h, 3-5d.")] = "",
    window: Annotated[str, typer.Option("--window", help="0-2h, '0-1h, 48h- scuffed'.")] = "",
    no_window: Annotated[bool, typer.Option("--no-window", help="It is never too late.")] = False,
    coats_a_day: Annotated[
        int | None, typer.Option("--coats-a-day", help="So many in a day at most.")
    ] = None,
    most_coats: Annotated[
        int | None, typer.Option("--most-coats", help="So many on one film at most.")
    ] = None,
    thickest: Annotated[str, typer.Option("--thickest", help="A coat or pour at most: 6mm.")] = "",
    not_on: Annotated[
        list[str] | None, typer.Option("--not-on", help="Not on such wood: oily, tannin, teak.")
    ] = None,
    overrule: Annotated[
        list[str] | None,
        typer.Option("--overrule", metavar="ROW", help="A published row that does not hold."),
    ] = None,
    because: Annotated[str, typer.Option("--because", help="Why; said wherever it counts.")] = "",
    label_air: Annotated[str | None, typer.Option("--label-air", help="'21C 50%'.")] = None,
    coats_too: Annotated[
        bool, typer.Option("--coats-too", help="The window: judge the coats that are on by it.")
    ] = False,
) -> Answered:
    """Say what a can says beyond hours, or what you know better; undo takes it back."""
    from finishlog.acts.things.own_rules import SaysTyped, say_of_product
    from finishlog.cli.pages.evening.log_page import label_page
    from finishlog.cli.typed.files.labels import says_typed

    words = {"wait": wait, "window": window, "label-air": label_air, "thickest": thickest}
    typed = says_typed(
        SaysTyped(
            tuple(not_over or ()),
            tuple(needs or ()),
            over,
            coats_a_day=coats_a_day,
            most_coats=most_coats,
            not_on=tuple(not_on or ()),
            overrule=tuple(overrule or ()),
            because=because.strip(),
        ),
        {**words, "no-window": no_window},
        here.temperature,
    )
    said = say_of_product(here.context, name, typed, coats_too=coats_too)
    return Answered(said, lambda: label_page(said, here.words, here.clock))


@command(product, "product edit")
def product_edit(
    here: Run,
    name: Name,
    finish: Annotated[
        str | None, typer.Option("--class", help="Another class, while no coat was logged.")
    ] = None,
    sheen: Shine = "",
    note: NoteTyped = None,
    sds: Annotated[
        str | None,
        typer.Option("--sds", metavar="FILE", help="Its safety data sheet; '': none."),
    ] = None,
) -> Answered:
    """Change a product's class, sheen, note or sheet; what its label says: product label."""
    from finishlog.acts.things.products import edit_product, sheen_word

    shines = said(sheen, sheen_word) if sheen else None
    changed = edit_product(here.context, name, finish=finish, note=note, sheen=shines, sds=sds)
    return recorded(changed)


@command(
    product,
    "product sheet",
    epilog="finishlog product sheet lacquer --lel 1.1% --limit 20ppm --solvent 620g/L · "
    "finishlog product sheet topcoat --free-of isocyanate",
)
def product_sheet(
    here: Run,
    name: Name,
    free_of: Annotated[
        list[str] | None,
        typer.Option("--free-of", metavar="HAZARD", help="Not in it: isocyanate, formaldehyde ..."),
    ] = None,
    holds: Annotated[
        list[str] | None,
        typer.Option("--holds", metavar="HAZARD", help="In it, though its class may not have it."),
    ] = None,
    lel: Annotated[str, typer.Option("--lel", help="Lower explosive limit: 0.7%.")] = "",
    limit: Annotated[
        str, typer.Option("--limit", help="The lowest exposure limit of a day on it: 50ppm.")
    ] = "",
    short_limit: Annotated[
        str, typer.Option("--short-limit", help="The lowest one of 15 minutes: 100ppm.")
    ] = "",
    flash: Annotated[str, typer.Option("--flash", help="Its flash point: 38C, 100F.")] = "",
    solvent: Annotated[
        str, typer.Option("--solvent", help="What leaves: 420g/L, or 45% by weight.")
    ] = "",
    density: Annotated[str, typer.Option("--density", help="How heavy a litre is: 0.9 (kg).")] = "",
    carrier: Annotated[
        str, typer.Option("--carrier", help="What leaves it: water, mineral-spirits, ethanol ...")
    ] = "",
) -> Answered:
    """Say what its safety data sheet says: it outranks the class; undo takes it back."""
    from finishlog.acts.things.sheet import SheetTyped, say_of_sheet
    from finishlog.cli.pages.evening.log_page import sheet_said_page
    from finishlog.cli.typed.files.sheets import sheet_typed

    typed = sheet_typed(
        SheetTyped(tuple(free_of or ()), tuple(holds or ()), carrier),
        {
            "lel": lel,
            "limit": limit,
            "short-limit": short_limit,
            "flash": flash,
            "solvent": solvent,
            "density": density,
        },
    )
    answer = say_of_sheet(here.context, name, typed)
    return Answered(answer, lambda: sheet_said_page(answer))


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
