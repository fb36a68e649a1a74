"""Find things by name: in full, in other capitals, by a beginning, or by a name they had before.

A name that a living thing has always means that thing. An old name and a mere beginning that point
to different things are never weighed against each other: both are given.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import TYPE_CHECKING, NamedTuple, Protocol, TypeVar

if TYPE_CHECKING:
    from finishlog.core.shop.things import Alias, ThingKind

T = TypeVar("T")


class PathName(NamedTuple):
    """A name within another as it is typed: `cabinet/doors`, of a zone `front/left`."""

    within: str
    name: str

    @classmethod
    def read(cls, path: str) -> PathName:
        """Take a path apart; what stands alone is within nothing."""
        within, _, name = path.rpartition("/")
        return cls(within, name)


class Named(Protocol):
    """Anything with an id and a name."""

    @property
    def id(self) -> int:
        """The id in its table."""

    @property
    def name(self) -> str:
        """The name that it has now."""


Thing = TypeVar("Thing", bound=Named)


def called(typed: str, among: Sequence[T], name: Callable[[T], str]) -> list[T]:
    """Keep what is called so in full; failing that in other capitals."""
    low = typed.strip().casefold()
    return [each for each in among if name(each) == typed] or [
        each for each in among if name(each).casefold() == low
    ]


def fitting(typed: str, among: Sequence[T], name: Callable[[T], str]) -> list[T]:
    """Keep what is called so; failing that what begins so."""
    low = typed.strip().casefold()
    begins = (each for each in among if low and name(each).casefold().startswith(low))
    return called(typed, among, name) or list(begins)


def find(
    typed: str, among: Iterable[Thing], aliases: Iterable[Alias], kind: ThingKind
) -> list[Thing]:
    """Return the things that a name may mean; one: it means that one."""
    things = list(among)
    whole = called(typed, things, lambda thing: thing.name)
    if whole:
        return whole
    low = typed.strip().casefold()
    old = {a.thing for a in aliases if a.kind is kind and a.old_name.casefold() == low}
    begins = fitting(typed, things, lambda thing: thing.name)
    return [thing for thing in things if thing.id in old or thing in begins]


def old_names(aliases: Iterable[Alias], kind: ThingKind, thing: int) -> tuple[str, ...]:
    """Return the names that a thing had before, oldest first."""
    return tuple(a.old_name for a in aliases if a.kind is kind and a.thing == thing)
