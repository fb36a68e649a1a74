"""How an opening may be filled: what goes first, and when a product is opened."""

from __future__ import annotations

from typing import NamedTuple

_DAY = 24 * 60

# What goes first where both could be done: work by hand, coats, or the more urgent.
PREPARE, COAT, URGENT = range(3)


class Policy(NamedTuple):
    """How an opening is filled.

    `first`: what goes first. `batch`: a product is opened for at least so many coats, or for those
    that would miss their window, or that were held back before. `most`: so many coats a session.
    `slack`: where it is not None a product is opened only for a coat that may not wait so many
    minutes longer than until the next opening.
    """

    first: int
    batch: int = 1
    most: int = 1 << 20
    slack: int | None = None


# Rules that are tried first, each through all openings.
RULES = tuple(Policy(first, batch) for first in (PREPARE, COAT, URGENT) for batch in (1, 2, 4))

# Ways of filling one opening, of which a run draws.
POLICIES = (
    *(Policy(first, batch) for first in (PREPARE, COAT, URGENT) for batch in (1, 2, 3, 4, 6, 8)),
    *(Policy(first, 1, slack=s) for first in (PREPARE, URGENT) for s in (0, 180, _DAY, 2 * _DAY)),
    Policy(URGENT, 3),
    Policy(URGENT, 4),
    Policy(URGENT, 1, 6),
)
