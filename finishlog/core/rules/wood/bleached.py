"""Bleach that is still in the wood: rinsed out before sanding, and before what it must not meet.

Only rinsing with water takes it out, and only what is on record as rinsed was rinsed. A film that
went on since shuts it in.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from finishlog.core.film.layers import ABRADES
from finishlog.core.findings import Answer, Finding, Level, finding
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.log.entries import AnyEntry, Coat, Note, Work
from finishlog.core.log.words import Operation
from finishlog.core.mixing.chemistry import Ingredient, contents, meeting_finding
from finishlog.core.published.chemistry import Chemistry, Substances
from finishlog.core.published.facts import Facts
from finishlog.core.rules.reads import COMES
from finishlog.core.rules.rule import BY_HAND, COAT, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

_FAMILY = "bleach"
# A bleach under another class is known by its name. Only then is the chemistry read.
_NAMED = re.compile(r"\b(bleach|hypochlorite|chlorine)\b", re.IGNORECASE)

_RAISES_DUST = ABRADES | {Operation.STEEL_WOOL, Operation.LEVEL, Operation.RUB}


def unrinsed(told: Sequence[AnyEntry], facts: Facts) -> tuple[Coat, ...]:
    """Return the bleaches on a zone with no rinse and no film after them, oldest first."""
    return tuple(
        e for e in _in_the_wood(told, facts) if isinstance(e, Coat) and _bleached(e, facts)
    )


def _in_the_wood(told: Sequence[AnyEntry], facts: Facts) -> list[Coat | Work | Note]:
    """Return what reached the wood since it was last rinsed, or shut in by a film.

    The rinse itself is among it: vinegar in it stays in the wood. So is what was noted of a part:
    nobody logs fuming as anything else.
    """
    found: list[Coat | Work | Note] = []
    for entry in told:
        if isinstance(entry, Coat) and facts.finish_class(entry.figures.class_key).builds_film:
            found.clear()
        elif isinstance(entry, Coat | Work | Note):
            if isinstance(entry, Work) and entry.operation is Operation.RINSE:
                found.clear()
            found.append(entry)
    return found


def _bleached(coat: Coat, facts: Facts) -> bool:
    return _speaks_of_bleach(coat_alone(coat), facts)


def _speaks_of_bleach(of: Ingredient, facts: Facts) -> bool:
    family = facts.finish_class(of.class_key).family if of.class_key else ""
    if family == _FAMILY or _NAMED.search(f"{of.name} {of.note}"):
        return True
    return any(_speaks_of_bleach(part, facts) for part in of.made_of)


def coat_alone(coat: Coat) -> Ingredient:
    """Describe a coat by what stands with it, without the can that it came from."""
    return Ingredient(coat.product_name, coat.figures.class_key, coat.note)


def dust_of_bleach(told: Sequence[AnyEntry], operation: Operation, facts: Facts) -> Finding | None:
    """Say that sanding raises the dust of a bleach, where no rinse is on record since."""
    left = unrinsed(told, facts) if operation in _RAISES_DUST else ()
    if not left:
        return None
    names = tuple(dict.fromkeys(coat.product_name for coat in left))
    found = finding(
        "dust-of-bleach", Level.STOP, COMMON_PRACTICE, answer=Answer.UNDERNEATH, names=names
    )
    return replace(found, acts=tuple(coat.act for coat in left))


@rule(
    "dust-of-bleach",
    binds=BY_HAND,
    source=COMMON_PRACTICE,
    reads="coat.note work.operation product.name product.class_key",
)
def dust(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A bleach that was not rinsed out is not sanded: its dust is poison."""
    doing = asked.operation
    found = dust_of_bleach(zone.entries, doing, around.facts) if doing else None
    if found is not None:
        yield found


@rule(
    "met-in-the-wood",
    binds=COAT | BY_HAND,
    source="facts: chemistry",
    reads=f"{COMES} coat.note work.operation work.note note.text",
)
def met(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What must never meet meets in the wood too, until it is rinsed out or shut in by a film."""
    if asked.comes is None:
        return
    found = met_in_the_wood(zone.entries, asked.comes, around.facts, done=asked.done)
    if found is not None:
        answer = Answer.UNDERNEATH if found.level is Level.STOP else None
        yield replace(found, answer=answer)


def met_in_the_wood(
    told: Sequence[AnyEntry], comes: Ingredient, facts: Facts, *, done: bool
) -> Finding | None:
    """Say that what comes meets, in the wood, what it must not meet; `done`: it is there already.

    Also that a bleach goes over another that was not rinsed out.
    """
    there = _in_the_wood(told, facts)
    bleaches = [e for e in there if isinstance(e, Coat) and _bleached(e, facts)]
    is_bleach = _speaks_of_bleach(comes, facts)
    if not bleaches and not (is_bleach and there):
        return None
    holds = contents(comes, facts.chemistry)
    for left in reversed(there):
        met = facts.chemistry.meeting(holds, _left_by(left, facts.chemistry))
        met = tuple(c for c in met if c.on_wood)
        if met:
            # A note may speak of what is only meant, or feared.
            return meeting_finding(met[0], done=done and not isinstance(left, Note))
    others = [c for c in bleaches if c.figures.class_key != comes.class_key]
    if not (is_bleach and others):
        return None
    return finding("bleach-over-bleach", Level.CAUTION, COMMON_PRACTICE, of=others[-1].product_name)


def _left_by(entry: Coat | Work | Note, chemistry: Chemistry) -> Substances:
    if isinstance(entry, Work):
        return chemistry.in_note(entry.note)
    if isinstance(entry, Note):
        return chemistry.in_note(entry.text)
    return contents(coat_alone(entry), chemistry)
