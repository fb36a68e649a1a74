"""What steps are told, where they are chosen, of finishes like them that went wrong here."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from finishlog.asks.look.lessons import lessons
from finishlog.context import Context
from finishlog.core.findings import Finding
from finishlog.core.rules.film.lessons import said_of_steps
from finishlog.core.shop.things import Shop, Step
from finishlog.store.log.ledger import Ledger


def told_of_steps(
    context: Context,
    ledger: Ledger,
    shop: Shop,
    steps: Sequence[Step],
    woods: Iterable[str | None] | None = None,
    *,
    on_bare_wood: bool = True,
) -> tuple[Finding, ...]:
    """Return what went wrong with such steps before, on some woods; None: on whichever wood.

    What one finish told is said once, of the first coat that it blames.
    """
    if not any(step.product is not None for step in steps):
        return ()
    keys = None if woods is None else {context.facts.wood_key(wood) for wood in woods}
    known = lessons(context, ledger.connection, keys)
    found: dict[tuple[int, ...], Finding] = {}
    for wood in known.woods:
        for each in said_of_steps(
            steps, wood, context.clock.now, known, shop.products, on_bare_wood=on_bare_wood
        ):
            found.setdefault(each.acts, each)
    return tuple(found.values())
