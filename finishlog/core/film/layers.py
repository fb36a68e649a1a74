"""A layer: what a coat left, what was done to it, when it reaches a stage."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime, timedelta
from enum import StrEnum

from msgspec import Struct, field
from msgspec.structs import force_setattr, replace

from finishlog.core.air.met import AirMet
from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.span import AirSpan
from finishlog.core.clock.counting import Clock, Counting, outside
from finishlog.core.clock.pace import PaceLearnt
from finishlog.core.clock.reach import Reached, gained, least_printed, reach
from finishlog.core.film import checks as film_checks
from finishlog.core.film.attempts import ABRADING
from finishlog.core.finish.classes import YOUR_CAN, Figure, FinishClass, Mechanism, WindowKind
from finishlog.core.finish.rate_law import RateLaw, dries_in, slower_by
from finishlog.core.finish.stage_time import StageTime, later
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Check, Coat, PieceReading, Stripped, Work
from finishlog.core.log.words import Operation
from finishlog.core.measure.as_written import WRITTEN_TO
from finishlog.core.mixing.came_from import CameFrom
from finishlog.core.published.facts import Facts
from finishlog.core.published.species import WoodKind

# Our own rules: a hand on the wood, or a thermometer on it, tells of the next hours only; and the
# "several hours" that a part carried in from the cold is left to warm up.
SURFACE_HOLDS, WARMS_UP = timedelta(hours=2), timedelta(hours=6)
# Our own rule: what was flooded on and left to stand is at least so many times as thick as usual.
_FLOODED = 2.0

# Our own rule, where sources say "longer" and no figure: a film is packed and stacked half as long
# again over a glaze or a filler, or where the air was damper than this (% RH) as it hardened.
_PACKS_LONGER, _DAMP_PCT = 1.5, 65.0
_PACKED = frozenset({Stage.STACK, Stage.PACK})

ABRADES = frozenset({Operation.SCUFF, Operation.DENIB, Operation.SAND})
# Steel wool scratches a film as a pad does; apart, because the iron that it leaves is its own.
SCRATCHES = ABRADES | {Operation.STEEL_WOOL}
WIPES = frozenset({Operation.WIPE, Operation.SOLVENT_WIPE})


class PacksLonger(StrEnum):
    """What makes a film bear packing and stacking later than by its figure alone."""

    FILLED = "a glaze or filler lies below"
    DAMP = "damp air"


class _Reached(dict[Stage, StageTime | None]):
    """When one layer reaches its stages, as far as it was asked: no part of what the layer is."""

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Reached)

    def __hash__(self) -> int:  # type: ignore[override]
        return 0


class Layer(Struct, frozen=True):
    """One coat on one zone."""

    coat: Coat
    of: FinishClass
    # The air since it was surely on, and since it may have been on.
    air: AirMet
    window_air: AirMet
    law: Callable[[Figure], RateLaw]
    abraded: tuple[Work, ...] = ()
    # Its surplus wiped off, with a cloth or with its solvent, in the order of the work.
    wipes: tuple[Work, ...] = ()
    washed: tuple[Work, ...] = ()
    checks: tuple[Check, ...] = ()
    # Through this film, also through later coats.
    scratches: tuple[Check, ...] = ()
    # Of the can that it came from, on a scrap of the same wood.
    samples: tuple[Check, ...] = ()
    # What took the coats above it off again; the air since a mending dissolved it once more.
    laid_bare: Stripped | None = None
    air_again: AirMet | None = None
    # The air since it was last rinsed out of the wood.
    air_rinsed: AirMet | None = None
    # The temperature of its surface, as it was measured: shortly before the coat, and since.
    felt: tuple[PieceReading, ...] = ()
    # The air that the wood met in the hours before it.
    before: AirMet | None = None
    # What checks taught of how it dries here; None: nothing yet.
    pace: PaceLearnt | None = None
    # Colour for a bare spot: the film around it has none on it.
    on_a_spot: bool = False
    # What a first coat lies on.
    wood: WoodKind = WoodKind.OTHER
    # A glaze or a filler lies below it.
    over_filler: bool = False
    # The can or mix as it was then; None: nothing needs to be known of it.
    came_from: CameFrom | None = None
    _reached: _Reached = field(default_factory=_Reached)

    def __post_init__(self) -> None:
        """Forget what a layer reached of which this one is an altered copy."""
        force_setattr(self, "_reached", _Reached())

    @property
    def put_on(self) -> datetime:
        """The latest moment at which the coat was finished: waits count from here."""
        return self.coat.when.latest

    @property
    def first_on(self) -> datetime:
        """The earliest moment at which the coat went on: windows count from here."""
        return self.coat.when.earliest

    @property
    def drying_air(self) -> AirMet:
        """The air that its waits count: since the coat, or since it was dissolved again."""
        return self.air_again or self.air

    @property
    def dries_since(self) -> datetime:
        """The moment from which its waits count."""
        return self.drying_air.start

    @property
    def was_abraded_off(self) -> Stripped | None:
        """The sanding or scraping that took the coats above it off and left it scuffed."""
        off = self.laid_bare
        return off if off is not None and off.operation in ABRADING else None

    def waits(self, figure: Figure, stage: Stage | None = None) -> StageTime:
        """Return when a figure's hours, toward a stage, are over on the wait's clock."""
        early, late = self.needs_h(figure, stage)
        low = self._over(figure.low_end if figure.colder else figure, early)
        high = self._over(figure, late) if figure.is_span else low
        hours = high.hours
        known = (hours.unknown == 0.0 or not self.of.dries) and high.moment is not None
        doubted = () if known else self._doubted(figure)
        return StageTime(
            low.moment,
            high.moment,
            known=known,
            air_read=hours.unread == 0.0 or not self.of.dries,
            hours=hours,
            figure=figure,
            coat=self.coat.id,
            stage=stage,
            sure=self._over(figure, late, doubted).moment if doubted else None,
            slowest=doubted[0] if doubted else None,
        )

    def _doubted(self, figure: Figure) -> tuple[Air, ...]:
        """Return what air that nobody measured may have been, the slowest first; empty: anything.

        The worst that its class may go on in, and the worst that its rooms were ever read at: our
        own rule. A film that was never measured is not in doubt for ever.
        """
        least, most = self.of.limits.min_c, self.of.limits.max_rh_pct
        if least is None:
            return ()
        worst = Air(least.value, most.value if most else figure.at.humidity_pct)
        read = (air for leg in self.drying_air.legs for air in leg.room.extremes)
        k = self.law(figure).k()
        return tuple(sorted({worst, *read}, key=lambda air: k(air.temperature_c, air.humidity_pct)))

    def label_waits(self, figure: Figure) -> StageTime:
        """Return when a figure's hours are over in its air by the label alone.

        Whether a film is late is asked of the label: a pace that its own checks taught would
        excuse every slow film.
        """
        return self.waits(figure) if self.pace is None else replace(self, pace=None).waits(figure)

    def _over(self, figure: Figure, hours: float, doubted: tuple[Air, ...] = ()) -> Reached:
        """Return when so many hours are over at its own pace.

        Outside its limits a film stands still until tack-free; after that the air's pace rules.
        `doubted`: what air that nobody measured may have been.
        """
        wet, dry = self.countings(figure, doubted)
        soft = self.soft_h
        if hours <= soft:
            return reach(hours, self.drying_air, wet)
        first = reach(soft, self.drying_air, wet)
        if first.moment is None:
            return first
        return reach(hours - soft, self.drying_air, dry, since=first.moment)

    def needs_h(self, figure: Figure, stage: Stage | None) -> tuple[float, float]:
        """Return both ends of a figure at its own pace: no sooner than its last coat here took."""
        took = self.pace.took_h(figure, stage) if self.pace else 0.0
        return max(figure.low_h * self.factor, took), max(figure.high_h * self.factor, took)

    @property
    def factor(self) -> float:
        """What the label's hours are multiplied by for a wait, 1 or more.

        A thick film may be what made it slow: of thickness and pace the greater counts, not both.
        """
        return max(self.thick_film, self.pace.factor_of(self.coat.act) if self.pace else 1.0)

    @property
    def thick_film(self) -> float:
        """What a film thicker than usual multiplies a wait by, 1 or more.

        By the square of its thickness over the class's usual high end, as diffusion through a
        layer goes: an assumption, on the slow side. Neither measured nor flooded on: a normal
        film; so is what was wiped off, and what heats itself as it cures, however thick.
        """
        stands, usual = self.stands_flooded, self.of.wet_film_um
        laid = self.coat.wet_film_um or 0.0
        if usual is None or self.is_wiped_off or self.of.most_at_once_um is not None:
            return 1.0
        return max(laid / usual.high, _FLOODED if stands else 1.0) ** 2

    @property
    def is_wiped_off(self) -> bool:
        """Tell whether it is of a class that is wiped off, and was."""
        return bool(self.wipes) and self.of.wipe_off_h is not None

    @property
    def stands_flooded(self) -> bool:
        """Tell whether it was flooded on and not wiped off again: all of it stands there."""
        flooded = bool(self.coat.flooded)
        return flooded and self.of.wipe_off_h is not None and not self.wipes

    def countings(self, figure: Figure, doubted: tuple[Air, ...] = ()) -> tuple[Counting, Counting]:
        """Return how its wait counts until it is tack-free, and after."""
        law, damp = self.law(figure), self.pace.damp_pct if self.pace else 0.0
        wet = replace(law, damp_from_pct=damp) if damp else law
        return (
            Counting(wet, Clock.WAIT, dries_in(self.of.limits, figure), doubted),
            Counting(law, Clock.WAIT, doubted=doubted),
        )

    @property
    def soft_h(self) -> float:
        """Until when air outside its limits halts the wait, in hours of the label."""
        tack_free = self.coat.figures.stages.get(Stage.TACK_FREE)
        return tack_free.high_h * self.factor if tack_free else 0.0

    def done_h(self, figure: Figure, now: datetime) -> float:
        """Return the equivalent hours that its wait has gained."""
        wet, dry = self.countings(figure)
        soft = self.soft_h
        so_far = gained(self.drying_air, wet, now)
        if so_far < soft:
            return so_far
        first = reach(soft, self.drying_air, wet).moment or now
        return soft + gained(self.drying_air, dry, now) - gained(self.drying_air, dry, first)

    def stage(self, stage: Stage) -> StageTime | None:
        """Return when this layer reaches a stage; None when its class has no figure for it.

        A passed check that proves the stage ends our lengthening, but never goes below the
        label's minimum in real hours.
        """
        if stage not in self._reached:
            self._reached[stage] = self._reaches(stage)
        return self._reached[stage]

    def is_hard_by(self, moment: datetime) -> bool:
        """Tell whether it is promised fully hard by a moment."""
        hard = self.stage(Stage.CURED)
        return hard is not None and hard.high is not None and hard.high <= moment

    def _reaches(self, stage: Stage) -> StageTime | None:
        figure = self.coat.figures.stages.get(stage)
        if figure is None:
            return None
        if self.packs_longer(stage):
            figure = figure.times(_PACKS_LONGER)
        since = [c for c in self.checks if c.when.earliest >= self.dries_since]
        checks = since if self.air_again else self.checks
        floor = least_printed(figure, self.drying_air)
        passed = film_checks.proof(checks, stage, self.of.builds_film)
        if passed is None:
            wait = self._since_coat_and_rinse(figure, stage)
            passed = film_checks.passed_all(checks, stage, wait.low)
            if passed is None or (wait.high is not None and wait.high <= passed.when.latest):
                return wait
        moment = max(passed.when.latest, floor)
        return StageTime(
            *(moment, moment, True, True),
            proved_by=passed.act,
            figure=figure,
            coat=self.coat.id,
            stage=stage,
        )

    def packs_longer(self, stage: Stage) -> frozenset[PacksLonger]:
        """Return why it bears packing or stacking later than its figure says; empty: it does not.

        Damp is counted over the air that was read. What dries by water has it in its hours already.
        """
        figure = self.coat.figures.stages.get(stage)
        if figure is None or stage not in _PACKED or self.of.goes_on_last:
            return frozenset()
        until = self.waits(figure, stage).high if self.of.mechanism is not Mechanism.WATER else None
        damp = until is not None and self.drying_air.mean_pct(until) > _DAMP_PCT
        why = ((PacksLonger.FILLED, self.over_filler), (PacksLonger.DAMP, damp))
        return frozenset(reason for reason, holds in why if holds)

    def _since_coat_and_rinse(self, figure: Figure, stage: Stage) -> StageTime:
        """Return when a stage is reached: by the coat, and by the rinse that wet the wood again."""
        wait, after = self.waits(figure, stage), self._after_rinse(figure)
        return later(wait, self.as_counted(after).waits(after, stage)) if after else wait

    def _after_rinse(self, figure: Figure) -> Figure | None:
        """Return the hours of a figure from the last rinse on: no more than from the coat itself.

        The person's own label counts in full.
        """
        after = self.of.after_rinse if self.air_rinsed else None
        if after is None or figure.source == YOUR_CAN:
            return after and figure
        return replace(
            after,
            low_h=min(after.low_h, figure.low_h),
            typical_h=min(after.typical_h, figure.typical_h),
            high_h=min(after.high_h, figure.high_h),
        )

    def as_counted(self, figure: Figure) -> Layer:
        """Return it as the hours of a figure count: those after a rinse since the rinse."""
        rinsed = map(self._after_rinse, self.coat.figures.stages.values())
        if self.air_rinsed is None or figure not in rinsed:
            return self
        return replace(self, air_again=self.air_rinsed, air_rinsed=None)

    def stands_proved(self) -> bool:
        """Tell whether a check since it went on found the film ready for another coat."""
        recoat = self.stage(Stage.RECOAT)
        return recoat is not None and recoat.proved_by is not None

    def closes(self, now: datetime | None = None) -> datetime | None:
        """Return when the recoat window closes, on the window's clock; None: it does not.

        `now`: as of which moment; a window that has opened again closes later, or never.
        """
        window = self.coat.figures.window
        if window.kind is not WindowKind.CLOSES or window.closes is None:
            return None
        if now is not None and window.again is not None and self.is_open_again(now):
            again = window.again.closes
            return self._closes(again) if again is not None else None
        return self._closes(window.closes)

    def _closes(self, figure: Figure) -> datetime | None:
        counting = Counting(self.law(figure), Clock.WINDOW)
        return reach(figure.low_h, self.window_air, counting).moment

    def opens_again(self) -> StageTime | None:
        """Return when the window opens once more after its gap; None: it has none."""
        again = self.coat.figures.window.again
        return self.waits(again.opens, Stage.RECOAT) if again is not None else None

    def is_open_again(self, now: datetime) -> bool:
        """Tell whether the gap of its window is surely over."""
        opens = self.opens_again()
        return opens is not None and opens.high is not None and opens.high <= now

    def wipe_off_by(self) -> datetime | None:
        """Return when surplus must be off, if the class has it wiped and it was not."""
        if self.of.wipe_off_h is None or self.wipes:
            return None
        return self.first_on + timedelta(minutes=round(60 * self.of.wipe_off_h.high_h))

    def wet_outside_limits(self) -> AirSpan | None:
        """Return the first air outside its limits that a reading shows while it was wet, if any."""
        figure = self.coat.figures.stages.get(Stage.TACK_FREE)
        dry = self.waits(figure).high if figure else None
        return next((s for s in self.drying_air.until(dry) if self._is_outside(s)), None)

    def _is_outside(self, span: AirSpan) -> bool:
        read = span.nearest if span.measured else ()
        limits = self.of.limits
        return any(outside(limits, air.temperature_c, air.humidity_pct, WRITTEN_TO) for air in read)


def trapped_until(under: Layer, over: Layer) -> StageTime | None:
    """Return when a layer could have taken a coat, if the next one went on sooner than that.

    What was covered wet goes on drying below: the film is no further than it is. None when it
    was ready.
    """
    recoat = under.stage(Stage.RECOAT)
    if recoat is None or (recoat.high is not None and recoat.high <= over.first_on):
        return None
    return recoat


def laws_of(of: FinishClass, facts: Facts) -> Callable[[Figure], RateLaw]:
    """Return the rate law of a class, at the reference air of each figure."""
    carrier = facts.carrier(of.carrier)
    factor = facts.factor_per_10c
    return lambda hours: RateLaw(of.mechanism, hours.at, factor, carrier, slower_by(hours))
