"""How a wait goes on hour by hour: the air, its pace, the label's hours done; a line to draw."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta
from functools import partial

from msgspec import Struct

from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.span import Known
from finishlog.core.film.layers import Layer
from finishlog.core.finish.classes import Figure
from finishlog.core.finish.rate_law import rate


class CourseHour(Struct, frozen=True):
    """One moment of a wait.

    `air`: the one that the wait counts, None: nothing is known; `pace`: equivalent hours an hour;
    `done_h`: the label's hours done by then.
    """

    moment: datetime
    air: Air | None
    known: Known
    pace: float
    done_h: float


def drying_course(
    layer: Layer, figure: Figure, until: datetime, points: int
) -> tuple[CourseHour, ...]:
    """Return a wait at so many moments (two or more), from its beginning to `until`."""
    since = layer.dries_since
    if until <= since:
        return ()
    step = (until - since) / (points - 1)
    return tuple(_hours(layer, figure, since, step, points))


def _hours(
    layer: Layer, figure: Figure, since: datetime, step: timedelta, points: int
) -> Iterator[CourseHour]:
    wet, dry = layer.countings(figure)
    soft = layer.soft_h
    for n in range(points):
        moment = since + step * n
        span, done = layer.drying_air.span_at(moment), layer.done_h(figure, moment)
        counting = wet if done < soft else dry
        # Of several airs that may be true the wait counts the slowest.
        air = min(span.airs, key=partial(rate, counting.law), default=None)
        yield CourseHour(moment, air, span.known, counting.pace(span), done)
