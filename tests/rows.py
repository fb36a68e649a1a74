"""One test that goes through a table: every row is tried, and all that fail are named.

In place of `pytest.mark.parametrize` where a row costs less than being a test of its own does
(some 4 ms). What needs a database of its own stays a test of its own.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import cache, wraps
from inspect import signature
from types import FunctionType
from typing import Any

import pytest

Test = Callable[..., None]


def try_every(rows: Iterable[tuple[str, tuple[Any, ...]]], test: Test) -> None:
    """Call the test with each row, by whose name a failure is known; raise all that failed."""
    failed, count = [], 0
    for name, row in rows:
        count += 1
        try:
            test(*row)
        except (Exception, BaseExceptionGroup, pytest.fail.Exception) as error:
            error.add_note(f"in the row {name}")
            failed.append(error)
    assert count, "a table without rows tries nothing"
    if failed:
        raise BaseExceptionGroup(f"{len(failed)} of {count} rows", failed)


def every_row(
    names: str | tuple[str, ...],
    table: Iterable[Any] | Callable[[], Iterable[Any]],
    ids: Callable[[Any], object] | Iterable[object] | None = None,
) -> Callable[[Test], Test]:
    """Let one test go through the rows of a table.

    A function makes its table when the test runs, not when it is collected. `ids` as parametrizing
    has them: what the rows are called, or a function of each value. Two tables above one test are
    gone through one within the other.
    """
    wanted = tuple(names.replace(",", " ").split()) if isinstance(names, str) else names

    @cache
    def named() -> list[tuple[str, tuple[Any, ...]]]:
        told = table() if isinstance(table, FunctionType) else table
        rows = [tuple(row) if len(wanted) > 1 else (row,) for row in told]
        assert all(len(row) == len(wanted) for row in rows), names
        by_value = ids is None or callable(ids)
        called = [_called(row, ids) for row in rows] if by_value else list(map(str, ids))
        return list(zip(called, rows, strict=True))

    def declare(test: Test) -> Test:
        given = signature(test)

        @wraps(test)
        def through(**fixtures: Any) -> None:
            try_every(named(), lambda *row: test(**fixtures, **dict(zip(wanted, row, strict=True))))

        # The rest is asked of pytest, or of the table above.
        rest = [each for name, each in given.parameters.items() if name not in wanted]
        vars(through)["__signature__"] = given.replace(parameters=rest)
        return through

    return declare


def _called(row: tuple[Any, ...], ids: Callable[[Any], object] | None) -> str:
    return "-".join(str((ids or _short)(value)) for value in row)


def _short(value: Any) -> str:
    """Call a thing by its key or its name, a figure by what it is."""
    names = (getattr(value, name, None) for name in ("key", "name", "id"))
    return next((name for name in names if isinstance(name, str)), repr(value))
