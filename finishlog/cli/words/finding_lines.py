"""Findings as lines of a page: what, then what to do; what stops in red."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from finishlog.cli.terminal.page import Page, Tone
from finishlog.cli.words.finding_words import with_remedy
from finishlog.core.findings import Finding, Level


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
