"""Findings, and what stands ready before work, as lines of a page; what stops in red."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from finishlog.cli.terminal.page import Page, Tone
from finishlog.cli.words.finding_words import with_remedy
from finishlog.core.findings import Finding, Level

if TYPE_CHECKING:
    from finishlog.acts.answers.made import Reaches
    from finishlog.asks.bench.open_cans import BeforeLine


def remedies(findings: Iterable[Finding]) -> list[str]:
    """Write findings as lines: what, then what to do."""
    heads = {Level.STOP: "stop", Level.CAUTION: "caution", Level.NOTE: "note"}
    return [f"{heads[f.level]}: {_on(f)}{with_remedy(f)}" for f in findings]


def warn(page: Page, findings: Sequence[Finding]) -> None:
    """Write findings on a page, what stops in red."""
    for finding, words in zip(findings, remedies(findings), strict=True):
        page.line(words, Tone.DANGER if finding.level is Level.STOP else Tone.HEAD)


def _on(finding: Finding) -> str:
    return f"{names(finding.on)}: " if finding.on else ""


def names(labels: Iterable[str]) -> str:
    """Join names: `legs ×4, rails ×2 and top`."""
    *before, last = labels
    return f"{', '.join(before)} and {last}" if before else last


def before_text(line: BeforeLine) -> str:
    """Say what to have ready; what hurts by a cloth or a brush too is called a caution."""
    return f"caution: {line.text}" if line.level is Level.CAUTION else line.text


def before_rows(lines: Iterable[BeforeLine]) -> list[tuple[str, str]]:
    """Say in one row what some products ask to have ready, the most dangerous first."""
    together: dict[tuple[str, ...], list[str]] = {}
    for line in lines:
        together.setdefault(line.products, []).append(before_text(line))
    return [(names(of), "; ".join(texts)) for of, texts in together.items()]


def chosen_lines(before: Iterable[BeforeLine], people: Iterable[Reaches]) -> list[str]:
    """Say where finishes are chosen what stands ready for them, and whom they reach."""
    ready = " | ".join(f"{of}: {texts}" for of, texts in before_rows(before))
    lines = [f"before you open it: {ready}"] if ready else []
    return [*lines, *(f"people: {words}" for words in _reaches(people))]


def _reaches(found: Iterable[Reaches]) -> list[str]:
    """Say whom it reaches in which rooms, where they stay meanwhile, and whom to ask."""
    rooms: dict[tuple[str, str, str], list[str]] = {}
    for each in found:
        rooms.setdefault((each.of.who, each.of.out, each.of.asks), []).append(each.room)
    alike: dict[tuple[str, str, str], list[str]] = {}
    for (who, out, asks), where in rooms.items():
        alike.setdefault((names(where), out, asks), []).append(who)
    return [f"{where}: {names(who)} {out}; {asks}" for (where, out, asks), who in alike.items()]
