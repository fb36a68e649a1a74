"""Options that several commands share."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

import typer

from finishlog.core.shop.trade_words import WORK, also_said
from finishlog.errors import UsageFault

# Every kind of work, for the help of what takes one.
ALL_WORK = f"work: {', '.join(WORK)}."

Json = Annotated[bool, typer.Option("--json", help="Answer as one JSON document.")]
At = Annotated[
    str | None,
    typer.Option("--at", metavar="WHEN", help="When it happened: 'yesterday 19:30', '2h ago'."),
]


def one_face(typed: list[str] | None) -> str | None:
    """Take one face; two would leave one of them out without a word."""
    faces = typed or []
    if len(faces) > 1:
        raise UsageFault(
            f"--face is given {len(faces)} times", f"name them on the part: doors@{','.join(faces)}"
        )
    return faces[0] if faces else None


def also(*kinds: type[StrEnum]) -> str:
    """Say under a command's help which words are understood beside ours."""
    return f"Also understood, for {'; '.join(map(also_said, kinds))}."


FaceOption = Annotated[
    list[str] | None, typer.Option("--face", metavar="FACE", help="Only this face.")
]
Where = Annotated[
    str,
    typer.Option(
        "--where",
        metavar="TEXT",
        help="Where on it: 'left edge'.",
        callback=lambda text: text.strip(),
    ),
]
Parts = Annotated[
    list[str] | None,
    typer.Argument(metavar="[PART]...", help="cabinet/case, case, cab/*, legs:1-3, cabinet."),
]
SomeParts = Annotated[
    list[str], typer.Argument(metavar="PART...", help="cabinet/case, case, cab/*, legs:1-3.")
]
Name = Annotated[str, typer.Argument(metavar="NAME")]
NewName = Annotated[str, typer.Argument(metavar="NEW-NAME")]
NoteText = Annotated[str, typer.Option("--note", help="Words to keep with it.")]
NoteTyped = Annotated[
    str | None, typer.Option("--note", help="Words to keep with it, in place of those it has.")
]
Archived = Annotated[bool, typer.Option("--archived", help="Those that were put away.")]
Verbose = Annotated[
    bool, typer.Option("-v", "--verbose", help="Everything: findings, sources, notes.")
]
