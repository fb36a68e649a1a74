"""Gluing up: an assembly waits for its members, all of them, with bare joints."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from finishlog.core import checks as film_checks
from finishlog.core.findings import Finding, Level
from finishlog.core.records import Joined
from finishlog.core.shop import FaceKind, Need, Part, Piece
from finishlog.core.stages import Stage
from finishlog.core.verdicts import Answer, Verdict
from finishlog.core.zone import ZoneState


@dataclass(frozen=True, slots=True)
class GlueUp:
    """One piece of an assembly that is not glued up yet, the members picked for it, the verdict."""

    part: Part
    piece: Piece
    members: tuple[int, ...]
    verdict: Verdict


def pick_members(
    needs: Sequence[Need], parts: Mapping[int, Part], taken: frozenset[int]
) -> tuple[tuple[int, ...], tuple[str, ...]]:
    """Pick the lowest-numbered free pieces of each member part; also say what is missing."""
    picked: list[int] = []
    missing: list[str] = []
    for need in needs:
        part = parts.get(need.part)
        free = [p.id for p in part.pieces if p.id not in taken] if part else []
        picked.extend(free[: need.count])
        if len(free) < need.count:
            name = part.name if part else "a part"
            missing.append(f"{need.count - len(free)} more of {name}")
    return tuple(picked), tuple(missing)


def due(
    parts: Sequence[Part],
    zones: Sequence[ZoneState],
    joined: Mapping[int, Joined],
    now: datetime,
) -> tuple[GlueUp, ...]:
    """Return every assembly piece that is still to be glued up."""
    by_id = {part.id: part for part in parts}
    made = {entry.into for entry in joined.values()}
    taken = frozenset(joined)
    found: list[GlueUp] = []
    for part in parts:
        for piece in part.pieces if part.needs else ():
            if piece.id in made:
                continue
            members, missing = pick_members(part.needs, by_id, taken)
            taken |= frozenset(members)
            found.append(GlueUp(part, piece, members, _verdict(members, missing, zones, now)))
    return tuple(found)


def _verdict(
    members: Sequence[int], missing: Sequence[str], zones: Sequence[ZoneState], now: datetime
) -> Verdict:
    if missing:
        return Verdict(Answer.WAITS, "not all members exist", waits_for=", ".join(missing))
    states = [z for z in zones if z.member_piece.id in set(members)]
    findings = tuple(_dirty_joints(states))
    waits: dict[str, datetime | None] = {}
    for state in states:
        reason, until = _holds_up(state, now)
        if reason:
            waits[reason] = until
    if not waits:
        return Verdict(Answer.GO, "every member may be clamped", findings=findings)
    moments = list(waits.values())
    until = None if None in moments else max(m for m in moments if m)
    return Verdict(
        Answer.WAITS, "members are not ready for cauls", high=until, waits_for=", ".join(waits),
        findings=findings,
    )


def _holds_up(state: ZoneState, now: datetime) -> tuple[str, datetime | None]:
    """Return why one zone of a member cannot be clamped yet, and until when if that is known."""
    name = state.part.name
    if state.progress.next is not None:
        return f"{name}: {state.progress.next.operation.value} still to come", None
    top = state.top
    failure = film_checks.blocking(top.checks, Stage.CLAMP) if top else None
    if failure:
        return f"{name}: {failure.found.value}", None
    clamp = state.stages.get(Stage.CLAMP)
    if clamp and (clamp.high is None or clamp.high > now):
        return f"{name}: not at clamp", clamp.high
    return "", None


def _dirty_joints(states: Sequence[ZoneState]) -> list[Finding]:
    dirty = sorted({s.part.name for s in states if s.face.kind is FaceKind.JOINT and s.layers})
    return [
        Finding(
            Level.CAUTION,
            f"finish on a glue face of {name}: glue needs bare wood",
            "scrape it back to bare wood",
            "common practice",
        )
        for name in dirty
    ]
