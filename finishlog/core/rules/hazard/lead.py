"""Old paint that nobody tested: its dust, and its smoke, may hold lead."""

from __future__ import annotations

import re
from collections.abc import Iterator

from msgspec.structs import replace

from finishlog.core.film.attempts import ABRADING as DRY_STRIPPING
from finishlog.core.film.layers import ABRADES
from finishlog.core.film.old_finish import lead_test
from finishlog.core.findings import Act, Answer, Finding, Level, finding
from finishlog.core.log.words import Found
from finishlog.core.rules.reads import BARE, COMES
from finishlog.core.rules.rule import ABRADING, rule
from finishlog.core.safety.heated import is_hot
from finishlog.core.shop.things import OldFinish
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

_SOURCE = "40-cfr-745"
# What paint may be; a varnish or a wax holds less, and is tested all the same.
_PAINT = frozenset({OldFinish.PAINT, OldFinish.UNKNOWN})
_WET = re.compile(r"\b(wet|water|mist|misted|damp)\b", re.IGNORECASE)


@rule(
    "lead",
    binds=ABRADING | {Act.TAKE_OFF},
    source=_SOURCE,
    reads=f"{BARE} {COMES} check.test check.found",
)
def lead(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """An old finish of unknown age is tested before it is sanded, scraped or heated dry."""
    old = zone.old_finish
    if old is None or not _raises_it(zone, asked):
        return
    tested = lead_test(zone.entries)
    if tested is Found.NO_LEAD:
        return
    wet = asked.comes is not None and _WET.search(asked.comes.note) and not _is_hot(asked)
    level = Level.STOP if old in _PAINT or tested is Found.LEAD else Level.CAUTION
    if tested is Found.LEAD:
        found = finding("lead-found", level, _SOURCE, answer=Answer.BLOCKED, old=old)
    else:
        found = finding("lead", level, _SOURCE, answer=Answer.TEST, old=old)
    # Wet and by hand is how it is done where nobody tested.
    yield replace(found, level=Level.NOTE, answer=None) if wet else found


def _raises_it(zone: ZoneState, asked: Asked) -> bool:
    """Tell whether what is asked makes dust or smoke of what lies at the bottom."""
    if asked.act is Act.TAKE_OFF:
        return asked.stripping in DRY_STRIPPING or _is_hot(asked)
    return not zone.layers and asked.operation in ABRADES


def _is_hot(asked: Asked) -> bool:
    return asked.stripping is not None and is_hot(asked.comes)
