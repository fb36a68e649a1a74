"""Dichromate in the wood: no rinse takes it out, and its dust causes cancer."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from finishlog.core.film.layers import ABRADES
from finishlog.core.findings import Act, Answer, Finding, Level, also, finding
from finishlog.core.finish.classes import FROM_MEMORY
from finishlog.core.finish.hazard import Hazard
from finishlog.core.log.words import Stripping
from finishlog.core.rules.reads import LAYERS, SAYS
from finishlog.core.rules.rule import ABRADING, rule
from finishlog.core.safety.hazards import hazards_in
from finishlog.core.safety.whats_in import in_film
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

_DOWN_TO_IT = frozenset({Stripping.SCRAPE, Stripping.SAND_THROUGH})


@rule(
    "chromate-dust",
    binds=ABRADING | {Act.TAKE_OFF},
    source=FROM_MEMORY,
    reads=f"{LAYERS} {SAYS} product.name product.class_key coat.product coat.note",
)
def dust(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Wood that was stained with it is neither sanded nor scraped, rinsed or not."""
    through = asked.stripping in _DOWN_TO_IT
    if asked.operation not in ABRADES and not through:
        return
    for layer in zone.layers:
        what = in_film(layer.coat, around.products.get(layer.coat.product))
        covered = any(above.of.builds_film for above in zone.layers if above is not layer)
        if Hazard.CHROMATE not in hazards_in(what, around.facts) or (covered and not through):
            continue
        found = finding("chromate-dust", Level.STOP, FROM_MEMORY, answer=Answer.BLOCKED)
        yield replace(also(found, of=layer.coat.product_name), acts=(layer.coat.act,))
        return
