"""How a film that will not harden comes off, the mildest way first, and how it is begun again."""

from __future__ import annotations

from collections.abc import Sequence

from finishlog.core.findings import Finding, finding
from finishlog.core.finish.classes import Published


class Removal(Published, frozen=True):
    """The ladder of what takes a film of some families off; no families: any other.

    `ladder`: the mildest first, each only where the one before fails.
    """

    families: tuple[str, ...]
    ladder: tuple[str, ...]
    again: str
    source: str


def removal_of(family: str, known: Sequence[Removal]) -> Removal:
    """Return how films of a family come off."""
    mine = [each for each in known if family in each.families]
    return (mine or [each for each in known if not each.families])[0]


def removal_finding(family: str, known: Sequence[Removal]) -> Finding:
    """Say how a film of a family comes off."""
    of = removal_of(family, known)
    return finding("comes-off", source=of.source, ladder=of.ladder, again=of.again)
