"""What went wrong here before, as a finisher would say it: what on what, on which wood, when."""

from __future__ import annotations

from datetime import datetime

from finishlog.cli.words.said import Words, each_of, text
from finishlog.core.commands import Do
from finishlog.core.findings import Finding


def _short(of: Finding) -> str:
    """Name a pair that a fault blames, or the whole finish where a review alone tells of it."""
    what, quote = each_of(of, "what"), text(of, "quote")
    off = "taken off" if text(of, "off") else ""
    told = [*what, f'"{quote}"' if quote else "", off]
    said = f"{_pair(of)} went wrong before" if what else f"{_whole(of)} failed its review"
    return ": ".join(filter(None, (said, ", ".join(filter(None, told)))))


def _pair(of: Finding) -> str:
    """Name a coat and what it lay on: `topcoat over stain on a board of redwood`."""
    under = text(of, "under")
    return f"{text(of, 'over')}{f' over {under}' if under else ''}{_on(of, bare=not under)}"


def _whole(of: Finding) -> str:
    """Name all that lay on the wood: `stain, then topcoat, on redwood`."""
    film = each_of(of, "film")
    end = "," if len(film) > 1 else ""
    return f"{', then '.join(film)}{end}{_on(of, bare=False)}"


def _on(of: Finding, *, bare: bool) -> str:
    wood, board = text(of, "wood"), "a board" if text(of, "board") else ""
    on = " of ".join(filter(None, (board, f"bare {wood}" if bare and not board else wood)))
    alike = ", of the same class," if text(of, "alike") else ""
    return f" on {on}{alike}" if on else alike


def _acts(of: Finding) -> str:
    """Name the acts that tell of it, and when that was: `act 31, Nov 2025`."""
    acts, when = each_of(of, "numbers"), of.value("when")
    assert isinstance(when, datetime)
    return f"{'act' if len(acts) == 1 else 'acts'} {', '.join(acts)}, {when:%b %Y}"


def _of_how_many(of: Finding) -> str:
    well = "a later one came out well" if text(of, "eased") else ""
    if of.measured is None or of.wanted is None or of.wanted.value == 1:
        return f"; {well}" if well else ""
    count = f"; {of.measured.value:g} of {of.wanted.value:g} such came out badly"
    return f"{count}, {well}" if well else count


def _otherwise(of: Finding) -> str:
    """Say how to do better: a board, and what was done then."""
    under, over = text(of, "under"), text(of, "over")
    told = Do.PAST(under, over, pairs=True) if under else Do.PAST(text(of, "wood"), over)
    if text(of, "eased"):
        return f"what was done otherwise: {told}"
    again = "another board" if text(of, "board") else "a board of the same wood"
    instead = f"{text(of, 'instead')}; or " if text(of, "instead") else ""
    return f"{instead}try it on {again} first; what was done then: {told}"


WORDS = {
    "went-wrong-before": Words(
        lambda f: f"{_short(f)} ({_acts(f)}){_of_how_many(f)}", _otherwise, _short
    ),
}
