"""Two tellings of a story that differ in what one clause tells: what a rule makes of that.

Each shows that the rule hears the facts of that clause, for every act for which it finds something
else without it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from functools import cache

from msgspec import Struct

from finishlog.core.findings import Act
from finishlog.core.log.words import Operation
from finishlog.core.rules.rule import Rule
from finishlog.core.zone.asked import Asked, coat_asked, work_asked
from tests.shop_of import FACTS
from tests.stories.reading import facts_in
from tests.stories.telling import Scene, Teller

# What is done for an act; for the others nothing but the act is asked.
_DONE = {
    Act.WIPE: Operation.WIPE,
    Act.SAND: Operation.SAND,
    Act.SCUFF: Operation.SCUFF,
    Act.WORK: Operation.LEVEL,
    Act.GLUE_UP: Operation.GLUE_UP,
    Act.STACK: Operation.STACK,
    Act.PACK: Operation.PACK,
    Act.USE: Operation.USE,
    Act.RUB: Operation.RUB,
}
_COAT = coat_asked(FACTS.finish_class("alkyd-varnish"))


class Played(Struct, frozen=True):
    """What a line leads to, and every fact that it tells, with its value."""

    scene: Scene
    facts: Counter[tuple[str, str]]


def proved_by(rule: Rule, line: str) -> Iterator[tuple[str, Act]]:
    """Yield the facts and acts that a story proves, by leaving out one clause after the other."""
    told = played(line)
    for other in map(played, _without_one(line)):
        apart = {fact for fact, _ in (told.facts - other.facts) + (other.facts - told.facts)}
        for act in rule.binds if apart & rule.reads else ():
            if _finds(rule, told.scene, act) != _finds(rule, other.scene, act):
                yield from ((fact, act) for fact in apart & rule.reads)


def _without_one(line: str) -> Iterator[str]:
    """Yield the line without one thing that it tells: a word of its part, its steps, a clause."""
    first, *clauses, asked = (clause.strip() for clause in line.split(";"))
    part, at, steps = first.partition("@steps")
    words = part.split()
    for n, word in enumerate(words):
        if word.startswith("old-") or (n == 0 and len(words) > 1 and words[1] != "and"):
            left = " ".join((*words[:n], *words[n + 1 :], at + steps)).strip()
            yield "; ".join((left, *clauses, asked))
    if steps:
        yield "; ".join((part.strip(), *clauses, asked))
    for n, clause in enumerate(clauses):
        yield "; ".join((first, *clauses[:n], f"never {clause}", *clauses[n + 1 :], asked))


@cache
def played(line: str) -> Played:
    """Play a line."""
    teller = Teller(line)
    scene, story = teller.scene(), teller.story
    things = (story.products, story.rooms, story.containers)
    told = (*story.entries, *story.parts, *(each for kind in things for each in kind.values()))
    return Played(scene, Counter(fact for each in told for fact in _facts_of(each)))


def _facts_of(thing: Struct) -> Iterator[tuple[str, str]]:
    for field, facts in _fields_of(type(thing)):
        value = getattr(thing, field)
        if facts:
            said = repr(value)
            yield from ((fact, said) for fact in facts)
        for each in value if isinstance(value, tuple) else (value,):
            if isinstance(each, Struct):
                yield from _facts_of(each)


@cache
def _fields_of(kind: type[Struct]) -> tuple[tuple[str, frozenset[str]], ...]:
    return tuple((field, facts_in(kind, field)) for field in kind.__struct_fields__)


def _finds(rule: Rule, at: Scene, act: Act) -> object:
    """Return what a rule finds, but for what has no weight: when each thing was typed."""
    asked = at.asked if at.asked.act is act else _asked(act)
    return [
        (f.rule, f.level, f.answer, f.measured, f.high, f.closes, f.scuff)
        for f in rule.find(at.zone, asked, at.around)
    ]


def _asked(act: Act) -> Asked:
    if act is Act.COAT:
        return _COAT
    return work_asked(_DONE[act]) if act in _DONE else Asked(act)
