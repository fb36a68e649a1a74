"""How long work keeps a person's hands busy: set-up, each piece and face, clean-up.

All in minutes. No source publishes them for a shop of one, so they are spans of the trade, and the
longer end is what a plan counts on.
"""

from __future__ import annotations

from collections.abc import Mapping

from finishlog.core.finish.classes import Method, Published, Range
from finishlog.core.log.words import Operation


class Each(Published, frozen=True, kw_only=True):
    """Minutes for one face of one piece, or for one piece with all its faces: one of the two."""

    face_min: Range | None = None
    piece_min: Range | None = None

    def __post_init__(self) -> None:
        if (self.face_min is None) == (self.piece_min is None):
            raise ValueError("`face_min` or `piece_min`: one of the two, and only one")

    @property
    def per_piece(self) -> bool:
        """Tell whether a piece takes as long however many faces it has."""
        return self.piece_min is not None

    @property
    def each_min(self) -> Range:
        """The minutes for one face, or one piece."""
        found = self.piece_min or self.face_min
        assert found is not None
        return found


class ByMethod(Each, frozen=True, kw_only=True):
    """A coat put on in one way: setting up for it, the coat itself, and cleaning up."""

    set_up_min: Range
    clean_up_min: Range


class HandsOn(Published, frozen=True):
    """The figures: coats by method, other work by operation.

    Between dusty work and a coat: `vacuum_min` at it, then `settle_min` until the dust is down, in
    which nobody has to stand by. Wood that was wetted dries for `wet_wood_min` before it is sanded
    or coated.
    """

    methods: Mapping[Method, ByMethod]
    work: Mapping[Operation, Each]
    vacuum_min: Range
    settle_min: Range
    wet_wood_min: Range

    def each(self, operation: Operation, method: Method | None = None) -> Each:
        """Return the figure for one kind of work; a coat of no named method is brushed."""
        if operation is Operation.COAT:
            return self.methods[method or Method.BRUSH]
        return self.work[operation]


def minutes_at_it(
    figures: HandsOn, operation: Operation, method: Method | None, pieces: int, faces: int
) -> float:
    """Return the minutes at the pieces alone, as when the brush is wet already and stays so."""
    each = figures.each(operation, method)
    return each.each_min.high * pieces * (1 if each.per_piece else faces)
