"""Cans, jars and mixes: can, mix."""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered, recorded
from finishlog.cli.answering.asking import settled
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import (
    Archived,
    At,
    Name,
    NewName,
    NoteText,
    NoteTyped,
)
from finishlog.cli.answering.run import Run
from finishlog.core.log.words import ContainerDeed
from finishlog.core.mixing.containers import ContainerKind

can = typer.Typer(help="Cans, jars and mixes of finish.", no_args_is_help=True)

Amount = Annotated[str | None, typer.Option("--amount", help="How much it held: 1L, 1 qt.")]
Batch = Annotated[str, typer.Option("--batch", help="The maker's number on the can.")]
Day = Annotated[str | None, typer.Option(metavar="WHEN", help="'24 Nov', '3 weeks ago'.")]

# What is said of a container, and the help of each.
_DEEDS = {
    ContainerDeed.OPENED: "Log that a can was opened.",
    ContainerDeed.STIRRED: "Log that it was stirred, down to the bottom, right before use.",
    ContainerDeed.UNSTIRRED: "Log that it was poured from without stirring: what is left differs.",
    ContainerDeed.STRAINED: "Log that it was strained.",
    ContainerDeed.TINTED: "Log that colour from below got into it: it is clear no more.",
    ContainerDeed.FROZEN: "Log that it froze: waterborne finish is stopped until it is tested.",
    ContainerDeed.TESTED: "Log that it was tested on scrap or glass, and is good.",
    ContainerDeed.CONDEMNED: "Mark it: do not use.",
    ContainerDeed.EMPTIED: "Log that it is empty.",
    ContainerDeed.THROWN_OUT: "Log that it went to the waste it belongs to.",
}


@command(can, "can new")
def can_new(
    here: Run,
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
) -> Answered:
    """Put a can or jar on record."""
    from finishlog.acts.mixing.can import CanTyped, new_can
    from finishlog.cli.typed.figures.amounts import volume

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
    return recorded(answer)


@command(can, "can edit")
def can_edit(
    here: Run,
    name: Name,
    made: Day = None,
    use_by: Annotated[str | None, typer.Option("--use-by", help="Of a mix: 4h, or 22:00.")] = None,
    amount: Amount = None,
    batch: Annotated[str | None, typer.Option("--batch")] = None,
    note: NoteTyped = None,
) -> Answered:
    """Change what is on record; what was mixed is corrected by amend."""
    from finishlog.acts.mixing.can import CanChange, edit_can
    from finishlog.cli.typed.figures.amounts import volume
    from finishlog.cli.typed.files.mix_words import read_end

    change = CanChange(
        made=here.moment(made).earliest if made else None,
        use_by=read_end(use_by, here.clock) if use_by else None,
        amount_ml=1000 * volume(amount, here.units.volume) if amount else None,
        batch=batch,
        note=note,
    )
    answer = edit_can(here.context, name, change)
    return recorded(answer)


@command(can, "can rename")
def can_rename(here: Run, name: Name, new_name: NewName) -> Answered:
    """Give it another name; the old one still finds it."""
    from finishlog.acts.mixing.can import rename_can

    answer = rename_can(here.context, name, new_name)
    return recorded(answer)


@command(can, "can archive")
def can_archive(here: Run, name: Name) -> Answered:
    """Put it away; the coats that came from it stay on record."""
    from finishlog.acts.mixing.can import archive_can

    answer = archive_can(here.context, name)
    return recorded(answer)


@command(can, "can restore")
def can_restore(here: Run, name: Name) -> Answered:
    """Bring back what was put away."""
    from finishlog.acts.things.archiving import bring_back
    from finishlog.core.shop.things import ThingKind

    answer = bring_back(here.context, ThingKind.CONTAINER, name)
    return recorded(answer)


@command(can, "can list")
def can_list(here: Run, archived: Archived = False) -> Answered:
    """List cans, jars and mixes with what speaks against using them."""
    from finishlog.asks.things.can_list import can_list as listed
    from finishlog.cli.pages.evening.cans_page import cans_page

    answer = listed(here.context, archived=archived)
    return Answered(answer, lambda: cans_page(answer, here.clock))


@command(can, "can show")
def can_show(here: Run, name: Name) -> Answered:
    """Show one: what is in it, what befell it, the coats that came from it."""
    from finishlog.asks.things.can_list import can_show as shown
    from finishlog.cli.pages.evening.cans_page import can_page

    answer = settled(here, (name,), lambda words: shown(here.context, words[0]))
    return Answered(answer, lambda: can_page(answer, here.clock))


def _deed(deed: ContainerDeed) -> Callable[..., Answered]:
    """Build the command that logs one deed."""

    def deal(here: Run, name: Name, at: At = None, note: NoteText = "") -> Answered:
        from finishlog.acts.mixing.can import DeedDone, log_deed
        from finishlog.cli.pages.evening.cans_page import deed_page

        when = here.moment(at)

        def attempt(typed: tuple[str, ...]) -> DeedDone:
            return log_deed(here.context, name=typed[0], deed=deed, at=when, note=note)

        answer = settled(here, (name,), attempt)
        return Answered(answer, lambda: deed_page(answer, here.clock))

    deal.__doc__ = _DEEDS[deed]
    return deal


for _each in _DEEDS:
    command(can, f"can {_each.value}")(_deed(_each))


def mix(
    here: Run,
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
) -> Answered:
    """Mix two parts, thin a finish, or dissolve flakes; its pot life begins."""
    from finishlog.acts.mixing.mix import Mixed, ToMix
    from finishlog.acts.mixing.mix import mix as act
    from finishlog.cli.pages.evening.cans_page import mix_page
    from finishlog.cli.typed.files.mix_words import read_end, read_mix

    asked, source = read_mix(
        tuple(parts or ()), cut=cut, jar=jar, thin_from=from_, thin_to=to, unit=here.units.volume
    )
    end = read_end(use_by, here.clock) if use_by else None
    when = here.moment(at)

    def attempt(typed: tuple[str, ...]) -> Mixed:
        wanted = ToMix(typed[0], asked, when, name, end, source, batch, note, tell)
        return act(here.context, wanted)

    answer = settled(here, (product,), attempt, may_make=not tell)
    return Answered(answer, lambda: mix_page(answer, here.clock))


def clean(
    here: Run,
    tool: Annotated[
        str | None, typer.Argument(metavar="[TOOL]", help="gun1, 'wide brush'; else list them.")
    ] = None,
    at: At = None,
    note: NoteText = "",
) -> Answered:
    """Log that a gun, brush or air line was cleaned; without one, show what was in each last."""
    from finishlog.acts.mixing.tool import log_cleaned
    from finishlog.asks.bench.tools import tools
    from finishlog.cli.pages.evening.cans_page import cleaned_page, tools_page

    if tool is None:
        lines = tools(here.context)
        return Answered(lines, lambda: tools_page(lines, here.clock))
    answer = log_cleaned(here.context, tool=tool, at=here.moment(at), note=note)
    return Answered(answer, lambda: cleaned_page(answer, here.clock))


def register(app: typer.Typer) -> None:
    """Add the commands."""
    command(app, "mix")(mix)
    command(app, "clean")(clean)
    app.add_typer(can, name="can")
