"""A product's own label: figures and window that hold from a moment on.

A correction adds a row and never changes one, so that what an earlier coat went by can be seen.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from datetime import datetime

from sqlalchemy import Connection, select

from finishlog.core.finishes import Figure, RecoatWindow
from finishlog.core.stages import Stage
from finishlog.store.figures import figure_of, figure_values, window_of, window_values
from finishlog.store.rows import add_row
from finishlog.store.schema_things import product_figure, product_window


def put_label_figure(
    connection: Connection,
    product: int,
    stage: Stage,
    figure: Figure | None,
    valid_from: datetime,
) -> None:
    """Set what the label says of a stage; None: it says nothing of it any more."""
    values = figure_values(figure) if figure else {}
    where = {"product_id": product, "stage": stage, "valid_from": valid_from}
    add_row(connection, product_figure, **where, **values)


def put_label_window(
    connection: Connection, product: int, window: RecoatWindow | None, valid_from: datetime
) -> None:
    """Set the recoat window of the label; None: the label says nothing of it any more."""
    values = window_values(window) if window else {}
    add_row(connection, product_window, product_id=product, valid_from=valid_from, **values)


def read_label_figures(
    connection: Connection, now: datetime
) -> Mapping[int, Mapping[Stage, Figure]]:
    """Read the figures that hold at a moment, by product."""
    of = product_figure.c
    query = select(product_figure).where(of.valid_from <= now).order_by(of.valid_from, of.id)
    found: dict[int, dict[Stage, Figure]] = defaultdict(dict)
    for row in connection.execute(query):
        found[row.product_id].pop(Stage(row.stage), None)
        if row.low_h is not None:
            found[row.product_id][Stage(row.stage)] = figure_of(row)
    return found


def read_label_windows(connection: Connection, now: datetime) -> Mapping[int, RecoatWindow | None]:
    """Read the recoat windows that hold at a moment, by product."""
    of = product_window.c
    query = select(product_window).where(of.valid_from <= now).order_by(of.valid_from, of.id)
    return {
        row.product_id: window_of(row) if row.window_kind else None
        for row in connection.execute(query)
    }
