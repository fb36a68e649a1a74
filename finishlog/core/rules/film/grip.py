"""What a coat holds by where it does not melt in: a film that was scuffed, and how; a clean one.

What a cure leaves on a film is seen by nobody: it is washed off before the film is sanded, and only
what is on record as washed was.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta
from itertools import pairwise

from msgspec.structs import replace

from finishlog.core.film.grip import (
    GRIPS,
    answered,
    grade_of,
    met_while_it_set,
    unwashed_below,
    unwashed_open,
    wants_scuffing,
    was_scuffed,
)
from finishlog.core.film.layers import Layer
from finishlog.core.findings import Act, Answer, Finding, Level, also, finding, hours
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.finish.overcoat import OvercoatAnswer
from finishlog.core.log.words import Found, Operation
from finishlog.core.rules.film.came_from import LOADED
from finishlog.core.rules.film.underneath import row_of_pair
from finishlog.core.rules.reads import BROKEN_OFF, LAYERS, SAYS, STAGE, WAIT
from finishlog.core.rules.rule import ABRADING, COAT, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

_HOLDS = frozenset({Found.HOLDS})


@rule(
    "unscuffed-below",
    binds=LOADED,
    source="the class",
    reads=f"{STAGE} {SAYS} coat.scuffed_before check.test product.name product.label_window",
)
def unscuffed_below(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A coat that went unscuffed over a film past its window may peel, until a scratch holds.

    The bond is no better for waiting. It may be handled; what loads or buries it is tested first.
    """
    layers = zone.layers
    bonded = [n for n, each in enumerate(layers) if not (each.on_a_spot or each.of.fills_spots)]
    for low, high in pairwise(bonded):
        scuffed = any(was_scuffed(each) for each in layers[low:high])
        if scuffed or not _lacks_grip(layers[low], layers[high], around):
            continue
        if not answered(layers[high:], _HOLDS):
            acts = (layers[low].coat.act, layers[high].coat.act)
            yield replace(_unscuffed(layers[low], layers[high]), acts=acts)
            return


def _lacks_grip(under: Layer, over: Layer, around: Around) -> bool:
    if not over.of.needs_tooth or over.coat.scuffed_before:
        return False
    row = row_of_pair(under, over, around)
    scuffs = row is not None and row.answer is OvercoatAnswer.SCUFF
    return scuffs or wants_scuffing(under, over.put_on)


def _how(under: Layer, over: Layer) -> str:
    """Tell what is on record of a scuffing: that it was too young for it, or none; or nothing."""
    if any(work.operation in GRIPS for work in under.abraded):
        return "too young"
    return "untold" if over.coat.scuffed_before is None else "none"


def _unscuffed(under: Layer, over: Layer) -> Finding:
    """Say how old the film was, where its window is what had closed."""
    window = under.coat.figures.window
    found = finding(
        "unscuffed-below",
        Level.CAUTION,
        window.source,
        answer=Answer.TEST,
        over=over.coat.product_name,
        under=under.coat.product_name,
        how=_how(under, over),
        act=over.coat.act,
    )
    if window.closes is None or not wants_scuffing(under, over.put_on):
        return found
    since = (over.put_on - under.first_on) / timedelta(hours=1)
    return replace(found, measured=hours(since), wanted=hours(window.closes.low_h))


@rule(
    "scuffed-long-ago",
    binds=COAT,
    source=COMMON_PRACTICE,
    reads=f"{LAYERS} work.operation work.when",
)
def scuffed_long_ago(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Dust and hands have been on a film that was scuffed days ago: it is cleaned again."""
    top, figures = zone.top, around.facts.drying
    grips = [w for w in top.abraded if w.operation in GRIPS] if top else []
    if top is None or not grips or asked.over is None or not asked.over.needs_tooth:
        return
    last = grips[-1]
    ago = around.now - last.when.earliest
    if any(w.when.order > last.when.order for w in top.wipes):
        return
    if ago < timedelta(hours=figures.scuff_clean_h.value):
        return
    stale = ago >= timedelta(hours=figures.scuff_stale_h.value)
    yield replace(
        finding(
            "scuffed-long-ago",
            Level.CAUTION if stale else Level.NOTE,
            figures.scuff_clean_h.source,
            measured=hours(ago / timedelta(hours=1)),
            stale="stale" if stale else "",
        ),
        acts=(last.act,),
    )


@rule(
    "scuff-grit",
    binds=COAT | {Act.SCUFF},
    source="facts: preparation",
    reads=f"{WAIT} work.grit product.name product.label_window",
)
def scuff_grit(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Too coarse a paper shows through the next coat; too fine gives a closed film no tooth.

    The paper that is in the hand, else the last one that was on the film.
    """
    top = zone.top
    usual = around.facts.preparation.grit_between(top.of) if top else None
    last = top.abraded[-1] if top and top.abraded else None
    grit = grade_of(asked.grit or (last.grit if last else ""))
    if top is None or usual is None or grit is None or usual.low <= grit <= usual.high:
        return
    finer = grit > usual.high
    over = asked.over
    if finer and not (wants_scuffing(top, around.now) and (over is None or over.needs_tooth)):
        return
    found = finding(
        "scuff-grit",
        Level.CAUTION,
        usual.source,
        of=top.coat.product_name,
        grit=grit,
        low=usual.low,
        high=usual.high,
        finer="finer" if finer else "",
    )
    if last is not None and not asked.grit:
        found = replace(found, mended_by=frozenset({Operation.SCUFF}), acts=(last.act,))
    yield found


_WASHED = f"{WAIT} {SAYS} product.name product.label_window"


@rule(
    "unwashed",
    binds=COAT | ABRADING,
    source="the class",
    reads=f"{_WASHED} {BROKEN_OFF}",
    mended_by="rinse off",
)
def unwashed(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What a cure leaves on a film is washed off before it is sanded, and before the next coat.

    More of the same goes on unwashed while the film still bonds to it.
    """
    for layer in unwashed_open(zone.lying_open, asked.over, around.now):
        answer = Answer.WAITS if asked.over is not None else None
        yield from _unwashed(layer, "unwashed", answer, around)
        return


@rule(
    "unwashed-below",
    binds=COAT | LOADED | {Act.RUB},
    source="the class",
    reads=f"{_WASHED} check.found check.test check.when",
    mended_by="off",
)
def unwashed_under(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A coat over an unwashed film may stay soft or let go: a scratch that holds tells."""
    for layer, over in unwashed_below(zone.layers):
        if not answered(zone.layers, _HOLDS):
            for found in _unwashed(layer, "unwashed-below", Answer.TEST, around):
                acts = (*found.acts, over.coat.act)
                yield replace(also(found, over=over.coat.product_name), acts=acts, by_test=True)
            return


def _unwashed(layer: Layer, rule_: str, answer: Answer | None, around: Around) -> Iterator[Finding]:
    """Say what lies there, unless the person says that their product leaves nothing."""
    left = layer.of.left_on_top
    assert left is not None
    if around.overruled(layer.coat.product, left.id) is not None:
        return
    cold, damp = met_while_it_set(layer)
    found = finding(
        rule_,
        Level.CAUTION,
        left.source,
        answer=answer,
        of=layer.coat.product_name,
        what=left.name,
        wash=left.wash,
        spoils=left.spoils,
        cold=cold,
        damp=damp,
        smeared="smeared" if layer.wipes else "",
    )
    yield replace(found, acts=(layer.coat.act,))
