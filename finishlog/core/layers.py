"""The layers on one zone: what each coat left, what was done to it, when it reaches a stage."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import partial
from itertools import pairwise

from finishlog.core import checks as film_checks
from finishlog.core.attempts import ABRADING, melted_in, what_stays
from finishlog.core.book import Book
from finishlog.core.clock import RateLaw, reach, wait_rate, window_rate
from finishlog.core.faults import rewetted
from finishlog.core.finishes import Figure, FinishClass, Limit, Limits, WindowKind
from finishlog.core.records import AnyEntry, Check, Coat, Found, Operation, Stripped, Test, Work
from finishlog.core.room_air import AirSpan
from finishlog.core.stages import Stage

ABRADES = frozenset({Operation.SCUFF, Operation.DENIB, Operation.SAND})


@dataclass(frozen=True, slots=True)
class StageTime:
    """From when a stage may be reached (`low`) and by when it is (`high`).

    None: not in this air. `measured`: readings cover all the air on the way to `high`; `air_read`:
    there are readings near enough to reckon by. `proved_by`: the check that settled it.
    """

    low: datetime | None
    high: datetime | None
    measured: bool
    air_read: bool
    proved_by: Check | None = None


def later(one: StageTime, other: StageTime) -> StageTime:
    """Join two waits that must both be over."""
    low = None if one.low is None or other.low is None else max(one.low, other.low)
    high = None if one.high is None or other.high is None else max(one.high, other.high)
    governs = other if high == other.high else one
    return StageTime(
        low,
        high,
        one.measured and other.measured,
        one.air_read and other.air_read,
        governs.proved_by,
    )


@dataclass(frozen=True, slots=True)
class Layer:
    """One coat on one zone."""

    coat: Coat
    of: FinishClass
    spans: tuple[AirSpan, ...]
    window_spans: tuple[AirSpan, ...]
    law: Callable[[Figure], RateLaw]
    abraded: tuple[Work, ...] = ()
    wiped: bool = False
    checks: tuple[Check, ...] = ()
    # Through this film, also through later coats.
    scratches: tuple[Check, ...] = ()
    # What took the coats above it off again; the air since a mending dissolved it once more.
    laid_bare: Stripped | None = None
    spans_again: tuple[AirSpan, ...] = ()

    @property
    def put_on(self) -> datetime:
        """The latest moment at which the coat was finished: waits count from here."""
        return self.coat.when.latest

    @property
    def first_on(self) -> datetime:
        """The earliest moment at which the coat went on: windows count from here."""
        return self.coat.when.earliest

    @property
    def drying_spans(self) -> tuple[AirSpan, ...]:
        """The air that its waits count: since the coat, or since it was dissolved again."""
        return self.spans_again or self.spans

    @property
    def dries_since(self) -> datetime:
        """The moment from which its waits count."""
        return self.drying_spans[0].start if self.spans_again else self.put_on

    @property
    def was_abraded_off(self) -> Stripped | None:
        """The sanding or scraping that took the coats above it off and left it scuffed."""
        off = self.laid_bare
        return off if off is not None and off.operation in ABRADING else None

    def stops(self, span: AirSpan, done_h: float) -> bool:
        """Tell whether out-of-limits air halts the wait: only until the film is tack-free."""
        tack_free = self.coat.figures.stages.get(Stage.TACK_FREE)
        if tack_free is None or done_h >= tack_free.high_h:
            return False
        return bool(span.airs) and outside(self.of.limits, span)

    def waits(self, figure: Figure) -> StageTime:
        """Return when a figure's hours are over on the wait's clock."""
        law = self.law(figure)

        pace = partial(wait_rate, law)
        low = reach(figure.low_h, self.drying_spans, pace, self.stops)
        high = reach(figure.high_h, self.drying_spans, pace, self.stops)
        return StageTime(
            low.moment,
            high.moment,
            measured=high.unmeasured_h == 0.0,
            air_read=high.unread_h == 0.0,
        )

    def stage(self, stage: Stage) -> StageTime | None:
        """Return when this layer reaches a stage; None when its class has no figure for it.

        A passed check that proves the stage ends our lengthening, but never goes below the
        label's minimum in real hours.
        """
        figure = self.coat.figures.stages.get(stage)
        if figure is None:
            return None
        since = [c for c in self.checks if c.when.earliest >= self.dries_since]
        checks = since if self.spans_again else self.checks
        passed = film_checks.proof(checks, stage, self.of.builds_film)
        if passed is None:
            return self.waits(figure)
        floor = self.dries_since + timedelta(hours=figure.low_h)
        moment = max(passed.when.latest, floor)
        return StageTime(moment, moment, measured=True, air_read=True, proved_by=passed)

    def stands_proved(self) -> bool:
        """Tell whether a check since it went on found the film ready for another coat."""
        recoat = self.stage(Stage.RECOAT)
        return recoat is not None and recoat.proved_by is not None

    def closes(self) -> datetime | None:
        """Return when the recoat window closes, on the window's clock; None: it does not."""
        window = self.coat.figures.window
        if window.kind is not WindowKind.CLOSES or window.closes is None:
            return None
        law = self.law(window.closes)
        pace = partial(window_rate, law)
        return reach(window.closes.low_h, self.window_spans, pace).moment

    def wipe_off_by(self) -> datetime | None:
        """Return when surplus must be off, if the class has it wiped and it was not."""
        if self.of.wipe_off_h is None or self.wiped:
            return None
        return self.first_on + timedelta(minutes=round(60 * self.of.wipe_off_h.high_h))

    def wet_outside_limits(self) -> AirSpan | None:
        """Return the first air outside its limits that a reading shows while it was wet, if any."""
        figure = self.coat.figures.stages.get(Stage.TACK_FREE)
        dry = self.waits(figure).high if figure else None
        return next(
            (
                s
                for s in self.drying_spans
                if s.measured and s.airs and outside(self.of.limits, s)
                if dry is None or s.start < dry
            ),
            None,
        )

    def _too_cold(self) -> list[AirSpan]:
        """Return the stretches of its first hours that a reading shows as damaging."""
        limits = self.of.limits
        if limits.warm_first_h is None or limits.min_c is None:
            return []
        until, least = self._young_until(limits.warm_first_h), limits.min_c.value
        young = [s for s in self.spans if s.measured and s.start < until]
        return [s for s in young if s.airs and s.airs[0].temperature_c < least]

    def perhaps_too_cold(self) -> float | None:
        """Return the cold (°C) that its first hours may have met, though no reading shows it.

        None when there was none, or a scratch since then found that the film holds.
        """
        limits = self.of.limits
        if limits.warm_first_h is None or limits.min_c is None:
            return None
        until = self._young_until(limits.warm_first_h)
        met = [a.temperature_c for s in self.spans if s.start < until for a in s.airs[1:]]
        held = bool(self.scratches) and self.scratches[-1].found is Found.HOLDS
        coldest = min(met, default=limits.min_c.value)
        return coldest if coldest < limits.min_c.value and not held else None

    def _young_until(self, warm_first_h: Limit) -> datetime:
        return self.put_on + timedelta(hours=warm_first_h.value)

    def suspect_because(self) -> AirSpan | None:
        """Return the coldest air of its first hours that a reading shows as damaging, if any."""
        return min(self._too_cold(), key=lambda s: s.airs[0].temperature_c, default=None)

    def is_suspect(self) -> bool:
        """Tell whether the film met damaging air and no scratch test has cleared it since.

        A scratch counts once the cold is over, also one through later coats; the last one decides.
        """
        cold, warm_first = self._too_cold(), self.of.limits.warm_first_h
        if not cold or warm_first is None:
            return False
        until = self._young_until(warm_first)
        over = min(cold[-1].end or until, until)
        since = [c for c in self.scratches if c.when.earliest >= over]
        return not since or since[-1].found is not Found.HOLDS


def trapped_until(under: Layer, over: Layer) -> StageTime | None:
    """Return when a layer could have taken a coat, if the next one went on sooner than that.

    What was covered wet goes on drying below: the film is no further than it is. None when it
    was ready.
    """
    recoat = under.stage(Stage.RECOAT)
    if recoat is None or (recoat.high is not None and recoat.high <= over.first_on):
        return None
    return recoat


def outside(limits: Limits, span: AirSpan) -> bool:
    """Tell whether the nearest reading of a span lies outside a class's limits."""
    air = span.airs[0]
    return bool(
        (limits.min_c and air.temperature_c < limits.min_c.value)
        or (limits.max_c and air.temperature_c > limits.max_c.value)
        or (limits.max_rh_pct and air.humidity_pct > limits.max_rh_pct.value)
    )


def laws_of(of: FinishClass, book: Book) -> Callable[[Figure], RateLaw]:
    """Return the rate law of a class, at the reference air of each figure."""
    carrier = book.carrier(of.carrier)
    factor = book.drying.factor_per_10c

    def law(figure: Figure) -> RateLaw:
        return RateLaw(of.mechanism, figure.at, factor, carrier)

    return law


def build(
    entries: Sequence[AnyEntry],
    book: Book,
    air: Callable[[datetime], tuple[AirSpan, ...]],
) -> tuple[Layer, ...]:
    """Stack the layers of one zone from what reached it, oldest first; what was taken off is not.

    `entries` in the order of the work; `air` gives the air that the piece met from a moment on.
    """
    story = what_stays(entries)
    at = [n for n, entry in enumerate(story) if isinstance(entry, Coat)]
    return tuple(
        _layer(coat, story[n + 1 : over], story[n + 1 :], entries, book, air)
        for n, over in pairwise([*at, len(story)])
        if isinstance(coat := story[n], Coat)
    )


def _layer(
    coat: Coat,
    since: Sequence[AnyEntry],
    after: Sequence[AnyEntry],
    told: Sequence[AnyEntry],
    book: Book,
    air: Callable[[datetime], tuple[AirSpan, ...]],
) -> Layer:
    """Build one layer. `since`: until the next coat; `after`: to the end; `told`: all there was."""
    of = book.finish_class(coat.figures.class_key)
    again = _dissolved(coat, since, told, book)
    return Layer(
        coat=coat,
        of=of,
        spans=air(coat.when.latest),
        window_spans=air(coat.when.earliest),
        law=laws_of(of, book),
        abraded=tuple(w for w in since if isinstance(w, Work) and w.operation in ABRADES),
        wiped=any(isinstance(w, Work) and w.operation is Operation.WIPE for w in since),
        checks=tuple(c for c in since if isinstance(c, Check)),
        scratches=tuple(c for c in after if isinstance(c, Check) and c.test is Test.SCRATCH),
        laid_bare=next((e for e in reversed(since) if isinstance(e, Stripped)), None),
        spans_again=air(again) if again else (),
    )


def _dissolved(
    coat: Coat, since: Sequence[AnyEntry], told: Sequence[AnyEntry], book: Book
) -> datetime | None:
    """Return when a coat was last made wet again: by a mending mist, by a coat that melted in."""
    moments = [work.when.latest for work in rewetted(since, coat, book)]
    above = melted_in(told, coat)
    if above is not None:
        moments.append(above.when.latest)
    return max(moments, default=None)
