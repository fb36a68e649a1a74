"""The pages of what there is, and of a project file that was loaded."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from finishlog.cli.pages.shop.figure_rows import figures, limits
from finishlog.cli.terminal.page import Page, Tone
from finishlog.cli.typed.figures.measures import show_air
from finishlog.cli.typed.times.week import week_words
from finishlog.cli.words.finding_lines import chosen_lines, warn
from finishlog.clock import NOW, is_set_by_hand
from finishlog.core.log.shown_times import due_words
from finishlog.core.measure.quantities import celsius, cubic_metres_an_hour, typed_celsius

if TYPE_CHECKING:
    from finishlog.acts.things.load import Loaded
    from finishlog.asks.look.settings import Setting
    from finishlog.asks.look.which_room import RoomPlace
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
    return Page.listed(
        (_project(line, clock) for line in lines), "no projects yet: finishlog project new NAME"
    )


def _project(line: ProjectLine, clock: Clock) -> tuple[str, ...]:
    parts = f"{len(line.parts)} {'part' if len(line.parts) == 1 else 'parts'}"
    due = f"packed by {due_words(line.due, clock.now, clock.zone)}" if line.due else ""
    return line.name, parts, due, _once(line.old_names)


def _once(old_names: Sequence[str]) -> str:
    """Say what a thing was called before."""
    return f"once {', '.join(old_names)}" if old_names else ""


def project_page(line: ProjectLine, clock: Clock) -> Page:
    """Show one project."""
    page = projects_page([line], clock).lines([line.note])
    page.section("PARTS").each(map(_part, line.parts))
    return page


def parts_page(lines: Sequence[PartLine]) -> Page:
    """List parts."""
    nothing = "no parts yet: finishlog part new PROJECT/NAME, or just log a coat"
    return Page.listed(map(_part, lines), nothing)


def _part(line: PartLine) -> tuple[str, ...]:
    count = f"×{line.pieces}" if line.pieces > 1 else ""
    kind = f"made of {', '.join(line.made_of)}" if line.made_of else ", ".join(line.faces)
    board = "sample board" if line.is_board else ""
    steps = f"steps {line.steps_name}" if line.steps_name else ""
    more = ", ".join(x for x in (steps, board, line.old_finish, _once(line.old_names)) if x)
    return line.path, count, line.species, kind, more


def part_page(lines: Sequence[PartLine]) -> Page:
    """Show parts with their steps."""
    page = parts_page(lines)
    for line in lines:
        _steps(page.lines([line.note]), f"STEPS OF {line.path}", line.steps)
    return page


def _steps(page: Page, title: str, steps: Sequence[str]) -> Page:
    page.section(title).each((str(number), step) for number, step in enumerate(steps, 1))
    return page


def schedules_page(lines: Sequence[ScheduleLine]) -> Page:
    """List finishing schedules."""
    return Page.listed(
        ((line.name, ", ".join(line.steps), _once(line.old_names)) for line in lines),
        "no steps yet: finishlog steps new NAME sand sealer 'topcoat*3'",
    )


def schedule_page(line: ScheduleLine) -> Page:
    """Show one finishing schedule."""
    return _steps(Page(), line.name, line.steps).lines((line.note, _once(line.old_names)))


def products_page(lines: Sequence[ProductLine]) -> Page:
    """List products."""
    rags = {True: "oily rags self-heat", False: ""}
    return Page.listed(
        ((x.name, _shining(x), rags[x.self_heating], _once(x.old_names)) for x in lines),
        "no products yet: finishlog product new NAME --class CLASS",
    )


def _shining(line: ProductLine) -> str:
    return f"{line.class_name}, {line.sheen.value}" if line.sheen else line.class_name


def product_page(line: OneProduct, sources: Sources) -> Page:
    """Show one product."""
    page = Page().line(f"{line.name}: {_shining(line)} ({line.class_key})", Tone.HEAD)
    paces = (f"your pace: {pace.words}" for pace in line.pace)
    page.lines((line.note, _once(line.old_names), *paces))
    page.section("YOU SAY").each(
        (each.words, each.because, f"act {each.act}" if each.act is not None else "")
        for each in line.says
    )
    figures(page, dict(line.stages), line.window, sources)
    limits(page, line.of, sources)
    return page


def rooms_page(lines: Sequence[RoomLine], clock: Clock) -> Page:
    """List rooms."""
    nothing = f"no rooms yet: finishlog air {typed_celsius(17)} 58% makes the first"
    return Page.listed((_room(line, clock) for line in lines), nothing)


def _room(line: RoomLine, clock: Clock) -> tuple[str, ...]:
    read = "never read"
    for last in line.readings[:1]:
        read = f"{show_air(last.air)}, {clock.words(last.at)}"
    cold = line.coldest_night_c
    nights = f"nights to {celsius(cold, 1)}" if cold is not None else "nights unknown"
    return line.name, read, nights, _once(line.old_names)


def room_page(line: RoomLine, clock: Clock) -> Page:
    """Show one room."""
    page = rooms_page([line], clock).lines([line.note])
    _place(page, line.place)
    section = page.section("READINGS")
    shown = line.readings[:_READINGS_SHOWN]
    section.each((clock.words(each.at), show_air(each.air), f"act {each.act}") for each in shown)
    older = len(line.readings) - _READINGS_SHOWN
    if older > 0:
        section.row(f"and {older} older")
    return page


def _place(page: Page, place: RoomPlace) -> None:
    """Say what place it is, as far as anything of it was told."""
    from finishlog.cli.pages.questions.ventilation_page import place_rows

    rows = [("leads to", f"{each.room} by {each.by}") for each in place.joined]
    if place.exhaust_m3_h is not None:
        flow = cubic_metres_an_hour(place.exhaust_m3_h)
        rows.append(("exhaust", flow if place.exhaust_m3_h else "none that was measured"))
    if place.heater is not None:
        rows.append(("heated by", place.heater.value))
    told = (place.kind, place.has, place.volume_m3, place.exhaust_m3_h)
    if rows or place.lives or any(each is not None for each in told):
        section = page.section("PLACE")
        place_rows(section, place)
        section.each(rows)


def shop_page(answer: TheShop, clock: Clock) -> Page:
    """Show the shop."""
    page = Page()
    section = page.section("SHOP")
    section.row("zone", answer.time_zone)
    if is_set_by_hand():
        section.row("clock", f"set by {NOW}: {clock.words(clock.now)}")
    hours = week_words(answer.week) or "not said: finishlog shop hours 'mon-fri 18:00-23:00'"
    section.row("hours", hours)
    section.row("parts", f"{answer.open_parts} open")
    section.row("database", answer.database)
    return page


def settings_page(answer: Sequence[Setting]) -> Page:
    """List the settings."""
    rows = ((line.name, line.value, "" if line.by_hand else "as it comes") for line in answer)
    return Page.listed(rows, title="SETTINGS")


def load_page(answer: Loaded) -> Page:
    """Say what was added, what was there, and what differs with what to type."""
    page = Page()
    if answer.added:
        page.line("would be added" if answer.only_checked else "on record", Tone.HEAD)
        page.lines(f"  {name}" for name in answer.added)
        warn(page, answer.warnings)
        page.lines(chosen_lines(answer.before, answer.people))
    else:
        page.line("nothing to add: it is all there")
    if answer.as_it_was:
        page.line(f"as it was: {answer.as_it_was}")
    if answer.differs:
        section = page.section("DIFFERS, left as it is")
        for each in answer.differs:
            section.row(each.what, f"is {each.now_is}", f"in {answer.file}: {each.in_file}")
            section.row("", each.to_change, tone=Tone.FAINT)
    return page
