"""How cans and mixes stand: pot life, topping up, frost, keeping, mixes of different age."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime, timedelta
from itertools import count

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.room import RoomAir
from finishlog.core.findings import Level
from finishlog.core.finish.classes import Figure, FinishClass
from finishlog.core.log.entries import ContainerEvent
from finishlog.core.log.words import ContainerDeed
from finishlog.core.mixing.chemistry import Ingredient, contents
from finishlog.core.mixing.containers import (
    Container,
    ContainerKind,
    ContainerState,
    Lid,
    MixPart,
    container_state,
    pot_life_ends,
)
from finishlog.core.mixing.keeping import ages_differ, frost_ahead, keeping_findings
from tests.air_of import read_room
from tests.rows import every_row
from tests.shop_of import FACTS, Hour, at, hours_until, when
from tests.worded_in import remedy, sentence

TWO_PART = "waterborne-two-part"
CONVERSION = "conversion-varnish"
SHELLAC = "shellac-2lb"
VARNISH = "alkyd-varnish"
WATERBORNE = "waterborne-clear"

# The air in which pot life is printed, and its factor: UFGS-09971, 3.7.1.3.
PRINTED = Air(21.0, 50.0)
FACTOR = FACTS.rates["pot-life"].factor_per_10c

_ids = count(1)
TWO = (MixPart("base", 10), MixPart("hardener", 1))
CUT = (MixPart("flakes", 120, weight_g=120), MixPart("alcohol", 1000, volume_ml=1000))


def steady(celsius: float) -> RoomAir:
    """A room that was read again and again, always the same."""
    return read_room(*((6.0 * n, celsius, 50.0) for n in range(60)))


def event(deed: ContainerDeed, hour: Hour, note: str = "") -> ContainerEvent:
    number = next(_ids)
    done = when(hour, number)
    return ContainerEvent(
        id=number, act=number, when=done, typed_at=done.latest, container=1, deed=deed, note=note
    )


def stands(
    class_key: str,
    *events: tuple[ContainerDeed, Hour],
    kind: ContainerKind = ContainerKind.MIX,
    parts: Sequence[MixPart] = (),
    lasts_h: float | None = None,
    rooms: Sequence[RoomAir] = (),
    of: FinishClass | None = None,
    number: int = 1,
) -> ContainerState:
    """Say how a container of a class stands after what befell it."""
    logged = [event(*each) for each in events]
    mixed = min((e.when.earliest for e in logged if e.deed is ContainerDeed.MIXED), default=None)
    container = Container(
        number,
        f"mix-{number}",
        kind,
        1,
        made_at=mixed,
        use_by_at=mixed + timedelta(hours=lasts_h) if mixed and lasts_h else None,
        parts=tuple(parts),
    )
    finish = of or FACTS.finish_class(class_key)
    known = dict(enumerate(rooms))
    inside = Ingredient("", class_key, made_of=tuple(Ingredient(p.name) for p in parts))
    holds = contents(inside, FACTS.chemistry)
    return container_state(container, logged, finish, known, FACTOR, holds=holds)


def says(state: ContainerState, hour: float) -> list[tuple[Level, str]]:
    return [(f.level, sentence(f)) for f in keeping_findings(state, at(hour), FACTS.keeping)]


MIXED, TOPPED_UP, FROZEN, TESTED = (
    ContainerDeed.MIXED,
    ContainerDeed.TOPPED_UP,
    ContainerDeed.FROZEN,
    ContainerDeed.TESTED,
)


def ends(hours: float, *rooms: RoomAir, mixed: datetime | None = None) -> float:
    figure = Figure(hours, hours, hours, "ufgs-09971", PRINTED)
    return hours_until(pot_life_ends(hours, figure, mixed or at(0), rooms, FACTOR))


@pytest.mark.parametrize(("celsius", "hours"), [(21, 8.0), (31, 4.0), (41, 2.0), (26, 5.657)])
def test_pot_life_halves_for_each_ten_degrees_warmer(celsius, hours):
    """UFGS-09971 3.7.1.3: from 21 °C, every 10 °C (18 °F) warmer halves it."""
    assert ends(8.0, steady(celsius)) == pytest.approx(hours, abs=0.001)


@pytest.mark.parametrize("celsius", [11, 1, -5])
def test_cold_never_lengthens_pot_life(celsius):
    """The same source doubles it in the cold; nobody is told to rely on that."""
    assert ends(8.0, steady(celsius)) == 8.0


@given(hours=st.floats(0.1, 72), one=st.floats(-10, 45), other=st.floats(-10, 45))
def test_warmer_never_ends_later_and_no_air_ends_later_than_the_label(hours, one, other):
    cool, warm = sorted((one, other))
    assert ends(hours, steady(warm)) <= ends(hours, steady(cool)) + 1e-6
    assert ends(hours, steady(cool)) <= hours + 1e-6


@given(hours=st.floats(0.5, 48), one=st.floats(0, 40), other=st.floats(0, 40))
def test_of_several_rooms_the_one_that_ends_it_soonest_decides(hours, one, other):
    both = ends(hours, steady(one), steady(other))
    assert both == pytest.approx(min(ends(hours, steady(one)), ends(hours, steady(other))))


def test_without_a_reading_the_label_counts():
    assert ends(8.0, RoomAir()) == 8.0
    assert ends(8.0) == 8.0


def test_a_mix_ends_by_the_low_end_of_its_class():
    """Conversion varnish keeps 8 to 24 h mixed (common practice): 8 h are the promise."""
    state = stands(CONVERSION, (MIXED, 0.0), rooms=[steady(20)])
    assert hours_until(state.use_by) == 8.0


def test_the_label_beats_the_class_and_heat_shortens_it_too():
    assert hours_until(stands(CONVERSION, (MIXED, 0.0), lasts_h=30.0).use_by) == 30.0
    hot = stands(CONVERSION, (MIXED, 0.0), lasts_h=4.0, rooms=[steady(33)])
    assert hours_until(hot.use_by) == pytest.approx(2.0)


def test_of_a_vague_time_of_mixing_the_earliest_counts():
    state = stands(TWO_PART, (MIXED, (0.0, 3.0)))
    assert hours_until(state.made) == 0.0
    assert hours_until(state.use_by) == 2.0


def test_what_does_not_react_has_no_end():
    assert stands(SHELLAC, (MIXED, 0.0), parts=CUT).use_by is None
    can = stands(TWO_PART, (ContainerDeed.OPENED, 0.0), kind=ContainerKind.CAN)
    assert can.use_by is None
    assert not can.reacts


def test_past_its_pot_life_it_must_not_go_on():
    state = stands(TWO_PART, (MIXED, 0.0), parts=TWO)
    assert says(state, 1.9) == []
    ((level, sentence),) = says(state, 3.0)
    assert level is Level.STOP
    assert "past its pot life by 1 h" in sentence


def test_topping_up_does_not_make_it_younger():
    state = stands(TWO_PART, (MIXED, 0.0), (TOPPED_UP, 1.5), parts=TWO)
    assert hours_until(state.use_by) == 2.0
    assert any("the age of the first mixing counts" in s for _, s in says(state, 1.9))
    jar = stands(SHELLAC, (MIXED, 0.0), (TOPPED_UP, 1.5), parts=CUT)
    assert says(jar, 2.0) == []


def test_catalyst_in_what_needs_none_hardens_with_no_date():
    """Pre-catalysed lacquer with extra catalyst: no pot life is published for that."""
    parts = (MixPart("lacquer", 50), MixPart("extra catalyst", 1))
    state = stands("lacquer-precatalysed", (MIXED, 0.0), parts=parts)
    assert state.reacts
    assert state.use_by is None
    assert says(state, 1.0) == [
        (
            Level.CAUTION,
            "mix-1 hardens in the pot, and nothing says how soon: do not close it tight, do not "
            "use it tomorrow",
        )
    ]


def test_a_mix_whose_mixing_was_undone_never_was():
    assert not stands(SHELLAC, parts=CUT).was_made
    assert stands(SHELLAC, (MIXED, 0.0), parts=CUT).was_made


def test_emptied_it_is_no_open_mix():
    state = stands(SHELLAC, (MIXED, 0.0), (ContainerDeed.EMPTIED, 4.0), parts=CUT)
    assert not state.is_open_mix
    assert says(state, 5.0) == [(Level.CAUTION, "mix-1 is on record as emptied")]


@pytest.mark.parametrize(
    ("class_key", "level"),
    [
        (WATERBORNE, Level.STOP),
        (TWO_PART, Level.STOP),
        (VARNISH, Level.CAUTION),
        (SHELLAC, Level.CAUTION),
    ],
)
def test_frost_stops_waterborne_and_asks_a_test_of_the_others(class_key, level):
    state = stands(class_key, (FROZEN, 0.0), kind=ContainerKind.CAN)
    ((found, sentence),) = says(state, 1.0)
    assert found is level
    assert "froze" in sentence


def test_only_a_test_after_the_frost_clears_it():
    before = stands(WATERBORNE, (TESTED, 0.0), (FROZEN, 5.0), kind=ContainerKind.CAN)
    assert [level for level, _ in says(before, 6.0)] == [Level.STOP]
    after = stands(WATERBORNE, (FROZEN, 5.0), (TESTED, 6.0), kind=ContainerKind.CAN)
    assert says(after, 7.0) == []


def test_marked_do_not_use_stays_so_whatever_is_tested_since():
    state = stands(
        WATERBORNE, (ContainerDeed.CONDEMNED, 0.0), (TESTED, 1.0), kind=ContainerKind.CAN
    )
    assert [level for level, _ in says(state, 2.0)] == [Level.STOP]


def test_an_opened_can_keeps_as_long_as_its_class_is_known_to():
    """Dissolved shellac: three months on one page, a year on another, six months on a third."""
    keeps = FACTS.finish_class(SHELLAC).shelf_opened_d
    assert keeps is not None
    state = stands(SHELLAC, (ContainerDeed.OPENED, 0.0), kind=ContainerKind.CAN)
    assert says(state, 24 * keeps.low) == []
    (finding,) = keeping_findings(state, at(24 * keeps.low + 24), FACTS.keeping)
    assert finding.level is Level.CAUTION
    assert "91 to 365 d, others say 182 d" in sentence(finding)
    assert "drop on glass" in remedy(finding)
    assert "15 min" in remedy(finding)
    assert finding.source == keeps.source


def test_a_closed_can_and_a_mix_count_from_their_own_day():
    assert says(stands(SHELLAC, kind=ContainerKind.CAN), 24 * 400) == []
    mixed = stands(SHELLAC, (MIXED, 0.0), parts=CUT)
    assert next(s for _, s in says(mixed, 24 * 120)).startswith("mix-1 was mixed 120 d ago")


def test_a_closed_can_with_a_date_is_tried_past_the_long_end():
    """Nobody prints how long a closed can keeps: longer than an open one. common practice"""
    keeps = FACTS.finish_class(SHELLAC).shelf_opened_d
    assert keeps is not None
    state = replace(stands(SHELLAC, kind=ContainerKind.CAN), made=at(0.0))
    assert says(state, 24 * keeps.high) == []
    ((level, sentence),) = says(state, 24 * 365 * 19.0 + 1)
    assert level is Level.CAUTION
    assert sentence.startswith("mix-1 is 19 years old; ")


def test_frost_and_the_trial_of_one_minute_count_in_the_order_of_the_typing():
    when_both = 5.0
    frozen, tested = (ContainerDeed.FROZEN, when_both), (TESTED, when_both)
    assert says(stands(WATERBORNE, frozen, tested, kind=ContainerKind.CAN), 6.0) == []
    assert len(says(stands(WATERBORNE, tested, frozen, kind=ContainerKind.CAN), 6.0)) == 1


def test_what_holds_water_is_carried_in_before_the_frost():
    """Oil stays where it is; what is marked, or empty, matters no more. common practice"""
    water = stands(WATERBORNE, kind=ContainerKind.CAN)
    assert frost_ahead(water, -5.0, FACTS.keeping)
    assert not frost_ahead(water, 10.0, FACTS.keeping)
    assert not frost_ahead(stands(VARNISH, kind=ContainerKind.CAN), -30.0, FACTS.keeping)
    for deed in (ContainerDeed.CONDEMNED, ContainerDeed.EMPTIED):
        gone = stands(WATERBORNE, (deed, 1.0), kind=ContainerKind.CAN)
        assert not frost_ahead(gone, -5.0, FACTS.keeping)


def test_a_test_that_it_passed_speaks_for_a_week():
    day = 24 * 120.0
    opened = (ContainerDeed.OPENED, 0.0)
    state = stands(SHELLAC, opened, (TESTED, day), kind=ContainerKind.CAN)
    assert says(state, day + 24 * 6) == []
    assert len(says(state, day + 24 * 8)) == 1


def test_layers_of_a_hardening_finish_want_mixes_of_one_age():
    """Mixed on Wednesday and sprayed on Thursday, with Friday's fresh mix on top: wrinkles."""
    old = stands(CONVERSION, (MIXED, 0.0), parts=TWO, number=1)
    fresh = stands(CONVERSION, (MIXED, 48.0), parts=TWO, number=2)
    found = ages_differ(fresh, at(48.5), [(old, at(24.0))])
    assert found is not None
    assert "24 h old" in sentence(found)
    assert ages_differ(fresh, at(48.5), [(old, at(1.0))]) is None
    assert ages_differ(fresh, at(48.5), [(fresh, at(60.0))]) is None
    assert ages_differ(stands(SHELLAC, (MIXED, 0.0), parts=CUT), at(90), [(old, at(1))]) is None


def test_without_a_known_pot_life_half_a_shift_is_apart():
    parts = (MixPart("lacquer", 50), MixPart("extra catalyst", 1))
    old, fresh = (
        stands("lacquer-precatalysed", (MIXED, hour), parts=parts, number=number)
        for number, hour in ((1, 0.0), (2, 48.0))
    )
    assert ages_differ(fresh, at(48.5), [(old, at(24.0))]) is not None
    assert ages_differ(fresh, at(48.5), [(old, at(2.0))]) is None


def test_every_class_has_a_test_and_an_answer_to_frost():
    for of in FACTS.classes.values():
        state = stands(of.key, (FROZEN, 0.0), kind=ContainerKind.CAN)
        assert says(state, 1.0)
        assert FACTS.keeping.test_for(of.family).test


@given(opened=st.floats(0, 1000), looked=st.floats(0, 40000))
def test_age_alone_never_stops_what_does_not_harden(opened, looked):
    """No published age proves a finish bad: a test decides."""
    for class_key in (SHELLAC, VARNISH, WATERBORNE):
        state = stands(class_key, (ContainerDeed.OPENED, opened), kind=ContainerKind.CAN)
        assert all(level is not Level.STOP for level, _ in says(state, opened + looked))


def test_a_state_without_figures_is_quiet():
    bare = replace(FACTS.finish_class(SHELLAC), shelf_opened_d=None)
    state = stands(SHELLAC, (ContainerDeed.OPENED, 0.0), kind=ContainerKind.CAN, of=bare)
    assert says(state, 24 * 4000) == []


# common practice: peroxide and lye, or hypochlorite, go on giving off gas; a closed can may burst.
@pytest.mark.parametrize("key", ["bleach-two-part", "bleach-chlorine"])
def test_a_mixed_bleach_is_never_closed(key: str):
    state = stands(key, (MIXED, 0.0), parts=(MixPart("one", 1), MixPart("water", 1)))
    assert state.lid is Lid.NEVER
    assert any("never close" in sentence for _, sentence in says(state, 1.0))


# common practice: what hardens may grow hot; isocyanate and damp give off gas.
@every_row("word", ["hardener", "Crosslinker", "catalyst", "activator", "part B"])
@every_row("key", [SHELLAC, "waterborne-clear", "alkyd-varnish", TWO_PART])
def test_whatever_hardens_is_not_closed_tight(key: str, word: str):
    state = stands(key, (MIXED, 0.0), parts=(MixPart("base", 10), MixPart(word, 1)))
    assert state.reacts
    assert state.lid is Lid.NOT_TIGHT


@pytest.mark.parametrize(
    "parts",
    [CUT, (MixPart("varnish", 2), MixPart("mineral spirits", 1)), (MixPart("retarder", 1),)],
)
def test_what_does_not_react_is_closed(parts: Sequence[MixPart]):
    assert stands(SHELLAC, (MIXED, 0.0), parts=parts).lid is Lid.CLOSED


def test_a_can_closes_as_its_maker_meant_it_to():
    can = stands("bleach-chlorine", (ContainerDeed.OPENED, 0.0), kind=ContainerKind.CAN)
    assert can.lid is Lid.CLOSED
