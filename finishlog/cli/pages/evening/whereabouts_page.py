"""Echo where parts and people are."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime, time, timedelta
from typing import TYPE_CHECKING

from finishlog.cli.pages.evening.log_page import standing_lines
from finishlog.cli.pages.evening.words import echo
from finishlog.cli.terminal.page import Page, Tone
from finishlog.core.measure.quantities import celsius, typed_celsius

if TYPE_CHECKING:
    from finishlog.acts.pieces.away import AwaySpan, GoingAway
    from finishlog.acts.pieces.move import Carried
    from finishlog.acts.pieces.pause import Paused
    from finishlog.asks.bench.leave import Closing
    from finishlog.clock import Clock
    from finishlog.core.log.when import When


def move_page(answer: Carried, clock: Clock) -> Page:
    """Echo a move and what the other air means."""
    page = echo(clock, answer.at, answer.labels, f"moved to {answer.room}")
    if answer.was_there:
        page.line(f"caution: by the log already in {answer.room}")
    if answer.from_cold_c is not None:
        page.line(
            f"caution: it comes from {celsius(answer.from_cold_c, 1)}: let it warm up "
            "for some hours before a coat, and wipe off dew; measured: finishlog surface PART 15C"
        )
    if not answer.air_known:
        page.line(
            f"the air of {answer.room} was not read in the last hours: "
            f"finishlog air {typed_celsius(17)} 58% --room {answer.room}"
        )
    return standing_lines(page, answer.standings, clock).line(f"act {answer.act}", Tone.FAINT)


def pause_page(answer: Paused, clock: Clock) -> Page:
    """Echo a stop or a start."""
    done = "taken up again" if answer.going_on else "set aside"
    page = echo(clock, answer.at, answer.labels, done)
    if answer.already_so:
        was = "was not set aside" if answer.going_on else "was set aside already"
        page.line(f"caution: by the log it {was}")
    page.lines(f"next time: {words}" for words in answer.next_time)
    if answer.going_on:
        standing_lines(page, answer.standings, clock)
    return page.line(f"act {answer.act}", Tone.FAINT)


def away_page(answer: GoingAway, clock: Clock) -> Page:
    """Echo an absence, and what closes meanwhile."""
    words = f" ({answer.reason})" if answer.reason else ""
    page = Page().line(f"away {span_words(answer.span, clock)}{words}")
    page.lines(closing_words(each, clock) for each in answer.closing)
    return page.line(f"act {answer.act}", Tone.FAINT)


def times_away_page(spans: Sequence[AwaySpan], clock: Clock) -> Page:
    """List the times away that are not over."""
    return Page.listed(
        ((span_words(each.span, clock), each.reason, f"act {each.act}") for each in spans),
        "no time away is on record: finishlog away 'Sat 28 Nov' 'Sun 6 Dec'",
        "AWAY",
    )


def span_words(span: When, clock: Clock) -> str:
    """Say a span of time: `Sat 28 Nov to the end of Sun 6 Dec`, or to the minute."""
    last = span.latest - timedelta(minutes=1)
    if all(m.astimezone(clock.zone).time() == time() for m in (span.earliest, span.latest)):
        days = [day_words(m, clock) for m in (span.earliest, last)]
        return days[0] if days[0] == days[1] else f"{days[0]} to the end of {days[1]}"
    first = clock.words(span.earliest)
    return f"{first} to {clock.words(span.latest)}"


def day_words(moment: datetime, clock: Clock) -> str:
    """Name a day: `Sun 6 Dec`."""
    local = moment.astimezone(clock.zone)
    return f"{local:%a} {local.day} {local:%b}"


def closing_words(each: Closing, clock: Clock) -> str:
    """Say what closes, and what that costs: a scuff, never the piece."""
    when = clock.closes_at(each.closes)
    return f"{each.label}: {each.product} closes {when}; after that it needs a scuff"
