"""An old finish of unknown age: the bottom layer that nobody here put on.

It is a fact of the part, not a coat: no figure tells how it dries, no rags come of it. It lies on
every face that is finished until it is taken off to bare wood. What goes over it is tried out
first, and whoever sands or strips it may meet lead (40 CFR 745, for homes built before 1978 in the
United States; other countries stopped at other dates).
"""

from __future__ import annotations

from collections.abc import Iterable

from finishlog.core.log.entries import AnyEntry, Check, Coat, Stripped
from finishlog.core.log.words import Found, Test
from finishlog.core.shop.things import OldFinish

_NAMES = {
    OldFinish.VARNISH: "an old varnish",
    OldFinish.PAINT: "an old paint",
    OldFinish.WAX: "an old wax",
    OldFinish.UNKNOWN: "an old finish",
}


def name_of(old: OldFinish) -> str:
    """Name an old finish in words: `an old varnish`."""
    return _NAMES[old]


def still_on(old: OldFinish | None, told: Iterable[AnyEntry]) -> OldFinish | None:
    """Return the old finish, unless what was told of a zone took it down to bare wood."""
    gone = any(isinstance(entry, Stripped) and entry.survives is None for entry in told)
    return None if gone else old


def lead_test(told: Iterable[AnyEntry]) -> Found | None:
    """Return what a test for lead found: once found, it is there, whatever a later one missed."""
    found = {e.found for e in told if isinstance(e, Check) and e.test is Test.LEAD}
    return Found.LEAD if Found.LEAD in found else Found.NO_LEAD if found else None


def held(told: Iterable[AnyEntry], *, since_a_coat: bool) -> bool:
    """Tell whether a scratch test held; `since_a_coat`: one after a coat that went on since."""
    coated = not since_a_coat
    for entry in told:
        coated |= isinstance(entry, Coat)
        if coated and isinstance(entry, Check) and entry.found is Found.HOLDS:
            return True
    return False
