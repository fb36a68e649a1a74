"""Tape that was not logged off: how long it has been on, and what it went over."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from msgspec.structs import replace

from finishlog.core.findings import Act, Answer, Figured, Finding, In, Level, finding
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Operation
from finishlog.core.rules.reads import STAGE
from finishlog.core.rules.rule import EVERY, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

_OF_TAPE = frozenset({Operation.MASK, Operation.UNTAPE})


@rule(
    "tape-left",
    binds=EVERY,
    source="facts: preparation",
    reads="work.operation",
    mended_by="untape",
)
def tape_left(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Tape that stays on too long leaves its glue, or takes the film with it."""
    since, most = zone.masked_since, around.facts.preparation.tape_d
    if since is None or asked.operation in _OF_TAPE:
        return
    on = around.now - since.latest
    if on > timedelta(days=most.value):
        found = finding(
            "tape-left",
            Level.CAUTION,
            most.source,
            measured=Figured(on.days, In.DAYS),
            wanted=Figured(most.value, In.DAYS),
        )
        yield replace(found, answer=None if asked.act is Act.REST else Answer.TEST)


@rule("tape-on-young-film", binds=EVERY, source=COMMON_PRACTICE, reads=f"{STAGE} product.name")
def tape_on_young_film(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Tape went over a film that could not bear it yet: its edge may print or lift it."""
    since = zone.masked_since
    if since is None:
        return
    on = (y for y in zone.layers if y.put_on <= since.earliest and y.coat.when.order < since.order)
    below = list(on)[-1:]
    bears = below[0].stage(Stage.CLAMP) if below else None
    if bears is not None and (bears.high is None or bears.high > since.latest):
        of = below[0].coat
        found = finding("tape-on-young-film", source=COMMON_PRACTICE, of=of.product_name)
        yield replace(found, acts=(of.act,))
