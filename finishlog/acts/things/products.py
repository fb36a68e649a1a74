"""Put products on record with what their labels say, change them, put them away."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from finishlog.acts.answers.made import Made, a_name, free_name, in_words
from finishlog.acts.answers.reconsidered import MovedDate, moved_dates
from finishlog.acts.meant.said import one_meant
from finishlog.asks.look.look import Look, look
from finishlog.asks.things.classes import class_key
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.finish.classes import Colder, Figure, RecoatWindow, Sheen, judged_by
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Coat
from finishlog.core.measure.quantities import celsius, typed_celsius
from finishlog.core.shop.things import Product, ThingKind
from finishlog.errors import UsageFault
from finishlog.picking import pick_product
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.add import add_product
from finishlog.store.things.changes import ADDED, changed
from finishlog.store.things.edit import product_has_coats, set_value
from finishlog.store.things.labels import put_label_figure, put_label_window
from finishlog.store.things.pointed_to import is_there, whole_path
from finishlog.store.things.read_shop import read_shop


class ProductTyped(Struct, frozen=True):
    """A product as typed: its class and what its label says."""

    name: str
    class_typed: str
    label: Mapping[Stage, Figure]
    window: RecoatWindow | None = None
    note: str = ""
    sheen: Sheen | None = None


def new_product(context: Context, typed: ProductTyped) -> Made:
    """Put a product on record with the figures on its label."""
    with context.writing("product new") as ledger:
        return put_product(context, ledger, typed)


def put_product(context: Context, ledger: Ledger, typed: ProductTyped) -> Made:
    """Put a product on record within an act."""
    name = a_name(typed.name, "product")
    key = class_key(context.facts, typed.class_typed)
    echo = _echo(typed, context.facts.finish_class(key).stages)
    lent = free_name(ledger, ThingKind.PRODUCT, name)
    product = add_product(
        ledger.connection, name, key, context.clock.now, note=typed.note, sheen=typed.sheen
    )
    changed(ledger, ThingKind.PRODUCT, product, ADDED, "", name)
    put_label(ledger, product, typed, context.clock.now)
    shines = [typed.sheen.value] if typed.sheen else []
    return Made("product", name, in_words(", ".join([key, *shines, *echo]), lent))


class Labelled(Struct, frozen=True):
    """A label as it was changed.

    `moved`: the dates of coats that are on, by the label they went on by and by this one; they keep
    the first unless they were judged anew (`judged`).
    """

    act: int
    kind: str
    name: str
    detail: str
    moved: tuple[MovedDate, ...] = ()
    judged: bool = False


def label_product(context: Context, typed: ProductTyped, *, coats_too: bool = False) -> Labelled:
    """Change what a label says from now on; tell which coats that are on it would move.

    They keep what they were judged by, or with `coats_too` are judged by this label: it said so all
    along. One undo takes all of it back.
    """
    if not typed.label and typed.window is None:
        raise UsageFault(
            "nothing to change on the label",
            f"say what it says: {Do.PRODUCT_LABEL.option(recoat='4h')}",
        )
    with context.writing("product label") as ledger:
        before = look(context, ledger.connection)
        product = pick_product(before.shop, typed.name)
        echo, moved = relabel(ledger, before, product, typed, coats_too=coats_too)
        detail = ", ".join([product.class_key, *echo])
        return Labelled(ledger.act_id, "label", product.name, detail, moved, coats_too)


def relabel(
    ledger: Ledger, before: Look, product: Product, typed: ProductTyped, *, coats_too: bool
) -> tuple[list[str], tuple[MovedDate, ...]]:
    """Change a label within an act; return what was understood, and which dates it moves."""
    context, now = before.context, before.clock.now
    of = context.facts.finish_class(product.class_key)
    echo = _echo(typed, {**of.stages, **product.label})
    put_label(ledger, product.id, typed, now, ledger.act_id)
    window = typed.window or product.label_window
    figures = judged_by(of, {**product.label, **typed.label}, window, context.facts.version)
    judged = {
        coat.id: replace(coat, figures=figures)
        for coat in before.log.entries
        if isinstance(coat, Coat) and coat.product == product.id
    }
    entries = tuple(judged.get(entry.id, entry) for entry in before.log.entries)
    after = before.by(replace(before.log, entries=entries), now)
    if coats_too:
        for was, coat in judged.items():
            ledger.record(coat, supersedes=was)
    return echo, moved_dates(before, after)


def _echo(typed: ProductTyped, known: Mapping[Stage, Figure]) -> list[str]:
    """Say back what was understood; UsageFault when a window closes before the recoat time.

    `known`: the figures that hold where the label says nothing.
    """
    closes = typed.window.closes if typed.window else None
    recoat = typed.label.get(Stage.RECOAT, known.get(Stage.RECOAT))
    if recoat and closes and closes.low_h <= recoat.low_h:
        hint = Do.PRODUCT_NEW.option(recoat="3h", window="24h")
        if typed.label.get(Stage.RECOAT) is None:
            hint = f"say from when on: {Do.PRODUCT_NEW.option(window=f'0-{typed_hours(closes)}')}"
        raise UsageFault(
            f"a window of {closes.low_h:g} h closes before {recoat.low_h:g} h to recoat",
            f"look at the can again: {hint}",
        )
    said = [f"{stage.value} {_hours(figure)}" for stage, figure in typed.label.items()]
    return [*said, *([window_words(typed.window)] if typed.window else [])]


def window_words(window: RecoatWindow) -> str:
    """Say a recoat window back: `window 24 h`, `window 1 h, again from 48 h on`."""
    if window.closes is None:
        return "no window"
    again = window.again
    if again is None:
        return f"window {_hours(window.closes)}"
    until = f" to {_hours(again.closes)}" if again.closes else " on"
    how = ", scuffed" if again.scuffed else ""
    return f"window {_hours(window.closes)}, again from {_hours(again.opens)}{until}{how}"


def typed_window(window: RecoatWindow) -> str:
    """Spell a recoat window as it is typed: `24h`, `1h, 48h- scuffed`."""
    assert window.closes is not None
    again = window.again
    if again is None:
        return typed_hours(window.closes)
    until = typed_hours(again.closes) if again.closes else ""
    how = " scuffed" if again.scuffed else ""
    return f"{typed_hours(window.closes)}, {typed_hours(again.opens)}-{until}{how}"


def typed_hours(figure: Figure) -> str:
    """Spell hours as they are typed: `4h`, `4-6h`; with rows for colder air `6h, 16h@13C`."""
    rows = (f"{_typed(row)}@{typed_celsius(row.temperature_c)}" for row in figure.colder)
    return ", ".join((_typed(figure), *rows))


def _typed(row: Figure | Colder) -> str:
    low, high = (f"{hours:g}" for hours in (row.low_h, row.high_h))
    return f"{low}h" if low == high else f"{low}-{high}h"


def _hours(figure: Figure) -> str:
    if not figure.colder:
        return _span(figure)
    rows = zip(figure.at_c, figure.rows, strict=True)
    return ", ".join(f"{_span(row)} at {celsius(degrees, 1)}" for degrees, row in rows)


def _span(row: Figure | Colder) -> str:
    ends = [f"{h:g} h" if h >= 1 else f"{60 * h:.0f} min" for h in (row.low_h, row.high_h)]
    return " to ".join(dict.fromkeys(ends))


def put_label(
    ledger: Ledger, product: int, typed: ProductTyped, since: datetime, act: int | None = None
) -> None:
    """Put what a label says on record; `act`: what undo takes back."""
    for stage, figure in typed.label.items():
        put_label_figure(ledger.connection, product, stage, figure, since, act)
    if typed.window is not None:
        put_label_window(ledger.connection, product, typed.window, since, act)


def sheen_word(typed: str) -> Sheen:
    """Read how a finish shines; UsageFault names the words there are."""
    return one_meant(Sheen, typed, f"no finish shines {typed!r}")


def edit_product(
    context: Context,
    typed: str,
    *,
    finish: str | None,
    note: str | None,
    sheen: Sheen | None = None,
    sds: str | None = None,
) -> Made:
    """Change a product's note, sheen and where its safety data sheet lies.

    Its class too, while no coat was judged by it.
    """
    if finish is None and note is None and sheen is None and sds is None:
        raise UsageFault(
            "nothing to change",
            f"say what: {Do.PRODUCT_EDIT.options('class', 'note', 'sheen', 'sds')} "
            f"({Do.PRODUCT_LABEL.words()} for hours)",
        )
    key = class_key(context.facts, finish) if finish is not None else ""
    with context.writing("product edit") as ledger:
        product = pick_product(read_shop(ledger.connection, context.clock.now), typed)
        if key and key != product.class_key:
            if product_has_coats(ledger.connection, product.id):
                raise UsageFault(
                    f"coats of {product.name} were judged as {product.class_key} and stay so",
                    f"put the other finish on record: {Do.PRODUCT_NEW('NAME', class_=key)}",
                )
            shown = (product.class_key, key)
            set_value(ledger, ThingKind.PRODUCT, product.id, "class_key", key, shown, "class")
        if note is not None:
            set_value(ledger, ThingKind.PRODUCT, product.id, "note", note, (product.note, note))
        if sheen is not None:
            shown = (product.sheen.value if product.sheen else "", sheen.value)
            set_value(ledger, ThingKind.PRODUCT, product.id, "sheen", sheen.value, shown)
        lies = ""
        if sds is not None:
            file = whole_path(sds) if sds else None
            path = str(file or "")
            set_value(ledger, ThingKind.PRODUCT, product.id, "sds", path, (product.sds, path))
            lies = _lies(file)
    shines, noted = sheen.value if sheen else "", "note changed" if note is not None else ""
    return Made("product", product.name, in_words(key, shines, noted, lies))


def _lies(sheet: Path | None) -> str:
    if sheet is None:
        return "no sheet"
    return f"its sheet: {sheet}{'' if is_there(sheet) else ' (nothing lies there now)'}"
