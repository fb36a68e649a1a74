"""What steps are told, where they are chosen: what went wrong with such here, what can hurt."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from finishlog.asks.bench.open_cans import BeforeLine, before_steps
from finishlog.asks.look.lessons import lessons
from finishlog.asks.look.look import look
from finishlog.context import Context
from finishlog.core.findings import Finding
from finishlog.core.finish.hazard import Hazard
from finishlog.core.rules.film.lessons import said_of_steps
from finishlog.core.safety.rags import evening_began
from finishlog.core.shop.things import Shop, Step, ThingKind
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.changes import read_added_since
from finishlog.store.things.read_shop import read_schedules


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


def ready_for_steps(
    context: Context, ledger: Ledger, steps: Sequence[Step]
) -> tuple[BeforeLine, ...]:
    """Return what stands ready before their cans are opened, but for what was said this evening.

    That is what other schedules, put on record since it began, were told.
    """
    seen = look(context, ledger.connection)
    began = evening_began(context.clock.now, context.clock.zone)
    there = {each.id: each for each in read_schedules(ledger.connection)}
    told: set[Hazard] = set()
    for schedule in read_added_since(ledger.connection, ThingKind.STEPS, began):
        earlier = there[schedule].steps if schedule in there else ()
        told |= {line.hazard for line in before_steps(earlier, seen, told)}
    return before_steps(steps, seen, told)
