"""All the safety notes, or those of one thing: safety."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import Verbose
from finishlog.cli.answering.run import Run


def safety(
    here: Run,
    about: Annotated[
        list[str] | None,
        typer.Argument(
            metavar="[PRODUCT|PROJECT|ROOM|WOOD|TOPIC]...",
            help="A product, class, project, part, room or wood; rags, fire, dust, lead, mask ...",
        ),
    ] = None,
    verbose: Verbose = False,
) -> Answered:
    """Say what can hurt, the worst first: all of it, or of one thing."""
    from finishlog.asks.things.safety import safety as ask
    from finishlog.cli.pages.questions.safety_page import safety_page

    answer = ask(here.context, " ".join(about or ()))
    page = lambda: safety_page(answer, here.facts, verbose=verbose)  # noqa: E731
    return Answered(answer, page)


def register(app: typer.Typer) -> None:
    """Add the command."""
    command(app, "safety")(safety)
