"""Whole numbers as people type them: `3`, never `²` and never five thousand digits."""

from __future__ import annotations

import re

_PLAIN = re.compile(r"[0-9]{1,9}")


def whole_number(typed: str) -> int | None:
    """Read a whole number; None for what is none."""
    return int(typed) if _PLAIN.fullmatch(typed) else None
