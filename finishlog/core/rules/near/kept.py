"""What is stacked or packed: how, since when, and whether its film could bear it then."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.film.checks import failed, tells_of
from finishlog.core.film.layers import Layer
from finishlog.core.findings import Act, Answer, Figured, Finding, In, Level, finding, hours
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Check, Coat, Fault, Stripped, Work
from finishlog.core.log.words import Operation
from finishlog.core.rules.reads import BARE, STAGE
from finishlog.core.rules.rule import ABRADING, COAT, EVERY, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

_NEEDS = {Operation.STACK: Stage.STACK, Operation.PACK: Stage.PACK}


class Kept(Struct, frozen=True):
    """A part is stacked or packed (`how`) since a moment; `act`: by which act."""

    how: Operation
    since: datetime
    act: int


def kept(zone: ZoneState) -> Kept | None:
    """Return how a zone is kept; what was worked on since stands free again."""
    done = [e for e in zone.entries if isinstance(e, Work | Coat | Stripped)][-1:]
    last = done[0] if done else None
    if isinstance(last, Work) and last.operation in _NEEDS:
        return Kept(last.operation, last.when.latest, last.act)
    return None


@rule(
    "unpack-first",
    binds=COAT | ABRADING | {Act.RUB},
    source=COMMON_PRACTICE,
    reads=f"{BARE} work.operation work.when part.room moved.when moved.room moved.pieces",
)
def unpack_first(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What is packed does not stand free: it is unpacked, and looked at, before work on it."""
    at = kept(zone)
    if at is None:
        return
    packed = at.how is Operation.PACK
    found = finding(
        "unpack-first",
        Level.CAUTION if packed else Level.NOTE,
        COMMON_PRACTICE,
        measured=Figured((around.now - at.since).days, In.DAYS),
        answer=Answer.TEST if packed else None,
        how="packed" if packed else "stacked",
        rooms=_rooms_since(zone, at.since),
        film=None if zone.is_bare_wood else "film",
    )
    yield replace(found, acts=(at.act,))


def _rooms_since(zone: ZoneState, moment: datetime) -> tuple[str, ...]:
    """Name the rooms that a piece has stood in since a moment."""
    ends = [stay.since for stay in zone.stays[1:]]
    left = [end for end in ends if end <= moment]
    return tuple(dict.fromkeys(stay.air.name for stay in zone.stays[len(left) :]))


@rule(
    "kept-too-young",
    binds=EVERY,
    source=COMMON_PRACTICE,
    reads=f"{STAGE} check.test fault.when product.name",
)
def kept_too_young(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A film that could not bear it yet when it was stacked or packed is looked at.

    A check that passed since, and a fault that was logged since, say what was found.
    """
    at, top = kept(zone), zone.top
    if at is None or top is None:
        return
    looked = (e for e in zone.entries if isinstance(e, Check | Fault) and e.when.latest > at.since)
    if any(isinstance(e, Fault) or _passed(e, top) for e in looked):
        return
    bears = top.stage(_NEEDS[at.how])
    if bears is not None and (bears.high is None or bears.high > at.since):
        found = finding(
            "kept-too-young",
            Level.CAUTION,
            COMMON_PRACTICE,
            measured=hours((at.since - top.put_on) / timedelta(hours=1)),
            wanted=hours(bears.figure.high_h) if bears.figure else None,
            answer=None if asked.act is Act.REST else Answer.TEST,
            how="packed" if at.how is Operation.PACK else "stacked",
            of=top.coat.product_name,
        )
        yield replace(found, acts=(top.coat.act, at.act))


def _passed(check: Check, top: Layer) -> bool:
    return tells_of(check.test, top.of) and not failed(check.found)
