"""A product's own label, and what the person says beyond it: what holds from a moment on.

A correction adds a row and never changes one, so that what an earlier coat went by can be seen; the
rows of an act that was taken back do not count.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Row, select, union

from finishlog.core.finish.classes import Figure, RecoatWindow
from finishlog.core.finish.stages import Stage
from finishlog.core.shop.own_rules import Own, OwnRule
from finishlog.store.log.figures import (
    colder_values,
    figure_of,
    figure_values,
    window_of,
    window_values,
    with_colder,
)
from finishlog.store.log.heads import read_withdrawals
from finishlog.store.log.in_force import withdrawn_acts
from finishlog.store.schema import tables
from finishlog.store.schema.asked import Question, ask
from finishlog.store.schema.rows import add_row, up_to


def put_label_figure(
    connection: Connection,
    product: int,
    stage: Stage,
    figure: Figure | None,
    valid_from: datetime,
    act: int | None = None,
) -> None:
    """Set what the label says of a stage; None: it says nothing of it any more.

    `act`: what undo takes back; None: nothing does.
    """
    values = {**figure_values(figure), **colder_values(figure)} if figure else {}
    where = {"product_id": product, "stage": stage, "valid_from": valid_from, "act_id": act}
    add_row(connection, tables.product_figure, **where, **values)


def put_label_window(
    connection: Connection,
    product: int,
    window: RecoatWindow | None,
    valid_from: datetime,
    act: int | None = None,
) -> None:
    """Set the recoat window of the label; None: the label says nothing of it any more."""
    values = window_values(window) if window else {}
    where = {"product_id": product, "valid_from": valid_from, "act_id": act}
    add_row(connection, tables.product_window, **where, **values)


def put_own_rule(
    connection: Connection, product: int, rule: OwnRule, valid_from: datetime, act: int | None
) -> None:
    """Keep what the person says of a product; `act`: what undo takes back."""
    wait = figure_values(rule.wait) if rule.wait else {}
    add_row(
        connection,
        tables.product_says,
        product_id=product,
        own=rule.own,
        of_names=rule.of,
        of_product_id=rule.product,
        between_names=rule.between,
        coats=rule.count,
        thickest_um=rule.thickest_um,
        figure=rule.figure,
        because=rule.because,
        valid_from=valid_from,
        act_id=act,
        **{f"wait_{name}": value for name, value in wait.items()},
    )


_SAYS, _FIGURES, _WINDOWS = map(up_to, ("product_says", "product_figure", "product_window"))


def read_own_rules(connection: Connection, now: datetime) -> Mapping[int, tuple[OwnRule, ...]]:
    """Read what the person says of products at a moment, by product, the oldest first."""
    found: dict[int, list[OwnRule]] = defaultdict(list)
    for row in _standing(connection, _SAYS, now):
        wait = figure_of(row, "wait_") if row.wait_low_h is not None else None
        rule = OwnRule(
            Own(row.own),
            row.of_names,
            row.of_product_id,
            row.between_names,
            wait,
            row.coats,
            row.because,
            row.act_id,
            row.thickest_um,
            row.figure,
        )
        found[row.product_id].append(rule)
    return {product: tuple(rules) for product, rules in found.items()}


def label_acts(connection: Connection) -> frozenset[int]:
    """Return the acts that changed a label, or what is said beyond it."""
    of = tables.product_figure, tables.product_window, tables.product_says
    acts = union(*(select(table.c.act_id) for table in of))
    return frozenset(connection.scalars(acts)) - {None}


def _standing(connection: Connection, of: Question, now: datetime) -> Iterator[Row[Any]]:
    """Yield the rows that hold at a moment, the oldest first; not those of acts taken back."""
    rows = ask(connection, of, now=now)
    undoable = any(row.act_id is not None for row in rows)
    undone = withdrawn_acts(read_withdrawals(connection)) if undoable else {}
    return (row for row in rows if row.act_id not in undone)


def read_label_figures(
    connection: Connection, now: datetime
) -> Mapping[int, Mapping[Stage, Figure]]:
    """Read the figures that hold at a moment, by product."""
    found: dict[int, dict[Stage, Figure]] = defaultdict(dict)
    for row in _standing(connection, _FIGURES, now):
        found[row.product_id].pop(Stage(row.stage), None)
        if row.low_h is not None:
            found[row.product_id][Stage(row.stage)] = with_colder(figure_of(row), row)
    return found


def read_label_windows(connection: Connection, now: datetime) -> Mapping[int, RecoatWindow | None]:
    """Read the recoat windows that hold at a moment, by product."""
    return {
        row.product_id: window_of(row) if row.window_kind else None
        for row in _standing(connection, _WINDOWS, now)
    }
