"""The pages of what there is."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from finishlog.cli.pages.shop.figure_rows import figures, limits
from finishlog.cli.terminal.page import Page, Section, Tone
from finishlog.cli.typed.figures.measures import show_air
from finishlog.cli.typed.times.week import week_words
from finishlog.clock import NOW, is_set_by_hand
from finishlog.core.log.shown_times import clock_words, due_words
from finishlog.core.measure.quantities import celsius, typed_celsius

if TYPE_CHECKING:
    from finishlog.asks.look.settings import Setting
    from finishlog.asks.things.there_is import (
        OneProduct,
        PartLine,
        ProductLine,
        ProjectLine,
        RoomLine,
        ScheduleLine,
        TheShop,
    )
    from finishlog.cli.pages.shop.figure_rows import Sources
    from finishlog.clock import Clock

# A logger gives thousands.
_READINGS_SHOWN = 30


def projects_page(lines: Sequence[ProjectLine], clock: Clock) -> Page:
    """List projects."""
    page = Page()
    if not lines:
        page.line("no projects yet: finishlog project new NAME")
    section = page.section()
    for line in lines:
        parts = f"{len(line.parts)} {'part' if len(line.parts) == 1 else 'parts'}"
        section.row(line.name, parts, _due(line, clock), _once(line.old_names))
    return page


def _due(line: ProjectLine, clock: Clock) -> str:
    return f"packed by {due_words(line.due, clock.now, clock.zone)}" if line.due else ""


def _once(old_names: Sequence[str]) -> str:
    """Say what a thing was called before."""
    return f"once {', '.join(old_names)}" if old_names else ""


def project_page(line: ProjectLine, clock: Clock) -> Page:
    """Show one project."""
    page = projects_page([line], clock)
    if line.note:
        page.line(line.note)
    _parts(page.section("PARTS"), line.parts)
    return page


def parts_page(lines: Sequence[PartLine]) -> Page:
    """List parts."""
    page = Page()
    if not lines:
        page.line("no parts yet: finishlog part new PROJECT/NAME, or just log a coat")
    _parts(page.section(), lines)
    return page


def _parts(section: Section, lines: Sequence[PartLine]) -> None:
    for line in lines:
        count = f"×{line.pieces}" if line.pieces > 1 else ""
        kind = f"made of {', '.join(line.made_of)}" if line.made_of else ", ".join(line.faces)
        board = "sample board" if line.is_board else ""
        steps = f"steps {line.steps_name}" if line.steps_name else ""
        more = ", ".join(x for x in (steps, board, line.old_finish, _once(line.old_names)) if x)
        section.row(line.path, count, line.species, kind, more)


def part_page(lines: Sequence[PartLine]) -> Page:
    """Show parts with their steps."""
    page = parts_page(lines)
    for line in lines:
        if line.note:
            page.line(line.note)
        section = page.section(f"STEPS OF {line.path}")
        for number, step in enumerate(line.steps, 1):
            section.row(str(number), step)
    return page


def schedules_page(lines: Sequence[ScheduleLine]) -> Page:
    """List finishing schedules."""
    page = Page()
    if not lines:
        page.line("no steps yet: finishlog steps new NAME sand sealer 'topcoat*3'")
    section = page.section()
    for line in lines:
        section.row(line.name, ", ".join(line.steps), _once(line.old_names))
    return page


def schedule_page(line: ScheduleLine) -> Page:
    """Show one finishing schedule."""
    page = Page()
    section = page.section(line.name)
    for number, step in enumerate(line.steps, 1):
        section.row(str(number), step)
    for words in (line.note, _once(line.old_names)):
        if words:
            page.line(words)
    return page


def products_page(lines: Sequence[ProductLine]) -> Page:
    """List products."""
    page = Page()
    if not lines:
        page.line("no products yet: finishlog product new NAME --class CLASS")
    section = page.section()
    for line in lines:
        rags = "oily rags self-heat" if line.self_heating else ""
        section.row(line.name, line.class_name, rags, _once(line.old_names))
    return page


def product_page(line: OneProduct, sources: Sources) -> Page:
    """Show one product."""
    page = Page()
    page.line(f"{line.name}: {line.class_name} ({line.class_key})", Tone.HEAD)
    paces = (f"your pace: {pace.words}" for pace in line.pace)
    for words in (line.note, _once(line.old_names), *paces):
        if words:
            page.line(words)
    figures(page, dict(line.stages), line.window, sources)
    limits(page, line.of, sources)
    return page


def rooms_page(lines: Sequence[RoomLine], clock: Clock) -> Page:
    """List rooms."""
    page = Page()
    if not lines:
        page.line(f"no rooms yet: finishlog air {typed_celsius(17)} 58% makes the first")
    section = page.section()
    for line in lines:
        read = "never read"
        if line.readings:
            last = line.readings[0]
            read = f"{show_air(last.air)}, {clock_words(last.at, clock.now, clock.zone)}"
        cold = line.coldest_night_c
        nights = f"nights to {celsius(cold, 1)}" if cold is not None else "nights unknown"
        section.row(line.name, read, nights, _once(line.old_names))
    return page


def room_page(line: RoomLine, clock: Clock) -> Page:
    """Show one room."""
    page = rooms_page([line], clock)
    if line.note:
        page.line(line.note)
    section = page.section("READINGS")
    for each in line.readings[:_READINGS_SHOWN]:
        when = clock_words(each.at, clock.now, clock.zone)
        section.row(when, show_air(each.air), f"act {each.act}")
    older = len(line.readings) - _READINGS_SHOWN
    if older > 0:
        section.row(f"and {older} older")
    return page


def shop_page(answer: TheShop, clock: Clock) -> Page:
    """Show the shop."""
    page = Page()
    section = page.section("SHOP")
    section.row("zone", answer.time_zone)
    if is_set_by_hand():
        section.row("clock", f"set by {NOW}: {clock_words(clock.now, clock.now, clock.zone)}")
    hours = week_words(answer.week) or "not said: finishlog shop hours 'mon-fri 18:00-23:00'"
    section.row("hours", hours)
    section.row("parts", f"{answer.open_parts} open")
    section.row("database", answer.database)
    return page


def settings_page(answer: Sequence[Setting]) -> Page:
    """List the settings."""
    page = Page()
    section = page.section("SETTINGS")
    for line in answer:
        section.row(line.name, line.value, "" if line.by_hand else "as it comes")
    return page
