"""A coat that was broken off: a film with an edge in it, and not the coat that was meant."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from finishlog.core.film.grip import was_scuffed
from finishlog.core.film.layers import Layer
from finishlog.core.findings import Act, Answer, Finding, Level, finding
from finishlog.core.finish.classes import COMMON_PRACTICE, WindowKind
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Work
from finishlog.core.log.words import Operation
from finishlog.core.rules.reads import BROKEN_OFF, STAGE
from finishlog.core.rules.rule import ABRADING, EVERY, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

# Any of these tells that a film is not wet any more.
_NOT_WET = (Stage.TOUCH, Stage.DUST_FREE, Stage.TACK_FREE)


@rule(
    "broken-off",
    binds=EVERY - {Act.TAKE_OFF},
    source=COMMON_PRACTICE,
    reads=f"{STAGE} {BROKEN_OFF} product.name",
)
def broken_off(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What lies there is evened out: wet it is left alone or taken off, dry it is scuffed level.

    Colour is wetted again, whole, by its own kind: under another coat its edge shows for good.
    """
    top = zone.top
    if top is None or top.coat.is_whole or _mended(zone, top):
        return
    wet = _is_wet(top, around)
    if _evens_it_out(top, asked, wet=wet):
        return
    again = asked.over is not None and asked.over.key == top.of.key
    buries = asked.act is Act.COAT and not top.of.builds_film and not again
    found = finding(
        "broken-off",
        Level.NOTE if again else Level.CAUTION,
        COMMON_PRACTICE,
        answer=Answer.TEST if buries else None,
        of=top.coat.product_name,
        covered=top.coat.stopped,
        wet="wet" if wet else "",
        how=_evened_by(top),
        act=top.coat.act,
    )
    yield replace(found, acts=(top.coat.act,))


def _mended(zone: ZoneState, top: Layer) -> bool:
    """Tell whether it was evened out: of colour its own solvent does it, all over."""
    by = {Operation.MEND} if top.of.builds_film else {Operation.MEND, Operation.SOLVENT_WIPE}
    return any(
        isinstance(e, Work) and e.operation in by
        for e in zone.entries[zone.entries.index(top.coat) :]
    )


def _evens_it_out(top: Layer, asked: Asked, *, wet: bool) -> bool:
    """Tell whether what is asked is what evens it: scuffing, a coat on a scuffed one, or a wipe."""
    if not top.of.builds_film:
        return asked.act is Act.WIPE
    if wet:
        return False
    return asked.act in ABRADING or (asked.act is Act.COAT and was_scuffed(top))


def _is_wet(top: Layer, around: Around) -> bool:
    """Tell whether it may be wet still by its label; a class without such a figure is not asked."""
    times = [time for stage in _NOT_WET if (time := top.stage(stage))]
    return bool(times) and (times[0].high is None or around.now < times[0].high)


def _evened_by(top: Layer) -> str:
    if not top.of.builds_film:
        return "wetted"
    return "melted" if top.of.window.kind is WindowKind.MELTS_IN else "scuffed"
