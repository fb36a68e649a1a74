"""Put finishing schedules on record, change them, put them away."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import ceil

from msgspec.structs import replace

from finishlog.acts.answers.made import Made, a_name, free_name, in_words, notes_of_use
from finishlog.acts.meant.what import work_or_product
from finishlog.acts.things.lessons import told_of_steps, what_steps_hurt
from finishlog.acts.things.other_wood import TAKEN_FROM
from finishlog.asks.bench.on import step_words
from finishlog.asks.look.look_back import look_back
from finishlog.asks.past.done_steps import steps_done, steps_over
from finishlog.asks.past.learnt_steps import as_learnt
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.film.layers import ABRADES
from finishlog.core.log.words import Operation
from finishlog.core.measure.quantities import micrometres
from finishlog.core.measure.units import WORDS, Length, to_base
from finishlog.core.measure.whole_number import whole_number
from finishlog.core.published.facts import Facts
from finishlog.core.shop.own_rules import most_at_once_um
from finishlog.core.shop.things import Product, Shop, Step, ThingKind
from finishlog.core.shop.trade_words import meant
from finishlog.errors import UnknownProduct, UsageFault
from finishlog.picking import pick_schedule, pick_zones
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.add import add_steps
from finishlog.store.things.changes import ADDED, OVER, changed
from finishlog.store.things.edit import replace_steps
from finishlog.store.things.read_shop import read_schedules, read_shop

MOST_COATS = 30

# A grit as people write it: 180, P220, 320 grit, 0000 of steel wool.
_GRIT = r"P?[0-9]{1,4}(?: ?grit)?"
_BY_GRIT = ABRADES | {Operation.STEEL_WOOL, Operation.RUB, Operation.LEVEL}


def new_steps(context: Context, name: str, typed: Sequence[str], note: str) -> Made:
    """Put a finishing schedule on record."""
    with context.writing("steps new") as ledger:
        made = put_steps(context, ledger, name, typed, note)
        made = replace(made, notes=notes_of_use(context.facts, [name]))
        shop = read_shop(ledger.connection, context.clock.now)
        steps = read_step_words(shop, typed, context.facts)
        return what_steps_hurt(context, ledger, steps, made)


def put_steps(context: Context, ledger: Ledger, name: str, typed: Sequence[str], note: str) -> Made:
    """Put a finishing schedule on record within an act."""
    name = a_name(name, "set of steps")
    shop = read_shop(ledger.connection, context.clock.now)
    steps = read_step_words(shop, typed, context.facts)
    lent = free_name(ledger, ThingKind.STEPS, name)
    added = add_steps(ledger.connection, name, steps, note)
    changed(ledger, ThingKind.STEPS, added, ADDED, "", name)
    warnings = told_of_steps(context, ledger, shop, steps)
    poured = _poured(shop, typed, context.facts)
    return Made("steps", name, in_words(how_many_steps(steps), *poured, lent), warnings=warnings)


def how_many_steps(steps: Sequence[Step]) -> str:
    """Count steps in words."""
    return f"{len(steps)} step" if len(steps) == 1 else f"{len(steps)} steps"


def steps_like(context: Context, name: str, like: str, note: str, *, over: bool = False) -> Made:
    """Put a finishing schedule on record from what was really done on a part, put away or not.

    `over`: not from bare wood, but the last finish once more over what is on it.
    """
    name = a_name(name, "set of steps")
    with context.writing("steps new") as ledger:
        seen, typed = look_back(context, ledger.connection, [like])
        picked = pick_zones(seen.shop, seen.bench, typed, None)
        done = steps_over(seen, picked) if over else steps_done(seen, picked)
        steps = done if over else as_learnt(done, seen, picked)
        if not steps:
            raise UsageFault(f"nothing was done on {like} yet", f"{Do.PAST()} shows what was")
        lent = free_name(ledger, ThingKind.STEPS, name)
        how = f"over what is on {like}" if over else f"as it was done on {like}"
        added = add_steps(ledger.connection, name, steps, note or how)
        changed(ledger, ThingKind.STEPS, added, ADDED, "", name)
        if over:
            changed(ledger, ThingKind.STEPS, added, OVER, "", like)
        shown = ", ".join(step_words(step, seen.shop) for step in steps)
        woods = dict.fromkeys(part.species for part in picked.parts if part.species)
        for wood in woods:
            changed(ledger, ThingKind.STEPS, added, TAKEN_FROM, "", wood)
        of_wood = f"taken from {' and '.join(woods)}" if woods else ""
        warnings = told_of_steps(context, ledger, seen.shop, steps)
        made = Made("steps", name, in_words(shown, lent, of_wood), warnings=warnings)
        return what_steps_hurt(context, ledger, steps, made)


def read_step_words(shop: Shop, typed: Sequence[str], facts: Facts) -> tuple[Step, ...]:
    """Read steps as typed: `sand`, `sand 180`, `topcoat*3`, `topcoat@back`, `resin*24mm`."""
    steps: list[Step] = []
    for text in _with_their_grits(typed):
        word, _, faces = text.partition("@")
        word, _, times = word.partition("*")
        faces, _, behind = faces.partition("*")
        times = times or behind
        word, grit = _grit(word)
        operation, product = _step(shop, word, facts)
        how_often = _coats_of(times, product, facts) if "*" in text else 1
        if how_often is None or not 1 <= how_often <= MOST_COATS:
            raise UsageFault(f"{text!r}: {times!r} is no number of coats", "write topcoat*3")
        if grit and operation not in _BY_GRIT:
            raise UsageFault(f"{text!r}: {word} has no grit", "write sand 180, scuff 320")
        for _ in range(how_often):
            steps.append(
                Step(
                    len(steps),
                    operation,
                    product.id if product else None,
                    tuple(f.strip() for f in faces.split(",")) if faces else (),
                    grit,
                )
            )
    if not steps:
        raise UsageFault(
            "a finishing schedule needs a step", Do.STEPS_NEW("NAME", "sand", "sealer")
        )
    return tuple(steps)


def _coats_of(times: str, product: Product | None, facts: Facts) -> int | None:
    """Read how often: a number, or how deep a void is that a product fills (`resin*24mm`).

    None: it is neither.
    """
    deep = depth_mm(times)
    if deep is None or product is None:
        return whole_number(times)
    return ceil(round(1000 * deep / _one_coat_um(product, facts), 6))


def _one_coat_um(product: Product, facts: Facts) -> float:
    """Return how thick one coat of a product is at most, by the cautious end of what is known."""
    of = facts.finish_class(product.class_key)
    most = most_at_once_um(of, product.own_rules)
    if most is None:
        says = Do.PRODUCT_SAYS(product.name, thickest="6mm")
        raise UsageFault(f"how thick a coat of {product.name} may be is not known", says)
    return most.low


def _poured(shop: Shop, typed: Sequence[str], facts: Facts) -> Iterator[str]:
    """Say what was made of a depth: `24 mm of resin, 6 mm a coat: 4 coats`."""
    for text in typed:
        word, _, times = text.replace("@", "*").partition("*")
        deep = depth_mm(times.rpartition("*")[2])
        product = _step(shop, word, facts)[1] if deep is not None else None
        if deep is not None and product is not None:
            um = _one_coat_um(product, facts)
            coats = ceil(round(1000 * deep / um, 6))
            each = f"{micrometres(um)} a coat: {coats} coats"
            yield f"{micrometres(1000 * deep)} of {product.name}, {each}"


def depth_mm(typed: str) -> float | None:
    """Read a depth, `24 mm`, `1 in`, `3/4 in`, as mm; None: it is none."""
    found = re.fullmatch(r"(\d+(?:[.,]\d+|/[1-9]\d*)?) ?([^\d/]+)", typed.strip())
    named = found[2].casefold() if found else ""
    unit = next((each for each in Length if named in WORDS[each].split("|")), None)
    return to_base(float(Fraction(found[1].replace(",", "."))), unit) if found and unit else None


def _step(shop: Shop, word: str, facts: Facts) -> tuple[Operation, Product | None]:
    """Read one step; several that were typed as one word are told apart."""
    try:
        return work_or_product(shop, word, facts)
    except UnknownProduct as unknown:
        if re.fullmatch(r"[x×] ?\d+|\d+ ?[x×]", word, re.IGNORECASE):
            star = "how often stands behind a star: topcoat*3"
            raise UsageFault(f"{word!r} is no step", star) from None
        counted = re.fullmatch(r"(?:(.+?) ?[x×] ?(\d+)|(\d+) ?[x×]? ?(.+))", word, re.IGNORECASE)
        if counted is not None:
            of, times = counted[1] or counted[4], counted[2] or counted[3]
            raise UsageFault(f"{word!r} is no step", f"so often is {of}*{times}") from None
        each = [part for part in re.split(r"[\s,;]+", word) if part]
        if len(each) > 1:
            line = Do.STEPS_NEW("NAME", *each)
            raise UsageFault(f"{word!r} is one word, and steps are many", line) from None
        raise unknown from None


def _with_their_grits(typed: Sequence[str]) -> list[str]:
    """Put a grit that stands by itself to the work before it: `sand 180` is one step."""
    together: list[str] = []
    for text in typed:
        if together and re.fullmatch(_GRIT, text.strip(), re.IGNORECASE):
            word, at, faces = together[-1].partition("@")
            together[-1] = f"{word} {text.strip()}{at}{faces}"
        else:
            together.append(text)
    return together


def _grit(word: str) -> tuple[str, str]:
    """Part `sand 180` into the work and its grit; a product may well end in a figure."""
    found = re.fullmatch(rf"(.*[a-z])[ -]({_GRIT})", word.strip(), re.IGNORECASE)
    if found is None or not meant(Operation, found[1]):
        return word, ""
    return found[1], re.sub(r" ?grit$", "", found[2], flags=re.IGNORECASE).upper()


def edit_steps(context: Context, typed: str, steps: Sequence[str]) -> Made:
    """Replace the steps of a schedule; parts keep the copies that they were given."""
    with context.writing("steps edit") as ledger:
        shop = read_shop(ledger.connection, context.clock.now)
        schedule = pick_schedule(shop, read_schedules(ledger.connection), typed)
        new = read_step_words(shop, steps, context.facts)
        shown = ", ".join(step_words(s, shop) for s in schedule.steps)
        becomes = ", ".join(step_words(s, shop) for s in new)
        replace_steps(ledger, schedule.id, new, (shown, becomes))
        old = [p.path for p in shop.parts if p.steps_name == schedule.name]
        warnings = told_of_steps(context, ledger, shop, new)
        hurts = what_steps_hurt(context, ledger, new, Made("steps", schedule.name))
    kept = f"{', '.join(old)}: the steps they have stay" if old else ""
    how = f"to give them these: {Do.PART_STEPS(old[0], as_=schedule.name)}" if old else ""
    said = in_words(how_many_steps(new), kept, how)
    return replace(hurts, detail=said, warnings=warnings)
