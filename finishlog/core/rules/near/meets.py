"""A face that slides or shuts against another: film drags in a runner, and sticks while it is soft.

Doors that stuck were shut on a film that was dry and not hard: full hardness, not a date to stack,
is what blocking asks for (common practice).
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from finishlog.core.findings import Act, Answer, Finding, Level, finding
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.finish.stages import Stage
from finishlog.core.rules.reads import LAYERS, STAGE
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.shop.things import Meets
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState


@rule(
    "film-in-runner",
    binds=COAT,
    source="facts: preparation",
    reads=f"{LAYERS} face.meets product.class_key",
)
def film_in_runner(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What slides stays bare, or gets wax; one thin coat under the wax is as much as it bears."""
    over, slides = asked.over, around.facts.preparation.slides
    if over is None or zone.face.meets is not Meets.SLIDES or not over.builds_film:
        return
    on_it = sum(layer.of.builds_film for layer in zone.layers)
    if over.key not in slides.thin or on_it >= slides.most_coats.value:
        yield finding(
            "film-in-runner",
            Level.CAUTION,
            slides.most_coats.source,
            of=over.name,
            coats=slides.most_coats.value,
            on_it=float(on_it),
        )


@rule(
    "shuts-while-soft",
    binds=frozenset({Act.CLOSE}),
    source=COMMON_PRACTICE,
    reads=f"{STAGE} face.meets product.name",
)
def shuts_while_soft(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What shuts or slides on a film waits until that is fully hard."""
    top, time = zone.top, zone.stages.get(Stage.CURED)
    if zone.face.meets is None or top is None or time is None:
        return
    if not any(layer.of.builds_film for layer in zone.layers):
        return
    told = time.reckoned
    if told.high is None or around.now < told.high:
        found = finding(
            "shuts-while-soft",
            source=COMMON_PRACTICE,
            answer=Answer.DRYING,
            of=top.coat.product_name,
            meets=zone.face.meets.value,
        )
        yield replace(found, low=told.low, high=told.high, wait=told, acts=(top.coat.act,))
