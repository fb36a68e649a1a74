"""Where a face will be: inside a drawer or a case no air moves, and what smells goes on so."""

from __future__ import annotations

import re
from collections.abc import Iterator

from finishlog.core.findings import Answer, Finding, Level, finding
from finishlog.core.rules.reads import LAYERS
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

_INSIDE = frozenset({"inside", "insides", "interior", "inner"})
_DRAWER = frozenset({"drawer", "drawers"})
_SEEN = frozenset({"front", "fronts", "face", "faces", "pull", "pulls"})


def is_inside(zone: ZoneState) -> bool:
    """Tell by its names whether a face will be shut in: `inside`, of a drawer all but its front."""
    names = f"{zone.member.name} {zone.face.name} {zone.zone.name}"
    words = frozenset(re.findall(r"[a-z]+", names.casefold()))
    return bool(words & _INSIDE) or (bool(words & _DRAWER) and not words & _SEEN)


@rule(
    "inside-closed",
    binds=COAT,
    source="the class",
    reads=f"{LAYERS} part.name face.name zone.name product.class_key",
)
def inside_closed(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What smells for months does not go inside a drawer or a case; said before the first coat."""
    source = asked.over.not_inside_closed_source if asked.over else None
    if asked.over is None or source is None or not is_inside(zone):
        return
    if not any(layer.of.not_inside_closed_source for layer in zone.layers):
        yield finding(
            "inside-closed", Level.CAUTION, source, answer=Answer.TEST, of=asked.over.name
        )
