"""What a coat came from, as it was when the coat went on; is its hardener in it, in its ratio?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta
from enum import StrEnum

from msgspec import Struct

from finishlog.core.finish.classes import FinishClass, Range
from finishlog.core.log.entries import ContainerEvent
from finishlog.core.log.words import ContainerDeed
from finishlog.core.mixing.chemistry import hardens
from finishlog.core.mixing.containers import ContainerState, MixPart
from finishlog.core.mixing.mixes import is_thinner
from finishlog.core.published.chemistry import NOTHING, Chemistry

# Our own rule: nobody pours more exactly, and what is weighed differs from what is poured.
POURED_WITHIN = 0.25

# Alcohol beside shellac, mineral spirits beside varnish: the bare word does not tell.
_EITHER = frozenset({"spirit", "spirits"})

_ZERO = timedelta(0)


class Hardener(StrEnum):
    """Is what makes a finish harden among what it came from?"""

    # Its class hardens by itself.
    NOT_NEEDED = "not needed"
    IN_IT = "in it"
    LEFT_OUT = "left out"
    # Nothing on record tells.
    UNTOLD = "not told"


class WrongThinner(Struct, frozen=True):
    """A thinner that a finish does not mix with, by its name, and what thins it, in words."""

    name: str
    by: str
    source: str


class CameFrom(Struct, frozen=True):
    """What one coat came from, as it was then.

    `state`: the can, jar or mix as it stood as the coat went on; None: nothing says which.
    `sources`: that, and what it was drawn from, each as it stood as it went into the next; `since`:
    what befell them later. `hardener_pct`: in % of the rest; None: not known.
    """

    state: ContainerState | None
    hardener: Hardener
    when: datetime
    hardener_pct: float | None = None
    sources: tuple[ContainerState, ...] = ()
    since: tuple[ContainerEvent, ...] = ()
    wrong_thinner: WrongThinner | None = None

    @property
    def name(self) -> str:
        """The name of the can, jar or mix; empty: it is not known."""
        return self.state.container.name if self.state else ""

    @property
    def age(self) -> timedelta | None:
        """How long it had been mixed then; None: it was not, or nothing says when."""
        return self.state.age_at(self.when) if self.state else None

    @property
    def past_pot_life(self) -> timedelta | None:
        """By how much it was past its pot life then; None: it was not."""
        end = self.state.use_by if self.state else None
        return self.when - end if end is not None and self.when > end else None

    @property
    def mixed_by(self) -> tuple[int, ...]:
        """The acts by which it was mixed and topped up."""
        filled = {ContainerDeed.MIXED, ContainerDeed.TOPPED_UP}
        events = self.state.events if self.state else ()
        return tuple(dict.fromkeys(e.act for e in events if e.deed in filled))

    def later(self, of: ContainerState, deed: ContainerDeed) -> ContainerEvent | None:
        """Return what befell one of its sources after it was drawn; the newest of a kind."""
        mine = (e for e in reversed(self.since) if e.container == of.container.id)
        return next((e for e in mine if e.deed is deed), None)

    def tested_since(self, of: ContainerState) -> bool:
        """Tell whether one of its sources was found good after it was drawn."""
        return self.later(of, ContainerDeed.TESTED) is not None

    def frozen(self) -> Iterator[tuple[ContainerState, ContainerEvent]]:
        """Yield what had frozen before it was drawn and was not found good since."""
        for source in self.sources:
            froze = source.last(ContainerDeed.FROZEN)
            tests = source.last(ContainerDeed.TESTED), self.later(source, ContainerDeed.TESTED)
            answered = froze and any(t and t.when.order > froze.when.order for t in tests)
            if froze is not None and not answered:
                yield source, froze

    def condemned(self) -> Iterator[tuple[ContainerState, ContainerEvent, bool]]:
        """Yield what is marked as bad, and whether it was before it was drawn."""
        for source in self.sources:
            before = source.last(ContainerDeed.CONDEMNED)
            marked = before or self.later(source, ContainerDeed.CONDEMNED)
            if marked is not None:
                yield source, marked, before is not None


def hardener_in(parts: Sequence[MixPart], names: Sequence[str], chemistry: Chemistry) -> bool:
    """Tell whether what hardens is among the parts: by name, or as a part nobody can read.

    `names`: of all that went into it, down to the mixes in it. Thinner is no hardener.
    """
    named = any(hardens(chemistry.in_name(name)) for name in names)
    return named or sum(1 for part in parts if not is_thinner(part)) > 1


def wrong_thinner(of: ContainerState, chemistry: Chemistry) -> WrongThinner | None:
    """Return what went into a mix that its finish is not thinned with; None: nothing known so.

    What a name does not tell is taken as right, and so is a part that hardens.
    """
    thinning = chemistry.thinning(of.of)
    for part in of.container.parts if thinning else ():
        told = part.name.casefold() not in _EITHER
        holds = chemistry.in_name(part.name) if told else NOTHING
        if thinning and holds and holds <= thinning.never:
            return WrongThinner(part.name, thinning.by, thinning.source)
    return None


def hardener_pct(parts: Sequence[MixPart], chemistry: Chemistry) -> float | None:
    """Return the hardener in per cent of the rest, thinner apart.

    None where no part is called one, or where weights stand beside volumes.
    """
    hardener = [p for p in parts if hardens(chemistry.in_name(p.name))]
    rest = [p for p in parts if p not in hardener and not is_thinner(p)]
    weighed = sum(p.weight_g is not None for p in parts)
    if not hardener or not rest or 0 < weighed < len(parts):
        return None
    return 100 * sum(p.parts for p in hardener) / sum(p.parts for p in rest)


def is_off(pct: float | None, wanted: Range | None) -> bool:
    """Tell whether a share of hardener is off by more than anybody pours wrong."""
    if pct is None or wanted is None:
        return False
    return not wanted.low * (1 - POURED_WITHIN) <= pct <= wanted.high * (1 + POURED_WITHIN)


def needs_hardener(of: FinishClass) -> bool:
    """Tell whether a class has no clock without a second part that hardens it."""
    return of.hardener_pct is not None
