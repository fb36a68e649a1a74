"""Pieces of furniture, or sets: project."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from finishlog.cli.answering.answer import show_answer, show_made
from finishlog.cli.answering.options import Archived, Json, Name, NewName, NoteText, NoteTyped, desk
from finishlog.errors import UsageFault

project = typer.Typer(help="Pieces of furniture, or sets.", no_args_is_help=True)

Due = Annotated[str | None, typer.Option("--due", metavar="WHEN", help="Packed by: 'Sat 5 Dec'.")]

ForWhom = Annotated[
    str | None,
    typer.Option("--for", metavar="WHOM", help="food or child: the longest wait; else anyone."),
]


def _for_whom(typed: str | None) -> str | None:
    """Read who will use it; `anyone` is empty, None when nothing was typed."""
    from finishlog.core.published.care import UsedFor

    if typed is None or typed.casefold() == "anyone":
        return typed and ""
    try:
        return UsedFor(typed.casefold()).value
    except ValueError:
        raise UsageFault(f"{typed!r} is nobody known", "--for food, child or anyone") from None


@project.command("new")
def project_new(
    context: typer.Context,
    name: Name,
    due: Due = None,
    whom: ForWhom = None,
    note: NoteText = "",
    json: Json = False,
) -> None:
    """Put a project on record."""
    from finishlog.acts.things.projects import new_project
    from finishlog.cli.typed.times.moments import due_moment

    here = desk(context)
    by = due_moment(due, here.clock.now, here.clock.zone) if due else None
    used_for = _for_whom(whom) or ""
    made = new_project(here.context, name, by, note, used_for)
    show_made(here, "project new", made, json)


@project.command("list")
def project_list(context: typer.Context, archived: Archived = False, json: Json = False) -> None:
    """List the open projects."""
    from finishlog.asks.things.there_is import projects
    from finishlog.cli.pages.shop.shop_pages import projects_page

    here = desk(context)
    answer = projects(here.context, archived=archived)
    show_answer(here, "project list", answer, json, lambda: projects_page(answer, here.clock))


@project.command("show")
def project_show(context: typer.Context, name: Name, json: Json = False) -> None:
    """Show one project with its parts."""
    from finishlog.asks.things.there_is import one_project
    from finishlog.cli.pages.shop.shop_pages import project_page

    here = desk(context)
    answer = one_project(here.context, name)
    show_answer(here, "project show", answer, json, lambda: project_page(answer, here.clock))


@project.command("edit")
def project_edit(
    context: typer.Context,
    name: Name,
    due: Due = None,
    no_due: Annotated[bool, typer.Option("--no-due", help="It has no date any more.")] = False,
    whom: ForWhom = None,
    note: NoteTyped = None,
    new_name: Annotated[
        str | None, typer.Option("--name", help="Another name; the old one still finds it.")
    ] = None,
    json: Json = False,
) -> None:
    """Change a project's date, note or name."""
    from finishlog.acts.things.projects import ProjectEdit, edit_project
    from finishlog.cli.typed.times.moments import due_moment

    here = desk(context)
    by = due_moment(due, here.clock.now, here.clock.zone) if due else None
    change = ProjectEdit(new_name, by, no_due, note, _for_whom(whom))
    made = edit_project(here.context, name, change)
    show_made(here, "project edit", made, json)


@project.command("rename")
def project_rename(
    context: typer.Context, name: Name, new_name: NewName, json: Json = False
) -> None:
    """Give a project another name; the old one still finds it."""
    from finishlog.acts.things.projects import rename_project

    here = desk(context)
    made = rename_project(here.context, name, new_name)
    show_made(here, "project rename", made, json)


@project.command("load")
def project_load(
    context: typer.Context,
    file: Annotated[Path, typer.Argument(metavar="FILE", help="TOML, written by hand.")],
    check: Annotated[
        bool, typer.Option("--check", help="Say what it would do, and leave no trace.")
    ] = False,
    json: Json = False,
) -> None:
    """Load rooms, products, steps and parts from a file; what is there already stays."""
    from finishlog.acts.things.load import load
    from finishlog.cli.commands.shop.project_file import read_project_file
    from finishlog.cli.pages.shop.load_page import load_page

    here = desk(context)
    wanted = read_project_file(file, here)
    answer = load(here.context, wanted, check=check)
    show_answer(here, "project load", answer, json, lambda: load_page(answer))


@project.command("archive")
def project_archive(context: typer.Context, name: Name, json: Json = False) -> None:
    """Put a project away with its parts; past and history keep them."""
    from finishlog.acts.things.projects import archive_project

    here = desk(context)
    made = archive_project(here.context, name)
    show_made(here, "project archive", made, json)


@project.command("restore")
def project_restore(context: typer.Context, name: Name, json: Json = False) -> None:
    """Bring back a project that was put away."""
    from finishlog.acts.things.archiving import bring_back
    from finishlog.core.shop.things import ThingKind

    here = desk(context)
    made = bring_back(here.context, ThingKind.PROJECT, name)
    show_made(here, "project restore", made, json)


def register(app: typer.Typer) -> None:
    """Add the command group."""
    app.add_typer(project, name="project")
