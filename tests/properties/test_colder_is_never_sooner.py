"""Colder is never sooner: for films, joints and mixes, with the same water in the air.

A room that is read now and then, and the same room some degrees colder at every reading; within
the class's temperature limits, since above them a film stands still as well. Rooms are invented.
"""

from __future__ import annotations

from datetime import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.air.met import AirMet, Leg
from finishlog.core.air.psychrometrics import Air, cooled
from finishlog.core.air.room import RoomAir
from finishlog.core.film.layers import Layer, laws_of
from finishlog.core.findings import Answer
from finishlog.core.log.words import Operation
from finishlog.core.mixing.containers import pot_life_ends
from finishlog.core.zone.verdict import MAY_ACT
from tests.air_of import Row, read_room
from tests.examples import examples
from tests.shop_of import FACTS, WAX, Story, at

CLASSES = list(FACTS.classes)
GLUES = [glue.key for glue in FACTS.glues]
REACTS = [of.key for of in FACTS.classes.values() if of.pot_life_h is not None]

gaps = st.lists(st.sampled_from([0.5, 1.0, 2.0, 5.0, 13.0, 30.0]), min_size=1, max_size=6)
airs = st.tuples(st.floats(0, 40), st.floats(20, 95))
degrees = st.floats(0, 25)


@st.composite
def pairs(draw: st.DrawFn, least_c: float, most_c: float) -> tuple[list[Row], list[Row]]:
    """Two series of readings at the same hours: one room, and it colder at some of them."""
    warm, cold, hour = [], [], -1.0
    for gap in draw(gaps):
        t, rh = draw(airs)
        air = Air(min(max(t, least_c), most_c), rh)
        colder = cooled(air, max(least_c, air.temperature_c - draw(degrees)))
        warm.append((hour, air.temperature_c, air.humidity_pct))
        cold.append((hour, colder.temperature_c, colder.humidity_pct))
        hour += gap
    return warm, cold


def not_sooner(cold: datetime | None, warm: datetime | None) -> bool:
    """None: never. By quarter hours that are cut elsewhere one air may seem warmer by a second."""
    return cold is None or (warm is not None and (cold - warm).total_seconds() > -1)


def ends_of(key: str, room: RoomAir) -> list[datetime | None]:
    """Return when a film of a class reaches what it reaches, at the least and at the most."""
    of = FACTS.finish_class(key)
    story = Story()
    story.part()
    coat, met = story.coat(0, key), AirMet((Leg(room, at(0), None),))
    layer = Layer(coat=coat, of=of, air=met, window_air=met, law=laws_of(of, FACTS))
    waits = [layer.waits(figure) for figure in coat.figures.stages.values()]
    return [moment for wait in waits for moment in (wait.low, wait.high)]


@examples(6)
@pytest.mark.parametrize("key", CLASSES)
@given(data=st.data())
def test_no_film_is_dry_sooner_in_the_cold(key, data):
    limits = FACTS.finish_class(key).limits
    assert limits.min_c is not None
    assert limits.max_c is not None
    warm, cold = data.draw(pairs(limits.min_c.value, limits.max_c.value))
    ends = zip(ends_of(key, read_room(*cold)), ends_of(key, read_room(*warm)), strict=True)
    for in_the_cold, in_the_warm in ends:
        assert not_sooner(in_the_cold, in_the_warm)


def case(glue: str, rows: list[Row], *work: Operation) -> Story:
    """Tell of a case glued up at hour 0 whose next step is wax, in a room that was read so."""
    story = Story()
    story.part("sides", pieces=2)
    story.part("case", Operation.GLUE_UP, *(work or (WAX,)), faces=(), needs={"sides": 2})
    story.join(0, story.named("case").pieces[0], story.named("sides").pieces, glue)
    for hour, celsius, rh in rows:
        story.read(hour, celsius, rh)
    return story


@examples(10)
@pytest.mark.parametrize("glue", GLUES)
@given(data=st.data(), hour=st.floats(0.1, 90))
def test_no_joint_is_let_go_sooner_in_the_cold(glue, data, hour):
    """Below its limit as well; there it is also tried before anything goes on it."""
    warm, cold = data.draw(pairs(-10.0, 40.0))
    for doing in (Operation.SAND, Operation.LEVEL, Operation.UNTAPE):
        told = [case(glue, rows, doing) for rows in (warm, cold)]
        there, here = (story.verdict(hour, story.named("sides")) for story in told)
        if here.answer in MAY_ACT:
            assert there.answer in MAY_ACT
            assert here.answer is Answer.TEST or there.answer is not Answer.TEST
        elif there.answer is Answer.WAITS:
            assert not_sooner(here.high, there.high)


@examples(20)
@pytest.mark.parametrize("key", REACTS)
@given(data=st.data())
def test_no_mix_is_over_sooner_in_the_cold(key, data):
    """The other way round a mix in the warmth is never usable for longer."""
    warm, cold = data.draw(pairs(-5.0, 40.0))
    figure = FACTS.finish_class(key).pot_life_h
    assert figure is not None
    ends = [
        pot_life_ends(figure.low_h, figure, at(0), [read_room(*rows)], 2.0) for rows in (cold, warm)
    ]
    assert not_sooner(*ends)
