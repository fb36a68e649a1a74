"""The care card on paper: plain text that fits 80 columns wherever it is printed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime
from textwrap import wrap
from typing import TYPE_CHECKING

from finishlog.cli.pages.evening.words import title_of, together
from finishlog.cli.terminal.page import Page, Section, Tone
from finishlog.cli.words.finding_words import barred_by
from finishlog.core.finish.stages import Stage
from finishlog.core.log.shown_times import day_of, first_day_after
from finishlog.core.log.words import Found
from finishlog.core.published.care import CareKind

if TYPE_CHECKING:
    from finishlog.asks.past.care_card import (
        CardCoats,
        CardLine,
        CardPart,
        CareCard,
        ForFoodOrChild,
    )
    from finishlog.clock import Clock
    from finishlog.context import Context
    from finishlog.core.bench.milestones import Milestone
    from finishlog.core.published.facts import Facts
    from finishlog.core.zone.grouping import Label

WIDTH = 80
_TEXT = WIDTH - 2

_STAGES = {
    Stage.PACK: "packing",
    Stage.LIGHT_USE: "light use",
    Stage.RUB: "waxing",
    Stage.CURED: "fully hard",
}
_NORMAL_USE = "normal use"

_HEADINGS = {
    CareKind.USE: "THE DATES",
    CareKind.NEVER: "NEVER, HOWEVER OLD IT IS",
    CareKind.CARE: "CARE",
    CareKind.PACKING: "PACKING",
    CareKind.TEST: "IS IT HARD?",
}


def care_page(card: CareCard, context: Context, *, verbose: bool) -> Page:
    """Lay out the card on one page: what is on it, dates, never, care, packing.

    Its dates are those of the last part to be ready; `verbose` adds those of each part, and the
    sources. Where something keeps those of some parts back, each part stands for itself.
    """
    page = Page()
    page.lines(wrap(f"CARE CARD: {card.name}", WIDTH, subsequent_indent="  "), Tone.HEAD)
    if card.handed_over:
        page.line(f"handed over {day_of(card.handed_over, context.clock.zone)}")
    _on_it(page.section("ON IT"), card, context.clock, verbose=verbose)
    if not _some_are_held_back(card.parts):
        _dates(page.section("NOT BEFORE"), card.dates, context.clock)
        if verbose and len(card.parts) > 1:
            for part in card.parts:
                _dates(page.section(f"NOT BEFORE: {part.label}"), part.dates, context.clock)
    else:
        for dates, labels in together((part.dates, part.label) for part in card.parts).items():
            _dates(page.section(f"NOT BEFORE: {_named(labels)}"), dates, context.clock)
    for use in card.for_whom:
        section = page.section(f"FOR {use.used_for.value.upper()}")
        _for_whom(section, use, context.clock)
        mine = [x for x in card.lines if use.used_for in x.used_for and not _is_never(x)]
        _lines(section, mine, context.facts, verbose)
    hard = next((d for d in card.dates if d.stage is Stage.CURED), None)
    for kind, heading in _HEADINGS.items():
        if kind is CareKind.USE and hard is not None and hard.reached(context.clock.now):
            continue
        of_it = (line for line in card.lines if line.kind is kind)
        lines = [line for line in of_it if _is_never(line) or not line.used_for]
        _lines(page.section(heading), lines, context.facts, verbose)
    page.line("")
    _last_word(page.section())
    return page


def _some_are_held_back(parts: Sequence[CardPart]) -> bool:
    held = {any(date.blocked for date in part.dates) for part in parts if part.dates}
    return len(held) > 1


def _named(labels: Iterable[str]) -> str:
    """Join the names of parts; where one names a face behind a comma, by semicolons."""
    names = list(labels)
    return ("; " if any("," in name for name in names) else ", ").join(names)


def _put(section: Section, text: str, begin: str = "", *, hang: int = 0) -> None:
    """Add a text in as many lines as it takes; the following ones stand under the first."""
    under = " " * (len(begin) + hang)
    for line in wrap(
        text, _TEXT, initial_indent=begin, subsequent_indent=under, break_long_words=False
    ) or [begin]:
        section.row(line)


def _on_it(section: Section, card: CareCard, clock: Clock, *, verbose: bool) -> None:
    """Name the coats, parts with the same wood and coats together, and the last day of all."""
    alike = together(
        ((part.species, part.coats, part.old_finish), part.label) for part in card.parts
    )
    for (species, coats, old), labels in alike.items():
        wood = f" ({species})" if species else ""
        _put(section, f"{_named(labels)}{wood}: {_coats(coats, old, verbose=verbose)}")
    if card.last_coat:
        section.row(f"last coat {day_of(card.last_coat, clock.zone)}")
    if not card.parts:
        section.row("nothing on record")


def _coats(coats: Sequence[CardCoats], old: str, *, verbose: bool) -> str:
    """Name the coats from the top down, by what anybody calls them; `verbose`: by the can too.

    `old`: what lies under them, put on by nobody knows whom.
    """
    runs = [
        run.class_name
        + (f" ×{run.coats}" if run.coats > 1 else "")
        + (f" ({run.product})" if verbose else "")
        for run in reversed(coats)
    ]
    under = [f"{old} of unknown age (it may hold lead)"] if old else []
    return " over ".join((*runs, *under)) or "no finish on record"


def _dates(section: Section, dates: Sequence[Milestone], clock: Clock) -> None:
    """Write from when what may be done; stages with one date on one line."""
    alike = together((words, name) for name, words in _worded(dates, clock))
    rows = [(", ".join(names), words) for words, names in alike.items()]
    column = max((len(names) for names, _ in rows), default=0)
    for names, words in rows:
        _put(section, words, names.ljust(column + 2))
    if any(_is_unread(each) and not each.reached(clock.now) for each in dates):
        _put(section, "by label time only: not all of its air was measured")


def _is_unread(each: Milestone) -> bool:
    return each.high is not None and not each.air_read and not each.blocked


def _worded(dates: Sequence[Milestone], clock: Clock) -> Iterator[tuple[str, str]]:
    """Name each stage with its date; what is behind is said once, with the day of its last."""
    by_stage = {each.stage: each for each in dates}
    behind = [m.high for m in dates if m.reached(clock.now) and m.high is not None]
    since = f"reached {day_of(max(behind), clock.zone)}" if behind else ""
    for stage, each in by_stage.items():
        if stage is Stage.RUB and each.missing:
            continue
        reached = each.reached(clock.now)
        if stage is Stage.CURED:
            normal = _normal_use(each, by_stage.get(Stage.LIGHT_USE), clock)
            yield _NORMAL_USE, since if reached else normal
        yield _STAGES[stage], since if reached else _date(each, clock)


def _normal_use(hard: Milestone, light: Milestone | None, clock: Clock) -> str:
    """Say from when things may stand on it: when it may be hard, tested; else when it is."""
    soon, late = hard.low, hard.high
    unsure = hard.blocked or hard.missing or not hard.air_read
    if unsure or soon is None or late is None or light is None or light.high is None:
        return _date(hard, clock)
    day = first_day_after(max(soon, light.high), clock.zone)
    if max(soon, light.high) >= late or day == first_day_after(late, clock.zone):
        return _date(hard, clock)
    when = "now" if max(soon, light.high) <= clock.now else day
    return f"{when}, if it passes the tests below; else as fully hard"


def _date(each: Milestone, clock: Clock) -> str:
    if each.blocked:
        return f"no date: {barred_by(each.blocked)}"
    if each.high is None:
        return "no date in this air"
    day = first_day_after(each.high, clock.zone)
    words = "test first" if each.by_label_only(clock.now) else day
    return f"{words}; no figure for {', '.join(each.missing)}" if each.missing else words


def _is_never(line: CardLine) -> bool:
    return line.kind is CareKind.NEVER


def _for_whom(section: Section, use: ForFoodOrChild, clock: Clock) -> None:
    if use.not_before is None:
        _put(section, "no date can be given; ask the maker of the finish")
    else:
        day = first_day_after(use.not_before, clock.zone)
        past = use.not_before <= clock.now
        when = f"from {day} on, and" if past else f"not before {day}, and"
        _put(section, f"{when} not while it smells of anything")
    _put(
        section,
        f"advice runs from {use.advised_from_d:g} to {use.advised_to_d:g} days; the longer counts",
    )
    _put(section, _smell(use.smell, use.smelt_at, clock))


def _smell(found: Found | None, moment: datetime | None, clock: Clock) -> str:
    if found is None or moment is None:
        return "not smelt since the last coat: smell it"
    smells = "it still smelt" if found is Found.SMELLS else "no smell was found"
    return f"smelt on {day_of(moment, clock.zone)}: {smells}; smell it again"


def _lines(section: Section, lines: Iterable[CardLine], facts: Facts, verbose: bool) -> None:
    """Write what holds on all of it, then what holds on the same parts under their names."""
    by_parts: dict[tuple[Label, ...], list[CardLine]] = {(): []}
    for line in lines:
        by_parts.setdefault(line.parts, []).append(line)
    for parts, mine in by_parts.items():
        if parts:
            # How many there are stands above.
            names = (label.uncounted for label in parts)
            _put(section, f"on {_named(dict.fromkeys(names))}:")
        for line in mine:
            said = f" [{title_of(line.source, facts.sources)}]" if verbose else ""
            _put(section, f"{line.text}{said}", "  " if parts else "", hang=2)


def _last_word(section: Section) -> None:
    _put(
        section,
        "Estimates from the log, never a promise of safety: the safety data sheets come first.",
    )
