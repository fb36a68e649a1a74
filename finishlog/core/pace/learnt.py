"""Learn from the checks of its films how a product dries here."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence

from finishlog.core.clock.pace import PaceKey, PaceLearnt, Paces
from finishlog.core.clock.pace_posterior import posterior
from finishlog.core.pace.seen import Seen
from finishlog.core.published.drying import PaceFigures

# Our own rule: so many coats teach of one method and can alone; below that all coats together do.
ENOUGH_ALONE = 2


def learn(seen: Iterable[Seen], figures: PaceFigures) -> Paces:
    """Learn the pace of every product from what its coats tell."""
    groups: dict[PaceKey, list[Seen]] = defaultdict(list)
    for each in seen:
        groups[each.key].append(each)
        groups[each.key.however()].append(each)
    return Paces(
        {
            key: _learnt(key, of, figures)
            for key, of in groups.items()
            if key.any_way or ENOUGH_ALONE <= len(of) < len(groups[key.however()])
        }
    )


def _learnt(key: PaceKey, seen: Iterable[Seen], figures: PaceFigures) -> PaceLearnt:
    found = sorted(seen, key=lambda each: (*each.coat.when.order, each.coat.id))
    told = posterior([each.bracket for each in found], figures)
    acts = tuple(dict.fromkeys(each.coat.act for each in found))
    return PaceLearnt(
        key,
        told.median,
        told.low,
        told.high,
        len(found),
        acts,
        figures.carried_factor,
        figures.own_factor,
        _damp(found, told.median, figures),
        found[-1].took,
    )


def _damp(seen: Sequence[Seen], median: float, figures: PaceFigures) -> float:
    """Return the damp (% RH) that slow coats dried in, on average; 0: not slow, or not in damp."""
    read = [each.damp_pct for each in seen if each.damp_pct > 0]
    mean = sum(read) / len(read) if read else 0.0
    return mean if median > 1 and mean >= figures.damp_pct else 0.0
