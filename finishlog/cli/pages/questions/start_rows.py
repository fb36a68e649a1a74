"""Where and when a coat may begin, in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from finishlog.cli.typed.figures.measures import show_air

if TYPE_CHECKING:
    from finishlog.asks.bench.starts import Start
    from finishlog.clock import Clock


def start_rows(
    starts: Sequence[Start], instead: tuple[str, ...] | None, clock: Clock
) -> Iterator[tuple[str, str]]:
    """Yield rows of when and where to begin, and what may go on instead."""
    for start in starts:
        yield "start", _there(start) if start.room else _here(start, clock)
    if instead:
        yield "instead", f"of your products this air allows {', '.join(instead)}"
    elif instead is not None:
        yield (
            "instead",
            "this air allows none of your products; other kinds: finishlog class list",
        )


def _there(start: Start) -> str:
    air = f", {show_air(start.air)}" if start.air else ""
    caution = f" ({start.caution})" if start.caution else ""
    return f"in {start.room}{air}: nothing in its air forbids it now{caution}"


def _here(start: Start, clock: Clock) -> str:
    """Say when to begin here: not too early, and not too late."""
    if start.earliest is None and start.caution:
        return f"here when the wood is warm enough: {start.caution}"
    if start.earliest is None or start.latest is None or start.tack_free is None:
        return "here at no time of the next two days: give it other air, or take another room"
    begins = clock.wait_until(start.earliest)
    last = clock.closes_at(start.latest)
    words = f"here from {begins}, {last} at the latest: tack-free"
    turns = start.turns and clock.words(start.turns)
    stays = f"before the air turns on it at {turns}" if turns else "in air that stays fit"
    caution = f" ({start.caution})" if start.caution else ""
    return f"{words} {stays}{caution}"
