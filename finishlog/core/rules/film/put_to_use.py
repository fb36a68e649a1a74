"""Who will use it: food and a child's mouth want a film that is fully hard."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from finishlog.core.findings import Act, Answer, Finding, Level, finding
from finishlog.core.finish.stages import Stage
from finishlog.core.rules.reads import STAGE
from finishlog.core.rules.rule import rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState


@rule(
    "hard-before-use",
    binds=frozenset({Act.USE, Act.HAND_OVER}),
    source="facts: care",
    reads=f"{STAGE} product.name project.used_for",
)
def hard_before_use(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What food or a child will touch leaves fully hard, and is used after the longest advice.

    The care card counts the same days.
    """
    top, care = zone.top, around.facts.care
    if zone.used_for is None or top is None:
        return
    hard = zone.date_of(Stage.CURED)
    until = hard.high if hard is not None else None
    if until is not None and asked.act is Act.USE:
        until = max(until, top.put_on + care.wait_of(top.of))
    if until is None or around.now < until:
        found = finding(
            "hard-before-use",
            Level.STOP,
            care.waits_d.source,
            answer=Answer.WAITS,
            of=top.coat.product_name,
            used_for=zone.used_for.value,
        )
        yield replace(found, high=until, acts=(top.coat.act,))
