"""A joint in clamps: the cautious end of every range, and what the cold does."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.air.psychrometrics import STANDARD_AIR, Air
from finishlog.core.findings import Level
from finishlog.core.finish.classes import Figure
from finishlog.core.published.glues import (
    Glue,
    clamp_until,
    finish_from,
    level_from,
    temperature_findings,
)
from finishlog.facts.load import load_facts
from tests.worded_in import in_si, sentence

FACTS = load_facts()
CLOSED = datetime(2026, 11, 24, 20, 0, tzinfo=UTC)
COLD, WARM = Air(13.0, 60.0), Air(33.0, 40.0)
WAITS = [clamp_until, finish_from, level_from]

airs = st.builds(Air, st.floats(-10, 45), st.floats(5, 100))
glues = st.sampled_from(FACTS.glues)


def known(name: str) -> Glue:
    found = FACTS.glue_named(name)
    assert found is not None
    return found


def hours(moment: datetime | None) -> float:
    assert moment is not None
    return (moment - CLOSED) / timedelta(hours=1)


def test_the_longest_printed_time_is_the_promise_for_clamps():
    """White PVA: 20 to 90 min in one table of the trade, 1 h in another."""
    assert hours(clamp_until(known("white pva"), CLOSED)) == 1.5


def test_a_joint_of_water_based_glue_is_levelled_a_week_later():
    """Else it sinks: university extension chapter on glue joints."""
    assert hours(level_from(known("yellow pva"), CLOSED)) == 7 * 24
    assert hours(finish_from(known("yellow pva"), CLOSED)) == 24


def test_a_joint_without_water_is_levelled_when_it_bears_sanding():
    assert level_from(known("polyurethane glue"), CLOSED) == finish_from(
        known("polyurethane glue"), CLOSED
    )


def test_ten_degrees_colder_takes_twice_as_long():
    """UFGS-09971 says so of pot life; for glues it is an assumption, and errs long."""
    pva = known("yellow pva")
    assert hours(clamp_until(pva, CLOSED, COLD)) == 2 * hours(clamp_until(pva, CLOSED))
    assert hours(clamp_until(pva, CLOSED, COLD, factor_per_10c=3)) == 3


def test_warmth_shortens_no_clamp_time():
    pva = known("yellow pva")
    assert clamp_until(pva, CLOSED, WARM) == clamp_until(pva, CLOSED)


def test_below_its_minimum_a_glue_has_no_date():
    """NAVEDTRA 14119: use PVA above 50 °F (10 °C)."""
    pva, freezing = known("white pva"), Air(9.5, 60.0)
    assert [stage(pva, CLOSED, freezing) for stage in WAITS] == [None] * 3
    (stop,) = temperature_findings(pva, freezing)
    assert stop.level is Level.STOP
    assert stop.source == "navedtra-14119"
    assert "10 °C" in in_si(sentence(stop))


def test_between_the_minimum_and_warm_wood_it_is_a_note():
    (note,) = temperature_findings(known("white pva"), Air(15.0, 60.0))
    assert note.level is Level.NOTE
    assert "21 °C" in in_si(sentence(note))
    assert temperature_findings(known("white pva"), Air(21.1, 60.0)) == ()


def test_a_glue_without_a_minimum_says_nothing_of_the_cold():
    assert temperature_findings(known("fish glue"), Air(12.0, 60.0)) == ()
    assert temperature_findings(known("casein glue"), Air(2.0, 60.0)) == ()


def test_urea_is_reckoned_from_its_own_air():
    """NAVEDTRA 14119: within 24 h at 70 °F, so at 21.1 °C it is a day, at standard air no less."""
    urea = known("urea powder")
    assert hours(finish_from(urea, CLOSED, Air(21.1, 50.0))) == 24
    assert hours(finish_from(urea, CLOSED, STANDARD_AIR)) == 24


@given(glues, airs)
def test_no_air_makes_a_wait_shorter_than_printed(glue: Glue, air: Air):
    for stage in WAITS:
        printed, here = stage(glue, CLOSED), stage(glue, CLOSED, air)
        assert printed is not None
        assert here is None or here >= printed


@given(glues, airs)
def test_a_joint_leaves_the_clamps_before_it_is_levelled(glue: Glue, air: Air):
    clamps, level = clamp_until(glue, CLOSED, air), level_from(glue, CLOSED, air)
    assert (clamps is None) is (level is None)
    finish = finish_from(glue, CLOSED, air)
    assert finish is None or (level is not None and finish <= level)


@given(glues, st.floats(11, 22), st.floats(0.5, 10))
def test_colder_never_takes_less_time(glue: Glue, temperature_c: float, colder: float):
    here = clamp_until(glue, CLOSED, Air(temperature_c, 50.0))
    there = clamp_until(glue, CLOSED, Air(temperature_c - colder, 50.0))
    assert there is None or (here is not None and there >= here)


def test_a_glue_of_ones_own_is_reckoned_the_same():
    figure = Figure(1, 2, 3, "your can")
    mine = Glue("mine", "my glue", (), False, figure, figure, figure, figure)
    assert hours(clamp_until(mine, CLOSED)) == 3
    assert hours(level_from(mine, CLOSED)) == 3
