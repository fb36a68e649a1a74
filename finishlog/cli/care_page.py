"""The care card on paper: plain text that fits 80 columns wherever it is printed."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime
from textwrap import wrap
from typing import TYPE_CHECKING

from finishlog.cli.screen import Page, Section, Tone
from finishlog.core.care import CareKind
from finishlog.core.records import Found
from finishlog.core.shown_times import day_of, first_day_after
from finishlog.core.stages import Stage

if TYPE_CHECKING:
    from finishlog.asks.care_card import CardLine, CardPart, CareCard, ForFoodOrChild
    from finishlog.clock import Clock
    from finishlog.core.milestones import Milestone
    from finishlog.facts.load import Facts

WIDTH = 80
_TEXT = WIDTH - 2

_STAGES = {
    Stage.PACK: "packed, wrapped",
    Stage.LIGHT_USE: "light use",
    Stage.RUB: "rubbed out, waxed",
    Stage.CURED: "fully hard",
}
_COLUMN = max(map(len, _STAGES.values()))

# A stage, and from when it holds, in words.
_Dates = tuple[tuple[str, str], ...]

_NORMAL_USE = "normal use"

_HEADINGS = {
    CareKind.USE: "WHAT THE DATES MEAN",
    CareKind.NEVER: "NEVER, HOWEVER OLD IT IS",
    CareKind.CARE: "CARE",
    CareKind.PACKING: "PACKING AND CARRYING",
    CareKind.TEST: "IS IT HARD? TRY IT",
}


def care_page(card: CareCard, facts: Facts, clock: Clock, *, verbose: bool) -> Page:
    """Lay out the card: what is on it, dates, never, care, packing."""
    page = Page()
    page.line(f"CARE CARD: {card.name}"[:WIDTH], Tone.HEAD)
    if card.handed_over:
        page.line(f"handed over {day_of(card.handed_over, clock.zone)}")
    _on_it(page.section("ON IT"), card, clock)
    for labels, dates in _alike(card.parts, clock):
        _dates(page.section(_head(f"NOT BEFORE: {'; '.join(labels)}")), dates)
    if len(card.parts) > 1:
        _dates(page.section("NOT BEFORE: all of it"), _worded(card.dates, clock))
    for use in card.for_whom:
        _for_whom(page.section(f"FOR {use.used_for.value.upper()}"), use, clock)
    for kind, heading in _HEADINGS.items():
        lines = [line for line in card.lines if line.kind is kind]
        _lines(page.section(heading), lines, facts, verbose=verbose)
    page.line("")
    _last_word(page.section())
    return page


def _head(text: str) -> str:
    return text if len(text) <= WIDTH else f"{text[: WIDTH - 1]}…"


def _put(section: Section, text: str, begin: str = "", *, tone: Tone = Tone.PLAIN) -> None:
    """Add a text in as many lines as it takes; the following ones stand under the first."""
    for n, line in enumerate(wrap(text, _TEXT - len(begin), break_long_words=False) or [""]):
        section.row(f"{begin if n == 0 else ' ' * len(begin)}{line}", tone=tone)


def _on_it(section: Section, card: CareCard, clock: Clock) -> None:
    for part in card.parts:
        wood = f" ({part.species})" if part.species else ""
        _put(section, f"{part.label}{wood}: {_coats(part, clock)}")
    if not card.parts:
        section.row("nothing on record")


def _coats(part: CardPart, clock: Clock) -> str:
    if not part.coats or part.last_coat is None:
        return "no finish on record"
    runs = [
        f"{run.coats} {'coat' if run.coats == 1 else 'coats'} of {run.class_name} ({run.product})"
        for run in part.coats
    ]
    return f"{', then '.join(runs)}; the last on {day_of(part.last_coat, clock.zone)}"


def _alike(parts: Iterable[CardPart], clock: Clock) -> list[tuple[list[str], _Dates]]:
    """Put parts with the same dates together."""
    found: dict[_Dates, list[str]] = {}
    for part in parts:
        found.setdefault(_worded(part.dates, clock), []).append(part.label)
    return [(labels, dates) for dates, labels in found.items()]


def _worded(dates: Iterable[Milestone], clock: Clock) -> _Dates:
    by_stage = {each.stage: each for each in dates}
    rows: list[tuple[str, str]] = []
    for stage, each in by_stage.items():
        if stage is Stage.CURED:
            rows.append((_NORMAL_USE, _normal_use(each, by_stage.get(Stage.LIGHT_USE), clock)))
        rows.append((_STAGES[stage], _date(each, clock)))
    return tuple(rows)


def _normal_use(hard: Milestone, light: Milestone | None, clock: Clock) -> str:
    """Say from when things may stand on it: when it may be hard, tested; else when it is."""
    soon, late = hard.low, hard.high
    unsure = hard.blocked or hard.missing or not hard.air_read
    if unsure or soon is None or late is None or light is None or light.high is None:
        return _date(hard, clock)
    day = first_day_after(max(soon, light.high), clock.zone)
    if max(soon, light.high) >= late or day == first_day_after(late, clock.zone):
        return _date(hard, clock)
    return f"{day} if it passes the tests below, else as fully hard"


def _dates(section: Section, dates: _Dates) -> None:
    for name, words in dates:
        _put(section, words, name.ljust(_COLUMN + 2))


def _date(each: Milestone, clock: Clock) -> str:
    if each.blocked:
        return f"no date: {each.blocked}"
    if each.high is None:
        return "no date in this air"
    day = first_day_after(each.high, clock.zone)
    words = day if each.air_read else f"{day}, by label time only: its air was not measured"
    return f"{words}; no figure for {', '.join(each.missing)}" if each.missing else words


def _for_whom(section: Section, use: ForFoodOrChild, clock: Clock) -> None:
    if use.not_before is None:
        _put(section, "no date can be given; ask the maker of the finish")
    else:
        day = first_day_after(use.not_before, clock.zone)
        _put(section, f"not before {day}, and not while it smells of anything")
    _put(
        section,
        f"advice runs from {use.advised_from_d:g} to {use.advised_to_d:g} days after the last "
        "coat of the last part, and fully hard; the longer is taken",
    )
    _put(section, _smell(use.smell, use.smelt_at, clock))


def _smell(found: Found | None, moment: datetime | None, clock: Clock) -> str:
    if found is None or moment is None:
        return "not smelt since the last coat: smell every part of it"
    smells = "it still smelt" if found is Found.SMELLS else "no smell was found"
    return f"smelt on {day_of(moment, clock.zone)}: {smells}; smell it again"


def _lines(section: Section, lines: Iterable[CardLine], facts: Facts, *, verbose: bool) -> None:
    for line in lines:
        of = f"{', '.join(line.parts)}: " if line.parts else ""
        source = facts.sources.get(line.source)
        said = f" [{source.title if source else line.source}]" if verbose else ""
        _put(section, f"{of}{line.text}{said}", "- ")


def _last_word(section: Section) -> None:
    _put(
        section,
        "Dates are reckoned from what was logged and are estimates, never a promise of safety. "
        "The safety data sheets of the finishes and their makers come first.",
    )
