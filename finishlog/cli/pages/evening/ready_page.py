"""The screen of the evening."""

from __future__ import annotations

import shlex
from collections.abc import Iterable, Sequence
from datetime import timedelta
from typing import TYPE_CHECKING

from msgspec.structs import replace

from finishlog.cli.pages.evening.cans_page import mixed_section
from finishlog.cli.pages.evening.state_words import kept_row, prepared_rows
from finishlog.cli.pages.evening.words import (
    coat_words,
    deed,
    learnt_words,
    may_be,
    name_of,
    rags_section,
    reason,
    taken_up,
    together,
    usual_wanted,
)
from finishlog.cli.terminal.page import Page, Section, Tone
from finishlog.cli.typed.figures.measures import show_air
from finishlog.cli.words.finding_lines import before_text, remedies
from finishlog.cli.words.finding_words import (
    barred_by,
    remedy,
    sentence,
    short,
    waits_for,
    with_remedy,
)
from finishlog.core.findings import HURTS, Answer, Level, is_told_once
from finishlog.core.log.shown_times import length_words
from finishlog.core.measure.quantities import celsius, typed_celsius
from finishlog.core.safety.rags import Severity

if TYPE_CHECKING:
    from finishlog.asks.bench.fits import Fits
    from finishlog.asks.bench.ready import PartMilestone, Ready, RoomLine
    from finishlog.asks.bench.uneven import UnevenLine
    from finishlog.asks.look.standing import LearntDate, Standing
    from finishlog.clock import Clock
    from finishlog.core.findings import Finding

FOLD_PAST = 6


def ready_page(answer: Ready, clock: Clock, *, verbose: bool) -> Page:
    """Lay out what may be done, most urgent first."""
    page = Page()
    in_danger = any(line.is_dangerous for line in answer.rags)
    lit = any(line.lit for line in answer.vapour)
    if lit:
        _vapour(page, answer, clock)
    if in_danger:
        _rags(page, answer, clock)
    hurts = [line for line in (*answer.stopped, *answer.bench) if _hurts(line)]
    _danger(page.section("DANGER", Tone.DANGER), hurts)
    _head(page, answer, clock)
    if not in_danger:
        _rags(page, answer, clock)
    if not lit:
        _vapour(page, answer, clock)
    mixed_section(page.section("MIXED, IN CANS"), answer.mixed, answer.cans, clock)
    if answer.fits is None:
        _bench(page.section("BENCH NOW"), answer.bench, clock, verbose)
    else:
        _fits(page, answer.fits, clock, verbose)
    if answer.takes:
        from finishlog.cli.pages.evening.vapour_page import air_lines

        page.section("AIR, ON AVERAGE: FAR MORE AT YOUR FACE").each(air_lines(answer.takes))
    before = page.section("BEFORE YOU OPEN IT")
    for line in answer.before:
        tone = Tone.HEAD if line.level is Level.CAUTION else Tone.PLAIN
        before.row(" and ".join(line.products), before_text(line), tone=tone)
    stopped = [line for line in answer.stopped if line not in hurts]
    _stopped(page.section("STOPPED"), stopped, verbose)
    _waiting(page.section("LEAVE ALONE"), answer, clock, verbose)
    _together(page.section("PUT TOGETHER, PACKED"), answer, clock, verbose)
    _uneven(page.section("FACES UNEVEN"), answer.uneven, clock, verbose)
    kept = page.section("KEPT")
    set_aside = answer.set_aside
    kept.each((name_of(s), kept_row(s, clock)) for s in answer.kept if s not in set_aside)
    aside = page.section("SET ASIDE")
    aside.each(((name_of(s), taken_up(s), kept_row(s, clock)) for s in set_aside), Tone.FAINT)
    _nothing(page, answer, clock)
    return page


def _head(page: Page, answer: Ready, clock: Clock) -> None:
    """Say when it is, what air the rooms that matter have, and what it is good for."""
    local = clock.now.astimezone(clock.zone)
    when = f"{local:%a} {local.day} {local:%b}, {local:%H:%M}"
    shown = [room for room in answer.rooms if room.in_use or room.air]
    words = [_room_words(room, clock, several=len(answer.rooms) > 1) for room in shown]
    page.line(" · ".join([when, *words[:1]]), Tone.HEAD)
    page.lines(words[1:], Tone.HEAD)
    section = page.section()
    for room in shown:
        where = f"{room.room}, " if len(shown) > 1 else ""
        for how, names in together((_fit(how), name) for name, how in room.fitness).items():
            what = " and ".join(names) if len(names) < 3 else ", ".join(names)
            section.row(f"{where}{what}: {how}")
    if answer.shop_open is False and answer.shop_opens:
        opens = clock.words(answer.shop_opens)
        page.line(f"the shop is shut; it opens {opens}")


def _fit(how: Finding) -> str:
    """Say how a room takes a coat; of what may hurt somebody also what to do."""
    # The row names what is to go on: alike findings stand in one.
    how = replace(how, says=tuple(said for said in how.says if said[0] != "names"))
    if how.rule not in HURTS:
        return sentence(how)
    # What stops may not be due yet: the row says what must be so before it is.
    first = waits_for(how) if how.level is Level.STOP else ""
    return f"{sentence(how)}; waits for {first}" if first else with_remedy(how)


def _room_words(room: RoomLine, clock: Clock, *, several: bool) -> str:
    if room.air is None or room.read_at is None:
        where = f" --room {shlex.quote(room.room)}" if several else ""
        return (
            f"{room.room}: air not read today, log it: finishlog air {typed_celsius(17)} 58%{where}"
        )
    supposed = " supposed" if room.humidity_supposed else ""
    words = f"{room.room} {show_air(room.air)}{supposed}, read {clock.words(room.read_at)}"
    if room.tonight_c is not None:
        words += f", tonight {celsius(room.tonight_c, 1)}"
    elif room.coldest_night_c is not None:
        words += f", nights to {celsius(room.coldest_night_c, 1)}"
    elif room.asks_night and room.in_use:
        say = f"finishlog room night {shlex.quote(room.room)} {typed_celsius(8)}"
        words += f", how cold its nights get was not told: {say}"
    return words


def _rags(page: Page, answer: Ready, clock: Clock) -> None:
    lines = [line for line in answer.rags if line.severity is not Severity.QUIET]
    lines.sort(key=lambda line: not line.is_dangerous)
    rags_section(page, lines, clock, whole=False)


def _vapour(page: Page, answer: Ready, clock: Clock) -> None:
    if answer.vapour:
        from finishlog.cli.pages.evening.vapour_page import vapour_rows

        vapour_rows(page.section(), answer.vapour, clock)
    if answer.people:
        from finishlog.cli.pages.evening.vapour_page import people_rows

        page.section("WHO STAYS OUT").each((words,) for words in people_rows(answer.people, clock))


def _bench(section: Section, lines: Sequence[Standing], clock: Clock, verbose: bool) -> None:
    # What went wrong before, and what is asked before work, is said once, of the first line.
    lessons = [*dict.fromkeys(f for line in lines for f in line.findings if is_told_once(f))]
    for line in lines:
        tone = Tone.GO if line.answer in {Answer.GO, Answer.SCUFF} else Tone.PLAIN
        tone = Tone.DANGER if line.answer is Answer.DEADLINE else tone
        section.row(deed(line), name_of(line), coat_words(line), reason(line, clock), tone=tone)
        if line.learnt is not None:
            section.row("", "", "", learnt_words(line.learnt, clock), tone=Tone.FAINT)
        if verbose:
            section.each((("", "", "", *row[1:]) for row in prepared_rows(line, clock)), Tone.FAINT)
        findings = line.findings if verbose else [f for f in lessons if f in line.findings]
        lessons = [f for f in lessons if f not in line.findings]
        section.each((("", "", "", words) for words in remedies(findings)), Tone.FAINT)


def _fits(page: Page, fits: Fits, clock: Clock, verbose: bool) -> None:
    """Show what fits, in the order to do it, then what does not."""
    have = length_words(timedelta(minutes=fits.minutes))
    takes = length_words(timedelta(minutes=fits.takes_min))
    counted = f": {takes} WITH SET-UP AND CLEAN-UP" if fits.lines else ""
    section = page.section(f"IN {have}{counted}")
    _bench(section, fits.lines, clock, verbose)
    if fits.left_out and not fits.lines:
        section.row("nothing of it fits")
    _bench(page.section("TAKES LONGER"), fits.left_out, clock, verbose)


def _hurts(line: Standing) -> bool:
    """Tell whether what holds it up would hurt whoever does it all the same."""
    return line.binds is not None and line.binds.level is Level.STOP and line.binds.rule in HURTS


def _danger(section: Section, lines: Iterable[Standing]) -> None:
    """Say what would hurt, and what to do first."""
    for line in lines:
        assert line.binds is not None
        section.row(name_of(line), sentence(line.binds), tone=Tone.DANGER)
        section.row("", remedy(line.binds))


def _stopped(section: Section, lines: Sequence[Standing], verbose: bool) -> None:
    for line in lines:
        section.row(name_of(line), coat_words(line), f"{line.answer.value}: {short(line.because)}")
        shown = line.findings if verbose else [f for f in (line.binds,) if f and remedy(f)]
        for finding in shown:
            section.row("", "", f"to mend it: {remedy(finding)}" if remedy(finding) else "")


def _waiting(section: Section, answer: Ready, clock: Clock, verbose: bool) -> None:
    lines = answer.drying
    said: set[LearntDate] = set()
    shown = lines if verbose or len(lines) <= FOLD_PAST else lines[: FOLD_PAST - 1]
    for line in shown:
        opens = ""
        shut_until = None if answer.shop_open else answer.shop_opens
        if shut_until and line.high and line.high < shut_until:
            opens = f"; the shop opens {clock.words(shut_until)}"
        section.row(name_of(line), line.on_it, reason(line, clock) + opens)
        if line.learnt is not None and line.learnt not in said:
            said.add(line.learnt)
            section.row("", "", learnt_words(line.learnt, clock), tone=Tone.FAINT)
    section.each(((words,) for words in usual_wanted(shown)), Tone.FAINT)
    if len(shown) < len(lines):
        rest = len(lines) - len(shown)
        section.row(f"and {rest} more that wait longer: finishlog ready -v", tone=Tone.FAINT)


def _together(section: Section, answer: Ready, clock: Clock, verbose: bool) -> None:
    for line in answer.glue_ups:
        ready = line.answer is Answer.GO
        words = "glue up: every member may be clamped" if ready else reason(line, clock)
        section.row(name_of(line), words, tone=Tone.GO if ready else Tone.PLAIN)
    for each in answer.milestones:
        section.row(each.label.full, _milestone(each, clock))


def _uneven(section: Section, lines: Sequence[UnevenLine], clock: Clock, verbose: bool) -> None:
    """Name the parts that may cup, what each face carries, and for how long it has been so."""
    for line in lines:
        days = (clock.now - line.since).days
        since = f"since {clock.words(line.since)}" + (f" ({days} d)" if days else "")
        name = line.label.full
        more = f"{line.ahead} {_coats(line.ahead_coats)}, {line.behind} {_coats(line.behind_coats)}"
        section.row(name, more, f"{since}: it may cup; coat {line.behind} soon, air to both faces")
    if lines and verbose:
        section.row("", "", f"note: {lines[0].sentence}", tone=Tone.FAINT)
        section.row("", "", f"note: {lines[0].dissent}", tone=Tone.FAINT)


def _coats(count: int) -> str:
    return "uncoated" if not count else "1 coat" if count == 1 else f"{count} coats"


def _milestone(each: PartMilestone, clock: Clock) -> str:
    words = [may_be(each.reached)] if each.reached else ["coats done"]
    if each.next and each.blocked:
        words.append(f"{each.next.value} is blocked: {barred_by(each.blocked)}")
    elif each.next and each.next_at and each.next_at > clock.now:
        words.append(f"{may_be(each.next)} after {clock.wait_until(each.next_at)}")
    elif each.next and not each.air_read:
        words.append(f"{each.next.value} by label time only: test first, the air was not measured")
    return "; ".join(words)


def _nothing(page: Page, answer: Ready, clock: Clock) -> None:
    """Say what comes next when nothing can be done, and how to begin when there is nothing."""
    if answer.empty:
        page.line("Nothing is on record yet. Begin with a coat: finishlog log stool/seat PRODUCT")
    elif not answer.bench and not any(g.answer is Answer.GO for g in answer.glue_ups):
        if answer.next_at:
            when = clock.wait_until(answer.next_at)
            page.line(f"Nothing to do at the bench now. Next: {answer.next_what} after {when}")
        else:
            page.line("Nothing to do at the bench now.")
