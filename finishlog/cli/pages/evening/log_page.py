"""One line back: what was recorded, what comes next, what to heed."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from datetime import datetime
from typing import TYPE_CHECKING

from finishlog.cli.pages.evening.words import (
    HAND_DUST,
    SOFT_FILM,
    coat_words,
    deed,
    echo,
    learnt_words,
    milestone_words,
    rags_made_of,
    rags_words,
    reason,
    together,
    usual_wanted,
)
from finishlog.cli.terminal.page import Page, Tone
from finishlog.cli.words.finding_lines import names, remedies, warn
from finishlog.cli.words.finding_words import short
from finishlog.core.findings import HURTS, Answer, Deed, Level, is_told_once
from finishlog.core.finish.stages import shown
from finishlog.core.log.where import in_brackets
from finishlog.core.log.words import Operation

if TYPE_CHECKING:
    from finishlog.acts.answers.logged import Logged
    from finishlog.acts.answers.reconsidered import MovedDate
    from finishlog.acts.correct.amend import Amended
    from finishlog.acts.correct.undo import Undone
    from finishlog.acts.film.check import Checked
    from finishlog.acts.pieces.note import Noted
    from finishlog.acts.things.products import Labelled
    from finishlog.acts.things.sheet import SheetSaid
    from finishlog.asks.bench.rags import RagsLine
    from finishlog.asks.look.standing import Standing
    from finishlog.clock import Clock


def log_page(answer: Logged, clock: Clock, *, verbose: bool) -> Page:
    """Echo an act, then what it means."""
    page = Page()
    page.lines(remedies(w for w in answer.warnings if w.get_out), Tone.DANGER)
    when = clock.happened(answer.at)
    if answer.first_pass:
        when = f"{clock.happened(answer.first_pass)} to {when}"
    for labels, words in alike(answer.after, lambda line: _recorded(answer, line, clock)):
        page.line(f"{when}  {labels}: {words}")
    if answer.named > 1:
        page.line(f"on {answer.recorded} of {answer.named} pieces")
    _same(page, answer, clock)
    if answer.bare_until:
        page.line(f"nothing left on it until {clock.wait_until(answer.bare_until)}")
    if answer.clamped_until:
        page.line(f"clamps on until {clock.wait_until(answer.clamped_until)}")
    page.lines(usual_wanted(answer.after))
    if answer.late:
        page.line(
            f"it lands before {answer.entries_after_it} later "
            f"{'entry' if answer.entries_after_it == 1 else 'entries'}; all was worked out again"
        )
        others = [(f"act {r.act} is coat {r.now_is}, was {r.was}", r) for r in answer.renumbered]
        counts = together((words, r.label) for words, r in others)
        page.lines(f"numbers  {names(labels)}: {words}" for words, labels in counts.items())
        if not answer.moved:
            page.line("moved    no date still to come")
    _moved(page, answer.moved, clock)
    warnings = [
        w
        for w in answer.warnings
        if not w.get_out and (verbose or w.level is not Level.NOTE or is_told_once(w))
    ]
    first = [w for w in warnings if w.rule in HURTS]
    warn(page, first)
    _rags(page, (r for r in answer.rags if r.speaks and r.overdue), clock)
    _evening(page, answer, clock)
    warn(page, [*(w for w in warnings if w not in first), *answer.asks])
    if answer.air:
        from finishlog.cli.pages.evening.vapour_page import air_lines

        page.lines(f"air: {words}" for _, words in air_lines(answer.air))
    _rags(page, (r for r in answer.rags if r.speaks and not r.overdue), clock)
    if answer.hand_dust:
        page.line(f"rags: {HAND_DUST}")
    for note in answer.notes:
        page.line(f"safety: {note.text}" + (f" [{note.source}]" if verbose else ""))
    return page.line(f"act {answer.act}", Tone.FAINT)


def _rags(page: Page, lines: Iterable[RagsLine], clock: Clock) -> None:
    for rags in lines:
        page.line(
            f"rags {rags.number}: {rags_made_of(rags)}, {rags_words(rags, clock)}",
            Tone.DANGER if rags.overdue else Tone.PLAIN,
        )
        if rags.soft:
            page.line(f"        {SOFT_FILM}", Tone.DANGER)


def _evening(page: Page, answer: Logged, clock: Clock) -> None:
    """Say what the evening comes to in its rooms, and who stays out of them."""
    if answer.evening:
        from finishlog.cli.pages.evening.vapour_page import evening_words

        page.lines((f"caution: {evening_words(each)}" for each in answer.evening), Tone.DANGER)
    if answer.people:
        from finishlog.cli.pages.evening.vapour_page import people_rows

        page.lines(f"people: {words}" for words in people_rows(answer.people, clock))


def _same(page: Page, answer: Logged, clock: Clock) -> None:
    """Say what it was taken from, what was left out and done there, and that its time is a span."""
    same = answer.same
    if same is None:
        return
    page.line(f"the same as {same.like} (act {same.act})")
    if same.instead is None:
        page.lines(f"{name}: nothing logged" for name in same.but)
    else:
        deed = f"no coat, {same.instead.deed}"

        def told(one: Standing) -> str:
            stays = f", coat {len(one.layers)} stays" if one.layers else ""
            return f"{deed}{stays} · {standing_words(one, clock)}"

        page.lines(f"{labels}: {words}" for labels, words in alike(same.instead.after, told))
        warn(page, [w for w in same.instead.warnings if w.level is not Level.NOTE])
    if not same.at_told:
        page.line(
            f"when was not said: the later end counts; "
            f"finishlog amend {answer.act} --at 'FROM to UNTIL'"
        )


def alike(lines: Iterable[Standing], words: Callable[[Standing], str]) -> list[tuple[str, str]]:
    """Put parts together of which the same is to be said: their names, and the words."""
    found = together((words(line), line.label) for line in lines)
    return [(names(labels), said) for said, labels in found.items()]


def standing_lines(page: Page, lines: Iterable[Standing], clock: Clock) -> Page:
    """Say how parts stand, in one line those that stand alike."""
    found = alike(lines, lambda line: standing_words(line, clock))
    return page.lines(f"{labels}: {words}" for labels, words in found)


def _recorded(answer: Logged, line: Standing, clock: Clock) -> str:
    what = f"{_what(answer, line)}{_and_edges(answer, line)}"
    return f"{what} · {standing_words(line, clock)}"


def _and_edges(answer: Logged, line: Standing) -> str:
    """Say which edges it ran over, unless the line is about those."""
    over = [edge for edge in answer.edges if edge not in line.faces]
    return f", {' and '.join(over)} too" if over else ""


def _what(answer: Logged, line: Standing) -> str:
    if answer.operation is not Operation.COAT:
        return answer.operation.value
    # A coat that lands between others takes a number that was another's: leave it unsaid.
    last = line.layers.count(answer.product)
    came = f" from {answer.container}" if answer.container else ""
    if answer.passes > 1 and answer.first_pass:
        first = "" if answer.late else f" {last - answer.passes + 1}-{last}"
        return f"coats{first}, {answer.product}{came}, {answer.passes} passes"
    if answer.stopped is not None:
        return f"broken off, {answer.product}{came} on {answer.stopped}"
    number = "" if answer.late else f" {last}"
    return f"coat{number}, {answer.product}{came}"


def standing_words(standing: Standing, clock: Clock, head: str = "next: ") -> str:
    """Say how a group stands in one phrase."""
    if standing.answer is Answer.DONE and standing.milestone:
        stage = shown(standing.milestone.stage)
        return f"{short(standing.because)}; {stage} {milestone_words(standing.milestone, clock)}"
    if standing.answer is Answer.DONE:
        return short(standing.because)
    if standing.deed is Deed.LEAVE and standing.high is not None:
        return f"{standing.deed}: {reason(standing, clock)}"
    if standing.answer in {Answer.GO, Answer.SCUFF, Answer.TEST, Answer.BLOCKED}:
        bits = [f"{head}{deed(standing)}", coat_words(standing), reason(standing, clock)]
        return ", ".join(b for b in bits if b)
    return reason(standing, clock)


def check_page(answer: Checked, clock: Clock) -> Page:
    """Echo a check and what it changes."""
    found = f"{answer.found.value}{in_brackets(answer.place)}"
    page = echo(clock, answer.at, answer.labels, f"{answer.test.value}, {found}")
    if answer.in_the_white:
        page.line(f"caution: {names(answer.in_the_white)}: there is no film on record there")
    page.lines(remedies(answer.warnings), Tone.HEAD)
    page.lines(filter(None, (answer.means, *answer.remedies)))
    if answer.blocks:
        page.line(f"blocks {', '.join(shown(s) for s in answer.blocks)} until a check passes")
    if answer.proves:
        page.line(f"proves {', '.join(shown(s) for s in answer.proves)}, no more")
    if answer.elsewhere:
        page.line(f"still stands elsewhere: {', '.join(answer.elsewhere)}")
    standing_lines(page, answer.standings, clock)
    for line in answer.standings:
        if line.learnt is not None:
            page.line(f"{line.label}: {learnt_words(line.learnt, clock)}", Tone.FAINT)
    _moved(page, answer.moved, clock)
    return page.line(f"act {answer.act}", Tone.FAINT)


def undo_page(answer: Undone, clock: Clock) -> Page:
    """Echo a withdrawal."""
    page = Page()
    found = answer.withdrawn
    if answer.again:
        page.line(f"act {found.act} was an undo: what it withdrew is in force again")
    else:
        page.line(f"withdrawn: act {found.act}, {found.words}")
    return page.line(f"to take this back: finishlog undo {answer.act}", Tone.FAINT)


def amend_page(answer: Amended, clock: Clock) -> Page:
    """Echo an amendment."""
    page = Page()
    was = clock.happened(answer.was)
    now_is = clock.happened(answer.now_is)
    moved = f", {was} → {now_is}" if was != now_is else ""
    page.line(f"act {answer.amends} amended ({answer.kind}){moved}; the old entry stays in history")
    page.lines(answer.remarks)
    standing_lines(page, answer.standings, clock)
    _moved(page, answer.moved, clock)
    page.lines(remedies(answer.warnings), Tone.HEAD)
    return page.line(f"act {answer.act}", Tone.FAINT)


def label_page(answer: Labelled, words: str, clock: Clock) -> Page:
    """Echo a changed label, and which coats that are on it would move, or moved."""
    page = Page().line(f"on record: {answer.kind} {answer.name} ({answer.detail})")
    if answer.judged:
        _moved(page, answer.moved, clock)
    else:
        for date in answer.moved:
            was, by_this = (_date(moment, clock) for moment in (date.was, date.now_is))
            page.line(f"keeps    {date.label}: {was}, by this label {by_this}")
    if answer.moved and not answer.judged:
        page.line(f"if the can said so all along: finishlog {words} --coats-too")
    return page.line(f"to take this back: finishlog undo {answer.act}", Tone.FAINT)


def sheet_said_page(answer: SheetSaid) -> Page:
    """Echo what a sheet says, and what is not looked out for any more because of it."""
    page = Page().line(f"on record: {answer.kind} {answer.name} ({answer.detail})")
    if answer.less:
        page.line(
            f"less than its class: {', '.join(answer.less)}; nothing here warns of that in "
            f"{answer.name} any more, by your sheet alone: is it the sheet of this very can, and "
            "of its hardener?",
            Tone.HEAD,
        )
    return page.line(f"to take this back: finishlog undo {answer.act}", Tone.FAINT)


def _moved(page: Page, dates: Iterable[MovedDate], clock: Clock) -> None:
    """Say which dates are others now."""
    found = together((_moved_how(date, clock), date.label) for date in dates)
    page.lines(f"moved    {names(labels)}: {words}" for words, labels in found.items())


def _moved_how(date: MovedDate, clock: Clock) -> str:
    pace = f": your pace is {date.pace}" if date.pace else ""
    return f"{_date(date.now_is, clock)}, was {_date(date.was, clock)}{pace}"


def _date(moment: datetime | None, clock: Clock) -> str:
    if moment is None:
        return "no date"
    if moment <= clock.now:
        return "ready"
    return f"after {clock.wait_until(moment)}"


def note_page(answer: Noted, clock: Clock) -> Page:
    """Echo a note; what must not meet stands before it."""
    page = Page()
    page.lines(remedies(answer.warnings), Tone.DANGER)
    kind = "outcome" if answer.outcome else "note"
    when = clock.happened(answer.at)
    page.line(f"{when}  {', '.join(answer.labels)}: {kind}, {answer.text}")
    return page.line(f"act {answer.act}", Tone.FAINT)
