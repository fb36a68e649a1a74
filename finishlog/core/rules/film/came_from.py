"""What a coat came from binds the film it became: a pot without hardener, an old or spoilt can."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from msgspec.structs import replace

from finishlog.core.film.from_can import Doubt, Why, doubts
from finishlog.core.findings import Act, Answer, Finding, Level, finding, pct
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.log.words import Found
from finishlog.core.mixing.keeping import ages_differ, keeps_words
from finishlog.core.rules.reads import LAYERS
from finishlog.core.rules.rule import COAT, HANDLED, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

# What asks whether the film is one; by hand it may always be wiped, and it may always come off.
OF_THE_FILM = COAT | HANDLED | frozenset({Act.SAND, Act.SCUFF, Act.RUB, Act.REST})
# What buries it, or lays something on it; and nothing: it is to be known.
LOADED = COAT | frozenset(
    {Act.STACK, Act.PACK, Act.CLOSE, Act.USE, Act.RUB, Act.STORE, Act.HAND_OVER, Act.REST}
)


_DRAWN = (
    f"{LAYERS} coat.container container.name container.when check.test check.when check.found"
    " product.name"
)
# What is in a mix; what it was drawn from, and what befell that.
_MIXED = "container.kind mix-part.name product.class_key"
_AGES = "container.kind container.made_at container.use_by_at container.when"
_SOURCES = "container.container container.deed container.drawn_from"


def _each(zone: ZoneState, *whys: Why) -> Iterator[Doubt]:
    """Yield a doubt of some kinds once, with the acts of all the layers that it is about."""
    met: dict[tuple[Why, str], Doubt] = {}
    for doubt in doubts(zone.layers, *whys):
        before = met.get((doubt.cause, doubt.can))
        acts = (*(before.acts if before else ()), *doubt.acts)
        met[doubt.cause, doubt.can] = replace(doubt, acts=tuple(sorted(set(acts))))
    yield from met.values()


def _said(
    rule_: str, of: Doubt, level: Level, answer: Answer | None, source: str = COMMON_PRACTICE
) -> Finding:
    found = finding(rule_, level, source, answer=answer, of=of.layer.coat.product_name, can=of.can)
    return replace(found, acts=of.acts)


@rule(
    "hardener-left-out",
    binds=OF_THE_FILM,
    source=COMMON_PRACTICE,
    reads=f"{_DRAWN} {_MIXED} container.deed coat.note",
    mended_by="off",
)
def hardener_left_out(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Without its hardener a two-part finish stays soft: a scratch that holds tells otherwise."""
    for doubt in _each(zone, Why.LEFT_OUT):
        yield _said("hardener-left-out", doubt, Level.STOP, Answer.SUSPECT)


@rule(
    "hardener-untold",
    binds=OF_THE_FILM,
    source=COMMON_PRACTICE,
    reads=f"{_DRAWN} {_MIXED} coat.note",
    mended_by="off",
)
def hardener_untold(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """No hardener on record is no clock: it is asked, and until it is answered nothing is dated."""
    for doubt in _each(zone, Why.UNTOLD):
        yield _said("hardener-untold", doubt, Level.CAUTION, Answer.WAITS)
        return


@rule(
    "off-ratio",
    binds=OF_THE_FILM,
    source="the class",
    reads=f"{_DRAWN} container.deed mix-part.name mix-part.parts product.class_key",
    mended_by="off",
)
def off_ratio(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Far off its ratio it never hardens right, however long it lies."""
    for doubt in _each(zone, Why.OFF_RATIO):
        wanted = doubt.layer.of.hardener_pct
        assert wanted is not None
        assert doubt.pct is not None
        found = finding(
            "off-ratio",
            Level.STOP,
            wanted.source,
            measured=pct(doubt.pct),
            answer=Answer.SUSPECT,
            of=doubt.layer.coat.product_name,
            can=doubt.can,
            low=wanted.low,
            high=wanted.high,
        )
        yield replace(found, acts=doubt.acts)


@rule(
    "from-wrong-thinner",
    binds=OF_THE_FILM,
    source="facts: chemistry",
    reads=f"{_DRAWN} container.deed container.drawn_from mix-part.name product.class_key",
    mended_by="off",
)
def from_wrong_thinner(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A thinner that does not mix with it curdles it or keeps it soft, and time mends neither."""
    for doubt in _each(zone, Why.WRONG_THINNER):
        source = doubt.layer.came_from
        assert source is not None
        assert source.wrong_thinner is not None
        met = source.wrong_thinner
        found = finding(
            "from-wrong-thinner",
            Level.CAUTION,
            met.source,
            answer=Answer.SUSPECT,
            of=doubt.layer.coat.product_name,
            can=doubt.can,
            thinner=met.name,
        )
        yield replace(found, acts=doubt.acts)


@rule(
    "past-pot-life",
    binds=LOADED,
    source="the label, or its class",
    reads=f"{_DRAWN} container.deed container.use_by_at product.class_key",
    mended_by="off",
)
def past_pot_life(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A mix past its pot life may look good and stay soft: a check tells."""
    for doubt in _each(zone, Why.PAST_POT_LIFE):
        found = finding(
            "past-pot-life",
            Level.CAUTION,
            COMMON_PRACTICE,
            answer=Answer.TEST,
            of=doubt.layer.coat.product_name,
            can=doubt.can,
            past=doubt.past,
        )
        yield replace(found, by_test=True, acts=doubt.acts)


@rule(
    "from-frozen",
    binds=OF_THE_FILM,
    source="facts: keeping",
    reads=f"{_DRAWN} {_SOURCES} product.class_key",
    mended_by="off",
)
def from_frozen(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What holds water and froze makes a poor film, until the can or the film is tested."""
    frost = around.facts.keeping.frost_on_water
    for doubt in _each(zone, Why.FROZE):
        yield _said("from-frozen", doubt, Level.STOP, Answer.SUSPECT, frost.source)


@rule(
    "from-condemned",
    binds=OF_THE_FILM,
    source=COMMON_PRACTICE,
    reads=f"{_DRAWN} {_SOURCES} container.note",
    mended_by="off",
)
def from_condemned(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A can that is marked as bad makes every coat from it doubtful: those before are tested."""
    for doubt in _each(zone, Why.WAS_BAD, Why.TURNED_OUT_BAD):
        if doubt.cause is Why.TURNED_OUT_BAD and asked.act not in LOADED:
            continue
        was = doubt.cause is Why.WAS_BAD
        found = finding(
            "from-condemned",
            Level.STOP if was else Level.CAUTION,
            COMMON_PRACTICE,
            answer=Answer.SUSPECT if was else Answer.TEST,
            of=doubt.layer.coat.product_name,
            can=doubt.can,
            note=doubt.note,
            since="" if was else "since",
        )
        yield replace(found, by_test=True, acts=doubt.acts)


@rule(
    "from-old",
    binds=OF_THE_FILM,
    source="the class",
    reads=f"{_DRAWN} {_SOURCES} container.made_at container.kind product.class_key",
    mended_by="off",
)
def from_old(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Old shellac may never dry: no date until a check finds it dry. Other old finish is tested."""
    for doubt in _each(zone, Why.TOO_OLD):
        if not doubt.is_undated and asked.act not in LOADED:
            continue
        assert doubt.old is not None
        found = finding(
            "from-old",
            Level.CAUTION,
            doubt.old.keeps.source,
            answer=Answer.WAITS if doubt.is_undated else Answer.TEST,
            of=doubt.layer.coat.product_name,
            can=doubt.can,
            since=doubt.old.since,
            age=doubt.old.age,
            keeps=keeps_words(doubt.old.keeps),
        )
        yield replace(found, by_test=True, acts=doubt.acts)


@rule(
    "sample-soft",
    binds=OF_THE_FILM,
    source=COMMON_PRACTICE,
    reads=f"{_DRAWN} container.when",
    mended_by="off",
)
def sample_soft(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """The same can stayed soft on a scrap of the same wood: it is the can or the wood."""
    for doubt in _each(zone, Why.SAMPLE_SOFT):
        yield _said("sample-soft", doubt, Level.STOP, Answer.SUSPECT)


@rule(
    "mixes-apart",
    binds=LOADED,
    source=COMMON_PRACTICE,
    reads=f"{LAYERS} {_AGES} coat.container check.found product.class_key",
)
def mixes_apart(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Layers that harden, from mixes of very different age, may wrinkle: it shows in a check."""
    held = {Found.NO_PRINT, Found.POWDER, Found.HOLDS}
    for under, over in pairwise(zone.layers):
        below, above = under.came_from, over.came_from
        if below is None or above is None or not (below.state and above.state):
            continue
        if any(check.found in held for check in over.checks):
            continue
        found = ages_differ(above.state, above.when, [(below.state, below.when)])
        if found is not None:
            apart = finding("mixes-apart", found.level, found.source)
            yield replace(apart, says=found.says, acts=(under.coat.act, over.coat.act))


# What the act itself said of its can, and what a rule says of the film that it became.
OF_THE_CAN = {
    "past-pot-life": "pot-life",
    "from-frozen": "can-froze",
    "from-condemned": "can-condemned",
    "from-old": "can-old",
}
