"""Which job comes first: the one whose latest start to meet its due date is soonest."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import UTC, datetime, timedelta

from msgspec import Struct, field

from finishlog.core.film.progress import after_glue_up
from finishlog.core.finish.classes import Figure
from finishlog.core.finish.stages import Stage
from finishlog.core.plan.jobs import Job
from finishlog.core.published.facts import Facts
from finishlog.core.published.glues import Glue
from finishlog.core.shop.things import Part, Product, Shop, Step

NEVER = datetime.max.replace(tzinfo=UTC)
_HOUR = timedelta(hours=1)

# What a job is sorted by; the first that differs decides.
Rank = tuple[bool, bool, datetime, float, datetime, int, int]


class Urgency(Struct):
    """The hours that still have to pass for each part, by its label, and what it is due for."""

    shop: Shop
    facts: Facts
    due: Mapping[int, datetime]
    _tails: dict[tuple[int, Sequence[Step]], float] = field(default_factory=dict)

    def rank(self, job: Job) -> Rank:
        """Sort by what cannot wait, boards, the latest start that meets the due date, the longest.

        Of two alike the one whose recoat window closes first, then in the order of the parts.
        """
        tail = self.tail_h(job)
        due = self.due.get(job.part.project)
        latest = due - tail * _HOUR if due else NEVER
        closes = job.verdict.closes or NEVER
        return (
            not job.cannot_wait,
            not job.part.is_board,
            latest,
            -tail,
            closes,
            job.part.id,
            job.turn,
        )

    def tail_h(self, job: Job) -> float:
        """Return the hours of drying that are still to come, at the label's air."""
        left: tuple[Step, ...] = ()
        if not job.glue_ups and job.states:
            progress = job.states[0].progress
            left = progress.steps[progress.done :]
        else:
            left = after_glue_up(job.part.steps)
        key = (job.part.id, left)
        if key not in self._tails:
            self._tails[key] = self._drying_h(left) + self._assembly_h(job.part)
        return self._tails[key]

    def _drying_h(self, steps: Iterable[Step]) -> float:
        known = self.shop.products
        coats = [known[s.product] for s in steps if s.product is not None and s.product in known]
        waits = [self._hours(p, Stage.RECOAT) for p in coats[:-1]]
        return sum(waits) + (self._hours(coats[-1], Stage.PACK) if coats else 0.0)

    def _assembly_h(self, part: Part) -> float:
        """Return what comes after a part became a member: glue, and the assembly's own steps."""
        into = [p for p in self.shop.parts if any(need.part == part.id for need in p.needs)]
        glue = self.facts.glue_named("any")
        return max(
            (
                self._drying_h(after_glue_up(p.steps)) + _set_h(glue) + self._assembly_h(p)
                for p in into
            ),
            default=0.0,
        )

    def _hours(self, product: Product, stage: Stage) -> float:
        figures: Mapping[Stage, Figure] = self.facts.finish_class(product.class_key).stages
        figure = product.label.get(stage) or figures.get(stage)
        return figure.high_h if figure else 0.0


def _set_h(glue: Glue | None) -> float:
    return glue.before_finish.high_h if glue else 0.0
