"""What is finished as one kind: part."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered, recorded
from finishlog.cli.answering.asking import settled
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import (
    Archived,
    NewName,
    NoteText,
    NoteTyped,
    SomeParts,
    also,
)
from finishlog.cli.answering.run import Run
from finishlog.core.shop.things import FaceKind

part = typer.Typer(help="What is finished as one kind: doors, legs.", no_args_is_help=True)
OldFinishTyped = Annotated[
    str | None,
    typer.Option(
        "--old-finish",
        metavar="KIND",
        help="What was on it when it came in: varnish, paint, wax or unknown.",
    ),
]
_FACE_HELP = "front, back:hidden, tenon:joint, edges:edge, zones 'top=field,inlay:walnut'; repeat."


@command(part, "part new", epilog=also(FaceKind))
def part_new(
    here: Run,
    path: Annotated[str, typer.Argument(metavar="PROJECT/NAME")],
    count: Annotated[int, typer.Option("--count", "-n", help="How many pieces.")] = 1,
    species: Annotated[str | None, typer.Option("--species", help="ash, cherry ...")] = None,
    face: Annotated[
        list[str] | None, typer.Option("--face", help=f"{_FACE_HELP} Else all round.")
    ] = None,
    steps: Annotated[str | None, typer.Option("--steps", help="A finishing schedule.")] = None,
    room: Annotated[str | None, typer.Option("--room", help="Where it stands.")] = None,
    of: Annotated[
        list[str] | None,
        typer.Option("--of", help="An assembly: what one piece is made of, side:2; repeat."),
    ] = None,
    board: Annotated[bool, typer.Option("--board", help="A sample board.")] = False,
    like: Annotated[
        str | None,
        typer.Option("--like", metavar="PART", help="Wood, faces, steps and room as of this one."),
    ] = None,
    old_finish: OldFinishTyped = None,
    note: NoteText = "",
) -> Answered:
    """Put a part on record, and its project when that is new."""
    from finishlog.acts.things.parts import PartTyped, new_part

    typed = PartTyped(
        path,
        count,
        species,
        tuple(face or ()),
        steps,
        room,
        tuple(of or ()),
        board,
        note,
        like,
        old_finish,
    )
    return recorded(new_part(here.context, typed))


@command(part, "part steps")
def part_steps(
    here: Run,
    parts: SomeParts,
    name: Annotated[str, typer.Option("--as", metavar="STEPS", help="Which schedule.")],
) -> Answered:
    """Copy a finishing schedule onto parts."""
    from finishlog.acts.things.parts import give_steps
    from finishlog.asks.look.meant import whole_ids

    ids = settled(here, tuple(parts), lambda words: whole_ids(here.context, words))
    return recorded(give_steps(here.context, ids, name))


@command(part, "part archive")
def part_archive(here: Run, parts: SomeParts) -> Answered:
    """Put parts away: the day's screens leave them out, past and history keep them."""
    from finishlog.acts.things.parts import archive_parts as archive
    from finishlog.asks.look.meant import whole_ids

    ids = settled(here, tuple(parts), lambda words: whole_ids(here.context, words))
    return recorded(archive(here.context, ids))


@command(part, "part restore")
def part_restore(here: Run, parts: SomeParts) -> Answered:
    """Bring back parts that were put away."""
    from finishlog.acts.things.parts import restore_parts

    made = settled(
        here,
        tuple(parts),
        lambda words: restore_parts(here.context, words),
    )
    return recorded(made)


@command(part, "part rename")
def part_rename(
    here: Run, name: Annotated[str, typer.Argument(metavar="PART")], new_name: NewName
) -> Answered:
    """Give a part another name; the old one still finds it."""
    from finishlog.acts.things.parts import rename_part

    made = settled(
        here,
        (name,),
        lambda words: rename_part(here.context, words[0], new_name),
    )
    return recorded(made)


@command(part, "part edit", epilog=also(FaceKind))
def part_edit(
    here: Run,
    name: Annotated[str, typer.Argument(metavar="PART")],
    species: Annotated[str | None, typer.Option("--species", help="Its wood.")] = None,
    room: Annotated[
        str | None, typer.Option("--room", help="Where it stood from the start.")
    ] = None,
    count: Annotated[
        int | None, typer.Option("--count", "-n", help="How many pieces there are now.")
    ] = None,
    face: Annotated[
        list[str] | None,
        typer.Option("--face", help=f"Add, divide or say what for: {_FACE_HELP}"),
    ] = None,
    board: Annotated[
        bool | None, typer.Option("--board/--no-board", help="A sample board.")
    ] = None,
    old_finish: OldFinishTyped = None,
    note: NoteTyped = None,
) -> Answered:
    """Change a part: wood, room, late pieces, faces, zones. Coats that are on stay as they are."""
    from finishlog.acts.things.part_edit import PartEdit, edit_part

    change = PartEdit(species, room, note, count, tuple(face or ()), board, old_finish)
    made = settled(
        here,
        (name,),
        lambda words: edit_part(here.context, words[0], change),
    )
    return recorded(made)


@command(part, "part list")
def part_list(here: Run, archived: Archived = False) -> Answered:
    """List the open parts."""
    from finishlog.asks.things.there_is import parts
    from finishlog.cli.pages.shop.shop_pages import parts_page

    answer = parts(here.context, archived=archived)
    return Answered(answer, lambda: parts_page(answer))


@command(part, "part show")
def part_show(here: Run, parts: SomeParts) -> Answered:
    """Show parts with their faces and steps."""
    from finishlog.asks.look.meant import part_ids
    from finishlog.asks.things.there_is import parts as answer_parts
    from finishlog.cli.pages.shop.shop_pages import part_page

    ids = settled(here, tuple(parts), lambda words: part_ids(here.context, words))
    answer = [p for p in answer_parts(here.context) if p.id in ids]
    return Answered(answer, lambda: part_page(answer))


def register(app: typer.Typer) -> None:
    """Add the command group."""
    app.add_typer(part, name="part")
