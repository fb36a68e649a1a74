"""Questions: when, why, on, history, past."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.asking import settled
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import Parts, SomeParts
from finishlog.cli.answering.run import Run
from finishlog.cli.terminal.talk import say
from finishlog.errors import UsageFault

if TYPE_CHECKING:
    from finishlog.asks.look.meant import Wanted


def _wanted(here: Run, typed: list[str], *, archived: bool = False) -> Wanted:
    """Find what is meant; what was typed by an old name is told its new one."""
    from finishlog.asks.look.meant import wanted

    found = settled(
        here,
        tuple(typed),
        lambda words: wanted(here.context, words, archived=archived, projects=True),
    )
    for old, now in found.renamed:
        say(f"finishlog: {old} is called {now} now")
    return found


def when(here: Run, parts: SomeParts) -> Answered:
    """Show when a part may be recoated, turned, clamped, stacked, packed, used."""
    from finishlog.asks.bench.when import when as answer_when
    from finishlog.cli.pages.questions.question_pages import when_page

    answer = answer_when(here.context, _wanted(here, parts))
    return Answered(answer, lambda: when_page(answer, here.clock))


def why(here: Run, parts: SomeParts) -> Answered:
    """Show what stands behind the answer: label, air, clock, what binds, what is unknown."""
    from finishlog.asks.bench.why import why as answer_why
    from finishlog.cli.pages.questions.question_pages import why_page

    answer = answer_why(here.context, _wanted(here, parts))
    return Answered(answer, lambda: why_page(answer, here.context))


def on(
    here: Run,
    parts: SomeParts,
    grid: Annotated[
        bool, typer.Option("--grid", help="Many parts at one look: coats by piece and face.")
    ] = False,
) -> Answered:
    """Show what is on a part, face by face, and what comes next."""
    from finishlog.asks.bench.on import on as answer_on
    from finishlog.cli.pages.questions.on_page import on_page

    if grid:
        from finishlog.asks.bench.coat_grid import coat_grid
        from finishlog.cli.pages.questions.on_page import grid_page

        table = coat_grid(here.context, _wanted(here, parts))
        return Answered(table, lambda: grid_page(table, here.clock))
    answer = answer_on(here.context, _wanted(here, parts))
    return Answered(answer, lambda: on_page(answer, here.clock))


def history(
    here: Run,
    parts: Parts = None,
    act: Annotated[
        int | None, typer.Option("--act", metavar="ACT", help="One act whole, by its number.")
    ] = None,
) -> Answered:
    """Show everything that was typed, with what was amended and undone."""
    from finishlog.asks.past.history import history as answer_history
    from finishlog.asks.past.history import one_act
    from finishlog.cli.pages.questions.history_page import act_page, history_page

    if act is not None:
        whole = one_act(here.context, act)
        return Answered(whole, lambda: act_page(whole, here.clock))
    about = _wanted(here, parts, archived=True) if parts else None
    answer = answer_history(here.context, about)
    return Answered(answer, lambda: history_page(answer, here.clock))


def past(
    here: Run,
    words: Annotated[
        list[str] | None,
        typer.Argument(
            metavar="[WORD]...",
            help="A wood, product, class, steps, a piece, how it was made (solid, veneered, "
            "'stained after assembly', 'rh over 60%'), or words noted: ash blotchy.",
        ),
    ] = None,
    pairs: Annotated[
        bool,
        typer.Option(
            "--pairs", help="Coats one over the other: [UNDER] OVER, by product: sealer topcoat."
        ),
    ] = False,
) -> Answered:
    """Show what was really done before, on which wood, and how it came out."""
    from finishlog.asks.past.pairs import pairs as answer_pairs
    from finishlog.asks.past.past import past as answer_past
    from finishlog.cli.pages.questions.past_page import pairs_page, past_page

    # Several are told in one breath: 'solid panels, stained after assembly, rh over 60%'.
    told = (each.strip() for word in words or () for each in word.split(","))
    typed = tuple(each for each in told if each)
    if pairs:
        if len(typed) not in {1, 2}:
            raise UsageFault("name the coats", "finishlog past --pairs sealer topcoat")
        found = answer_pairs(here.context, typed)
        return Answered(found, lambda: pairs_page(found, here.clock))
    answer = answer_past(here.context, typed)
    return Answered(answer, lambda: past_page(answer, here.clock))


def register(app: typer.Typer) -> None:
    """Add the commands of this group."""
    for each in (when, why, on, history, past):
        command(app, each.__name__)(each)
