"""The commands of the evening: ready, log, check, rags."""

from __future__ import annotations

import shlex
from collections.abc import Sequence
from datetime import timedelta
from typing import Annotated

import typer
from msgspec.structs import replace

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.asking import Asked, last_said, said, settled
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import (
    ALL_WORK,
    At,
    FaceOption,
    NoteText,
    Parts,
    Verbose,
    Where,
    also,
    one_face,
)
from finishlog.cli.answering.run import Run
from finishlog.cli.commands.work.coat_options import (
    Amount,
    Every,
    Flooded,
    FromCan,
    HandsOn,
    KeptSo,
    NoEdges,
    OfGlue,
    OnlyNow,
    Passes,
    Scuffed,
    Stirred,
    Stopped,
    WetFilm,
    WithTool,
    covered,
    kept_as,
    read_amount,
)
from finishlog.cli.terminal.talk import ask, at_a_terminal, say
from finishlog.core.finish.classes import Method
from finishlog.core.log.words import Found, Operation, RagsDeed, Test
from finishlog.core.shop.same_as import same_as
from finishlog.core.shop.trade_words import is_said, several_words
from finishlog.errors import ANSWER_IS_BAD, UsageFault


def ready(
    here: Run,
    parts: Parts = None,
    verbose: Verbose = False,
    time: Annotated[
        str | None, typer.Option("--for", metavar="TIME", help="Only what fits into it: 40min.")
    ] = None,
    exit_code: Annotated[
        bool,
        typer.Option("--exit-code", help="Leave with 1 when rags are overdue or nothing is ready."),
    ] = False,
) -> Answered:
    """Show what is dangerous, what may be done now, what closes, what must wait."""
    from finishlog.asks.bench.ready import ready as answer_ready
    from finishlog.cli.pages.evening.ready_page import ready_page
    from finishlog.cli.typed.times.durations import duration

    minutes = duration(time) / timedelta(minutes=1) if time else None
    only = _ids(here, tuple(parts or ()))
    answer = answer_ready(here.context, only, minutes, air=verbose)
    bad = exit_code and (any(r.overdue for r in answer.rags) or not answer.bench)
    code = ANSWER_IS_BAD if bad else 0
    return Answered(answer, lambda: ready_page(answer, here.clock, verbose=verbose), code)


def log(
    here: Run,
    words: Annotated[
        list[str],
        typer.Argument(
            metavar="PART... [WHAT]",
            help=f"Parts, then a product, or {ALL_WORK} Without it, the step that is due. "
            "legs 2-6 same as 1: what that one got.",
        ),
    ],
    face: FaceOption = None,
    at: At = None,
    method: Annotated[Method | None, typer.Option("--method", help="How it went on.")] = None,
    scuffed: Scuffed = None,
    grit: Annotated[str, typer.Option("--grit", help="Of sanding: P220.")] = "",
    no_edges: NoEdges = False,
    passes: Passes = 1,
    every: Every = None,
    glue: OfGlue = None,
    minutes: HandsOn = None,
    flooded: Flooded = None,
    film: WetFilm = None,
    amount: Amount = None,
    from_: FromCan = None,
    stirred: Stirred = None,
    tool: WithTool = None,
    stopped: Stopped = None,
    kept: KeptSo = None,
    note: NoteText = "",
    verbose: Verbose = False,
) -> Answered:
    """Log a coat or a piece of work that was done."""
    from finishlog.acts.answers.logged import Logged, ToLog
    from finishlog.acts.film.log import log as act
    from finishlog.acts.mixing.drawn import FROM
    from finishlog.cli.pages.evening.log_page import log_page
    from finishlog.cli.typed.figures.amounts import film as read_film
    from finishlog.cli.typed.times.durations import minutes as read_minutes
    from finishlog.cli.typed.times.durations import sitting

    earlier, when = sitting(here.moment(at), here.clock.now, passes, every, began=at is not None)
    wanted = ToLog(tuple(words), when, one_face(face), method, scuffed, grit, note)
    wanted = replace(wanted, edges=not no_edges, earlier=earlier, glue=glue, flooded=flooded)
    wanted = replace(wanted, container=from_, stirred=stirred, tool=(tool or "").strip())
    hands = read_minutes(minutes) if minutes else None
    wanted = replace(wanted, hands_on_min=hands, stopped=covered(stopped), kept=kept_as(kept))
    wanted = replace(wanted, wet_film_um=read_film(film) if film else None)
    wanted = replace(wanted, amount_ml=read_amount(amount, here))
    if (same := same_as(words)) is not None:
        from finishlog.cli.commands.work.same import log_the_same

        return log_the_same(here, same, wanted, at_told=at is not None, verbose=verbose)
    asked = Asked({FROM: from_})

    def attempt(typed: tuple[str, ...]) -> Logged:
        more = replace(wanted, words=typed, container=asked.options[FROM], sure=asked.sure)
        return act(here.context, more)

    answer = settled(here, wanted.words, attempt, may_make=True, asked=asked)
    return Answered(answer, lambda: log_page(answer, here.clock, verbose=verbose))


def check(
    here: Run,
    words: Annotated[
        list[str],
        typer.Argument(
            metavar="PART... FOUND",
            help="Parts, then what was found: tacky gums prints smells flakes; dry no-print powder "
            "no-smell holds; softens or resists, cupped or flat, sample-soft or sample-dry.",
        ),
    ],
    face: FaceOption = None,
    test: Annotated[
        str | None,
        typer.Option("--test", help=", ".join(each.value for each in Test)),
    ] = None,
    where: Where = "",
    only_now: OnlyNow = None,
    at: At = None,
) -> Answered:
    """Log a test of a film. A failed check beats any clock."""
    from finishlog.acts.film.check import Checked, found_word, log_check, test_word
    from finishlog.cli.pages.evening.log_page import check_page

    if len(words) < 2:
        raise UsageFault("a check needs a part and what was found", "finishlog check case prints")
    typed = several_words(words, lambda word: is_said(Found, word))
    parts, found = last_said(typed, found_word, "check")
    which, when = test_word(test, found), here.moment(at)

    asked = Asked({})

    def attempt(typed: tuple[str, ...]) -> Checked:
        return log_check(
            here.context,
            parts=typed,
            face=one_face(face),
            found=found,
            test=which,
            place=where,
            at=when,
            only_now=only_now,
            sure=asked.sure,
        )

    answer = settled(here, parts, attempt, may_make=True, asked=asked)
    return Answered(answer, lambda: check_page(answer, here.clock))


def rags(
    here: Run,
    deed: Annotated[
        str | None,
        typer.Argument(metavar="[DEED]", help="spread, water, lifted, can, stiff or gone."),
    ] = None,
    which: Annotated[
        str | None, typer.Argument(metavar="[WHICH]", help="A number or product; else all open.")
    ] = None,
    at: At = None,
    exit_code: Annotated[
        bool, typer.Option("--exit-code", help="Leave with 1 when rags are overdue.")
    ] = False,
) -> Answered:
    """Show open oily rags, or log what was done with them."""
    from finishlog.acts.film.rags import log_rags
    from finishlog.asks.bench.rags import RagsLine
    from finishlog.asks.bench.rags import rags as answer_rags
    from finishlog.cli.pages.evening.rags_page import dealt_page, rags_page

    def bad(lines: Sequence[RagsLine]) -> int:
        return ANSWER_IS_BAD if exit_code and any(line.overdue for line in lines) else 0

    if deed is None:
        lines = answer_rags(here.context)
        return Answered(lines, lambda: rags_page(lines, here.context), bad(lines))
    done = _deed(here, deed, which)
    if done is RagsDeed.STIFF and at_a_terminal() and not _is_crisp():
        say("finishlog: nothing was recorded: leave them spread, or finishlog rags water")
        raise typer.Exit
    dealt = log_rags(here.context, deed=done, which=which, at=here.moment(at))
    return Answered(dealt, lambda: dealt_page(dealt, here.clock), bad(dealt.still_open))


def _deed(here: Run, typed: str, which: str | None) -> RagsDeed:
    """Read what was done with rags; a number or product before it is told."""
    from finishlog.acts.film.rags import deed_meant

    try:
        return said(typed, lambda word: deed_meant(here.context, word))
    except UsageFault:
        if which is None or not is_said(RagsDeed, which):
            raise
        raise UsageFault(
            f"{which!r} stands first", shlex.join(["finishlog", "rags", which, typed])
        ) from None


def _is_crisp() -> bool:
    """Ask what stiff means: a rag that is stiff outside may be hot within."""
    return ask("Stiff and crisp right through, every one, and no smell? [y/N]").lower()[:1] == "y"


def _ids(here: Run, typed: tuple[str, ...]) -> tuple[int, ...]:
    from finishlog.asks.look.meant import part_ids

    if not typed:
        return ()
    return settled(here, typed, lambda words: part_ids(here.context, words, projects=True))


def register(app: typer.Typer) -> None:
    """Add the commands of this group."""
    command(app, "ready")(ready)
    command(app, "log", epilog=also(Operation))(log)
    command(app, "check", epilog=also(Found, Test))(check)
    command(app, "rags", epilog=also(RagsDeed))(rags)
