"""A suspect: one cause of a trouble, how it stands, and what makes one film worse off."""

from __future__ import annotations

from enum import IntEnum

from msgspec import Struct

from finishlog.core.findings import Finding, In
from finishlog.core.published.fault_kinds import Cause, Evidence, Lower
from finishlog.core.trouble.scene import Missing

# Our own rule: by so much more a figure tells two films apart. These count from no nothing.
CLEARLY = 1.5
_ON_A_SCALE = frozenset({In.CELSIUS, In.PCT})
_MERELY_ANOTHER = frozenset(
    {Evidence.OTHER_CAN, Evidence.OTHER_GRIT, Evidence.OTHER_SCUFF, Evidence.OTHER_COATS}
)


class Stands(IntEnum):
    """How a cause stands, the likeliest first."""

    APART = 0
    SHOWN = 1
    OPEN = 2
    SHARED = 3


class Suspect(Struct, frozen=True):
    """One cause: how it stands, what the log shows, what is missing, where all is well with it."""

    cause: Cause
    stands: Stands
    shows: Finding | None = None
    missing: Missing | None = None
    sound: str = ""
    # Nothing speaks against it, and something beside it would have come to harm too.
    less: bool = False
    # The coat below that it sits in; empty: the one in trouble.
    lower: str = ""

    @property
    def sorts(self) -> tuple[Stands, bool, bool, bool, bool, bool]:
        """What it is sorted by: of those that the log shows first what no time mends.

        What is only another thing than where it is sound comes after all that is known to do harm,
        also where no sound film tells of that; air that is within the limits of the class, and what
        came of the air, after the like of it; what sits in a coat below, after what is in its own,
        but for colour, which seldom comes of the clear coats.
        """
        shown = self.shows if self.is_shown else None
        if shown is None:
            return self.stands, self.less, False, False, False, False
        merely = self.cause.evidence in _MERELY_ANOTHER or bool(shown.value("merely"))
        stands = Stands.SHOWN if merely else self.stands
        deep = bool(self.lower) and self.cause.lower is Lower.FILM
        return stands, self.less, merely, _is_mild(shown), deep, self.cause.time_helps

    @property
    def is_shown(self) -> bool:
        """Tell whether the log shows it, and not where all is well too."""
        return self.stands in {Stands.APART, Stands.SHOWN}


# By these two findings of one cause are not of the same thing.
_REASONS = ("why", "reason")
# Of damp only what is over no limit: it wants nothing.
_OVER_A_LIMIT = frozenset({"shows-damp"})
_MERELY_SLOW = frozenset({"shows-slow-cold", "shows-damp"})


def in_limits(shown: Finding) -> bool:
    """Tell whether it is air that only makes a film slow, or no more in a mix than is usual."""
    label = shown.wanted if shown.rule in _OVER_A_LIMIT else None
    return (shown.rule in _MERELY_SLOW and label is None) or bool(shown.value("mild"))


def _is_mild(shown: Finding) -> bool:
    """Tell whether it does little harm, or is itself what the air made of it."""
    return in_limits(shown) or bool(shown.value("more"))


def is_worse(here: Finding, there: Finding) -> bool:
    """Tell whether what is measured here is clearly further from what is wanted than there.

    By half as far again; of what is counted from nothing up, also by half as little or as much.
    So is what does harm here and little there, what was never done here and late there, and what
    is published for another reason.
    """
    if in_limits(there) and not in_limits(here):
        return True
    if here.value("never") and not there.value("never"):
        return True
    if any(here.value(name) != there.value(name) for name in _REASONS):
        return True
    if here.measured is None or there.measured is None or here.wanted is None:
        return False
    one, other, wanted = here.measured.value, there.measured.value, here.wanted.value
    if abs(one - wanted) > CLEARLY * abs(other - (there.wanted or here.wanted).value):
        return True
    if here.measured.unit in _ON_A_SCALE:
        return False
    return one * CLEARLY < other if one < wanted else one > CLEARLY * other
