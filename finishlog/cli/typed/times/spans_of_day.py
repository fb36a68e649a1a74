"""Read from when until when on any day: `18:00-23:00`, `7pm-10:30pm`, `9-5pm`, `6pm-midnight`."""

from __future__ import annotations

import re
from collections.abc import Sequence

_TIME = r"(?:(?P<{0}h>\d{{1,2}})(?:[:.](?P<{0}m>\d{{2}}))?(?:\s?(?P<{0}half>[ap])\.?m?\.?)?"
_TIME += r"|(?P<{0}said>noon|midnight))"
_SPAN = re.compile(rf"{_TIME.format('a')}-{_TIME.format('b')}")
_SAID = {"noon": 12 * 60, "midnight": 24 * 60}
_DAY = 24 * 60


def span_of_day(word: str) -> tuple[int, int] | None:
    """Read one span in minutes after midnight, the end up to 24:00; None when it is none.

    Of an end that says `pm` the begin may leave it out: `7-10:30pm` is of the evening, `9-5pm`
    begins in the morning.
    """
    found = _SPAN.fullmatch(word.strip().casefold())
    if found is None:
        return None
    ends = _minute(found, "b", found["bhalf"])
    begins = _minute(found, "a", found["ahalf"])
    if begins is None or ends is None:
        return None
    if found["bhalf"] and not (found["ahalf"] or found["asaid"]) and begins <= 12 * 60:
        same = _minute(found, "a", found["bhalf"])
        begins = same if same is not None and same < ends else _minute(found, "a", "a")
    return None if begins is None or begins >= _DAY else (begins, ends)


def _minute(found: re.Match[str], side: str, half: str | None) -> int | None:
    if found[f"{side}said"]:
        return _SAID[found[f"{side}said"]]
    hour, minute = int(found[f"{side}h"]), int(found[f"{side}m"] or 0)
    if half is not None:
        if not 1 <= hour <= 12:
            return None
        hour = hour % 12 + (12 if half == "p" else 0)
    minutes = hour * 60 + minute
    return minutes if minute < 60 and minutes <= _DAY else None


def together(words: Sequence[str]) -> list[str]:
    """Put a span that was typed in several words into one: `7 pm - 10:30 pm`, `18 till 23`."""
    text = " ".join(words).casefold().replace("–", "-")
    text = re.sub(r"(?<=\d) (?=[ap]\.?m\b)", "", text)
    time = r"(\d[\d:.]*(?:[ap]\.?m\.?)?|noon|midnight)"
    text = re.sub(rf"\b{time} ?(?:-|\btill\b|\buntil\b|\bto\b) ?{time}(?=\s|,|$)", r"\1-\2", text)
    return text.replace(",", " ").split()
