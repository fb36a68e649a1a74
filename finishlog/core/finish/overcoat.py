"""May one class go over another: the rules as values, and the rule that fits a pair.

A rule names classes, families of classes, `any-film`, `any` or `bare-wood`. The most specific
rule for a pair decides: class over class, then class over family, then family over family.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from enum import StrEnum
from typing import NamedTuple, Protocol

from msgspec.structs import replace

from finishlog.core.finish.classes import Figure, FinishClass, Method, NotNegative, Published

ANY = "any"
# Families of what is no finish but at work in the wood: bleaches, chemical stains.
WORKS_ON_WOOD = frozenset({"bleach", "chemical"})
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


class LiftedBy(StrEnum):
    """What lies between a buried coat and an overcoat and makes their rule silent."""

    ANY_FILM = "any film"
    BARRIER = "barrier"
    FULL_HARDNESS = "full hardness"
    NOTHING = "nothing"


class Way(Published, frozen=True):
    """One of several ways that the trade does a pair: from how many hours on, or until how many.

    `until_h` None: for good. `reason`: what speaks for it.
    """

    way: str
    reason: str
    source: str
    from_h: NotNegative = 0.0
    until_h: NotNegative | None = None


class OvercoatRule(Published, frozen=True):
    """What may go over what, and when.

    `under` and `over` hold class keys, families, `any-film` (what builds a film), `any` or
    `bare-wood`. `wait` is hours since the lower coat, at the reference air. `barrier` names the
    classes that make it right when one lies between. `methods`: it holds only for a coat put on
    so, and then before a rule that does not say. `lifted_by`: what silences it about a coat that
    is buried; None for bare wood, which never is. `at_once`: what it spoils is spoilt while the
    coat goes on, and lies there no worse for it. `source` backs the answer, `wait.source` the
    hours; what other sources ask for (`wait.also`) is never longer. `how`: what a plain yes says.
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
    how: str = ""
    methods: tuple[Method, ...] = ()
    lifted_by: LiftedBy | None = None
    at_once: bool = False
    # Ways that contradict each other, each with what speaks for it: the person's to choose.
    ways: tuple[Way, ...] = ()

    def __post_init__(self) -> None:
        if (self.lifted_by is None) != (self.under == (BARE_WOOD,)):
            raise ValueError("`lifted_by` is said of every coat below, and of bare wood never")
        if self.wait and any(other.high_h > self.wait.high_h for other in self.wait.also):
            raise ValueError("of the waits that sources ask for the longest binds")


class PutOn(NamedTuple):
    """A class as it goes on; the method None: by hand or not told."""

    of: FinishClass
    method: Method | None = None


class Pairs(Protocol):
    """Where the rules of a pair are looked up."""

    def overcoats_between(self, under: FinishClass, over: FinishClass) -> Sequence[OvercoatRule]:
        """Return the rules that may decide a pair."""

    def kinds_of(self, of: FinishClass) -> Sequence[FinishClass]:
        """Return what a class may be where its kind was not told, else itself."""


# What should not lie there shields nothing.
_WRONG_THERE = frozenset({OvercoatAnswer.BARRIER, OvercoatAnswer.AVOID})


def is_lifted(
    rule: OvercoatRule, under: FinishClass, between: Sequence[PutOn], pairs: Pairs, *, hard: bool
) -> bool:
    """Tell whether what lies between silences a rule about a buried coat; `hard`: that one is."""
    if rule.lifted_by in {None, LiftedBy.NOTHING}:
        return False
    if any(each.of.key in rule.barrier for each in between):
        return True
    if rule.lifted_by is LiftedBy.BARRIER or (
        rule.lifted_by is LiftedBy.FULL_HARDNESS and not hard
    ):
        return False
    return any(_shields(under, each, rule, pairs) for each in between)


def _shields(under: FinishClass, above: PutOn, rule: OvercoatRule, pairs: Pairs) -> bool:
    """Tell whether what lies over a coat keeps it from what comes on top.

    What the rule itself is about does not: it only lies there because somebody passed the rule,
    or waited. A doubt was met when the first such coat went on, and is not raised again.
    """
    own = rule_between(pairs, under, above.of, above.method)
    if own is not None and own.id == rule.id:
        return rule.answer is OvercoatAnswer.TEST or rule.at_once
    # What only dragged colour as it went on lies there as sound as any.
    lies_well = own is None or own.at_once or own.answer not in _WRONG_THERE
    return above.of.builds_film and lies_well


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
    A coat of which nobody says how goes on as its class mostly does.
    """
    if under.key == over.key:
        return None
    how = method or over.methods[0]
    best: tuple[tuple[int, int, bool], OvercoatRule] | None = None
    for rule in rules:
        below, above = named_by(rule.under, under), named_by(rule.over, over)
        if below is None or above is None or (rule.methods and how not in rule.methods):
            continue
        rank = (below + above, below, not rule.methods)
        if best is None or rank < best[0]:
            best = (rank, rule)
    return best[1] if best else None


# From the mildest, behind what only a wait or a scuff stands before; where nothing is published a
# test board answers.
_STRICT = (OvercoatAnswer.TEST, OvercoatAnswer.BARRIER, OvercoatAnswer.AVOID)


def rule_between(
    pairs: Pairs, under: FinishClass, over: FinishClass, method: Method | None = None
) -> OvercoatRule | None:
    """Find the rule for `over` on top of `under`; of what each may be the strictest decides.

    None also where nothing is published of one kind, unless another forbids it.
    """
    if under.key == over.key:
        return None
    cases = [(u, o) for u in pairs.kinds_of(under) for o in pairs.kinds_of(over) if u.key != o.key]
    told = [rule_for(pairs.overcoats_between(u, o), u, o, method) for u, o in cases]
    known = [rule for rule in told if rule is not None]
    if not known:
        return None
    strictest = max(known, key=_strictness)
    if strictest.answer in _STRICT:
        return strictest
    if len(known) < len(told):
        return None
    scuffs = any(rule.answer is OvercoatAnswer.SCUFF for rule in known)
    return replace(strictest, answer=OvercoatAnswer.SCUFF) if scuffs else strictest


def _strictness(rule: OvercoatRule) -> tuple[int, float]:
    if rule.answer in _STRICT:
        return 1 + _STRICT.index(rule.answer), 0.0
    adds_a_wait = rule.wait is not None and rule.answer is not OvercoatAnswer.OK
    return 0, rule.wait.high_h if rule.wait and adds_a_wait else 0.0


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
