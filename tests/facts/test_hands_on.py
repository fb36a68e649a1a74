"""Minutes of hands-on work: no source publishes them, so each says that it is common practice."""

from __future__ import annotations

import pytest

from finishlog.core.finish.classes import COMMON_PRACTICE, Method, Range
from finishlog.core.log.words import Operation
from finishlog.core.published.hands_on import minutes_at_it
from finishlog.facts.load import load_facts
from tests.spoilt import read_spoilt

FIGURES = load_facts().hands_on
BY_HAND = [operation for operation in Operation if operation is not Operation.COAT]


def every_range() -> list[Range]:
    return [
        *(each.set_up_min for each in FIGURES.methods.values()),
        *(each.clean_up_min for each in FIGURES.methods.values()),
        *(each.each_min for each in (*FIGURES.methods.values(), *FIGURES.work.values())),
        FIGURES.vacuum_min,
        FIGURES.settle_min,
        FIGURES.wet_wood_min,
    ]


def test_every_method_and_every_operation_has_its_minutes():
    assert FIGURES.methods.keys() == set(Method)
    assert FIGURES.work.keys() == set(BY_HAND)


def test_every_figure_is_a_range_of_common_practice():
    for each in every_range():
        assert 0 <= each.low <= each.high
        assert each.source == COMMON_PRACTICE


def test_spraying_is_quick_at_the_piece_and_slow_around_it():  # common practice
    spray, brush = FIGURES.methods[Method.SPRAY], FIGURES.methods[Method.BRUSH]
    assert spray.each_min.high < brush.each_min.high
    assert spray.clean_up_min.high > brush.clean_up_min.high


def test_a_coat_counts_every_face_of_every_piece():
    coat = minutes_at_it(FIGURES, Operation.COAT, Method.BRUSH, pieces=2, faces=2)
    assert coat == 4 * FIGURES.methods[Method.BRUSH].each_min.high


def test_a_coat_of_no_named_method_is_brushed():
    assert minutes_at_it(FIGURES, Operation.COAT, None, 1, 1) == minutes_at_it(
        FIGURES, Operation.COAT, Method.BRUSH, 1, 1
    )


def test_scuffing_counts_faces_and_hardware_counts_pieces():
    scuff, hardware = FIGURES.work[Operation.SCUFF], FIGURES.work[Operation.HARDWARE]
    assert minutes_at_it(FIGURES, Operation.SCUFF, None, 3, 2) == 6 * scuff.each_min.high
    assert minutes_at_it(FIGURES, Operation.HARDWARE, None, 3, 2) == 3 * hardware.each_min.high


def test_the_longer_end_is_counted_on():
    each = FIGURES.work[Operation.SAND].each_min
    assert each.low < each.high
    assert minutes_at_it(FIGURES, Operation.SAND, None, 1, 1) == each.high


@pytest.mark.parametrize(
    ("was", "becomes", "said"),
    [
        ("[methods.wipe.set_up_min]\nlow = 3", "[methods.wipe.set_up_min]\nlow = 300", "order"),
        ("[work.mask.piece_min]", "[work.masks.piece_min]", "work: Invalid enum value 'masks'"),
        ("[settle_min]", "[settled_min]", "settle"),
        ("[work.sand.face_min]", "[work.sand.side_min]", "work.sand"),
    ],
)
def test_a_wrong_figure_is_refused_with_its_place(tmp_path, was, becomes, said):
    with pytest.raises(ValueError, match=r"hands_on\.toml") as refusal:
        read_spoilt(tmp_path, "hands_on.toml", was, becomes)
    assert said in str(refusal.value)
