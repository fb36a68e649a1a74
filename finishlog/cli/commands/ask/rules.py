"""Look up the rules behind the verdicts: what they read, and what nothing reads."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.command import command
from finishlog.cli.answering.run import Run
from finishlog.errors import UsageFault


def rules(
    here: Run,
    name: Annotated[str, typer.Argument(metavar="[RULE]")] = "",
    unread: Annotated[bool, typer.Option("--unread", help="What no rule hears, and why.")] = False,
    table: Annotated[
        bool, typer.Option("--table", help="Every fact on record, and which rules hear it.")
    ] = False,
) -> Answered:
    """Show the rules of every verdict: what each reads and binds."""
    from finishlog.asks.things.rules import all_rules, heard_facts, one_rule, unheard_facts
    from finishlog.cli.pages.questions.rules_page import rules_page

    if bool(name) + unread + table > 1:
        raise UsageFault("a rule, --unread or --table: one at a time", "finishlog rules lists them")
    if unread or table:
        answer = unheard_facts(here.facts) if unread else heard_facts(here.facts)
    else:
        answer = one_rule(name) if name else all_rules()
    return Answered(answer, lambda: rules_page(answer))


def register(app: typer.Typer) -> None:
    """Add the command."""
    command(app, "rules")(rules)
