"""An old finish of unknown age: the bottom layer that nobody here put on.

It is a fact of the part, not a coat: no figure tells how it dries, no rags come of it. It lies on
every face that is finished until it is taken off to bare wood. What goes over it is tried out
first, and whoever sands or strips it may meet lead (40 CFR 745, for homes built before 1978 in the
United States; other countries stopped at other dates).
"""

from __future__ import annotations

from collections.abc import Iterable

from finishlog.core.commands import Do
from finishlog.core.findings import Finding, Level
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.log.entries import AnyEntry, Check, Coat, Stripped
from finishlog.core.log.words import Found
from finishlog.core.shop.things import OldFinish

# The hazard of its notes (facts/data/notes.toml).
HAZARD = "old-finish"

_NAMES = {
    OldFinish.VARNISH: "an old varnish",
    OldFinish.PAINT: "an old paint",
    OldFinish.WAX: "an old wax",
    OldFinish.UNKNOWN: "an old finish",
}

_TRY_IT = f"scratch it and coat a patch; if it holds: {Do.CHECK('PART', Found.HOLDS)}"
_WAX_OFF = f"wash it off first, and log it: {Do.OFF('PART', to='bare', washed=True)}"


def name_of(old: OldFinish) -> str:
    """Name an old finish in words: `an old varnish`."""
    return _NAMES[old]


def still_on(old: OldFinish | None, told: Iterable[AnyEntry]) -> OldFinish | None:
    """Return the old finish, unless what was told of a zone took it down to bare wood."""
    gone = any(isinstance(entry, Stripped) and entry.survives is None for entry in told)
    return None if gone else old


def findings_over(old: OldFinish | None, told: Iterable[AnyEntry]) -> tuple[Finding, ...]:
    """Return what a coat over an old finish asks for; nothing once a scratch test held.

    On wax that is a test of a coat that went on since: the wax itself tells nothing.
    """
    if old is None or _held(told, since_a_coat=old is OldFinish.WAX):
        return ()
    if old is OldFinish.WAX:
        sentence = "an old wax is underneath: nothing bonds over wax"
        return (Finding(Level.CAUTION, sentence, _WAX_OFF, COMMON_PRACTICE),)
    sentence = f"{name_of(old)} of unknown age is underneath: it may not hold or not take it"
    return (Finding(Level.CAUTION, sentence, _TRY_IT, COMMON_PRACTICE),)


def _held(told: Iterable[AnyEntry], *, since_a_coat: bool) -> bool:
    coated = not since_a_coat
    for entry in told:
        coated |= isinstance(entry, Coat)
        if coated and isinstance(entry, Check) and entry.found is Found.HOLDS:
            return True
    return False


def finding_of_sanding(old: OldFinish) -> Finding:
    """Return what sanding an old finish asks for first."""
    return Finding(
        Level.CAUTION,
        f"{name_of(old)} of unknown age may hold lead",
        "have it tested; wet, by hand, no dry or power sanding",
        "40-cfr-745",
    )
