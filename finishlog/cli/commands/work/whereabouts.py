"""Where parts and people are: move, aside, resume, away, leave."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.asking import settled
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import At, SomeParts
from finishlog.cli.answering.run import Run
from finishlog.cli.commands.work.coat_options import KeptSo, kept_as
from finishlog.errors import ANSWER_IS_BAD, UsageFault


def move(
    here: Run,
    words: Annotated[
        list[str], typer.Argument(metavar="PART... ROOM", help="Parts, then the room.")
    ],
    at: At = None,
) -> Answered:
    """Log that parts were carried into another room."""
    from finishlog.acts.pieces.move import Carried
    from finishlog.acts.pieces.move import move as carry
    from finishlog.cli.pages.evening.whereabouts_page import move_page

    if len(words) < 2:
        raise UsageFault("a move needs parts and a room", "finishlog move doors house")
    when = here.moment(at)

    def attempt(parts: tuple[str, ...]) -> Carried:
        return carry(here.context, parts=parts, room=words[-1], at=when)

    answer = settled(here, tuple(words[:-1]), attempt)
    return Answered(answer, lambda: move_page(answer, here.clock))


def aside(
    here: Run,
    parts: SomeParts,
    next_time: Annotated[
        str, typer.Option("--next", metavar="TEXT", help="What is meant to come next.")
    ] = "",
    kept: KeptSo = None,
    at: At = None,
) -> Answered:
    """Set parts aside on purpose: no alarm comes from them until they are taken up again."""
    from finishlog.acts.pieces.pause import Paused, set_aside
    from finishlog.cli.pages.evening.whereabouts_page import pause_page

    when = here.moment(at)

    def attempt(typed: tuple[str, ...]) -> Paused:
        return set_aside(
            here.context, parts=typed, next_time=next_time, at=when, kept=kept_as(kept)
        )

    answer = settled(here, tuple(parts), attempt)
    return Answered(answer, lambda: pause_page(answer, here.clock))


def resume(here: Run, parts: SomeParts, at: At = None) -> Answered:
    """Take parts up again, and see what they need now."""
    from finishlog.acts.pieces.pause import Paused
    from finishlog.acts.pieces.pause import resume as take_up
    from finishlog.cli.pages.evening.whereabouts_page import pause_page

    when = here.moment(at)

    def attempt(typed: tuple[str, ...]) -> Paused:
        return take_up(here.context, parts=typed, at=when)

    answer = settled(here, tuple(parts), attempt)
    return Answered(answer, lambda: pause_page(answer, here.clock))


def away(
    here: Run,
    since: Annotated[
        str | None, typer.Argument(metavar="[FROM]", help="'Sat 28 Nov', 'Fri 18:00', tomorrow.")
    ] = None,
    until: Annotated[
        str | None, typer.Argument(metavar="[UNTIL]", help="The last day or hour; else that day.")
    ] = None,
    note: Annotated[str, typer.Option("--note", help="Words to keep with it.")] = "",
) -> Answered:
    """Log that nobody is in the shop for a time; without dates, show the times away."""
    from finishlog.acts.pieces.away import away as be_away
    from finishlog.acts.pieces.away import times_away
    from finishlog.cli.pages.evening.whereabouts_page import away_page, times_away_page
    from finishlog.cli.typed.times.time_heated import away_span

    if since is None:
        spans = times_away(here.context)
        return Answered(spans, lambda: times_away_page(spans, here.clock))
    span = away_span(since, until, here.clock.now, here.clock.zone)
    answer = be_away(here.context, span=span, reason=note)
    return Answered(answer, lambda: away_page(answer, here.clock))


def leave(
    here: Run,
    exit_code: Annotated[
        bool,
        typer.Option("--exit-code", help="Leave with 1 when something must be done first."),
    ] = False,
) -> Answered:
    """Before the light goes out: rags, mixes and guns, heat, tape, what closes meanwhile."""
    from finishlog.asks.bench.leave import leave as answer_leave
    from finishlog.cli.pages.evening.leave_page import leave_page

    answer = answer_leave(here.context)
    code = ANSWER_IS_BAD if exit_code and answer.not_yet else 0
    return Answered(answer, lambda: leave_page(answer, here.clock), code)


def register(app: typer.Typer) -> None:
    """Add the commands of this group."""
    for each in (move, aside, resume, away, leave):
        command(app, each.__name__)(each)
