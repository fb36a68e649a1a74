"""How a command is declared: a function that returns what it answers; the rest is alike for all."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import wraps
from inspect import Parameter, signature

import typer
from msgspec import Struct

from finishlog.cli.answering.answer import Answered, show_answer
from finishlog.cli.answering.options import Json
from finishlog.cli.answering.run import Run


class Table(Struct, frozen=True):
    """What a parameter is annotated with that stands for many options: the kind of each by word."""

    options: Mapping[str, object]


def command(
    group: typer.Typer,
    name: str,
    *,
    epilog: str | None = None,
    settings: dict[str, bool] | None = None,
) -> Callable[[Callable[..., Answered]], Callable[..., None]]:
    """Declare a command by its name as it is typed and as `--json` calls it: `product new`.

    The function is handed the run, then what was typed; of a `Table` of options those that were
    typed, by their words. `settings`: of the parser.
    """

    def declare(answers: Callable[..., Answered]) -> Callable[..., None]:
        @wraps(answers)
        def run(context: typer.Context, *, json: bool = False, **typed: object) -> None:
            here = context.find_object(Run)
            assert here is not None
            here.parser = context
            here.refuse_contradictions()
            for table, words in tables.items():
                each = {word: typed.pop(_plain(word)) for word in words}
                typed[table] = {word: said for word, said in each.items() if said not in (None, [])}
            found = answers(here, **typed)
            show_answer(here, name, found, json=json)
            if found.code:
                raise typer.Exit(found.code)

        # The parser is built from the signature: what was typed, between the two that all have.
        kind = Parameter.POSITIONAL_OR_KEYWORD
        _, *own = signature(answers, eval_str=True).parameters.values()
        tables = {each.name: table.options for each in own if (table := _table(each))}
        context = Parameter("context", kind, annotation=typer.Context)
        json = Parameter("json", kind, default=False, annotation=Json)
        whole = signature(answers).replace(parameters=[context, *_spread(own), json])
        vars(run).update(__signature__=whole)
        run.__annotations__ = {each.name: each.annotation for each in whole.parameters.values()}
        group.command(name.rsplit(maxsplit=1)[-1], epilog=epilog, context_settings=settings)(run)
        return run

    return declare


def _table(parameter: Parameter) -> Table | None:
    said = getattr(parameter.annotation, "__metadata__", ())
    return next((each for each in said if isinstance(each, Table)), None)


def _spread(parameters: list[Parameter]) -> Iterator[Parameter]:
    """Yield the parameters for the parser: for a table each of its options, where it stands."""
    for each in parameters:
        table = _table(each)
        if table is None:
            yield each
            continue
        for word, kind in table.options.items():
            yield each.replace(name=_plain(word), default=None, annotation=kind)


def _plain(word: str) -> str:
    return word.replace("-", "_")
