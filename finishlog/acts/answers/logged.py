"""An act as it was recorded, and what follows: the answer of `log`."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from finishlog.acts.answers.reconsidered import (
    MovedDate,
    Renumbered,
    moved_dates,
    now_judged,
    renumbered,
)
from finishlog.acts.answers.warn import coats_of_this_evening
from finishlog.asks.bench.rags import RagsLine, open_rags
from finishlog.asks.look.look import Look
from finishlog.asks.look.standing import Standing, standings
from finishlog.context import Context
from finishlog.core.film.from_can import undated
from finishlog.core.findings import Finding
from finishlog.core.finish.classes import Method
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Target
from finishlog.core.log.when import When
from finishlog.core.log.words import Keeping, Operation
from finishlog.core.published.safety_notes import SafetyNote
from finishlog.core.rules.near.joint import held_by_glue
from finishlog.core.safety.oily_waste import may_scuff, what_wets
from finishlog.core.verdict.edges import follows_its_faces
from finishlog.core.zone.state import ZoneState
from finishlog.picking import Zones

if TYPE_CHECKING:
    from finishlog.asks.bench.vapour_there import PeopleLine
    from finishlog.core.safety.evening_air import EveningAir
    from finishlog.core.safety.room_takes import RoomTakes


class ToLog(Struct, frozen=True):
    """What was typed: `words` are parts and then, perhaps, what was done; when and how."""

    words: tuple[str, ...]
    at: When
    face: str | None = None
    method: Method | None = None
    scuffed: bool | None = None
    grit: str = ""
    note: str = ""
    # Of stacking, packing, storing: how it is kept from then on. None: not said.
    kept: Keeping | None = None
    # What goes on a face runs over its edges too, unless it was kept off them.
    edges: bool = True
    # Thin passes of one sitting before the last one, which went on `at`.
    earlier: tuple[When, ...] = ()
    glue: str | None = None
    hands_on_min: float | None = None
    # How much of it went on in all.
    amount_ml: float | None = None
    wet_film_um: float | None = None
    flooded: bool | None = None
    # The can or mix that it came from; `none`: none on record. None: not said.
    container: str | None = None
    # Was its can stirred right before? None: not said. `tool`: what it went on with.
    stirred: bool | None = None
    tool: str = ""
    # What a coat that was broken off covers by then. None: it was finished.
    stopped: str | None = None
    # What is hardly meant is recorded with a caution; else Doubtful asks about it first.
    sure: bool = True


class Instead(Struct, frozen=True):
    """What was done on what a line left out, and how that stands now."""

    label: str
    deed: str
    warnings: tuple[Finding, ...]
    after: tuple[Standing, ...]


class Same(Struct, frozen=True):
    """What was done again: what one piece got, by its act; whether its time was told.

    `but`: what was left out, as it was typed; `instead`: what was done there, None: nothing.
    """

    like: str
    act: int
    at_told: bool
    but: tuple[str, ...] = ()
    instead: Instead | None = None


class Logged(Struct, frozen=True):
    """An act as recorded, what comes next, and what to heed."""

    act: int
    operation: Operation
    product: str
    at: When
    labels: tuple[str, ...]
    after: tuple[Standing, ...]
    warnings: tuple[Finding, ...]
    rags: tuple[RagsLine, ...]
    notes: tuple[SafetyNote, ...]
    late: bool
    entries_after_it: int
    first_pass: When | None = None
    passes: int = 1
    # The can or mix that a coat came from, in words; empty: not known.
    container: str = ""
    stopped: str | None = None
    # Edges that it ran over without being named.
    edges: tuple[str, ...] = ()
    # Of so many pieces that were named, so many are on record.
    named: int = 0
    recorded: int = 0
    # A young oil film was scuffed by hand: a few strokes of dust, and a cloth.
    hand_dust: bool = False
    # Of an entry that lands before others: the dates that it moved.
    moved: tuple[MovedDate, ...] = ()
    # And the coats after it that count as others now.
    renumbered: tuple[Renumbered, ...] = ()
    # Until when the clamps of a glue-up stay on, UTC.
    clamped_until: datetime | None = None
    # Until when what is in use bears no lasting load, UTC.
    bare_until: datetime | None = None
    # Where it was told as the same as another piece got.
    same: Same | None = None
    # What the air of its rooms takes of it.
    air: tuple[RoomTakes, ...] = ()
    # Rooms whose evening passes a limit of their air with it.
    evening: tuple[EveningAir, ...] = ()
    # Who stays out for it, and until when at the earliest.
    people: tuple[PeopleLine, ...] = ()
    # What it is once asked about its room, and warns of nothing.
    asks: tuple[Finding, ...] = ()


def logged(
    act: int,
    before: Look,
    after: Look,
    picked: Zones,
    operation: Operation,
    product: str,
    typed: ToLog,
    warnings: tuple[Finding, ...],
    notes: tuple[SafetyNote, ...],
) -> Logged:
    """Say how things stand after an act."""
    later = [
        e
        for e in before.log.entries
        if e.targets & picked.targets and e.when.earliest > typed.at.latest
    ]
    moved: tuple[MovedDate, ...] = ()
    if later:
        since = min(e.when.latest for e in later)
        fresh = now_judged(before, after, picked.targets, since, {})
        warnings, moved = (*warnings, *fresh), moved_dates(before, after)
    mine = [z for z in after.bench.zones if z.target in picked.targets]
    lines = standings(_worth_a_line(mine), after)
    if coats_of_this_evening(before):
        lines = tuple(replace(line, usual_wanted="") for line in lines)
    return Logged(
        act=act,
        operation=operation,
        product=product,
        at=typed.at,
        labels=picked.labels,
        after=lines,
        warnings=warnings,
        rags=open_rags(after, before),
        notes=notes,
        late=bool(later),
        entries_after_it=len(later),
        first_pass=typed.earlier[0] if typed.earlier else None,
        passes=len(typed.earlier) + 1,
        edges=_ran_over(mine) if picked.face_named else (),
        named=len(picked.pieces),
        recorded=picked.reached_by(_on_record(act, after)),
        hand_dust=_scuffed_a_young_oil_film(act, after),
        moved=moved,
        renumbered=renumbered(before, after, picked.targets) if later else (),
        clamped_until=_clamped_until(before.context, mine)
        if operation is Operation.GLUE_UP
        else None,
        bare_until=_bare_until(before.context, mine) if operation is Operation.USE else None,
    )


def _clamped_until(context: Context, zones: Sequence[ZoneState]) -> datetime | None:
    """Return when the clamps may come off: what is only masked asks for no more of a joint."""
    held = (held_by_glue(zone, Operation.MASK, context.clock.now, context.facts) for zone in zones)
    return max((each.high for each in held if each and each.high), default=None)


def _bare_until(context: Context, zones: Sequence[ZoneState]) -> datetime | None:
    """Return until when nothing may be left standing: what presses for days wants it fully hard."""
    hard = (zone.date_of(Stage.CURED) for zone in zones if zone.top and not undated(zone.layers))
    highs = (each.high for each in hard if each is not None)
    return max((h for h in highs if h is not None and h > context.clock.now), default=None)


def _on_record(act: int, after: Look) -> frozenset[Target]:
    """Return the zones that an act reached, as the log has it now."""
    return frozenset(t for e in after.log.entries if e.act == act for t in e.targets)


def _scuffed_a_young_oil_film(act: int, after: Look) -> bool:
    mine = {e.id for e in after.log.entries if e.act == act and may_scuff(e)}
    wet = what_wets(after.log.entries, after.facts, after.shop) if mine else ()
    return any(each.by_hand and each.entry in mine for each in wet)


def _ran_over(zones: Sequence[ZoneState]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(z.face.name for z in zones if follows_its_faces(z)))


def _worth_a_line(zones: Sequence[ZoneState]) -> Sequence[ZoneState]:
    """Leave out bare joints, and edges that went with their faces, unless there is nothing else."""
    return [z for z in zones if not z.is_bare_joint and not follows_its_faces(z)] or zones
