"""Is the wood dry, by the scale: one piece weighed again and again loses, stands still, or gains.

Wet wood loses weight week after week; wood that has come to rest follows the air of its room, up
and down. So a gain is no alarm, and what has stood still is dry enough whatever its age: a reading
outranks a rule of thumb. Weighings are compared between two deeds that change the weight.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import timedelta
from enum import StrEnum
from itertools import groupby, pairwise

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.findings import Act, Answer, Finding, Level, also, finding
from finishlog.core.log.entries import AnyEntry, Coat, Joined, PieceReading, Stripped, Work
from finishlog.core.log.words import Operation
from finishlog.core.published.moisture import WeightFigures
from finishlog.core.rules.reads import OPEN_WOOD
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

# What these rules find, by their ids.
TOLD = frozenset({"weight-falls", "weight-told"})

_LEAVES = frozenset({Act.PACK, Act.STORE, Act.HAND_OVER})
_JOINS = frozenset({Act.GLUE_UP, Act.CLAMP})
# What takes wood off, or wets it: the weight before tells nothing of the one after.
_CHANGES = frozenset(
    {Operation.SHAPE, Operation.SAND, Operation.LEVEL, Operation.RAISE_GRAIN, Operation.RINSE}
)
# Lighter by less than a millionth is no lighter: a pound is not a whole number of grams.
_THE_SAME = 1e-6


class Trend(StrEnum):
    """How the weights of a piece follow each other."""

    FALLS = "falls"
    STEADY = "steady"
    RISES = "rises"
    SOON = "too soon to tell"


class Weights(Struct, frozen=True):
    """A series of weighings of the same pieces, oldest first, and what it tells.

    `least_g`, `most_g` and `over`: of the last of them that are alike; `fell`: by what share the
    last is below the heaviest before it.
    """

    readings: tuple[PieceReading, ...]
    trend: Trend
    least_g: float
    most_g: float
    over: timedelta
    fell: float


def weighings(told: Sequence[AnyEntry]) -> list[PieceReading]:
    """Return the weighings among what reached a zone, oldest first."""
    read = [e for e in told if isinstance(e, PieceReading) and e.weight_g is not None]
    return sorted(read, key=lambda e: e.when.order)


def weights(told: Sequence[AnyEntry], figures: WeightFigures) -> Weights | None:
    """Return what the weighings among what reached a zone tell; None: it was never weighed.

    Of the newest that tell anything: after wood was taken off, those before it still do.
    """
    found = [_told(run, figures) for run in _runs(told)]
    tells = [each for each in found if each.trend is not Trend.SOON]
    return next(reversed(tells or found), None)


def _runs(told: Sequence[AnyEntry]) -> Iterator[list[PieceReading]]:
    """Yield what was weighed between two deeds that change the weight, of the same pieces."""
    changed, run, of = 0, list[tuple[int, PieceReading]](), None
    for entry in sorted(told, key=lambda e: e.when.order):
        if _changes(entry):
            changed += 1
        elif isinstance(entry, PieceReading) and entry.weight_g is not None:
            pieces = frozenset(target.piece for target in entry.targets)
            changed += of is not None and pieces != of
            of = pieces
            run.append((changed, entry))
    for _, each in groupby(run, key=lambda numbered: numbered[0]):
        yield [entry for _, entry in each]


def _changes(entry: AnyEntry) -> bool:
    if isinstance(entry, Work):
        return entry.operation in _CHANGES
    return isinstance(entry, Coat | Stripped | Joined)


def _grams(of: PieceReading) -> float:
    assert of.weight_g is not None
    return of.weight_g


def _told(run: Sequence[PieceReading], figures: WeightFigures) -> Weights:
    """Tell how the weights of one series follow each other.

    Alike are the last ones that lie within so small a share of each other. They stand still when
    they cover the time that this takes, unless each is below the one before and all of them
    together by more than a slow fall. What lies before them was heavier: it falls; or lighter.
    """
    alike = _last_alike(run, figures.still_share.value)
    all_g, alike_g = [_grams(e) for e in run], [_grams(e) for e in alike]
    over = alike[-1].when.earliest - alike[0].when.latest
    fell = 1 - all_g[-1] / max(all_g)
    before = all_g[: len(all_g) - len(alike)]
    creeps = all(b < a * (1 - _THE_SAME) for a, b in pairwise(alike_g))
    creeps &= len(alike) > 2 and 1 - alike_g[-1] / alike_g[0] >= figures.creeps_share.value
    if round(over / timedelta(days=1)) >= figures.still_d.value and not creeps:
        trend = Trend.STEADY
    elif creeps or (before and before[-1] > alike_g[-1]):
        trend = Trend.FALLS
    else:
        trend = Trend.RISES if before else Trend.SOON
    return Weights(tuple(run), trend, min(alike_g), max(alike_g), over, fell)


def _last_alike(run: Sequence[PieceReading], share: float) -> Sequence[PieceReading]:
    """Return the last weighings of which the heaviest is over the lightest by less than a share."""
    n = len(run) - 1
    least = most = _grams(run[n])
    while n > 0:
        least, most = min(least, _grams(run[n - 1])), max(most, _grams(run[n - 1]))
        if most >= least * (1 + share):
            break
        n -= 1
    return run[n:]


@rule(
    "weight-falls",
    binds=COAT | _JOINS | _LEAVES | {Act.WORK},
    source="facts: moisture",
    reads=f"{OPEN_WOOD} piece-reading.when piece-reading.weight_g work.operation work.when",
)
def weight_falls(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Wood that still loses weight is not turned, glued or finished; the next weighing tells."""
    told, figures = weights(zone.entries, around.facts.moisture.weighed), around.facts.moisture
    if told is None or told.trend is not Trend.FALLS:
        return
    if asked.act is Act.WORK and asked.operation is not Operation.SHAPE:
        return
    # An end that was sealed does not let it be turned.
    if not (zone.wood_lies_open or asked.act in _LEAVES or asked.act is Act.WORK):
        return
    age = around.now - told.readings[-1].when.latest
    is_old = age.days >= figures.reading_holds_d.value
    answer = Answer.TEST if is_old or asked.act in _LEAVES else Answer.WAITS
    found = _finding(told, "weight-falls", Level.CAUTION, figures.weighed.still_share.source)
    found = also(found, fell=100 * told.fell, days=float(age.days) if is_old else 0.0)
    yield replace(found, answer=answer)


@rule(
    "weight-told",
    binds=COAT | _JOINS | {Act.WORK},
    source="facts: moisture",
    reads=f"{OPEN_WOOD} piece-reading.when piece-reading.weight_g work.operation work.when",
)
def weight_told(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Weights that stand still, or rise, keep nobody from anything; too few tell nothing yet."""
    figures = around.facts.moisture.weighed
    told = weights(zone.entries, figures)
    if told is None or told.trend is Trend.FALLS or not zone.wood_lies_open:
        return
    if asked.act is Act.WORK and asked.operation is not Operation.SHAPE:
        return
    yield also(
        _finding(told, "weight-told", Level.NOTE, figures.still_share.source),
        days=figures.still_d.value,
    )


def _finding(told: Weights, rule_: str, level: Level, source: str) -> Finding:
    found = finding(
        rule_,
        level,
        source,
        trend=told.trend.value,
        least=told.least_g,
        most=told.most_g,
        last=_grams(told.readings[-1]),
        over=told.over,
    )
    return replace(found, acts=tuple(e.act for e in told.readings[-4:]))
