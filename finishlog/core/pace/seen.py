"""What the log tells about how fast films dried: soft after so many hours, hardened by so many.

One coat is one observation, however many pieces and tests it had: its own scatter is one. What is
no matter of pace teaches nothing: a film that was taken off, stands still, met damaging cold, went
on over a coat that was too wet, was made wet again, or dried in air that nobody knows.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from datetime import datetime, timedelta, tzinfo
from functools import partial
from math import inf

from msgspec import Struct

from finishlog.core.air.met import air_met
from finishlog.core.air.span import Known
from finishlog.core.clock.pace import PaceKey
from finishlog.core.clock.pace_posterior import Bracket
from finishlog.core.film import checks as film_checks
from finishlog.core.film.damage import is_suspect
from finishlog.core.film.layers import Layer
from finishlog.core.film.laying import build
from finishlog.core.finish.classes import Figure
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import AnyEntry, Check, Coat, Target, Work
from finishlog.core.log.words import Found, Operation
from finishlog.core.published.facts import Facts
from finishlog.core.rules.film.soft import past_hope
from finishlog.core.rules.wood.bare_wood import kind_of_wood
from finishlog.core.shop.things import Log, Shop
from finishlog.core.zone.stood_in import rooms_of_pieces

# By stage: what finds that it is not reached, and what finds that it is.
_SOFT = {Stage.TACK_FREE: Found.TACKY, Stage.SAND: Found.GUMS, Stage.CLAMP: Found.PRINTS}
# Sanded or scuffed, and nobody said that it gummed: it was hard enough by then.
_SANDS = frozenset({Operation.SAND, Operation.SCUFF})

# Our own rule: soft at a third of the label's hours, or hard at three times them, tells nothing.
_FORESEEN = 3.0


class Seen(Struct, frozen=True):
    """What one coat tells, and what dries like it."""

    key: PaceKey
    coat: Coat
    bracket: Bracket


def label_hours(layer: Layer, figure: Figure, moment: datetime) -> float | None:
    """Return the label's hours that a film gained by a moment; None: in air that nobody knows."""
    if any(span.known is Known.UNKNOWN for span in layer.drying_air.until(moment)):
        return None
    return layer.done_h(figure, moment)


def films(
    shop: Shop, log: Log, zone: tzinfo, woods: Mapping[Target, str | None], facts: Facts
) -> Iterator[tuple[Layer, ...]]:
    """Yield the layers of some zones at the label's pace; of `shop` only pieces and rooms count.

    `zone`: where the rooms' clock on the wall is; `woods`: the zones, and of which wood they are.
    """
    stays = rooms_of_pieces(shop, log, zone)
    reached: dict[Target, list[AnyEntry]] = {target: [] for target in woods}
    for entry in log.entries:
        for target in entry.targets & reached.keys():
            reached[target].append(entry)
    for target, entries in sorted(reached.items()):
        kind = kind_of_wood(woods[target], facts)
        yield build(entries, facts, partial(air_met, stays.get(target.piece, ())), wood=kind)


def observed(
    films: Iterable[Sequence[Layer]],
    facts: Facts,
    only: Collection[int] | None = None,
) -> tuple[Seen, ...]:
    """Return what the coats of some zones tell, the oldest first; `only`: of these coat entries."""
    found: dict[tuple[PaceKey, int], list[Bracket]] = defaultdict(list)
    coats: dict[int, Coat] = {}
    for layers in films:
        for n, layer in enumerate(layers):
            coat = layer.coat
            if not coat.is_whole or (only is not None and coat.id not in only):
                continue
            key = PaceKey(
                coat.product, n == 0, coat.method, coat.container, wood=layer.wood
            ).taught()
            if _dried_undisturbed(layers[: n + 1], facts):
                found[key, coat.id] += brackets(layer)
                coats[coat.id] = coat
    seen = (
        Seen(key, coats[coat], told)
        for (key, coat), each in found.items()
        if (told := tightest(each)) is not None
    )
    return tuple(sorted(seen, key=lambda s: (*s.coat.when.order, s.coat.id, s.key.first)))


def brackets(layer: Layer) -> list[Bracket]:
    """Return what the checks and the sanding of one film tell, stage by stage."""
    found = (_bracket(layer, stage) for stage in _SOFT)
    return [bracket for bracket in found if bracket is not None]


def _bracket(layer: Layer, stage: Stage) -> Bracket | None:
    """Return between which hours a film reached a stage; None: nothing is known of that.

    A failure counts from the latest the coat can have gone on, a pass from the earliest.
    """
    figure = layer.coat.figures.stages.get(stage)
    if figure is None or figure.typical_h <= 0:
        return None
    softs = [c for c in layer.checks if c.found is _SOFT[stage]]
    passes = [p for p in _passes(layer, stage) if not softs or _is_after(p, softs, layer)]
    soft = label_hours(layer, figure, softs[-1].when.earliest) if softs else 0.0
    hard: float | None = inf
    if passes:
        perhaps_longer = layer.coat.when.latest - layer.coat.when.earliest
        hard = label_hours(layer, figure, passes[0].when.latest)
        hard = None if hard is None else hard + perhaps_longer / timedelta(hours=1)
    if soft is None or hard is None or (soft <= 0 and hard == inf):
        return None
    return Bracket(figure.typical_h, max(0.0, soft), hard if hard > soft else inf)


def _is_after(passed: Check | Work, softs: Sequence[Check], layer: Layer) -> bool:
    """Tell whether a pass came after every failure, and none at another place stood by then."""
    order = passed.when.order
    if order <= softs[-1].when.order:
        return False
    told = [check for check in layer.checks if check.when.order <= order]
    standing = film_checks.standing_failures(told)
    return isinstance(passed, Work) or not any(soft in standing for soft in softs)


def _passes(layer: Layer, stage: Stage) -> list[Check | Work]:
    """Return what found a stage reached, in the order of the work."""
    proofs = film_checks.PROVES
    found: list[Check | Work] = [c for c in layer.checks if stage in proofs.get(c.found, ())]
    if stage is Stage.SAND:
        gums = [c.when.order for c in layer.checks if c.found is Found.GUMS]
        sanded = (w for w in layer.abraded if w.operation in _SANDS)
        found += [w for w in sanded if not any(order >= w.when.order for order in gums)]
    return sorted(found, key=lambda each: each.when.order)


def tightest(found: Iterable[Bracket]) -> Bracket | None:
    """Join what several tests tell of one coat; where they contradict, the slower is believed."""
    told = list(found)
    if not told:
        return None
    slowest = max(told, key=lambda b: (b.soft_h / b.label_h, -b.hard_h / b.label_h))
    soft = slowest.soft_h / slowest.label_h
    hard = min((h for b in told if (h := b.hard_h / b.label_h) > soft), default=inf)
    if soft < 1 / _FORESEEN and hard > _FORESEEN:
        return None
    return slowest._replace(hard_h=hard * slowest.label_h)


def _dried_undisturbed(layers: Sequence[Layer], facts: Facts) -> bool:
    """Tell whether the top one of some layers dried as its product does, however slowly."""
    *below, layer = layers
    if layer.dries_since != layer.put_on or layer.laid_bare is not None or is_suspect(layer):
        return False
    if past_hope(layer) or _stands_still(layer, facts):
        return False
    return not below or not _was_wet(below[-1], layer)


def _was_wet(under: Layer, over: Layer) -> bool:
    """Tell whether a layer was covered before it could have taken a coat at the soonest."""
    recoat = under.stage(Stage.RECOAT)
    return recoat is not None and (recoat.low is None or recoat.low > over.put_on)


def _stands_still(layer: Layer, facts: Facts) -> bool:
    """Tell whether a film makes no progress by its checks, as core.rules.film.soft does."""
    slow = timedelta(hours=facts.drying.slow_after_h.value)
    late = (c.when.earliest for c in _late(layer) if c.when.earliest >= layer.put_on + slow)
    since = min(late, default=None)
    return since is not None and film_checks.stalled(layer.checks, since, slow)


def _late(layer: Layer) -> Iterator[Check]:
    """Yield the checks that found a film soft when its label's hours were over."""
    for check in layer.checks:
        figure = next(
            (layer.coat.figures.stages.get(s) for s, f in _SOFT.items() if f is check.found), None
        )
        gone = label_hours(layer, figure, check.when.earliest) if figure else None
        if figure is not None and gone is not None and gone >= figure.high_h:
            yield check
