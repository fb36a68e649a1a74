"""May this product go on over what is there: every layer is asked, from the top down.

Published pairs are rows of data (facts/data/overcoats.toml); one rule reads them, and what lies
between silences them by the row's own `lifted_by`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import timedelta
from functools import reduce
from itertools import pairwise

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.film.checks import held as held_back
from finishlog.core.film.damage import flaked
from finishlog.core.film.faults import cannot_follow
from finishlog.core.film.grip import covers
from finishlog.core.film.layers import Layer, trapped_until
from finishlog.core.film.old_finish import held
from finishlog.core.findings import Answer, Finding, Level, also, finding, hours
from finishlog.core.finish.classes import COMMON_PRACTICE, YOUR_CAN, FinishClass
from finishlog.core.finish.overcoat import (
    LiftedBy,
    OvercoatAnswer,
    OvercoatRule,
    PutOn,
    Way,
    is_lifted,
    rule_between,
    rule_on_bare_wood,
)
from finishlog.core.finish.stage_time import StageTime, later
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Found
from finishlog.core.rules.reads import BARE, BROKEN_OFF, FAULTS, LAYERS, OPEN_WOOD, SAYS
from finishlog.core.rules.rule import COAT, EVERY, rule
from finishlog.core.shop.own_rules import Own, OwnRule
from finishlog.core.shop.things import Meets, OldFinish
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked, coat_asked
from finishlog.core.zone.state import ZoneState

# What the answer of a row weighs, and what it says to the coat.
WEIGHS: dict[OvercoatAnswer, tuple[Level, Answer | None] | None] = {
    OvercoatAnswer.OK: None,
    OvercoatAnswer.WAIT: (Level.NOTE, None),
    OvercoatAnswer.SCUFF: (Level.NOTE, None),
    OvercoatAnswer.TEST: (Level.CAUTION, Answer.TEST),
    OvercoatAnswer.BARRIER: (Level.STOP, Answer.UNDERNEATH),
    OvercoatAnswer.AVOID: (Level.STOP, Answer.UNDERNEATH),
}


class Below(Struct, frozen=True):
    """What the layers below say to one coat by the clock.

    `time`: when the slowest of them allows it; `slowest`: that layer. `scuffs`: a row asks for
    scuffing whatever the window says.
    """

    time: StageTime | None
    slowest: Layer | None
    scuffs: bool


class Row(Struct, frozen=True):
    """One layer below, and the row that speaks of the pair it forms with the coat, if one does.

    `touches`: no film lies between it and the coat. `word`: how long the person says to wait over
    it; `overruled`: their word that the row does not hold, which then is left out. `waxed`: wax
    comes, which waits as rubbing out does.
    """

    layer: Layer
    over: Layer | None
    row: OvercoatRule | None
    touches: bool
    word: OwnRule | None = None
    overruled: tuple[OvercoatRule, OwnRule] | None = None
    waxed: bool = False


def rows(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Row]:
    """Yield the layers from the top down; a row that is lifted by what lies between is silent."""
    above: list[PutOn] = []
    over: Layer | None = None
    waits = around.own_rules(asked.product, Own.WAIT)
    for layer in reversed(zone.layers):
        row = _row(layer, asked, around)
        if over is not None and row is not None and _is_silent(row, layer, above, around):
            row = None
        told = around.overruled(asked.product, row.id) if row is not None else None
        overruled = (row, told) if row is not None and told is not None else None
        touches = not any(each.of.builds_film for each in above)
        words = [w for w in waits if touches and w.is_over(layer.of, layer.coat.product)]
        word = words[-1] if words else None
        waxed = asked.over is not None and asked.over.goes_on_last
        yield Row(layer, over, None if overruled else row, touches, word, overruled, waxed)
        if covers(layer):
            above.append(PutOn(layer.of, layer.coat.method))
            over = layer


def _row(layer: Layer, asked: Asked, around: Around) -> OvercoatRule | None:
    over, facts = asked.over, around.facts
    if over is None or layer.of.key == over.key:
        return None
    return rule_between(facts, layer.of, over, asked.method)


def _is_silent(row: OvercoatRule, layer: Layer, above: Sequence[PutOn], around: Around) -> bool:
    """Tell whether a row has nothing to say of a buried layer any more."""
    if row.answer is OvercoatAnswer.OK:
        return True
    hard = layer.stage(Stage.CURED) if row.lifted_by is LiftedBy.FULL_HARDNESS else None
    dated = hard is not None and hard.high is not None and hard.high <= around.now
    lacks = held_back(layer.checks, lambda _: layer.coat.figures.stages)
    is_hard = dated and not any(Stage.CURED in lost for _, lost in lacks)
    return is_lifted(row, layer.of, above, around.facts, hard=is_hard)


def below(zone: ZoneState, asked: Asked, around: Around) -> Below:
    """Return what the layers below say to a coat by the clock."""
    times: list[tuple[StageTime, Layer]] = []
    scuffs, proved = False, bool(zone.layers) and zone.layers[-1].stands_proved()
    for each in rows(zone, asked, around):
        time = None if goes_on_wet(each, around) else _wait(each)
        if each.over is not None and not proved:
            trapped = trapped_until(each.layer, each.over)
            time = later(time, trapped) if time and trapped else time or trapped
        if time:
            times.append((time, each.layer))
        scuffs |= (
            each.over is None and each.row is not None and each.row.answer is OvercoatAnswer.SCUFF
        )
    slowest = max(times, key=lambda t: (t[0].high is None, t[0].high or t[1].put_on), default=None)
    return Below(
        reduce(later, (time for time, _ in times)) if times else None,
        slowest[1] if slowest else None,
        scuffs,
    )


def ways_of(each: Row) -> tuple[Way, ...]:
    """Return the ways that a pair may be done in; none where the person or the can chose one."""
    label = each.layer.coat.figures.stages.get(Stage.RECOAT)
    chosen = each.word is not None or (label is not None and label.source == YOUR_CAN)
    return each.row.ways if each.row and each.over is None and not chosen else ()


def goes_on_wet(each: Row, around: Around) -> bool:
    """Tell whether the trade puts the coat on now, while what lies below is still wet."""
    age_h = (around.now - each.layer.coat.when.earliest) / timedelta(hours=1)
    return any(way.until_h is not None and age_h <= way.until_h for way in ways_of(each))


def _wait(each: Row) -> StageTime | None:
    """Return a layer's own clock toward an overcoat, the person's word laid over it.

    A longer wait of theirs always counts; a shorter one only with a reason, and never below what
    the label of the lower coat asks for.
    """
    published, word = by_law(each), each.word
    if word is None or word.wait is None:
        return published
    said = each.layer.waits(word.wait, Stage.RECOAT)
    if published is None:
        return said
    if not word.because:
        return later(published, said)
    label = each.layer.coat.figures.stages.get(Stage.RECOAT)
    own = each.layer.stage(Stage.RECOAT) if label and label.source == YOUR_CAN else None
    return later(own, said) if own else said


def asks_h(each: Row) -> float:
    """Return the label hours that a coat asks of a layer as a pair with it, 0: none of its own."""
    waits = (each.row and each.row.wait, each.word and each.word.wait)
    return max((wait.high_h for wait in waits if wait), default=0.0)


def by_law(each: Row) -> StageTime | None:
    """Return the clock of a layer as it is published: never sooner than its own recoat.

    A row that says `ok` adds no wait to that; one that says `wait` does.
    """
    layer, row = each.layer, each.row
    own = layer.stage(Stage.RECOAT) if each.over is None else None
    if row is None or row.wait is None or (own and row.answer is OvercoatAnswer.OK):
        return own
    by_row = layer.waits(row.wait, Stage.RECOAT)
    rubbed = layer.stage(Stage.RUB) if each.waxed else None
    if rubbed is not None and rubbed.high and rubbed.proved_by and by_row.low:
        tried = max(rubbed.high, by_row.low)
        by_row = replace(rubbed, low=tried, high=tried)
    return by_row if own is None else later(own, by_row)


def puts_colour_back(zone: ZoneState, asked: Asked) -> bool:
    """Tell whether colour is asked for a bare spot: the film around it is no ground for it."""
    colour = asked.over is not None and asked.over.is_colour
    return colour and any(fault.wants_colour for fault in zone.faults)


def own_word(
    rule_: str,
    word: OwnRule,
    level: Level = Level.NOTE,
    answer: Answer | None = None,
    **says: str,
) -> Finding:
    """Build what a rule of the person's own finds: with their reason and the act that said so."""
    act = "" if word.act is None else str(word.act)
    wanted = hours(word.wait.high_h) if word.wait else None
    found = finding(rule_, level, YOUR_CAN, wanted=wanted, answer=answer, act=act)
    return replace(also(found, because=word.because, **says), acts=word.acts)


def as_you_said(word: OwnRule, reason: str) -> Finding:
    """Say that a published row was overruled, and why."""
    return own_word("as-you-said", word, reason=reason)


@rule(
    "pair",
    binds=COAT,
    source="facts: overcoats",
    reads=f"{LAYERS} {FAULTS} {BROKEN_OFF} coat.method product.class_key {SAYS}",
)
def pair(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What may go over what: the row of each pair; a pair of which nothing is published is tried.

    Two coats of one finish say one thing.
    """
    told: set[tuple[str, str]] = set()
    if puts_colour_back(zone, asked):
        yield finding("colour-on-the-spot", source=COMMON_PRACTICE)
        return
    for each in rows(zone, asked, around):
        layer, row = each.layer, each.row
        if each.overruled is not None:
            published, word = each.overruled
            if WEIGHS[published.answer] is not None:
                yield as_you_said(word, published.reason)
            continue
        if row is not None and (layer.of.key, row.reason) not in told:
            told.add((layer.of.key, row.reason))
            waits = row.answer is OvercoatAnswer.WAIT
            buried = each.over is not None
            yield from _said(
                row, "pair", under=layer.of.name, buried=_yes(buried), waits=_yes(waits)
            )
        is_pair = asked.over is not None and layer.of.key != asked.over.key
        if row is None and is_pair and each.over is None:
            assert asked.over is not None
            yield finding(
                "pair-unknown",
                Level.CAUTION,
                answer=Answer.TEST,
                over=asked.over.name,
                under=layer.of.name,
            )


def _yes(said: bool) -> str:
    return "yes" if said else ""


def _said(row: OvercoatRule, rule_: str, **says: str) -> Iterator[Finding]:
    # A plain yes is silent, but for how it is to be done.
    weighs = WEIGHS[row.answer] or ((Level.NOTE, None) if row.how else None)
    if row.at_once:
        weighs = WEIGHS[OvercoatAnswer.TEST]
    if weighs is not None:
        level, answer = weighs
        found = finding(
            rule_,
            level,
            row.source,
            wanted=hours(row.wait.high_h) if row.wait else None,
            answer=answer,
            row=row.id,
            reason=row.reason,
            remedy=row.how or row.remedy,
            least=min((other.low_h for other in row.wait.sooner), default=None)
            if row.wait
            else None,
        )
        yield also(found, **says)


@rule("pair-on-wood", binds=COAT, source="facts: overcoats", reads=f"{OPEN_WOOD} {SAYS} face.meets")
def pair_on_wood(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What may go on bare wood; covered wood has had its say."""
    if not zone.wood_lies_open or asked.over is None or _waxes_a_runner(zone, asked.over):
        return
    row = rule_on_bare_wood(around.facts.overcoats_on_bare_wood, asked.over)
    if row is None or WEIGHS[row.answer] is None:
        return
    word = around.overruled(asked.product, row.id)
    if word is not None:
        yield as_you_said(word, row.reason)
    else:
        yield from _said(row, "pair-on-wood")


def _waxes_a_runner(zone: ZoneState, over: FinishClass) -> bool:
    """Tell whether it is wax where a face slides: nothing better goes there, on bare wood too."""
    return over.goes_on_last and zone.face.meets is Meets.SLIDES


@rule(
    "last-chance",
    binds=COAT,
    source="facts: overcoats",
    reads=f"{LAYERS} product.class_key product.name",
)
def last_chance(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Colour that holds on nothing that is about to cover it is put right before."""
    top, over = zone.top, asked.over
    if top is None or over is None or not (top.of.is_colour or top.of.is_paint):
        return
    if top.of.key != over.key and cannot_follow(over, top.of, around.facts):
        said = finding("last-chance", source=COMMON_PRACTICE, of=top.coat.product_name)
        yield also(said, over=over.name)


@rule(
    "wrong-below",
    binds=EVERY,
    source="facts: overcoats",
    reads=f"{BARE} {SAYS} coat.method coat.product check.test check.found product.class_key"
    " fault.what face.meets",
    mended_by="off",
)
def wrong_below(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What should never have gone on over what it lies on stays in sight.

    It was recorded and warned about; no date lifts it, only taking it off or a scratch that holds.
    """
    layers, facts = zone.layers, around.facts
    if not layers or (layers[-1].scratches and layers[-1].scratches[-1].found is Found.HOLDS):
        return
    is_right = zone.old_finish is not None or _waxes_a_runner(zone, layers[0].of)
    rows = () if is_right else facts.overcoats_on_bare_wood
    bare = rule_on_bare_wood(rows, layers[0].of)
    if bare and bare.answer is OvercoatAnswer.AVOID and not _is_overruled(bare, layers[0], around):
        yield _lies_wrong(bare, layers[0], None)
        return
    for under, over in pairwise(each for each in layers if not each.on_a_spot):
        row = row_of_pair(under, over, around)
        if row and row.answer is OvercoatAnswer.AVOID:
            yield _lies_wrong(row, over, under)
            return


def row_of_pair(under: Layer, over: Layer, around: Around) -> OvercoatRule | None:
    """Return the published row of two layers that lie there, unless the person overruled it."""
    row = _row(under, coat_asked(over.of, over.coat.method), around)
    return None if row is None or _is_overruled(row, over, around) else row


def _is_overruled(row: OvercoatRule, over: Layer, around: Around) -> bool:
    return around.overruled(over.coat.product, row.id) is not None


def _lies_wrong(row: OvercoatRule, over: Layer, under: Layer | None) -> Finding:
    found = finding(
        "wrong-below",
        Level.STOP,
        row.source,
        answer=Answer.UNDERNEATH,
        row=row.id,
        reason=row.reason,
        over=over.of.name,
        under=under.of.name if under else None,
        flakes="flakes" if flaked(over) else "",
    )
    return replace(found, acts=(over.coat.act,))


@rule(
    "old-finish",
    binds=COAT,
    source=COMMON_PRACTICE,
    reads="check.found stripped.survives face.kind part.old_finish",
)
def old_finish(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """An old finish of unknown age is tried before it is coated, until a scratch held.

    On wax that is a test of a coat that went on since: the wax itself tells nothing.
    """
    old = zone.old_finish
    if old is None or asked.over is None or held(zone.entries, since_a_coat=old is OldFinish.WAX):
        return
    name = "old-wax" if old is OldFinish.WAX else "old-finish"
    yield finding(name, Level.CAUTION, COMMON_PRACTICE, answer=Answer.TEST, old=old)
