"""Rows of published figures: each with its range, its basis and its source.

Readings of other sources stand under the figure that is used, and so does its note.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, TypeVar

from finishlog.cli.terminal.page import Page, Section, Tone
from finishlog.cli.typed.figures.measures import show_air, show_temperature
from finishlog.core.air.psychrometrics import STANDARD_AIR
from finishlog.core.finish.classes import Figure, FinishClass, Limit, Range, RecoatWindow
from finishlog.core.finish.stages import Stage, shown
from finishlog.core.measure.units import Temperature, difference_from_base, sign

if TYPE_CHECKING:
    from finishlog.core.published.facts import Facts

Read = TypeVar("Read", Figure, Range)


def basis(source: str, facts: Facts) -> str:
    """Tell what a figure rests on: a published source by its title, or what is said instead."""
    known = facts.sources.get(source)
    return f"published: {known.title}" if known else source


def figures(
    page: Page,
    stages: Mapping[Stage, Figure],
    window: RecoatWindow,
    facts: Facts,
    unit: Temperature,
) -> None:
    """List the hours to each stage, and the recoat window."""
    standard = show_air(STANDARD_AIR, unit)
    section = page.section(f"HOURS AT {standard} UNLESS SAID, the long end is the promise")
    for stage, figure in stages.items():
        hours_row(section, shown(stage), figure, facts, unit)
    section.row("window", window.kind.value, basis(window.source, facts))
    _remark(section, window.note)
    if window.closes is not None:
        hours_row(section, "closes", window.closes, facts, unit)


def hours_row(section: Section, name: str, figure: Figure, facts: Facts, unit: Temperature) -> None:
    """Write one figure of hours."""
    _rows(section, name, figure, lambda one: _hours_at(one, unit), facts)


def range_row(
    section: Section, name: str, found: Range, written: Callable[[Range], str], facts: Facts
) -> None:
    """Write one quantity that is no time."""
    _rows(section, name, found, written, facts)


def _rows(
    section: Section, name: str, found: Read, written: Callable[[Read], str], facts: Facts
) -> None:
    section.row(name, written(found), basis(found.source, facts))
    _remark(section, found.note)
    for also in found.also:
        _remark(section, f"also {written(also)}, {basis(also.source, facts)}: not used", also.note)


def _remark(section: Section, *texts: str) -> None:
    text = ". ".join(text for text in texts if text)
    if text:
        section.row("", "", text, tone=Tone.FAINT)


def limits(page: Page, of: FinishClass, facts: Facts, unit: Temperature) -> None:
    """List the air that the class wants, its rags and its cautions."""
    section = page.section("LIMITS AND CAUTIONS")
    for name, limit, words in _limits(of, unit):
        if limit is not None:
            section.row(name, words(limit.value), basis(limit.source, facts))
    if of.wrinkles_when_late_source:
        said_by = basis(of.wrinkles_when_late_source, facts)
        section.row("recoated late", "may wrinkle", f"even scuffed, until fully hard; {said_by}")
    rags = "self-heat" if of.self_heating else "check the sheet"
    on_record = "" if of.self_heating else "no self-heating on record, "
    section.row(
        "oily rags",
        rags,
        on_record + basis(of.self_heating_source, facts),
        tone=Tone.DANGER if of.self_heating else Tone.PLAIN,
    )
    notes = page.section("NOTES")
    for note in of.notes:
        notes.row("-", note)


def _limits(
    of: FinishClass, unit: Temperature
) -> tuple[tuple[str, Limit | None, Callable[[float], str]], ...]:
    def degrees(value: float) -> str:
        return show_temperature(value, unit)

    def gap(value: float) -> str:
        return f"{difference_from_base(value, unit):.0f} {sign(unit)} or less"

    air = of.limits
    return (
        ("not colder than", air.min_c, degrees),
        ("not warmer than", air.max_c, degrees),
        ("not damper than", air.max_rh_pct, lambda value: f"{value:g} % RH"),
        ("keep warm for", air.warm_first_h, lambda value: f"first {value:g} h"),
        ("blushes above", air.blush_rh_pct, lambda value: f"{value:g} % RH"),
        ("blushes at dew +", air.blush_dew_gap_c, gap),
    )


def span(figure: Figure) -> str:
    """Write a range of hours, days where they are long."""
    low, high = hour_words(figure.low_h), hour_words(figure.high_h)
    return low if low == high else f"{low} to {high}"


def _hours_at(figure: Figure, unit: Temperature) -> str:
    at = "" if figure.at == STANDARD_AIR else f" at {show_air(figure.at, unit)}"
    return span(figure) + at


def hour_words(hours: float) -> str:
    """Write hours in the unit that suits them: `2 s`, `20 min`, `1.5 h`, `7 d`."""
    if hours >= 48 and hours % 24 == 0:
        return f"{hours / 24:g} d"
    if 0 < hours < 1 / 60:
        return f"{hours * 3600:.0f} s"
    return f"{hours:g} h" if hours >= 1 or hours == 0 else f"{hours * 60:.0f} min"
