"""What a finish taught goes into its steps when it is done once more."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from finishlog.asks.look.look import Look
from finishlog.core.film.faults import as_fault
from finishlog.core.log.entries import AnyEntry, Note
from finishlog.core.log.words import Operation
from finishlog.core.shop.things import Step
from finishlog.picking import Zones


def as_learnt(steps: Sequence[Step], seen: Look, picked: Zones) -> tuple[Step, ...]:
    """Return steps that were done as they are done next time.

    What was noted for next time stands with the first of them. A fault that comes of colouring
    what was glued up, mended or not, sends the colour before the glue-up.
    """
    mine = [e for e in seen.log.entries if e.targets & picked.targets]
    learnt = _colour_first(steps, seen) if any(_asks_it(e, seen) for e in mine) else list(steps)
    said = [e.text for e in mine if isinstance(e, Note) and e.next_time]
    if said and learnt:
        words = ", ".join(filter(None, (learnt[0].note, *dict.fromkeys(said))))
        learnt[0] = replace(learnt[0], note=words)
    return tuple(replace(step, position=n) for n, step in enumerate(learnt))


def _asks_it(entry: AnyEntry, seen: Look) -> bool:
    fault = as_fault(entry)
    return fault is not None and seen.facts.fault_known(fault.what).colour_before_glue_up


def _colour_first(steps: Sequence[Step], seen: Look) -> list[Step]:
    """Put the colour, and what belongs to it, before the glue-up."""
    joined = next((n for n, s in enumerate(steps) if s.operation is Operation.GLUE_UP), None)
    coats = [n for n, step in enumerate(steps) if step.product is not None]
    colour = [n for n in coats if _is_colour(steps[n], seen)]
    if joined is None or not colour or colour[-1] < joined:
        return list(steps)
    # Up to the coat that follows the last colour: the sanding before it, and its wipes.
    ends = next((n for n in coats if n > colour[-1]), len(steps))
    while ends > colour[-1] + 1 and steps[ends - 1].operation is not Operation.WIPE:
        ends -= 1
    return [*steps[:joined], *steps[joined + 1 : ends], steps[joined], *steps[ends:]]


def _is_colour(step: Step, seen: Look) -> bool:
    product = seen.shop.products[step.product] if step.product is not None else None
    return product is not None and seen.facts.finish_class(product.class_key).is_colour
