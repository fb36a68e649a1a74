"""Pieces of furniture, or sets: project."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered, recorded
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import Archived, Name, NoteText, NoteTyped
from finishlog.cli.answering.run import Run
from finishlog.cli.commands.shop.kept import may_be_put_away, may_be_renamed
from finishlog.errors import UsageFault

project = typer.Typer(help="Pieces of furniture, or sets.", no_args_is_help=True)

Due = Annotated[str | None, typer.Option("--due", metavar="WHEN", help="Packed by: 'Sat 5 Dec'.")]

ForWhom = Annotated[
    str | None,
    typer.Option(
        "--for", metavar="WHOM", help="food, child (cot, toy): the longest wait; else anyone."
    ),
]


def _for_whom(here: Run, typed: str | None) -> str | None:
    """Read who will use it, or what it is: a cot, a toy, a bowl.

    `anyone` is empty, None when nothing was typed.
    """
    from finishlog.core.published.care import UsedFor

    if typed is None or typed.casefold() == "anyone":
        return typed and ""
    known = {use for use in UsedFor if use.value == typed.casefold()}
    uses = known or set(here.facts.care.uses_of(typed))
    if len(uses) != 1:
        raise UsageFault(f"{typed!r} is nobody known", "--for food, child, cot, toy or anyone")
    return uses.pop().value


@command(project, "project new")
def project_new(
    here: Run, name: Name, due: Due = None, whom: ForWhom = None, note: NoteText = ""
) -> Answered:
    """Put a project on record."""
    from finishlog.acts.things.projects import new_project
    from finishlog.cli.typed.times.moments import due_moment

    by = due_moment(due, here.clock.now, here.clock.zone) if due else None
    used_for = _for_whom(here, whom) or ""
    return recorded(new_project(here.context, name, by, note, used_for))


@command(project, "project list")
def project_list(here: Run, archived: Archived = False) -> Answered:
    """List the open projects."""
    from finishlog.asks.things.there_is import projects
    from finishlog.cli.pages.shop.shop_pages import projects_page

    answer = projects(here.context, archived=archived)
    return Answered(answer, lambda: projects_page(answer, here.clock))


@command(project, "project show")
def project_show(here: Run, name: Name) -> Answered:
    """Show one project with its parts."""
    from finishlog.asks.things.there_is import one_project
    from finishlog.cli.pages.shop.shop_pages import project_page

    answer = one_project(here.context, name)
    return Answered(answer, lambda: project_page(answer, here.clock))


@command(project, "project edit")
def project_edit(
    here: Run,
    name: Name,
    due: Due = None,
    no_due: Annotated[bool, typer.Option("--no-due", help="It has no date any more.")] = False,
    whom: ForWhom = None,
    note: NoteTyped = None,
    new_name: Annotated[
        str | None, typer.Option("--name", help="Another name; the old one still finds it.")
    ] = None,
) -> Answered:
    """Change a project's date, note or name."""
    from finishlog.acts.things.projects import ProjectEdit, edit_project
    from finishlog.cli.typed.times.moments import due_moment

    by = due_moment(due, here.clock.now, here.clock.zone) if due else None
    change = ProjectEdit(new_name, by, no_due, note, _for_whom(here, whom))
    return recorded(edit_project(here.context, name, change))


may_be_renamed(project, "project", "project")


@command(project, "project load")
def project_load(
    here: Run,
    file: Annotated[Path, typer.Argument(metavar="FILE", help="TOML, written by hand.")],
    check: Annotated[
        bool, typer.Option("--check", help="Say what it would do, and leave no trace.")
    ] = False,
) -> Answered:
    """Load rooms, products, steps and parts from a file; what is there already stays."""
    from finishlog.acts.things.load import load
    from finishlog.cli.commands.shop.project_file import read_project_file
    from finishlog.cli.pages.shop.shop_pages import load_page

    wanted = read_project_file(file, here)
    answer = load(here.context, wanted, check=check)
    return Answered(answer, lambda: load_page(answer))


may_be_put_away(
    project, "project", "project", "Put a project away with its parts; past and history keep them."
)


def register(app: typer.Typer) -> None:
    """Add the command group."""
    app.add_typer(project, name="project")
