"""How oily rags are put into words, the same on every screen."""

from __future__ import annotations

from datetime import timedelta
from typing import TYPE_CHECKING

from finishlog.core.safety.oily_waste import Handling, Stiffens, Waste
from finishlog.core.safety.rags import RagsState

if TYPE_CHECKING:
    from finishlog.asks.bench.rags import RagsLine
    from finishlog.clock import Clock

# What was left lying yesterday is asked after: fires have started up to three days later.
_A_NIGHT = timedelta(hours=8)
# To 23 °C nothing is overdue sooner.
_AN_HOUR = timedelta(hours=1)
_WHERE = "where are they, with gloves, pads, wool, paper and dust? "
SOFT_FILM = "from a film that was still soft: it heats more than rags do"
BURNABLE = "they heat no more, and burn as paper does: to the waste as the service says"
HAND_DUST = (
    "the oil film is young: dust and cloth into the water can; with a machine, a bag or a vacuum "
    "log it as sand"
)


def rags_words(line: RagsLine, clock: Clock) -> str:
    """Say where rags are and what to do about them."""
    since = clock.words(line.since)
    match line.state:
        case RagsState.OPEN if line.overdue:
            asked = _WHERE if line.since < clock.now - _A_NIGHT else ""
            warm = " in this warmth" if clock.now - line.since < _AN_HOUR else ""
            return f"open since {since}: OVERDUE{warm}, {asked}{_safe_for(line)}"
        case RagsState.OPEN:
            return f"open since {since}: {_safe_for(line)}"
        case RagsState.SPREAD:
            return f"spread since {since}: {_ripe(line, clock)}"
        case RagsState.WATER if line.asked:
            return (
                f"under water since {since}: are they still covered, the lid on, and when do "
                f"they go? finishlog rags gone {line.number}, or water {line.number}"
            )
        case RagsState.WATER:
            return f"under water since {since}: keep the lid on, hand them over"
        case RagsState.CAN if line.overdue:
            return f"in the can since {since}: OVERDUE, empty it off site today"
        case RagsState.CAN:
            return f"in the can since {since}: empty it off site today"
        case _:
            return line.state.value


def _ripe(line: RagsLine, clock: Clock) -> str:
    """Say from when what lies spread may be tested, and what is asked then."""
    if line.stiffens is Stiffens.NEVER:
        return "these never count as stiff, they stay wet within: into water"
    if line.stiff_from is None:
        return "no date in this cold, only warm hours count: leave them spread, or into water"
    if line.stiff_from <= clock.now:
        return "test them: stiff and crisp right through?"
    return f"test stiff from {clock.wait_until(line.stiff_from)}"


def _safe_for(line: RagsLine) -> str:
    """Say where it may go: a heap stays one whatever is done with it, so only water will do."""
    if line.handling is Handling.CLOTHS and line.stiffens is not Stiffens.NEVER:
        return "spread flat outdoors, or water, or can"
    return "into water in a lidded metal can outdoors, or can"


def rags_name(line: RagsLine) -> str:
    """Name rags by product and where they come from."""
    return f"{rags_made_of(line)}: {', '.join(line.parts)}"


def rags_made_of(line: RagsLine) -> str:
    """Name rags by product, and what they are where they are no mere rags."""
    waste = "" if line.waste == (Waste.RAGS,) else f" ({', '.join(line.waste)})"
    return f"{line.product}{waste}"
