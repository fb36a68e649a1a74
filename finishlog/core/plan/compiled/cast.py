"""Who plays a story, and what a task of it is in the shop."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from msgspec import Struct, field

from finishlog.core.log.entries import Target
from finishlog.core.log.words import Operation
from finishlog.core.plan.compiled.story import Deed
from finishlog.core.shop.things import Part


class Cast(Struct, frozen=True):
    """Who plays a story: for each piece that stands for all those that do, and for its zones.

    `parts`: the part of the story to the one that plays it.
    """

    parts: Mapping[int, Part]
    pieces: Mapping[int, tuple[int, ...]]
    zones: Mapping[int, int] = field(default_factory=dict)

    def of(self, targets: Iterable[Target]) -> frozenset[Target]:
        """Return the zones of all who play some zones of a story."""
        return frozenset(
            Target(piece, self.zones.get(t.zone, t.zone))
            for t in targets
            for piece in self.pieces[t.piece]
        )


class Doing(Struct, frozen=True):
    """What a task of the search is in the shop: what is done to which faces, and in which story."""

    deed: Deed
    part: Part
    on: frozenset[Target]

    @property
    def operation(self) -> Operation:
        """What is done."""
        return self.deed.operation

    @property
    def product(self) -> int | None:
        """What is put on, by its id."""
        return self.deed.task.product

    @property
    def is_price(self) -> bool:
        """Tell whether no step asks for it: a scuffing that a coat wants."""
        return self.deed.is_price
