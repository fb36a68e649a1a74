"""Hand pieces over: they leave the day's screens, and a care card goes along."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from msgspec import Struct

from finishlog.asks.look.look import Look, look
from finishlog.asks.look.look_back import with_whole_projects
from finishlog.asks.past.care_card import CareCard, card_of
from finishlog.asks.past.open_ends import open_ends
from finishlog.context import Context
from finishlog.core.findings import Finding, Level, finding
from finishlog.core.log.entries import HandedOver, Target
from finishlog.core.log.when import When
from finishlog.core.shop.things import Part
from finishlog.core.zone.state import ZoneState
from finishlog.errors import UsageFault
from finishlog.picking import pick_zones


class Handover(Struct, frozen=True):
    """A hand-over as recorded, what was open all the same, and the card.

    `whole_projects` are those of which nothing is left in the shop; `boards` the sample boards
    that stay, off the day's screens.
    """

    act: int
    at: When
    labels: tuple[str, ...]
    note: str
    warnings: tuple[Finding, ...]
    card: CareCard
    whole_projects: tuple[str, ...]
    boards: tuple[str, ...] = ()


def hand_over(context: Context, *, parts: Sequence[str], note: str, at: When) -> Handover:
    """Record that pieces left the shop; what is open is said, nothing is refused."""
    with context.writing("handover") as ledger:
        now = look(context, ledger.connection)
        then = now.as_of(at.latest)
        typed = with_whole_projects(then.shop, parts)
        picked = pick_zones(then.shop, then.bench, typed, None, joints_too=True)
        if picked.face_named:
            raise UsageFault("a face is not handed over by itself", "name the part or its pieces")
        if not picked.targets:
            raise UsageFault("nothing of it is made yet", "hand over the parts that it is made of")
        warnings = (
            *_already(then.bench.zones, picked.targets),
            *open_ends(then, picked.targets),
        )
        ledger.record(HandedOver(when=at, targets=picked.targets, note=note))
        after = now.after(ledger)
        return Handover(
            act=ledger.act_id,
            at=at,
            labels=picked.labels,
            note=note,
            warnings=warnings,
            card=card_of(after, picked.targets),
            whole_projects=_nothing_left(after, picked.parts),
            boards=_boards_left(after, picked.parts),
        )


def _already(states: Iterable[ZoneState], targets: frozenset[Target]) -> Iterable[Finding]:
    mine = [s for s in states if s.target in targets]
    if mine and all(s.handed_over for s in mine):
        yield finding("left-already", Level.CAUTION)


def _nothing_left(after: Look, parts: Iterable[Part]) -> tuple[str, ...]:
    """Name the projects of these parts whose every piece was handed over."""
    ids = {part.id for part in parts}
    mine = (z for z in after.bench.zones if {z.part.id, z.member.id} & ids)
    touched = {z.part.project_name for z in mine}
    here = {z.member.project_name for z in after.bench.zones if z.handed_over is None}
    return tuple(sorted(touched - here))


def _boards_left(after: Look, parts: Iterable[Part]) -> tuple[str, ...]:
    """Name the sample boards of these projects that are kept."""
    projects = {part.project for part in parts}
    kept = (z.member for z in after.bench.zones if z.kept and z.member.project in projects)
    return tuple(dict.fromkeys(board.path for board in kept))
