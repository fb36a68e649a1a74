"""The heater: heat."""

from __future__ import annotations

import re
from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.command import command
from finishlog.cli.answering.run import Run

_WARM = r"(?:^|\s)(?:(?:at|to) )?([+-]?\d{1,3}(?:[.,]\d)? ?(?:°|deg)? ?[cf]!?)(?=\s|$)"


def heat(
    here: Run,
    words: Annotated[
        list[str] | None,
        typer.Argument(
            metavar="[FROM till UNTIL] [TEMPERATURE]", help="tonight 16 till 23 18C; Sat 9 till 17."
        ),
    ] = None,
    room: Annotated[
        str | None, typer.Option("--room", help="Which room, if there are more.")
    ] = None,
) -> Answered:
    """Log that a heater runs, now or later; without words, show what is ahead."""
    from finishlog.acts.air.heat import heat as act
    from finishlog.acts.air.heat import heat_ahead
    from finishlog.cli.pages.shop.heating_page import heat_ahead_page, heat_page
    from finishlog.cli.typed.figures.measures import temperature
    from finishlog.cli.typed.times.time_heated import heated_span

    if not words:
        lines = heat_ahead(here.context)
        return Answered(lines, lambda: heat_ahead_page(lines, here.clock))
    typed = " ".join(words)
    warm = re.search(_WARM, typed, re.IGNORECASE)
    when = f"{typed[: warm.start()]} {typed[warm.end() :]}" if warm else typed
    answer = act(
        here.context,
        span=heated_span(when.strip(), here.clock.now, here.clock.zone),
        temperature_c=temperature(warm[1], here.temperature) if warm else None,
        room=room,
    )
    return Answered(answer, lambda: heat_page(answer, here.clock))


def register(app: typer.Typer) -> None:
    """Add the command."""
    command(app, "heat")(heat)
