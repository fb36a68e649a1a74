"""The pages of past: finishes as they were really done, and coats one over the other."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import timedelta
from typing import TYPE_CHECKING

from finishlog.asks.look.entry_words import FLOODED, PUT_ON, STIRRED, TAKEN_OFF
from finishlog.cli.terminal.page import Page, Section, Tone
from finishlog.cli.typed.figures.measures import show_air
from finishlog.core.log.shown_times import length_words
from finishlog.core.measure.quantities import micrometres

if TYPE_CHECKING:
    from finishlog.asks.past.pairs import Pair
    from finishlog.asks.past.past import Counts, Past, PastFinish, PastSaid
    from finishlog.asks.past.recipe import PastAttempt, PastCoat, PastDeed, PastOff
    from finishlog.clock import Clock
    from finishlog.core.air.psychrometrics import Air


def past_page(answer: Past, clock: Clock) -> Page:
    """List finishes, what worked first, and how many came out how."""
    page = Page()
    for finish in answer.finishes:
        section = page.section(_head(finish))
        for nth, attempt in enumerate(finish.attempts, 1):
            if len(finish.attempts) > 1:
                section.row(f"attempt {nth}", _came_off(attempt.off, clock))
            _attempt(section, attempt, clock)
            if attempt.off and len(finish.attempts) == 1:
                section.row("off", _came_off(attempt.off, clock))
        _said(section, finish, clock)
    page.line(_counts(answer.counts), Tone.HEAD)
    page.lines(f"caution: {remark}" for remark in answer.remarks)
    return page.line("to do one again: finishlog steps new NAME --like PART", Tone.FAINT)


def _head(finish: PastFinish) -> str:
    faces = f", {' and '.join(finish.faces)}" if finish.faces not in {("all round",)} else ""
    board = ", sample board" if finish.is_board else ""
    into = f", part of {finish.into}" if finish.into else ""
    steps = f" · steps {finish.steps}" if finish.steps else ""
    return f"{finish.label}{faces} · {finish.species or 'wood not said'}{board}{into}{steps}"


def _attempt(section: Section, attempt: PastAttempt, clock: Clock) -> None:
    if attempt.prepared:
        section.row("before", "", _deeds(attempt.prepared))
    told = ""
    for coat in attempt.coats:
        when = clock.words(coat.put_on)
        section.row(coat.product, when, _coat(coat, of_class=coat.product != told))
        for there in coat.dried:
            air = f", {show_air(there.air)}" if there.air else ", its air not read"
            section.row("", clock.words(there.since), f"dried in {there.room}{air}")
        told = coat.product
    last = attempt.coats[-1].sheen if attempt.coats else None
    if last and len({coat.sheen for coat in attempt.coats}) > 1:
        section.row("last coat", "", f"{last.value}: it alone makes the sheen")


def _coat(coat: PastCoat, *, of_class: bool) -> str:
    """Say one coat; two products may share a name on the shelf, so its class is said once."""
    bits = [coat.class_name] if of_class else []
    bits += [coat.sheen.value] if coat.sheen else []
    bits += [f"from {coat.container}"] if coat.container else []
    bits += [f"broken off ({coat.stopped})"] if coat.stopped is not None else []
    if coat.hours_since_last is not None:
        bits.append(_interval(coat.hours_since_last, coat))
    beyond = f" ({coat.not_in_this_air})" if coat.not_in_this_air else ""
    bits += [show_air(coat.air) + beyond] if coat.air else []
    bits += [PUT_ON[coat.method]] if coat.method else []
    bits += [FLOODED[coat.flooded]] if coat.flooded is not None else []
    bits += [STIRRED[coat.stirred]] if coat.stirred is not None else []
    bits += ["scuffed before"] if coat.scuffed_before else []
    bits += [f"{micrometres(coat.wet_film_um)} wet"] if coat.wet_film_um else []
    bits += [f"wiped after {coat.wiped_after_min:g} min"] if coat.wiped_after_min else []
    bits += [coat.note] if coat.note else []
    bits += [f"then {_deeds(coat.since)}"] if coat.since else []
    return ", ".join([*bits, f"act {coat.act}"])


def _interval(hours: float, coat: PastCoat | Pair) -> str:
    """Say the real hours against the label: sooner, or past its window, is said in words."""
    low, high, closes = coat.label_low_h, coat.label_high_h, coat.label_closes_h
    if low is None or high is None:
        return f"after {_hours(hours)}"
    asked = f"label {low:g}{f' to {high:g}' if high != low else ''} h"
    if hours < low:
        asked += ", SOONER"
    if closes is not None and hours > closes:
        asked += f", window of {closes:g} h had closed"
    return f"after {_hours(hours)} ({asked})"


def _hours(hours: float) -> str:
    """A tenth of an hour is as near as anybody notes a coat; beyond three days, the day."""
    return f"{round(hours, 1):g} h" if hours <= 72 else f"{round(hours / 24)} d"


def _deeds(deeds: Iterable[PastDeed]) -> str:
    return ", ".join(dict.fromkeys(deed.said for deed in deeds))


def _came_off(off: PastOff | None, clock: Clock) -> str:
    if off is None:
        return "what is on it now"
    when = clock.happened(off.at)
    to = f"down to {off.down_to}" if off.down_to else "to bare wood"
    lasted = f" after {length_words(_rounded(off.lasted_h))}" if off.lasted_h is not None else ""
    why = f": {', '.join(off.why)}" if off.why else ": why was not said"
    return f"TAKEN OFF{lasted}, {TAKEN_OFF[off.how]} {to}, {when}{why} (act {off.act})"


def _rounded(hours: float) -> timedelta:
    """Round to the hour, and beyond two days to the day."""
    return timedelta(days=round(hours / 24)) if hours >= 48 else timedelta(hours=round(hours))


def _said(section: Section, finish: PastFinish, clock: Clock) -> None:
    if finish.handed_over:
        section.row("handed over", clock.words(finish.handed_over))
    for each in finish.reviews:
        outcome = each.outcome.value if each.outcome else ""
        section.row("came out", _dated(each, outcome, clock))
    section.each(("outcome", text) for text in finish.outcomes)
    section.each(("note", text) for text in finish.notes)
    section.each(("photo", _dated(each, "", clock)) for each in finish.photos)
    if not finish.reviews and not finish.outcomes:
        words = "still in work" if finish.in_work else "not said: finishlog review PART good"
        section.row("came out", words, tone=Tone.FAINT)


def _dated(said: PastSaid, outcome: str, clock: Clock) -> str:
    when = clock.happened(said.at)
    return ", ".join(x for x in (outcome, said.said, when, f"act {said.act}") if x)


def _counts(counts: Counts) -> str:
    bits = [
        (counts.good, "came out good"),
        (counts.fair, "fair"),
        (counts.failed, "failed"),
        (counts.described, "described but not judged"),
        (counts.not_said, "not said"),
        (counts.in_work, "still in work"),
    ]
    of = f"{counts.finishes} {'finish' if counts.finishes == 1 else 'finishes'}"
    said = ", ".join(f"{n} {words}" for n, words in bits if n)
    off = counts.taken_off
    attempts = f"{off} {'attempt' if off == 1 else 'attempts'} taken off" if off else ""
    return "; ".join(x for x in (f"{of}: {said}" if said else of, attempts) if x)


def pairs_page(answer: Sequence[Pair], clock: Clock) -> Page:
    """List pairs of coats, newest first: interval, air, scuffing, what went wrong."""
    page = Page()
    bad = sum(1 for pair in answer if pair.wrong)
    for pair in answer:
        section = page.section(f"{pair.over} over {pair.under}: {', '.join(pair.parts)}")
        acts = " and ".join(map(str, pair.acts))
        section.row("when", f"{clock.words(pair.put_on)}, acts {acts}")
        section.row("interval", _interval(pair.hours_between, pair))
        section.row("air", f"{_air(pair.air)}; under it {_air(pair.air_between)}")
        scuffed = {True: "yes", False: "no", None: "not on record"}[pair.scuffed]
        film = f", {micrometres(pair.wet_film_um)} wet" if pair.wet_film_um else ""
        section.row("scuffed", scuffed + film)
        if pair.colour and pair.colour_wait_h is not None:
            wait = f"{pair.colour} had {_hours(pair.colour_wait_h)} before it was covered"
            section.row("below", wait)
        section.row("result", _result(pair), tone=Tone.HEAD if pair.wrong else Tone.PLAIN)
    good = len(answer) - bad
    return page.line(f"{len(answer)} in all: {bad} went wrong, {good} without a fault on record")


def _air(air: Air | None) -> str:
    return show_air(air) if air else "not read"


def _result(pair: Pair) -> str:
    outcome = f"came out {pair.outcome.value}" if pair.outcome else ""
    wrong = f"WENT WRONG: {', '.join(pair.wrong)}" if pair.wrong else "no fault on record"
    return "; ".join(x for x in (wrong, ", ".join(pair.checks), outcome) if x)
