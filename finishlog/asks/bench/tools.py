"""What is in which brush, gun or air line?"""

from __future__ import annotations

from datetime import datetime

from msgspec import Struct
from msgspec.structs import replace

from finishlog.asks.look.look import Look, look
from finishlog.context import Context
from finishlog.core.findings import Finding, Level, finding
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.log.entries import AnyEntry, Cleaned, Coat
from finishlog.core.log.where import same_words
from finishlog.core.mixing.chemistry import contents
from finishlog.core.mixing.tools import LeftIn, left_in, tools_in
from finishlog.core.published.chemistry import Substances
from finishlog.core.safety.whats_in import in_coat
from finishlog.core.shop.things import Product
from finishlog.store.log.ledger import Ledger
from finishlog.store.log.read_tools import read_log_of_tools


class ToolLine(Struct, frozen=True):
    """A tool as the person calls it: what it put on last, and whether it was cleaned since."""

    name: str
    had: str
    at: datetime | None
    act: int | None
    cleaned_at: datetime | None


def tools(context: Context) -> tuple[ToolLine, ...]:
    """List the tools that were named, the last used first."""
    with context.reading() as connection:
        seen = look(context, connection)
        found: dict[str, ToolLine] = {}
        for entry in _told(seen, read_log_of_tools(connection).entries):
            for name in tools_in(entry.tool):
                was = found.pop(same_words(name), ToolLine(name, "", None, None, None))
                if isinstance(entry, Cleaned):
                    now = replace(was, cleaned_at=entry.when.latest)
                else:
                    now = ToolLine(name, entry.product_name, entry.when.latest, entry.act, None)
                found[same_words(name)] = now
    return tuple(reversed(found.values()))


def _told(seen: Look, entries: tuple[AnyEntry, ...]) -> list[Coat | Cleaned]:
    """Return what tells of tools; what was cleaned is of the shop, and may be older."""
    told = {e.id: e for e in (*entries, *seen.log.entries)}
    of_tools = (e for e in told.values() if isinstance(e, Coat | Cleaned) and e.tool)
    return sorted(of_tools, key=lambda e: e.when.order)


def left_over(ledger: Ledger, then: Look, tool: str, product: Product) -> tuple[Finding, ...]:
    """Say what the tools of the coat that is logged had in them last that harms it."""
    if not tool:
        return ()
    told = read_log_of_tools(ledger.connection).as_of(then.bench.now).entries
    entries = [e for e in told if e.act != ledger.act_id]
    now = then.facts.finish_class(product.class_key)

    def holds(coat: Coat) -> Substances:
        return contents(in_coat(coat, then.shop), then.facts.chemistry)

    left = (left_in(each, now, entries, holds, then.facts) for each in tools_in(tool))
    return tuple(_said(each, product) for each in left if each is not None)


def _said(left: LeftIn, product: Product) -> Finding:
    row = left.row
    found = finding(
        "left-in-tool" if row else "crawled-from-tool",
        Level.CAUTION,
        row.source if row else COMMON_PRACTICE,
        tool=left.tool,
        had=left.coat.product_name,
        of=product.name,
        reason=row.reason if row else "",
        clean=row.clean if row else "",
        used=left.coat.act,
    )
    acts = (left.coat.act, *((left.crawled.act,) if left.crawled else ()))
    return replace(found, acts=acts)
