"""The page of a room's usual days."""

from __future__ import annotations

from typing import TYPE_CHECKING

from finishlog.cli.pages.shop.heating_page import cautions
from finishlog.cli.terminal.page import Page, Tone
from finishlog.cli.typed.figures.measures import show_humidity
from finishlog.cli.typed.times.usual_words import heating_words, season_words
from finishlog.cli.typed.times.week import clock_face
from finishlog.core.measure.quantities import celsius

if TYPE_CHECKING:
    from finishlog.acts.air.usual_day import UsualSet
    from finishlog.asks.things.usual_day import RoomUsual, UsualLine
    from finishlog.core.air.as_read import AsRead
    from finishlog.core.air.usual_day import UsualDay, UsualHour

_POINTS_SHOWN = 8
_NO_HOURS = "the air of its hours is not known, and the heating counts only once it is"


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
    page = Page()
    if not answer.days:
        page.line(_nothing_known(answer.room))
    for line in answer.days:
        page.line(f"{answer.room}, {season_words(line.day.season)}: {_in_words(line.day)}")
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
    example = "0:13C/65% 7:12C 17:18C/55%"
    return f"no usual day of {room} is known: finishlog room usual {room} {example}"


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
