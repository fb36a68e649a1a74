"""What a brush, a gun or an air line had in it last, and what that does to what goes in now."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence

from msgspec import Struct

from finishlog.core.finish.classes import FinishClass
from finishlog.core.log.entries import AnyEntry, Cleaned, Coat, Fault
from finishlog.core.log.where import same_words
from finishlog.core.log.words import FaultKind
from finishlog.core.published.chemistry import Leftover, Substances
from finishlog.core.published.facts import Facts


class LeftIn(Struct, frozen=True):
    """What may be left in a tool, and the coat that brought it.

    `crawled`: the fault that shows it, whatever it was.
    """

    tool: str
    coat: Coat
    row: Leftover | None = None
    crawled: Fault | None = None


def tools_in(words: str) -> tuple[str, ...]:
    """Return the tools that words name: several stand with commas."""
    named = (each.strip() for each in words.split(","))
    return tuple(dict.fromkeys(each for each in named if each))


def since_cleaned(tool: str, entries: Sequence[AnyEntry]) -> tuple[Coat, ...]:
    """Return the coats that a tool put on since it was cleaned, in the order of the work."""
    used: list[Coat] = []
    for entry in entries:
        if isinstance(entry, Cleaned) and _names(entry.tool, tool):
            used.clear()
        elif isinstance(entry, Coat) and _names(entry.tool, tool):
            used.append(entry)
    return tuple(used)


def _names(words: str, tool: str) -> bool:
    return same_words(tool) in {same_words(each) for each in tools_in(words)}


def left_in(
    tool: str,
    now: FinishClass,
    entries: Sequence[AnyEntry],
    holds: Callable[[Coat], Substances],
    facts: Facts,
) -> LeftIn | None:
    """Return what a tool may have left in it for a class; None: nothing that harms it.

    Of its last coat by its class; silicone, and what made a finish crawl, stay until it is cleaned.
    """
    used = since_cleaned(tool, entries)
    for coat in reversed(used):
        crawled = next(_crawled(coat, entries), None)
        if crawled is not None:
            return LeftIn(tool, coat, crawled=crawled)
        of = facts.finish_class(coat.figures.class_key)
        row = facts.chemistry.left_by(of, holds(coat), now, by_class=coat is used[-1])
        if row is not None:
            return LeftIn(tool, coat, row)
    return None


def _crawled(coat: Coat, entries: Iterable[AnyEntry]) -> Iterator[Fault]:
    """Yield the fisheyes in a coat: whatever made them may be in the tool or its air."""
    faults = (e for e in entries if isinstance(e, Fault) and e.what is FaultKind.FISHEYE)
    yield from (f for f in faults if f.targets & coat.targets and f.when.order >= coat.when.order)
