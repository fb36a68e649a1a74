"""What words are made of: the values that a finding says, worded one by one."""

from __future__ import annotations

import math
from collections.abc import Callable
from datetime import timedelta

from msgspec import Struct

from finishlog.core.findings import Figured, Finding, In
from finishlog.core.log.shown_times import length_words
from finishlog.core.log.where import in_brackets
from finishlog.core.log.words import Found
from finishlog.core.measure import quantities

Worder = str | Callable[[Finding], str]


# What binds elsewhere, within what is waited for, and its remedy.
CAUSE = "{cause}"
REMEDY = "{remedy}"


class Words(Struct, frozen=True):
    """What a rule says: in a sentence, what to do about it, in short, and what is waited for.

    Each is a text, or made of the finding; a short one that is missing is the sentence. `bars`:
    what keeps a part from being handled, where that is shorter still; `asks`: what is asked of
    who is there before it is recorded, where the sentence is no question. `cause`: how the sentence
    goes on with what binds elsewhere, of `said`, `short`, `long` and `waits`.
    """

    sentence: Worder
    remedy: Worder = ""
    short: Worder = ""
    waits: Worder = ""
    asks: Worder = ""
    bars: Worder = ""
    cause: str = "{said}"


def text(of: Finding, name: str) -> str:
    """Return what a finding says under a name, as it stands; empty: nothing."""
    value = of.value(name)
    return "" if value is None else str(value)


_SO_IT_IS = frozenset({Found.TACKY, Found.CUPPED})


def found_so(of: Finding) -> str:
    """Word what a check found, after "found": `it tacky`, `that it flakes`."""
    found = text(of, "found")
    return f"it {found}" if found in _SO_IT_IS else f"that it {found}"


def found_there(of: Finding) -> str:
    """Word what a check found, and where on the face: `it tacky (left edge)`."""
    return found_so(of) + in_brackets(text(of, "place"))


def number(of: Finding, name: str) -> float:
    """Return a number that a finding says; 0: none."""
    value = of.value(name)
    return float(value) if isinstance(value, int | float) else 0.0


def act(of: Finding) -> int:
    """Return the number of the act that a finding is about, as its words name it."""
    return int(number(of, "act"))


def each_of(of: Finding, name: str) -> tuple[str, ...]:
    """Return several words that a finding says."""
    value = of.value(name)
    return value if isinstance(value, tuple) else ()


def length(of: Finding, name: str) -> timedelta:
    """Return a length of time that a finding says."""
    value = of.value(name)
    assert isinstance(value, timedelta), (of.rule, name)
    return value


def measured(of: Finding, digits: int = 1) -> str:
    """Word what was measured."""
    assert of.measured is not None, of.rule
    return figure(of.measured, digits)


def wanted(of: Finding, digits: int = 0) -> str:
    """Word what is wanted."""
    assert of.wanted is not None, of.rule
    return figure(of.wanted, digits)


def met_as_it_set(of: Finding) -> str:
    """Word the air that harmed a film while it set: `, 8 °C, 90 % RH as it set`."""
    cold = quantities.celsius(number(of, "cold")) if of.value("cold") is not None else ""
    damp = f"{number(of, 'damp'):.0f} % RH" if of.value("damp") is not None else ""
    air = ", ".join(each for each in (cold, damp) if each)
    return f", {air} as it set" if air else ""


def label_hours(of: Finding) -> str:
    """Word the label hours that bind, and how many of them are done where they were counted."""
    figure = of.wait.figure if of.wait else None
    if figure is None:
        return ""
    span = f"{figure.low_h:g}" + (f"–{figure.high_h:g}" if figure.high_h > figure.low_h else "")
    if of.measured is None:
        return f" (label {span} h)"
    return f" (label {span} h, {math.floor(10 * of.measured.value) / 10:.1f} done)"


def figure(of: Figured, digits: int) -> str:
    """Word a figure, to so many digits."""
    match of.unit:
        case In.CELSIUS:
            return quantities.celsius(of.value, digits)
        case In.APART_CELSIUS:
            return quantities.apart(of.value, digits)
        case In.PCT:
            return f"{of.value:.{digits}f} %"
        case In.MICROMETRES:
            return quantities.micrometres(of.value)
        case In.HOURS:
            return length_words(timedelta(hours=of.value))
        case In.MINUTES:
            return length_words(timedelta(minutes=of.value))
        case In.DAYS:
            return f"{of.value:g} d"
        case In.COUNT:
            return f"{of.value:g}"
