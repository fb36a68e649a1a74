"""What a film came from: does it make the film doubtful, and has a test answered that since?"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import timedelta
from enum import StrEnum
from functools import partial

from msgspec import Struct

from finishlog.core.film.grip import answered
from finishlog.core.film.layers import Layer
from finishlog.core.log.entries import Check
from finishlog.core.log.words import Found
from finishlog.core.mixing.came_from import CameFrom, Hardener, is_off
from finishlog.core.mixing.containers import ContainerState
from finishlog.core.mixing.keeping import TooOld, holds_water, too_old

_HOLDS = frozenset({Found.HOLDS})
_CURED = _HOLDS | {Found.RESISTS}
_HARD = _CURED | {Found.NO_PRINT, Found.POWDER}
_DRY = _HARD | {Found.DRY}
# Old flakes and old solution may stay soft for good; what else is too old is slow. common practice
MAY_NEVER_DRY = frozenset({"shellac"})


class Why(StrEnum):
    """What it came from that makes a film doubtful."""

    LEFT_OUT = "its hardener was left out"
    UNTOLD = "nothing tells of its hardener"
    OFF_RATIO = "its ratio was off"
    WRONG_THINNER = "it was thinned with what it does not mix with"
    FROZE = "it had frozen"
    WAS_BAD = "it was marked as bad"
    # Found later, when the film was on already.
    TURNED_OUT_BAD = "it was marked as bad since"
    TOO_OLD = "it was too old"
    PAST_POT_LIFE = "it was past its pot life"
    # The same can on a scrap of the same wood.
    SAMPLE_SOFT = "a sample of it stayed soft"


# What a check must find to answer it; of all else only a scratch that holds does.
_ANSWERS = {
    Why.LEFT_OUT: _CURED,
    Why.UNTOLD: _CURED,
    Why.OFF_RATIO: _CURED,
    Why.WRONG_THINNER: _CURED,
    Why.TURNED_OUT_BAD: _HARD,
    Why.TOO_OLD: _DRY,
    Why.PAST_POT_LIFE: _HARD,
    Why.SAMPLE_SOFT: _HARD,
}
# These time may end.
_SLOW = frozenset({Why.TURNED_OUT_BAD, Why.TOO_OLD, Why.PAST_POT_LIFE})
# What a sample shows not to be so when it dried; off its ratio it may dry, and stay weak.
_OF_A_SAMPLE = frozenset(
    {
        Why.LEFT_OUT,
        Why.UNTOLD,
        Why.WRONG_THINNER,
        Why.FROZE,
        Why.TOO_OLD,
        Why.PAST_POT_LIFE,
        Why.SAMPLE_SOFT,
    }
)


class Doubt(Struct, frozen=True):
    """One doubt about a layer; `can`: what it is about, `acts`: what tells of it."""

    cause: Why
    layer: Layer
    can: str = ""
    acts: tuple[int, ...] = ()
    note: str = ""
    pct: float | None = None
    past: timedelta = timedelta(0)
    old: TooOld | None = None
    state: ContainerState | None = None

    @property
    def is_undated(self) -> bool:
        """Tell whether no time ends it, only a test or taking it off."""
        never_dry = self.state is not None and self.state.of.family in MAY_NEVER_DRY
        return self.cause not in _SLOW or (self.cause is Why.TOO_OLD and never_dry)


def doubts(layers: Sequence[Layer], *whys: Why) -> Iterator[Doubt]:
    """Yield what makes the film doubtful by what its layers came from, that no test has answered.

    What concerns the film itself a scratch that holds answers; what is slow or soft, a check that
    finds it hard; what never dries, one that finds it dry. A check on top speaks for all below. A
    sample speaks of the can that the coat came from.
    """
    for n, layer in enumerate(layers):
        if layer.coat.container is None and not (layer.came_from or layer.samples):
            continue
        sample = _sample(layers[n:])
        for doubt in _of_layer(layer, sample, whys):
            dried = sample is not None and sample.found is Found.SAMPLE_DRY
            if dried and doubt.cause in _OF_A_SAMPLE:
                continue
            if not answered(layers[n:], _ANSWERS.get(doubt.cause, _HOLDS)):
                yield doubt


def is_doubted(layer: Layer) -> bool:
    """Tell whether what it came from makes it doubtful, whatever a test of the film found since."""
    return any(_of_layer(layer, _sample((layer,)), tuple(Why)))


def sample_dried(layer: Layer) -> bool:
    """Tell whether the same can dried on a scrap of the same wood: neither is to blame."""
    made = _sample((layer,))
    return made is not None and made.found is Found.SAMPLE_DRY


def _of_layer(layer: Layer, sample: Check | None, whys: Sequence[Why]) -> Iterator[Doubt]:
    if Why.SAMPLE_SOFT in whys and sample is not None and sample.found is Found.SAMPLE_SOFT:
        can = layer.came_from.name if layer.came_from else ""
        yield Doubt(Why.SAMPLE_SOFT, layer, can, (sample.act, layer.coat.act))
    for cause in whys if layer.came_from else ():
        found = _FOUND.get(cause)
        if found is not None and layer.came_from is not None:
            yield from found(layer, layer.came_from)


def _sample(layers: Sequence[Layer]) -> Check | None:
    """Return the newest sample of the can that the first of some layers came from."""
    coat = layers[0].coat
    alike = (
        layer
        for n, layer in enumerate(layers)
        if not n or (coat.container is not None and layer.coat.container == coat.container)
    )
    made = [check for layer in alike for check in layer.samples]
    return max(made, key=lambda check: check.when.order, default=None)


def undated(layers: Sequence[Layer]) -> Doubt | None:
    """Return a doubt that no time ends; None: there is none."""
    return next((doubt for doubt in doubts(layers, *Why) if doubt.is_undated), None)


def _left_out(layer: Layer, source: CameFrom) -> Iterator[Doubt]:
    if source.hardener is Hardener.LEFT_OUT:
        yield Doubt(Why.LEFT_OUT, layer, source.name, (*source.mixed_by, layer.coat.act))


def _untold(layer: Layer, source: CameFrom) -> Iterator[Doubt]:
    if source.hardener is Hardener.UNTOLD:
        yield Doubt(Why.UNTOLD, layer, source.name, (layer.coat.act,))


def _off_ratio(layer: Layer, source: CameFrom) -> Iterator[Doubt]:
    if is_off(source.hardener_pct, layer.of.hardener_pct):
        acts = (*source.mixed_by, layer.coat.act)
        yield Doubt(Why.OFF_RATIO, layer, source.name, acts, pct=source.hardener_pct)


def _wrong_thinner(layer: Layer, source: CameFrom) -> Iterator[Doubt]:
    if source.wrong_thinner is not None:
        yield Doubt(Why.WRONG_THINNER, layer, source.name, (*source.mixed_by, layer.coat.act))


def _past_pot_life(layer: Layer, source: CameFrom) -> Iterator[Doubt]:
    past = source.past_pot_life
    if past is not None:
        acts = (*source.mixed_by, layer.coat.act)
        yield Doubt(Why.PAST_POT_LIFE, layer, source.name, acts, past=past)


def _froze(layer: Layer, source: CameFrom) -> Iterator[Doubt]:
    for can, froze in source.frozen():
        if holds_water(can):
            acts = (froze.act, layer.coat.act)
            yield Doubt(Why.FROZE, layer, can.container.name, acts, state=can)


def _bad(why: Why, layer: Layer, source: CameFrom) -> Iterator[Doubt]:
    for can, marked, before in source.condemned():
        if before is (why is Why.WAS_BAD):
            acts = (marked.act, layer.coat.act)
            yield Doubt(why, layer, can.container.name, acts, marked.note, state=can)


def _too_old(layer: Layer, source: CameFrom) -> Iterator[Doubt]:
    for can in source.sources:
        old = too_old(can, source.when)
        if old is not None and not source.tested_since(can):
            yield Doubt(
                Why.TOO_OLD, layer, can.container.name, (layer.coat.act,), old=old, state=can
            )


_FOUND: Mapping[Why, Callable[[Layer, CameFrom], Iterator[Doubt]]] = {
    Why.LEFT_OUT: _left_out,
    Why.UNTOLD: _untold,
    Why.OFF_RATIO: _off_ratio,
    Why.WRONG_THINNER: _wrong_thinner,
    Why.FROZE: _froze,
    Why.WAS_BAD: partial(_bad, Why.WAS_BAD),
    Why.TURNED_OUT_BAD: partial(_bad, Why.TURNED_OUT_BAD),
    Why.TOO_OLD: _too_old,
    Why.PAST_POT_LIFE: _past_pot_life,
}
