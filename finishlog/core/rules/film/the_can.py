"""What the person says of a product beyond its hours: their own rules of what it may go over.

What it says of what lies below holds for what the coat would touch: the layers from the top down
to the first that builds a film, which shields what it covers. And what its name leaves open: a kind
that nobody told is each that it may be.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from msgspec.structs import replace

from finishlog.core.film.layers import Layer
from finishlog.core.findings import WHICH_KIND, Answer, Figured, Finding, In, Level, finding, hours
from finishlog.core.finish.classes import COMMON_PRACTICE, YOUR_CAN, WindowKind
from finishlog.core.finish.overcoat import OvercoatRule, named_by, rule_between
from finishlog.core.rules.film.underneath import Row, by_law, own_word, rows, ways_of
from finishlog.core.rules.reads import AIR, BROKEN_OFF, LAYERS, OPEN_WOOD, SAYS, WAIT, WOOD
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.shop.own_rules import Own, OwnRule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

# Counted from coat to coat: nobody says at which hour a day begins. Our own rule, the slow one.
_A_DAY = timedelta(hours=24)
_WINDOW = f"{LAYERS} {AIR} coat.product product.class_key product.label_window"
_BELOW = f"{LAYERS} {BROKEN_OFF} coat.method coat.product product.class_key {SAYS}"


def _touched(zone: ZoneState, asked: Asked, around: Around) -> list[Row]:
    """Return what a coat would touch, from the top down."""
    return [each for each in rows(zone, asked, around) if each.touches]


def _name(word: str, around: Around) -> str:
    """Name a class, or a family of them."""
    of = around.facts.classes.get(word)
    return of.name if of is not None else word


def _stops(rule_: str, word: OwnRule, *on: Layer, **says: str) -> Finding:
    found = own_word(rule_, word, Level.STOP, Answer.UNDERNEATH, **says)
    return replace(found, acts=(*found.acts, *(layer.coat.act for layer in on)))


@rule("can-not-over", binds=COAT, source=YOUR_CAN, reads=_BELOW)
def not_over(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """The person's rule that it does not go over a class or a product."""
    words = around.own_rules(asked.product, Own.NOT_OVER)
    for layer in (each.layer for each in _touched(zone, asked, around) if words):
        for word in words:
            if word.is_over(layer.of, layer.coat.product):
                yield _stops("can-not-over", word, layer, under=layer.of.name)


@rule("can-needs", binds=COAT, source=YOUR_CAN, reads=_BELOW)
def needs(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """The person's rule that a barrier lies between it and a class, or below it whatever is."""
    for word in around.own_rules(asked.product, Own.NEEDS):
        layers = [each.layer for each in _touched(zone, asked, around)]
        barrier = " or ".join(_name(each, around) for each in word.between)
        if word.is_over_all:
            own = bool(layers) and layers[0].coat.product == asked.product
            if not own and not any(_is_barrier(word, y) for y in layers):
                yield _stops("can-needs", word, barrier=barrier, under="")
            continue
        for layer in layers:
            if _is_barrier(word, layer):
                break
            if word.is_over(layer.of, layer.coat.product):
                yield _stops("can-needs", word, layer, barrier=barrier, under=layer.of.name)
                break


def _is_barrier(word: OwnRule, layer: Layer) -> bool:
    return layer.coat.is_whole and named_by(word.between, layer.of) is not None


@rule(
    "ways",
    binds=COAT,
    source="facts: overcoats",
    reads=f"{LAYERS} {BROKEN_OFF} coat.method coat.product product.class_key product.label {SAYS}",
)
def ways(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Ways that contradict each other are the person's to choose; between them is the worst.

    Chosen is what they say of the pair, or what the can of the lower coat says.
    """
    for each in rows(zone, asked, around):
        layer, told = each.layer, ways_of(each)
        age_h = (around.now - layer.coat.when.latest) / timedelta(hours=1)
        in_one = any(w.from_h <= age_h <= (w.until_h or age_h) for w in told)
        for way in told:
            yield finding(
                "ways",
                Level.NOTE if in_one else Level.CAUTION,
                way.source,
                measured=None if in_one else hours(age_h),
                wanted=hours(way.until_h or way.from_h),
                way=way.way,
                until="yes" if way.until_h else "",
                reason=way.reason,
                under=layer.of.name,
                over=asked.over.name if asked.over else "",
            )


@rule("can-wait", binds=COAT, source=YOUR_CAN, reads=f"{WAIT} {BROKEN_OFF} {SAYS}")
def wait(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """The person's own wait over what lies below, while it is that which counts."""
    for each in _touched(zone, asked, around):
        word, published = each.word, by_law(each)
        if word is None or word.wait is None:
            continue
        said = each.layer.waits(word.wait)
        ends = published.high if published else None
        sooner = published is not None and (ends is None or (said.high and said.high < ends))
        until = ends if sooner else said.high
        if (until is None or around.now < until) and (not sooner or word.because):
            rule_ = "as-you-said-wait" if sooner else "can-wait"
            yield own_word(rule_, word, under=each.layer.of.name)


@rule("can-window", binds=COAT, source=YOUR_CAN, reads=f"{_WINDOW} {SAYS}")
def window(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A window that the person opened wider than the class, where that is what lets it go on."""
    top = zone.top
    if top is None or asked.over is None or not asked.over.needs_tooth:
        return
    own, of_class = top.coat.figures.window, top.of.window
    if own.source != YOUR_CAN or not own.note:
        return
    figures = replace(top.coat.figures, window=of_class)
    closes = replace(top, coat=replace(top.coat, figures=figures)).closes()
    if of_class.kind is WindowKind.ALWAYS_SCUFF or (closes and closes < around.now):
        by_reason = {w.because: w for w in around.own_rules(top.coat.product, Own.WINDOW)}
        word = by_reason.get(own.note, OwnRule(Own.WINDOW, because=own.note))
        yield own_word("as-you-said-window", word)


@rule("can-coats-a-day", binds=COAT, source=YOUR_CAN, reads=f"{LAYERS} coat.product {SAYS}")
def coats_a_day(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """The person's rule of how many coats of it go on in a day."""
    on = sorted(y.put_on for y in zone.layers if y.coat.product == asked.product)
    for word in around.own_rules(asked.product, Own.COATS_A_DAY)[-1:]:
        most = word.count or 1
        free = on[-most] + _A_DAY if len(on) >= most else None
        if free is not None and around.now < free:
            found = own_word("can-coats-a-day", word, answer=Answer.DRYING)
            yield replace(found, wanted=Figured(most, In.COUNT), low=free, high=free)


@rule(
    "can-most-coats",
    binds=COAT,
    source=YOUR_CAN,
    reads=f"{LAYERS} {BROKEN_OFF} coat.product {SAYS}",
)
def most_coats(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """The person's rule of how many coats of it a film bears."""
    on = sum(layer.coat.product == asked.product for layer in zone.coats)
    for word in around.own_rules(asked.product, Own.MOST_COATS)[-1:]:
        if on >= (word.count or 1):
            found = _stops("can-most-coats", word)
            yield replace(found, measured=Figured(on, In.COUNT))


@rule(
    "can-not-on", binds=COAT, source=YOUR_CAN, reads=f"{OPEN_WOOD} {WOOD} product.class_key {SAYS}"
)
def not_on(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """The person's rule that it does not go on a wood, or on woods of a kind."""
    words = around.own_rules(asked.product, Own.NOT_ON)
    known = around.facts.species_named(zone.species) if words and zone.species else None
    if known is None or zone.old_finish or any(y.of.builds_film for y in zone.coats):
        return
    for word in words:
        if known.traits & set(word.of):
            yield _stops("can-not-on", word, wood=known.name)


@rule(
    "which-kind",
    binds=COAT,
    source="facts: overcoats",
    reads=f"{LAYERS} product.class_key",
)
def which_kind(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Of a finish whose kind was not told: what holds of each that it may be, where they differ."""
    over, top = asked.over, zone.top
    if over is None or top is None or over.key == top.of.key:
        return
    facts, is_over = around.facts, bool(over.may_be)
    # Of what each may be: the row of the pair, and whether it is one finish over itself.
    cases: dict[tuple[OvercoatRule | None, bool], list[str]] = {}
    for low in facts.kinds_of(top.of):
        for high in facts.kinds_of(over):
            case = rule_between(facts, low, high, asked.method), low.key == high.key
            cases.setdefault(case, []).append(high.name if is_over else low.name)
    if len(cases) < 2:
        return
    for n, ((row, is_itself), kinds) in enumerate(cases.items(), 1):
        yield finding(
            WHICH_KIND,
            source=row.source if row else COMMON_PRACTICE,
            wanted=hours(row.wait.high_h) if row and row.wait else None,
            of=over.name if is_over else top.of.name,
            kinds=tuple(dict.fromkeys(kinds)),
            may=row.answer if row else None,
            itself="yes" if is_itself else "",
            last="yes" if n == len(cases) else "",
            reason=row.reason if row else None,
        )
