"""When it goes wrong: fault, off."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.asking import last_said, settled
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import (
    At,
    FaceOption,
    NoteText,
    SomeParts,
    Where,
    one_face,
)
from finishlog.cli.answering.run import Run
from finishlog.core.log.when import When
from finishlog.core.log.words import FaultKind
from finishlog.core.shop.trade_words import plain_word, several_words
from finishlog.errors import UsageFault


def fault(
    here: Run,
    words: Annotated[
        list[str],
        typer.Argument(
            metavar="PART... KIND",
            help=f"Parts, then {', '.join(FaultKind)}, or mended.",
        ),
    ],
    where: Where = "",
    remedy: Annotated[
        str, typer.Option("--remedy", metavar="TEXT", help="What was done about it.")
    ] = "",
    face: FaceOption = None,
    at: At = None,
    note: NoteText = "",
) -> Answered:
    """Log what went wrong with a film: what it means, what mends it, until when."""
    from finishlog.acts.film.fault import MENDED, FaultLogged, fault_word, is_fault, log_fault
    from finishlog.cli.pages.evening.trouble_page import fault_page

    if len(words) < 2:
        raise UsageFault(
            "a fault needs a part and what went wrong",
            "finishlog fault doors run --where 'left edge'",
        )
    when = here.moment(at)
    *named, what = several_words(words, lambda word: is_fault(word, here.facts))
    if plain_word(what) in MENDED:
        return _mended(here, tuple(named), where, remedy or note, one_face(face), when)
    _, kind = last_said((*named, what), lambda word: fault_word(word, here.facts), "fault")

    def attempt(parts: tuple[str, ...]) -> FaultLogged:
        return log_fault(
            here.context,
            parts=parts,
            kind=kind,
            place=where,
            remedy=remedy or note,
            face=one_face(face),
            at=when,
        )

    answer = settled(here, tuple(named), attempt, may_make=True)
    return Answered(answer, lambda: fault_page(answer, here.context))


def _mended(
    here: Run, parts: tuple[str, ...], where: str, note: str, face: str | None, at: When
) -> Answered:
    from finishlog.acts.film.fault import Mended, log_mended
    from finishlog.cli.pages.evening.trouble_page import mended_page

    def attempt(typed: tuple[str, ...]) -> Mended:
        return log_mended(here.context, parts=typed, place=where, note=note, face=face, at=at)

    answer = settled(here, parts, attempt)
    return Answered(answer, lambda: mended_page(answer, here.clock))


def off(
    here: Run,
    parts: SomeParts,
    to: Annotated[
        str,
        typer.Option("--to", metavar="COAT", help="What stays: a product or an act; else bare."),
    ] = "bare",
    strip: Annotated[
        bool, typer.Option("--strip", help="With stripper; taken if not said.")
    ] = False,
    sanded: Annotated[bool, typer.Option("--sanded", help="Sanded off.")] = False,
    scraped: Annotated[bool, typer.Option("--scraped", help="Scraped off.")] = False,
    washed: Annotated[bool, typer.Option("--washed", help="Washed off with solvent.")] = False,
    face: FaceOption = None,
    at: At = None,
    note: NoteText = "",
) -> Answered:
    """Log that a film came off, to bare wood or down to a coat that stays."""
    from finishlog.acts.film.off import Off, log_off, stripping_word
    from finishlog.cli.pages.evening.trouble_page import off_page

    operation = stripping_word(strip=strip, sanded=sanded, scraped=scraped, washed=washed)
    when = here.moment(at)

    def attempt(typed: tuple[str, ...]) -> Off:
        return log_off(
            here.context,
            parts=typed,
            to=to,
            operation=operation,
            face=one_face(face),
            at=when,
            note=note,
        )

    answer = settled(here, tuple(parts), attempt, may_make=True)
    return Answered(answer, lambda: off_page(answer, here.clock))


def register(app: typer.Typer) -> None:
    """Add the commands of this group."""
    for each in (fault, off):
        command(app, each.__name__)(each)
