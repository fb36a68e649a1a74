"""Read the numbers that people type: `1.5`, `1,5`, `1/2`, `1 1/2`, `half a`."""

from __future__ import annotations

import re

from finishlog.cli.typed.figures.unclear import Unclear

NUMBER = r"\d{1,5}(?:[.,]\d{1,4})?"
FRACTION = r"(?:\d{1,3} )?\d{1,2}/\d{1,2}"

COUNTS = {"half a": "0.5", "half an": "0.5", "a": "1", "an": "1", "one": "1"} | {
    word: str(n) for n, word in enumerate(("two", "three", "four", "five", "six"), start=2)
}
_VULGAR = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅓": "1/3", "⅔": "2/3", "⅛": "1/8"}
_THOUSANDS = r"(?<![\d.,])[1-9]\d{0,2},\d{3}(?![\d.,])"


def plain(text: str) -> str:
    """Return what was typed in small letters, with single blanks."""
    return " ".join(text.casefold().split())


def number(text: str) -> float:
    """Read a number with a decimal point or comma."""
    return float(text.replace(",", "."))


def quantity(text: str) -> float | None:
    """Read a number or a fraction, `1 1/2`; None for no number, as for a part of nothing."""
    if not re.fullmatch(FRACTION, text):
        return number(text) if re.fullmatch(NUMBER, text) else None
    whole, _, part = text.rpartition(" ")
    upper, lower = (int(each) for each in part.split("/"))
    return int(whole or 0) + upper / lower if lower else None


def counted(words: str) -> str:
    """Put figures for `a`, `half a`, `two`, `½` at the beginning of plain words."""
    for sign, spelled in _VULGAR.items():
        words = words.replace(sign, f" {spelled}")
    words = " ".join(words.split())
    return re.sub(r"^(?:half )?[a-z]+(?= )", lambda found: COUNTS.get(found[0], found[0]), words)


def check_thousands(words: str) -> None:
    """Refuse `1,000`, which is a thousand to some and one to others."""
    if found := re.search(_THOUSANDS, words):
        large, small = found[0].replace(",", ""), found[0].replace(",", ".")
        readings = (words.replace(found[0], each) for each in (large, small))
        raise Unclear(f"{found[0]} could be {large} or {small}", {each: each for each in readings})
