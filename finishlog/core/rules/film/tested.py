"""What a test beside the usual ones found: a rub with solvent, a straightedge."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from finishlog.core.film.checks import last_sample, standing_failures
from finishlog.core.film.faults import as_fault
from finishlog.core.findings import Act, Answer, Finding, Level, finding
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.log.entries import AnyEntry, Check
from finishlog.core.log.words import FaultKind, Found
from finishlog.core.rules.reads import FAULTS, LAYERS
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState


@rule(
    "comes-off-coloured",
    binds=COAT,
    source=COMMON_PRACTICE,
    reads=f"{LAYERS} check.found check.place product.name product.class_key",
)
def comes_off_coloured(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Colour or oil that its own solvent takes up is lifted by the next coat; its own kind may."""
    top, over = zone.top, asked.over
    if top is None or over is None or top.of.builds_film or over.key == top.of.key:
        return
    for failure in standing_failures(top.checks)[-1:]:
        if failure.found is Found.SOFTENS:
            of = top.coat.product_name
            found = finding("comes-off-coloured", Level.STOP, answer=Answer.BLOCKED, of=of)
            yield replace(found, acts=(failure.act,))


@rule(
    "sample-first",
    binds=COAT,
    source=COMMON_PRACTICE,
    reads=f"{LAYERS} check.test check.found",
)
def sample_first(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A sample that stayed soft before the first coat speaks against that can on this wood."""
    if asked.over is None or zone.layers:
        return
    last = last_sample(zone.entries)
    if last is not None and last.found is Found.SAMPLE_SOFT:
        found = finding("sample-first", Level.CAUTION, COMMON_PRACTICE, answer=Answer.TEST)
        yield replace(found, acts=(last.act,))


@rule(
    "was-cupped",
    binds=frozenset({Act.CLAMP, Act.GLUE_UP, Act.CLOSE}),
    source=COMMON_PRACTICE,
    reads=f"{FAULTS} check.when fault.when",
)
def was_cupped(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What was cupped is laid under a straightedge before it is glued or fitted, mended or not."""
    of_piece = around.by_piece.get(zone.member_piece.id, (zone,))
    told = {e.id: e for each in of_piece for e in each.entries}
    tells = sorted((e for e in told.values() if _of_its_shape(e)), key=lambda e: e.when.order)
    still = any(f.known.kind is FaultKind.CUPPED for f in zone.faults)
    if tells and not still and not _is_flat(tells[-1]):
        found = finding("was-cupped", Level.CAUTION, COMMON_PRACTICE, answer=Answer.TEST)
        yield replace(found, acts=(tells[-1].act,))


def _of_its_shape(entry: AnyEntry) -> bool:
    fault = as_fault(entry)
    return _is_flat(entry) or (fault is not None and fault.what is FaultKind.CUPPED)


def _is_flat(entry: AnyEntry) -> bool:
    return isinstance(entry, Check) and entry.found is Found.FLAT
