"""How a product dries here, as the checks of its films taught.

A product's label says D hours. In this shop, with these coats and this judgement, it takes f times
as many. f never shortens a wait, and no window ever asks for it.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar, NamedTuple

from msgspec import Struct, field

from finishlog.core.finish.classes import Figure, Method
from finishlog.core.finish.stages import Stage
from finishlog.core.published.species import WoodKind


class PaceKey(NamedTuple):
    """What dries alike: a product as a first coat on bare wood or later, by method and container.

    `method` and `container` None: not said. With `any_way` both are left out of account. `wood`
    is what a first coat lies on; a later one is asked for with it, and taught without. `unread`: it
    dried in air that nobody read, whose hours are the shop's own: only such a coat asks for it.
    """

    product: int
    first: bool
    method: Method | None = None
    container: int | None = None
    any_way: bool = False
    wood: WoodKind = WoodKind.OTHER
    unread: bool = False

    def however(self) -> PaceKey:
        """Return the key that leaves method and container out of account."""
        return self._replace(method=None, container=None, any_way=True)

    def taught(self) -> PaceKey:
        """Return the key that it is taught by: a later coat does not lie on the wood."""
        return self if self.first else self._replace(wood=WoodKind.OTHER)


class Took(NamedTuple):
    """What a coat took that was found soft past the least hours of its label, and then hard.

    `hours` of the label until it had reached the first of these `stages`; where nobody looked for
    long, not `seen`, until it was soft for the last time.
    """

    stages: frozenset[Stage]
    hours: float
    seen: bool = True


class PaceLearnt(Struct, frozen=True):
    """A factor on the label's hours: median, 5 % and 95 %; from how many coats, and their acts.

    `carried`, `own`: what it lengthens the wait of another coat, and of its own, by at most.
    `damp_pct`: the damp air that they were slow in, % RH; 0: it was not damp, or not read. `took`:
    what the newest of them took, where it was seen to be late.
    """

    key: PaceKey
    median: float
    low: float
    high: float
    coats: int
    acts: tuple[int, ...]
    carried: float
    own: float
    damp_pct: float = 0.0
    took: Took | None = None

    def took_h(self, figure: Figure, stage: Stage | None) -> float:
        """Return what the newest coat took to a stage, in hours of a figure; 0: nobody saw.

        No sooner than that is another coat tried, but for what is carried to it at most.
        """
        if self.took is None or stage not in self.took.stages:
            return 0.0
        return min(self.took.hours, self.carried * figure.high_h)

    @property
    def factor(self) -> float:
        """Return what the wait of another coat is lengthened by: from 1 to `carried`."""
        return min(self.carried, max(1.0, self.median))

    def factor_of(self, act: int) -> float:
        """Return what the wait of a coat is lengthened by: its own by more than another's."""
        return min(self.own, max(1.0, self.median)) if act in self.acts else self.factor


class Paces(Struct, frozen=True):
    """What was learnt, by what dries alike."""

    none: ClassVar[Paces]
    learnt: Mapping[PaceKey, PaceLearnt] = field(default_factory=dict)

    def factor(self, key: PaceKey) -> PaceLearnt | None:
        """Return what was learnt of a key, else of its product any way; None: nothing yet.

        A later coat goes by the first ones until later ones were checked: it often takes no less.
        On oily or resinous wood a coat takes no less than on other wood, never the other way round.
        """
        mine, first = key.taught(), key.however()._replace(first=True)
        keys = (mine, mine.however(), first, first._replace(wood=WoodKind.OTHER))
        read = tuple(k._replace(unread=False) for k in keys) if key.unread else ()
        return next((self.learnt[k] for k in (*keys, *read) if k in self.learnt), None)

    def of(self, product: int) -> tuple[PaceLearnt, ...]:
        """Return all that was learnt of a product: first coats first, all ways before one."""
        mine = (learnt for key, learnt in self.learnt.items() if key.product == product)
        return tuple(sorted(mine, key=_in_order))


Paces.none = Paces()


def _in_order(learnt: PaceLearnt) -> tuple[bool, str, bool, str, int]:
    key = learnt.key
    wood = "" if key.wood is WoodKind.OTHER else key.wood
    return not key.first, wood, not key.any_way, key.method or "", key.container or 0
