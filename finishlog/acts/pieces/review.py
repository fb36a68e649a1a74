"""Say how a finish came out, at hand-over or years later, put away or not."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from finishlog.acts.meant.said import one_meant
from finishlog.asks.look.look_back import look_back
from finishlog.context import Context
from finishlog.core.log.entries import Coat, Review
from finishlog.core.log.when import When
from finishlog.core.log.words import Outcome
from finishlog.picking import pick_zones


class Reviewed(Struct, frozen=True):
    """A review as recorded. `no_finish`: by the log there is nothing on it to review."""

    act: int
    at: When
    labels: tuple[str, ...]
    outcome: Outcome
    text: str
    before: tuple[Outcome, ...]
    no_finish: bool


def outcome_word(typed: str) -> Outcome:
    """Read how it came out; UsageFault names the words there are."""
    return one_meant(Outcome, typed, f"no finish comes out {typed!r}; words with -t")


def log_review(
    context: Context,
    *,
    parts: Sequence[str],
    face: str | None,
    outcome: Outcome,
    text: str,
    at: When,
) -> Reviewed:
    """Record how the finish of some parts came out."""
    with context.writing("review") as ledger:
        seen, typed = look_back(context, ledger.connection, parts)
        picked = pick_zones(seen.shop, seen.bench, typed, face)
        mine = [e for e in seen.log.entries if e.targets & picked.targets]
        ledger.record(Review(when=at, targets=picked.targets, outcome=outcome, text=text))
        return Reviewed(
            act=ledger.act_id,
            at=at,
            labels=picked.labels,
            outcome=outcome,
            text=text,
            before=tuple(e.outcome for e in mine if isinstance(e, Review)),
            no_finish=not any(isinstance(e, Coat) for e in mine),
        )
