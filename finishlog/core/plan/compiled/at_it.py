"""How long the tasks of a story keep hands busy, for all who play it."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from msgspec import Struct

from finishlog.core.log.entries import Target, Work
from finishlog.core.log.words import Operation
from finishlog.core.plan.compiled.cast import Cast
from finishlog.core.plan.compiled.clocks import last_glued
from finishlog.core.plan.compiled.story import Deed, Story
from finishlog.core.plan.jobs_that_fit import Hands


class AtIt(Struct, frozen=True):
    """Counts minutes, rounded up; `longest_min`: those of the longest opening."""

    story: Story
    cast: Cast
    hands: Hands
    longest_min: int

    def batches(self, deed: Deed) -> Iterator[frozenset[Target]]:
        """Yield the zones of a task; of one too long for any opening, of some pieces at a time."""
        every = self.cast.of(deed.on)
        minutes = self.minutes(deed, every) + self.around(deed)
        pieces = sorted({t.piece for t in every})
        if minutes <= self.longest_min or deed.operation is Operation.GLUE_UP or len(pieces) < 2:
            yield every
            return
        room = max(1, self.longest_min - self.around(deed))
        count = min(len(pieces), ceil(self.minutes(deed, every) / room))
        size = ceil(len(pieces) / count)
        for n in range(0, len(pieces), size):
            some = set(pieces[n : n + size])
            yield frozenset(t for t in every if t.piece in some)

    def around(self, deed: Deed) -> int:
        """Return set-up and clean-up."""
        product = deed.task.product
        return ceil(self.hands.set_up(product)) + ceil(self.hands.clean_up(product))

    def minutes(self, deed: Deed, on: frozenset[Target]) -> int:
        """Return the minutes at the pieces, wiping before and after a coat included."""
        figures = self.hands.facts.hands_on
        if deed.operation is Operation.GLUE_UP:
            return ceil(figures.each(Operation.GLUE_UP).each_min.high * len(deed.entries))
        of = self.hands.product_class(deed.task.product)
        done = [(deed.operation, of.methods[0] if of else None)]
        if _is_wiped_first(deed):
            done.append((Operation.SOLVENT_WIPE, None))
        minutes = 0.0
        for operation, method in done:
            each = figures.each(operation, method)
            minutes += each.each_min.high * self.count(deed, on, per_piece=each.per_piece)
        return ceil(minutes) + self.wipe_off(deed, on)

    def until_last_piece(self, deed: Deed, on: frozenset[Target]) -> int:
        """Return the minutes until the last piece of a batch is coated, from the first one on."""
        pieces, coating = len({t.piece for t in on}), self.minutes(deed, on)
        return ceil(coating * (pieces - 1) / pieces)

    def wipe_off(self, deed: Deed, on: frozenset[Target]) -> int:
        """Return the minutes to take the surplus off again; none where the class leaves none."""
        of = self.hands.product_class(deed.task.product)
        if of is None or of.wipe_off_h is None:
            return 0
        each = self.hands.facts.hands_on.each(Operation.WIPE)
        return ceil(each.each_min.high * self.count(deed, on, per_piece=each.per_piece))

    def count(self, deed: Deed, on: frozenset[Target], *, per_piece: bool) -> int:
        """Count the faces of some zones, or their pieces."""
        if per_piece and self._is_joined(deed):
            last = self.story.zones.last
            return len({last[t].piece.id for t in on})
        if per_piece:
            return len({t.piece for t in on})
        faces = {t.zone: self.story.zones.first[t].face.id for t in deed.on}
        back = {self.cast.zones.get(z, z): face for z, face in faces.items()}
        return len({(t.piece, back[t.zone]) for t in on})

    def _is_joined(self, deed: Deed) -> bool:
        story = self.story
        return any(last_glued(story.before(deed, t), t) is not None for t in deed.on)


def _is_wiped_first(deed: Deed) -> bool:
    first = deed.entries[0]
    return isinstance(first, Work) and first.operation is Operation.SOLVENT_WIPE and deed.is_coat
