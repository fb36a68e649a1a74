"""Looking ahead: plan, over."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.asking import settled
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import Verbose
from finishlog.cli.answering.run import Run
from finishlog.core.finish.classes import Method


def plan(
    here: Run,
    words: Annotated[
        list[str] | None,
        typer.Argument(metavar="[PROJECT|PART]...", help="cabinet, cabinet/case, cab/*."),
    ] = None,
    due: Annotated[
        str | None,
        typer.Option("--due", metavar="DATE", help="Try another due date: 'Sat 5 Dec'."),
    ] = None,
    verbose: Verbose = False,
) -> Answered:
    """Plan the evenings ahead: what on which one, and whether the due dates hold."""
    from finishlog.asks.bench.plan import PlanAnswer
    from finishlog.asks.bench.plan import plan as answer_plan
    from finishlog.cli.pages.questions.plan_document import plan_document
    from finishlog.cli.pages.questions.plan_page import plan_page
    from finishlog.cli.typed.times.moments import due_moment

    wanted = due_moment(due, here.clock.now, here.clock.zone) if due else None

    def attempt(typed: tuple[str, ...]) -> PlanAnswer:
        return answer_plan(here.context, typed, wanted)

    answer = settled(here, tuple(words or ()), attempt)
    document = plan_document(answer)
    return Answered(document, lambda: plan_page(answer, here.clock, verbose=verbose))


def over(
    here: Run,
    under: Annotated[
        str, typer.Argument(metavar="PRODUCT", help="What lies below, or bare-wood; or a CLASS.")
    ],
    upper: Annotated[
        str, typer.Argument(metavar="PRODUCT", help="What is to go over it; or a CLASS.")
    ],
    wood: Annotated[
        str | None, typer.Option("--on", metavar="SPECIES", help="The wood below: oak.")
    ] = None,
    method: Annotated[Method | None, typer.Option("--method", help="How it goes on.")] = None,
    room: Annotated[str | None, typer.Option("--room", help="Where it dries.")] = None,
) -> Answered:
    """Ask whether one finish may go over another, how long to wait and what to heed."""
    from finishlog.asks.things.over import over as answer_over
    from finishlog.cli.pages.questions.over_page import over_page

    answer = answer_over(
        here.context, under=under, upper=upper, wood=wood, method=method, room=room
    )
    return Answered(answer, lambda: over_page(answer, here.clock, here.facts.sources))


def register(app: typer.Typer) -> None:
    """Add the commands of this group."""
    command(app, "plan")(plan)
    command(app, "over")(over)
