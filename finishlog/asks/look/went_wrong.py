"""What went wrong before and now, in plain values: attempts that came off, faults that stand."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from finishlog.core.film.attempts import Attempt
from finishlog.core.film.faults import StandingFault
from finishlog.core.log.entries import AnyEntry, Check, Fault
from finishlog.core.log.when import When
from finishlog.core.log.where import in_brackets
from finishlog.core.log.words import Stripping
from finishlog.core.published.facts import Facts


class FaultThere(Struct, frozen=True):
    """A fault that nothing has answered: its name with its place, and the coat it is on."""

    name: str
    place: str
    on: str
    at: When
    act: int


class AttemptThere(Struct, frozen=True):
    """A finish that came off: its coats, how, why as far as it was logged, how long it was on."""

    coats: tuple[str, ...]
    off_at: When
    how: Stripping
    to_bare: bool
    why: tuple[str, ...]
    lasted_h: float
    act: int


def faults_there(faults: Sequence[StandingFault]) -> tuple[FaultThere, ...]:
    """Put standing faults into plain values."""
    return tuple(
        FaultThere(
            f.name,
            f.fault.place,
            f.coat.product_name if f.coat else "the wood",
            f.fault.when,
            f.fault.act,
        )
        for f in faults
    )


def attempts_there(attempts: Sequence[Attempt], facts: Facts) -> tuple[AttemptThere, ...]:
    """Put attempts into plain values."""
    return tuple(
        AttemptThere(
            coats=tuple(coat.product_name for coat in each.coats),
            off_at=each.off.when,
            how=each.off.operation,
            to_bare=each.off.survives is None,
            why=_why(each, facts),
            lasted_h=round(each.lasted.total_seconds() / 3600, 2),
            act=each.off.act,
        )
        for each in attempts
    )


def _why(attempt: Attempt, facts: Facts) -> tuple[str, ...]:
    said = [went_wrong_words(entry, facts) for entry in attempt.found]
    return tuple(dict.fromkeys((*said, *([attempt.off.note] if attempt.off.note else ()))))


def went_wrong_words(entry: AnyEntry, facts: Facts) -> str:
    """Name a fault or a failed check in a few words; empty for anything else."""
    if isinstance(entry, Fault):
        return facts.fault_known(entry.what).name + in_brackets(entry.place)
    return entry.found.value + in_brackets(entry.place) if isinstance(entry, Check) else ""
