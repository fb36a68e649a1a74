"""Log a glue-up: which pieces became one piece of an assembly."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NoReturn

from msgspec.structs import replace

from finishlog.acts.answers.logged import Logged, ToLog, logged
from finishlog.asks.look.look import Look
from finishlog.asks.things.glues import glue_key as meant_by
from finishlog.core.commands import Do
from finishlog.core.findings import DIRTY_JOINT, GLUE_FACE_OLD, Answer, Finding, Level, finding
from finishlog.core.log.entries import Joined, Target
from finishlog.core.log.words import Operation
from finishlog.core.published.facts import Facts
from finishlog.core.published.glues import temperature_findings
from finishlog.core.verdict.glue_up import GlueUp
from finishlog.core.zone.grouping import describe, typed_as
from finishlog.core.zone.verdict import Verdict
from finishlog.errors import UsageFault
from finishlog.picking import Zones
from finishlog.store.log.ledger import Ledger


def glue_up(ledger: Ledger, now: Look, then: Look, picked: Zones, typed: ToLog) -> Logged:
    """Record it for every picked piece of an assembly that is not glued up yet."""
    due = [g for g in then.bench.glue_ups if g.piece.id in picked.pieces]
    if picked.face_named:
        raise UsageFault("a face is not glued up by itself", "name the assembly or its pieces")
    left = picked.pieces - {g.piece.id for g in due}
    if left:
        _refuse(then, picked, left, due)
    glue = glue_key(typed.glue, then.facts)
    targets: set[Target] = set()
    for each in due:
        members = frozenset(each.members)
        pieces = members | {each.piece.id}
        zones = frozenset(
            z.target for z in then.bench.zones if pieces & {z.piece.id, z.member_piece.id}
        )
        ledger.record(
            Joined(when=typed.at, targets=zones, into=each.piece.id, members=members, glue=glue)
        )
        targets |= zones
    whole = replace(picked, targets=frozenset(targets))
    found = [f for each in due for f in _warnings(each)]
    found += _too_cold(glue, then, targets)
    warnings = tuple(dict.fromkeys(found))
    after = now.after(ledger)
    return logged(ledger.act_id, now, after, whole, Operation.GLUE_UP, "", typed, warnings, ())


def _refuse(then: Look, picked: Zones, left: frozenset[int], due: Sequence[GlueUp]) -> NoReturn:
    """Say what there is nothing to glue up of, and what to type."""
    parts = [(p, [x.number for x in p.pieces if x.id in left]) for p in picked.parts]
    these = [(part, numbers) for part, numbers in parts if numbers]
    names = " and ".join(describe(part, numbers, ()) for part, numbers in these)
    mine = [z for z in then.bench.zones if z.piece.id in left]
    if any(z.handed_over for z in mine):
        back = Do.RESUME(*(typed_as(*each) for each in these))
        raise UsageFault(f"{names}: handed over", f"if it is back in the shop: {back}")
    how = Do.PART_NEW("PROJECT/NAME", of="side:2")
    hint = f"an assembly says what it is made of: {how}"
    if due:
        open_ones = {g.part.id: g.part for g in due}.values()
        numbers = {p.id: [g.piece.number for g in due if g.part.id == p.id] for p in open_ones}
        left_ones = (typed_as(p, numbers[p.id]) for p in open_ones)
        hint = f"only those that are open: {Do.LOG(*left_ones, Operation.GLUE_UP)}"
    raise UsageFault(f"{names}: nothing is left to glue up", hint)


def _too_cold(glue: str, then: Look, targets: set[Target]) -> list[Finding]:
    """Return what the air as last read does to the glue."""
    known = then.facts.glue_named(glue)
    rooms = {z.room.id: z.room for z in then.bench.zones if z.target in targets}
    readings = [room.measured_at(then.bench.now) for room in rooms.values()]
    if known is None:
        return []
    return [f for r in readings if r for f in temperature_findings(known, r.air)]


def glue_key(typed: str | None, facts: Facts) -> str:
    """Find a glue; empty when none was named: the cautious one stands in for it."""
    if typed is None:
        return ""
    glue = facts.glue_named(typed)
    return glue.key if glue else meant_by(facts, typed)


def _warnings(due: GlueUp) -> list[Finding]:
    verdict = due.verdict
    found = [each for each in verdict.findings if each is not verdict.binds.because_of]
    if verdict.answer is not Answer.GO:
        found.append(
            replace(
                finding(
                    "glued-early",
                    Level.CAUTION if verdict.answer is Answer.TEST else Level.STOP,
                    part=due.part.called,
                    worked="long ago" if _is_of_its_faces(verdict) else "",
                    dirty="dirty" if any(f.rule == DIRTY_JOINT for f in verdict.findings) else "",
                ),
                because_of=verdict.binds,
            )
        )
    return found


def _is_of_its_faces(verdict: Verdict) -> bool:
    """Tell whether it is only that glue faces were worked long ago: no film is pressed."""
    tests = {f.rule for f in verdict.findings if f.answer is Answer.TEST}
    return verdict.answer is Answer.TEST and tests == {GLUE_FACE_OLD}
