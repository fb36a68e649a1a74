"""All the safety notes, or those of one thing: safety."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import Verbose
from finishlog.cli.answering.run import Run
from finishlog.core.finish.classes import Method


def safety(
    here: Run,
    about: Annotated[
        list[str] | None,
        typer.Argument(
            metavar="[PRODUCT|PROJECT|ROOM|WOOD|TOPIC]...",
            help="A product, class, project, part, room or wood; rags, fire, dust, lead, mask ...",
        ),
    ] = None,
    of: Annotated[
        str | None,
        typer.Option("--of", metavar="PRODUCT", help="In a room: what its air makes of it."),
    ] = None,
    amount: Annotated[
        str | None, typer.Option("--amount", help="Of so much: 250ml, 1/2 pt. With --of.")
    ] = None,
    minutes: Annotated[
        str | None, typer.Option("--minutes", metavar="TIME", help="Put on within: 40min.")
    ] = None,
    method: Annotated[Method | None, typer.Option("--method", help="brush, wipe or spray.")] = None,
    verbose: Verbose = False,
) -> Answered:
    """Say what can hurt, the worst first: all of it, or of one thing."""
    from finishlog.asks.things.safety import safety as ask
    from finishlog.asks.things.ventilation import AskedOfAir
    from finishlog.cli.pages.questions.safety_page import safety_page
    from finishlog.cli.typed.figures.amounts import volume
    from finishlog.cli.typed.times.durations import duration

    asked = AskedOfAir(
        product=of,
        amount_ml=1000 * volume(amount, here.units.volume) if amount else None,
        time=duration(minutes) if minutes else None,
        method=method,
    )
    answer = ask(here.context, " ".join(about or ()), asked)
    page = lambda: safety_page(answer, here.facts, verbose=verbose)  # noqa: E731
    return Answered(answer, page)


def register(app: typer.Typer) -> None:
    """Add the command."""
    command(app, "safety")(safety)
