"""Log a coat or a piece of work: the verb of the evening.

What happened is recorded even when a rule disapproves; the warning says what to do about it.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace

from finishlog.acts.glue_up import glue_up
from finishlog.acts.logged import Logged, ToLog, as_of, logged
from finishlog.acts.warn import warnings_before
from finishlog.asks.look import Look, look
from finishlog.clock import Clock
from finishlog.core.finishes import FinishClass, Method, judged_by
from finishlog.core.rags import evening_of
from finishlog.core.records import AnyEntry, Coat, Operation
from finishlog.core.safety_notes import SafetyNote, notes_for
from finishlog.core.shop import Product
from finishlog.facts.load import Facts
from finishlog.picking import (
    Zones,
    due_step,
    operation_word,
    parts_and_what,
    pick_product,
    pick_zones,
    where_due,
)
from finishlog.store.database import Database
from finishlog.store.ledger import Ledger


def log(database: Database, facts: Facts, clock: Clock, words: str, typed: ToLog) -> Logged:
    """Record it, in one transaction, and say what follows."""
    with database.writing("log", words, clock.now, clock.zone.key) as ledger:
        now = look(ledger.connection, facts, clock)
        then = as_of(now, typed.at.latest, facts, clock)
        parts, what = parts_and_what(then.shop, typed.words)
        picked = pick_zones(then.shop, then.bench, parts, typed.face)
        operation, product, picked = _what(then, picked, what)
        if operation is Operation.GLUE_UP:
            return glue_up(ledger, facts, clock, now, then, picked, typed)
        if operation is Operation.COAT and product is not None:
            return _coat(ledger, facts, clock, now, then, picked, product, typed)
        warnings = warnings_before(then, picked, facts, operation=operation)
        ledger.work(typed.at, picked.targets, operation=operation, grit=typed.grit)
        return logged(ledger, facts, clock, now, picked, operation, "", typed, warnings, ())


def _what(then: Look, picked: Zones, typed: str | None) -> tuple[Operation, Product | None, Zones]:
    """Read what was done, and on which of the zones; by default the step that is due."""
    if typed is None:
        step, targets = due_step(then.shop, then.bench, picked)
        product = then.shop.products[step.product] if step.product is not None else None
        return step.operation, product, replace(picked, targets=targets)
    operation = operation_word(typed)
    product = None if operation else pick_product(then.shop, typed)
    done = operation or Operation.COAT
    if not picked.face_named:
        targets = where_due(then.bench, picked, done, product.id if product else None)
        picked = replace(picked, targets=targets)
    return done, product, picked


def _coat(
    ledger: Ledger,
    facts: Facts,
    clock: Clock,
    now: Look,
    then: Look,
    picked: Zones,
    product: Product,
    typed: ToLog,
) -> Logged:
    of = facts.finish_class(product.class_key)
    warnings = warnings_before(
        then, picked, facts, over=of, method=typed.method, scuffed=typed.scuffed
    )
    ledger.coat(
        typed.at,
        picked.targets,
        product=product.id,
        figures=judged_by(of, product.label, product.label_window, facts.version),
        method=typed.method,
        scuffed_before=typed.scuffed,
        note=typed.note,
    )
    notes = _notes_of_the_evening(of, typed.method, now.log.entries, facts, clock)
    return logged(
        ledger, facts, clock, now, picked, Operation.COAT, product.name, typed, warnings, notes
    )


def _notes_of_the_evening(
    of: FinishClass,
    method: Method | None,
    entries: Sequence[AnyEntry],
    facts: Facts,
    clock: Clock,
) -> tuple[SafetyNote, ...]:
    """Choose safety notes: at most three, and a hazard once an evening, once it was really said."""
    tonight = evening_of(clock.now, clock.zone)
    said: set[str] = set()
    for entry in sorted(entries, key=lambda e: e.act):
        if isinstance(entry, Coat) and evening_of(entry.typed_at, clock.zone) == tonight:
            before = facts.finish_class(entry.figures.class_key)
            said |= {n.applies_to for n in _unsaid(before, entry.method, said, facts)}
    return _unsaid(of, method, said, facts)


def _unsaid(
    of: FinishClass, method: Method | None, said: Collection[str], facts: Facts
) -> tuple[SafetyNote, ...]:
    return notes_for(facts.notes, [h for h in hazards_of(of, method) if h not in said])


def hazards_of(of: FinishClass, method: Method | None) -> tuple[str, ...]:
    """Name what can hurt, first what is worst: rags, spraying (when it was sprayed), the rest."""
    sprayed = (method or of.methods[0]) is Method.SPRAY
    first = [h for h in ("self-heating", "spray") if h in of.hazards or (h == "spray" and sprayed)]
    rest = [h for h in of.hazards if h not in {"self-heating", "spray"}]
    return tuple(h for h in (*first, *rest) if h != "spray" or sprayed)
