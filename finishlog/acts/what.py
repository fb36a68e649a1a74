"""What was done, as it was typed: a product, or a kind of work in our words or in theirs."""

from __future__ import annotations

from finishlog.acts.said import near_words
from finishlog.core.records import Operation
from finishlog.core.shop import Product, Shop
from finishlog.core.trade_words import meant
from finishlog.errors import Ambiguous, Unknown
from finishlog.picking import operation_word, pick_product


def work_or_product(shop: Shop, typed: str) -> tuple[Operation, Product | None]:
    """Read a kind of work or a product: first our words, then products, then what people say.

    Ambiguous where it may be several; Unknown, with what is nearly so, where it is none.
    """
    operation = operation_word(typed)
    if operation is not None:
        return operation, None
    try:
        return Operation.COAT, pick_product(shop, typed)
    except Unknown as unknown:
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
        raise _with_near_work(unknown, typed) from None


def _with_near_work(unknown: Unknown, typed: str) -> Unknown:
    """Offer the work that is nearly so before a product that there is not."""
    near = tuple(dict.fromkeys((*unknown.near, *near_words(Operation, typed))))
    if not near:
        return unknown
    command = unknown.hint.partition("else ")[2] or unknown.hint
    hint = f"did you mean {' or '.join(near)}? else {command}"
    return Unknown(unknown.message, hint, unknown.kind, unknown.name, near)
