"""Random small shops, planned: what must hold whatever there is to do.

The shops and their work are random; the figures are the published ones.
"""

from __future__ import annotations

from dataclasses import dataclass

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from finishlog.core.log.words import Found, Operation
from finishlog.core.plan.plan import Plan, plan
from finishlog.core.shop.hours import ShopHours
from finishlog.core.shop.things import Log, Shop
from tests.examples import examples
from tests.planned import (
    EVENINGS,
    check_bench,
    check_dust,
    check_hours,
    check_nothing_vanished,
    open_from,
    shop_with,
)
from tests.shop_of import (
    FACTS,
    LACQUER,
    LINSEED,
    SHELLAC,
    STAIN,
    VARNISH,
    WATERBORNE,
    Story,
    at,
)

pytestmark = pytest.mark.thorough

CLASSES = st.sampled_from([SHELLAC, WATERBORNE, VARNISH, LINSEED, LACQUER, STAIN])
BY_HAND = st.sampled_from(
    [
        Operation.SAND,
        Operation.RAISE_GRAIN,
        Operation.SCUFF,
        Operation.DENIB,
        Operation.WIPE,
        Operation.SOLVENT_WIPE,
        Operation.MASK,
        Operation.UNTAPE,
        Operation.RUB,
        Operation.HARDWARE,
    ]
)
HOURS = st.sampled_from(
    [
        EVENINGS,
        open_from((0, "18:00", "21:00"), (2, "18:00", "21:00"), (5, "09:00", "12:30")),
        open_from(*((day, "19:00", "20:15") for day in range(7))),
        open_from((4, "22:00", "02:00"), (5, "09:00", "17:00")),
        open_from(*((day, "00:00", "00:00") for day in range(7))),
    ]
)


@dataclass(frozen=True, repr=False)
class Told:
    """A random shop at a moment, and its plan."""

    shop: Shop
    log: Log
    hours: ShopHours
    hour: float
    story: Story

    def __repr__(self) -> str:
        """Tell it in a few lines, for a test that failed."""
        return f"at {self.hour} h of {self.hours.patterns[0][1]}: {self.story!r}"

    def plan(self) -> Plan:
        return plan(self.shop, self.log, FACTS, at(self.hour), self.story.zone)


def _parts(draw: st.DrawFn, story: Story) -> None:
    for name in ("sides", "door", "lid")[: draw(st.integers(1, 3))]:
        own = draw(CLASSES)
        story.part(
            name,
            *draw(st.lists(st.one_of(st.just(own), st.just(own), BY_HAND, CLASSES), max_size=5)),
            pieces=draw(st.integers(1, 3)),
            faces=draw(st.sampled_from([("all round",), ("front", "back")])),
            joints=draw(st.sampled_from([(), ("tenon",)])),
            edges=draw(st.sampled_from([(), ("edges",)])),
            species=draw(st.sampled_from([None, "ash", "cherry", "cocobolo"])),
        )
    if len(story.parts) > 1:
        after = draw(st.lists(st.one_of(st.just(VARNISH), BY_HAND), max_size=2))
        story.part(
            "case", Operation.GLUE_UP, *after, pieces=draw(st.integers(1, 2)), faces=(),
            needs={"sides": 1, "door": 1},
        )  # fmt: skip


@st.composite
def shops(draw: st.DrawFn) -> Told:
    """Tell of a random shop that has something to do, somewhere in its week."""
    story = Story()
    _parts(draw, story)
    if draw(st.booleans()):
        story.cold_nights(draw(st.floats(2, 18)))
    hour = draw(st.integers(0, 7 * 24 * 4)) / 4
    if draw(st.integers(0, 4)):
        ago = draw(st.floats(0.01, 30))
        story.read(hour - ago, draw(st.floats(6, 30)), draw(st.floats(25, 80)))
    finished = [p for p in story.parts if p.faces]
    for ago in sorted(draw(st.lists(st.floats(0.05, 80), max_size=4)), reverse=True):
        part = draw(st.sampled_from(finished))
        face = draw(st.sampled_from([None, part.faces[0].name]))
        if draw(st.integers(0, 3)):
            story.coat(hour - ago, draw(CLASSES), part, face=face)
        elif draw(st.booleans()):
            story.work(hour - ago, draw(BY_HAND), part, face=face)
        else:
            story.check(hour - ago, draw(st.sampled_from(list(Found))), part, face=face)
    hours = draw(HOURS)
    due = at(hour + draw(st.floats(1, 900))) if draw(st.booleans()) else None
    shop = shop_with(story, hours, due)
    if draw(st.integers(0, 3)) == 0:
        leaves = hour + draw(st.floats(0, 100))
        trip = (at(leaves), at(leaves + draw(st.floats(1, 200))))
        shop = replace(shop, hours=replace(hours, away=(trip,)))
    return Told(shop, story.log(hour), shop.hours, hour, story)


@examples(60)
@given(shops())
def test_no_plan_says_what_the_bench_would_not_say_then(told):
    made = told.plan()
    check_hours(made, told.hours)
    check_bench(made, told.shop, told.log)
    check_dust(made, FACTS.hands_on)
    check_nothing_vanished(made, told.shop, told.log)


@examples(8)
@given(shops())
def test_the_same_shop_gives_the_same_plan(told):
    assert told.plan() == told.plan()


@examples(15)
@given(shops())
def test_every_visit_has_work_in_it_and_ends_clean(told):
    """Set-up is followed by its coats and by a clean-up, before the shop shuts."""
    for session in told.plan().sessions:
        assert any(task.part is not None for task in session.tasks)
        wet = None
        for task in session.tasks:
            match task.chore.value:
                case "set up":
                    assert wet is None
                    wet = task.product
                case "clean up":
                    assert task.product == wet
                    wet = None
            if task.operation is Operation.COAT:
                assert task.product == wet
        assert wet is None


@examples(15)
@given(shops())
def test_a_due_date_is_late_or_holds_by_what_is_packed(told):
    for each in told.plan().projects:
        if each.slack_h is None or each.slack_shop_min is None:
            assert each.due is None or each.why
            continue
        assert each.packed is not None
        assert (each.slack_h < 0) == (each.promise.value == "late")
        assert each.slack_shop_min >= 0
        if each.spare:
            assert each.packed < each.spare[0] < each.spare[1] <= each.due


@examples(15)
@given(shops())
def test_parts_are_handled_in_the_order_of_the_stages(told):
    for dates in told.plan().parts:
        line = [m.high for m in (dates.clamp, dates.stack, dates.pack) if m and m.high]
        assert line == sorted(line)
