"""What of tonight's work fits into the minutes that there are: the answer of `ready --for`."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec import Struct

from finishlog.asks.look.standing import Standing
from finishlog.core.bench.fit import Chore, fit
from finishlog.core.findings import Answer
from finishlog.core.log.words import Operation
from finishlog.core.published.facts import Facts
from finishlog.core.shop.things import Product
from finishlog.core.zone.verdict import MAY_ACT


class Fits(Struct, frozen=True):
    """The lines of the bench that fit, in the order to do them, and those that do not.

    `takes_min`: together, from stirring the can to a clean brush.
    """

    minutes: float
    takes_min: float
    lines: tuple[Standing, ...]
    left_out: tuple[Standing, ...]


def fits_into(
    bench: Sequence[Standing], minutes: float, products: Mapping[int, Product], facts: Facts
) -> Fits:
    """Choose from the lines that may be done now, the most urgent first."""
    may = [line for line in bench if line.answer in MAY_ACT | {Answer.DEADLINE}]
    methods = {p.name: facts.finish_class(p.class_key).methods[0] for p in products.values()}
    chores = [
        Chore(
            number=n,
            operation=_operation(line),
            product=line.product,
            method=methods.get(line.product),
            pieces=len(line.pieces),
            faces=max(1, len(line.faces)),
            scuff_first=line.answer is Answer.SCUFF or line.scuff_first,
        )
        for n, line in enumerate(may)
    ]
    visit = fit(chores, minutes, facts.hands_on)
    return Fits(
        minutes=minutes,
        takes_min=visit.takes_min,
        lines=tuple(may[c.number] for c in visit.chosen),
        left_out=tuple(may[c.number] for c in visit.left_out),
    )


def _operation(line: Standing) -> Operation:
    """Name the work; a running deadline is wiping off."""
    if line.answer is Answer.DEADLINE:
        return Operation.WIPE
    return Operation(line.operation) if line.operation else Operation.COAT
