"""What the log tells about how fast films dried: soft after so many hours, hardened by so many.

One coat is one observation, however many pieces and tests it had: its own scatter is one. What is
no matter of pace teaches nothing: a film that was taken off, stands still, was made wet again or
dried in air half known; one that air out of its limits, its can, its surplus, its thickness,
the wood or the film below keeps soft; and what was found at one place of it.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from datetime import datetime, timedelta, tzinfo
from functools import partial
from math import inf

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.met import air_met
from finishlog.core.air.span import Known
from finishlog.core.clock.pace import PaceKey, Took
from finishlog.core.clock.pace_posterior import Bracket
from finishlog.core.film import checks as film_checks
from finishlog.core.film.damage import is_suspect
from finishlog.core.film.from_can import is_doubted
from finishlog.core.film.layers import Layer
from finishlog.core.film.laying import build
from finishlog.core.film.surplus import wiped_late
from finishlog.core.findings import Level
from finishlog.core.finish.classes import COMMON_PRACTICE, EVAPORATES, Figure
from finishlog.core.finish.overcoat import OvercoatAnswer, rule_for
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import AnyEntry, Check, Coat, Fault, Target, Work
from finishlog.core.log.words import Found, Operation
from finishlog.core.mixing.came_from import CameFrom
from finishlog.core.published.facts import Facts
from finishlog.core.published.species import rules_for_wood
from finishlog.core.rules.film.soft import past_hope
from finishlog.core.rules.wood.bare_wood import kind_of_wood
from finishlog.core.shop.things import Log, Shop
from finishlog.core.zone.stood_in import rooms_of_pieces

# By stage: what finds that it is not reached, and what finds that it is.
_SOFT = {Stage.TACK_FREE: Found.TACKY, Stage.SAND: Found.GUMS, Stage.CLAMP: Found.PRINTS}
# Sanded or scuffed, and nobody said that it gummed: it was hard enough by then.
_SANDS = frozenset({Operation.SAND, Operation.SCUFF})

# What is published to spoil a film that lies on it.
_SPOILS = frozenset({OvercoatAnswer.AVOID, OvercoatAnswer.BARRIER})

# Our own rule: soft at a third of the label's hours, or hard at three times them, tells nothing.
_FORESEEN = 3.0


# Our own rule: who looked again within twice the time saw when it was dry, not only that it was.
_LOOKED_AGAIN = 2.0


class Film(Struct, frozen=True):
    """The layers of one zone, the wood that they lie on, and the coats that something befell."""

    layers: tuple[Layer, ...]
    species: str | None = None
    spoilt: frozenset[int] = frozenset()


class Seen(Struct, frozen=True):
    """What one coat tells, and what dries like it."""

    key: PaceKey
    coat: Coat
    bracket: Bracket
    # How damp (% RH) the air was until the last test, where it was read; 0: nobody knows.
    damp_pct: float = 0.0
    took: Took | None = None


def label_hours(layer: Layer, figure: Figure, moment: datetime) -> float | None:
    """Return the label's hours that a film gained by a moment; None: in air half known.

    Air that nobody read at all is the shop's own: its hours count as they are.
    """
    known = {span.known is Known.UNKNOWN for span in layer.drying_air.until(moment)}
    return layer.done_h(figure, moment) if len(known) < 2 else None


def films(
    shop: Shop,
    log: Log,
    zone: tzinfo,
    woods: Mapping[Target, str | None],
    facts: Facts,
    came_from: Callable[[Coat], CameFrom | None] = lambda _: None,
) -> Iterator[Film]:
    """Yield the films of some zones at the label's pace; of `shop` only pieces and rooms count.

    `zone`: where the rooms' clock on the wall is; `woods`: the zones, and of which wood they are;
    `came_from`: the can or mix that a coat came from.
    """
    stays = rooms_of_pieces(shop, log, zone)
    reached: dict[Target, list[AnyEntry]] = {target: [] for target in woods}
    for entry in log.entries:
        for target in entry.targets & reached.keys():
            reached[target].append(entry)
    for target, entries in sorted(reached.items()):
        air = partial(air_met, stays.get(target.piece, ()))
        kind = kind_of_wood(woods[target], facts)
        layers = build(entries, facts, air, wood=kind, came_from=came_from)
        yield Film(layers, woods[target], frozenset(_spoilt(entries, facts)))


def _spoilt(entries: Sequence[AnyEntry], facts: Facts) -> Iterator[int]:
    """Yield the coats on which a fault was found that has to be mended, mended or not."""
    coat: Coat | None = None
    for entry in entries:
        if isinstance(entry, Coat):
            coat = entry
        known = facts.fault_known(entry.what) if isinstance(entry, Fault) else None
        if coat is not None and known is not None and known.level is Level.STOP:
            yield coat.id


def observed(
    films: Iterable[Film],
    facts: Facts,
    only: Collection[int] | None = None,
) -> tuple[Seen, ...]:
    """Return what the coats of some zones tell, the oldest first; `only`: of these coat entries."""
    found: dict[tuple[PaceKey, int], list[Bracket]] = defaultdict(list)
    layers: dict[int, Layer] = {}
    for film in films:
        for n, layer in enumerate(film.layers):
            coat = layer.coat
            if not coat.is_whole or (only is not None and coat.id not in only):
                continue
            unread = layer.air.span_at(layer.put_on).known is Known.UNKNOWN
            key = PaceKey(
                coat.product, n == 0, coat.method, coat.container, wood=layer.wood, unread=unread
            ).taught()
            if _is_of_pace(replace(film, layers=film.layers[: n + 1]), facts):
                found[key, coat.id] += brackets(layer)
                layers[coat.id] = layer
    seen = (
        Seen(key, layers[coat].coat, told, _damp(layers[coat]), took(layers[coat]))
        for (key, coat), each in found.items()
        if (told := tightest(each)) is not None
    )
    return tuple(sorted(seen, key=lambda s: (*s.coat.when.order, s.coat.id, s.key.first)))


def _damp(layer: Layer) -> float:
    return (
        layer.drying_air.mean_pct(max(c.when.latest for c in layer.checks)) if layer.checks else 0.0
    )


def took(layer: Layer) -> Took | None:
    """Return what a coat took that its own checks saw to be late; None: they saw nothing such."""
    figures = layer.coat.figures.stages
    for stage, found in _SOFT.items():
        told, figure = _bracket(layer, stage), figures.get(stage)
        if told and figure and told.soft_h > figure.low_h and told.hard_h < inf:
            near = told.hard_h <= _LOOKED_AGAIN * told.soft_h
            stages = film_checks.denied(found, figures)
            return Took(stages, told.hard_h if near else told.soft_h, near)
    return None


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
    softs = [c for c in layer.checks if c.found is _SOFT[stage] and not c.place]
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
    all_over = [c for c in layer.checks if not c.place]
    found: list[Check | Work] = [c for c in all_over if stage in proofs.get(c.found, ())]
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


def _is_of_pace(film: Film, facts: Facts) -> bool:
    """Tell whether the top one of its layers dried as its product does, however slowly."""
    *below, layer = film.layers
    if layer.dries_since != layer.put_on or layer.laid_bare is not None:
        return False
    if past_hope(layer) or _stands_still(layer, facts) or _is_aged(layer, facts):
        return False
    if layer.thick_film > 1 or layer.wet_outside_limits() or not _is_off(layer):
        return False
    if any(map(_is_doubtful, film.layers)) or layer.coat.id in film.spoilt:
        return False
    if not below:
        return not _kept_soft(film.species, layer, facts)
    return not (_was_wet(below[-1], layer) or _does_not_suit(below[-1], layer, facts))


def _is_doubtful(layer: Layer) -> bool:
    """Tell whether cold, its can or its surplus may keep a film soft, tested since or not."""
    stays = layer.stands_flooded or any(late.surely for late in wiped_late((layer,)))
    return is_suspect(layer) or stays or is_doubted(layer)


def _is_off(layer: Layer) -> bool:
    """Tell whether a film has no surplus left that nobody wiped off, by all that is on record."""
    if layer.of.wipe_off_h is None or layer.coat.flooded is False:
        return True
    return bool(layer.wipes) and not wiped_late((layer,))


def _is_aged(layer: Layer, facts: Facts) -> bool:
    """Tell whether what only evaporates was found soft when all had left it: that is age."""
    if layer.of.mechanism not in EVAPORATES or layer.of.hardener_pct is not None:
        return False
    gone_h = facts.pace.evaporated_h
    gone = Figure(gone_h, gone_h, gone_h, COMMON_PRACTICE)
    softs = (c.when.earliest for c in layer.checks if c.found in _SOFT.values())
    return any((label_hours(layer, gone, moment) or 0.0) >= gone_h for moment in softs)


def _kept_soft(species: str | None, layer: Layer, facts: Facts) -> bool:
    """Tell whether a wood is published to keep a first coat soft or loose: it wants a barrier."""
    wood = facts.species_named(species) if species else None
    rows = rules_for_wood(facts.wood_rules, wood, layer.of) if wood else ()
    return any(row.answer in _SPOILS for row in rows)


def _does_not_suit(under: Layer, over: Layer, facts: Facts) -> bool:
    """Tell whether a film is published not to take the one over it."""
    rules = facts.overcoats_between(under.of, over.of)
    rule = rule_for(rules, under.of, over.of, over.coat.method)
    return rule is not None and rule.answer in _SPOILS


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
