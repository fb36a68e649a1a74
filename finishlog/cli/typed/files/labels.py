"""Read what is typed off a can."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from itertools import pairwise

from msgspec.structs import replace

from finishlog.acts.things.own_rules import SaysTyped
from finishlog.acts.things.products import ProductTyped
from finishlog.cli.typed.figures import measures
from finishlog.cli.typed.figures.amounts import film
from finishlog.cli.typed.times import durations
from finishlog.core.air.psychrometrics import STANDARD_AIR, Air
from finishlog.core.commands import Do
from finishlog.core.finish.classes import (
    YOUR_CAN,
    Colder,
    Figure,
    RecoatWindow,
    Reopening,
    Sheen,
    WindowKind,
)
from finishlog.core.finish.stages import ON_A_LABEL, Stage
from finishlog.core.measure.quantities import celsius
from finishlog.core.measure.units import Temperature
from finishlog.errors import UsageFault

_ROWS = re.compile(r"\s*(?:[;,]\s|[;,](?=\d+(?:\.\d+)?\s*[a-z]))\s*", re.IGNORECASE)
_AT = re.compile(r"\s*(?:@|\bat\b)\s*", re.IGNORECASE)
_ROWS_LIKE = "16h@13C, 6h@21C"

NO_WINDOW = RecoatWindow(WindowKind.NOT_APPLICABLE, YOUR_CAN)

# As it may be printed: `within 1 h or after 48 h`, `0-2h, 24h- scuffed`.
_NEXT = re.compile(r"\s*(?:,|;|\bor\b)\s*", re.IGNORECASE)
_SCUFFED = re.compile(r"\s*\b(?:scuff(?:ed)?|sand(?:ed)?)$", re.IGNORECASE)
_WITHIN = re.compile(r"^(?:within|up to)\s+", re.IGNORECASE)
_AFTER = re.compile(r"^(?:after|from)\s+(.+)$", re.IGNORECASE)
_FROM_ZERO = re.compile(r"^0\s*(?:h|hours?|min|minutes?)?\s*(?:[-–]|\bto\b)\s*", re.IGNORECASE)


def product_typed(
    name: str,
    finish: str,
    label: Mapping[str, str | Sequence[str] | None],
    unit: Temperature,
    note: str = "",
    sheen: Sheen | None = None,
) -> ProductTyped:
    """Read a product and what its label says, by stage, `window` and `label-air`.

    The standard air where the label names none.
    """
    said = {
        word: typed if isinstance(typed, str) else ", ".join(typed)
        for word, typed in label.items()
        if typed
    }
    air = label_air(said.get("label-air"), unit)
    figures = {stage: _stage(said[stage], air, unit) for stage in ON_A_LABEL if stage in said}
    if "window" not in said:
        return ProductTyped(name, finish, figures, None, note, sheen)
    opens, window = window_typed(said["window"], air)
    if window.closes is None:
        hint = Do.PRODUCT_SAYS(name or "NAME", no_window=True, because="it melts in")
        raise UsageFault("a window that never closes is none", f"say so: {hint}")
    recoat = figures.get(Stage.RECOAT, opens)
    if opens is not None and recoat is not None and recoat.low_h != opens.low_h:
        raise UsageFault(
            f"recoat after {recoat.low_h:g} h, and a window from {opens.low_h:g} h on",
            "say one of the two: the window alone begins with the recoat time",
        )
    if recoat is not None:
        figures[Stage.RECOAT] = recoat
    return ProductTyped(name, finish, figures, window, note, sheen)


def says_typed(
    said: SaysTyped, words: Mapping[str, str | bool | None], unit: Temperature
) -> SaysTyped:
    """Read the figures of what is said of a product.

    `wait`, `window`, `no-window`, `label-air`, and `thickest`: one coat, as a film or a pour.
    """
    typed = {word: value for word, value in words.items() if isinstance(value, str) and value}
    if "thickest" in typed:
        said = replace(said, thickest_um=film(typed["thickest"]))
    if "wait" in typed:
        air = label_air(typed.get("label-air"), unit)
        said = replace(said, wait=_figure(typed["wait"], air))
    if words.get("no-window"):
        if "window" in typed:
            raise UsageFault("a window and none", "say one of --window and --no-window")
        label = ProductTyped("", "", {}, NO_WINDOW)
    elif "window" in typed:
        window = {word: typed.get(word) for word in ("window", "label-air")}
        label = product_typed("", "", window, unit)
    else:
        return said
    kept = replace(label.window, note=said.because) if label.window else None
    return replace(said, label=replace(label, window=kept))


def label_air(typed: str | None, unit: Temperature) -> Air:
    """Read the air that a label speaks of; the standard air where it names none."""
    return measures.air(typed, unit) if typed else STANDARD_AIR


def window_typed(typed: str, air: Air) -> tuple[Figure | None, RecoatWindow]:
    """Read a recoat window: from when on where that is said, and the window.

    `24h`: until then; `0-2h`: from when until when; `0-1h, 48h-`: with a gap, the second part for
    good or until a time, for a film that is scuffed where `scuffed` stands behind it. UsageFault
    for more than two parts, or for parts that are not in order.
    """
    parts = [part for part in _NEXT.split(typed.strip()) if part]
    if not 1 <= len(parts) <= 2:
        raise UsageFault(f"{typed!r} is no window", _like())
    opens, closes, scuffed = _part(parts[0], air)
    if scuffed:
        raise UsageFault(f"{parts[0]!r}: a first window that wants scuffing is none", _like())
    if closes is None:
        if len(parts) > 1:
            raise UsageFault(f"{parts[0]!r} does not close before {parts[1]!r}", _like())
        return opens, NO_WINDOW
    again = _again(parts[1], closes, air) if len(parts) > 1 else None
    return opens, RecoatWindow(WindowKind.CLOSES, YOUR_CAN, closes, again=again)


def _again(typed: str, before: Figure, air: Air) -> Reopening:
    opens, closes, scuffed = _part(typed, air)
    if opens is None:
        raise UsageFault(f"{typed!r} does not say from when on", _like())
    ends = [before.low_h, opens.low_h, *([closes.low_h] if closes else [])]
    if any(one >= other for one, other in pairwise(ends)):
        raise UsageFault("the parts of a window come one after the other", _like())
    return Reopening(opens, closes, scuffed)


def _part(typed: str, air: Air) -> tuple[Figure | None, Figure | None, bool]:
    """Read one part: from when on, until when, each None where it is not said; scuffed or not."""
    text = _SCUFFED.sub("", typed).strip()
    scuffed = text != typed.strip()
    after = _AFTER.match(text)
    if after or re.search(r"[-–+]$", text):
        return _end(after[1] if after else text.rstrip("-–+ "), air), None, scuffed
    inside = _WITHIN.sub("0-", text)
    if _FROM_ZERO.match(inside):
        return _at(0.0, air), _end(_FROM_ZERO.sub("", inside), air), scuffed
    if not re.search(r"[-–]|\bto\b", inside):
        return None, _figure(inside, air), scuffed
    low, high = durations.hours(inside)
    return _at(low, air), _at(high, air), scuffed


def _end(typed: str, air: Air) -> Figure:
    low, high = durations.hours(typed)
    if low != high:
        raise UsageFault(f"{typed!r} is no one time", _like())
    return _at(low, air)


def _at(hours: float, air: Air) -> Figure:
    return Figure(hours, hours, hours, YOUR_CAN, air)


def _like() -> str:
    return f"type what the can says: {Do.PRODUCT_LABEL.option(window='0-1h, 48h-')}"


def _stage(typed: str, air: Air, unit: Temperature) -> Figure:
    """Read the hours to a stage: `4h`, or a row for each temperature, `16h@55F, 6h@70F`.

    A row without a temperature is of the label's air. UsageFault for two of one temperature, and
    for colder air that asks for less.
    """
    rows = [_row(row, air, unit) for row in _ROWS.split(typed.strip()) if row]
    if not rows:
        return _figure(typed, air)
    warmest, *rest = sorted(rows, key=lambda row: -row.at.temperature_c)
    for warm, cold in pairwise((warmest, *rest)):
        one, other = (celsius(row.at.temperature_c, 1) for row in (warm, cold))
        if warm.at.temperature_c == cold.at.temperature_c:
            raise UsageFault(f"{one} twice", f"one row for each temperature: {_ROWS_LIKE}")
        if cold.low_h < warm.low_h or cold.high_h < warm.high_h:
            raise UsageFault(
                f"{_hours(cold)} at {other} and {_hours(warm)} at {one}: colder is never sooner",
                "look at the can again",
            )
    colder = (Colder(r.at.temperature_c, r.low_h, r.typical_h, r.high_h) for r in rest)
    return replace(warmest, colder=tuple(colder))


def _row(typed: str, air: Air, unit: Temperature) -> Figure:
    hours, at, warm = (part.strip() for part in _AT.sub("@", typed, count=1).partition("@"))
    if not at:
        return _figure(hours, air)
    return _figure(hours, Air(measures.temperature(warm, unit), air.humidity_pct))


def _hours(figure: Figure) -> str:
    ends = dict.fromkeys((f"{figure.low_h:g}", f"{figure.high_h:g}"))
    return f"{' to '.join(ends)} h"


def _figure(typed: str, air: Air) -> Figure:
    low, high = durations.hours(typed)
    return Figure(low, (low + high) / 2, high, YOUR_CAN, air)
