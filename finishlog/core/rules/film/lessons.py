"""What went wrong here before with the same coat on the same thing, on the same wood.

It is heard before the coat and where steps are chosen, and keeps nobody from anything. A good
finish since then makes a note of the caution; so does a board, where it is tried again. What was
told of the first coat of a finish is not told again of its next ones.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import datetime

from msgspec.structs import replace

from finishlog.core.film.layers import Layer
from finishlog.core.film.lessons import CameOut, Lessons, Pair, Put, put
from finishlog.core.findings import Figured, Finding, Level, count, finding
from finishlog.core.finish.classes import YOUR_LOG
from finishlog.core.log.entries import Check, Fault, Review
from finishlog.core.log.words import Outcome
from finishlog.core.rules.reads import BARE, LAYERS, WOOD
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.shop.things import Product, Step
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

# What a lesson is drawn from.
LEARNT = (
    "review.outcome review.when review.text fault.what fault.when check.found check.when"
    " stripped.when stripped.survives coat.product product.name product.class_key work.operation"
    " part.is_board"
)


@rule(
    "went-wrong-before",
    binds=COAT,
    source=YOUR_LOG,
    reads=f"{LEARNT} {LAYERS} {BARE} {WOOD}",
)
def went_wrong_before(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """The same went wrong before, on the same thing and the same wood."""
    if asked.over is None or not around.lessons.by_classes:
        return
    wood = around.facts.wood_key(zone.species)
    over, top = Put(asked.over.key, asked.product), zone.top
    if top is None and not (zone.is_bare_wood and wood):
        return
    pair = Pair(put(top.coat) if top else None, over, wood)
    known = [c for c in around.lessons.of(pair, around.now) if not _is_of(c, zone)]
    found = said_of(known, pair, counted=around.lessons.are_all)
    if found is None or (top and set(found.acts) <= _told_below(top, pair, zone, around)):
        return
    yield replace(found, level=Level.NOTE) if zone.member.is_board else found


def _is_of(came_out: CameOut, zone: ZoneState) -> bool:
    """Tell whether it is of what lies on the zone now: that speaks for itself."""
    said = (e for e in zone.entries if isinstance(e, Fault | Check | Review))
    return not came_out.is_off and any(e.act in came_out.acts for e in said)


def _told_below(top: Layer, pair: Pair, zone: ZoneState, around: Around) -> set[int]:
    """Return the acts that were told when the first coat of the finish on top went on."""
    if top.of.key != pair.over.of:
        return set()
    begins = next(
        (n for n in range(len(zone.layers) - 1, 0, -1) if zone.layers[n - 1].of.key != top.of.key),
        0,
    )
    first, under = zone.layers[begins], zone.layers[begins - 1] if begins else None
    below = Pair(put(under.coat) if under else None, put(first.coat), pair.wood)
    return {act for c in around.lessons.of(below, first.first_on) for act in c.acts}


def said_of(known: Sequence[CameOut], pair: Pair, *, counted: bool) -> Finding | None:
    """Return what a pair is told of its finishes, oldest first; None: none of them failed.

    `counted`: they are all there are, so that it may say how many.
    """
    failed = [c for c in known if c.outcome is Outcome.FAILED]
    if not failed:
        return None
    last = failed[-1]
    eased = any(c.outcome is Outcome.GOOD and c.when > last.when for c in known)
    under, over, wood = last.names
    found = finding(
        "went-wrong-before",
        Level.NOTE if eased else Level.CAUTION,
        YOUR_LOG,
        measured=_told_apart(failed) if counted else None,
        wanted=_told_apart(known) if counted else None,
        over=over,
        under=under,
        wood=wood,
        board="board" if last.on_board else "",
        film=last.film,
        what=last.what,
        quote=last.quote,
        instead=last.instead,
        off="off" if last.is_off else "",
        when=last.when,
        eased="eased" if eased else "",
        alike="" if last.pair == pair else "class",
        numbers=tuple(map(str, last.acts)),
    )
    return replace(found, acts=last.acts)


def _told_apart(finishes: Iterable[CameOut]) -> Figured:
    """Count finishes; those that were spoken of at once are one."""
    return count(len({each.acts for each in finishes}))


def said_of_steps(
    steps: Sequence[Step],
    wood: str,
    now: datetime,
    lessons: Lessons,
    products: Mapping[int, Product],
    *,
    on_bare_wood: bool = True,
) -> Iterator[Finding]:
    """Yield what some steps are told, as they would go on one another on a wood (by its key)."""
    for face in dict.fromkeys(("", *(face for step in steps for face in step.faces))):
        under: Put | None = None
        for step in (step for step in steps if not step.faces or face in step.faces):
            product = products.get(step.product) if step.product is not None else None
            if product is None:
                continue
            over = Put(product.class_key, product.id)
            pair = Pair(under, over, wood)
            found = said_of(lessons.of(pair, now), pair, counted=lessons.are_all)
            if found is not None and (under is not None or on_bare_wood):
                yield found
            under = over
