"""A short fuzz in the ordinary run; the long one is `python -m tests.fuzz`."""

from __future__ import annotations

import pytest

from tests.cli.run import Answer
from tests.fuzz.lines import play, wrong_with
from tests.fuzz.readers import read

SEED = 20261130


@pytest.mark.thorough
@pytest.mark.parametrize("round_", range(2))
def test_no_line_ends_in_a_fault_of_ours_a_traceback_or_a_hang(round_: int):
    assert [str(find) for find in play(SEED, round_, lines=60)] == []


def test_every_word_is_read_or_refused_in_one_line():
    assert [str(find) for find in read(SEED, 0, 2000)] == []


@pytest.mark.parametrize(
    "answer",
    [
        Answer(70, "", "finishlog: a fault of ours (KeyError)\n"),
        Answer(2, "", "Usage: finishlog\n"),
        Answer(0, "Traceback (most recent call last)\n", ""),
        Answer(0, "a \x9b31m name\n", ""),
        Answer(0, "a \u202ename\n", ""),
    ],
)
def test_a_fault_a_traceback_and_a_sign_that_acts_are_finds(answer: Answer):
    assert list(wrong_with(answer, as_json=False))


def test_a_document_that_cannot_be_read_is_a_find():
    assert list(wrong_with(Answer(0, '{"answer": NaN,}\n', ""), as_json=True))
    assert not list(wrong_with(Answer(0, '{"answer": 1}\n', ""), as_json=True))
