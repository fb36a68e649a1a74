"""Cans, jars and mixes: can, mix."""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated

import typer

from finishlog.cli.answering.answer import show_answer, show_made
from finishlog.cli.answering.asking import settled
from finishlog.cli.answering.options import (
    Archived,
    At,
    Json,
    Name,
    NewName,
    NoteText,
    NoteTyped,
    desk,
)
from finishlog.core.log.entries import ContainerDeed
from finishlog.core.mixing.containers import ContainerKind

can = typer.Typer(help="Cans, jars and mixes of finish.", no_args_is_help=True)

Amount = Annotated[str | None, typer.Option("--amount", help="How much it held: 1L, 1 qt.")]
Batch = Annotated[str, typer.Option("--batch", help="The maker's number on the can.")]
Day = Annotated[str | None, typer.Option(metavar="WHEN", help="'24 Nov', '3 weeks ago'.")]

# What is said of a container, and the help of each.
_DEEDS = {
    ContainerDeed.OPENED: "Log that a can was opened.",
    ContainerDeed.FROZEN: "Log that it froze: waterborne finish is stopped until it is tested.",
    ContainerDeed.TESTED: "Log that it was tested on scrap or glass, and is good.",
    ContainerDeed.CONDEMNED: "Mark it: do not use.",
    ContainerDeed.EMPTIED: "Log that it is empty.",
    ContainerDeed.THROWN_OUT: "Log that it went to the waste it belongs to.",
}


@can.command("new")
def can_new(
    context: typer.Context,
    name: Name,
    product: Annotated[str, typer.Option("--product", help="What is in it.")],
    jar: Annotated[bool, typer.Option("--jar", help="A jar that it was decanted into.")] = False,
    bought: Day = None,
    made: Day = None,
    opened: Annotated[
        str | None, typer.Option("--opened", metavar="WHEN", help="When: now, '24 Nov'.")
    ] = None,
    amount: Amount = None,
    batch: Batch = "",
    note: NoteText = "",
    json: Json = False,
) -> None:
    """Put a can or jar on record."""
    from finishlog.acts.mixing.can import CanTyped, new_can
    from finishlog.cli.typed.figures.amounts import volume

    here = desk(context)
    dated = made or bought
    typed = CanTyped(
        name,
        product,
        ContainerKind.JAR if jar else ContainerKind.CAN,
        made=here.moment(dated).earliest if dated else None,
        opened=here.moment(opened) if opened else None,
        amount_ml=1000 * volume(amount, here.units.volume) if amount else None,
        batch=batch,
        note=note,
    )
    answer = new_can(here.context, typed)
    show_made(here, "can new", answer, json)


@can.command("edit")
def can_edit(
    context: typer.Context,
    name: Name,
    made: Day = None,
    use_by: Annotated[str | None, typer.Option("--use-by", help="Of a mix: 4h, or 22:00.")] = None,
    amount: Amount = None,
    batch: Annotated[str | None, typer.Option("--batch")] = None,
    note: NoteTyped = None,
    json: Json = False,
) -> None:
    """Change what is on record; what was mixed is corrected by amend."""
    from finishlog.acts.mixing.can import CanChange, edit_can
    from finishlog.cli.typed.figures.amounts import volume
    from finishlog.cli.typed.files.mix_words import read_end

    here = desk(context)
    change = CanChange(
        made=here.moment(made).earliest if made else None,
        use_by=read_end(use_by, here.clock) if use_by else None,
        amount_ml=1000 * volume(amount, here.units.volume) if amount else None,
        batch=batch,
        note=note,
    )
    answer = edit_can(here.context, name, change)
    show_made(here, "can edit", answer, json)


@can.command("rename")
def can_rename(context: typer.Context, name: Name, new_name: NewName, json: Json = False) -> None:
    """Give it another name; the old one still finds it."""
    from finishlog.acts.mixing.can import rename_can

    here = desk(context)
    answer = rename_can(here.context, name, new_name)
    show_made(here, "can rename", answer, json)


@can.command("archive")
def can_archive(context: typer.Context, name: Name, json: Json = False) -> None:
    """Put it away; the coats that came from it stay on record."""
    from finishlog.acts.mixing.can import archive_can

    here = desk(context)
    answer = archive_can(here.context, name)
    show_made(here, "can archive", answer, json)


@can.command("restore")
def can_restore(context: typer.Context, name: Name, json: Json = False) -> None:
    """Bring back what was put away."""
    from finishlog.acts.things.archiving import bring_back
    from finishlog.core.shop.things import ThingKind

    here = desk(context)
    answer = bring_back(here.context, ThingKind.CONTAINER, name)
    show_made(here, "can restore", answer, json)


@can.command("list")
def can_list(context: typer.Context, archived: Archived = False, json: Json = False) -> None:
    """List cans, jars and mixes with what speaks against using them."""
    from finishlog.asks.things.can_list import can_list as listed
    from finishlog.cli.pages.evening.cans_page import cans_page

    here = desk(context)
    answer = listed(here.context, archived=archived)
    show_answer(here, "can list", answer, json, lambda: cans_page(answer, here.clock))


@can.command("show")
def can_show(context: typer.Context, name: Name, json: Json = False) -> None:
    """Show one: what is in it, what befell it, the coats that came from it."""
    from finishlog.asks.things.can_list import can_show as shown
    from finishlog.cli.pages.evening.cans_page import can_page

    here = desk(context)
    answer = settled(here, (name,), lambda words: shown(here.context, words[0]))
    show_answer(here, "can show", answer, json, lambda: can_page(answer, here.clock))


def _deed(deed: ContainerDeed) -> Callable[..., None]:
    """Build the command that logs one deed."""

    def command(
        context: typer.Context, name: Name, at: At = None, note: NoteText = "", json: Json = False
    ) -> None:
        from finishlog.acts.mixing.can import DeedDone, log_deed
        from finishlog.cli.pages.evening.cans_page import deed_page

        here = desk(context)
        when = here.moment(at)

        def attempt(typed: tuple[str, ...]) -> DeedDone:
            return log_deed(here.context, name=typed[0], deed=deed, at=when, note=note)

        answer = settled(here, (name,), attempt)
        show_answer(here, f"can {deed.value}", answer, json, lambda: deed_page(answer, here.clock))

    command.__doc__ = _DEEDS[deed]
    return command


for _each in _DEEDS:
    can.command(_each.value)(_deed(_each))


def mix(
    context: typer.Context,
    product: Annotated[str, typer.Argument(metavar="PRODUCT", help="What it is a mix of.")],
    parts: Annotated[
        list[str] | None,
        typer.Argument(
            metavar="[PART:AMOUNT]...",
            help="base:500ml hardener:50ml; 10:1; varnish:2 'mineral spirits:1'.",
        ),
    ] = None,
    cut: Annotated[str | None, typer.Option("--cut", help="Flakes in alcohol: 2lb.")] = None,
    from_: Annotated[
        str | None,
        typer.Option("--from", metavar="CAN", help="The can it is drawn from, or a cut: 2lb."),
    ] = None,
    to: Annotated[str | None, typer.Option("--to", help="Thin that to a cut: 1lb.")] = None,
    jar: Annotated[str | None, typer.Option("--jar", help="What it is to fill: 500ml.")] = None,
    name: Annotated[
        str | None, typer.Option("--name", help="Else mix-1; of an open mix: top it up.")
    ] = None,
    use_by: Annotated[
        str | None, typer.Option("--use-by", help="The label's pot life, 4h, or until 22:00.")
    ] = None,
    batch: Batch = "",
    note: NoteText = "",
    tell: Annotated[
        bool, typer.Option("--tell", help="Only tell the amounts; put nothing on record.")
    ] = False,
    at: At = None,
    json: Json = False,
) -> None:
    """Mix two parts, thin a finish, or dissolve flakes; its pot life begins."""
    from finishlog.acts.mixing.mix import Mixed, ToMix
    from finishlog.acts.mixing.mix import mix as act
    from finishlog.cli.pages.evening.cans_page import mix_page
    from finishlog.cli.typed.files.mix_words import read_end, read_mix

    here = desk(context)
    asked, source = read_mix(
        tuple(parts or ()), cut=cut, jar=jar, thin_from=from_, thin_to=to, unit=here.units.volume
    )
    end = read_end(use_by, here.clock) if use_by else None
    when = here.moment(at)

    def attempt(typed: tuple[str, ...]) -> Mixed:
        wanted = ToMix(typed[0], asked, when, name, end, source, batch, note, tell)
        return act(here.context, wanted)

    answer = settled(here, (product,), attempt, may_make=not tell)
    show_answer(here, "mix", answer, json, lambda: mix_page(answer, here.clock))


def register(app: typer.Typer) -> None:
    """Add the commands."""
    app.command("mix")(mix)
    app.add_typer(can, name="can")
