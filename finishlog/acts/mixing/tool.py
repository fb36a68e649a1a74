"""Log that a brush, a gun or an air line was cleaned."""

from __future__ import annotations

from msgspec import Struct

from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.log.entries import Cleaned
from finishlog.core.log.when import When
from finishlog.errors import UsageFault


class ToolCleaned(Struct, frozen=True):
    """A tool as it was cleaned."""

    act: int
    tool: str
    at: When
    note: str


def log_cleaned(context: Context, *, tool: str, at: When, note: str) -> ToolCleaned:
    """Record that a tool, as the person calls it, was cleaned through."""
    name = tool.strip()
    if not name:
        raise UsageFault("it does not say which tool", Do.CLEAN("gun1"))
    with context.writing("clean") as ledger:
        ledger.record(Cleaned(when=at, tool=name, note=note))
        return ToolCleaned(ledger.act_id, name, at, note)
