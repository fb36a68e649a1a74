"""All the safety notes, or those of one thing: safety."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import Verbose
from finishlog.cli.answering.run import Run
from finishlog.core.finish.classes import Method
from finishlog.errors import UsageFault

if TYPE_CHECKING:
    from finishlog.cli.terminal.page import Page


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
    sources: Annotated[
        bool, typer.Option("--sources", help="What each rule, note and figure rests on.")
    ] = False,
    html: Annotated[
        Path | None,
        typer.Option("--html", metavar="FILE", help="The same as a page to print for the wall."),
    ] = None,
    verbose: Verbose = False,
) -> Answered:
    """Say what can hurt, the worst first: all of it, or of one thing."""
    from finishlog.asks.things.safety import safety as ask
    from finishlog.asks.things.safety_sources import safety_sources
    from finishlog.asks.things.ventilation import AskedOfAir
    from finishlog.cli.pages.questions.safety_page import safety_page, sources_page
    from finishlog.cli.typed.figures.amounts import volume
    from finishlog.cli.typed.times.durations import duration

    words = " ".join(about or ())
    if sources:
        rests = safety_sources(here.facts)
        return Answered(rests, lambda: sources_page(rests))
    asked = AskedOfAir(
        product=of,
        amount_ml=1000 * volume(amount, here.units.volume) if amount else None,
        time=duration(minutes) if minutes else None,
        method=method,
    )
    answer = ask(here.context, words, asked)
    if html is not None:
        _write(here, html, safety_page(answer, here.context, verbose=verbose), words)
    return Answered(answer, lambda: safety_page(answer, here.context, verbose=verbose))


def _write(here: Run, file: Path, page: Page, about: str) -> None:
    """Write a page to print; UsageFault where a file of that name is there."""
    from finishlog.cli.pages.questions.safety_page import safety_sheet
    from finishlog.cli.terminal.spelling import spelt

    try:
        with file.open("x", encoding="utf-8") as sheet:
            sheet.write(spelt(safety_sheet(page, about), here.units))
    except FileExistsError:
        raise UsageFault(f"{file} is there already", "name another file") from None
    except OSError as error:
        raise UsageFault(f"{file} cannot be written: {error.strerror}", "name another") from error


def register(app: typer.Typer) -> None:
    """Add the command."""
    command(app, "safety")(safety)
