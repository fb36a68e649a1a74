"""Correct what is in a mix."""

from __future__ import annotations

from collections.abc import Sequence

from finishlog.asks.bench.open_cans import coats_from, mixed_words, part_words
from finishlog.asks.look.look import Look
from finishlog.core.commands import Do
from finishlog.core.log.entries import ContainerEvent
from finishlog.core.log.words import ContainerDeed
from finishlog.core.mixing.came_from import needs_hardener
from finishlog.core.mixing.containers import Container, MixPart
from finishlog.core.mixing.mixes import changed, parts_text
from finishlog.errors import UsageFault
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.containers import change_parts


def change_amounts(
    ledger: Ledger, seen: Look, entry: ContainerEvent, amounts: Sequence[MixPart]
) -> None:
    """Keep amended amounts beside a mixing; they touch no date of a coat."""
    container = seen.shop.containers[entry.container]
    _allowed(seen, entry, container)
    change_parts(ledger, container, amended_parts(container, amounts))


def _allowed(seen: Look, entry: ContainerEvent, container: Container) -> None:
    if entry.deed is not ContainerDeed.MIXED:
        raise UsageFault("only a mix has amounts to amend", f"{Do.HISTORY()} shows it")
    mine = [e for e in seen.log.entries if isinstance(e, ContainerEvent)]
    later = [e for e in mine if e.container == container.id and e.deed is ContainerDeed.TOPPED_UP]
    if later:
        raise UsageFault(
            f"{container.name} was topped up since",
            f"undo that first ({Do.UNDO(later[-1].act)}), amend, and top it up again",
        )


def amended_parts(container: Container, amounts: Sequence[MixPart]) -> tuple[MixPart, ...]:
    """Put amended amounts in their places; UsageFault for a part that is not in the mix."""
    try:
        return changed(container.parts, amounts)
    except KeyError as fault:
        names = ", ".join(part.name for part in container.parts)
        raise UsageFault(
            f"{container.name} has no part {fault.args[0]!r}", f"its parts: {names}"
        ) from None


def what_changed(before: Look, after: Look, entry: ContainerEvent) -> tuple[str, ...]:
    """Say what is in the mix now and was before, and which coats came from it."""
    was, is_now = (seen.shop.containers[entry.container] for seen in (before, after))
    if parts_text(was.parts) == parts_text(is_now.parts):
        return ()
    words = [
        mixed_words(each, after.facts) or ", ".join(map(part_words, each.parts))
        for each in (was, is_now)
    ]
    coats = coats_from(after, is_now.id)
    of = after.facts.finish_class(after.shop.products[is_now.product].class_key)
    keep = "" if needs_hardener(of) else " keep their dates"
    on = (f"coats from it{keep}: {', '.join(coats)}",) if coats else ()
    return (f"{is_now.name}: {words[1]}, was {words[0]}", *on)
