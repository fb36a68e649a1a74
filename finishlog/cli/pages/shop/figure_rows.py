"""Rows of published figures: each with its range, its basis and its source.

Readings of other sources stand under the figure that is used, and so does its note.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import TYPE_CHECKING, TypeAlias, TypeVar

from finishlog.cli.terminal.page import Page, Section, Tone
from finishlog.cli.typed.figures.measures import show_air
from finishlog.core.air.psychrometrics import STANDARD_AIR
from finishlog.core.finish.classes import Colder, Figure, FinishClass, Limit, Range, RecoatWindow
from finishlog.core.finish.stages import Stage, shown
from finishlog.core.measure.quantities import apart, celsius
from finishlog.core.published.sources import cited

if TYPE_CHECKING:
    from finishlog.core.published.sources import Source

Read = TypeVar("Read", Figure, Range)
# Where figures come from, by the id of the source.
Sources: TypeAlias = "Mapping[str, Source]"


def basis(source: str, sources: Sources) -> str:
    """Tell what a figure rests on: a published source by its title, or what is said instead."""
    known = sources.get(source)
    return f"published: {known.title}" if known else source


def figures(
    page: Page,
    stages: Mapping[Stage, Figure],
    window: RecoatWindow,
    sources: Sources,
) -> None:
    """List the hours to each stage, and the recoat window."""
    standard = show_air(STANDARD_AIR)
    section = page.section(f"HOURS AT {standard} UNLESS SAID, the long end is the promise")
    for stage, figure in stages.items():
        figure_row(section, shown(stage), figure, hours_at, sources)
    section.row("window", window.kind.value, basis(window.source, sources))
    _remark(section, window.note)
    if window.closes is not None:
        figure_row(section, "closes", window.closes, hours_at, sources)
    if window.again is not None:
        again = window.again
        how = "for a scuffed film" if again.scuffed else ""
        until = f" to {hour_words(again.closes.low_h)}" if again.closes else ""
        section.row("open again", f"{hours_at(again.opens)}{until}", how)


def figure_row(
    section: Section, name: str, found: Read, written: Callable[[Read], str], sources: Sources
) -> None:
    """Write one figure, hours or another quantity; under it what other sources say."""
    section.row(name, written(found), basis(found.source, sources))
    _remark(section, found.note)
    for also in found.also:
        _remark(
            section, f"also {written(also)}, {basis(also.source, sources)}: not used", also.note
        )


def _remark(section: Section, *texts: str) -> None:
    text = ". ".join(text for text in texts if text)
    if text:
        section.row("", "", text, tone=Tone.FAINT)


def limits(page: Page, of: FinishClass, sources: Sources) -> None:
    """List the air that the class wants, its rags and its cautions."""
    section = page.section("LIMITS AND CAUTIONS")
    for name, limit, words in _limits(of):
        if limit is not None:
            section.row(name, words(limit.value), basis(limit.source, sources))
    if of.wrinkles_when_late_source:
        said_by = basis(of.wrinkles_when_late_source, sources)
        section.row("recoated late", "may wrinkle", f"even scuffed, until fully hard; {said_by}")
    rags = "self-heat" if of.self_heating else "check the sheet"
    on_record = "" if of.self_heating else "no self-heating on record, "
    section.row(
        "oily rags",
        rags,
        on_record + basis(of.self_heating_source, sources),
        tone=Tone.DANGER if of.self_heating else Tone.PLAIN,
    )
    page.section("NOTES").each(("-", note) for note in of.notes)


def named_sources(page: Page, texts: Iterable[str], sources: Sources) -> None:
    """Give the titles of the sources that texts name by their ids."""
    section = page.section("SOURCES NAMED IN WORDS")
    section.each((id_, sources[id_].title) for id_ in cited(texts))


def _limits(of: FinishClass) -> tuple[tuple[str, Limit | None, Callable[[float], str]], ...]:
    air = of.limits
    return (
        ("not colder than", air.min_c, _degrees),
        ("not warmer than", air.max_c, _degrees),
        ("not damper than", air.max_rh_pct, lambda value: f"{value:g} % RH"),
        ("keep warm for", air.warm_first_h, lambda value: f"first {value:g} h"),
        ("blushes above", air.blush_rh_pct, lambda value: f"{value:g} % RH"),
        ("tried from", air.tried_from_c, lambda value: f"{celsius(value)}, on a sample board"),
        ("blushes at dew +", air.blush_dew_gap_c, lambda value: f"{apart(value)} or less"),
    )


def _degrees(value: float) -> str:
    return celsius(value, 1)


def hours_at(figure: Figure) -> str:
    """Write a range of hours, days where they are long, and the air that they are for."""
    at = "" if figure.at == STANDARD_AIR and not figure.colder else f" at {show_air(figure.at)}"
    return ", ".join((_ends(figure) + at, *colder_rows(figure)))


def colder_rows(figure: Figure) -> list[str]:
    """Write what a can says of colder air: `16 h at 13 °C`."""
    return [f"{_ends(row)} at {celsius(row.temperature_c, 1)}" for row in figure.colder]


def _ends(row: Figure | Colder) -> str:
    low, high = hour_words(row.low_h), hour_words(row.high_h)
    return low if low == high else f"{low} to {high}"


def hour_words(hours: float) -> str:
    """Write hours in the unit that suits them: `2 s`, `20 min`, `1.5 h`, `7 d`."""
    if hours >= 48 and hours % 24 == 0:
        return f"{hours / 24:g} d"
    if 0 < hours < 1 / 60:
        return f"{hours * 3600:.0f} s"
    return f"{hours:g} h" if hours >= 1 or hours == 0 else f"{hours * 60:.0f} min"
