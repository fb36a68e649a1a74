"""What a film came from says of its trouble: the can, what was added to it, its tool."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from msgspec.structs import replace

from finishlog.core.film.from_can import Why, doubts, sample_dried
from finishlog.core.film.stirred import was_stirred
from finishlog.core.findings import Figured, Finding, In, also, finding, pct
from finishlog.core.finish.overcoat import named_by
from finishlog.core.log.entries import ContainerEvent
from finishlog.core.log.where import same_words
from finishlog.core.log.words import SOFT, ContainerDeed, Found
from finishlog.core.mixing.chemistry import Ingredient, contents
from finishlog.core.mixing.containers import MixPart
from finishlog.core.mixing.keeping import too_old
from finishlog.core.mixing.tools import left_in, tools_in
from finishlog.core.published.keeping import Additive
from finishlog.core.trouble.controls import name_of
from finishlog.core.trouble.scene import Look, Missing, Scene
from finishlog.core.trouble.suspect import CLEARLY

_DAY = timedelta(days=1)
# Our own rule: so much of what is usual tells two mixes apart, where the other has none of it.
_MUCH = 0.5
# What a check finds of a film that what was added may keep soft.
_KEPT_SOFT = frozenset({*SOFT, Found.SMELLS, Found.SOFTENS, Found.SAMPLE_SOFT})


def old_can(of: Scene) -> Look:
    """The can had been open, or dissolved, for longer than what is in it keeps."""
    if sample_dried(of.layer):
        return None
    came = of.layer.came_from
    olds = [too_old(can, came.when) for can in came.sources] if came else []
    for old in filter(None, olds):
        days, most = Figured(old.age // _DAY, In.DAYS), Figured(old.promised_d, In.DAYS)
        return finding("can-was-open", measured=days, wanted=most, since=old.since)
    if came is None or came.state is None:
        return Missing.CAN
    dated = any(can.opened or can.made for can in came.sources) or _was_opened(of)
    return None if dated else Missing.CAN


def _was_opened(of: Scene) -> bool:
    can = of.layer.coat.container
    return any(
        isinstance(e, ContainerEvent) and e.container == can and e.deed is ContainerDeed.OPENED
        for e in of.log.entries
    )


def came_from(of: Scene) -> Look:
    """What the can or mix was makes the film doubtful: hardener, ratio, frost; not its age.

    That a sample of it stayed soft is no cause of that.
    """
    itself = {Why.TOO_OLD} | ({Why.SAMPLE_SOFT} if of.found is Found.SAMPLE_SOFT else set())
    doubt = next(doubts((of.layer,), *(each for each in Why if each not in itself)), None)
    if doubt is None and (other := _another_ratio(of)) is not None:
        return other
    if doubt is None:
        return None if of.layer.came_from and of.layer.came_from.state else Missing.CAN
    found = finding("doubtful-can", why=doubt.cause.value, can=doubt.can)
    return replace(found, acts=doubt.acts)


def _another_ratio(of: Scene) -> Finding | None:
    """Say that all that is sound had clearly more hardener, or less, also within what is usual."""
    came = of.layer.came_from
    mine = came.hardener_pct if came is not None else None
    sources = [(each.layer.came_from, each) for each in of.sound]
    theirs = [(c.hardener_pct, each) for c, each in sources if c and c.hardener_pct is not None]
    if came is None or mine is None or not theirs or of.layer.of.hardener_pct is None:
        return None
    pcts = [there for there, _ in theirs]
    if not (mine * CLEARLY <= min(pcts) or mine >= CLEARLY * max(pcts)):
        return None
    why, sound = Why.OFF_RATIO.value, name_of(theirs[0][1])
    found = finding("another-ratio", measured=pct(mine), wanted=pct(pcts[0]), why=why)
    return replace(also(found, can=came.name, sound=sound), acts=came.mixed_by)


def added(of: Scene) -> Look:
    """Something was put into it that makes such a fault, and more of it than is usual."""
    rows = [row for row in of.facts.mixing.additives if _may_make(row, of)]
    found = next((each for row in rows for each in _added(row, of)), None)
    found = found or next((each for row in rows for each in _added_here_alone(row, of)), None)
    if found is not None:
        return found
    came = of.layer.came_from
    return None if came is not None and came.state is not None else Missing.ADDED


def _may_make(row: Additive, of: Scene) -> bool:
    makes = of.kind in row.makes if of.kind else row.keeps_soft and of.found in _KEPT_SOFT
    return makes and named_by(row.of, of.layer.of) is not None


def _added_here_alone(row: Additive, of: Scene) -> Iterator[Finding]:
    """Yield what is more than half as much as is usual, where all that is sound has none of it."""
    if of.sound and not any(True for each in of.sound for _ in _added(row, each, 0.0)):
        for found in _added(row, of, row.usual_pct * _MUCH):
            yield also(found, mild="yes")


def _added(row: Additive, of: Scene, most_pct: float | None = None) -> Iterator[Finding]:
    """Yield what was put into it, more than is usual or than so much."""
    came, most = of.layer.came_from, row.usual_pct if most_pct is None else most_pct
    for can in came.sources if came else ():
        for part in can.container.parts:
            share = _share_pct(part, can.container.parts)
            usual = share is not None and share <= most
            if usual or part.product is not None or not row.is_named(part.name):
                continue
            found = finding(
                "added-to-mix",
                source=row.source,
                measured=None if share is None else pct(round(share)),
                wanted=pct(row.usual_pct),
                added=part.name,
                can=can.container.name,
            )
            yield replace(found, acts=came.mixed_by if came else ())
    if row.is_named(of.layer.coat.note):
        yield finding("added-to-mix", source=row.source, added=of.layer.coat.note)


def _share_pct(part: MixPart, parts: tuple[MixPart, ...]) -> float | None:
    """Return a part in % of the rest; None: weights stand beside volumes."""
    weighed = sum(p.weight_g is not None for p in parts)
    rest = sum(p.parts for p in parts if p is not part)
    return None if 0 < weighed < len(parts) or not rest else 100 * part.parts / rest


def other_can(of: Scene) -> Look:
    """What is sound came from another can; `alike`: from another pot, mixed in the same way."""
    mine = of.layer.coat.container
    theirs = {each.layer.coat.container for each in of.sound}
    if not theirs:
        return None
    if mine is None or None in theirs:
        return Missing.CAN if mine is None else Missing.THEIR_CAN
    if mine in theirs:
        return None
    recipe = _recipe(of)
    alike = "yes" if recipe and recipe in map(_recipe, of.sound) else None
    return finding("another-can", sound=name_of(of.sound[0]), alike=alike)


def _recipe(of: Scene) -> tuple[str, tuple[MixPart, ...]] | None:
    came = of.layer.came_from
    can = came.state.container if came is not None and came.state is not None else None
    return (can.drawn_from, can.parts) if can is not None and can.parts else None


def not_stirred(of: Scene) -> Look:
    """Its can was not stirred: what settles in it was left at the bottom, or went on alone."""
    stirred = was_stirred(of.layer.coat, of.layer.came_from, of.facts)
    if stirred is None:
        return Missing.STIRRED
    return None if stirred else finding("was-not-stirred")


def tool(of: Scene) -> Look:
    """What the tool had in it last harms this finish; or it made another crawl since cleaned."""
    coat = of.layer.coat
    if not coat.tool:
        return Missing.TOOL
    before = [e for e in of.log.entries if e.when.order < coat.when.order and e.act != coat.act]
    for each in tools_in(coat.tool):
        left = left_in(
            each,
            of.layer.of,
            before,
            lambda c: contents(
                Ingredient(c.product_name, c.figures.class_key, c.note), of.facts.chemistry
            ),
            of.facts,
        )
        if left is not None:
            had = left.coat.product_name
            crawled = "yes" if left.crawled else None
            found = finding("left-in-its-tool", tool=left.tool, had=had, crawled=crawled)
            return replace(found, acts=(left.coat.act,))
    return _another_tool(of)


def _another_tool(of: Scene) -> Look:
    """What is sound went on with another tool: no more than that is known against it."""
    mine = same_words(of.layer.coat.tool)
    theirs = [each.layer.coat.tool for each in of.sound]
    if not theirs or not all(theirs) or mine in map(same_words, theirs):
        return None
    here, there = of.layer.coat.tool, theirs[0]
    return finding("another-tool", here=here, there=there, sound=name_of(of.sound[0]), merely="yes")
