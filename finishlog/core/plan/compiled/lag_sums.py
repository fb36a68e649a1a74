"""Lags put together: the later of two, the sooner of two; one that counts from a task's begin."""

from __future__ import annotations

from functools import lru_cache

from finishlog.core.plan.search.shop import NEVER, QUARTER, Lag, closes, waits


def later_of(one: Lag, other: Lag) -> Lag:
    """Return what is reached once both are."""
    if one is other or other == 0:
        return one
    if one == 0:
        return other
    if isinstance(one, int) and isinstance(other, int):
        return max(one, other)
    a, b = _spread(one, other)
    return tuple(map(max, a, b))


def sooner_of(one: Lag, other: Lag) -> Lag:
    """Return what closes as soon as one of two does."""
    if one is other:
        return one
    if isinstance(one, int) and isinstance(other, int):
        return min(one, other)
    a, b = _spread(one, other)
    return tuple(map(min, a, b))


def less(lag: Lag, minutes: int) -> Lag:
    """Return what closes so many minutes sooner."""
    if isinstance(lag, int):
        return lag - minutes
    return tuple(each - minutes for each in lag)


def begun_before(lag: Lag, minutes: int, *, is_window: bool = False) -> Lag:
    """Return a lag by the end of a task where it counts from so many minutes before that."""
    if not minutes:
        return lag
    if isinstance(lag, int):
        return max(0, lag - minutes) if lag < NEVER else lag
    return _begun_before(lag, minutes, is_window)


@lru_cache(maxsize=512)
def _begun_before(lag: tuple[int, ...], minutes: int, is_window: bool) -> tuple[int, ...]:
    read = closes if is_window else waits
    ends = (max(0, QUARTER * q - minutes) for q in range(len(lag)))
    return tuple(read(lag, end) for end in ends)


def _spread(one: Lag, other: Lag) -> tuple[tuple[int, ...], tuple[int, ...]]:
    length = max(len(each) for each in (one, other) if not isinstance(each, int))
    return _as_table(one, length), _as_table(other, length)


def _as_table(lag: Lag, length: int) -> tuple[int, ...]:
    if not isinstance(lag, int):
        return lag
    return tuple(min(NEVER, QUARTER * q + lag) for q in range(length))
