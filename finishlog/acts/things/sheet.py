"""Put on record what the safety data sheet of a product says."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from difflib import get_close_matches

from msgspec import Struct
from msgspec.structs import replace

from finishlog.asks.look.look import look
from finishlog.asks.things.own_words import less_than_its_class, own_words
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.sheet import MAY_BE_FREE_OF, MAY_HOLD
from finishlog.core.shop.own_rules import Own, OwnRule
from finishlog.core.shop.things import Product
from finishlog.errors import UsageFault
from finishlog.picking import pick_product
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.labels import put_own_rule


class SheetTyped(Struct, frozen=True):
    """What a sheet says, as typed: hazards and a carrier in words, figures as `Sheet` has them.

    `solvent_pct`: by weight; it becomes grams in a litre by the density.
    """

    free_of: tuple[str, ...] = ()
    holds: tuple[str, ...] = ()
    carrier: str = ""
    lel_pct: float | None = None
    day_ppm: float | None = None
    short_ppm: float | None = None
    flash_c: float | None = None
    solvent_pct: float | None = None
    solvent_g_per_l: float | None = None
    density: float | None = None


class SheetSaid(Struct, frozen=True):
    """What a sheet says, as recorded. `less`: what its class has and the sheet rules out."""

    act: int
    kind: str
    name: str
    detail: str
    less: tuple[str, ...] = ()


def say_of_sheet(context: Context, name: str, typed: SheetTyped) -> SheetSaid:
    """Put on record what a sheet says; one undo takes it back.

    UsageFault with what to type where it cannot stand.
    """
    with context.writing("product sheet") as ledger:
        shop = look(context, ledger.connection).shop
        product = pick_product(shop, name)
        rules = tuple(_rules(typed, product, context))
        if not rules:
            hint = Do.PRODUCT_SHEET.option(free_of=Hazard.ISOCYANATE.value)
            raise UsageFault("nothing is said", f"say what the sheet says: {hint}")
        _record(ledger, product, rules, context)
        after = replace(product, own_rules=(*product.own_rules, *rules))
        less = less_than_its_class(after, context.facts)
        detail = ", ".join(own_words(rule, shop.products) for rule in rules)
        return SheetSaid(ledger.act_id, "sheet of", product.name, detail, less)


def _record(ledger: Ledger, product: Product, rules: Sequence[OwnRule], context: Context) -> None:
    for rule in rules:
        put_own_rule(ledger.connection, product.id, rule, context.clock.now, ledger.act_id)


def _rules(typed: SheetTyped, product: Product, context: Context) -> Iterator[OwnRule]:
    free_of = [_hazard(word, MAY_BE_FREE_OF) for word in typed.free_of]
    holds = [_hazard(word, MAY_HOLD) for word in typed.holds]
    for both in sorted(set(free_of) & set(holds)):
        raise UsageFault(f"{both.value} in it and not in it", "read the sheet again: say one")
    yield from (OwnRule(Own.FREE_OF, (hazard.value,)) for hazard in free_of)
    yield from (OwnRule(Own.HOLDS, (hazard.value,)) for hazard in holds)
    if typed.carrier:
        yield OwnRule(Own.CARRIER, (_carrier(typed.carrier, context),))
    figures = (
        (Own.LEL, typed.lel_pct),
        (Own.DAY_LIMIT, typed.day_ppm),
        (Own.SHORT_LIMIT, typed.short_ppm),
        (Own.FLASH, typed.flash_c),
        (Own.DENSITY, typed.density),
        (Own.SOLVENT, _solvent(typed, product)),
    )
    yield from (OwnRule(own, figure=figure) for own, figure in figures if figure is not None)


def _solvent(typed: SheetTyped, product: Product) -> float | None:
    """Return what leaves a litre (g); UsageFault for a share by weight without the density."""
    if typed.solvent_pct is None:
        return typed.solvent_g_per_l
    density = typed.density or product.sheet.density
    if density is None:
        raise UsageFault(
            f"{typed.solvent_pct:g} % by weight of what?",
            f"say how heavy it is too: {Do.PRODUCT_SHEET.option(solvent='45%', density='0.9')}",
        )
    return 10 * typed.solvent_pct * density


def _hazard(typed: str, known: Sequence[Hazard]) -> Hazard:
    word = "-".join(typed.casefold().replace("-", " ").split())
    names = [hazard.value for hazard in known]
    if word in names:
        return Hazard(word)
    near = get_close_matches(word, names, n=1)
    meant = f"did you mean {near[0]}? " if near else ""
    raise UsageFault(
        f"{typed!r} is nothing that a sheet is asked for here",
        f"{meant}type one of: {', '.join(names)}",
    )


def _carrier(typed: str, context: Context) -> str:
    known = sorted({of.carrier for of in context.facts.classes.values()})
    word = "-".join(typed.casefold().replace("-", " ").split())
    if word not in known:
        raise UsageFault(f"{typed!r} is no carrier", f"type one of: {', '.join(known)}")
    return word
