"""What steps are told, where they are chosen: what went wrong with such here, what can hurt."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence

from msgspec.structs import replace

from finishlog.acts.answers.made import Made, Reaches
from finishlog.asks.bench.open_cans import before_steps
from finishlog.asks.look.lessons import lessons
from finishlog.asks.look.look import Look, look
from finishlog.context import Context
from finishlog.core.findings import Finding
from finishlog.core.finish.hazard import Hazard
from finishlog.core.rules.film.lessons import said_of_steps
from finishlog.core.safety.people import figures_of, lives_near, reached
from finishlog.core.safety.rags import evening_began
from finishlog.core.safety.whats_in import in_product
from finishlog.core.shop.things import Product, Shop, Step, ThingKind
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


def what_steps_hurt(
    context: Context,
    ledger: Ledger,
    steps: Sequence[Step],
    made: Made,
    with_it: Collection[str] = (),
) -> Made:
    """Add what stands ready before their cans are opened, and whom they reach.

    But for what other schedules, put on record since the evening began, were told; `with_it` names
    those that came with these.
    """
    seen = look(context, ledger.connection)
    began = evening_began(context.clock.now, context.clock.zone)
    there = {each.id: each for each in read_schedules(ledger.connection)}
    told: set[Hazard] = set()
    people: set[Reaches] = set()
    for schedule in read_added_since(ledger.connection, ThingKind.STEPS, began):
        earlier = there[schedule].steps if schedule in there else ()
        if schedule in there and there[schedule].name not in {made.name, *with_it}:
            told |= {line.hazard for line in before_steps(earlier, seen, told)}
            people |= set(_reaches(earlier, seen))
    before = before_steps(steps, seen, told)
    reached_now = tuple(each for each in _reaches(steps, seen) if each not in people)
    return replace(made, before=before, people=reached_now)


def _products(steps: Iterable[Step], seen: Look) -> list[Product]:
    known = dict.fromkeys(step.product for step in steps if step.product is not None)
    return [seen.shop.products[key] for key in known if key in seen.shop.products]


def _reaches(steps: Sequence[Step], seen: Look) -> Iterator[Reaches]:
    """Yield the rooms on record where somebody lives whom the products of steps reach, by whom."""
    facts, products = seen.facts, _products(steps, seen)
    for room in seen.bench.rooms.values():
        there = lives_near(room, seen.bench.rooms)
        films = ((facts.finish_class(p.class_key), in_product(p)) for p in products if there)
        lives = {who for of, what in films for who in reached(of, what, there, facts)}
        yield from (Reaches(room.name, figures_of(who, facts)) for who in sorted(lives))
