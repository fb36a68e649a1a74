"""The cartridges that are to hold back what comes: named before the work, never called good."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from finishlog.core.findings import CARTRIDGE, Act, Finding, Level, also, finding
from finishlog.core.finish.hazard import Hazard
from finishlog.core.log.words import MaskKept
from finishlog.core.mixing.chemistry import Ingredient
from finishlog.core.rules.reads import AIR_SUPPLY, COMES
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.safety.hazards import hazards_in
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

_DAY = timedelta(days=1)


@rule(
    "cartridge",
    binds=COAT | {Act.WIPE, Act.WORK, Act.TAKE_OFF},
    source="facts: respirators",
    reads=f"{COMES} {AIR_SUPPLY} respirator.when respirator.name respirator.worn_min"
    " respirator.kept",
)
def cartridge(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A cartridge fills from the day its seal is broken: how long ago that is, is said."""
    hazards = _hazards(asked, around)
    figures = around.facts.respirators
    for mask in around.masks:
        kind = figures.kinds[mask.holds] if mask.holds is not None else None
        if kind is None or not kind.cartridge or not kind.made_for & hazards:
            continue
        passes = sorted(kind.never & hazards)
        opened = mask.open_for(around.now)
        days = opened // _DAY if opened is not None else None
        hung = mask.kept is MaskKept.OPEN
        after = figures.named_after_d if hung else figures.old_after_d
        old = days is not None and days >= after.value
        if days is not None and days < figures.named_after_d.value and not passes:
            continue
        found = finding(CARTRIDGE, Level.CAUTION if old else Level.NOTE, figures.wear_source)
        worn = mask.worn if mask.worn else None
        told_of = also(found, mask=mask.name, days=days, worn=worn, passes=tuple(passes))
        yield also(told_of, kept=mask.kept, old="old" if old else "")


def _hazards(asked: Asked, around: Around) -> frozenset[Hazard]:
    what = asked.comes
    if asked.over is not None:
        what = what or Ingredient(asked.over.name, asked.over.key)
    return frozenset(hazards_in(what, around.facts)) if what is not None else frozenset()
