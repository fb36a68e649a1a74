"""Correct where parts and people were: a move, a glue-up, a stop, a start, a time away."""

from __future__ import annotations

from finishlog.acts.film.glue_up import glue_key
from finishlog.asks.look.look import Look
from finishlog.core.log.entries import Away, Joined, Moved, Resumed, SetAside, Target, When
from finishlog.core.published.facts import Facts
from finishlog.picking import pick_room
from finishlog.store.log.ledger import Ledger

Whereabouts = Moved | Joined | SetAside | Resumed | Away


def amend_whereabouts(
    ledger: Ledger,
    seen: Look,
    facts: Facts,
    entry: Whereabouts,
    when: When,
    targets: frozenset[Target],
    *,
    room: str | None,
    glue: str | None,
    text: str | None,
) -> None:
    """Supersede an entry of one of these kinds; None: as it was."""
    match entry:
        case Moved():
            pieces = entry.pieces if targets == entry.targets else {t.piece for t in targets}
            into = pick_room(seen.shop, room).id if room else entry.room
            ledger.moved(when, pieces=pieces, room=into, supersedes=entry.id)
        case Joined():
            key = glue_key(glue, facts) if glue else entry.glue
            ledger.joined(
                when,
                entry.targets,
                into=entry.into,
                members=entry.members,
                glue=key,
                supersedes=entry.id,
            )
        case SetAside():
            reason = entry.reason if text is None else text
            ledger.set_aside(when, targets, reason=reason, supersedes=entry.id)
        case Resumed():
            ledger.resumed(when, targets, supersedes=entry.id)
        case Away():
            reason = entry.reason if text is None else text
            ledger.away(when, reason=reason, supersedes=entry.id)
