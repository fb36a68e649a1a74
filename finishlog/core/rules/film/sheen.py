"""What shows in the look of a coat, and never in a clock: a can not stirred, two cans in a piece.

The last coat alone makes the sheen; colour is made by every coat of it.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from finishlog.core.film.layers import Layer
from finishlog.core.film.stirred import batch_of, unstirred, what_settles
from finishlog.core.findings import Act, Finding, Level, finding
from finishlog.core.log.words import Operation
from finishlog.core.rules.reads import BROKEN_OFF, LAYERS
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

# What is looked at, or leaves as it is.
_SEEN = frozenset({Act.REST, Act.PACK, Act.HAND_OVER})
_DRAWN = "coat.container container.name container.deed container.when"
_LAST = (
    f"{LAYERS} coat.product product.class_key product.name product.sheen step.operation"
    " step.product step.faces work.operation"
)


@rule(
    "not-stirred",
    binds=COAT | _SEEN,
    source="facts: keeping",
    reads=f"{_LAST} {_DRAWN} {BROKEN_OFF} coat.stirred",
)
def not_stirred(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What lies on top came from a can that was not stirred; another coat of it makes that good."""
    for layer in zone.lying_open:
        what = unstirred(layer, around.products, around.facts)
        if what is None or layer.coat.product in {asked.product, *_still_to_come(zone)}:
            continue
        found = finding(
            "not-stirred",
            Level.CAUTION,
            what.source,
            of=layer.coat.product_name,
            can=layer.came_from.name if layer.came_from else "",
            what=what.what,
            shows=what.shows,
        )
        yield replace(found, acts=(layer.coat.act,))
        return


def _still_to_come(zone: ZoneState) -> frozenset[int | None]:
    """Return the products of which a coat is still due: what is on is not the last of them."""
    ahead = zone.progress.steps[zone.progress.done :]
    return frozenset(step.product for step in ahead if step.operation is Operation.COAT)


@rule(
    "two-batches",
    binds=_SEEN,
    source="facts: keeping",
    reads=f"{_LAST} coat.container container.name container.batch container.drawn_from"
    " container.when part.name piece.number",
)
def two_batches(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """The last coat came from another can than on what stands beside it: two sheens, two tones.

    A note where nobody noted the batches, which may be one.
    """
    mine = _last_coat(zone, around)
    if mine is None:
        return
    can, batch = batch_of(mine.came_from)
    others: dict[tuple[str, str], list[ZoneState]] = {}
    for other in (z for zones in around.by_piece.values() for z in zones):
        theirs = _last_coat(other, around) if other.member.project == zone.member.project else None
        if theirs is None or theirs.coat.product != mine.coat.product:
            continue
        source = batch_of(theirs.came_from)
        if source[1] != batch if batch and source[1] else source[0] != can:
            others.setdefault(source, []).append(other)
    for (their_can, their_batch), zones in others.items():
        known = bool(batch and their_batch)
        found = finding(
            "two-batches",
            Level.CAUTION if known else Level.NOTE,
            "common practice",
            of=mine.coat.product_name,
            can=can,
            batch=batch if known else "",
            theirs=their_can,
            their_batch=their_batch if known else "",
            parts=tuple(dict.fromkeys(_called(each) for each in zones)),
        )
        yield replace(found, acts=(mine.coat.act,))


def _called(zone: ZoneState) -> str:
    several = len(zone.member.pieces) > 1
    return f"{zone.member.called}:{zone.member_piece.number}" if several else zone.member.called


def _last_coat(zone: ZoneState, around: Around) -> Layer | None:
    """Return the coat that makes the look, of what two cans of may differ in; None: there is none.

    A clear gloss is alike from can to can.
    """
    top = zone.top
    if top is None or not batch_of(top.came_from)[0] or top.coat.product in _still_to_come(zone):
        return None
    differs = top.of.is_colour or what_settles(top.coat, around.products, around.facts)
    return top if differs else None
