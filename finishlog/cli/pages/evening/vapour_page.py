"""Vapour in a room, in few words: until when, what stays out, how much of a finish it takes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import timedelta
from typing import TYPE_CHECKING

from finishlog.cli.terminal.page import Section, Tone
from finishlog.cli.words.finding_lines import names
from finishlog.cli.words.finding_words import sentence
from finishlog.core.air.place import CALLED, Fixture
from finishlog.core.log.shown_times import day_of, half_hour_up, wait_words
from finishlog.core.measure.quantities import (
    at_most_millilitres,
    cubic_metres,
    cubic_metres_an_hour,
    litres_of_vapour,
    millilitres,
)
from finishlog.core.safety.ventilation import TENTH, Weighs

if TYPE_CHECKING:
    from finishlog.asks.bench.plan import PeopleAhead
    from finishlog.asks.bench.vapour_there import PeopleLine, VapourLine
    from finishlog.clock import Clock
    from finishlog.core.published.safety_notes import StaysOut
    from finishlog.core.safety.evening_air import EveningAir
    from finishlog.core.safety.people import Out
    from finishlog.core.safety.room_takes import RoomTakes
    from finishlog.core.safety.ventilation import Air


def vapour_rows(section: Section, lines: Sequence[VapourLine], clock: Clock) -> None:
    """Say where vapour hangs and until when; what burns there comes first."""
    for line in lines:
        for found in line.lit:
            section.row("air", f"{sentence(found)}: air it, put it out now", tone=Tone.DANGER)
        section.row("air", vapour_words(line, clock), tone=Tone.FAINT)


def vapour_words(line: VapourLine, clock: Clock) -> str:
    """Say until when films give off vapour, and what to do meanwhile."""
    until = "it is found dry" if line.until is None else clock.wait_until(line.until)
    stays = "nothing lit"
    of = names(line.products)
    if line.dry:
        stays = "lit again only when it was aired and smells of nothing; no smell is no proof"
        return f"{line.room}: {of} is tack-free, its vapour may hang there: {stays}"
    if line.out:
        there = (f"{names(CALLED[Fixture(w)] for w in what)} in {room}" for room, what in line.out)
        several = sum(len(what) for _, what in line.out) > 1
        stays = f"{names(there)} {'stay' if several else 'stays'} out: no smell is no proof"
    return f"{line.room}: vapour of {of} until {until}: air the room, {stays}"


def people_rows(lines: Sequence[PeopleLine], clock: Clock) -> list[str]:
    """Say who stays out, whom to ask and when to look at the earliest, which is no promise."""
    said = _by_what_they_do((line.room, line.of, line.out) for line in lines)
    words = [_out_words(*each, clock) for each in said]
    return [*words, _NO_PROMISE] if words else []


def people_ahead(lines: Sequence[PeopleAhead], clock: Clock) -> list[str]:
    """Say who stays out for what is planned: from its first coat on, and not back before."""
    since = {line.room: clock.words(line.since) for line in lines}
    said = _by_what_they_do((line.room, line.of, line.out) for line in lines)
    return [
        f"from {since[room]} on {_out_words(room, who, of, out, clock)}; another coat moves it, no "
        "day is a promise"
        for room, who, of, out in said
    ]


def _by_what_they_do(
    lines: Iterable[tuple[str, StaysOut, Out]],
) -> list[tuple[str, str, StaysOut, Out]]:
    """Put together those who stay out of a room alike, by their names."""
    alike: dict[tuple[object, ...], list[tuple[str, StaysOut, Out]]] = {}
    for room, of, out in lines:
        key = room, of.out, of.asks, out.look, out.advised_d
        alike.setdefault(key, []).append((room, of, out))
    return [
        (each[0][0], names(of.who for _, of, _ in each), each[0][1], each[0][2])
        for each in alike.values()
    ]


def _out_words(room: str, who: str, of: StaysOut, out: Out, clock: Clock) -> str:
    when = "no day can be said in this air"
    if out.look is not None:
        look = half_hour_up(out.look, clock.zone)
        local = look.astimezone(clock.zone)
        when = f"back to smell not before {day_of(look, clock.zone)} {local:%H:%M}"
    longer = ", longer in this air" if out.slow and out.look is not None else ""
    longer += ", longer in a room without exhaust" if out.shut else ""
    low, high = out.advised_d
    ranges = f"advice runs from {low:g} to {high:g} d after the last coat"
    return f"{room}: {who} {of.out}: {when}{longer} ({ranges}); {of.asks}"


_NO_PROMISE = (
    "then only where whoever comes in from outdoors smells nothing: a day to look, no promise; "
    "another coat begins it again"
)


# Why no amount of air in the room is the answer, and what is; `NoFigure` by its word.
_NO_FIGURE = {
    "sprayed": "sprayed: no air of a room is enough; outdoors, or a booth with its own exhaust",
    "isocyanate": "isocyanate: no air of a room is enough; supplied air, as its sheet says",
    "formaldehyde": "it gives off formaldehyde: no air of a room is enough; catch it at the source",
    "chlorinated solvent": "chlorinated solvent: never in a shut room; leave it alone",
    "what leaves is not known": "what leaves it is not known: its sheet says; outdoors",
}


def no_figure_words(takes: RoomTakes) -> str:
    """Say why there is no figure, and what to do in its place."""
    assert takes.why_no_figure is not None
    said = _NO_FIGURE.get(takes.why_no_figure.value)
    if said is not None:
        return said
    main = takes.main
    limit = f"{main.name}, limit {main.day_ppm:.0f} ppm" if main else "a low limit"
    return f"{limit}: thinning it with air is no answer; outdoors, or catch it at the source"


def air_words(takes: RoomTakes) -> str:
    """Say in one line how much of a finish a room's air takes; empty: nothing to say."""
    if takes.outdoors:
        return ""
    if takes.why_no_figure is not None:
        return no_figure_words(takes)
    if takes.volume_m3 is None or takes.day_ml is None:
        return ""
    told = ", ".join(_room_words(takes))
    over = [f"the day's limit from {at_most_millilitres(takes.day_ml)} on"]
    if takes.short_ml is not None:
        over.append(f"that of 15 minutes from {at_most_millilitres(takes.short_ml)}")
    elif takes.fire_ml is not None:
        over.append(f"a tenth of the explosive from {at_most_millilitres(takes.fire_ml)}")
    return f"{told}: over {', '.join(over)}; outdoors, fewer parts at once, or waterborne"


def _room_words(takes: RoomTakes) -> Iterator[str]:
    assert takes.volume_m3 is not None
    yield f"{takes.room} {cubic_metres(takes.volume_m3)}"
    if takes.exhaust_m3_h is None:
        yield "no exhaust measured"
    else:
        yield f"exhaust {cubic_metres_an_hour(takes.exhaust_m3_h)}"


def evening_words(found: EveningAir) -> str:
    """Say what an evening comes to in a room, which limits that passes, and what would do."""
    each = names(f"{millilitres(ml)} of {product}" for product, ml in found.amounts)
    least = "at least " if found.unmeasured else ""
    shut = "no exhaust measured"
    if found.exhaust_m3_h is not None:
        mixing = f"mixing {found.mixing:g}" + ("" if found.mixing_told else ", none told")
        shut = f"exhaust {cubic_metres_an_hour(found.exhaust_m3_h)}, {mixing}"
    vapour = litres_of_vapour(found.air.vapour_l)
    of = f"{found.room} {cubic_metres(found.volume_m3)}, {shut}"
    passed = f"{_weighs(found)} over {names(_limits(found.air))} on average, at your face far more"
    return f"{of}: {least}{each} this evening, {vapour} of vapour: {passed}; {_would_do(found)}"


def _weighs(found: EveningAir) -> str:
    return "NOT ENOUGH AIR," if found.air.weighs is Weighs.NOT_ENOUGH else "it goes"


def _limits(air: Air) -> Iterator[str]:
    if air.of_lel > TENTH:
        yield "a tenth of the explosive limit (nothing lit, out until it is aired)"
    if air.of_short is not None and air.of_short > 1:
        yield "the limit of 15 minutes"
    if air.of_day > 1:
        yield "the day's limit"


def _would_do(found: EveningAir) -> str:
    ways = ["outdoors"]
    if found.fewer is not None and found.fewer < found.pieces:
        ways.append(f"fewer parts: {found.fewer} of the {found.pieces}")
    elif found.less_ml is not None:
        ways.append(f"less at once: {at_most_millilitres(found.less_ml)}")
    if found.later_h is not None:
        ways.append(f"{wait_words(timedelta(hours=found.later_h))} longer between")
    ways.append(f"in water: {' or '.join(found.instead)}" if found.instead else "a waterborne")
    return ", ".join(ways)


def air_lines(takes: Sequence[RoomTakes]) -> list[tuple[str, str]]:
    """Return, by product, what the air of its room takes of it."""
    said = ((each.product, air_words(each)) for each in takes)
    return [(product, words) for product, words in said if words]
