"""The answers of fault and off."""

from __future__ import annotations

from typing import TYPE_CHECKING

from finishlog.asks.look.entry_words import TAKEN_OFF
from finishlog.asks.look.weighings import LAST
from finishlog.cli.pages.evening.log_page import standing_lines
from finishlog.cli.pages.evening.words import SOFT_FILM, echo, rags_name, rags_words, title_of
from finishlog.cli.pages.shop.wood_page import weights_words
from finishlog.cli.terminal.page import Page, Tone
from finishlog.cli.words.finding_lines import remedies
from finishlog.cli.words.finding_words import remedy, sentence, short
from finishlog.cli.words.observed import dried_first
from finishlog.core.finish.stages import shown
from finishlog.core.log.where import in_brackets

if TYPE_CHECKING:
    from finishlog.acts.film.fault import FaultLogged, Mended
    from finishlog.acts.film.off import CoatThere, Off, TakenOff
    from finishlog.clock import Clock
    from finishlog.context import Context


# How causes stand, the likeliest first; what heads them, and in which tone.
_CAUSES = (
    (frozenset({"cause-apart", "cause-shown"}), "the log", Tone.PLAIN),
    (frozenset({"ask-first"}), "ask", Tone.PLAIN),
    (frozenset({"cause-open"}), "or", Tone.FAINT),
    (frozenset({"cause-shared", "cause-same"}), "less so", Tone.FAINT),
)


def fault_page(answer: FaultLogged, context: Context) -> Page:
    """Echo a fault, then what it means, what mends it and until when, and what may lie behind."""
    name = answer.name + in_brackets(answer.place)
    page = echo(context.clock, answer.at, answer.labels, name)
    page.line(answer.means)
    section = page.section()
    if answer.deadline is not None:
        closes = context.clock.words(answer.deadline)
        words = f"too late since {closes}" if answer.too_late else f"only before {closes}"
        section.row("mend", words, tone=Tone.DANGER)
    for n, mends in enumerate(answer.remedies):
        words = mends if n else dried_first(mends, answer.dry_to)
        section.row("" if n or answer.deadline else "mend", words)
    if answer.blocks:
        until = " or ".join(answer.until)
        section.row("blocks", f"{', '.join(shown(s) for s in answer.blocks)}, until {until}")
    for each in answer.again:
        section.row("again", "; ".join(filter(None, (sentence(each), remedy(each)))))
    section.each(("" if n else "apart", sentence(each)) for n, each in enumerate(answer.apart))
    for ids, label, tone in _CAUSES:
        for n, cause in enumerate(each for each in answer.causes if each.rule in ids):
            words = "; ".join(filter(None, (short(cause), remedy(cause))))
            section.row("" if n else label, words, tone=tone)
    section.each(("" if n else "the same", each) for n, each in enumerate(answer.same_history))
    if answer.weights is not None:
        last = weights_words(answer.weights.weights[-LAST:], context.clock)
        stable = ", stable before it" if answer.weights.is_ready else ""
        section.row("weights", last + stable)
    section.row("source", title_of(answer.source, context.facts.sources), tone=Tone.FAINT)
    return standing_lines(page, answer.after, context.clock).line(f"act {answer.act}", Tone.FAINT)


def mended_page(answer: Mended, clock: Clock) -> Page:
    """Echo that faults were made good."""
    page = Page()
    when = clock.happened(answer.at)
    if answer.mended:
        page.line(f"{when}  {', '.join(answer.labels)}: mended, {', '.join(answer.mended)}")
    if answer.still:
        page.line(f"still stands until a check answers it: {', '.join(answer.still)}", Tone.HEAD)
    if answer.elsewhere:
        page.line(f"still stands elsewhere: {', '.join(answer.elsewhere)}")
    return standing_lines(page, answer.after, clock).line(f"act {answer.act}", Tone.FAINT)


def off_page(answer: Off, clock: Clock) -> Page:
    """Echo what came off and what stays, then what follows."""
    page = Page()
    when = clock.happened(answer.at)
    for took in answer.took:
        page.line(f"{when}  {took.label}: {TAKEN_OFF[answer.operation]}; {_took(took, clock)}")
    page.lines(remedies(answer.warnings), Tone.HEAD)
    standing_lines(page, answer.after, clock)
    for rags in (r for r in answer.rags if r.speaks):
        tone = Tone.DANGER if rags.overdue else Tone.PLAIN
        page.line(f"rags {rags.number}: {rags_name(rags)}, {rags_words(rags, clock)}", tone)
        if rags.soft:
            page.line(f"caution: {SOFT_FILM}", Tone.DANGER)
    page.lines(f"safety: {note.text}" for note in answer.notes)
    return page.line(f"act {answer.act}", Tone.FAINT)


def _took(took: TakenOff, clock: Clock) -> str:
    off = ", ".join(x for x in (took.old_finish, *(_coat(coat, clock) for coat in took.coats)) if x)
    came = f"{off} off" if off else "nothing on record came off"
    if took.stays is None:
        return f"{came}, bare wood"
    return f"{came}; {_coat(took.stays, clock)} stays and keeps its date"


def _coat(coat: CoatThere, clock: Clock) -> str:
    when = clock.happened(coat.put_on)
    return f"{coat.product} of {when} (act {coat.act})"
