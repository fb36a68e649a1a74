"""The iron of steel wool: it turns dark in wood with tannin under water, and under an acid."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from finishlog.core.film.attempts import what_stays
from finishlog.core.film.grip import is_steel_wool
from finishlog.core.findings import Act, Answer, Deed, Finding, Level, also, finding
from finishlog.core.finish.classes import COMMON_PRACTICE, FinishClass
from finishlog.core.finish.overcoat import ANY, named_by
from finishlog.core.log.entries import AnyEntry, Coat, Stripped, Work
from finishlog.core.log.words import Stripping
from finishlog.core.published.species import Condition, Tannin, WoodRule
from finishlog.core.rules.film.clocks import scuffs_first
from finishlog.core.rules.film.underneath import as_you_said
from finishlog.core.rules.reads import FAULTS, OPEN_WOOD, SAYS, TO_COME, WAIT, WOOD
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.rules.wood.bare_wood import how_it_weighs, said_of_wood
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState


@rule(
    "iron",
    binds=COAT,
    source="facts: wood_rules",
    reads=f"{WOOD} work.operation work.grit stripped.operation stripped.survives {SAYS}",
)
def iron(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Steel wool touched the wood or the film below: its iron turns dark, or rusts, under some."""
    if not _steel_wool_below(zone.entries):
        return
    for row, level, answer, wood in _speaks_against(zone, asked.over, around):
        word = around.overruled(asked.product, row.id)
        if word is not None:
            yield as_you_said(word, row.reason)
        else:
            yield said_of_wood(row, "iron", level, answer, wood)


def _speaks_against(
    zone: ZoneState, over: FinishClass | None, around: Around
) -> Iterator[tuple[WoodRule, Level, Answer | None, str]]:
    """Yield the rows that speak against iron under a coat, how much, and the wood; stops alone.

    A wood of which nobody told is any.
    """
    species = around.facts.species_named(zone.species) if zone.species else None
    traits = species.traits if species else {ANY}
    rows = [
        (row, *weighed)
        for row in around.facts.wood_rules
        if row.only_with is Condition.STEEL_WOOL
        and traits & set(row.wood)
        and (over is not None and named_by(row.over, over) is not None)
        and (weighed := how_it_weighs(row)) is not None
    ]
    stops = [each for each in rows if each[1] is Level.STOP]
    yield from ((*each, species.name if species else "") for each in stops or rows)


def _comes_next(asked: Asked, around: Around) -> tuple[str, FinishClass | None]:
    product = around.products.get(asked.then) if asked.then is not None else None
    return (product.name, around.facts.finish_class(product.class_key)) if product else ("", None)


@rule(
    "iron-to-come",
    binds=frozenset({Act.SCUFF, Act.SAND}),
    source="facts: wood_rules",
    reads=f"{WOOD} {TO_COME} {SAYS}",
)
def iron_to_come(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Steel wool where the next coat would turn its iron dark: another pad; after it, a barrier."""
    if asked.operation is None or not is_steel_wool(asked.operation, asked.grit):
        return
    name, over = _comes_next(asked, around)
    for row, level, _, wood in _speaks_against(zone, over, around):
        if around.overruled(asked.then, row.id) is None:
            told = row if asked.done else replace(row, remedy=row.instead)
            answer = Answer.BLOCKED if level is Level.STOP else None
            found = said_of_wood(told, "iron-to-come", level, answer, wood)
            yield replace(also(found, over=name), deed=Deed.OTHERWISE)


@rule(
    "no-steel-wool",
    binds=COAT | {Act.SCUFF},
    source=COMMON_PRACTICE,
    reads=f"{WAIT} check.found {OPEN_WOOD} {FAULTS} {TO_COME} {SAYS} product.label_window",
)
def no_steel_wool(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Before what holds water, or on bare wood with tannin, a pad or paper scuffs it, no wool."""
    over = asked.over or _comes_next(asked, around)[1]
    wool = asked.operation is not None and is_steel_wool(asked.operation, asked.grit)
    scuffs = asked.act is Act.SCUFF or scuffs_first(zone, asked, around)
    if over is None or wool or asked.done or not scuffs:
        return
    species = around.facts.species_named(zone.species) if zone.species else None
    bare = zone.wood_lies_open and species is not None and species.tannin is Tannin.YES
    if bare or any(_speaks_against(zone, over, around)):
        yield finding("no-steel-wool", source=COMMON_PRACTICE)


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
    return isinstance(entry, Work) and is_steel_wool(entry.operation, entry.grit)
