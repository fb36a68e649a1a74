"""The page before the light goes out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from finishlog.cli.pages.evening.state_words import kept_row, prepared_rows
from finishlog.cli.pages.evening.vapour_page import people_rows, vapour_rows
from finishlog.cli.pages.evening.whereabouts_page import closing_words
from finishlog.cli.pages.evening.words import (
    name_of,
    rags_name,
    rags_words,
    reason,
)
from finishlog.cli.terminal.page import Page, Section, Tone
from finishlog.cli.words.finding_lines import names
from finishlog.cli.words.finding_words import short
from finishlog.core.commands import Do
from finishlog.core.log.words import MaskKept, RespiratorDeed
from finishlog.core.measure.quantities import celsius
from finishlog.core.mixing.containers import Lid
from finishlog.core.mixing.keeping import UNKNOWN_END
from finishlog.core.safety.rags import RagsState, Severity

if TYPE_CHECKING:
    from finishlog.asks.bench.leave import FrostLine, HeatLine, Leave
    from finishlog.asks.bench.open_cans import MixLine
    from finishlog.clock import Clock

NOT_WITH_FLAME = (
    "warm the room first, with the heat source outside the vapour: no flame, no glowing element, "
    "no fan heater near wet solvent finish; is the heating's blower off, and its return air shut?"
)
_SOLVENT_RAGS = (
    "they do not heat by themselves, a spark lights them: flat outdoors until dry, or a closed "
    "metal can, apart from oily ones"
)


def leave_page(answer: Leave, clock: Clock) -> Page:
    """Say what must be done first, what needs warmth, what closes, when the next visit is."""
    page = Page()
    if answer.not_yet:
        page.line("not yet:", Tone.DANGER)
    section = page.section()
    lit = any(line.lit for line in answer.vapour)
    if lit:
        vapour_rows(section, answer.vapour, clock)
    _danger(section, answer, clock)
    for mix in answer.mixes:
        danger = mix.overdue or mix.lid is Lid.NEVER
        section.row("mixed", _mix(mix, clock), tone=Tone.DANGER if danger else Tone.PLAIN)
    _guns(section, answer)
    if not lit:
        vapour_rows(section, answer.vapour, clock)
    section.each(("people", words) for words in people_rows(answer.people, clock))
    bag = "into a closed bag, it fills from the air of the shop"
    section.each(("mask", f"{name}: {bag}: {_bagged(name)}") for name in answer.masks)
    for heater in answer.heaters:
        until = clock.words(heater.span.latest)
        section.row("heater", f"{heater.room}: on by the log until {until} (act {heater.act})")
    for line in answer.heat:
        section.row("heat", _heat(line, clock), tone=Tone.HEAD if line.harms else Tone.PLAIN)
    if answer.heat:
        section.row("", NOT_WITH_FLAME, tone=Tone.FAINT)
    section.each((("frost", _frost(can)) for can in answer.frost), Tone.HEAD)
    for tape in answer.tape:
        section.row("tape", f"{tape.label}: on since {clock.words(tape.since)}")
    section.each(("closes", closing_words(each, clock)) for each in answer.closing)
    section.each(("kept", f"{name_of(s)}: {kept_row(s, clock)}") for s in answer.look_at)
    for each in answer.prepared:
        rows = prepared_rows(each, clock)
        section.each(("wood", f"{name_of(each)}: {words}") for _, words in rows)
    _next(section, answer, clock)
    if not answer.not_yet:
        section.row("look", f"round once more: {_besides(answer)}, and knows no more")
    return page


def _bagged(name: str) -> str:
    return f"{Do.RESPIRATOR(name, RespiratorDeed.WORN, '2h', kept=MaskKept.BAG.value)}"


_DROWNED = "under water in a lidded can, outdoors"


def _guns(section: Section, answer: Leave) -> None:
    """Ask after the gun, its filters and the air of the room, by what was sprayed this evening."""
    if not answer.sprayed:
        if not answer.mixes:
            section.row("guns", "nothing mixed is on record; guns and brushes clean?")
        return
    dirty = [each.product for each in answer.sprayed if not each.cleaned]
    asked = "gun, cup and needle clean?" if dirty else "its gun is clean by the log"
    sprayed = dirty or [each.product for each in answer.sprayed]
    section.row("guns", f"{names(sprayed)} sprayed tonight: {asked}")
    burns = any(each.burns_dry for each in answer.sprayed)
    how = ": dry lacquer burns fiercely, use tools that do not spark" if burns else ""
    section.row("", f"overspray off the filters, walls and floor{how}?")
    heats = [each.product for each in answer.sprayed if each.heats]
    if heats:
        hot = " and ".join(heats)
        section.row("", f"filters, paper and cloths with {hot} heat like rags: {_DROWNED}?")
    solvent = [each for each in answer.sprayed if each.solvent]
    if solvent:
        rooms = dict.fromkeys(room for each in solvent for room in each.rooms)
        where = f" in {' and '.join(rooms)}" if rooms else ""
        section.row(
            "",
            f"solvent vapour{where}: exhaust on until the work has dried off, cans closed, no "
            "flame, no pilot light, no glowing heater?",
        )


def _besides(answer: Leave) -> str:
    """Say that nothing is open, beside what was asked after: the log does not know of that."""
    asked = [
        *(["the rags that finishlog rags lists"] if answer.rags else []),
        *(["the solvent rags"] if answer.solvent_rags else []),
        *(["what is mixed"] if answer.mixes else []),
        *(["the gun and its filters"] if answer.sprayed else []),
        *(["the vapour"] if any(each.solvent for each in answer.sprayed) else []),
    ]
    if not asked:
        return "the log shows nothing open"
    return f"beside {names(asked)} the log shows nothing open"


def _danger(section: Section, answer: Leave, clock: Clock) -> None:
    for line in sorted(answer.rags, key=lambda line: not line.is_dangerous):
        # The can is emptied at the end of the day, and this is the end of the day.
        if line.severity is Severity.QUIET and line.state is not RagsState.CAN:
            continue
        words = f"{rags_name(line)}: {rags_words(line, clock)}"
        section.row("rags", words, tone=Tone.DANGER if line.is_dangerous else Tone.PLAIN)
    if any(line.state is RagsState.OPEN for line in answer.rags):
        section.row("", "gloves, pads, brushes, paper, steel wool, dust count too", tone=Tone.FAINT)
    if answer.solvent_rags:
        section.row("rags", f"solvent rags of {names(answer.solvent_rags)}: {_SOLVENT_RAGS}")
    for each in answer.deadlines:
        when = clock.words(each.closes)
        section.row("now", f"{each.label}: {short(each.because)} before {when}", tone=Tone.DANGER)


def _mix(mix: MixLine, clock: Clock) -> str:
    name = f"{mix.name}: {mix.product}" + (f", {mix.ratio}" if mix.ratio else "")
    if mix.lid is Lid.NEVER:
        return f"{name}; NEVER CLOSE IT, a closed can may burst: keep none of it for tomorrow"
    if mix.use_by is None:
        keeps = mix.lid is Lid.CLOSED
        return f"{name}; it keeps: close it" if keeps else f"{name}; it hardens: {UNKNOWN_END}"
    if mix.overdue:
        return f"{name}; its pot life is OVER: do not use it, {mix.lid}, and clean the gun"
    until = clock.closes_at(mix.use_by)
    return f"{name}; use it by {until}, {mix.lid}; clean the gun: it hardens in there"


def _heat(line: HeatLine, clock: Clock) -> str:
    who = ", ".join(line.labels)
    least = celsius(line.least_c, 1)
    until = f"until about {clock.wait_until(line.until)}" if line.until else "on"
    words = f"{who} ({line.product}) wants {least} {until}"
    if line.expected_c is None:
        if not line.room:
            return f"{words}; in which room it stands is not on record: finishlog room new NAME"
        return f"{words}; how cold {line.room} gets at night is not known: finishlog room night"
    tonight = celsius(line.expected_c, 1)
    harm = ": the film would stay weak" if line.harms else ": it stands still meanwhile"
    return f"{words}; nights in {line.room} go to {tonight}{harm}"


def _frost(can: FrostLine) -> str:
    least, coldest = (celsius(c, 1) for c in (can.least_c, can.coldest_c))
    return (
        f"{can.name} ({can.product}) must not freeze: keep it above {least}; nights in {can.room} "
        f"go to {coldest}, and where it stands is not on record"
    )


def _next(section: Section, answer: Leave, clock: Clock) -> None:
    if answer.next_visit is None:
        section.row("next", "when the shop opens is not known: finishlog shop hours")
        return
    opens = clock.words(answer.next_visit)
    section.row("next", f"the shop opens {opens}")
    for line in answer.ready_then:
        section.row("", f"{name_of(line)}: {reason(line, clock)}")
