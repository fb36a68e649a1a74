"""Gluing up: an assembly waits for its members, all of them, with bare joints."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import UTC, datetime
from functools import partial, reduce
from typing import NamedTuple

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.film.layers import ABRADES
from finishlog.core.findings import DIRTY_JOINT, Act, Answer, Finding, Level, finding, pct
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.finish.stage_time import StageTime, later
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import AnyEntry, Joined, PieceReading, Stripped, Work
from finishlog.core.log.words import Operation
from finishlog.core.rules.near.joint import held_by_glue
from finishlog.core.rules.wood.too_wet import measured_moisture
from finishlog.core.shop.things import FaceKind, Need, Part, Piece
from finishlog.core.verdict.fold import UNDATED, decide
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import MAY_ACT, Told, Verdict, of

_CLAMPED = Asked(Act.CLAMP)


class Missing(NamedTuple):
    """Members that are not there: so many more of a part; none: it is to be glued up itself."""

    name: str
    more: int = 0


_WEIGHS = {level: n for n, level in enumerate(Level)}


class GlueUp(Struct, frozen=True):
    """One piece of an assembly that is not glued up yet, the members picked for it, the verdict."""

    part: Part
    piece: Piece
    members: tuple[int, ...]
    told: Told

    @property
    def verdict(self) -> Verdict:
        """Do all members bear cauls? Worked out as it is asked for."""
        return self.told.verdict


def pick_members(
    needs: Sequence[Need], parts: Mapping[int, Part], taken: frozenset[int]
) -> tuple[tuple[int, ...], tuple[Missing, ...]]:
    """Pick the lowest-numbered free pieces of each member part; also say what is missing."""
    picked: list[int] = []
    missing: list[Missing] = []
    for need in needs:
        part = parts.get(need.part)
        free = [p.id for p in part.pieces if p.id not in taken] if part else []
        picked.extend(free[: need.count])
        if len(free) < need.count:
            name = part.called if part else "a part"
            missing.append(Missing(name, need.count - len(free)))
    return tuple(picked), tuple(missing)


def due(
    parts: Sequence[Part],
    zones: Sequence[ZoneState],
    joined: Mapping[int, Joined],
    near: Around,
) -> tuple[GlueUp, ...]:
    """Return every assembly piece that is still to be glued up."""
    by_id = {part.id: part for part in parts}
    made = {entry.into for entry in joined.values()}
    taken = frozenset(joined)
    to_make = {p.id: part.called for part in parts if part.needs for p in part.pieces}
    found: list[GlueUp] = []
    for part in parts:
        for piece in part.pieces if part.needs else ():
            if piece.id in made:
                found += _again(part, piece, zones, joined, near)
                continue
            members, missing = pick_members(part.needs, by_id, taken)
            taken |= frozenset(members)
            unmade = {to_make[m]: None for m in members if m in to_make and m not in made}
            missing = (*missing, *map(Missing, unmade))
            told = Told(partial(_verdict, members, missing, zones, near))
            found.append(GlueUp(part, piece, members, told))
    return tuple(found)


def _again(
    part: Part,
    piece: Piece,
    zones: Sequence[ZoneState],
    joined: Mapping[int, Joined],
    near: Around,
) -> list[GlueUp]:
    """Return the glue-up that an open joint asks for: the same members once more."""
    states = [z for z in zones if z.piece.id == piece.id and z.joined]
    if not any(fault.known.waits_for for z in states for fault in z.faults):
        return []
    members = {m for entry in joined.values() if entry.into == piece.id for m in entry.members}
    told = Told(partial(_members_verdict, states, near, again=True))
    return [GlueUp(part, piece, tuple(sorted(members)), told)]


def _verdict(
    members: Sequence[int],
    missing: Sequence[Missing],
    zones: Sequence[ZoneState],
    near: Around,
) -> Verdict:
    if missing:
        found = finding(
            "members-missing",
            answer=Answer.WAITS,
            names=tuple(each.name for each in missing),
            counts=tuple(str(each.more) for each in missing),
        )
        return of(replace(found, plain=True))
    wanted = set(members)
    states = [z for z in zones if z.piece.id in wanted or z.member_piece.id in wanted]
    return _members_verdict(states, near)


def _members_verdict(states: Sequence[ZoneState], near: Around, *, again: bool = False) -> Verdict:
    """Say whether all members bear cauls; `again`: what is on the assembly waits for the joint."""
    apart = moisture_apart(states, near)
    findings = apart
    held = [(s.part.called, f) for s in states if (f := _holds_up(s, near, again=again))]
    tests = [(s.part.called, f) for s in states for f in _to_test(s)]
    if held:
        found, causes = _bound_by("members-not-ready", held)
        findings += causes
        high = _last([each.high for _, each in held])
        found = replace(found, answer=Answer.WAITS, high=high, wait=_slowest(states, near.now))
    elif apart:
        found = replace(apart[0], answer=Answer.TEST)
    elif tests:
        found, causes = _bound_by("members-to-test", tests)
        found, findings = replace(found, answer=Answer.TEST), findings + causes
    elif any(not s.stages[Stage.CLAMP].air_read for s in states if Stage.CLAMP in s.stages):
        found = finding("clamp-by-label", answer=Answer.TEST)
    else:
        found = finding("members-ready", answer=Answer.GO)
    return replace(of(replace(found, plain=True)), findings=findings)


def _bound_by(
    rule_: str, of_members: Sequence[tuple[str, Finding]]
) -> tuple[Finding, tuple[Finding, ...]]:
    """Say it of the members by what binds the one that is ready last; and what binds them all."""
    names: dict[Finding, list[str]] = {}
    for name, each in sorted(of_members, key=lambda each: _ends(each[1]), reverse=True):
        names.setdefault(each, []).append(name)
    causes = [replace(f, about=", ".join(dict.fromkeys(of))) for f, of in names.items()]
    last = max(causes, key=lambda each: (*_ends(each), _WEIGHS[each.level]))
    besides = tuple(each for each in causes if each is not last)
    return replace(finding(rule_), because_of=last, besides=besides), tuple(causes)


def _slowest(states: Sequence[ZoneState], now: datetime) -> StageTime | None:
    """Return the clock of the member that bears cauls last; None: none has to dry."""
    clamps = (s.stages[Stage.CLAMP] for s in states if Stage.CLAMP in s.stages)
    wet = [clamp for clamp in clamps if clamp.high is None or clamp.high > now]
    return reduce(later, wet) if wet else None


def _ends(of: Finding) -> tuple[bool, datetime]:
    """Sort by when it ends, no date last."""
    return of.high is None, of.high or datetime.min.replace(tzinfo=UTC)


def _last(moments: Sequence[datetime | None]) -> datetime | None:
    """Return the latest of some moments; None when one of them has no date."""
    known = [m for m in moments if m is not None]
    return max(known) if len(known) == len(moments) else None


def _holds_up(state: ZoneState, near: Around, *, again: bool = False) -> Finding | None:
    """Return why one zone of a member cannot be clamped yet; None: it can.

    By what its verdict on cauls is bound, but for what only the glue-up itself asks. A joint of its
    own only has to be out of cauls; to be made again, it holds nothing up.
    """
    step, clamped = state.progress.next, _verdict_on_cauls(state, near, again=again)
    if state.set_aside:
        return finding("member-aside", Level.CAUTION)
    if clamped.answer in UNDATED:
        return clamped.binds
    if is_coated_joint(state) and (again or not state.joined):
        return finding(DIRTY_JOINT, Level.CAUTION, COMMON_PRACTICE)
    if step is not None and not again:
        return finding("member-step", step=step.operation.value)
    if state.masked_since is not None:
        return finding("member-taped")
    young = None if again else held_by_glue(state, Operation.MASK, near.now, near.facts)
    if young is not None:
        return young
    clamp = state.stages.get(Stage.CLAMP)
    late = clamp is not None and (clamp.high is None or clamp.high > near.now)
    return clamped.binds if late or clamped.answer not in MAY_ACT else None


def _verdict_on_cauls(state: ZoneState, near: Around, *, again: bool) -> Verdict:
    if state.joined_by is None and not again:
        return state.handling[Stage.CLAMP]
    faults = [f for f in state.faults if not (again and f.known.waits_for)]
    return decide(replace(state, faults=tuple(faults), joined_by=None), _CLAMPED, near)


def _to_test(state: ZoneState) -> Iterator[Finding]:
    """Yield what asks for a test before cauls, other than the clock."""
    for found in state.handling[Stage.CLAMP].findings:
        if found.answer is Answer.TEST:
            yield found
    old = state.member.old_finish
    if old is not None and state.face.kind is FaceKind.JOINT and not state.joined:
        bared = any(isinstance(e, Stripped) or _is_abraded(e) for e in state.entries)
        if not bared:
            yield finding("old-on-joint", Level.CAUTION, COMMON_PRACTICE, old=old)


def _is_abraded(entry: AnyEntry) -> bool:
    return isinstance(entry, Work) and entry.operation in ABRADES


def moisture_apart(states: Sequence[ZoneState], near: Around) -> tuple[Finding, ...]:
    """Say that the parts of a joint were measured at very different moisture."""
    read = [(r, s) for s in states if (r := measured_moisture(s.entries)) is not None]
    if len({s.member.id for _, s in read}) < 2:
        return ()
    wet, wetter = max(read, key=_pct)
    dry, drier = min(read, key=_pct)
    most, points = near.facts.moisture.apart_pct, (wet.moisture_pct or 0) - (dry.moisture_pct or 0)
    if points <= most.value:
        return ()
    found = finding(
        "moisture-apart",
        Level.CAUTION,
        most.source,
        measured=pct(points),
        wanted=pct(most.value),
        wet=wet.moisture_pct,
        dry=dry.moisture_pct,
        wetter=wetter.member.called,
        drier=drier.member.called,
    )
    return (replace(found, acts=(wet.act, dry.act)),)


def _pct(read: tuple[PieceReading, ZoneState]) -> float:
    return read[0].moisture_pct or 0.0


def is_coated_joint(state: ZoneState) -> bool:
    """Tell whether there is finish on a glue face, however old: only taking it off ends that."""
    return state.face.kind is FaceKind.JOINT and bool(state.layers)
