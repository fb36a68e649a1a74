"""A test that goes through a table tries all of it, and names what failed."""

from __future__ import annotations

import pytest

from tests.rows import every_row


@pytest.fixture
def limit() -> int:
    return 5


def test_every_row_that_fails_is_named_and_the_others_are_tried_too():
    tried = []

    @every_row("low", [1, 2], ids=["one", "two"])
    @every_row(("high", "said"), [(3, "three"), (4, "four")])
    def within(low: int, high: int, said: str, limit: int) -> None:
        tried.append((low, said))
        if said == "four":
            pytest.fail("no exception, as pytest has it")
        assert low + high < limit

    with pytest.raises(BaseExceptionGroup, match="2 of 2 rows") as failed:
        within(limit=5)
    assert tried == [(1, "three"), (1, "four"), (2, "three"), (2, "four")]
    one, two = failed.value.exceptions
    assert (one.__notes__, two.__notes__) == (["in the row one"], ["in the row two"])
    assert isinstance(one, BaseExceptionGroup)
    assert isinstance(two, BaseExceptionGroup)
    assert [x.__notes__ for x in one.exceptions] == [["in the row 4-'four'"]]
    assert [type(x) for x in two.exceptions] == [AssertionError, pytest.fail.Exception]


@every_row("value", [1, 4])
def test_fixtures_are_asked_of_pytest_beside_the_row(value: int, limit: int):
    assert value < limit


def test_a_table_without_rows_is_no_test():
    with pytest.raises(AssertionError, match="tries nothing"):
        every_row("value", [])(lambda value: None)()
