"""Which parts carry more on one face than on the other, and for how long?"""

from __future__ import annotations

from collections.abc import Hashable, Iterable
from datetime import datetime

from msgspec import Struct

from finishlog.asks.look.acts_behind import acts_behind
from finishlog.asks.look.look import Look
from finishlog.core.bench.balance import Uneven, may_cup, uneven
from finishlog.core.zone.grouping import Label, describe
from finishlog.core.zone.state import ZoneState


class UnevenLine(Struct, frozen=True):
    """Pieces of a part with more coats on one face. `since`: UTC, when that face got ahead."""

    part: str
    label: Label
    pieces: tuple[int, ...]
    ahead: str
    ahead_coats: int
    behind: str
    behind_coats: int
    since: datetime
    sentence: str
    source: str
    dissent: str
    dissent_source: str
    acts: tuple[int, ...] = ()


def uneven_faces(zones: Iterable[ZoneState], seen: Look) -> tuple[UnevenLine, ...]:
    """Answer for some zones, pieces that stand alike together, the longest standing first."""
    alike: dict[Hashable, list[Uneven]] = {}
    for one in uneven(zones):
        if may_cup(one, seen.bench.now, seen.facts.balance):
            key = (one.states[0].part.id, one.ahead, one.behind, one.since)
            alike.setdefault(key, []).append(one)
    lines = (_line(found, seen) for found in alike.values())
    return tuple(sorted(lines, key=lambda line: line.since))


def _line(found: list[Uneven], seen: Look) -> UnevenLine:
    first, said = found[0], seen.facts.balance
    part = first.states[0].part
    pieces = tuple(sorted(one.states[0].piece.number for one in found))
    return UnevenLine(
        part=part.path,
        label=describe(part, pieces, ()),
        pieces=pieces,
        ahead=first.ahead[0],
        ahead_coats=first.ahead[1],
        behind=first.behind[0],
        behind_coats=first.behind[1],
        since=first.since,
        sentence=said.alike.text,
        source=said.alike.source,
        dissent=said.dissent.text,
        dissent_source=said.dissent.source,
        acts=acts_behind([s for one in found for s in one.states], seen.made),
    )
