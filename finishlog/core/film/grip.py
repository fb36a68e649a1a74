"""Does the next coat hold by itself, or by a scuffing, was it scuffed, did a check answer it?

And was washed off what a cure leaves on a film, where it lies open and under what covers it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime
from itertools import pairwise

from finishlog.core.film import checks as film_checks
from finishlog.core.film.layers import Layer
from finishlog.core.finish.classes import FinishClass, WindowKind
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found, Operation

# A next coat holds by these; taking off nibs gives no grip.
GRIPS = frozenset({Operation.SCUFF, Operation.SAND, Operation.STEEL_WOOL})
_GRADE = re.compile(r"^[Pp]?([1-9]\d{1,3})$")

# The finer the more noughts; no paper is called so.
_WOOL = re.compile(r"^[#P]?0{2,5}$")


def grade_of(grit: str) -> float | None:
    """Return the P grade of a paper as it was typed; None: it is a pad, or steel wool."""
    grade = _GRADE.match(grit.strip())
    return float(grade[1]) if grade else None


def is_steel_wool(operation: Operation, grit: str) -> bool:
    """Tell whether work is done with steel wool: by name, or by its grade (`0000`)."""
    by_grade = operation in {Operation.SCUFF, Operation.DENIB, Operation.SAND}
    return operation is Operation.STEEL_WOOL or (by_grade and bool(_WOOL.match(grit.strip())))


def wants_scuffing(layer: Layer, now: datetime) -> bool:
    """Tell whether its window lets a coat on a scuffed film alone at a moment."""
    window, closes = layer.coat.figures.window, layer.closes(now)
    if window.again is not None and window.again.scuffed and layer.is_open_again(now):
        return True
    return window.kind is WindowKind.ALWAYS_SCUFF or (closes is not None and now > closes)


def covers(layer: Layer) -> bool:
    """Tell whether a next coat meets nothing of what lies below it."""
    return layer.coat.is_whole and not layer.of.fills_spots


def has_edge(layer: Layer) -> bool:
    """Tell whether it is a film that was broken off, whose edge the next coat does not melt."""
    melts = layer.of.window.kind is WindowKind.MELTS_IN
    return layer.of.builds_film and not melts and not layer.coat.is_whole


def was_scuffed(layer: Layer) -> bool:
    """Tell whether it was scuffed or sanded when it could be.

    Round a spot of colour it is the film below that was.
    """
    sand = None if layer.on_a_spot else layer.stage(Stage.SAND)
    since = sand.low if sand else layer.put_on
    if since is None:
        return False
    off = layer.was_abraded_off
    return (off is not None and off.when.latest >= since) or any(
        work.operation in GRIPS and work.when.latest >= since for work in layer.abraded
    )


def answered(layers: Sequence[Layer], by: frozenset[Found]) -> bool:
    """Tell whether a check of these layers found one of `by`, and no later one a failure."""
    checks = {c.id: c for layer in layers for c in (*layer.checks, *layer.scratches)}
    for check in sorted(checks.values(), key=lambda c: c.when.order, reverse=True):
        if check.found in by:
            return True
        if film_checks.failed(check.found):
            return False
    return False


def unwashed_open(
    lying_open: Iterable[Layer], over: FinishClass | None, now: datetime
) -> Iterator[Layer]:
    """Yield the unwashed films among those that the next coat would meet."""
    for layer in lying_open:
        bonds = over is not None and _bonds(layer, over, now)
        if layer.of.left_on_top is not None and not layer.washed and not bonds:
            yield layer


def unwashed_below(layers: Sequence[Layer]) -> Iterator[tuple[Layer, Layer]]:
    """Yield each unwashed film and the coat that covers it, from the top down."""
    for under, over in reversed([*pairwise(layers)]):
        is_left = under.of.left_on_top is not None and not under.washed
        if is_left and not _bonds(under, over.of, over.first_on):
            yield under, over


def _bonds(under: Layer, over: FinishClass, at: datetime) -> bool:
    """Tell whether one more of its kind still bonds to a film as it is, unwashed and unsanded."""
    closes = under.closes(at)
    return over.left_on_top is not None and (closes is None or at <= closes)


def met_while_it_set(layer: Layer) -> tuple[float | None, float | None]:
    """Return the coldest (°C) and dampest (% RH) air read while it set, beyond what is harmless.

    None: it was read no colder, no damper.
    """
    left, figure = layer.of.left_on_top, layer.coat.figures.stages.get(Stage.TURN)
    if left is None or figure is None:
        return None, None
    until = layer.waits(figure).high
    read = [air for s in layer.drying_air.until(until) if s.measured for air in s.nearest]
    cold = min((air.temperature_c for air in read), default=left.colder_c.value)
    damp = max((air.humidity_pct for air in read), default=left.damper_pct.value)
    return (
        cold if cold < left.colder_c.value else None,
        damp if damp > left.damper_pct.value else None,
    )
