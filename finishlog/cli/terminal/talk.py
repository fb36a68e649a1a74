"""Say a line to the person beside the answer, and ask for one."""

from __future__ import annotations

import sys

from finishlog.cli.terminal.page import one_line
from finishlog.core.measure.units import Units
from finishlog.core.measure.whole_number import whole_number

_SI = Units()


def say(line: str, units: Units = _SI) -> None:
    """Write one line for the person on stderr, beside the answer."""
    print(one_line(_spelt(line, units)), file=sys.stderr)


def _spelt(text: str, units: Units = _SI) -> str:
    from finishlog.cli.terminal.spelling import spelt

    return spelt(text, units)


def at_a_terminal() -> bool:
    """Tell whether a person can be asked."""
    return sys.stdin.isatty() and sys.stderr.isatty()


def ask(question: str) -> str:
    """Ask one line on stderr, so that stdout holds the answer alone."""
    sys.stderr.write(f"{_spelt(question)} ")
    sys.stderr.flush()
    return sys.stdin.readline().strip()


def choose(question: str, choices: tuple[str, ...]) -> str | None:
    """Ask for one of a few; None when nothing was chosen."""
    say(question)
    for number, choice in enumerate(choices, 1):
        say(f"  {number}  {choice}")
    answer = ask("number:")
    chosen = whole_number(answer)
    if chosen is not None and 1 <= chosen <= len(choices):
        return choices[chosen - 1]
    return answer if answer in choices else None
