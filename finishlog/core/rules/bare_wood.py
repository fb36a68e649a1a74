"""What was done to the wood before a coat: wiped with solvent, rubbed with steel wool.

Oily wood is wiped with solvent and coated within minutes: its oil comes back (common practice).
Steel wool leaves iron, which water and tannin, or an acid catalyst, turn dark.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime, timedelta

from msgspec.structs import replace

from finishlog.core.film.attempts import what_stays
from finishlog.core.findings import Finding, Level, Rule
from finishlog.core.finish.classes import FinishClass
from finishlog.core.log.entries import AnyEntry, Coat, Stripped, Work
from finishlog.core.log.shown_times import length_words
from finishlog.core.log.when import When
from finishlog.core.log.words import Operation, Stripping
from finishlog.core.published.facts import Facts
from finishlog.core.published.species import Condition, WoodKind, rules_for_wood
from finishlog.core.rules.underneath import Underneath
from finishlog.core.zone.state import ZoneState

# Bares fresh wood, with fresh oil in it.
_OPENS_THE_WOOD = frozenset({Operation.SAND, Operation.RAISE_GRAIN, Operation.LEVEL})

_SOFTER = {Level.STOP: Level.CAUTION, Level.CAUTION: Level.NOTE, Level.NOTE: Level.NOTE}


def solvent_wiped(state: ZoneState) -> When | None:
    """Return when bare wood was last wiped with solvent, if nothing opened it since."""
    if not state.is_bare_wood:
        return None
    done = [e for e in what_stays(state.entries) if isinstance(e, Work)]
    last = [e for e in done if e.operation in _OPENS_THE_WOOD | {Operation.SOLVENT_WIPE}][-1:]
    return last[0].when if last and last[0].operation is Operation.SOLVENT_WIPE else None


def wiped_until(state: ZoneState, facts: Facts) -> datetime | None:
    """Return until when a solvent wipe of oily wood is good for; None when there was none."""
    wiped = solvent_wiped(state)
    if wiped is None or not _is_oily(state, facts):
        return None
    return wiped.earliest + timedelta(hours=facts.drying.solvent_wipe_h.value)


def after_the_wipe(under: Underneath, state: ZoneState, now: datetime, facts: Facts) -> Underneath:
    """Let a fresh solvent wipe soften what oily wood forbids or doubts; say when it is over."""
    if not state.is_bare_wood or not _is_oily(state, facts):
        return under
    until = wiped_until(state, facts)
    if until is None or now >= until:
        return replace(under, findings=(*under.findings, _wipe_it(state, now, facts)))
    findings = tuple(
        replace(f, level=_SOFTER[f.level]) if f.rule is Rule.OILY_WOOD else f
        for f in under.findings
    )
    return replace(
        under,
        findings=findings,
        forbids=any(f.level is Level.STOP for f in findings),
        wants_test=any(f.level is Level.CAUTION for f in findings),
    )


def kind_of_wood(species: str | None, facts: Facts) -> WoodKind:
    """Return what kind of wood a first coat lies on; one that nobody knows is taken as other."""
    wood = facts.species_named(species) if species else None
    return wood.kind if wood is not None else WoodKind.OTHER


def _is_oily(state: ZoneState, facts: Facts) -> bool:
    return kind_of_wood(state.species, facts) is WoodKind.OILY


def _wipe_it(state: ZoneState, now: datetime, facts: Facts) -> Finding:
    wiped = solvent_wiped(state)
    if wiped is None:
        what = "oily wood: not wiped with solvent"
    else:
        what = f"wiped with solvent {length_words(now - wiped.earliest)} ago: the oil is back"
    return Finding(
        Level.CAUTION,
        what,
        f"wipe it{' again' if wiped else ''} right before the coat, and log it: solvent-wipe",
        facts.drying.solvent_wipe_h.source,
    )


def steel_wool_findings(state: ZoneState, over: FinishClass, facts: Facts) -> tuple[Finding, ...]:
    """Return what speaks against a coat where steel wool touched the wood or the film below."""
    wood = facts.species_named(state.species) if state.species else None
    if wood is None or not _steel_wool_below(state.entries):
        return ()
    rules = rules_for_wood(facts.wood_rules, wood, over, {Condition.STEEL_WOOL})
    return tuple(
        Finding(Level.STOP, f"on {wood.name}: {rule.reason}", rule.remedy, rule.source)
        for rule in rules
        if rule.only_with is Condition.STEEL_WOOL
    )


def _steel_wool_below(told: Sequence[AnyEntry]) -> bool:
    """Tell whether steel wool was used on the bare wood or on the newest coat, nothing over it.

    Only sanding down to new wood takes the iron out: after a stripper it is still there.
    """
    if not any(_steel_wool(entry) for entry in told):
        return False
    story = what_stays(told)
    coats = [n for n, entry in enumerate(story) if isinstance(entry, Coat)]
    if coats:
        return any(_steel_wool(entry) for entry in story[coats[-1] :])
    in_wood = False
    for n, entry in enumerate(told):
        if isinstance(entry, Stripped) and entry.operation is Stripping.SAND_THROUGH:
            in_wood = in_wood and entry.survives is not None
        elif _steel_wool(entry):
            bare = not any(isinstance(e, Coat) for e in what_stays(told[:n]))
            in_wood = in_wood or bare
    return in_wood


def _steel_wool(entry: AnyEntry) -> bool:
    return isinstance(entry, Work) and entry.operation is Operation.STEEL_WOOL
