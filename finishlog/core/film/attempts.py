"""What an `off` took away from a zone, and what stays: one attempt after another.

The film is what survives. A coat that survives keeps its own date and clock; what lay over it, and
what was done on that, tells nothing any more of what is there. It stays on record as an attempt.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import timedelta

from msgspec import Struct

from finishlog.core.film.checks import failed
from finishlog.core.finish.classes import WindowKind
from finishlog.core.log.entries import AnyEntry, Check, Coat, Fault, Stripped, Work
from finishlog.core.log.words import Operation, Stripping

# Done on a film, these are part of it and gone with it.
_OF_THE_FILM = (Coat, Work, Check)
_FOR_GRIP = frozenset({Operation.SCUFF, Operation.DENIB, Operation.SAND})

# These leave the film below as a scuffing does.
ABRADING = frozenset({Stripping.SAND_THROUGH, Stripping.SCRAPE})


class Attempt(Struct, frozen=True):
    """Coats that were taken off together, oldest first, and what had been found wrong with them."""

    coats: tuple[Coat, ...]
    off: Stripped
    found: tuple[Check | Fault, ...] = ()

    @property
    def lasted(self) -> timedelta:
        """How long its first coat was on: elapsed time."""
        return self.off.when.latest - self.coats[0].when.earliest


def what_stays(entries: Sequence[AnyEntry]) -> tuple[AnyEntry, ...]:
    """Return, of what reached a zone in the order of the work, what still tells of it.

    Down to bare wood nothing of film and work is left. Down to a coat, that coat is left with what
    is under it and what was done on it before the next, but for the grip that it was given then.
    """
    if not any(isinstance(entry, Stripped) for entry in entries):
        return tuple(entries)
    kept: list[AnyEntry] = []
    for entry in entries:
        if isinstance(entry, Stripped):
            kept = _left(kept, entry)
        kept.append(entry)
    return tuple(kept)


def attempts_before(entries: Sequence[AnyEntry]) -> tuple[Attempt, ...]:
    """Return the attempts that were taken off a zone, oldest first."""
    if not any(isinstance(entry, Stripped) for entry in entries):
        return ()
    return tuple(_attempts(entries))


def _attempts(entries: Sequence[AnyEntry]) -> Iterator[Attempt]:
    kept: list[AnyEntry] = []
    for entry in entries:
        if isinstance(entry, Stripped):
            left = _left(kept, entry)
            still = {e.id for e in left}
            coats = tuple(e for e in kept if isinstance(e, Coat) and e.id not in still)
            if coats:
                yield Attempt(coats, entry, tuple(_went_wrong(kept, coats[0])))
            kept = left
        kept.append(entry)


def _went_wrong(entries: Sequence[AnyEntry], first: Coat) -> Iterator[Check | Fault]:
    """Yield the failed checks and the faults since a coat."""
    for entry in entries:
        if entry.when.order < first.when.order:
            continue
        if isinstance(entry, Fault) or (isinstance(entry, Check) and failed(entry.found)):
            yield entry


def _left(kept: Sequence[AnyEntry], off: Stripped) -> list[AnyEntry]:
    """Cut what a stripping took away out of what there was."""
    survivor = _survivor(kept, off)
    if survivor is None:
        return [e for e in kept if not isinstance(e, _OF_THE_FILM)]
    coats = (n for n, e in enumerate(kept) if isinstance(e, Coat) and n > survivor)
    above = next(coats, None)
    if above is None:
        return list(kept)
    return [
        *kept[: survivor + 1],
        *(e for e in kept[survivor + 1 : above] if not _gave_grip(e)),
        *(e for e in kept[above:] if not isinstance(e, _OF_THE_FILM)),
    ]


def _survivor(kept: Sequence[AnyEntry], off: Stripped) -> int | None:
    """Find the coat that survives; None: bare wood.

    One that was taken back since, or belongs after the stripping, leaves what was typed before it.
    """
    if off.survives is None:
        return None
    coats = [(n, e.id) for n, e in enumerate(kept) if isinstance(e, Coat)]
    named = [n for n, coat in coats if coat == off.survives]
    under = [n for n, coat in coats if coat < off.survives]
    return next(iter(named or under[-1:]), None)


def _gave_grip(entry: AnyEntry) -> bool:
    return isinstance(entry, Work) and entry.operation in _FOR_GRIP


def melted_in(entries: Sequence[AnyEntry], coat: Coat) -> Coat | None:
    """Return the last coat that was put on a melting film before it was taken off down to it.

    Shellac and lacquer dissolve the coat below: what is left was wet again with that coat.
    """
    above = [a.coats[0] for a in attempts_before(entries) if a.off.survives == coat.id]
    wet = [over for over in above if melts_into(over, coat)]
    return wet[-1] if wet else None


def melts_into(over: Coat, under: Coat) -> bool:
    """Tell whether a coat dissolved the one below it: both dry by their solvent leaving alone."""
    melts = WindowKind.MELTS_IN
    return over.figures.window.kind is melts and under.figures.window.kind is melts
