"""The pages of warmth: what heaters do, and what the usual days of a room are like."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from finishlog.cli.pages.evening.whereabouts_page import span_words
from finishlog.cli.terminal.page import Page, Tone
from finishlog.cli.typed.figures.measures import show_humidity
from finishlog.cli.typed.times.time_heated import EXAMPLE
from finishlog.cli.typed.times.usual_words import DAY_EXAMPLE, heating_words, season_words
from finishlog.cli.typed.times.week import clock_face
from finishlog.cli.words.finding_lines import warn
from finishlog.core.measure.quantities import celsius, typed_celsius

if TYPE_CHECKING:
    from finishlog.acts.air.heat import HeatLogged
    from finishlog.acts.air.usual_day import UsualSet
    from finishlog.asks.bench.heaters import HeatLine
    from finishlog.asks.things.usual_day import RoomUsual, UsualLine
    from finishlog.clock import Clock
    from finishlog.core.air.as_read import AsRead
    from finishlog.core.air.usual_day import UsualDay, UsualHour
    from finishlog.core.published.safety_notes import SafetyNote

_POINTS_SHOWN = 8
_NO_HOURS = "the air of its hours is not known, and the heating counts only once it is"


def heat_page(answer: HeatLogged, clock: Clock) -> Page:
    """Echo a heater, and what never to do with it."""
    page = Page()
    warm = "" if answer.how_warm_unknown else f", {_warm(answer.temperature_c)}"
    page.line(f"{answer.room}: heated {span_words(answer.span, clock)}{warm}")
    if answer.room_is_new:
        page.line(f"a room called {answer.room!r} was put on record; parts stand in it")
    if answer.how_warm_unknown:
        page.line(
            "how warm it gets is not on record, so nothing dries sooner by it: add "
            f"{typed_celsius(18)}"
        )
    page.lines(_beside(answer, line, clock) for line in answer.beside)
    warn(page, answer.warnings)
    cautions(page, answer.caution, answer.notes)
    return page.line(f"act {answer.act}", Tone.FAINT)


def _beside(answer: HeatLogged, line: HeatLine, clock: Clock) -> str:
    """Say what a heater on record for the same time makes of it."""
    span = f"act {line.act}, {span_words(line.span, clock)}"
    if line.temperature_c == answer.temperature_c:
        return f"on record already ({span}): the two are one heat"
    return f"at once with {span}, {_warm(line.temperature_c)}: the warmer counts"


def heat_ahead_page(lines: Sequence[HeatLine], clock: Clock) -> Page:
    """List the heaters that run or are to run."""
    nothing = f"no heater is on record from now on: {EXAMPLE}"
    return Page.listed((_row(line, clock) for line in lines), nothing, "HEATED")


def _row(line: HeatLine, clock: Clock) -> tuple[str, ...]:
    acts = ", ".join(f"act {act}" for act in (line.act, *line.also))
    return line.room, span_words(line.span, clock), _warm(line.temperature_c), acts


def cautions(page: Page, caution: str, notes: Iterable[SafetyNote]) -> None:
    """Say what comes with every advice to warm something."""
    page.line(f"caution: {caution}", Tone.HEAD)
    page.lines(f"safety: {note.text}" for note in notes)


def _warm(to_c: float | None) -> str:
    return "as warm as usual" if to_c is None else f"to {celsius(to_c, 1)}"


def usual_page(answer: RoomUsual) -> Page:
    """Show a room's usual days hour by hour."""
    page = Page()
    if answer.coldest_night_c is not None:
        page.line(f"{answer.room}: nights to {celsius(answer.coldest_night_c, 1)}")
    if not answer.days:
        page.line(_nothing_known(answer.room))
    for line in answer.days:
        _day(page, line)
    return page


def usual_set_page(answer: UsualSet) -> Page:
    """Echo what a room is like from now on, in a line a season."""
    days = (line.day for line in answer.days)
    said = [f"{answer.room}, {season_words(day.season)}: {_in_words(day)}" for day in days]
    page = Page().lines(said or [_nothing_known(answer.room)])
    if answer.instead_of:
        page.line(f"in place of: heated {heating_words(answer.instead_of)}")
    if answer.taken_from:
        page.line(_taken_from(answer.taken_from))
    if answer.caution:
        cautions(page, answer.caution, answer.notes)
    return page.line(
        f"act {answer.act}; hour by hour: finishlog room usual {answer.room}", Tone.FAINT
    )


def _nothing_known(room: str) -> str:
    return f"no usual day of {room} is known: finishlog room usual {room} {DAY_EXAMPLE}"


def _in_words(day: UsualDay) -> str:
    words = [_point(hour) for hour in day.hours] or [_NO_HOURS]
    if len(words) > _POINTS_SHOWN:
        warm = sorted(hour.temperature_c for hour in day.hours)
        coldest, warmest = (celsius(each, 1) for each in (warm[0], warm[-1]))
        words = [f"{len(words)} points, {coldest} to {warmest}"]
    if day.heated is not None:
        words.append(f"heated {heating_words(day)}")
    return "; ".join(words)


def _point(hour: UsualHour) -> str:
    damp = "" if hour.humidity_pct is None else f", {show_humidity(hour.humidity_pct)}"
    return f"{clock_face(hour.minute)} {celsius(hour.temperature_c, 1)}{damp}"


def _day(page: Page, line: UsualLine) -> None:
    day = line.day
    section = page.section(f"USUAL DAY, {season_words(day.season)}")
    if day.heated is not None:
        section.row("heated", heating_words(day))
    if not line.drawn:
        section.row("air", _NO_HOURS)
    for each in line.drawn:
        damp = show_humidity(each.air.humidity_pct)
        heated = "heated" if each.heated else ""
        section.row(f"{each.hour}:00", celsius(each.air.temperature_c, 1), damp, heated)
    if line.drawn and line.damp_is_assumed:
        section.row(
            "humidity", "assumed: none is given; the last reading counts where there is one"
        )


def _taken_from(found: AsRead) -> str:
    words = f"taken from {found.readings} readings, the median of each hour"
    if not found.without:
        return words
    without = ", ".join(f"{hour}:00" for hour in found.without)
    return f"{words}; drawn straight over hours without any: {without}"
