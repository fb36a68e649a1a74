"""What closes a piece, and what is said of it later: handover, review, photo."""

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
    Verbose,
    also,
    one_face,
)
from finishlog.cli.answering.run import Run
from finishlog.core.log.words import Outcome
from finishlog.core.shop.trade_words import is_said, several_words
from finishlog.errors import UsageFault

Whole = Annotated[
    list[str],
    typer.Argument(metavar="PROJECT|PART...", help="cabinet, cabinet/case, legs:1-3."),
]
Said = Annotated[str, typer.Option("--text", "-t", help="Words to keep with it.")]


def handover(
    here: Run,
    parts: Whole,
    card: Annotated[
        bool, typer.Option("--card", help="Only print the care card; record nothing.")
    ] = False,
    note: NoteText = "",
    at: At = None,
    verbose: Verbose = False,
) -> Answered:
    """Log that pieces left the shop, and print the care card that goes along."""
    from finishlog.acts.pieces.handover import Handover, hand_over
    from finishlog.asks.past.care_card import CareCard, care_card
    from finishlog.cli.pages.evening.care_page import care_page
    from finishlog.cli.pages.evening.closing_page import handover_page

    if card:

        def write(typed: tuple[str, ...]) -> CareCard:
            return care_card(here.context, typed)

        written = settled(here, tuple(parts), write)
        return Answered(written, lambda: care_page(written, here.context, verbose=verbose))
    when = here.moment(at)

    def attempt(typed: tuple[str, ...]) -> Handover:
        return hand_over(here.context, parts=typed, note=note, at=when)

    answer = settled(here, tuple(parts), attempt)
    return Answered(answer, lambda: handover_page(answer, here.context, verbose=verbose))


def review(
    here: Run,
    words: Annotated[
        list[str],
        typer.Argument(metavar="PART... OUTCOME", help="Parts, then good, fair or failed."),
    ],
    face: FaceOption = None,
    text: Said = "",
    at: At = None,
) -> Answered:
    """Log how a finish came out: at hand-over, after a year, whenever it is seen again."""
    from finishlog.acts.pieces.review import Reviewed, log_review, outcome_word
    from finishlog.cli.pages.evening.closing_page import review_page

    if len(words) < 2:
        raise UsageFault("a review needs a part and how it came out", "finishlog review case good")
    typed = several_words(words, lambda word: is_said(Outcome, word))
    parts, outcome = last_said(typed, outcome_word, "review")
    when = here.moment(at)

    def attempt(named: tuple[str, ...]) -> Reviewed:
        return log_review(
            here.context, parts=named, face=one_face(face), outcome=outcome, text=text, at=when
        )

    answer = settled(here, parts, attempt)
    return Answered(answer, lambda: review_page(answer, here.clock))


def photo(
    here: Run,
    words: Annotated[
        list[str], typer.Argument(metavar="PART... FILE", help="Parts, then where the picture is.")
    ],
    face: FaceOption = None,
    text: Said = "",
    at: At = None,
) -> Answered:
    """Keep where a picture of a part lies; the file itself stays where it is."""
    from finishlog.acts.pieces.photo import Pictured, log_photo
    from finishlog.cli.pages.evening.closing_page import photo_page

    if len(words) < 2:
        raise UsageFault("a photo needs a part and a file", "finishlog photo case case.jpg")
    when = here.moment(at)

    def attempt(typed: tuple[str, ...]) -> Pictured:
        return log_photo(
            here.context, parts=typed, face=one_face(face), path=words[-1], text=text, at=when
        )

    answer = settled(here, tuple(words[:-1]), attempt)
    return Answered(answer, lambda: photo_page(answer, here.clock))


def register(app: typer.Typer) -> None:
    """Add the commands of this group."""
    command(app, "handover")(handover)
    command(app, "review", epilog=also(Outcome))(review)
    command(app, "photo")(photo)
