"""Values that are compared by what they say, not by what that was worked out from."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from operator import attrgetter
from typing import ClassVar

from msgspec import Struct


class Compared(Struct, frozen=True):
    """A value whose fields named in `aside` do not count when it is compared."""

    aside: ClassVar[frozenset[str]] = frozenset()

    @property
    def _says(self) -> object:
        return _what_it_says(type(self))(self)

    def __eq__(self, other: object) -> bool:
        """Compare what is said."""
        return isinstance(other, type(self)) and self._says == other._says

    def __ne__(self, other: object) -> bool:
        """Tell apart; a struct does not take this from `__eq__`."""
        return not self == other

    def __hash__(self) -> int:
        """Go with `__eq__`."""
        return hash(self._says)


@cache
def _what_it_says(of: type[Compared]) -> Callable[[Compared], object]:
    return attrgetter(*(name for name in of.__struct_fields__ if name not in of.aside))
