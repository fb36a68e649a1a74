"""Log a coat or a piece of work: the verb of the evening.

What happened is recorded even when a rule disapproves; the warning says what to do about it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import timedelta

from msgspec.structs import replace

from finishlog.acts.answers.air_of_coat import (
    air_of_coat,
    evening_of_coat,
    people_of_coat,
    place_asked,
    size_asked,
    took,
)
from finishlog.acts.answers.doubts import findings_of, of_the_same_coat, of_the_step
from finishlog.acts.answers.evening_notes import notes_of_sanding, notes_of_the_evening
from finishlog.acts.answers.logged import Logged, ToLog, logged
from finishlog.acts.answers.made import uses_of_first_coat
from finishlog.acts.answers.warn import most_weighty, warnings_before
from finishlog.acts.film.glue_up import glue_up
from finishlog.acts.meant.due import due_step, where_due
from finishlog.acts.meant.what import parts_and_what, says_a_coat, work_or_product
from finishlog.acts.mixing.drawn import drawn_from, of_the_pot, told_once, what_is_in
from finishlog.asks.bench.tools import left_over
from finishlog.asks.look.look import Look, look
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.film.layers import ABRADES
from finishlog.core.findings import BROKEN_OFF, LEFT_IN_PART, Finding, Level, finding, hours
from finishlog.core.finish.classes import FigureSet, judged_by
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Coat, Work
from finishlog.core.log.words import KEEPS, Operation
from finishlog.core.safety.whats_in import in_what_goes_on, in_work
from finishlog.core.shop.things import Product
from finishlog.errors import UsageFault
from finishlog.picking import Zones, pick_zones, with_edges, without_edges
from finishlog.store.log.ledger import Ledger


def log(context: Context, typed: ToLog) -> Logged:
    """Record it, in one transaction, and say what follows."""
    with context.writing("log") as ledger:
        first = (*typed.earlier, typed.at)[0]
        return log_in(ledger, look(context, ledger.connection, since=first.earliest), typed)


def log_in(ledger: Ledger, now: Look, typed: ToLog) -> Logged:
    """Record it within an act, which may record more."""
    then = now.as_of((*typed.earlier, typed.at)[0].latest)
    parts, what = parts_and_what(then.shop, typed.words)
    what = what or what_is_in(then, typed.container)
    picked = pick_zones(then.shop, then.bench, parts, typed.face)
    operation, product, picked = _what(then, picked, what)
    picked = (with_edges if typed.edges else without_edges)(then.bench, picked)
    if typed.stopped is not None and operation is not Operation.COAT:
        raise UsageFault(
            f"{operation.value} is no coat: only a coat is broken off in part",
            f"log what was done of it with {Do.LOG.option(face='FACE')}",
        )
    if typed.amount_ml is not None and operation is not Operation.COAT:
        raise UsageFault(
            f"{operation.value} takes no amount: that goes with a coat",
            Do.LOG("PART", "PRODUCT", amount="200ml"),
        )
    if typed.kept is not None and operation not in KEEPS:
        raise UsageFault(
            f"{operation.value} does not say how it is kept: that goes with store, stack, pack",
            Do.LOG("PART", "store", kept=typed.kept.value),
        )
    if operation is Operation.GLUE_UP:
        return glue_up(ledger, now, then, picked, typed)
    if operation is Operation.COAT and product is not None:
        return _coat(ledger, now, then, picked, product, typed)
    noted = in_work(typed.note)
    doubts = findings_of(of_the_step(then, picked, operation, None, None), sure=typed.sure)
    warned = warnings_before(
        then,
        picked,
        ledger.act_id,
        operation=operation,
        comes=noted,
        grit=typed.grit,
        kept=typed.kept,
    )
    warnings = most_weighty((*warned, *doubts))
    work = ledger.record(
        Work(
            when=typed.at,
            targets=picked.targets,
            operation=operation,
            grit=typed.grit,
            kept=typed.kept,
            note=typed.note,
        )
    )
    after = now.after(ledger)
    notes = notes_of_sanding(work, after) if operation in ABRADES else ()
    return logged(ledger.act_id, now, after, picked, operation, "", typed, warnings, notes)


def _what(then: Look, picked: Zones, typed: str | None) -> tuple[Operation, Product | None, Zones]:
    """Read what was done, and on which of the zones; by default the step that is due."""
    coat = typed is not None and says_a_coat(then.shop, typed)
    if typed is None or coat:
        step, targets = due_step(then.shop, then.bench, picked)
        if coat and step.operation is not Operation.COAT:
            raise UsageFault(
                f"{step.operation.value} is due, no coat", "name the product that went on"
            )
        product = then.shop.products[step.product] if step.product is not None else None
        return step.operation, product, replace(picked, targets=targets)
    done, product = work_or_product(then.shop, typed, then.facts)
    if not picked.face_named:
        targets = where_due(then.bench, picked, done, product.id if product else None)
        picked = replace(picked, targets=targets)
    return done, product, picked


def _coat(
    ledger: Ledger, now: Look, then: Look, picked: Zones, product: Product, typed: ToLog
) -> Logged:
    of = then.facts.finish_class(product.class_key)
    drawn = drawn_from(then, product, typed.container, picked, typed.at, ledger.act_id)
    comes = in_what_goes_on(product, drawn.container, typed.note, then.shop)
    warnings = warnings_before(
        then,
        picked,
        ledger.act_id,
        over=of,
        method=typed.method,
        scuffed=typed.scuffed,
        comes=comes,
        product=product.id,
        film_um=typed.wet_film_um,
    )
    figures = judged_by(of, product.label, product.label_window, then.facts.version)
    doubts = (
        *of_the_step(then, picked, Operation.COAT, product, typed.scuffed),
        *of_the_same_coat(now, picked, product, (*typed.earlier, typed.at)[0], ledger.act_id),
    )
    _record(ledger, picked, product, figures, typed, drawn.container)
    after = now.after(ledger)
    warnings = most_weighty(
        (
            *told_once(warnings, drawn.warnings),
            *of_the_pot(then, after, product, ledger.act_id, warnings),
            *findings_of(doubts, sure=typed.sure),
            *left_over(ledger, then, typed.tool, product),
            *_passes_too_close(typed, figures, product),
            *(_what_lies_there(after, picked) if typed.stopped is not None else ()),
        )
    )
    uses = uses_of_first_coat(then, picked, comes)
    notes = notes_of_the_evening(of, typed.method, comes, now, uses)
    coat = logged(
        ledger.act_id,
        now,
        after,
        picked,
        Operation.COAT,
        product.name,
        typed,
        warnings,
        notes,
    )
    asks = tuple(place_asked(then, picked, comes))
    first = (*typed.earlier, typed.at)[0]
    much = took(typed.amount_ml, first, typed.at, typed.hands_on_min, typed.method)
    evening = evening_of_coat(then, picked, product, drawn.container, much)
    air = air_of_coat(then, picked, product, comes, drawn.container, typed.method)
    # What the evening comes to says more than from how much on it would.
    air = tuple(a for a in air if a.room not in {e.room for e in evening})
    asks += tuple(size_asked(then, picked, comes, much, asks))
    people = people_of_coat(then, after, picked)
    coat = replace(coat, air=air, asks=asks, evening=evening, people=people)
    return replace(coat, container=drawn.words, stopped=typed.stopped)


def _record(
    ledger: Ledger,
    picked: Zones,
    product: Product,
    figures: FigureSet,
    typed: ToLog,
    container: int | None,
) -> None:
    """Append the coat, each of its passes; what was broken off was the last of them."""
    passes = (*typed.earlier, typed.at)
    for n, moment in enumerate(passes):
        ledger.record(
            Coat(
                when=moment,
                targets=picked.targets,
                product=product.id,
                figures=figures,
                method=typed.method,
                scuffed_before=typed.scuffed if n == 0 else None,
                flooded=typed.flooded,
                wet_film_um=typed.wet_film_um,
                container=container,
                stirred=typed.stirred,
                tool=typed.tool,
                hands_on_min=typed.hands_on_min if n == 0 else None,
                amount_ml=typed.amount_ml if n == 0 else None,
                stopped=typed.stopped if n + 1 == len(passes) else None,
                note=typed.note,
            )
        )


def _what_lies_there(after: Look, picked: Zones) -> Iterator[Finding]:
    """Say at once what a coat that was broken off asks for: while it is wet it can come off."""
    mine = [z for z in after.bench.zones if z.target in picked.targets]
    said = [f for z in mine for f in z.verdict.findings if f.rule in {BROKEN_OFF, LEFT_IN_PART}]
    # What stands unwiped has minutes: how its edge is evened out is asked after that.
    left = [replace(f, level=Level.STOP) for f in said if f.rule == LEFT_IN_PART]
    yield from dict.fromkeys(left or (replace(f, level=Level.CAUTION) for f in said))


def _passes_too_close(typed: ToLog, figures: FigureSet, product: Product) -> Iterable[Finding]:
    """Warn of passes nearer together than coats of this finish may be."""
    recoat = figures.stages.get(Stage.RECOAT)
    if not typed.earlier or recoat is None:
        return
    between = typed.at.latest - typed.earlier[-1].latest
    if between < timedelta(hours=recoat.low_h):
        yield finding(
            "passes-too-close",
            Level.CAUTION,
            recoat.source,
            measured=hours(between / timedelta(hours=1)),
            wanted=hours(recoat.low_h),
            of=product.name,
        )
