"""Which step is due on what was picked, and on which of its zones."""

from __future__ import annotations

from collections.abc import Sequence

from finishlog.core.bench.state import BenchState
from finishlog.core.commands import Do
from finishlog.core.log.entries import Target
from finishlog.core.log.words import Operation
from finishlog.core.shop.things import Part, Shop, Step
from finishlog.core.zone.grouping import describe, typed_as
from finishlog.core.zone.state import ZoneState
from finishlog.errors import UsageFault
from finishlog.picking import Zones

_NO_STEPS = "it has no steps"


def due_step(shop: Shop, bench: BenchState, picked: Zones) -> tuple[Step, frozenset[Target]]:
    """Return the one step that is due on what was picked, and the zones it is due on.

    UsageFault where it is due on some of the pieces alone: the others were named too. An assembly
    named beside parts with steps to come, as `cabinet/*` does, is not glued up by it.
    """
    unmade = [g for g in bench.glue_ups if g.piece.id in picked.pieces]
    named = picked.pieces - {g.piece.id for g in unmade}
    mine = [z for z in bench.zones if z.target in picked.targets]
    if unmade:
        mine = [z for z in mine if z.piece.id in named]
        go_as_members = all(named.issuperset(g.members) for g in unmade)
        if not go_as_members or not any(z.progress.next for z in mine):
            return Step(0, Operation.GLUE_UP), picked.targets
    due: dict[tuple[Operation, int | None], tuple[Step, list[ZoneState]]] = {}
    for zone in mine:
        step = zone.progress.next
        if step is not None:
            due.setdefault((step.operation, step.product), (step, []))[1].append(zone)
    here = {_as_named(z, picked) for _, zones in due.values() for z in zones}
    idle = [z for z in mine if _as_named(z, picked) not in here]
    if len(due) > 1:
        words = "; ".join(
            f"{step_words(step, shop)} on {together(zs)}" for step, zs in due.values()
        )
        raise UsageFault(
            f"different steps are due ({words})",
            f"say which: add it, or {Do.LOG.option(face='FACE')}",
        )
    if idle:
        what = "all its steps are behind" if any(z.progress.steps for z in idle) else _NO_STEPS
        only = "".join(
            f", or only where {step_words(step, shop)} is due: {Do.LOG(*selectors(zones))}"
            for step, zones in due.values()
        )
        hint = f"say what: {Do.LOG(*selectors(mine), 'PRODUCT')}{only}"
        raise UsageFault(f"{together(idle)}: {what}", hint)
    ((step, zones),) = due.values()
    return step, frozenset(z.target for z in zones)


def together(zones: Sequence[ZoneState]) -> str:
    """Name the pieces of some zones: `legs ×4 and rails:1-2`."""
    parts = {z.part.id: z.part for z in zones}
    return " and ".join(describe(part, _numbers(part, zones), ()) for part in parts.values())


def selectors(zones: Sequence[ZoneState]) -> tuple[str, ...]:
    """Write the pieces of some zones as they are typed."""
    parts = {z.part.id: z.part for z in zones}
    return tuple(typed_as(part, _numbers(part, zones)) for part in parts.values())


def _numbers(part: Part, zones: Sequence[ZoneState]) -> list[int]:
    return sorted({z.piece.number for z in zones if z.part.id == part.id})


def step_words(step: Step, shop: Shop) -> str:
    """Name a step as `log` takes it: its product, or the work."""
    return shop.products[step.product].name if step.product is not None else step.operation.value


def where_due(
    bench: BenchState, picked: Zones, operation: Operation, product: int | None
) -> frozenset[Target]:
    """Narrow each picked piece to the zones that this is due on, where it is due on any.

    `log doors scuff` with only the backs sealed scuffs the backs; the echo names them. A piece on
    which it is not due stays whole: whatever was named is recorded.
    """
    mine = [z for z in bench.zones if z.target in picked.targets]
    due = [
        zone
        for zone in mine
        if (step := zone.progress.next) and (step.operation, step.product) == (operation, product)
    ]
    narrowed = {_as_named(zone, picked) for zone in due}
    whole = (z for z in mine if _as_named(z, picked) not in narrowed)
    return frozenset(z.target for z in (*due, *whole))


def _as_named(zone: ZoneState, picked: Zones) -> int:
    """Return the piece by which a zone was named: one glued into another may be named itself."""
    member = zone.member_piece.id
    return member if member in picked.pieces else zone.piece.id
