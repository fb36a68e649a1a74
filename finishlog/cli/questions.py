"""Questions: when, why, on, history, past."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answer import show_answer
from finishlog.cli.asking import settled
from finishlog.cli.desk import Desk
from finishlog.cli.options import Json, Parts, SomeParts, desk


def _ids(here: Desk, typed: list[str], *, archived: bool = False) -> tuple[int, ...]:
    from finishlog.asks.parts import part_ids

    return settled(
        here,
        tuple(typed),
        lambda words: part_ids(here.database, here.clock, words, archived=archived),
    )


def when(context: typer.Context, parts: SomeParts, json: Json = False) -> None:
    """Show when a part may be recoated, turned, clamped, stacked, packed, used."""
    from finishlog.asks.when import when as answer_when
    from finishlog.cli.question_pages import when_page

    here = desk(context)
    answer = answer_when(here.database, here.facts, here.clock, _ids(here, parts))
    show_answer(here, "when", answer, json, lambda: when_page(answer, here.clock))


def why(context: typer.Context, parts: SomeParts, json: Json = False) -> None:
    """Show what stands behind the answer: label, air, clock, what binds, what is unknown."""
    from finishlog.asks.why import why as answer_why
    from finishlog.cli.question_pages import why_page

    here = desk(context)
    answer = answer_why(here.database, here.facts, here.clock, _ids(here, parts))
    show_answer(
        here,
        "why",
        answer,
        json,
        lambda: why_page(answer, here.facts, here.clock, here.temperature),
    )


def on(context: typer.Context, parts: SomeParts, json: Json = False) -> None:
    """Show what is on a part, face by face, and what comes next."""
    from finishlog.asks.on import on as answer_on
    from finishlog.cli.question_pages import on_page

    here = desk(context)
    answer = answer_on(here.database, here.facts, here.clock, _ids(here, parts))
    show_answer(here, "on", answer, json, lambda: on_page(answer, here.clock))


def history(context: typer.Context, parts: Parts = None, json: Json = False) -> None:
    """Show everything that was typed, with what was amended and undone."""
    from finishlog.asks.history import history as answer_history
    from finishlog.cli.question_pages import history_page

    here = desk(context)
    ids = _ids(here, parts, archived=True) if parts else ()
    answer = answer_history(here.database, here.clock, ids)
    show_answer(here, "history", answer, json, lambda: history_page(answer, here.clock))


def past(
    context: typer.Context,
    species: Annotated[str, typer.Argument(metavar="SPECIES", help="ash, cherry, walnut ...")],
    json: Json = False,
) -> None:
    """Show what was done on a wood before, and how it turned out."""
    from finishlog.asks.past import past as answer_past
    from finishlog.cli.question_pages import past_page

    here = desk(context)
    answer = answer_past(here.database, here.facts, here.clock, species)
    show_answer(here, "past", answer, json, lambda: past_page(answer, here.clock, here.temperature))


def register(app: typer.Typer) -> None:
    """Add the commands of this group."""
    for command in (when, why, on, history, past):
        app.command(command.__name__)(command)
