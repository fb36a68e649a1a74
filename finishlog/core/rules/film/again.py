"""What failed twice by the same method is not waited for again: the method changes."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.film.checks import last_of_each_place
from finishlog.core.findings import Act, Answer, Finding, Level, celsius, finding
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.log.entries import Check, Coat
from finishlog.core.log.words import SOFT
from finishlog.core.rules.film.soft import still_soft
from finishlog.core.rules.reads import LAYERS, MEASURED, STAGE
from finishlog.core.rules.rule import EVERY, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

# Readings no further apart are the same air. common practice
_SAME_AIR_C = 3.0


class Same(Struct, frozen=True):
    """What two coats of one product had in common, of what was told of both."""

    before: Coat
    can: bool
    method: str
    celsius: float | None


@rule(
    "change-method",
    binds=EVERY,
    source=COMMON_PRACTICE,
    reads=(
        f"{STAGE} {LAYERS} {MEASURED} stripped.when coat.product coat.method coat.container"
        " product.name product.class_key"
    ),
    mended_by="off",
)
def change_method(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A film that stayed soft past its time, as one before it by the same method did.

    On the bare wood again, the same finish is tried elsewhere first.
    """
    top, soft = zone.top, still_soft(zone.top)
    if top is not None and soft is not None and soft.is_late:
        same = _as_before(top.coat, _stayed_soft(zone), zone)
        if same is not None:
            yield _said(same, top.coat, Answer.STALLED, Level.STOP)
    elif top is None and asked.act is Act.COAT and asked.over is not None:
        failed = [c for c in _stayed_soft(zone) if c.figures.class_key == asked.over.key]
        same = _as_before(failed[-1], failed[:-1], zone) if failed else None
        if same is not None:
            yield _said(same, failed[-1], Answer.TEST, Level.CAUTION)


def _said(same: Same, coat: Coat, answer: Answer, level: Level) -> Finding:
    found = finding(
        "change-method",
        level,
        COMMON_PRACTICE,
        measured=None if same.celsius is None else celsius(same.celsius),
        answer=answer,
        of=coat.product_name,
        can="can" if same.can else "",
        method=same.method,
        before=same.before.act,
    )
    return replace(found, acts=(same.before.act, coat.act))


def _stayed_soft(zone: ZoneState) -> list[Coat]:
    """Return the coats before the newest film that a check found soft, taken off or covered."""
    off = [
        attempt.coats[-1]
        for attempt in zone.attempts
        if any(isinstance(e, Check) and e.found in SOFT for e in attempt.found)
    ]
    covered = [
        each.coat
        for each in zone.layers[:-1]
        if any(check.found in SOFT for check in last_of_each_place(each.checks))
    ]
    return off + covered


def _as_before(coat: Coat, earlier: list[Coat], zone: ZoneState) -> Same | None:
    """Return the last earlier coat that was put on like this one, and what they share."""
    found = (shared(before, coat, zone) for before in reversed(earlier))
    return next((same for same in found if same is not None), None)


def shared(before: Coat, coat: Coat, zone: ZoneState) -> Same | None:
    """Return what two coats share; None where something told of both differs."""
    told = ((before.container, coat.container), (before.method, coat.method))
    if before.product != coat.product or any(a and b and a != b for a, b in told):
        return None
    airs = [zone.room.measured_at(each.when.latest) for each in (before, coat)]
    known = [air.temperature_c for air in airs if air is not None]
    if len(known) == len(airs) and max(known) - min(known) > _SAME_AIR_C:
        return None
    return Same(
        before,
        can=before.container is not None and before.container == coat.container,
        method=coat.method.value if coat.method is not None and before.method else "",
        celsius=known[-1] if len(known) == len(airs) else None,
    )
