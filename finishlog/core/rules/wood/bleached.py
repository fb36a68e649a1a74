"""Bleach, or a chemical stain, still in the wood: rinsed out before sanding, a finish, a conflict.

Only rinsing with water takes it out, or sanding down to new wood, and only what is on record as
rinsed was rinsed. A film shuts it in as long as it lies there.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from msgspec import Struct, field
from msgspec.structs import replace

from finishlog.core.film.grip import answered, grade_of
from finishlog.core.film.layers import ABRADES
from finishlog.core.findings import Act, Answer, Finding, Level, also, finding
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.overcoat import WORKS_ON_WOOD
from finishlog.core.log.entries import AnyEntry, Coat, Note, Stripped, Work
from finishlog.core.log.words import Found, Operation, Stripping
from finishlog.core.mixing.chemistry import Ingredient, contents, meeting_finding
from finishlog.core.published.chemistry import Chemistry, Substances
from finishlog.core.published.facts import Facts
from finishlog.core.rules.reads import BROKEN_OFF, COMES, LAYERS
from finishlog.core.rules.rule import BY_HAND, COAT, LOADED, rule
from finishlog.core.safety.hazards import hazards_in
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

_FAMILY = "bleach"
# A bleach under another class is known by its name. Only then is the chemistry read.
_NAMED = re.compile(r"\b(bleach|hypochlorite|chlorine)\b", re.IGNORECASE)

_IN_THE_WOOD = f"{BROKEN_OFF} coat.note work.operation stripped.operation stripped.survives"
_HOLDS = frozenset({Found.HOLDS})
# Whose dust is poison, dry in the wood.
_POISON = frozenset({Hazard.BLEACH, Hazard.OXALIC_ACID, Hazard.CAUSTIC, Hazard.OXIDIZER})
_RAISES_DUST = ABRADES | {Operation.STEEL_WOOL, Operation.LEVEL, Operation.RUB}


def unrinsed(told: Sequence[AnyEntry], facts: Facts, *, below: bool = False) -> tuple[Coat, ...]:
    """Return what is to be rinsed out of a zone and was not, oldest first.

    Those that lie open; `below`: those under its film as well.
    """
    wood = _in_the_wood(told, facts)
    there = (*wood.shut_in, *wood.open) if below else wood.open
    return tuple(e for e in there if isinstance(e, Coat) and _bleached(e, facts))


class _Wood(Struct):
    """What reached the wood since it was last rinsed or sanded new: open, or shut in by films."""

    open: list[Coat | Work | Note] = field(default_factory=list)
    shut_in: list[Coat | Work | Note] = field(default_factory=list)
    films: list[int] = field(default_factory=list)


def _in_the_wood(told: Sequence[AnyEntry], facts: Facts) -> _Wood:
    """Return what is in the wood, the rinse itself among it: vinegar in it stays there.

    So is what was noted of a part: nobody logs fuming as anything else. What strips the films off
    lays the wood open again as it was.
    """
    wood = _Wood()
    for entry in told:
        if isinstance(entry, Coat) and _shuts_in(entry, facts):
            wood = _Wood(shut_in=wood.shut_in + wood.open, films=[*wood.films, entry.id])
        elif isinstance(entry, Stripped):
            wood = _stripped(wood, entry)
        elif isinstance(entry, Coat | Work | Note):
            if isinstance(entry, Work) and entry.operation is Operation.RINSE:
                wood.open.clear()
            wood.open.append(entry)
    return wood


def _stripped(wood: _Wood, off: Stripped) -> _Wood:
    stays = [] if off.survives is None else [film for film in wood.films if film <= off.survives]
    if stays or not (wood.films or off.survives is None):
        return _Wood(wood.open, wood.shut_in, stays)
    new_wood = off.survives is None and off.operation is Stripping.SAND_THROUGH
    return _Wood() if new_wood else _Wood(wood.shut_in + wood.open)


def _shuts_in(coat: Coat, facts: Facts) -> bool:
    return coat.is_whole and facts.finish_class(coat.figures.class_key).builds_film


def _bleached(coat: Coat, facts: Facts) -> bool:
    return _speaks_of_bleach(coat_alone(coat), facts)


def _speaks_of_bleach(of: Ingredient, facts: Facts) -> bool:
    """Tell whether it is a bleach, or of a class that is rinsed out like one."""
    known = facts.finish_class(of.class_key) if of.class_key else None
    if (known is not None and known.after_rinse) or _NAMED.search(f"{of.name} {of.note}"):
        return True
    return any(_speaks_of_bleach(part, facts) for part in of.made_of)


def coat_alone(coat: Coat) -> Ingredient:
    """Describe a coat by what stands with it, without the can that it came from."""
    return Ingredient(coat.product_name, coat.figures.class_key, coat.note)


def dust_of_bleach(
    told: Sequence[AnyEntry], operation: Operation, facts: Facts, *, through: bool = False
) -> Finding | None:
    """Say that sanding raises the dust of a bleach, where no rinse is on record since.

    `through`: it goes through the films down to the wood.
    """
    raised = unrinsed(told, facts, below=through) if operation in _RAISES_DUST else ()
    left = [coat for coat in raised if _poisons(coat, facts)]
    if not left:
        return None
    names = tuple(dict.fromkeys(coat.product_name for coat in left))
    found = finding(
        "dust-of-bleach", Level.STOP, COMMON_PRACTICE, answer=Answer.UNDERNEATH, names=names
    )
    return replace(found, acts=tuple(coat.act for coat in left))


def _poisons(coat: Coat, facts: Facts) -> bool:
    return bool(_POISON.intersection(hazards_in(coat_alone(coat), facts)))


@rule(
    "dust-of-bleach",
    binds=BY_HAND,
    source=COMMON_PRACTICE,
    reads=f"{_IN_THE_WOOD} product.name product.class_key",
)
def dust(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A bleach that was not rinsed out is not sanded: its dust is poison."""
    doing = asked.operation
    found = dust_of_bleach(zone.entries, doing, around.facts) if doing else None
    if found is not None:
        yield found


@rule(
    "bleach-not-rinsed",
    binds=COAT,
    source=COMMON_PRACTICE,
    reads=f"{_IN_THE_WOOD} product.name product.class_key",
)
def not_rinsed(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A finish waits for the rinse: its hours count from there, and what is left spoils it."""
    if asked.over is None or asked.over.family in WORKS_ON_WOOD:
        return
    for left in unrinsed(zone.entries, around.facts)[-1:]:
        found = finding("bleach-not-rinsed", Level.CAUTION, COMMON_PRACTICE, answer=Answer.WAITS)
        yield replace(also(found, of=left.product_name), acts=(left.act,))


@rule(
    "bleach-shut-in",
    binds=COAT | LOADED | {Act.RUB},
    source=COMMON_PRACTICE,
    reads=(
        f"{_IN_THE_WOOD} {LAYERS} product.name product.class_key check.test check.when check.found"
    ),
)
def shut_in(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A film over a bleach that was not rinsed may bloom or let go: a scratch that holds tells."""
    if not zone.layers or answered(zone.layers, _HOLDS):
        return
    left = unrinsed(zone.entries, around.facts, below=True)
    there = unrinsed(zone.entries, around.facts)
    for coat in [each for each in left if each not in there][-1:]:
        found = finding("bleach-shut-in", Level.CAUTION, COMMON_PRACTICE, answer=Answer.TEST)
        yield replace(also(found, of=coat.product_name), acts=(coat.act,), by_test=True)


@rule(
    "met-in-the-wood",
    binds=COAT | BY_HAND,
    source="facts: chemistry",
    reads=f"{COMES} {_IN_THE_WOOD} work.note note.text",
)
def met(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What must never meet meets in the wood too, until it is rinsed out or shut in by a film."""
    if asked.comes is None:
        return
    found = met_in_the_wood(zone.entries, asked.comes, around.facts, done=asked.done)
    if found is not None:
        answer = Answer.UNDERNEATH if found.level is Level.STOP else None
        yield replace(found, answer=answer)


def met_in_the_wood(
    told: Sequence[AnyEntry], comes: Ingredient, facts: Facts, *, done: bool
) -> Finding | None:
    """Say that what comes meets, in the wood, what it must not meet; `done`: it is there already.

    Also that a bleach goes over another that was not rinsed out.
    """
    there = _in_the_wood(told, facts).open
    bleaches = [e for e in there if isinstance(e, Coat) and _bleached(e, facts)]
    is_bleach = _speaks_of_bleach(comes, facts)
    if not bleaches and not (is_bleach and there):
        return None
    holds = contents(comes, facts.chemistry)
    for left in reversed(there):
        met = facts.chemistry.meeting(holds, _left_by(left, facts.chemistry))
        met = tuple(c for c in met if c.on_wood)
        if met:
            # A note may speak of what is only meant, or feared.
            found = meeting_finding(met[0], done=done and not isinstance(left, Note))
            return also(found, in_the_wood="yes")
    others = [c for c in bleaches if c.figures.class_key != comes.class_key]
    if not (is_bleach and others):
        return None
    return finding("bleach-over-bleach", Level.CAUTION, COMMON_PRACTICE, of=others[-1].product_name)


def _left_by(entry: Coat | Work | Note, chemistry: Chemistry) -> Substances:
    if isinstance(entry, Work):
        return chemistry.in_note(entry.note)
    if isinstance(entry, Note):
        return chemistry.in_note(entry.text)
    return contents(coat_alone(entry), chemistry)


@rule(
    "bleached-skin",
    binds=COAT | {Act.SAND},
    source="facts: preparation",
    reads=f"{LAYERS} product.class_key work.operation work.grit",
)
def bleached_skin(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Bleach lightens a skin of the wood: what was sanded through it shows dark."""
    bleached = next((y for y in reversed(zone.layers) if y.of.family == _FAMILY), None)
    if bleached is None or bleached is not zone.top:
        return
    finest = around.facts.preparation.after_bleach_grit
    papers = [grade_of(work.grit) for work in bleached.abraded]
    if asked.act is Act.SAND:
        papers = [grade_of(asked.grit)] if asked.grit else []
        if not papers:
            yield finding("bleached-skin", source=finest.source, grit=finest.value, coarse="")
    elif asked.over is None or asked.over.family in WORKS_ON_WOOD:
        return
    coarsest = min((grit for grit in papers if grit is not None), default=None)
    if coarsest is not None and coarsest < finest.value:
        yield finding(
            "bleached-skin",
            Level.CAUTION,
            finest.source,
            grit=finest.value,
            coarse=f"P{coarsest:g}",
        )
