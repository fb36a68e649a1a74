"""May one class go over another: the rules as values, and the rule that fits a pair.

A rule names classes, families of classes, `any-film`, `any` or `bare-wood`. The most specific
rule for a pair decides: class over class, then class over family, then family over family.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum

from finishlog.core.finishes import Figure, FinishClass, Method

ANY = "any"
ANY_FILM = "any-film"
BARE_WOOD = "bare-wood"


class OvercoatAnswer(StrEnum):
    """What a rule says about one product over another."""

    OK = "ok"
    WAIT = "wait"
    SCUFF = "scuff"
    BARRIER = "barrier"
    AVOID = "avoid"
    TEST = "test"


@dataclass(frozen=True, slots=True)
class OvercoatRule:
    """What may go over what, and when.

    `under` and `over` hold class keys, families, `any-film` (what builds a film), `any` or
    `bare-wood`. `wait` is hours since the lower coat, at the reference air. `barrier` names the
    classes that make it right when one lies between. `methods`: it holds only for a coat put on
    so, and then before a rule that does not say. `source` backs the answer, `wait.source` the
    hours.
    """

    id: str
    under: tuple[str, ...]
    over: tuple[str, ...]
    answer: OvercoatAnswer
    reason: str
    source: str
    wait: Figure | None = None
    barrier: tuple[str, ...] = ()
    remedy: str = ""
    methods: tuple[Method, ...] = ()


def rule_for(
    rules: Iterable[OvercoatRule],
    under: FinishClass,
    over: FinishClass,
    method: Method | None = None,
) -> OvercoatRule | None:
    """Find the most specific rule for `over` on top of `under`.

    None when it is the same class (its own recoat figures rule) and when nothing is published:
    then it is unknown, and a sample board has to answer. Of equally specific rules the one that
    names the lower coat more closely decides, then the one made for the method, then the first.
    """
    if under.key == over.key:
        return None
    best: tuple[tuple[int, int, bool], OvercoatRule] | None = None
    for rule in rules:
        below, above = named_by(rule.under, under), named_by(rule.over, over)
        if below is None or above is None or (rule.methods and method not in rule.methods):
            continue
        rank = (below + above, below, not rule.methods)
        if best is None or rank < best[0]:
            best = (rank, rule)
    return best[1] if best else None


def rule_on_bare_wood(rules: Iterable[OvercoatRule], over: FinishClass) -> OvercoatRule | None:
    """Find the rule for a class on wood that has no finish; None when there is none."""
    found = [
        (rank, rule)
        for rule in rules
        if BARE_WOOD in rule.under and (rank := named_by(rule.over, over)) is not None
    ]
    return min(found, key=lambda ranked: ranked[0])[1] if found else None


def words_for(of: FinishClass) -> frozenset[str]:
    """Return every word by which a rule may name a class."""
    return frozenset({of.key, of.family, ANY, *((ANY_FILM,) if of.builds_film else ())})


def named_by(words: Sequence[str], of: FinishClass) -> int | None:
    """Tell how closely words of a rule name a class: 0 by key, 1 by family, 2 in general.

    None when they do not name it.
    """
    if of.key in words:
        return 0
    if of.family in words:
        return 1
    if ANY in words or (ANY_FILM in words and of.builds_film):
        return 2
    return None
