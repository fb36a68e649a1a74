"""What a piece that is stacked, packed or stored asks for: could it bear it, when to look again."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta

from msgspec.structs import replace

from finishlog.core.film.checks import failed, tells_of
from finishlog.core.film.layers import Layer
from finishlog.core.findings import (
    KEPT_TOO_YOUNG,
    Act,
    Answer,
    Figured,
    Finding,
    In,
    Level,
    finding,
    hours,
)
from finishlog.core.finish.classes import COMMON_PRACTICE, Mechanism
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Check, Fault, PieceReading
from finishlog.core.log.words import Keeping
from finishlog.core.published.facts import Facts
from finishlog.core.published.keeping import Lies, LookAgain
from finishlog.core.rules.reads import BARE, STAGE
from finishlog.core.rules.rule import ABRADING, COAT, EVERY, LOADED, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked, stage_kept
from finishlog.core.zone.kept import ASIDE, Kept, kept, spells
from finishlog.core.zone.state import ZoneState

# Where no air moves over a film.
_NO_AIR = frozenset({Keeping.WRAPPED, Keeping.SHUT_IN})
_ROOMS = "part.room moved.when moved.room moved.pieces"
# How it is kept, and what ends that.
_AS_KEPT = (
    "work.operation work.when work.kept set-aside.when resumed.when joined.when joined.members"
)


def look_at(zone: ZoneState, now: datetime, facts: Facts) -> tuple[datetime, LookAgain] | None:
    """Return by when what is kept is looked at (again), and why; None: it asks for no look."""
    at = kept(zone)
    if at is None:
        return None
    last = max([at.since, *(e.when.latest for e in zone.entries if _looked(e))])
    looks = [
        (last + timedelta(days=row.days.value), row)
        for row in facts.kept.look
        if at.how in row.how and _lies(zone, row.of, now)
    ]
    return min(looks, key=lambda look: look[0], default=None)


def _looked(entry: object) -> bool:
    return isinstance(entry, Check | Fault) or (
        isinstance(entry, PieceReading) and entry.moisture_pct is not None
    )


def _lies(zone: ZoneState, of: Lies, now: datetime) -> bool:
    """Tell whether such a thing lies on it: bare wood, a film that is not fully hard yet."""
    if of is Lies.BARE_WOOD:
        return zone.is_bare_wood and not zone.is_bare_joint
    hard = zone.stages.get(Stage.CURED)
    if hard is None or (hard.high is not None and hard.high <= now):
        return False
    return of is Lies.YOUNG_FILM or any(map(_needs_air, zone.layers))


def _needs_air(layer: Layer) -> bool:
    return layer.of.mechanism is Mechanism.OXIDATION


@rule(
    "look-again",
    binds=COAT | {Act.REST, Act.HAND_OVER},
    source="facts: kept",
    reads=f"{STAGE} {BARE} {_AS_KEPT} fault.when piece-reading.when piece-reading.moisture_pct",
)
def look_again(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What is kept is looked at in time: a stacked film sticks, one bare face to the air cups.

    Before a coat it is taken out in any case (`unpack-first`): then only bare wood is asked after.
    """
    look, at = look_at(zone, around.now, around.facts), kept(zone)
    if look is None or at is None or look[0] > around.now:
        return
    by, row = look
    if (asked.act is Act.COAT and row.of is not Lies.BARE_WOOD) or kept_early(zone):
        return
    found = finding(
        "look-again",
        Level.CAUTION,
        row.days.source,
        measured=_age(around.now - by + timedelta(days=row.days.value)),
        wanted=Figured(row.days.value, In.DAYS),
        answer=None if asked.act is Act.REST else Answer.TEST,
        how=at.how,
        deed=at.deed,
        reason=row.reason,
        remedy=row.remedy,
        found=row.found.value,
    )
    yield replace(found, acts=(at.act,))


def _age(age: timedelta) -> Figured:
    return Figured(age.days, In.DAYS) if age.days > 2 else hours(age / timedelta(hours=1))


@rule(
    "no-air",
    binds=COAT | ABRADING | LOADED | {Act.RUB},
    source="facts: kept",
    reads=f"{STAGE} {_AS_KEPT} check.test product.name",
)
def no_air(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """An oil or varnish that was wrapped or shut in young had no air to harden by: it is tested.

    The hours in there are label hours by the clock alone; a check that passed since tells more.
    """
    top, least = zone.top, around.facts.kept.no_air_h
    if top is None or not _needs_air(top) or (not top.of.builds_film and asked.act in ABRADING):
        return
    for spell in reversed([*spells(zone)]):
        at, end = spell.kept, spell.until or around.now
        hard = top.stage(Stage.CURED)
        young = hard is not None and (hard.high is None or hard.high > at.since)
        shut_h = (end - max(at.since, top.put_on)) / timedelta(hours=1)
        if at.how not in _NO_AIR or not young or shut_h < least.value:
            continue
        if not any(c.when.latest > at.since and _passed(c, top) for c in top.checks):
            found = finding(
                "no-air",
                Level.CAUTION,
                least.source,
                measured=_age(timedelta(hours=shut_h)),
                answer=Answer.TEST,
                how=at.how,
                deed=at.deed,
                of=top.coat.product_name,
            )
            yield replace(found, acts=(top.coat.act, at.act))
        return


@rule(
    "unpack-first",
    binds=COAT | ABRADING | {Act.RUB},
    source=COMMON_PRACTICE,
    reads=f"{BARE} {_AS_KEPT} {_ROOMS}",
)
def unpack_first(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What is packed does not stand free: it is unpacked, and looked at, before work on it."""
    at = kept(zone)
    if at is None or at.deed == ASIDE or at.how in {Keeping.STANDING, Keeping.FLAT}:
        return
    packed = at.how is Keeping.WRAPPED
    found = finding(
        "unpack-first",
        Level.CAUTION if packed else Level.NOTE,
        COMMON_PRACTICE,
        measured=Figured((around.now - at.since).days, In.DAYS),
        answer=Answer.TEST if packed else None,
        how=at.how,
        deed=at.deed,
        rooms=at.rooms,
        film=None if zone.is_bare_wood else "film",
    )
    yield replace(found, acts=(at.act,))


@rule(
    KEPT_TOO_YOUNG,
    binds=EVERY,
    source=COMMON_PRACTICE,
    reads=f"{STAGE} {_AS_KEPT} check.test fault.when product.name",
)
def kept_too_young(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A film that could not bear it yet when it was stacked or packed is looked at.

    A check that passed since, and a fault that was logged since, say what was found.
    """
    at, top = kept_early(zone), zone.top
    stage = stage_kept(at.deed, at.how) if at else None
    if at is None or top is None or stage is None:
        return
    bears = top.stage(stage)
    found = finding(
        KEPT_TOO_YOUNG,
        Level.CAUTION,
        COMMON_PRACTICE,
        measured=hours((at.since - top.put_on) / timedelta(hours=1)),
        wanted=hours(bears.figure.high_h) if bears and bears.figure else None,
        answer=None if asked.act is Act.REST else Answer.TEST,
        how=at.how,
        deed=at.deed,
        of=top.coat.product_name,
    )
    yield replace(found, acts=(top.coat.act, at.act))


def kept_early(zone: ZoneState) -> Kept | None:
    """Return how a film is kept that could not bear it yet, and nobody looked since."""
    at, top = kept(zone), zone.top
    stage = stage_kept(at.deed, at.how) if at is not None else None
    if at is None or top is None or stage is None:
        return None
    looked = (e for e in zone.entries if isinstance(e, Check | Fault) and e.when.latest > at.since)
    if any(isinstance(e, Fault) or _passed(e, top) for e in looked):
        return None
    bears = top.stage(stage)
    return at if bears is not None and (bears.high is None or bears.high > at.since) else None


def _passed(check: Check, top: Layer) -> bool:
    return tells_of(check.test, top.of) and not failed(check.found)
