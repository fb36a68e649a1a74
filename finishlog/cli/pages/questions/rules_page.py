"""The pages of the rules: what each reads and binds, and which facts are heard where."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from finishlog.cli.terminal.page import Page, Tone
from finishlog.core.findings import Act

if TYPE_CHECKING:
    from finishlog.asks.things.rules import FactRow, Heard, RuleLine, RulesAnswer


def rules_page(answer: RulesAnswer) -> Page:
    """List the rules, or show one; or the facts, by how the acts hear them."""
    if answer.facts:
        return _facts_page(answer.facts)
    if len(answer.rules) == 1:
        return _rule_page(answer.rules[0])
    return Page.listed((rule.id, rule.says) for rule in answer.rules)


def _rule_page(rule: RuleLine) -> Page:
    page = Page().line(rule.id, Tone.HEAD).line(rule.says)
    section = page.section()
    section.row("binds", acts_words(rule.binds))
    section.row("reads", ", ".join(rule.reads))
    section.row("source", rule.source)
    return page


def _facts_page(rows: Sequence[FactRow]) -> Page:
    page = Page()
    for row in rows:
        section = page.section(row.fact)
        for heard in row.heard:
            section.row(f"{acts_words(heard.acts)}: {_heard_words(heard)}")
    return page


def _heard_words(heard: Heard) -> str:
    if heard.rules:
        return ", ".join(heard.rules)
    return f"not heard yet. {heard.why}" if heard.gap else f"by none. {heard.why}"


def acts_words(acts: Sequence[Act]) -> str:
    """Name acts in the shorter way: those that they are, or all but those that they are not."""
    left = [act.value for act in Act if act not in acts]
    if not left:
        return "every act"
    if len(left) < len(acts):
        return f"every act but {', '.join(left)}"
    return ", ".join(act.value for act in acts)
