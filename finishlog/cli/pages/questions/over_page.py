"""The pages of what may go over what: one pair, a schedule walked through, all classes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from finishlog.cli.pages.evening.words import after, title_of, together
from finishlog.cli.pages.questions.question_pages import option_words
from finishlog.cli.pages.shop.figure_rows import basis, hour_words
from finishlog.cli.terminal.page import Page, Tone
from finishlog.cli.words.finding_lines import before_rows
from finishlog.cli.words.finding_words import joined, remedy, sentence, short, waits_for
from finishlog.core.commands import Do
from finishlog.core.findings import WHICH_KIND, Answer, Finding, Level
from finishlog.core.finish.overcoat import BARE_WOOD
from finishlog.core.rules.air.coating_air import OF_THE_NIGHT
from finishlog.core.zone.verdict import MAY_ACT

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from datetime import datetime

    from finishlog.asks.past.compared import CoatMeant, Compared
    from finishlog.asks.things.classes import Pair
    from finishlog.asks.things.over import Over, StepChecked, StepsChecked
    from finishlog.cli.pages.shop.figure_rows import Sources
    from finishlog.clock import Clock
    from finishlog.core.finish.classes import Figure

_WEIGHS = {Level.STOP: "stop", Level.CAUTION: "heed", Level.NOTE: "note"}
_NO_DATE = "no date mends that"


def over_page(answer: Over, clock: Clock, sources: Sources) -> Page:
    """Answer first, then what it counts, then what else to heed; each with its source."""
    page = Page()
    under = "bare wood" if answer.under == BARE_WOOD else answer.under
    wood = f", on {answer.wood}" if answer.wood else ""
    may = answer.answer in MAY_ACT
    depends = any(found.rule == WHICH_KIND for found in answer.findings)
    of_the_strictest = "it depends on its kind; by the strictest of them " if depends else ""
    warned = any(found.level is not Level.NOTE or _holds(found) for found in answer.air)
    page.line(
        f"{answer.over} over {under}{wood}: {of_the_strictest}{_said(answer)}",
        Tone.DANGER if not may else Tone.HEAD if warned else Tone.GO,
    )
    section = page.section()
    section.each(_in_its_air(found, clock, sources) for found in answer.air)
    if answer.label is not None and answer.at is not None:
        section.row("wait", _wait(answer, answer.label, answer.at, clock, sources))
    section.each(("sources", option_words(each, clock)) for each in answer.options)
    section.each(_heeded(found, answer.binds, sources) for found in answer.findings)
    if answer.hard is not None and answer.hard_at and answer.hard is not answer.answer:
        then = after(None, answer.hard_at, clock)
        section.row("hard", f"once it is fully hard, {then}: {answer.hard}")
    return page


def _in_its_air(found: Finding, clock: Clock, sources: Sources) -> tuple[str, str]:
    """Say what the room says of it now, or tonight, and from when it lets it."""
    when = "tonight" if found.rule in OF_THE_NIGHT else "now"
    weighs = f"not {when}" if _holds(found) else "air"
    from_then = after(None, found.high, clock) if found.high else ""
    words = joined(sentence(found), joined(remedy(found).rstrip("."), from_then))
    return weighs, f"{words}{_by(found.source, sources)}"


def _holds(found: Finding) -> bool:
    return found.level is Level.STOP or found.rule in OF_THE_NIGHT


def _wait(answer: Over, label: Figure, at: datetime, clock: Clock, sources: Sources) -> str:
    where = f"in {answer.room}" if answer.room else "in standard air"
    when = after(None, at, clock)
    return f"{_hours(label)}; if it went on now, {where}: {when}{_by(label.source, sources)}"


def _heeded(found: Finding, binds: Finding, sources: Sources) -> tuple[str, str]:
    """Say what a finding weighs and what it says; of what binds, which was said, what to do."""
    said = "" if found == binds else sentence(found)
    words = joined(said, remedy(found).rstrip("."))
    return _WEIGHS[found.level] if said else "do", f"{words}{_by(found.source, sources)}"


def _hours(label: Figure) -> str:
    if label.high_h == label.low_h:
        return hour_words(label.low_h)
    return f"{hour_words(label.low_h)} to {hour_words(label.high_h)}"


def _length(hours: float) -> str:
    return f"{hours:.0f} h" if hours < 72 else f"{hours / 24:.0f} d"


def _by(source: str, sources: Sources) -> str:
    return f" [{title_of(source, sources)}]" if source else ""


def _said(answer: Over) -> str:
    if answer.answer is Answer.GO:
        once_dry = "" if answer.under == BARE_WOOD else ", once it is dry"
        return "yes, scuffed first" if answer.scuff else f"yes{once_dry}"
    if answer.answer is Answer.SCUFF:
        return "yes, scuffed first"
    if answer.answer is Answer.TEST:
        first = "on a test board first" if answer.label is None else "yes, once a test passes"
        return f"{first}: {sentence(answer.binds).rstrip('.')}"
    if answer.answer is Answer.WAITS and answer.at is None:
        return f"not yet, it waits for {waits_for(answer.binds)}"
    return f"no: {joined(sentence(answer.binds), '' if answer.at else _NO_DATE)}"


def steps_page(answer: StepsChecked, sources: Sources) -> Page:
    """Say first whether it goes through and how long it takes, then each step."""
    page = Page()
    wood = f" on {answer.wood}" if answer.wood else ""
    where = f"in {answer.room}" if answer.room else "in standard air"
    last = answer.steps[-1] if answer.steps else None
    if last is None:
        return page.line(f"{answer.name}: it has no steps")
    if last.after_h is None:
        page.line(f"{answer.name}{wood}: it stops at step {last.number}, {last.step}", Tone.DANGER)
    else:
        long = _length(last.after_h)
        page.line(f"{answer.name}{wood}: it goes through; its last step after {long}, {where}")
    section = page.section()
    for step in answer.steps:
        section.row(str(step.number), step.step, _step(step, sources))
        for found in step.findings:
            if found.level is not Level.NOTE or found == step.binds:
                section.row("", "", ": ".join(_heeded(found, step.binds, sources)))
    if len({faces for step in answer.steps if (faces := step.step.partition("@")[2])}) > 1:
        section.row("", "", _HUNG, tone=Tone.FAINT)
    if answer.left:
        section.row("", "", f"{_behind(answer.left)} not looked at", tone=Tone.FAINT)
    if answer.shines is not None:
        section.row(
            "", "", f"it ends {answer.shines.sheen}, as its last coat, {answer.shines.product}"
        )
    if answer.before:
        page.section("BEFORE YOU OPEN IT").each(before_rows(answer.before))
    if answer.like is not None:
        page.section(f"BESIDE {answer.like.part}").each(_beside(answer.like, answer.wood))
    return page


def _beside(of: Compared, wood: str) -> Iterator[tuple[str, str]]:
    """Say how it will shine, as the last coat does, what differs below it, and in the wood."""
    if not of.theirs or not of.mine:
        yield "coats", "none to lay beside it"
        return
    mine, theirs = of.mine[-1], of.theirs[-1]
    if of.shines_alike is None:
        untold = dict.fromkeys(each.product for each in (mine, theirs) if each.sheen is None)
        how = Do.PRODUCT_EDIT(next(iter(untold)), sheen="satin")
        yield "sheen", f"not told of {' and '.join(untold)}: {how}"
    elif of.shines_alike:
        yield "sheen", f"the same, last coat: {theirs.sheen or theirs.product}"
    else:
        yield "sheen", f"it will differ, last coat: {mine.sheen}, there {theirs.sheen}"
        yield "", f"a scuff and one coat of {theirs.product} over it puts that right"
    if mine.class_key != theirs.class_key:
        kinds = f"{mine.class_key}, there {theirs.class_key}"
        yield "finish", f"another kind, {kinds}: on a board first"
    if not of.builds_alike:
        build = [_builds(coats[:-1]) for coats in (of.mine, of.theirs)]
        yield "build", f"coats below it differ: {build[0]}, there {build[1]}"
        if of.shines_alike:
            yield "", _BELOW_HARDLY_SHOWS
    if wood and of.wood and wood != of.wood:
        yield "wood", f"{wood}, there {of.wood}: try it on a sample board"


def _builds(coats: Sequence[CoatMeant]) -> str:
    return (
        ", ".join(f"{each.product} ({each.sheen or 'sheen not told'})" for each in coats) or "none"
    )


def _behind(left: int) -> str:
    return "the step after it was" if left == 1 else f"the {left} steps after it were"


def _step(step: StepChecked, sources: Sources) -> str:
    if step.after_h is None:
        return f"no: {short(step.binds)}"
    after_it = "at once" if step.after_h < 1 else f"after {_length(step.after_h)}"
    if step.wait is not None:
        after_it += f", {_hours(step.wait)} on what is below{_by(step.wait.source, sources)}"
    first = "scuff it first; the schedule does not say so" if step.scuff else ""
    if step.answer is Answer.TEST:
        first = f"test first: {short(step.binds)}"
    return f"{after_it}{': ' if first else ''}{first}"


_HUNG = (
    "as if it hung or stood on points: what lies is turned over once the face below can bear it "
    "[common practice]"
)
_BELOW_HARDLY_SHOWS = (
    "the last coat alone makes the sheen; many flattened coats are a little less clear, which dark "
    "wood shows side by side [common practice]"
)
# One letter a pair; what it stands for is said above the grid.
_SIGNS = {
    "recoat": "=",
    "ok": "o",
    "wait": "w",
    "scuff": "s",
    "barrier": "b",
    "avoid": "x",
    "test": "t",
    "no rule known": ".",
    "the wood decides": "-",
}
_MEANS = {
    "recoat": "itself: its recoat time",
    "ok": "once dry",
    "wait": "after a wait of its own",
    "scuff": "scuffed",
    "barrier": "with a barrier between",
    "avoid": "not",
    "test": "on a test board first",
    "no rule known": "no rule known: on a test board first",
    "the wood decides": "as its wood lets it: finishlog over bare-wood CLASS --on SPECIES",
}


# As many classes as stand beside the longest name on a page of 80.
_ACROSS = 40


def matrix_page(pairs: tuple[Pair, ...]) -> Page:
    """Draw the grid: what lies below down the side, what goes over it numbered across."""
    page = Page()
    over = list(dict.fromkeys(pair.over for pair in pairs))
    page.line("below down the side, above across by its number")
    legend = page.section()
    for name, sign in _SIGNS.items():
        legend.row(sign, _MEANS[name])
    told = {(pair.under, pair.over): _SIGNS[pair.answer] for pair in pairs}
    numbers = {key: n for n, key in enumerate(over, 1)}
    for first in range(0, len(over), _ACROSS):
        some = over[first : first + _ACROSS]
        grid = page.section(f"ON, ABOVE {numbers[some[0]]} TO {numbers[some[-1]]}")
        grid.row("", "".join(str(numbers[each] // 10 or " ") for each in some))
        grid.row("", "".join(str(numbers[each] % 10) for each in some))
        for under in dict.fromkeys(pair.under for pair in pairs):
            signs = "".join(told[under, each] for each in some)
            grid.row(f"{numbers.get(under, ''):>2} {under}", signs)
    return page


def over_one_page(pairs: tuple[Pair, ...], sources: Sources) -> Page:
    """List what may go over one class, and over what it may go; what is said of several, once."""
    page = Page()
    named = [{pair.under, pair.over} for pair in pairs]
    one = next(iter(frozenset.intersection(*map(frozenset, named))), "")
    alike = together(
        (
            (pair.under == one, pair.answer, pair.reason, pair.remedy, pair.source),
            pair.over if pair.under == one else pair.under,
        )
        for pair in pairs
    )
    for (below, answer, *said, source), names in alike.items():
        others = ", ".join(names)
        over, under = (others, one) if below else (one, others)
        means = _MEANS[answer]
        section = page.section(f"{over} over {under}" + (f": {means}" if any(said) else ""))
        for words in filter(None, said if any(said) else (means,)):
            section.row("", words)
        if source:
            section.row("", basis(source, sources), tone=Tone.FAINT)
    return page
