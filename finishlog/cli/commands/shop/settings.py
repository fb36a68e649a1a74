"""How the program is set up: settings."""

from __future__ import annotations

from typing import Annotated

import typer
from msgspec.structs import replace

from finishlog.cli.answering.answer import Answered, recorded
from finishlog.cli.answering.command import command
from finishlog.cli.answering.run import Run
from finishlog.clock import ZONE, zone_is_given
from finishlog.errors import UsageFault


def settings(
    here: Run,
    name: Annotated[
        str | None,
        typer.Argument(
            metavar="[NAME]", help="temperature, area, volume, weight, film, cut or zone."
        ),
    ] = None,
    value: Annotated[
        str | None, typer.Argument(metavar="[VALUE]", help="F, ft2, qt, lb, mil, Europe/Berlin ...")
    ] = None,
) -> Answered:
    """Show the units you type and read and the shop's time zone, or set one."""
    from finishlog.acts.things.settings import put
    from finishlog.asks.look.settings import settings as answer_settings
    from finishlog.cli.pages.shop.shop_pages import settings_page

    if name is not None:
        if value is None:
            raise UsageFault(f"what should {name!r} be?", f"finishlog settings {name} VALUE")
        made = put(here.context, name, value)
        if made.name == "zone" and zone_is_given():
            made = replace(
                made, detail=f"{made.detail}; {ZONE} names {here.clock.zone.key}, and wins"
            )
        return recorded(made)
    answer = answer_settings(here.context)
    return Answered(answer, lambda: settings_page(answer))


def register(app: typer.Typer) -> None:
    """Add the commands of this group."""
    command(app, "settings")(settings)
