"""Which respirators are there, what is each for, since when is it open?"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from msgspec import Struct

from finishlog.asks.look.look import look
from finishlog.context import Context
from finishlog.core.finish.hazard import Hazard
from finishlog.core.log.where import same_words
from finishlog.core.log.words import Filter, MaskKept
from finishlog.core.shop.respirators import Mask


class RespiratorLine(Struct, frozen=True):
    """One respirator. `kind` empty: nobody said what it is for. No figure tells what is left of it.

    `worn` since it was opened; `open_d`: days since then, None: nothing says when.
    """

    name: str
    holds: Filter | None
    kind: str
    made_for: tuple[Hazard, ...]
    never: tuple[Hazard, ...]
    cartridge: bool
    opened: datetime | None
    open_d: int | None
    worn: timedelta
    wear: str
    # How it is kept between sessions. None: nobody said.
    kept: MaskKept | None = None

    def called(self, name: str) -> bool:
        """Tell whether a name means it."""
        return same_words(self.name) == same_words(name)


def respirators(context: Context) -> tuple[RespiratorLine, ...]:
    """List them, the last opened last."""
    with context.reading() as connection:
        masks = look(context, connection).bench.masks
    return lines_of(masks, context)


def lines_of(masks: Iterable[Mask], context: Context) -> tuple[RespiratorLine, ...]:
    """Say of each what it is for and what passes it, in the order of danger."""
    figures, now = context.facts.respirators, context.clock.now
    found = []
    for mask in masks:
        kind = figures.kinds[mask.holds] if mask.holds is not None else None
        age = mask.open_for(now)
        found.append(
            RespiratorLine(
                name=mask.name,
                holds=mask.holds,
                kind=kind.name if kind else "",
                made_for=tuple(h for h in Hazard if kind and h in kind.made_for),
                never=tuple(h for h in Hazard if kind and h in kind.never),
                cartridge=kind is not None and kind.cartridge,
                opened=mask.opened,
                open_d=age // timedelta(days=1) if age is not None else None,
                worn=mask.worn,
                wear=figures.wear,
                kept=mask.kept,
            )
        )
    return tuple(found)
