"""Facts that no rule reads for an act, and why: the words of the table of facts and acts."""

from __future__ import annotations

from finishlog.core.findings import Act
from finishlog.core.finish.classes import Published


class Unread(Published, frozen=True):
    """Why some facts say nothing to some acts. `gap`: they would, and no rule hears them yet.

    The acts are named one by one: a rule that binds another one is looked at anew.
    """

    facts: tuple[str, ...]
    acts: tuple[Act, ...]
    why: str
    gap: bool = False
