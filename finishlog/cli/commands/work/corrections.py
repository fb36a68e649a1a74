"""Put right and add to what was logged: undo, amend, note. What was there stays visible."""

from __future__ import annotations

import re
from datetime import timedelta
from typing import Annotated

import typer

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.asking import said, settled
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import At, FaceOption, one_face
from finishlog.cli.answering.run import Run
from finishlog.cli.commands.work.coat_options import (
    Finished,
    Flooded,
    FromCan,
    KeptSo,
    MixAmounts,
    OfAir,
    OnlyNow,
    Stirred,
    Stopped,
    WithTool,
    covered,
    kept_as,
    read_amount,
)
from finishlog.cli.terminal.talk import ask, at_a_terminal, say
from finishlog.core.finish.classes import Method
from finishlog.core.log.when import When
from finishlog.errors import UsageFault

# A coat older than this has probably gone on; undoing it would lose the truth.
_JUST_NOW = timedelta(minutes=10)


def undo(
    here: Run,
    act: Annotated[
        int | None, typer.Argument(metavar="[ACT]", help="Its number in history; else the last.")
    ] = None,
    never_happened: Annotated[
        bool,
        typer.Option(
            "--never-happened", help="Say that a coat did not go on, without being asked."
        ),
    ] = False,
) -> Answered:
    """Withdraw the last act, or a numbered one. It stays in history; undo it to get it back."""
    from finishlog.acts.correct.undo import undo as withdraw
    from finishlog.acts.correct.undo import what_undo_would_do
    from finishlog.cli.pages.evening.log_page import undo_page

    found = what_undo_would_do(here.context, act)
    old = here.clock.now - found.typed_at > _JUST_NOW
    if found.is_coat and old and not never_happened and not _never_went_on(here, found.act):
        say(f"finishlog: act {found.act} stays on record")
        raise typer.Exit
    answer = withdraw(here.context, found.act)
    return Answered(answer, lambda: undo_page(answer, here.clock))


def _never_went_on(here: Run, act: int) -> bool:
    """Ask whether the finish went on: a coat that did stays on record, and may have come off."""
    from finishlog.acts.film.off import off_command

    came_off = f"if it came off again: {off_command(here.context, act)}"
    if not at_a_terminal():
        raise UsageFault(
            f"act {act} is a coat logged a while ago: did the finish go on?",
            f"if it never did: finishlog undo {act} --never-happened; {came_off}",
        )
    if ask("Did the finish go on? A coat that did stays on record. [y/n]").lower().startswith("n"):
        return True
    say(f"finishlog: {came_off}")
    return False


def amend(
    here: Run,
    act: Annotated[int, typer.Argument(metavar="ACT", help="Its number in history.")],
    at: At = None,
    on: Annotated[
        list[str] | None, typer.Option("--on", metavar="PART", help="On these parts.")
    ] = None,
    face: FaceOption = None,
    product: Annotated[str | None, typer.Option("--product")] = None,
    method: Annotated[Method | None, typer.Option("--method")] = None,
    scuffed: Annotated[bool | None, typer.Option("--scuffed/--not-scuffed")] = None,
    flooded: Flooded = None,
    found: Annotated[str | None, typer.Option("--found", help="Of a check.")] = None,
    only_now: OnlyNow = None,
    air: OfAir = None,
    room: Annotated[str | None, typer.Option("--room", help="Of a move.")] = None,
    glue: Annotated[str | None, typer.Option("--glue", help="Of a glue-up.")] = None,
    grit: Annotated[str | None, typer.Option("--grit", help="Of sanding.")] = None,
    kept: KeptSo = None,
    where: Annotated[str | None, typer.Option("--where", help="Its place on a face.")] = None,
    outcome: Annotated[str | None, typer.Option("--outcome", help="Of a review.")] = None,
    moisture: Annotated[str | None, typer.Option("--moisture", help="Of wood: 11%.")] = None,
    weight: Annotated[str | None, typer.Option("--weight", help="Of a piece: 640g.")] = None,
    surface: Annotated[str | None, typer.Option("--surface", help="Of a surface: 14C.")] = None,
    from_: FromCan = None,
    stirred: Stirred = None,
    tool: WithTool = None,
    stopped: Stopped = None,
    finished: Finished = False,
    amount: MixAmounts = None,
    note: Annotated[str | None, typer.Option("--note", help="Its words.")] = None,
) -> Answered:
    """Correct an act. The entry it had stays visible in history."""
    from finishlog.acts.correct.amend import Change
    from finishlog.acts.correct.amend import amend as correct
    from finishlog.cli.pages.evening.log_page import amend_page
    from finishlog.cli.typed.files.mix_words import read_parts

    as_typed = {"product": product, "room": room, "glue": glue, "grit": grit, "text": note}
    as_typed |= {"container": from_, "tool": tool, "kept": kept_as(kept)}
    of_a_coat = {"method": method, "scuffed": scuffed, "flooded": flooded, "stirred": stirred}
    to_be = {
        **as_typed,
        **_meant(found, outcome, only_now),
        "where": where.strip() if where is not None else None,
        **of_a_coat,
        **(_measured(here, air, moisture, weight, surface) | _took(here, amount)),
        "stopped": covered(stopped, finished=finished),
    }
    change = Change(
        at=_moment_of(here, act, at) if at else None,
        parts=tuple(on or ()),
        face=one_face(face),
        said={word: value for word, value in to_be.items() if value is not None},
        amounts=read_parts([a for a in amount or () if ":" in a], here.units.volume),
    )
    if change == Change():
        raise UsageFault("nothing to amend", "say what is different: --at, --on, --found")
    answer = correct(here.context, act, change)
    return Answered(answer, lambda: amend_page(answer, here.clock))


def _took(here: Run, amounts: list[str] | None) -> dict[str, object]:
    """Read how much a coat took, `200ml`; what has a colon is of a part of a mix."""
    much = [amount for amount in amounts or () if ":" not in amount]
    return {"amount": read_amount(much[-1], here)} if much else {}


def _meant(found: str | None, outcome: str | None, only_now: bool | None) -> dict[str, object]:
    """Read what was found, since when, and how it came out; None where that was not typed."""
    from finishlog.acts.film.check import found_word
    from finishlog.acts.pieces.review import outcome_word

    return {
        "found": said(found, found_word) if found else None,
        "outcome": said(outcome, outcome_word) if outcome else None,
        "only_now": only_now,
    }


def _measured(
    here: Run, air: str | None, moisture: str | None, weight: str | None, surface: str | None
) -> dict[str, object]:
    """Read what was measured, of the air or of the wood itself; None where none was typed."""
    from finishlog.cli.typed.figures import amounts, measures

    return {
        "air": measures.air(air, here.temperature) if air else None,
        "moisture": measures.moisture(moisture) if moisture else None,
        "weight": amounts.weight(weight, here.units.weight) if weight else None,
        "surface": measures.temperature(surface, here.temperature) if surface else None,
    }


def _moment_of(here: Run, act: int, typed: str) -> When:
    """Read when it really was; a clock time alone is of the day that the entry stands on."""
    from finishlog.asks.past.history import one_act
    from finishlog.cli.typed.times.moments import moment

    now, zone = here.clock.now, here.clock.zone
    if re.fullmatch(r"\s*\d{1,2}[:.]\d{2}\s*(?:[ap]\.?m\.?)?\s*", typed, re.IGNORECASE):
        lines = one_act(here.context, act)
        happened = next((line.happened for line in lines if line.happened), None)
        if happened is not None:
            day = happened.latest.astimezone(zone).date()
            return moment(f"{day} {typed.strip()}", now, zone)
    return moment(typed, now, zone)


def note(
    here: Run,
    words: Annotated[
        list[str], typer.Argument(metavar="PART... WORDS", help="case, then what there is to say.")
    ],
    text: Annotated[
        str | None, typer.Option("--text", "-t", help="The words; then all else are parts.")
    ] = None,
    outcome: Annotated[
        bool, typer.Option("--outcome", help="It says how the finish turned out.")
    ] = False,
    next_time: Annotated[
        bool, typer.Option("--next-time", help="It goes with the steps when it is done like this.")
    ] = False,
    at: At = None,
) -> Answered:
    """Keep words about a part, or how its finish turned out."""
    from finishlog.acts.pieces.note import Noted, log_note
    from finishlog.cli.pages.evening.log_page import note_page

    when = here.moment(at)
    parts, text = (tuple(words), text) if text is not None else _parted(here, words)

    def attempt(typed: tuple[str, ...]) -> Noted:
        return log_note(
            here.context, parts=typed, text=text, outcome=outcome, at=when, next_time=next_time
        )

    answer = settled(here, parts, attempt)
    return Answered(answer, lambda: note_page(answer, here.clock))


def _parted(here: Run, words: list[str]) -> tuple[tuple[str, ...], str]:
    """Part `PART... WORDS`: the last argument when it is several words, else all but the first."""
    from finishlog.asks.look.meant import names_a_part

    if len(words) < 2:
        raise UsageFault("a note needs a part and words", "finishlog note case 'a run, left edge'")
    if " " in words[-1].strip():
        return tuple(words[:-1]), words[-1]
    first, second, *_ = words
    if names_a_part(here.context, second):
        said = " ".join(words[1:])
        raise UsageFault(
            f"{second!r} may be a part or a word of the note",
            f"quote the words: finishlog note {first} '{said}'",
        )
    return (first,), " ".join(words[1:])


def register(app: typer.Typer) -> None:
    """Add the commands of this group."""
    for each in (undo, amend, note):
        command(app, each.__name__)(each)
