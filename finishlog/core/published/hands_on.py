"""How long work keeps a person's hands busy: set-up, each piece and face, clean-up.

All in minutes. No source publishes them for a shop of one, so they are spans of the trade, and the
longer end is what a plan counts on.
"""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from finishlog.core.finish.classes import Method, Range
from finishlog.core.log.entries import Operation


class Each(Struct, frozen=True):
    """Minutes for one face of one piece; where `per_piece`, for one piece with all its faces."""

    each_min: Range
    per_piece: bool


class HandsOn(Struct, frozen=True):
    """The figures: coats, set-up and clean-up by method, other work by operation.

    Between dusty work and a coat: `vacuum_min` at it, then `settle_min` until the dust is down, in
    which nobody has to stand by. Wood that was wetted dries for `wet_wood_min` before it is sanded
    or coated.
    """

    set_up_min: Mapping[Method, Range]
    clean_up_min: Mapping[Method, Range]
    coat: Mapping[Method, Each]
    work: Mapping[Operation, Each]
    vacuum_min: Range
    settle_min: Range
    wet_wood_min: Range

    def each(self, operation: Operation, method: Method | None = None) -> Each:
        """Return the figure for one kind of work; a coat of no named method is brushed."""
        if operation is Operation.COAT:
            return self.coat[method or Method.BRUSH]
        return self.work[operation]


def minutes_at_it(
    figures: HandsOn, operation: Operation, method: Method | None, pieces: int, faces: int
) -> float:
    """Return the minutes at the pieces alone, as when the brush is wet already and stays so."""
    each = figures.each(operation, method)
    return each.each_min.high * pieces * (1 if each.per_piece else faces)
