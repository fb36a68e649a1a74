"""Echo what is known of a room's air."""

from __future__ import annotations

from typing import TYPE_CHECKING

from finishlog.cli.terminal.page import Page, Tone
from finishlog.cli.typed.figures.measures import show_air, show_humidity
from finishlog.core.log.shown_times import length_words
from finishlog.core.logger.file import Why
from finishlog.core.measure.quantities import celsius

if TYPE_CHECKING:
    from collections.abc import Iterator

    from finishlog.acts.air.air import AirLogged
    from finishlog.acts.air.air_import import AirTakenIn
    from finishlog.clock import Clock
    from finishlog.core.logger.file import ReadAs

_GAPS_SHOWN = 3


def air_page(answer: AirLogged, clock: Clock) -> Page:
    """Echo a reading."""
    page = Page()
    when = clock.happened(answer.at)
    dew = celsius(answer.dew_point_c, 1)
    wet = ""
    if answer.wet_bulb_c is not None:
        wet = f", by a wet bulb of {celsius(answer.wet_bulb_c, 1)} at sea level"
    page.line(f"{when}  {answer.room}: {show_air(answer.air)}{wet}, dew point {dew}")
    if answer.humidity_supposed:
        page.line(
            f"caution: how damp it is was not read; {show_humidity(answer.air.humidity_pct)} is "
            "supposed, by the water it was last known to hold, else damp; with a hygrometer: "
            f"finishlog amend {answer.act} --air "
            f"'{celsius(answer.air.temperature_c, 1)} 58%'",
            Tone.HEAD,
        )
    if answer.room_is_new:
        page.line(f"a room called {answer.room!r} was put on record; parts stand in it")
    return page.line(f"act {answer.act}", Tone.FAINT)


def air_import_page(answer: AirTakenIn, clock: Clock) -> Page:
    """Say what was taken in of a file, and everything that was not."""
    page = Page().line(_taken_in(answer))
    if answer.room_is_new and answer.act is not None:
        page.line(f"a room called {answer.room!r} was put on record; parts stand in it")
    section = page.section("FILE")
    coldest, warmest = (celsius(c, 1) for c in (answer.coldest_c, answer.warmest_c))
    span = f"{clock.words(answer.first)} to {clock.words(answer.last)}"
    section.row("from, to", f"{span}, {coldest} to {warmest}")
    for kind, name in answer.read_as.columns.items():
        section.row(kind, _column(kind, name, answer.read_as))
    section.each(_remarks(answer, clock))
    return page.line(_end(answer), Tone.FAINT)


def _taken_in(answer: AirTakenIn) -> str:
    readings = _count(answer.kept, "reading")
    known = f"; {answer.known} known already" if answer.known else ""
    if answer.only_tried:
        return f"{answer.file_name}: {readings} would be taken in for {answer.room}{known}"
    if answer.act is None:
        return f"{answer.file_name}: nothing new for {answer.room}{known}"
    return f"{answer.file_name}: {readings} taken in for {answer.room}{known}"


def _end(answer: AirTakenIn) -> str:
    if answer.act is None:
        return "nothing was recorded"
    return f"act {answer.act}; to take it back: finishlog undo {answer.act}"


def _column(kind: str, name: str, read_as: ReadAs) -> str:
    if kind == "temperature":
        return f"{name!r}, in °{read_as.unit}, {read_as.unit_is}"
    if kind == "time":
        order = ", the newest first" if read_as.newest_first else ""
        clock = f"by the clock of {read_as.zone}" if read_as.zone else "each with its offset"
        return f"{name!r}, {clock}{order}"
    return repr(name)


def _remarks(answer: AirTakenIn, clock: Clock) -> Iterator[tuple[str, str]]:
    """Yield what a person should know of the lines."""
    read_as = answer.read_as
    for each in read_as.skipped:
        lines = ", ".join(map(str, each.lines)) + (" ..." if each.count > len(each.lines) else "")
        of = "line" if each.count == 1 else "lines"
        yield "left out", f"{_count(each.count, 'line')} {each.why.value} ({of} {lines})"
        if each.why is Why.SKIPPED_HOUR:
            yield "", "if the logger keeps winter time all year, say its offset: --zone +01:00"
    if read_as.hour_twice:
        yield (
            "twice",
            f"{_count(read_as.hour_twice, 'line')} of the hour that the clocks show twice",
        )
        yield "", "placed by their order in the file; a logger without summer time: --zone +01:00"
    changed = "with other figures for the same instant: the later line holds"
    others = "with other figures: the earlier import stays, unless undone"
    for head, count, what, begin, end in (
        ("taken as", read_as.clamped, "reading", "100 %: ", "a little over it"),
        ("twice", read_as.repeated, "line", "", "the same again, taken once"),
        ("twice", read_as.changed, "line", "", changed),
        ("order", read_as.out_of_order, "line", "", "out of order, sorted"),
        ("known", answer.known_otherwise, "reading", "", others),
    ):
        if count:
            yield head, f"{begin}{_count(count, what)} {end}"
    gaps = read_as.gaps
    if gaps:
        longest = max(gap.end - gap.start for gap in gaps)
        yield "gaps", f"{len(gaps)} of more than 2 h, the longest {length_words(longest)}"
    for gap in gaps[:_GAPS_SHOWN]:
        yield "", f"{clock.words(gap.start)} to {clock.words(gap.end)}"


def _count(number: int, what: str) -> str:
    return f"{number} {what}{'' if number == 1 else 's'}"
