"""May this product go on over what is there: the whole stack, and the wood."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from functools import reduce
from itertools import pairwise

from msgspec import Struct

from finishlog.core.film.layers import Layer, trapped_until
from finishlog.core.finish.stage_time import StageTime, later
from finishlog.core.findings import Finding, Level, Rule
from finishlog.core.finish.classes import FinishClass, Method
from finishlog.core.finish.overcoat import (
    LiftedBy,
    OvercoatAnswer,
    OvercoatRule,
    PutOn,
    is_lifted,
    rule_for,
    rule_on_bare_wood,
)
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found
from finishlog.core.published.facts import Facts
from finishlog.core.published.species import WoodRule, rules_for_wood

_LEVELS: dict[OvercoatAnswer, Level | None] = {
    OvercoatAnswer.OK: None,
    OvercoatAnswer.WAIT: Level.NOTE,
    OvercoatAnswer.SCUFF: Level.NOTE,
    OvercoatAnswer.TEST: Level.CAUTION,
    OvercoatAnswer.BARRIER: Level.STOP,
    OvercoatAnswer.AVOID: Level.STOP,
}


class Underneath(Struct, frozen=True):
    """What the stack says about one overcoat.

    `time`: when the slowest layer allows it; `binds`: that layer. `forbids`, `wants_test`: what
    stops it or makes it unsure; `scuffs`: a rule asks for scuffing whatever the window says.
    """

    time: StageTime | None = None
    binds: Layer | None = None
    findings: tuple[Finding, ...] = ()
    forbids: bool = False
    wants_test: bool = False
    scuffs: bool = False


def look_through(
    layers: Sequence[Layer],
    over: FinishClass,
    species: str | None,
    facts: Facts,
    now: datetime,
    method: Method | None = None,
    *,
    on_wood: bool = True,
) -> Underneath:
    """Ask every layer, from the top down, about one overcoat put on now by `method`.

    `on_wood`: under the layers is the wood, which has its say; else an old finish.
    """
    findings: list[Finding] = []
    forbids = wants_test = scuffs = False
    times: list[tuple[StageTime, Layer]] = []
    above: list[PutOn] = []
    told: set[tuple[str, str]] = set()
    for depth, layer in enumerate(reversed(layers)):
        rule = _rule(layer, over, facts, method)
        buried = depth > 0
        if buried and rule and _is_silent(rule, layer, above, now, facts):
            rule = None
        time = _wait(layer, rule, buried)
        if buried and not layers[-1].stands_proved():
            trapped = trapped_until(layer, layers[len(layers) - depth])
            time = later(time, trapped) if time and trapped else time or trapped
        if time:
            times.append((time, layer))
        if rule:
            # Two coats of one finish say one thing.
            if (layer.of.key, rule.reason) not in told:
                findings.extend(_said(rule, layer, buried))
            told.add((layer.of.key, rule.reason))
            forbids |= _LEVELS[rule.answer] is Level.STOP
            scuffs |= rule.answer is OvercoatAnswer.SCUFF and not buried
            wants_test |= rule.answer is OvercoatAnswer.TEST
        elif not buried and layer.of.key != over.key:
            wants_test = True
            findings.append(_unknown(layer.of, over))
        above.append(PutOn(layer.of, layer.coat.method))
    wood = wood_findings(species, over, layers, facts) if on_wood else ()
    slowest = max(times, key=lambda t: (t[0].high is None, t[0].high or t[1].put_on), default=None)
    return Underneath(
        time=reduce(later, (time for time, _ in times)) if times else None,
        binds=slowest[1] if slowest else None,
        findings=(*dict.fromkeys(findings), *wood),
        forbids=forbids or any(f.level is Level.STOP for f in wood),
        wants_test=wants_test or any(f.level is Level.CAUTION for f in wood),
        scuffs=scuffs,
    )


def _is_silent(
    rule: OvercoatRule, layer: Layer, above: Sequence[PutOn], now: datetime, facts: Facts
) -> bool:
    """Tell whether a rule has nothing to say of a buried layer any more."""
    if rule.answer is OvercoatAnswer.OK:
        return True
    hard = layer.stage(Stage.CURED) if rule.lifted_by is LiftedBy.FULL_HARDNESS else None
    is_hard = hard is not None and hard.high is not None and hard.high <= now
    return is_lifted(rule, layer.of, above, facts, hard=is_hard)


def _rule(
    layer: Layer, over: FinishClass, facts: Facts, method: Method | None
) -> OvercoatRule | None:
    if layer.of.key == over.key:
        return None
    return rule_for(facts.overcoats_between(layer.of, over), layer.of, over, method)


def _wait(layer: Layer, rule: OvercoatRule | None, buried: bool) -> StageTime | None:
    """Return a layer's own clock toward an overcoat: never sooner than its own recoat.

    A rule that says `ok` adds no wait to that; one that says `wait` does.
    """
    own = None if buried else layer.stage(Stage.RECOAT)
    if rule is None or rule.wait is None or (own and rule.answer is OvercoatAnswer.OK):
        return own
    by_rule = layer.waits(rule.wait, Stage.RECOAT)
    return by_rule if own is None else later(own, by_rule)


def _said(rule: OvercoatRule, layer: Layer, buried: bool) -> list[Finding]:
    if _LEVELS[rule.answer] is None:
        return []
    where = f"over {layer.of.name}" + (", further down" if buried else "")
    return [_finding(rule, where)]


def _unknown(under: FinishClass, over: FinishClass) -> Finding:
    return Finding(
        Level.CAUTION,
        f"nothing published on {over.name} over {under.name}",
        "try it on a sample board first",
    )


def wood_findings(
    species: str | None, over: FinishClass, layers: Sequence[Layer], facts: Facts
) -> tuple[Finding, ...]:
    """Return what the bare wood says about the first coat on it; covered wood has had its say."""
    if layers:
        return ()
    found: list[Finding] = []
    bare = rule_on_bare_wood(facts.overcoats_on_bare_wood, over)
    if bare and _LEVELS[bare.answer]:
        found.append(_finding(bare, "on bare wood"))
    wood = facts.species_named(species) if species else None
    if wood is not None:
        rules = rules_for_wood(facts.wood_rules, wood, over)
        found += [_finding(r, f"on {wood.name}", r.weighs) for r in rules if _LEVELS[r.answer]]
    return tuple(found)


def _finding(rule: OvercoatRule | WoodRule, where: str, weighs: Level | None = None) -> Finding:
    level = weighs or _LEVELS[rule.answer] or Level.NOTE
    of = Rule.OILY_WOOD if isinstance(rule, WoodRule) and rule.is_for_oily else Rule.NONE
    return Finding(level, f"{where}: {rule.reason}", rule.remedy, rule.source, rule=of)


def fault_in_the_stack(
    layers: Sequence[Layer], facts: Facts, *, on_wood: bool = True
) -> Finding | None:
    """Return what should never have gone on over what it lies on, if anything does.

    It was recorded and warned about; no date lifts it, only taking it off or a scratch that holds.
    """
    if layers and layers[-1].scratches and layers[-1].scratches[-1].found is Found.HOLDS:
        return None
    rules = facts.overcoats_on_bare_wood if layers and on_wood else ()
    bare = rule_on_bare_wood(rules, layers[0].of) if layers else None
    if bare and bare.answer is OvercoatAnswer.AVOID:
        return _finding(bare, f"{layers[0].of.name} on bare wood")
    for under, over in pairwise(layers):
        rule = _rule(under, over.of, facts, over.coat.method)
        if rule and rule.answer is OvercoatAnswer.AVOID:
            return _finding(rule, f"{over.of.name} lies over {under.of.name}")
    return None
