"""The rules behind every verdict: what each reads and binds; and which facts are heard where."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import groupby

from msgspec import Struct

from finishlog.core.commands import Do
from finishlog.core.findings import Act
from finishlog.core.published.facts import Facts
from finishlog.core.rules.all import RULES
from finishlog.core.rules.on_record import facts_on_record
from finishlog.core.rules.rule import Rule
from finishlog.core.rules.table import Cell, table
from finishlog.errors import NotFound


class RuleLine(Struct, frozen=True):
    """One rule: what it says, the facts that it reads, the acts that it may bind, its source."""

    id: str
    says: str
    reads: tuple[str, ...]
    binds: tuple[Act, ...]
    source: str


class Heard(Struct, frozen=True):
    """How some acts hear a fact: by these rules; or by none, and why. `gap`: they should."""

    acts: tuple[Act, ...]
    rules: tuple[str, ...]
    why: str
    gap: bool


class FactRow(Struct, frozen=True):
    """One fact, and how the acts hear it."""

    fact: str
    heard: tuple[Heard, ...]


class RulesAnswer(Struct, frozen=True):
    """The rules that were asked for, or the facts."""

    rules: tuple[RuleLine, ...] = ()
    facts: tuple[FactRow, ...] = ()


def all_rules() -> RulesAnswer:
    """List every rule, in the order in which they are told."""
    return RulesAnswer(tuple(map(_line, RULES)))


def one_rule(typed: str) -> RulesAnswer:
    """Show one rule, by its id or a part of it; NotFound names those that it may be."""
    word = typed.casefold()
    found = [r for r in RULES if r.id == word] or [r for r in RULES if word in r.id]
    if len(found) == 1:
        return RulesAnswer((_line(found[0]),))
    if found:
        choose = ", ".join(rule.id for rule in found)
        raise NotFound(f"{typed!r} fits several rules", f"choose: {choose}")
    raise NotFound(f"no rule is called {typed!r}", f"{Do.RULES()} shows them all")


def heard_facts(facts: Facts) -> RulesAnswer:
    """Show for every fact which rules hear it where an act is asked."""
    rows = table(facts.unread).items()
    return RulesAnswer(facts=tuple(FactRow(fact, _heard(cells)) for fact, cells in rows))


def unheard_facts(facts: Facts) -> RulesAnswer:
    """Show the facts that no rule reads, and why; of others where a rule is missing."""
    left = ((row.fact, _unheard(row.heard)) for row in heard_facts(facts).facts)
    return RulesAnswer(facts=tuple(FactRow(fact, heard) for fact, heard in left if heard))


def _unheard(heard: tuple[Heard, ...]) -> tuple[Heard, ...]:
    read = any(each.rules for each in heard)
    return tuple(each for each in heard if each.gap or not read)


def _line(rule: Rule) -> RuleLine:
    says = " ".join((rule.find.__doc__ or "").split("\n\n")[0].split())
    reads = tuple(fact for fact in facts_on_record() if fact in rule.reads)
    return RuleLine(rule.id, says, reads, tuple(a for a in Act if a in rule.binds), rule.source)


def _heard(cells: Mapping[Act, Cell]) -> tuple[Heard, ...]:
    """Put together the acts that hear a fact alike, in their order."""
    first = {cell: n for n, cell in reversed(list(enumerate(cells.values())))}
    alike = groupby(sorted(cells, key=lambda act: first[cells[act]]), key=lambda act: cells[act])
    return tuple(Heard(tuple(acts), c.rules, c.why, c.gap) for c, acts in alike)
