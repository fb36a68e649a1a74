"""What the air of a room comes to with a finish, by which limits, and what would do."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta
from typing import TYPE_CHECKING

from finishlog.cli.pages.evening.vapour_page import no_figure_words
from finishlog.cli.terminal.page import Section, Tone
from finishlog.core.air.place import CALLED
from finishlog.core.commands import Do
from finishlog.core.log.shown_times import length_words, wait_words
from finishlog.core.measure.quantities import (
    at_most_millilitres,
    cubic_metres,
    cubic_metres_an_hour,
    litres_of_vapour,
    metres_a_second,
    millilitres,
)
from finishlog.core.safety.ventilation import TENTH, Governs, Weighs

if TYPE_CHECKING:
    from finishlog.asks.look.which_room import RoomPlace
    from finishlog.core.safety.room_takes import RoomTakes
    from finishlog.core.safety.ventilation import Air

_FACE = "averages; at your face and near the floor far more"
_FIRST = "the sheet, your fire code and a licensed installer come first"
# By whether something that is there was put out.
_NOTHING = {False: "nothing in it that burns or sparks", True: "nothing lit in it"}
_NO_FAN = "never a household fan for solvent vapour"


def place_rows(section: Section, place: RoomPlace) -> None:
    """Say what was told of a room as a place; what was not is said to be unknown."""
    told = []
    if place.kind is not None:
        told.append(place.kind.value)
    if place.has is not None:
        there = ", ".join(CALLED[fixture] for fixture in place.has if fixture not in place.out)
        told.append(f"in it {there}" if there else _NOTHING[bool(place.out)])
        told += [f"{CALLED[fixture]} that is out for tonight" for fixture in place.out]
    if place.volume_m3 is not None:
        told.append(cubic_metres(place.volume_m3))
    if place.lives:
        told.append(f"there live: {', '.join(place.lives)}")
    unknown = [
        words
        for words, value in (
            ("what burns there", place.has),
            ("its size", place.volume_m3),
            ("its exhaust", place.exhaust_m3_h),
            ("what kind of place", place.kind),
        )
        if value is None
    ]
    section.row("told", "; ".join(told) or "nothing")
    if unknown:
        section.row("unknown", ", ".join(unknown))


def air_rows(section: Section, takes: RoomTakes) -> None:
    """Lay out what a room's air takes of one finish."""
    if takes.outdoors:
        section.row(takes.product, "outdoors: stand upwind, nothing lit near it")
    elif takes.why_no_figure is not None:
        section.row(takes.product, no_figure_words(takes), tone=Tone.HEAD)
        if takes.booth_m_per_s is not None:
            least, most = map(metres_a_second, takes.booth_m_per_s)
            against = "a rule against fire that shows nothing of what you breathe"
            section.row("", f"a booth: {least} to {most} through its open face, {against}")
        if takes.formaldehyde_pct is not None:
            low, high = takes.formaldehyde_pct
            section.row("", f"{low:g} to {high:g} % of it is free, and more comes as it cures")
    elif takes.volume_m3 is None:
        size = Do.ROOM_EDIT(takes.room, size="SIZE")
        section.row(takes.product, f"how big {takes.room} is was not told: {size}")
    elif takes.air is None:
        section.each(_by_limits(takes))
    else:
        section.each(_of_an_amount(takes, takes.air))
    if takes.by_sheet:
        section.row("", "solvent and limits as your sheet says, the rest by its class")
    section.row("", f"{_NO_FAN}; {_FIRST}", tone=Tone.FAINT)


def _by_limits(takes: RoomTakes) -> Iterator[tuple[str, str]]:
    """Say from what amount on each limit is passed."""
    yield takes.product, f"within an hour, {_room(takes)}; {_FACE}"
    assert takes.day_ml is not None
    yield "", f"from {at_most_millilitres(takes.day_ml)} on over the day's limit{_ppm(takes)[0]}"
    if takes.short_ml is not None:
        short = at_most_millilitres(takes.short_ml)
        yield "", f"from {short} on over that of 15 minutes{_ppm(takes)[1]}"
    if takes.fire_ml is not None:
        yield (
            "",
            f"from {at_most_millilitres(takes.fire_ml)} on over a tenth of the explosive limit",
        )
    if takes.poor:
        yield "", "dilution is a poor answer here: catch it at the source, or outdoors"
    more = Do.SAFETY(takes.room, of=takes.product, amount="AMOUNT")
    yield "", f"of an amount: {more}"


def _of_an_amount(takes: RoomTakes, air: Air) -> Iterator[tuple[str, str]]:
    """Say what an amount comes to shut and aired, against which limits, and what would do."""
    assert takes.brought is not None
    much, long = millilitres(takes.brought.amount_ml), length_words(takes.brought.time)
    vapour = litres_of_vapour(air.vapour_l)
    yield takes.product, f"{much} in {long}: about {vapour} of vapour; {_FACE}"
    yield "so", _against(takes, air)
    if air.weighs is not Weighs.UNDER:
        yield "do", "; ".join(_what_would_do(takes))
    shut = _two(air.shut_ppm)
    flames = "; no flame or spark however it is aired" if air.of_lel_shut > TENTH / 2 else ""
    yield "shut", f"{shut} ppm, {air.of_lel_shut * 100:.2g} % of the explosive limit{flames}"
    if takes.exhaust_m3_h is not None:
        flow = cubic_metres_an_hour(takes.exhaust_m3_h)
        yield "aired", f"with {flow}, {_mixed(takes)}: about {_two(air.highest_ppm)} ppm"
    else:
        yield "aired", "no exhaust was measured: it is reckoned as shut"
    yield "needs", _wanted(takes, air)
    if takes.poor:
        yield "", "dilution is a poor answer here: catch it at the source"
    if takes.purge_h is not None and air.day_highest > 1:
        left = wait_words(timedelta(hours=takes.purge_h))
        yield "purge", f"from tack-free on {left} more to the day's limit, in clean air"
    elif takes.purge_h is None:
        yield "purge", "air it out; relight only when tack-free, and no smell is no proof"


def _against(takes: RoomTakes, air: Air) -> str:
    """Name the limits that are passed; none of it says that it is safe."""
    day, short = _ppm(takes)
    over = []
    if air.of_lel > TENTH:
        over.append("a tenth of the explosive limit")
    if air.of_short is not None and air.of_short > 1:
        over.append(f"the limit of 15 minutes{short}")
    if air.of_day > 1:
        over.append(f"the day's{day}")
    match air.weighs:
        case Weighs.NOT_ENOUGH:
            return f"NOT ENOUGH AIR: over {' and '.join(over)}"
        case Weighs.OVER_DAY:
            return f"over {' and '.join(over)} for whoever stays in it"
        case _:
            return "under the limits on average and for once, which says nothing of your face"


def _wanted(takes: RoomTakes, air: Air) -> str:
    """Say what exhaust holds vapour at the limits all along, the governing answer marked."""
    fire, health = cubic_metres_an_hour(air.fire_m3_h), cubic_metres_an_hour(air.health_m3_h)
    marks = {Governs.FIRE: ("", " (GOVERNS)"), Governs.HEALTH: (" (GOVERNS)", "")}
    by_health, by_fire = marks[air.governs]
    has = takes.exhaust_m3_h
    against = "none was measured" if has is None else f"yours is {cubic_metres_an_hour(has)}"
    return (
        f"{health} to stay at the day's limit all along{by_health}, {fire} for a quarter of the "
        f"explosive limit{by_fire}, {_mixed(takes)}; {against}"
    )


def _what_would_do(takes: RoomTakes) -> Iterator[str]:
    yield "outdoors"
    least = takes.least_ml
    if least is not None:
        yield f"less at once: {at_most_millilitres(least)}{_of_pieces(takes)}"
    if takes.between_h is not None and takes.air is not None and takes.air.of_day > 1:
        yield f"{wait_words(timedelta(hours=takes.between_h))} between"
    yield "a waterborne"


def _of_pieces(takes: RoomTakes) -> str:
    """Say how many of the pieces that are; where there is one, or none fits, that they are not."""
    pieces = takes.brought.pieces if takes.brought is not None else 0
    if pieces > 1 and takes.at_once:
        return f", {takes.at_once} of {pieces} pieces"
    return ", one large top cannot be split"


def _room(takes: RoomTakes) -> str:
    assert takes.volume_m3 is not None
    has = takes.exhaust_m3_h
    flow = cubic_metres_an_hour(has) if has is not None else "no exhaust measured"
    return f"{takes.room} {cubic_metres(takes.volume_m3)}, {flow}"


def _mixed(takes: RoomTakes) -> str:
    return f"mixing {takes.mixing:g}" + ("" if takes.mixing_told else ", none told")


def _ppm(takes: RoomTakes) -> tuple[str, str]:
    """Write the limits of the one solvent that leaves; of several no one limit speaks."""
    main = takes.main
    if main is None or takes.several:
        return "", ""
    short = f" ({main.short_ppm:.0f} ppm)" if main.short_ppm is not None else ""
    return f" ({main.day_ppm:.0f} ppm)", short


def _two(value: float) -> str:
    return f"{float(f'{value:.2g}'):g}"
