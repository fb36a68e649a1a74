"""Put on record what the person says of a product beyond its label."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from difflib import get_close_matches

from msgspec import Struct

from finishlog.acts.answers.reconsidered import MovedDate
from finishlog.acts.things.products import Labelled, ProductTyped, put_label, relabel
from finishlog.asks.look.look import look
from finishlog.asks.things.classes import class_key
from finishlog.asks.things.own_words import own_words
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.finish.classes import Figure, FinishClass, RecoatWindow, WindowKind
from finishlog.core.finish.overcoat import ANY, ANY_FILM, named_by, rule_between
from finishlog.core.finish.stages import Stage
from finishlog.core.published.facts import Facts
from finishlog.core.shop.names import called
from finishlog.core.shop.own_rules import Own, OwnRule
from finishlog.core.shop.things import Product, Shop
from finishlog.errors import NotFound, UsageFault
from finishlog.picking import pick_product
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.labels import put_own_rule

_TRAITS = ("oily", "tannin", "low-tannin", "blotches", "pitchy", "any")
_LIKE_A_REASON = "tried on a board"


class SaysTyped(Struct, frozen=True):
    """What is said of a product, as typed; `label` holds its window, where that is said.

    `over` is what `needs` and `wait` are about; `because` the reason for all of it.
    """

    not_over: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    over: str = ""
    wait: Figure | None = None
    coats_a_day: int | None = None
    most_coats: int | None = None
    not_on: tuple[str, ...] = ()
    overrule: tuple[str, ...] = ()
    because: str = ""
    label: ProductTyped | None = None
    thickest_um: float | None = None


def say_of_product(
    context: Context, name: str, typed: SaysTyped, *, coats_too: bool = False
) -> Labelled:
    """Put on record what the person says of a product; one undo takes it back."""
    with context.writing("product says") as ledger:
        before = look(context, ledger.connection)
        product = pick_product(before.shop, name)
        rules = own_rules(typed, product, before.shop, context.facts)
        for rule in rules:
            put_own_rule(ledger.connection, product.id, rule, context.clock.now, ledger.act_id)
        echo: list[str] = []
        moved: tuple[MovedDate, ...] = ()
        if typed.label is not None:
            echo, moved = relabel(ledger, before, product, typed.label, coats_too=coats_too)
        said = [own_words(rule, before.shop.products) for rule in rules if rule.own != Own.WINDOW]
        because = [f"because: {typed.because}"] if typed.because else []
        detail = ", ".join([*said, *echo, *because])
        return Labelled(ledger.act_id, "rule of", product.name, detail, moved, coats_too)


def put_says(
    context: Context, ledger: Ledger, product: Product, typed: SaysTyped, shop: Shop
) -> None:
    """Put what comes with a product on record within an act, as its label is: for good."""
    now = context.clock.now
    for rule in own_rules(typed, product, shop, context.facts):
        put_own_rule(ledger.connection, product.id, rule, now, None)
    if typed.label is not None:
        put_label(ledger, product.id, typed.label, now)


def own_rules(typed: SaysTyped, product: Product, shop: Shop, facts: Facts) -> tuple[OwnRule, ...]:
    """Read what is said; UsageFault or NotFound with what to type where it cannot stand."""
    if typed.over and not typed.needs and typed.wait is None:
        hint = Do.PRODUCT_SAYS.option(wait="72h", over=typed.over)
        alone = Do.PRODUCT_SAYS.option(over=typed.over)
        raise UsageFault(f"{alone} alone says nothing", f"say what holds there: {hint}")
    rules = tuple(_rules(typed, product, shop, facts))
    if not rules and typed.label is None:
        hint = f"say what the can says: {Do.PRODUCT_SAYS.option(not_over='oil-stain')}"
        raise UsageFault("nothing is said", hint)
    for rule in rules:
        if rule.own is Own.WAIT and not typed.because:
            _refuse_shorter(rule, product, shop, facts)
        if rule.own is Own.OVERRULE and not typed.because:
            raise UsageFault("a published row is overruled with a reason", _because())
    return rules


def _rules(typed: SaysTyped, product: Product, shop: Shop, facts: Facts) -> Iterator[OwnRule]:
    because = typed.because
    over, only = _below(typed.over, shop, facts) if typed.over else ((), None)
    for word in typed.not_over:
        of, one = _below(word, shop, facts)
        yield OwnRule(Own.NOT_OVER, of, one, because=because)
    if typed.needs:
        barriers = tuple(key for word in typed.needs for key in _classes(word, facts))
        yield OwnRule(Own.NEEDS, over, only, barriers, because=because)
    if typed.wait is not None:
        if not typed.over:
            hint = Do.PRODUCT_SAYS.option(wait="72h", over="boiled-linseed-oil")
            raise UsageFault("a wait over what?", f"name it: {hint}")
        yield OwnRule(Own.WAIT, over, only, wait=typed.wait, because=because)
    for own, count in ((Own.COATS_A_DAY, typed.coats_a_day), (Own.MOST_COATS, typed.most_coats)):
        if count is not None:
            if count < 1:
                never = Do.PRODUCT_SAYS.option(not_over="any")
                raise UsageFault(f"{count} coats?", f"type 1 or more; to say never: {never}")
            yield OwnRule(own, count=count, because=because)
    if typed.thickest_um is not None:
        yield OwnRule(Own.THICKEST, thickest_um=typed.thickest_um, because=because)
    for word in typed.not_on:
        yield OwnRule(Own.NOT_ON, (_wood(word, facts),), because=because)
    for row in typed.overrule:
        yield OwnRule(Own.OVERRULE, (_row(row, product, facts),), because=because)
    if typed.label is not None and typed.label.window is not None and because:
        yield OwnRule(Own.WINDOW, because=because)
    elif typed.label is not None:
        _refuse_wider(typed.label.window, product, facts)
        _refuse_sooner(typed.label, product)


def _below(word: str, shop: Shop, facts: Facts) -> tuple[tuple[str, ...], int | None]:
    """Read over what: a product of the shop, a family (`any-oil`), a class by any of its names."""
    mine = called(word, list(shop.products.values()), lambda each: each.name)
    if mine and word not in facts.classes:
        return (), mine[0].id
    return _classes(word, facts), None


def _classes(word: str, facts: Facts) -> tuple[str, ...]:
    low = word.strip().casefold().replace(" ", "-")
    families = {of.family for of in facts.classes.values()}
    if low in {ANY, ANY_FILM}:
        return (low,)
    family = low.removeprefix("any-")
    if family in families and low not in facts.classes:
        return (family,)
    if low in facts.classes:
        return (low,)
    found = facts.find_class(word)
    said = low.split("-")
    if len(said) > 1:
        # What is sold in several cuts or sheens is meant with all of them.
        found = (*found, *(k for k, of in facts.classes.items() if _is_called(of, said)))
    return tuple(dict.fromkeys(found)) or (class_key(facts, word),)


def _is_called(of: FinishClass, words: Sequence[str]) -> bool:
    called_by = of.name.casefold().replace(",", " ").replace("-", " ").split()
    return all(word in called_by for word in words)


def _wood(word: str, facts: Facts) -> str:
    low = word.strip().casefold()
    known = facts.species_named(word)
    if low in _TRAITS or known is not None:
        return low if known is None or low in _TRAITS else known.key
    hint = f"type a wood, or one of: {', '.join(_TRAITS)}; {Do.SPECIES_LIST()} shows the woods"
    raise NotFound(f"no wood is called {word!r}", hint)


def _row(word: str, product: Product, facts: Facts) -> str:
    """Find a published row by its id; it must speak of the product's class."""
    of = facts.finish_class(product.class_key)
    spoken = {row.id: row.over for row in facts.overcoats}
    spoken |= {row.id: row.over for row in facts.wood_rules}
    mine = [id_ for id_, over in spoken.items() if named_by(over, of) is not None]
    if of.left_on_top is not None:
        mine.append(of.left_on_top.id)
    if word in mine:
        return word
    near = get_close_matches(word, mine, n=4, cutoff=0.5) or mine[:8]
    wrong = f"says nothing of {of.name}" if word in spoken else "is no published row"
    raise NotFound(f"{word!r} {wrong}", f"those that speak of it: {', '.join(near)}")


def _refuse_shorter(rule: OwnRule, product: Product, shop: Shop, facts: Facts) -> None:
    """Refuse a wait that is shorter than the published one, where no reason is given."""
    assert rule.wait is not None
    of = facts.finish_class(product.class_key)
    known = shop.products.get(rule.product) if rule.product is not None else None
    keys = (
        [known.class_key]
        if known
        else [k for k, c in facts.classes.items() if named_by(rule.of, c) is not None]
    )
    for key in keys:
        under = facts.finish_class(key)
        row = rule_between(facts, under, of)
        wait = row.wait if row is not None else None
        if wait is not None and wait.high_h > rule.wait.high_h:
            raise UsageFault(
                f"published: {wait.high_h:g} h over {under.name}; a shorter wait needs a reason",
                _because(),
            )


def _refuse_wider(window: RecoatWindow | None, product: Product, facts: Facts) -> None:
    """Refuse to do without the window of the class, where no reason is given."""
    of = facts.finish_class(product.class_key)
    if window is None or window.closes is not None:
        return
    if of.window.kind in {WindowKind.CLOSES, WindowKind.ALWAYS_SCUFF}:
        kind = of.window.kind.value
        raise UsageFault(f"{of.name}: {kind}; to do without needs a reason", _because())


def _refuse_sooner(typed: ProductTyped, product: Product) -> None:
    """Refuse a window that begins before the recoat time which the same can is on record with."""
    opens, known = typed.label.get(Stage.RECOAT), product.label.get(Stage.RECOAT)
    if opens is not None and known is not None and opens.low_h < known.low_h:
        raise UsageFault(
            f"recoat after {known.low_h:g} h is on record, and a window from {opens.low_h:g} h on",
            f"let the window begin with it, or {_because()}",
        )


def _because() -> str:
    return f"say why: {Do.PRODUCT_SAYS.option(because=_LIKE_A_REASON)}"
