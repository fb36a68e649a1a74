"""Will a schedule look as a finish of the past does? What shines last, and what lies below it."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from finishlog.asks.look.look import Look
from finishlog.asks.past.done_steps import steps_done
from finishlog.core.film.progress import steps_for
from finishlog.core.finish.classes import Sheen
from finishlog.core.log.words import Operation
from finishlog.core.shop.things import Shop, Step
from finishlog.picking import Zones


class CoatMeant(Struct, frozen=True):
    """A coat of a schedule, or as it was done: its product, class and sheen."""

    product: str
    class_key: str
    sheen: Sheen | None


class Compared(Struct, frozen=True):
    """A schedule beside what was done on `part`: the coats of each, in their order.

    `wood`: what it was done on; empty: it was not told.
    """

    part: str
    wood: str
    mine: tuple[CoatMeant, ...]
    theirs: tuple[CoatMeant, ...]

    @property
    def shines_alike(self) -> bool | None:
        """Tell whether the last coats shine alike; None: a sheen was not said."""
        last = [coats[-1] for coats in (self.mine, self.theirs) if coats]
        if len(last) < 2:
            return None
        if (last[0].product, last[0].class_key) == (last[1].product, last[1].class_key):
            return True
        if last[0].sheen is None or last[1].sheen is None:
            return None
        return last[0].sheen is last[1].sheen

    @property
    def builds_alike(self) -> bool:
        """Tell whether the coats below the last are the same."""
        return self.mine[:-1] == self.theirs[:-1]


def compared(seen: Look, picked: Zones, steps: Sequence[Step]) -> Compared:
    """Lay a schedule beside what stays on a part: of the faces that were named, where some were."""
    part = picked.parts[0]
    if picked.face_named:
        here = [z for z in seen.bench.zones if z.target in picked.targets]
        steps = [s for s in steps if any(steps_for(z.face, (s,), z.zone) for z in here)]
    return Compared(
        part.path,
        part.species or "",
        coats_meant(steps, seen.shop),
        coats_meant(steps_done(seen, picked), seen.shop),
    )


def coats_meant(steps: Sequence[Step], shop: Shop) -> tuple[CoatMeant, ...]:
    """Return the coats among some steps, in their order."""
    known = (
        shop.products[step.product]
        for step in steps
        if step.operation is Operation.COAT and step.product is not None
    )
    return tuple(CoatMeant(each.name, each.class_key, each.sheen) for each in known)
