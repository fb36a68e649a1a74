"""What can be done with all that has a name: another name, put away, brought back."""

from __future__ import annotations

import typer

from finishlog.cli.answering.answer import Answered, recorded
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import Name, NewName
from finishlog.cli.answering.run import Run


def may_be_renamed(group: typer.Typer, kind: str, what: str) -> None:
    """Declare the command that gives a thing of a kind another name."""

    def rename(here: Run, name: Name, new_name: NewName) -> Answered:
        from finishlog.acts.things.archiving import rename_one
        from finishlog.core.shop.things import ThingKind

        return recorded(rename_one(here.context, ThingKind(kind), name, new_name))

    rename.__doc__ = f"Give a {what} another name; the old one still finds it."
    command(group, f"{kind} rename")(rename)


def may_be_put_away(group: typer.Typer, kind: str, what: str, says: str) -> None:
    """Declare the commands that put a thing of a kind away, and bring it back."""

    def archive(here: Run, name: Name) -> Answered:
        from finishlog.acts.things.archiving import archive_one
        from finishlog.core.shop.things import ThingKind

        return recorded(archive_one(here.context, ThingKind(kind), name))

    def restore(here: Run, name: Name) -> Answered:
        from finishlog.acts.things.archiving import bring_back
        from finishlog.core.shop.things import ThingKind

        return recorded(bring_back(here.context, ThingKind(kind), name))

    archive.__doc__, restore.__doc__ = says, f"Bring back a {what} that was put away."
    command(group, f"{kind} archive")(archive)
    command(group, f"{kind} restore")(restore)
