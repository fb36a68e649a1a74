"""How many examples a property tries, by what one of them costs; and how often what writes dies."""

from __future__ import annotations

from hypothesis import settings

# What the ordinary run tries of a property at most; the search at random is not bound by it.
BUDGET = 10
_LONGER = 3
# How often the ordinary run kills a process that writes; `.ci/run` asks for 200 in its own step.
KILLS = 8


def examples(count: int) -> settings:
    """Try so many examples within the budget; a search at random tries three times as many."""
    searching = settings.get_current_profile_name() == "search"
    return settings(max_examples=count * _LONGER if searching else min(count, BUDGET))
