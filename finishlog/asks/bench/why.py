"""Why is this the answer: what is on it, label, air, clock, what binds, what is unknown."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime

from msgspec import Struct

from finishlog.asks.bench.starts import Begin, Start, begin
from finishlog.asks.look.earlier_coats import Beside, beside, is_slow
from finishlog.asks.look.look import Look, look
from finishlog.asks.look.meant import Wanted
from finishlog.asks.look.pace import top_pace
from finishlog.asks.look.standing import Standing, glue_up_standings, standing_of
from finishlog.context import Context
from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.span import AirSpan
from finishlog.core.film.build import FilmBuild, film_build
from finishlog.core.film.drying_course import CourseHour, drying_course
from finishlog.core.film.guidance import guidance
from finishlog.core.film.layers import Layer
from finishlog.core.film.stirred import was_stirred
from finishlog.core.findings import Answer, Finding, finding
from finishlog.core.finish.classes import COMMON_PRACTICE, FROM_MEMORY, Colder, Figure, Mechanism
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Check
from finishlog.core.measure.as_written import says_the_same
from finishlog.core.measure.quantities import apart
from finishlog.core.published.facts import Facts
from finishlog.core.rules.air.coating_air import measured_c
from finishlog.core.verdict.another_room import sooner_elsewhere, sooner_warmed
from finishlog.core.verdict.due import asked_of
from finishlog.core.zone.grouping import Group, groups
from finishlog.core.zone.state import ZoneState

# As many as fit beside their words in 80 columns.
_POINTS = 31

# By tier.
_KINDS = {
    1: "government, standard or university",
    2: "book of the period",
    3: "trade press or page",
}

ESTIMATES = {
    Mechanism.OXIDATION: f"a factor of 2 per {apart(10)}, an assumption for oil varnish",
    Mechanism.CROSS_LINKING: f"a factor of 2 per {apart(10)}",
    Mechanism.WATER: "by the air's thirst for water, an estimate",
    Mechanism.ALCOHOL: "by the alcohol's vapour pressure, an estimate",
    Mechanism.SOLVENT: "by the solvent's vapour pressure, an estimate",
    Mechanism.SOAKING: "it soaks in by the hour and never dries",
}


class OnIt(Struct, frozen=True):
    """One layer: what, when, and the entry behind it."""

    product: str
    put_on: datetime
    act: int
    # Of its can; None: nothing tells.
    stirred: bool | None


class LabelLine(Struct, frozen=True):
    """The figure that the wait counts: hours at its air, with its source in words."""

    stage: Stage
    low_h: float
    high_h: float
    at: Air
    source: str
    product: str
    # The same in colder air, where the can gives it.
    colder: tuple[Colder, ...] = ()


class Option(Struct, frozen=True):
    """What one of several sources asks for, and when that is over here; UTC, None: no such time.

    `said_by`: what kind of source it is. `binds`: the most cautious, which counts. `held`: its
    hours are over sooner than the film's own label allows, whose moment is given.
    """

    low_h: float
    high_h: float
    source: str
    said_by: str
    note: str
    low: datetime | None
    high: datetime | None
    binds: bool
    held: bool


class ClockLine(Struct, frozen=True):
    """Equivalent hours done of those needed, the present pace, and how it is reckoned.

    `measured_h`, `held_h` (as last read), `usual_h`, `unknown_h`: the real hours on the way by how
    their air is known.
    `longer`: what the label's hours are multiplied by, 1 or more; `thick_film`: the part of it
    that a film thicker than usual has, measured so or `flooded` on and not wiped off.
    """

    done_h: float
    needed_h: float
    pace: float | None
    by: str
    measured_h: float
    held_h: float
    usual_h: float
    unknown_h: float
    longer: float
    thick_film: float
    flooded: bool
    # The can gives hours for colder air too, down to `at_c`; `below_c`: how far the air goes below.
    at_c: float | None = None
    below_c: float | None = None
    course: tuple[CourseHour, ...] = ()


class CheckLine(Struct, frozen=True):
    """A check made on the newest film."""

    test: str
    found: str
    place: str
    moment: datetime
    act: int


class Sooner(Struct, frozen=True):
    """A room in which it would be dry sooner, carried there now; its air as last read. UTC.

    No room: this one, kept as warm as `air` and no damper. `caution`: on what condition.
    """

    room: str
    air: Air
    low: datetime | None
    high: datetime
    caution: Finding | None = None


class Why(Struct, frozen=True):
    """Everything behind one group's answer."""

    standing: Standing
    on_it: tuple[OnIt, ...]
    label: LabelLine | None
    # Where sources differ on these hours: what each asks for, the one that counts first.
    options: tuple[Option, ...]
    air: Air | None
    read_at: datetime | None
    clock: ClockLine | None
    checks: tuple[CheckLine, ...]
    unknown: tuple[str, ...]
    # The reading of the air.
    air_act: int | None = None
    sooner: tuple[Sooner, ...] = ()
    # Where and when the coat that this air forbids, or tonight's would spoil, may begin.
    starts: tuple[Start, ...] = ()
    # The shop's products that may go on in this air; None: the due one may.
    instead: tuple[str, ...] | None = None
    # The kinds that are tried in such cold, where none of these may; how warm each wants it, °C.
    tried: tuple[str, ...] = ()
    least: tuple[tuple[str, float], ...] = ()
    # Your own pace with the product on it, in words; empty: no check taught anything yet.
    pace: str = ""
    # The room is expected to go on as it usually does, or as its heater makes it.
    as_usual: bool = False
    # How thick the film is in all, and what more it bears.
    film: FilmBuild | None = None
    # It was found soft: earlier coats of its product, to tell the can from the air.
    beside: Beside | None = None


def why(context: Context, wanted: Wanted) -> tuple[Why, ...]:
    """Answer for every group of what is meant, and for the glue-ups of its parts."""
    with context.reading() as connection:
        seen = look(context, connection)
        zones = wanted.of(seen.bench.zones)
        # A glue face that is bare as it should be has nothing to explain.
        zones = [z for z in zones if not z.is_bare_joint] or zones
        grouped = groups(zones)
        soft = [g.first.top for g in grouped if is_slow(g.first.top)]
        dried = {x.coat.id: beside(connection, x, seen) for x in soft if x is not None}
    explained = [_why(group, seen, dried) for group in grouped]
    glue_ups = [
        Why(line, (), None, (), None, None, None, (), ())
        for line in glue_up_standings(
            (g for g in seen.bench.glue_ups if g.part.id in wanted.ids), seen
        )
    ]
    return (*explained, *glue_ups)


def _why(group: Group, seen: Look, dried: Mapping[int, Beside | None]) -> Why:
    state = group.first
    layer, figure, stage = _what_is_counted(state, seen)
    reading = state.room.measured_at(seen.clock.now)
    where = begin(state, seen)
    return Why(
        standing=standing_of(group, seen),
        on_it=tuple(
            OnIt(
                x.coat.product_name,
                x.put_on,
                x.coat.act,
                was_stirred(x.coat, x.came_from, seen.facts),
            )
            for x in reversed(state.layers)
        ),
        label=_label(layer, figure, stage, seen.facts) if layer and figure else None,
        options=options(layer, figure, stage, seen.facts)
        if layer and figure and state.verdict.wait
        else (),
        air=reading.air if reading else None,
        read_at=reading.at if reading else None,
        clock=_clock(layer, figure, stage, seen.clock.now) if layer and figure else None,
        checks=_checks(group),
        unknown=_unknown(state, seen.clock.now, where),
        pace=top_pace(state, seen.shop),
        as_usual=state.room.is_foretold,
        air_act=reading.act if reading else None,
        sooner=_sooner(state, seen),
        starts=where.starts,
        instead=where.instead,
        tried=where.tried,
        least=where.least,
        beside=dried.get(state.top.coat.id) if state.top else None,
        film=film_build(state.layers, asked_of(state, seen.shop, seen.facts).over, seen.facts),
    )


def _sooner(state: ZoneState, seen: Look) -> tuple[Sooner, ...]:
    """Look for a room in which it would dry sooner, the soonest first."""
    if state.verdict.answer not in {Answer.DRYING, Answer.BLOCKED}:
        return ()
    near, asked = (
        seen.bench.around(seen.facts),
        asked_of(state, seen.shop, seen.facts),
    )
    warmed = sooner_warmed(state, asked, near)
    found = []
    if warmed is not None:
        air = warmed.room.readings[0].air
        found.append(Sooner("", air, warmed.low, warmed.high, finding("kept-warm")))
    for there in sooner_elsewhere(state, asked, seen.bench.rooms.values(), near):
        reading = there.room.read_lately(seen.clock.now)
        if reading is not None and there.room.id is not None:
            name = seen.shop.rooms[there.room.id].name
            found.append(Sooner(name, reading.air, there.low, there.high, there.caution))
    return tuple(found)


def _what_is_counted(state: ZoneState, seen: Look) -> tuple[Layer | None, Figure | None, Stage]:
    """Return the film and the figure that the answer waits for; else the next coat's on the top."""
    wait, top = state.verdict.wait or state.recoat.clock, state.top
    film = seen.bench.film(state, wait.coat) if wait else None
    if wait is not None and film is not None:
        return film, wait.figure, wait.stage or Stage.RECOAT
    return top, top.coat.figures.stages.get(Stage.RECOAT) if top else None, Stage.RECOAT


def _label(top: Layer, figure: Figure, stage: Stage, facts: Facts) -> LabelLine:
    return LabelLine(
        stage=stage,
        low_h=figure.low_h,
        high_h=figure.high_h,
        at=figure.at,
        source=source_words(figure.source, facts),
        product=top.coat.product_name,
        colder=figure.colder,
    )


def options(top: Layer, figure: Figure, stage: Stage, facts: Facts) -> tuple[Option, ...]:
    """Return what each source asks for, where they differ, and when that is over."""
    return tuple(
        Option(
            low_h=each.figure.low_h,
            high_h=each.figure.high_h,
            source=source_words(each.figure.source, facts),
            said_by=said_by(each.figure.source, facts),
            note=each.figure.note,
            low=each.time.low,
            high=each.time.high,
            binds=each.binds,
            held=each.held,
        )
        for each in guidance(top, figure, stage)
    )


def said_by(source: str, facts: Facts) -> str:
    """Tell what kind of source it is; what is not published is its own kind."""
    return _KINDS[facts.sources[source].tier] if source in facts.sources else source


def source_words(source: str, facts: Facts) -> str:
    """Name a source as a person reads it."""
    if source in facts.sources:
        return facts.sources[source].title
    return source if source in {COMMON_PRACTICE, FROM_MEMORY} else source or "no source"


def _clock(of: Layer, figure: Figure, stage: Stage, now: datetime) -> ClockLine:
    top = of.as_counted(figure)
    done, (_, needed) = top.done_h(figure, now), top.needs_h(figure, stage)
    span = top.drying_air.span_at(max(now, top.dries_since))
    time = top.waits(figure, stage)
    counting = top.countings(figure)[0 if done < needed else 1]
    return ClockLine(
        done_h=min(done, needed),
        needed_h=needed,
        pace=counting.pace(span) if span.airs else None,
        by=ESTIMATES[top.of.mechanism],
        measured_h=round(time.hours.measured, 2),
        held_h=round(time.hours.held, 2),
        usual_h=round(time.hours.usual, 2),
        unknown_h=round(time.hours.unknown, 2),
        longer=top.factor,
        thick_film=top.thick_film,
        flooded=top.stands_flooded,
        at_c=figure.at_c[-1] if figure.colder else None,
        below_c=_below(top, figure, time.high),
        course=drying_course(top, figure, time.high, _POINTS) if time.high else (),
    )


def _below(top: Layer, figure: Figure, until: datetime | None) -> float | None:
    """Return how cold (°C) the air gets on the way, where no row of the can speaks of such cold."""
    if not figure.colder:
        return None
    met = (air.temperature_c for span in top.drying_air.until(until) for air in _airs(span))
    coldest, least = min(met, default=None), figure.at_c[-1]
    is_below = coldest is not None and coldest < least and not says_the_same(coldest, least)
    return coldest if is_below else None


def _airs(span: AirSpan) -> tuple[Air, ...]:
    return (*span.airs, *span.ends)


def _checks(group: Group) -> tuple[CheckLine, ...]:
    """List the checks of the newest film, on whichever of the zones they were made."""
    made = {c.id: c for s in group.states if s.top for c in s.top.checks}
    return tuple(_check(c) for c in sorted(made.values(), key=lambda c: c.when.order))


def _check(check: Check) -> CheckLine:
    found = (check.test.value, check.found.value, check.place)
    return CheckLine(*found, check.when.latest, check.act)


def _unknown(state: ZoneState, now: datetime, where: Begin) -> tuple[str, ...]:
    wood = "the wood's own temperature (the colder of the room and last night is taken)"
    unknown = [wood] if measured_c(state.entries, now) is None else []
    if state.room.measured_at(now) is None:
        unknown.append("the room's air: no reading within a day")
    if where.unknown:
        unknown.append(where.unknown)
    if state.top and state.top.wipe_off_by() is not None and not state.top.stands_flooded:
        unknown.append("whether the surplus was wiped off in time: taken as done")
    if state.top and not state.top.checks:
        unknown.append("how this film really is: no check logged since the coat")
    if state.top and state.top.pace is None:
        unknown.append("your own pace with this product: no check found it slow yet")
    if state.top and not state.top.abraded and state.top.coat.scuffed_before is None:
        unknown.append("whether it was scuffed: not said is taken as not done")
    return tuple(unknown)
