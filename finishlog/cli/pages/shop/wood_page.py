"""Lay out what was measured of the wood itself, and how far it moves."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from finishlog.cli.pages.evening.log_page import standing_lines
from finishlog.cli.pages.evening.words import echo
from finishlog.cli.pages.shop.figure_rows import basis
from finishlog.cli.terminal.page import Page, Tone
from finishlog.cli.typed.figures.measures import show_air, show_temperature
from finishlog.cli.words.finding_lines import remedies, warn
from finishlog.cli.words.finding_words import sentence
from finishlog.core.measure.quantities import typed_celsius, weighed
from finishlog.core.measure.units import Length, Temperature, difference_from_base, from_base, sign

if TYPE_CHECKING:
    from finishlog.acts.air.moisture import Moist
    from finishlog.acts.air.surface import Surface
    from finishlog.acts.air.weigh import Weighed
    from finishlog.asks.look.weighings import Weighing
    from finishlog.asks.things.movement import Movement
    from finishlog.asks.things.wood_air import WoodAir
    from finishlog.cli.pages.shop.figure_rows import Sources
    from finishlog.clock import Clock
    from finishlog.context import Context
    from finishlog.core.air.psychrometrics import Air

# So finely is a width measured in each unit.
_PLACES = {
    Length.MILLIMETRE: 1,
    Length.CENTIMETRE: 2,
    Length.METRE: 4,
    Length.INCH: 3,
    Length.FOOT: 4,
}
# Nearer than this to what it settles at, wood hardly moves.
_AT_HOME_PCT = 0.5


def moisture_page(answer: Moist, clock: Clock) -> Page:
    """Echo a moisture reading, and what the room's air says to it."""
    page = echo(clock, answer.at, answer.labels, f"wood at {answer.moisture_pct:.3g} % moisture")
    if answer.meter is not None:
        low, high = answer.meter.low, answer.meter.high
        page.line(f"caution: a meter is good from {low:g} to {high:g} %")
    page.lines(_in_this_air(room, answer.moisture_pct) for room in answer.rooms)
    page.lines(remedies(answer.warnings), Tone.HEAD)
    return standing_lines(page, answer.standings, clock).line(f"act {answer.act}", Tone.FAINT)


def weigh_page(answer: Weighed, clock: Clock) -> Page:
    """Echo a weight, the series that it ends, and what that tells."""
    together = f"{answer.pieces} pieces together, " if answer.pieces > 1 else ""
    page = echo(clock, answer.at, answer.labels, f"{together}{weighed(answer.weight_g)}")
    series = answer.series
    if series is not None and len(series.weights) > 1:
        page.line(f"weights: {weights_words(series.weights, clock)}")
    if series is not None and series.is_ready:
        page.lines(f"READY: {sentence(found)}" for found in answer.findings)
    else:
        warn(page, answer.findings)
    return standing_lines(page, answer.standings, clock).line(f"act {answer.act}", Tone.FAINT)


def weights_words(weights: Sequence[Weighing], clock: Clock) -> str:
    """Write weights one after the other: `2 Nov 642 g, 9 Nov 640 g`."""
    return ", ".join(f"{clock.day(w.at)} {weighed(w.weight_g)}" for w in weights)


def settles_page(answer: WoodAir) -> Page:
    """Say what wood settles at in an air."""
    settles = _settles(answer.air, answer.settles_pct, answer.room)
    return Page().line(f"{settles}, over weeks; good for a trend, not for a tenth")


def surface_page(answer: Surface, context: Context) -> Page:
    """Echo a surface temperature, and how far it is from sweating."""
    clock, unit = context.clock, context.units.temperature
    shown = show_temperature(answer.temperature_c, unit)
    page = echo(clock, answer.at, answer.labels, f"surface {shown}")
    page.lines(_above_dew(room, answer, unit) for room in answer.rooms)
    return standing_lines(page, answer.standings, clock).line(f"act {answer.act}", Tone.FAINT)


def movement_page(answer: Movement, sources: Sources, length: Length) -> Page:
    """Say how a width changes, in the unit that it was typed in."""
    page = Page()
    change = abs(answer.change_mm)
    how = "wider" if answer.change_mm > 0 else "narrower"
    moved = f"{_width(change, length)} {how}" if change else "no change"
    cut = "quarter-sawn" if answer.radial else "flat-sawn"
    start, end = answer.start.moisture_pct, answer.end.moisture_pct
    page.line(
        f"{answer.name}, {cut}, {_width(answer.width_mm, length)}, {start:.3g} % to {end:.3g} %: "
        f"{moved}, ends {_width(answer.ends_mm, length)}"
    )
    rows = page.section()
    for name, moisture in (("from", answer.start), ("to", answer.end)):
        if moisture.air is not None:
            rows.row(name, _settles(moisture.air, moisture.moisture_pct))
    source = basis(answer.source, sources)
    rows.row("moves", f"{100 * answer.per_pct:.3f} % of its width for each 1 % ({source})")
    rows.each((("note", remark) for remark in answer.remarks), Tone.FAINT)
    return page


def _in_this_air(room: WoodAir, moisture_pct: float) -> str:
    if room.settles_pct is None:
        return _not_read(room, "what wood settles at there is not known")
    apart = moisture_pct - room.settles_pct
    if abs(apart) <= _AT_HOME_PCT:
        then = "it is at home here"
    elif apart > 0:
        then = f"it is {apart:.1f} points wetter, and will shrink"
    else:
        then = f"it is {-apart:.1f} points drier, and will swell"
    return f"{_settles(room.air, room.settles_pct, room.room)}: {then}"


def _settles(air: Air | None, settles_pct: float | None, room: str = "") -> str:
    assert air is not None
    where = f"{room}, " if room else ""
    return f"{where}{show_air(air)}: wood settles at {settles_pct:.1f} %"


def _above_dew(room: WoodAir, answer: Surface, unit: Temperature) -> str:
    if room.dew_point_c is None:
        return _not_read(room, "whether it sweats is not known")
    above = answer.temperature_c - room.dew_point_c
    dew = show_temperature(room.dew_point_c, unit)
    where = f"{room.room}: " if room.room else ""
    least = f"{difference_from_base(answer.over_dew_c, unit):.3g} {sign(unit)}"
    if above <= 0:
        return f"{where}dew point {dew}: it sweats, nothing may go on it"
    degrees = f"{difference_from_base(above, unit):.1f} {sign(unit)}"
    enough = "" if above >= answer.over_dew_c else ", too near"
    return f"{where}dew point {dew}: it is {degrees} above{enough} (at least {least})"


def _not_read(room: WoodAir, so: str) -> str:
    if not room.room:
        return f"no room is on record for it: {so}"
    log = f"finishlog air {typed_celsius(17)} 58% --room {room.room}"
    return f"the air of {room.room} was not read in the last day, {so}: {log}"


def _width(mm: float, unit: Length) -> str:
    value = round(from_base(mm, unit), _PLACES[unit])
    return f"{value:.{_PLACES[unit]}f}".rstrip("0").rstrip(".") + f" {sign(unit)}"
