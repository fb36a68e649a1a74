"""Figures, recoat windows and the sets that coats are judged by, to and from rows.

A set is content-addressed: its digest is made of all its values, and coats that were judged by
the same figures share it. `Figure.also` (other sources' readings, shown and never used) is not
part of what a coat was judged by and is not kept.
"""

from __future__ import annotations

import hashlib
import json
from collections import defaultdict
from collections.abc import Collection, Iterator, Mapping
from typing import Any

from msgspec.structs import astuple, replace
from sqlalchemy import Connection, Row, insert, select

from finishlog.core.air.psychrometrics import Air
from finishlog.core.finish.classes import (
    Colder,
    Figure,
    FigureSet,
    RecoatWindow,
    Reopening,
    WindowKind,
)
from finishlog.core.finish.stages import Stage
from finishlog.store.log import kept
from finishlog.store.schema import tables
from finishlog.store.schema.rows import add_row, rows_of, whole

Values = Mapping[str, object]


_FIGURE = (
    "low_h", "typical_h", "high_h", "source", "at_temperature_c", "at_humidity_pct", "note"
)  # fmt: skip


def figure_values(figure: Figure) -> Values:
    """Lay out a figure as the columns of a stage."""
    hours = (float(figure.low_h), float(figure.typical_h), float(figure.high_h))
    air = (float(figure.at.temperature_c), float(figure.at.humidity_pct))
    return dict(zip(_FIGURE, (*hours, figure.source, *air, figure.note), strict=True))


def colder_values(figure: Figure) -> Values:
    """Lay out what a figure says of colder air; one that says nothing has no such column."""
    rows = [tuple(map(float, astuple(row))) for row in figure.colder]
    return {"colder": rows} if rows else {}


def figure_of(row: Row[Any], before: str = "") -> Figure:
    """Read a figure from its columns, whose names begin with `before`."""
    low, typical, high, source, warm, damp, note = (
        getattr(row, f"{before}{name}") for name in _FIGURE
    )
    return Figure(low, typical, high, source, Air(warm, damp), note)


def with_colder(figure: Figure, row: Row[Any]) -> Figure:
    """Read what a figure says of colder air."""
    if not row.colder:
        return figure
    return replace(figure, colder=tuple(Colder(*each) for each in row.colder))


def window_values(window: RecoatWindow) -> Values:
    """Lay out a recoat window as columns."""
    closes = figure_values(window.closes) if window.closes else {}
    return {
        **_again_values(window.again),
        "window_kind": window.kind.value,
        "window_source": window.source,
        "window_note": window.note,
        **{f"closes_{name}": value for name, value in closes.items()},
    }


def window_of(row: Row[Any]) -> RecoatWindow:
    """Read a recoat window from its columns."""
    closes = figure_of(row, "closes_") if row.closes_low_h is not None else None
    return RecoatWindow(
        WindowKind(row.window_kind), row.window_source, closes, row.window_note, _again(row, closes)
    )


def _again_values(again: Reopening | None) -> Values:
    """Lay out the second part of a window; a window without one has no such columns."""
    if again is None:
        return {}
    return {
        "again_opens_h": float(again.opens.low_h),
        "again_closes_h": float(again.closes.low_h) if again.closes else None,
        "again_scuffed": again.scuffed,
    }


def _again(row: Row[Any], closes: Figure | None) -> Reopening | None:
    """Read the second part of a window: hours at the air of the first."""
    if row.again_opens_h is None or closes is None:
        return None
    opens, shuts = (
        None if h is None else replace(closes, low_h=h, typical_h=h, high_h=h)
        for h in (row.again_opens_h, row.again_closes_h)
    )
    assert opens is not None
    return Reopening(opens, shuts, bool(row.again_scuffed))


def keep_figures(connection: Connection, figures: FigureSet) -> int:
    """Return the id of the set with exactly these figures, adding it when it is new."""
    head = {
        "class_key": figures.class_key,
        "facts_version": figures.facts_version,
        **window_values(figures.window),
    }
    stages = {
        stage.value: {**figure_values(of), **colder_values(of)}
        for stage, of in figures.stages.items()
    }
    digest = _digest(head, stages)
    of = tables.figure_set.c
    known = connection.scalar(select(of.id).where(of.digest == digest))
    return known if known is not None else _add(connection, {"digest": digest, **head}, stages)


def _digest(head: Values, stages: Mapping[str, Values]) -> str:
    written = json.dumps([head, stages], sort_keys=True, ensure_ascii=False)
    return hashlib.sha256(written.encode()).hexdigest()


def _add(connection: Connection, head: Values, stages: Mapping[str, Values]) -> int:
    added = add_row(connection, tables.figure_set, **head)
    if stages:
        rows = [
            {"set_id": added, "stage": stage, "colder": (), **of} for stage, of in stages.items()
        ]
        connection.execute(insert(tables.figure_set_stage), rows)
    return added


_STAGES = whole("figure_set_stage", by="set_id")
_SETS = whole("figure_set", by="id")


def read_figures(connection: Connection, ids: Collection[int]) -> dict[int, FigureSet]:
    """Read sets by their ids."""
    return kept.by_id(connection, "figures", ids, lambda missing: _sets(connection, missing))


def _sets(connection: Connection, ids: Collection[int]) -> Iterator[tuple[int, FigureSet]]:
    stages: dict[int, dict[Stage, Figure]] = defaultdict(dict)
    for row in rows_of(connection, _STAGES, ids):
        stages[row.set_id][Stage(row.stage)] = with_colder(figure_of(row), row)
    for row in rows_of(connection, _SETS, ids):
        of = FigureSet(row.class_key, row.facts_version, stages[row.id], window_of(row))
        yield row.id, of
