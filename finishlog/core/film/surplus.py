"""Surplus that is wiped off: was it off in time, and what settles it where it was not.

What set before it was wiped never hardens by waiting: its own solvent takes it off, a fresh coat
of the same finish wets it again, or a test shows that it is not sticky. common practice
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime, timedelta
from itertools import pairwise

from msgspec import Struct

from finishlog.core.film.layers import Layer
from finishlog.core.finish.classes import Limit
from finishlog.core.log.entries import Work
from finishlog.core.log.words import Found, Operation

# What shows that no surplus is left: the first a light touch, on the coat itself.
_HOLDS = frozenset({Found.HOLDS})
_NOT_STICKY = frozenset({Found.DRY, Found.NO_PRINT, Found.POWDER, Found.HOLDS, Found.RESISTS})


# Of what is wiped off, what soaks in and comes back out.
_BLEEDS = "oil"
# A wipe so long before the moment counts for it: nobody wipes by the minute. Our own rule.
_ABOUT = timedelta(minutes=10)


class LookAgain(Struct, frozen=True):
    """When oil may have come back out of the pores, by when it sets, and whether it was wiped."""

    after_h: float
    at: datetime
    sets: datetime
    wiped: bool


def looks_again(layer: Layer, after_h: Sequence[Limit]) -> tuple[LookAgain, ...]:
    """Return when a flooded oil is looked at again once its surplus is off; hours since the wipe.

    What was put on thin does not come back; nor does what nobody wiped, or wiped when it had set.
    """
    flooded, figure = layer.coat.flooded, layer.of.wipe_off_h
    if not flooded or figure is None or layer.of.family != _BLEEDS or not layer.wipes:
        return ()
    if wiped_late((layer,)):
        return ()
    first, *again = layer.wipes
    sets = timedelta(minutes=round(60 * figure.high_h))
    times = [(each.value, first.when.latest + timedelta(hours=each.value)) for each in after_h]
    return tuple(
        LookAgain(hours, at, at + sets, any(wipe.when.latest >= at - _ABOUT for wipe in again))
        for hours, at in times
    )


class LateWipe(Struct, frozen=True):
    """A first wipe that came when the surplus may have set: how long after the coat.

    `surely`: at every reading of two times that are only roughly known.
    """

    layer: Layer
    wipe: Work
    after: timedelta
    surely: bool


def wiped_late(layers: Sequence[Layer], *, by_tests: bool = True) -> tuple[LateWipe, ...]:
    """Return the wipes that came too late and that nothing settled, the topmost layer's first.

    `by_tests`: whether a test settles it, which tells only that it did no harm.
    """
    found = []
    for under, over in pairwise((*layers, None)):
        assert under is not None
        wetted_again = over is not None and over.coat.is_whole and over.of.key == under.of.key
        late = None if wetted_again else _late(under)
        if late is not None and not is_settled(under, late.wipe, by_tests=by_tests):
            found.append(late)
    return tuple(reversed(found))


def _late(layer: Layer) -> LateWipe | None:
    figure = layer.of.wipe_off_h
    if figure is None or not layer.wipes:
        return None
    within, first = timedelta(minutes=round(60 * figure.high_h)), layer.wipes[0]
    longest = first.when.latest - layer.first_on
    if longest <= within:
        return None
    shortest = first.when.earliest - layer.put_on
    return LateWipe(layer, first, max(shortest, timedelta()), surely=shortest > within)


def is_settled(layer: Layer, since: Work | None = None, *, by_tests: bool = True) -> bool:
    """Tell whether a surplus is off after all: a solvent took it off, or a test found none."""
    # A glaze that set thick feels dry, and has too little binder to hold.
    proofs = _HOLDS if layer.of.family == "glaze" else _NOT_STICKY
    tests = [c for c in (*layer.checks, *layer.scratches) if c.found in proofs and by_tests]
    rubbed = [w for w in layer.wipes if w.operation is Operation.SOLVENT_WIPE]
    if since is None:
        return bool(tests or rubbed)
    return any(each.when.order >= since.when.order for each in (*tests, *rubbed))
