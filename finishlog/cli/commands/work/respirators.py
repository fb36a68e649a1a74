"""What one breathes through: respirator."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import At, NoteText
from finishlog.cli.answering.run import Run
from finishlog.core.log.words import Filter, MaskKept, RespiratorDeed


def respirator(
    here: Run,
    name: Annotated[
        str | None, typer.Argument(metavar="[NAME]", help="half, hood; else list them.")
    ] = None,
    deed: Annotated[
        RespiratorDeed | None, typer.Argument(metavar="[DEED]", help="opened, worn, gone.")
    ] = None,
    hours: Annotated[
        str | None, typer.Argument(metavar="[TIME]", help="How long it was worn: 2h.")
    ] = None,
    holds: Annotated[Filter | None, typer.Option("--for", help="What it holds back.")] = None,
    kept: Annotated[
        MaskKept | None, typer.Option("--kept", help="How it is kept between: open, bag.")
    ] = None,
    at: At = None,
    note: NoteText = "",
) -> Answered:
    """Log a respirator opened, worn or gone; without one, list them. None is proof of safety."""
    from finishlog.acts.air.respirator import log_respirator
    from finishlog.asks.things.respirators import respirators
    from finishlog.cli.pages.shop.respirator_page import respirator_page, respirators_page
    from finishlog.cli.typed.times.durations import duration

    if name is None:
        lines = respirators(here.context)
        return Answered(lines, lambda: respirators_page(lines, here.clock))
    answer = log_respirator(
        here.context,
        name=name,
        deed=deed or RespiratorDeed.OPENED,
        holds=holds,
        worn=duration(hours) if hours else None,
        at=here.moment(at),
        note=note,
        kept=kept,
    )
    return Answered(answer, lambda: respirator_page(answer, here.clock))


def register(app: typer.Typer) -> None:
    """Add the command."""
    command(app, "respirator")(respirator)
