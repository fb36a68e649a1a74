"""What the safety rules and figures rest on: each with its source, and how that was seen."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from finishlog.core.finish.classes import COMMON_PRACTICE, FROM_MEMORY
from finishlog.core.published.facts import Facts
from finishlog.core.published.sources import Seen
from finishlog.core.rules.air import flame
from finishlog.core.rules.all import RULES
from finishlog.core.rules.film import put_to_use
from finishlog.core.rules.hazard import breath, cartridge, chromate, lead, shut_room
from finishlog.core.rules.wood import bleached

# The rules that are about who does the work, or lives with it.
_OF_SAFETY = frozenset(
    {
        flame.heater,
        lead.lead,
        breath.sprayed,
        breath.heated,
        breath.dust,
        chromate.dust,
        shut_room.chlorinated,
        cartridge.cartridge,
        bleached.dust,
        bleached.met,
        put_to_use.hard_before_use,
    }
)


class Rests(Struct, frozen=True):
    """One thing that is said, and its source. `from_memory`: nobody saw that as it was copied."""

    kind: str
    what: str
    source: str
    title: str
    basis: str
    from_memory: bool


def safety_sources(facts: Facts) -> tuple[Rests, ...]:
    """List rules, what must never meet, notes and figures, in this order."""
    return tuple(_rests(kind, what, source, facts) for kind, what, source in _all(facts))


def _all(facts: Facts) -> Iterator[tuple[str, str, str]]:
    yield from (("rule", rule.id, rule.source) for rule in RULES if rule in _OF_SAFETY)
    for each in facts.chemistry.conflicts:
        yield "never meet", " and ".join(sorted(each.of)), each.source
    yield from (("ready first", row.hazard.value, row.source) for row in facts.before)
    yield from (("note", note.id, note.source) for note in facts.notes)
    for limit in facts.storage:
        categories = ", ".join(sorted(limit.categories))
        yield "kept", f"{limit.where.value}: category {categories}", limit.source
    for kind, filters in facts.respirators.kinds.items():
        yield "respirator", kind.value, filters.source
    rags = facts.rags
    for name, figure in (
        ("overdue after", rags.overdue_after_h),
        ("stiff after", rags.stiff_after_h),
        ("a film's dust counts", rags.film_counts_until_d),
    ):
        yield "rags", name, figure.source


def _rests(kind: str, what: str, source: str, facts: Facts) -> Rests:
    known = facts.sources.get(source)
    seen = known.seen.value if known else source
    memory = source == FROM_MEMORY or (known is not None and known.seen is Seen.MEMORY)
    title = known.title if known else ""
    if not known and source not in {COMMON_PRACTICE, FROM_MEMORY}:
        seen = "each row by its own source"
    return Rests(kind, what, source, title, seen, memory)
