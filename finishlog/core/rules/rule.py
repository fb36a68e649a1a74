"""A rule: one function from a zone, what is asked and what is around it to what it finds.

It says by which id the edge words it, which facts of the log and of things it reads, and which
acts it may bind. Its stories are told in the tests under its id.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from msgspec import Struct

from finishlog.core.findings import Act, Finding
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

Find = Callable[[ZoneState, Asked, Around], Iterable[Finding]]

EVERY = frozenset(Act)
COAT = frozenset({Act.COAT})
# What raises dust of what lies there.
ABRADING = frozenset({Act.SAND, Act.SCUFF})
# By hand on the wood or the film, on the bench.
BY_HAND = frozenset({Act.WIPE, Act.SAND, Act.SCUFF, Act.WORK, Act.RUB})
# The piece is held, laid, packed or used.
HANDLED = frozenset(
    {
        Act.TURN,
        Act.CLAMP,
        Act.GLUE_UP,
        Act.STACK,
        Act.PACK,
        Act.CLOSE,
        Act.USE,
        Act.STORE,
        Act.HAND_OVER,
    }
)

# What lies on the film for good, or is laid on it.
LOADED = HANDLED - {Act.TURN}


class Rule(Struct, frozen=True):
    """A registered rule. `reads`: facts as `coat.when`; `source`: where it comes from.

    `mended_by`: what its remedy names, by `Asked.does`: to that it is silent (rules/all).
    """

    id: str
    find: Find
    reads: frozenset[str]
    binds: frozenset[Act]
    source: str
    mended_by: frozenset[str] = frozenset()


def rule(
    id_: str, *, binds: frozenset[Act], source: str, reads: str = "", mended_by: str = ""
) -> Callable[[Find], Rule]:
    """Register a function as the rule of this id; `reads`, `mended_by`: with blanks between."""

    def made(find: Find) -> Rule:
        remedies = frozenset(mended_by.split())
        return Rule(id_, find, frozenset(reads.split()), binds, source, remedies)

    return made
