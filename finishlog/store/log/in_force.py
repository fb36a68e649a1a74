"""What still holds of a log that is only ever added to.

An undo withdraws an act; an undo is an act too, so it can be withdrawn and the first act holds
again. An amendment supersedes an entry; of an entry and its amendments the newest one whose act
stands is in force. An amendment says how a thing happened, not that it happened: when the act of
the first entry is withdrawn, nothing of it is in force.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from typing import NamedTuple

from msgspec import Struct


class Withdrawal(NamedTuple):
    """The act `by` takes the earlier act `act` back, through its entry `entry`."""

    entry: int
    by: int
    act: int


class Link(NamedTuple):
    """An entry, the act that recorded it, and the entry that it corrects."""

    entry: int
    act: int
    supersedes: int | None


class Fate(Struct, frozen=True):
    """What became of an entry. `first` is the entry that it and its amendments began with."""

    first: int
    withdrawn_by: int | None = None
    superseded_by: int | None = None

    @property
    def in_force(self) -> bool:
        """Tell whether the entry holds."""
        return self.withdrawn_by is None and self.superseded_by is None


def withdrawn_acts(withdrawals: Iterable[Withdrawal]) -> dict[int, int]:
    """Map each act that is taken back to the act that took it back."""
    withdrawn: dict[int, int] = {}
    # The newest first: whether an undo stands is decided by later acts alone.
    for found in sorted(withdrawals, key=lambda each: each.by, reverse=True):
        if found.by not in withdrawn:
            withdrawn.setdefault(found.act, found.by)
    return withdrawn


def fates(links: Iterable[Link], withdrawn: Mapping[int, int]) -> dict[int, Fate]:
    """Work out the fate of every entry; `links` must hold whole chains of amendments."""
    found: dict[int, Fate] = {}
    for first, chain in _chains(links).items():
        undone = withdrawn.get(chain[0].act)
        standing = [link.entry for link in chain if link.act not in withdrawn]
        for link in chain:
            by = withdrawn.get(link.act) if undone is None else undone
            newer = standing[-1] if by is None and standing[-1] != link.entry else None
            found[link.entry] = Fate(first, by, newer)
    return found


def _chains(links: Iterable[Link]) -> dict[int, list[Link]]:
    """Group entries with their amendments, in the order of typing, by the first of them."""
    first: dict[int, int] = {}
    chains: dict[int, list[Link]] = defaultdict(list)
    # An amendment has a higher id than what it corrects.
    for link in sorted(links):
        start = link.entry if link.supersedes is None else first[link.supersedes]
        first[link.entry] = start
        chains[start].append(link)
    return chains
