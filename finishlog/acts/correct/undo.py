"""Withdraw an act. It stays on record, marked; undoing the undo brings it back."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from datetime import datetime

from msgspec import Struct

from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.log.entries import Coat
from finishlog.core.log.kinds import kind_of
from finishlog.errors import NotFound, UsageFault
from finishlog.store.log.read_history import HistoryRow, read_history
from finishlog.store.things.labels import label_acts

# What an act that only changes the list of things cannot be: those are not entries of the log.
_NOTHING_HAPPENED = "it changed no entry of the log"


class Undoable(Struct, frozen=True):
    """The act that undo would withdraw."""

    act: int
    verb: str
    words: str
    typed_at: datetime
    is_coat: bool
    is_undo: bool


class Undone(Struct, frozen=True):
    """The withdrawal as recorded. `again`: an undo was undone, so the act is in force again."""

    act: int
    withdrawn: Undoable
    again: bool


def what_undo_would_do(context: Context, act: int | None) -> Undoable:
    """Find the act: the one named, or the last that is in force."""
    with context.reading() as connection:
        return _find(read_history(connection), act, label_acts(connection))


def undo(context: Context, act: int) -> Undone:
    """Withdraw an act."""
    with context.writing("undo") as ledger:
        rows = read_history(ledger.connection)
        found = _find(rows, act, label_acts(ledger.connection))
        ledger.withdraw(found.act)
        return Undone(ledger.act_id, found, again=found.is_undo)


def _find(rows: Sequence[HistoryRow], act: int | None, labels: Collection[int]) -> Undoable:
    """Find the act to withdraw; `labels`: those that changed what a label says."""
    if act is None:
        candidates = [r for r in rows if r.withdrawn_by is None and r.withdraws is None]
        if not any(r.entry or r.act in labels for r in candidates):
            raise NotFound("there is nothing to undo", f"{Do.HISTORY()} shows what is on record")
        last = candidates[-1]
        if not last.entry and last.act not in labels:
            before = [r.act for r in candidates if r.entry or r.act in labels][-1]
            raise UsageFault(
                f"the last act ({last.words}) is no entry of the log and stays",
                f"the last entry is act {before}: {Do.UNDO(before)}",
            )
        act = last.act
    mine = [r for r in rows if r.act == act]
    if not mine:
        raise NotFound(f"there is no act {act}", f"{Do.HISTORY()} shows the numbers")
    entries = [r for r in mine if r.entry or r.act in labels]
    if not entries:
        raise UsageFault(
            f"act {act} cannot be undone: {_NOTHING_HAPPENED}", "type what it should be"
        )
    done = next((r.withdrawn_by for r in entries if r.withdrawn_by), None)
    if done:
        raise UsageFault(f"act {act} was already undone by act {done}", Do.UNDO(done))
    first = mine[0]
    return Undoable(
        act,
        first.verb,
        first.words,
        first.typed_at,
        # Coats that a corrected label judges anew were on before it.
        is_coat=act not in labels and any(r.kind == kind_of(Coat) for r in entries),
        is_undo=any(r.withdraws for r in entries),
    )
