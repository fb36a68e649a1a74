"""Wet films beside a zone: other faces of its piece, and what dust would spoil in its room."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from finishlog.core.film.checks import standing_failures
from finishlog.core.film.layers import ABRADES
from finishlog.core.findings import Answer, Finding, finding
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.rules.film.clocks import scuffs_first
from finishlog.core.rules.reads import BROKEN_OFF, FAULTS, SAYS, STAGE
from finishlog.core.rules.rule import ABRADING, COAT, rule
from finishlog.core.zone.around import Around, Wet
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState


def after(wet: Wet, rule_: str) -> Finding:
    """Return the wait for something wet."""
    found = finding(rule_, answer=Answer.WAITS, name=wet.name, doubt=wet.doubt)
    return replace(found, high=wet.until, wait=wet.wait, plain=True)


def _abrades(asked: Asked) -> bool:
    return asked.operation in ABRADES


@rule(
    "other-face",
    binds=COAT | ABRADING,
    source=COMMON_PRACTICE,
    reads=f"{STAGE} face.name face.kind check.test piece-reading.when piece-reading.temperature_c",
)
def other_face(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A piece is not turned onto a face that cannot bear it yet."""
    if asked.over is None and not _abrades(asked):
        return
    wet = around.other_face(zone)
    if wet is not None:
        yield after(wet, "other-face")


@rule(
    "dust-on-wet",
    binds=COAT | ABRADING,
    source=COMMON_PRACTICE,
    reads=f"{STAGE} {FAULTS} {BROKEN_OFF} {SAYS} product.label_window part.name",
)
def dust_on_wet(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """No sanding, and no scuffing for a coat, while films in the room are not dust-free."""
    if not (_abrades(asked) or scuffs_first(zone, asked, around)):
        return
    # A film that failed a check is tested before anybody scuffs it.
    if asked.over is not None and zone.top and standing_failures(zone.top.checks):
        return
    wet = around.spoilt_by_dust(zone)
    if wet is not None:
        yield after(wet, "dust-on-wet")
