"""The table of facts and acts: which rules hear a fact where an act is asked, or why none does."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from msgspec import Struct

from finishlog.core.findings import Act
from finishlog.core.published.unread import Unread
from finishlog.core.rules.all import BINDING
from finishlog.core.rules.on_record import facts_on_record


class Cell(Struct, frozen=True):
    """The rules that read a fact and bind an act; or why none does, and whether one should."""

    rules: tuple[str, ...] = ()
    why: str = ""
    gap: bool = False


Table = Mapping[str, Mapping[Act, Cell]]


def table(unread: Iterable[Unread]) -> Table:
    """Return a row for every fact, in it a cell for every act."""
    words = {(fact, act): each for each in unread for fact in each.facts for act in each.acts}
    return {fact: {act: _cell(fact, act, words) for act in Act} for fact in facts_on_record()}


def _cell(fact: str, act: Act, words: Mapping[tuple[str, Act], Unread]) -> Cell:
    rules = tuple(rule.id for rule in BINDING[act] if fact in rule.reads)
    said = words.get((fact, act))
    return Cell(rules, said.why, said.gap) if said is not None else Cell(rules)
