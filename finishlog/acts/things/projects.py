"""Put projects on record, change them, put them away."""

from __future__ import annotations

from datetime import datetime

from msgspec import Struct

from finishlog.acts.answers.made import Made, a_name, free_name, in_words, notes_of_use
from finishlog.clock import Clock
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.log.shown_times import due_words
from finishlog.core.published.facts import Facts
from finishlog.core.shop.things import Project, ThingKind
from finishlog.errors import UsageFault
from finishlog.picking import pick_project
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.add import add_project
from finishlog.store.things.edit import set_value
from finishlog.store.things.naming import rename
from finishlog.store.things.read_shop import read_shop


def new_project(
    context: Context, name: str, due: datetime | None, note: str, used_for: str = ""
) -> Made:
    """Put a project on record; `used_for`: food, a child, or empty."""
    name = a_name(name, "project")
    with context.writing("project new") as ledger:
        lent = free_name(ledger, ThingKind.PROJECT, name)
        add_project(
            ledger.connection, name, context.clock.now, due=due, note=note, used_for=used_for
        )
    said = f"for {used_for}" if used_for else ask_for_whom(context.facts, name, name)
    notes = notes_of_use(context.facts, [name], used_for)
    return Made("project", name, in_words(said, lent), notes)


def ask_for_whom(facts: Facts, project: str, *names: str) -> str:
    """Ask who a piece is for, where its name speaks of food or a child and nothing is on record."""
    uses = [use for name in names for use in facts.care.uses_of(name)]
    return f"for {uses[0]}? {Do.PROJECT_EDIT(project, for_=uses[0])}" if uses else ""


class ProjectEdit(Struct, frozen=True):
    """What is to be different; None: as it was. `no_due`: it has no date any more."""

    name: str | None = None
    due: datetime | None = None
    no_due: bool = False
    note: str | None = None
    # Food, a child; empty: for anyone.
    used_for: str | None = None


def edit_project(context: Context, typed: str, change: ProjectEdit) -> Made:
    """Change a project's name, due date or note."""
    if change == ProjectEdit():
        raise UsageFault(
            "nothing to change",
            "say what: " + Do.PROJECT_EDIT.options("due", "no_due", "for", "note", "name"),
        )
    with context.writing("project edit") as ledger:
        project = pick_project(read_shop(ledger.connection, context.clock.now), typed)
        said = []
        if change.due or change.no_due:
            said.append(_set_due(ledger, context.clock, project, change.due))
        if change.note is not None:
            shown = (project.note, change.note)
            set_value(ledger, ThingKind.PROJECT, project.id, "note", change.note, shown)
            said.append("note changed")
        if change.used_for is not None:
            was_for = project.used_for.value if project.used_for else "anyone"
            told = (was_for, change.used_for or "anyone")
            set_value(
                ledger, ThingKind.PROJECT, project.id, "used_for", change.used_for, told, "for"
            )
            said.append(f"for {told[1]}, was for {told[0]}")
        if change.name is not None:
            rename(ledger, ThingKind.PROJECT, project.id, a_name(change.name, "project"))
            said.append(f"{project.name} still finds it")
    notes = notes_of_use(context.facts, (), change.used_for) if change.used_for else ()
    return Made("project", change.name or project.name, in_words(*said), notes)


def _set_due(ledger: Ledger, clock: Clock, project: Project, due: datetime | None) -> str:
    def shown(moment: datetime | None) -> str:
        return due_words(moment, clock.now, clock.zone) if moment else "no date"

    dates = shown(project.due), shown(due)
    set_value(ledger, ThingKind.PROJECT, project.id, "due_at", due, dates, what="due")
    return f"packed by {dates[1]}, was {dates[0]}"
