"""What to take on in the time that is left: the most urgent jobs that fit, product by product."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta

from msgspec import Struct, field
from msgspec.structs import replace

from finishlog.core.finish.classes import FinishClass, Method
from finishlog.core.log.words import Operation
from finishlog.core.plan.jobs import Job, closes_first, in_batches, minutes_at, scuffing, some_of
from finishlog.core.plan.urgency import NEVER, Rank, Urgency
from finishlog.core.published.facts import Facts
from finishlog.core.shop.things import Shop


class Hands(Struct, frozen=True):
    """How long things take in this shop, in minutes."""

    shop: Shop
    facts: Facts

    def product_class(self, product: int | None) -> FinishClass | None:
        """Return the class of a product; None when there is none."""
        known = self.shop.products.get(product) if product is not None else None
        return self.facts.finish_class(known.class_key) if known else None

    def method(self, product: int | None) -> Method | None:
        """Return how a product is usually put on."""
        of = self.product_class(product)
        return of.methods[0] if of else None

    def at(self, job: Job) -> float:
        """Return the minutes at the pieces, wiping before and after a coat included."""
        figures = self.facts.hands_on
        minutes = minutes_at(job, figures, self.method(job.step.product))
        if job.wiped_first:
            minutes += minutes_at(_by_hand(job, Operation.SOLVENT_WIPE), figures, None)
        return minutes + self.wipe_off(job)

    def wipe_off(self, job: Job) -> float:
        """Return the minutes to take the surplus off again; none where the class leaves none."""
        of = self.product_class(job.step.product)
        if of is None or of.wipe_off_h is None:
            return 0.0
        return minutes_at(_by_hand(job, Operation.WIPE), self.facts.hands_on, None)

    def solvent_wipe(self, job: Job) -> float:
        """Return the minutes to wipe the wood with solvent."""
        return minutes_at(_by_hand(job, Operation.SOLVENT_WIPE), self.facts.hands_on, None)

    def scuff(self, job: Job) -> float:
        """Return the minutes of the scuffing that a coat asks for; none where it does not."""
        if not job.verdict.scuff_first or job.operation is not Operation.COAT:
            return 0.0
        return minutes_at(scuffing(job), self.facts.hands_on, None)

    def set_up(self, product: int | None) -> float:
        """Return the minutes before the first coat of a product."""
        method = self.method(product)
        return self.facts.hands_on.methods[method].set_up_min.high if method else 0.0

    def clean_up(self, product: int | None) -> float:
        """Return the minutes after the last coat of a product."""
        method = self.method(product)
        return self.facts.hands_on.methods[method].clean_up_min.high if method else 0.0

    def around(self, job: Job) -> float:
        """Return set-up and clean-up of a job done by itself."""
        return self.set_up(job.step.product) + self.clean_up(job.step.product)

    def dust(self) -> float:
        """Return the minutes from dusty work to a coat: vacuum, then the dust settles."""
        return self.facts.hands_on.vacuum_min.high + self.facts.hands_on.settle_min.high


def _by_hand(job: Job, operation: Operation) -> Job:
    return replace(job, step=replace(job.step, operation=operation, product=None))


def that_fit(jobs: Iterable[Job], longest_min: float, hands: Hands) -> tuple[list[Job], list[Job]]:
    """Split what is longer than the longest opening into batches; also say what never fits."""
    fit: list[Job] = []
    never: list[Job] = []
    for job in jobs:
        pieces = len(job.glue_ups) or len({s.piece.id for s in job.states})
        each = (hands.at(job) + hands.scuff(job)) / pieces
        room = longest_min - hands.around(job)
        if each > room:
            never.append(job)
        else:
            fit.extend(in_batches(job, int(room // each) if each else pieces))
    return fit, never


def choose(
    jobs: Sequence[Job],
    left_min: float,
    wet: int | None,
    hands: Hands,
    urgency: Urgency,
    *,
    dirty: bool = False,
) -> list[Job]:
    """Take the most urgent jobs as long as they fit into so many minutes.

    `wet` is the product whose brush is wet; `dirty`: dust lies about already. A piece is coated on
    one face at a time.
    """
    evening = _Evening(left_min, hands, {None, wet}, dusty=dirty)
    for job in sorted(jobs, key=urgency.rank):
        evening.take(job)
    return evening.taken


class _Evening(Struct):
    """What was taken on so far, and the minutes left."""

    left_min: float
    hands: Hands
    products: set[int | None]
    taken: list[Job] = field(default_factory=list)
    coated: set[int] = field(default_factory=set)
    dusty: bool = False
    coats: bool = False

    def take(self, job: Job) -> None:
        """Take a job on if it fits; of glue-ups as many as do."""
        is_coat = job.operation is Operation.COAT
        pieces = {s.member_piece.id for s in job.states} if is_coat else set()
        if pieces & self.coated:
            return
        around = self._around(job)
        if job.glue_ups:
            each = self.hands.at(job) / len(job.glue_ups)
            fits = int((self.left_min - around) // each) if each else len(job.glue_ups)
            job = some_of(job, fits)
        cost = around + self.hands.at(job) + self.hands.scuff(job)
        if cost > self.left_min or not job.states:
            return
        self.taken.append(job)
        self.left_min -= cost
        self.coated |= pieces
        self.products.add(job.step.product)
        self._keep_time_for(job.then)
        self.dusty |= self._makes_dust(job)
        self.coats |= is_coat

    def _keep_time_for(self, coat: Job | None) -> None:
        """Keep the minutes for the coat that dusty work makes room for, when they are there."""
        if coat is None:
            return
        cost = self._around(coat) + self.hands.at(coat)
        if cost <= self.left_min:
            self.left_min -= cost
            self.coats = True
            self.products.add(coat.step.product)

    def _around(self, job: Job) -> float:
        """Return set-up and clean-up, once a product, and the dust's time, once an evening."""
        cost = 0.0 if job.step.product in self.products else self.hands.around(job)
        coats = self.coats or job.operation is Operation.COAT
        both = coats and (self.dusty or self._makes_dust(job))
        return cost + (self.hands.dust() if both and not (self.coats and self.dusty) else 0.0)

    def _makes_dust(self, job: Job) -> bool:
        return job.is_dusty or self.hands.scuff(job) > 0


def in_order(coats: Iterable[Job], wet: int | None, urgency: Urgency) -> list[Job]:
    """Put coats in order: the wet brush first, then product by product, hidden faces first.

    Of those the one whose window closes first: all of them are coated tonight.
    """
    jobs = list(coats)
    first: dict[int | None, Rank] = {}
    for job in jobs:
        rank = urgency.rank(job)
        first[job.step.product] = min(first.get(job.step.product, rank), rank)

    def place(job: Job) -> tuple[bool, Rank, bool, datetime, Rank]:
        product, rank = job.step.product, urgency.rank(job)
        return product != wet, first[product], job.is_show, closes_first(job) or NEVER, rank

    return sorted(jobs, key=place)


def minutes(count: float) -> timedelta:
    """Return minutes as a length of time."""
    return timedelta(minutes=count)


def whole_minute(moment: datetime) -> datetime:
    """Return the first whole minute at or after a moment."""
    down = moment.replace(second=0, microsecond=0)
    return down if down == moment else down + timedelta(minutes=1)
