"""Log a fault of a film: what it means, what mends it and until when, its likely causes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime

from msgspec import Struct

from finishlog.acts.meant.due import together
from finishlog.asks.look.look import Look, look
from finishlog.asks.look.standing import Standing, standings
from finishlog.asks.look.weighings import Series, series_of
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.film.faults import StandingFault, barred_by
from finishlog.core.findings import Finding
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Fault, Work
from finishlog.core.log.when import When
from finishlog.core.log.where import reaches
from finishlog.core.log.words import FaultKind, Operation
from finishlog.core.published.facts import Facts
from finishlog.core.published.fault_kinds import KnownFault
from finishlog.core.rules.film.observed import dry_to
from finishlog.core.rules.near.joint import cold_while_it_set
from finishlog.core.shop.trade_words import goes_under, plain_word
from finishlog.core.trouble.again import found_again
from finishlog.core.trouble.causes import as_found, asked_first, looked_into
from finishlog.core.trouble.suspect import Suspect
from finishlog.core.verdict.glue_up import is_coated_joint
from finishlog.core.zone.grouping import groups, labels_of
from finishlog.core.zone.state import ZoneState
from finishlog.errors import NotFound, UsageFault
from finishlog.picking import Zones, pick_zones
from finishlog.store.log.ledger import Ledger

MENDED = frozenset({"mended", "mend", "fixed", "repaired", "made-good"})


class FaultLogged(Struct, frozen=True):
    """A fault as recorded. `deadline`: until when its remedy works.

    `causes` in order of weight; `apart`: in what it differs from a sound film like it; `again`:
    that it was found there before, and made good. `remedies` follow the likeliest cause.
    """

    act: int
    kind: FaultKind
    name: str
    place: str
    at: When
    labels: tuple[str, ...]
    means: str
    remedies: tuple[str, ...]
    # To what (% RH) the air is dried before them; None: it need not be.
    dry_to: float | None
    deadline: datetime | None
    too_late: bool
    blocks: tuple[Stage, ...]
    until: tuple[str, ...]
    again: tuple[Finding, ...]
    apart: tuple[Finding, ...]
    causes: tuple[Finding, ...]
    # Other joints with the same history, also those that still hold.
    same_history: tuple[str, ...]
    source: str
    after: tuple[Standing, ...]
    # What the piece weighed before it was finished, where it was weighed.
    weights: Series | None = None


class Mended(Struct, frozen=True):
    """Faults that were made good, as recorded, and those that only a check can end.

    `elsewhere`: those that stand at other places of the same zones.
    """

    act: int
    place: str
    at: When
    labels: tuple[str, ...]
    mended: tuple[str, ...]
    still: tuple[str, ...]
    elsewhere: tuple[str, ...]
    after: tuple[Standing, ...]


def is_fault(typed: str, facts: Facts) -> bool:
    """Tell whether a word is in full a kind of fault, or what people say for one."""
    word = plain_word(typed)
    return any(word in {known.kind.value, *known.said_as} for known in facts.faults)


def fault_word(typed: str, facts: Facts) -> FaultKind:
    """Read a kind of fault, also by the words people use; UsageFault names the kinds."""
    word = plain_word(typed)
    for known in facts.faults:
        if word in {known.kind.value, *known.said_as}:
            return known.kind
    if deed := goes_under(typed, FaultKind):
        raise UsageFault(f"no fault is called {typed!r}", f"it goes with {deed('PART', word)}")
    near = [k.kind.value for k in facts.faults if k.kind.value.startswith(word)]
    if word and len(near) == 1:
        return FaultKind(near[0])
    kinds = ", ".join(kind.value for kind in FaultKind)
    raise UsageFault(f"no fault is called {typed!r}", f"type one of: {kinds}")


def log_fault(
    context: Context,
    *,
    parts: Sequence[str],
    kind: FaultKind,
    place: str,
    remedy: str,
    face: str | None,
    at: When,
) -> FaultLogged:
    """Record it on every zone that was named, and say what to do about it."""
    with context.writing("fault") as ledger:
        now = look(context, ledger.connection)
        then = now.as_of(at.latest)
        picked = pick_zones(then.shop, then.bench, parts, face)
        entry = ledger.record(
            Fault(when=at, targets=picked.targets, what=kind, place=place, remedy=remedy)
        )
        after = now.after(ledger)
        return _logged(ledger, entry, kind, place, at, picked, after)


def _logged(
    ledger: Ledger, entry: int, kind: FaultKind, place: str, at: When, picked: Zones, after: Look
) -> FaultLogged:
    mine = [z for z in after.bench.zones if z.target in picked.targets]
    known = after.facts.fault_known(kind)
    found = [(z, f) for z in mine for f in z.faults if f.fault.id == entry]
    state, fault = min(found, key=lambda each: _first(each[1]), default=(None, None))
    deadline = fault.deadline if fault else None
    asked = (fault, state, after.log, after.bench.zones, after.facts) if fault and state else None
    likely, differs = looked_into(*asked) if asked else ((), ())
    return FaultLogged(
        act=ledger.act_id,
        kind=kind,
        name=known.name,
        place=place,
        at=at,
        labels=picked.labels,
        means=known.means,
        remedies=_remedies(known, fault, likely, after.clock.now),
        dry_to=dry_to(fault, state, after.clock.now, after.facts) if fault and state else None,
        deadline=deadline,
        too_late=deadline is not None and after.clock.now >= deadline,
        blocks=_blocks(known, fault),
        until=_until(known, fault),
        again=found_again(fault, state) if fault and state else (),
        apart=differs,
        causes=(*asked_first(likely), *as_found(likely)),
        same_history=tuple(same_history(mine, after)) if known.waits_for else (),
        source=known.source,
        after=standings([z for z in mine if not z.is_bare_joint] or mine, after),
        weights=series_of(mine[0].entries, after.facts) if mine else None,
    )


def _remedies(
    known: KnownFault, fault: StandingFault | None, likely: Sequence[Suspect], now: datetime
) -> tuple[str, ...]:
    """Say what mends it: where the log shows what it came from, that first."""
    if fault is None:
        return known.remedies
    first = likely[0].cause if likely and likely[0].is_shown else None
    by_class = fault.shut_in is not None or fault.special is not None
    return first.mend if first and first.mend and not by_class else fault.remedies(now)


def same_history(mine: Sequence[ZoneState], after: Look) -> Iterator[str]:
    """Name other pieces whose glue faces carry what lies on these, or met the same cold."""
    pieces = {zone.piece.id for zone in mine}
    joints = [z for z in after.bench.zones if is_coated_joint(z)]
    on = {c for z in joints if z.piece.id in pieces for c in _coats_of(z)}
    alike = [z for z in joints if z.piece.id not in pieces and on & _coats_of(z)]
    cold = any(cold_while_it_set(z, after.facts) for z in mine)
    for group in groups(alike):
        finish = ", ".join(dict.fromkeys(layer.coat.product_name for layer in group.first.layers))
        into = group.first.part.called
        of = f" in {into}" if group.first.joined else ", not glued up yet"
        yield f"{group.label}{of}: {finish} on the glue face"
    others = (z for z in after.bench.zones if cold and z.joined and z.piece.id not in pieces)
    met = [z for z in others if z not in alike and cold_while_it_set(z, after.facts)]
    yield from dict.fromkeys(f"{label}: glued in the cold too" for label in labels_of(met))


def _coats_of(zone: ZoneState) -> set[int | None]:
    return {layer.coat.product for layer in zone.layers}


def _first(fault: StandingFault) -> datetime:
    """Sort by the coat that went on first: its deadline ends first."""
    return fault.coat.when.earliest if fault.coat else fault.fault.when.earliest


def _blocks(known: KnownFault, fault: StandingFault | None) -> tuple[Stage, ...]:
    """Return what it keeps the film from; no coat, where any coat answers it."""
    any_coat = known.answered_by_coat and not (fault is not None and fault.wants_colour)
    barred = barred_by(known, fault.coat if fault else None)
    return tuple(s for s in Stage if s in barred and not (any_coat and s is Stage.RECOAT))


def _until(known: KnownFault, fault: StandingFault | None) -> tuple[str, ...]:
    """Name what ends a fault: work, checks, a coat."""
    logged = sorted(operation.value for operation in known.answered_by)
    work = [f"{' or '.join(logged)} is logged"] if logged else []
    checks = sorted(found.value for found in known.answered_by_checks)
    check = [f"a check finds {' or '.join(checks)}"] if checks else []
    colour = fault is not None and fault.wants_colour
    goes_on = "colour is put back" if colour else "the next coat goes on"
    coat = [goes_on] if known.answered_by_coat else []
    return (*work, *check, *coat, *([] if known.not_by_mending else ["it is mended"]))


def log_mended(
    context: Context,
    *,
    parts: Sequence[str],
    place: str,
    note: str,
    face: str | None,
    at: When,
) -> Mended:
    """Record that the faults of some zones were made good; NotFound when none stands.

    `place`: those at that place alone; empty: all of them.
    """
    with context.writing("fault") as ledger:
        now = look(context, ledger.connection)
        then = now.as_of(at.latest)
        picked = pick_zones(then.shop, then.bench, parts, face)
        named = [z for z in then.bench.zones if z.target in picked.targets]
        there = [z for z in named if any(reaches(place, f.fault.place) for f in z.faults)]
        faulty = {z.piece.id for z in there}
        sound = [z for z in named if z.piece.id not in faulty]
        if sound:
            raise _none_stands(sound, place)
        targets = frozenset(z.target for z in there)
        ledger.record(
            Work(when=at, targets=targets, operation=Operation.MEND, place=place, note=note)
        )
        after = now.after(ledger)
        mine = [z for z in after.bench.zones if z.target in targets]
        before = [f for z in then.bench.zones if z.target in targets for f in z.faults]
        left = [f for z in mine for f in z.faults]
        still = {f.fault.id for f in left}
        return Mended(
            act=ledger.act_id,
            place=place,
            at=at,
            labels=picked.labels,
            mended=_names([f for f in before if f.fault.id not in still]),
            still=_names([f for f in left if reaches(place, f.fault.place)]),
            elsewhere=_names([f for f in left if not reaches(place, f.fault.place)]),
            after=standings(mine, after),
        )


def _none_stands(sound: Sequence[ZoneState], place: str) -> NotFound:
    """Say that no fault stands there, or none at the place that was named."""
    others = ", ".join(_names([f for z in sound for f in z.faults]))
    if not others:
        hint = f"{Do.HISTORY('PART')} shows what was logged"
        return NotFound(f"{together(sound)}: no fault stands there", hint)
    where = Do.FAULT.option(where=True)
    return NotFound(
        f"{together(sound)}: no fault stands at {place!r}, but {others}",
        f"name the place as it was logged, or leave {where} out for all of them",
    )


def _names(faults: Sequence[StandingFault]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(f.name for f in faults))
