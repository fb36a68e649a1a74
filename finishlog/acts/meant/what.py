"""What was done on which parts, as it was typed: a product, or work in our words or theirs."""

from __future__ import annotations

import shlex
from collections.abc import Sequence

from finishlog.acts.meant.said import near_words
from finishlog.core.commands import Do
from finishlog.core.log.words import Operation
from finishlog.core.published.facts import Facts
from finishlog.core.shop.names import PathName
from finishlog.core.shop.things import Product, Shop
from finishlog.core.shop.trade_words import (
    COAT_SAID,
    DUE_SAID,
    goes_under,
    is_said,
    meant,
    plain_word,
    several_words,
)
from finishlog.errors import Ambiguous, NotFound, UnknownProduct, UsageFault
from finishlog.picking import names_a_product, operation_word, paths_of, pick_product

# Before a name that is a part's too: `log oar product:spar`. No part is told so: of a part a colon
# is followed by numbers.
PRODUCT_MARK = "product:"


def parts_and_what(shop: Shop, words: Sequence[str]) -> tuple[tuple[str, ...], str | None]:
    """Split `PART... [WHAT]`: the last word is WHAT when it names work or a product, no part."""
    *parts, last = several_words(words, lambda word: _is_work_or_product(shop, word))
    if len(parts) > 1 and _is_no_more_than_a_coat(shop, parts[-1]) and names_a_product(shop, last):
        parts.pop()
    if not parts:
        if not paths_of(shop, last) and names_a_product(shop, last):
            raise UsageFault(f"{last!r} is a product", f"say on what: {Do.LOG('PART', last)}")
        if not paths_of(shop, last) and is_said(Operation, last):
            raise UsageFault(f"{last!r} is work", f"say on what: {Do.LOG('PART', last)}")
        return (last,), None
    if operation_word(last) is not None:
        return tuple(parts), last
    if product := _marked_product(shop, last):
        return tuple(parts), product
    mine = paths_of(shop, last)
    if not mine:
        due = plain_word(last) in DUE_SAID and not names_a_product(shop, last)
        return tuple(parts), None if due else last
    bare = not set(last) & set("/:@*")
    if bare and names_a_product(shop, last):
        # A whole name is meant before a mere beginning.
        whole_part = any(PathName.read(path.casefold()).name == last.casefold() for path in mine)
        whole_product = _is_a_product(shop, last)
        if whole_part != whole_product:
            return (tuple(parts), last) if whole_product else (tuple(words), None)
        readings = (*mine, f"{PRODUCT_MARK}{last}")
        raise Ambiguous(
            f"{last!r} is a part and a product",
            f"type one of: {', '.join(map(shlex.quote, readings))}",
            last,
            readings,
        )
    work = tuple(each.value for each in meant(Operation, last)) if bare else ()
    if work:
        raise Ambiguous(
            f"{last!r} may be {' or '.join((*mine, *work))}",
            f"type one of: {', '.join((*mine, *work))}",
            last,
            (*mine, *work),
        )
    return tuple(words), None


def says_a_coat(shop: Shop, typed: str) -> bool:
    """Tell whether only `coat` was said: the product is the one that is due."""
    return plain_word(typed) in COAT_SAID and not names_a_product(shop, typed)


def _is_no_more_than_a_coat(shop: Shop, typed: str) -> bool:
    """Tell whether `coat` stands before its product (`log doors coat clear`), and is no part."""
    return says_a_coat(shop, typed) and not paths_of(shop, typed)


def _is_work_or_product(shop: Shop, typed: str) -> bool:
    return _is_a_product(shop, typed) or is_said(Operation, typed)


def _marked_product(shop: Shop, typed: str) -> str | None:
    """Read `product:spar`; None for anything else."""
    mark, name = typed[: len(PRODUCT_MARK)], typed[len(PRODUCT_MARK) :]
    return name if mark.casefold() == PRODUCT_MARK and names_a_product(shop, name) else None


def _is_a_product(shop: Shop, typed: str) -> bool:
    """Tell whether a product that is in use has just this name."""
    low = typed.casefold()
    return any(p.name.casefold() == low for p in shop.products.values() if not p.archived)


def work_or_product(shop: Shop, typed: str, facts: Facts) -> tuple[Operation, Product | None]:
    """Read a kind of work or a product: first our words, then products, then what people say.

    Ambiguous where it may be several; Unknown, with what is nearly so, where it is none.
    """
    operation = operation_word(typed)
    if operation is not None:
        return operation, None
    try:
        return Operation.COAT, pick_product(shop, typed)
    except UnknownProduct as unknown:
        work = meant(Operation, typed)
        if len(work) == 1:
            return Operation(work[0]), None
        if work:
            names = tuple(each.value for each in work)
            raise Ambiguous(
                f"{typed!r} may be {' or '.join(names)}",
                f"type one of: {', '.join(names)}",
                typed,
                names,
            ) from None
        if deed := goes_under(typed, Operation):
            hint = f"it goes with {deed('PART')}"
            raise NotFound(f"{typed!r} is no work and no product", hint) from None
        raise _with_near(unknown, typed, shop, facts) from None


def _with_near(unknown: UnknownProduct, typed: str, shop: Shop, facts: Facts) -> UnknownProduct:
    """Offer what is nearly so before a product that there is not.

    A kind of finish may be any product of that kind: which one is the person's to say.
    """
    kinds = set(facts.find_class(typed))
    mine = [p.name for p in shop.products.values() if p.class_key in kinds and not p.archived]
    near = dict.fromkeys((*mine, *unknown.near, *near_words(Operation, typed)))
    return UnknownProduct(unknown.message, unknown.make, unknown.name, tuple(near))
