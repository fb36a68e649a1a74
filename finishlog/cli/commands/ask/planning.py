"""Planning: plan."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.asking import settled
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import Verbose
from finishlog.cli.answering.run import Run


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


def register(app: typer.Typer) -> None:
    """Add the commands of this group."""
    command(app, "plan")(plan)
