"""How a command is declared: a function that returns what it answers; the rest is alike for all."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from inspect import Parameter, signature

import typer

from finishlog.cli.answering.answer import Answered, show_answer
from finishlog.cli.answering.options import Json
from finishlog.cli.answering.run import Run


def command(
    group: typer.Typer,
    name: str,
    *,
    epilog: str | None = None,
    settings: dict[str, bool] | None = None,
) -> Callable[[Callable[..., Answered]], Callable[..., None]]:
    """Declare a command by its name as it is typed and as `--json` calls it: `product new`.

    The function is handed the run, then what was typed. `settings`: of the parser.
    """

    def declare(answers: Callable[..., Answered]) -> Callable[..., None]:
        @wraps(answers)
        def run(context: typer.Context, *, json: bool = False, **typed: object) -> None:
            here = context.find_object(Run)
            assert here is not None
            found = answers(here, **typed)
            show_answer(here, name, found, json=json)
            if found.code:
                raise typer.Exit(found.code)

        # The parser is built from the signature: what was typed, between the two that all have.
        kind = Parameter.POSITIONAL_OR_KEYWORD
        _, *own = signature(answers, eval_str=True).parameters.values()
        context = Parameter("context", kind, annotation=typer.Context)
        json = Parameter("json", kind, default=False, annotation=Json)
        whole = signature(answers).replace(parameters=[context, *own, json])
        vars(run).update(__signature__=whole)
        run.__annotations__ = {each.name: each.annotation for each in whole.parameters.values()}
        group.command(name.rsplit(maxsplit=1)[-1], epilog=epilog, context_settings=settings)(run)
        return run

    return declare
