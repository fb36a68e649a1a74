"""Where figures come from."""

from __future__ import annotations

from enum import StrEnum
from typing import Literal

from finishlog.core.finish.classes import Published


class Seen(StrEnum):
    """How a source was seen by whoever copied its figures."""

    READ = "read"
    SECOND_HAND = "read second-hand"
    MEMORY = "memory"


class Source(Published, frozen=True):
    """Where a figure comes from. `seen`: how it was seen.

    `tier`: 1 government, standard or university; 2 trade book of the period; 3 trade press or page.
    """

    id: str
    tier: Literal[1, 2, 3]
    title: str
    seen: Seen
    note: str = ""
