"""Log what is done with a respirator: opened, worn, gone."""

from __future__ import annotations

from datetime import timedelta

from msgspec import Struct

from finishlog.asks.look.look import look
from finishlog.asks.things.respirators import RespiratorLine, lines_of
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.log.entries import Respirator
from finishlog.core.log.when import When
from finishlog.core.log.words import Filter, MaskKept, RespiratorDeed
from finishlog.errors import UsageFault


class RespiratorLogged(Struct, frozen=True):
    """A respirator as it stands after what was logged; `line` None: it is gone."""

    act: int
    name: str
    deed: RespiratorDeed
    at: When
    line: RespiratorLine | None


def log_respirator(
    context: Context,
    *,
    name: str,
    deed: RespiratorDeed,
    holds: Filter | None,
    worn: timedelta | None,
    at: When,
    note: str,
    kept: MaskKept | None = None,
) -> RespiratorLogged:
    """Record it; UsageFault where hours worn are missing, or said of something else."""
    name = name.strip()
    if (deed is RespiratorDeed.WORN) != (worn is not None):
        raise UsageFault(
            f"how long was {name} worn?" if worn is None else f"{deed.value} takes no hours",
            Do.RESPIRATOR(name, RespiratorDeed.WORN, "2h"),
        )
    with context.writing("respirator") as ledger:
        ledger.record(
            Respirator(
                when=at,
                name=name,
                deed=deed,
                holds=holds,
                worn_min=worn / timedelta(minutes=1) if worn else None,
                kept=kept,
                note=note,
            )
        )
        there = lines_of(look(context, ledger.connection).bench.masks, context)
        mine = [line for line in there if line.called(name)]
        return RespiratorLogged(ledger.act_id, name, deed, at, mine[-1] if mine else None)
