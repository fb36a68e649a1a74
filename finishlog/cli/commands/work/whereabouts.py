"""Where parts and people are: move, aside, resume, away, leave."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.answer import show_answer
from finishlog.cli.answering.asking import settled
from finishlog.cli.answering.options import At, Json, SomeParts, desk
from finishlog.errors import ANSWER_IS_BAD, UsageFault


def move(
    context: typer.Context,
    words: Annotated[
        list[str], typer.Argument(metavar="PART... ROOM", help="Parts, then the room.")
    ],
    at: At = None,
    json: Json = False,
) -> None:
    """Log that parts were carried into another room."""
    from finishlog.acts.pieces.move import Carried
    from finishlog.acts.pieces.move import move as carry
    from finishlog.cli.pages.evening.whereabouts_page import move_page

    here = desk(context)
    if len(words) < 2:
        raise UsageFault("a move needs parts and a room", "finishlog move doors house")
    when = here.moment(at)

    def attempt(parts: tuple[str, ...]) -> Carried:
        return carry(here.context, parts=parts, room=words[-1], at=when)

    answer = settled(here, tuple(words[:-1]), attempt)
    show_answer(here, "move", answer, json, lambda: move_page(answer, here.clock))


def aside(
    context: typer.Context,
    parts: SomeParts,
    next_time: Annotated[
        str, typer.Option("--next", metavar="TEXT", help="What is meant to come next.")
    ] = "",
    at: At = None,
    json: Json = False,
) -> None:
    """Set parts aside on purpose: no alarm comes from them until they are taken up again."""
    from finishlog.acts.pieces.pause import Paused, set_aside
    from finishlog.cli.pages.evening.whereabouts_page import pause_page

    here = desk(context)
    when = here.moment(at)

    def attempt(typed: tuple[str, ...]) -> Paused:
        return set_aside(here.context, parts=typed, next_time=next_time, at=when)

    answer = settled(here, tuple(parts), attempt)
    show_answer(here, "aside", answer, json, lambda: pause_page(answer, here.clock))


def resume(context: typer.Context, parts: SomeParts, at: At = None, json: Json = False) -> None:
    """Take parts up again, and see what they need now."""
    from finishlog.acts.pieces.pause import Paused
    from finishlog.acts.pieces.pause import resume as take_up
    from finishlog.cli.pages.evening.whereabouts_page import pause_page

    here = desk(context)
    when = here.moment(at)

    def attempt(typed: tuple[str, ...]) -> Paused:
        return take_up(here.context, parts=typed, at=when)

    answer = settled(here, tuple(parts), attempt)
    show_answer(here, "resume", answer, json, lambda: pause_page(answer, here.clock))


def away(
    context: typer.Context,
    since: Annotated[
        str | None, typer.Argument(metavar="[FROM]", help="'Sat 28 Nov', 'Fri 18:00', tomorrow.")
    ] = None,
    until: Annotated[
        str | None, typer.Argument(metavar="[UNTIL]", help="The last day or hour; else that day.")
    ] = None,
    note: Annotated[str, typer.Option("--note", help="Words to keep with it.")] = "",
    json: Json = False,
) -> None:
    """Log that nobody is in the shop for a time; without dates, show the times away."""
    from finishlog.acts.pieces.away import away as be_away
    from finishlog.acts.pieces.away import times_away
    from finishlog.cli.pages.evening.whereabouts_page import away_page, times_away_page
    from finishlog.cli.typed.times.time_away import away_span

    here = desk(context)
    if since is None:
        spans = times_away(here.context)
        show_answer(here, "away", spans, json, lambda: times_away_page(spans, here.clock))
        return
    span = away_span(since, until, here.clock.now, here.clock.zone)
    answer = be_away(here.context, span=span, reason=note)
    show_answer(here, "away", answer, json, lambda: away_page(answer, here.clock))


def leave(
    context: typer.Context,
    json: Json = False,
    exit_code: Annotated[
        bool,
        typer.Option("--exit-code", help="Leave with 1 when something must be done first."),
    ] = False,
) -> None:
    """Before the light goes out: rags, mixes and guns, heat, tape, what closes meanwhile."""
    from finishlog.asks.bench.leave import leave as answer_leave
    from finishlog.cli.pages.evening.leave_page import leave_page

    here = desk(context)
    answer = answer_leave(here.context)
    show_answer(here, "leave", answer, json, lambda: leave_page(answer, here.clock))
    if exit_code and answer.not_yet:
        raise typer.Exit(ANSWER_IS_BAD)


def register(app: typer.Typer) -> None:
    """Add the commands of this group."""
    for command in (move, aside, resume, away, leave):
        app.command(command.__name__)(command)
