"""Set parts aside on purpose, and take them up again."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from finishlog.asks.look.look import look
from finishlog.asks.look.standing import Standing, standings
from finishlog.context import Context
from finishlog.core.log.entries import Resumed, SetAside, Work
from finishlog.core.log.when import When
from finishlog.core.log.words import Keeping, Operation
from finishlog.picking import pick_zones


class Paused(Struct, frozen=True):
    """A stop or a start as recorded. `next_time`: what was meant to come next, as it was typed."""

    act: int
    at: When
    going_on: bool
    labels: tuple[str, ...]
    next_time: tuple[str, ...]
    already_so: bool
    standings: tuple[Standing, ...]


def set_aside(
    context: Context,
    *,
    parts: Sequence[str],
    next_time: str,
    at: When,
    kept: Keeping | None = None,
) -> Paused:
    """Record that work on parts stops: they raise no alarm until they are taken up again.

    `kept`: how they are stored meanwhile; None: not said.
    """
    return _pause(context, parts, at, next_time=next_time, going_on=False, kept=kept)


def resume(context: Context, *, parts: Sequence[str], at: When) -> Paused:
    """Record that work on parts goes on, and say what it needs now."""
    return _pause(context, parts, at, next_time="", going_on=True)


def _pause(
    context: Context,
    parts: Sequence[str],
    at: When,
    *,
    next_time: str,
    going_on: bool,
    kept: Keeping | None = None,
) -> Paused:
    verb = "resume" if going_on else "aside"
    with context.writing(verb) as ledger:
        before = look(context, ledger.connection)
        picked = pick_zones(before.shop, before.bench, parts, None, joints_too=True)
        mine = [z for z in before.bench.zones if z.target in picked.targets]
        back = any(z.handed_over for z in mine)
        already = not back and bool(mine) and all(z.set_aside is not going_on for z in mine)
        if going_on:
            ledger.record(Resumed(when=at, targets=picked.targets))
        else:
            if kept is not None:
                stored = Work(when=at, targets=picked.targets, operation=Operation.STORE, kept=kept)
                ledger.record(stored)
            ledger.record(SetAside(when=at, targets=picked.targets, reason=next_time))
        after = before.after(ledger)
        states = [z for z in after.bench.zones if z.target in picked.targets]
        told = [
            e
            for e in before.log.entries
            if isinstance(e, SetAside | Resumed) and e.targets & picked.targets
        ]
        said = [e.reason for e in told[-1:] if isinstance(e, SetAside) and e.reason]
        return Paused(
            act=ledger.act_id,
            at=at,
            going_on=going_on,
            labels=picked.labels,
            next_time=tuple(said) if going_on else ((next_time,) if next_time else ()),
            already_so=already,
            standings=standings([s for s in states if s.layers or s.progress.next], after),
        )
