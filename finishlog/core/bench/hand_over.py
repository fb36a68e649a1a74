"""What left the shop, and what came back: a piece that was handed over leaves the day's screens.

It comes back with the first work on its film (a coat, sanding, taking off, gluing) or when it is
taken up again on purpose. What is only said about it where it now lives (a check, a fault, a
review, a photo, words, use) does not carry it back into the shop.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence

from msgspec.structs import replace

from finishlog.core.findings import Answer, finding
from finishlog.core.log.entries import AnyEntry, Coat, HandedOver, Joined, Resumed, Stripped, Work
from finishlog.core.log.words import Operation
from finishlog.core.verdict.glue_up import GlueUp
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import of, told

# Done to a piece where it lives.
_AWAY_FROM_THE_BENCH = frozenset(
    {
        Operation.USE,
        Operation.SUN,
        Operation.PACK,
        Operation.STACK,
        Operation.STORE,
        Operation.HARDWARE,
    }
)

HANDED_OVER = told(of(replace(finding("handed-over", answer=Answer.DONE), plain=True)))
KEPT = told(of(replace(finding("kept-board", answer=Answer.DONE), plain=True)))


def brings_back(entry: AnyEntry) -> bool:
    """Tell whether an entry can only have been made with the piece on the bench again."""
    if isinstance(entry, Work):
        return entry.operation not in _AWAY_FROM_THE_BENCH
    return isinstance(entry, Coat | Stripped | Joined | Resumed)


def _last_word(entries: Iterable[AnyEntry]) -> AnyEntry | None:
    """Return what decides: the last hand-over, or what brought the zone back after it."""
    last: AnyEntry | None = None
    for entry in entries:
        back = last is not None and brings_back(entry)
        if isinstance(entry, HandedOver) or back:
            last = entry
    return last


def without_what_left(states: Sequence[ZoneState]) -> list[ZoneState]:
    """Mark the zones of pieces that were handed over; one zone at work brings its piece back."""
    words = {s.target: _last_word(s.entries) for s in states}
    if not any(words.values()):
        return list(states)
    of_piece: dict[int, list[AnyEntry]] = defaultdict(list)
    for state in states:
        word = words[state.target]
        if word is not None:
            of_piece[state.piece.id].append(word)
    left = {
        piece: max((w for w in said if isinstance(w, HandedOver)), key=lambda w: w.when.order)
        for piece, said in of_piece.items()
        if all(isinstance(word, HandedOver) for word in said)
    }
    marked = [
        replace(s, handed_over=left[s.piece.id], told=HANDED_OVER) if s.piece.id in left else s
        for s in states
    ]
    kept = _boards_that_stayed(marked)
    return [replace(s, kept=True, told=KEPT) if s.piece.id in kept else s for s in marked]


def _boards_that_stayed(states: Sequence[ZoneState]) -> set[int]:
    """Return the sample boards with no work due and none begun since their whole piece left."""
    gone: dict[int, HandedOver | None] = {}
    for state in (s for s in states if not s.member.is_board):
        project, word = state.member.project, state.handed_over
        before = gone.setdefault(project, word)
        last = word if before and word and word.when.order > before.when.order else before
        gone[project] = last if word else None
    boards = [s for s in states if s.member.is_board and s.handed_over is None]
    busy = {s.piece.id for s in boards if not _rests(s, gone.get(s.member.project))}
    return {s.piece.id for s in boards} - busy


def _rests(state: ZoneState, left: HandedOver | None) -> bool:
    if left is None or state.progress.next is not None:
        return False
    since = (e for e in state.entries if e.when.order > left.when.order)
    return not any(map(brings_back, since))


def glue_ups_here(glue_ups: Sequence[GlueUp], states: Iterable[ZoneState]) -> tuple[GlueUp, ...]:
    """Leave out the glue-ups whose members were all handed over as they are."""
    left = {s.member_piece.id for s in states if s.handed_over is not None}
    return tuple(g for g in glue_ups if not g.members or not left.issuperset(g.members))
