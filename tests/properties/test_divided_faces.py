"""A face that is divided changes nothing until something is logged on one of its zones.

Random shops in a real file, whose faces are divided, and divided again, after their coats.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.acts.correct.undo import undo
from finishlog.acts.film.check import log_check
from finishlog.acts.things.part_edit import PartEdit, edit_part
from finishlog.asks.bench.plan import plan
from finishlog.asks.bench.ready import ready
from finishlog.asks.look.look import Look, look
from finishlog.cli.pages.questions.plan_page import plan_page
from finishlog.cli.terminal.page import plain
from finishlog.core.log.when import at
from finishlog.core.log.words import Found, Test
from finishlog.core.zone.state import ZoneState
from finishlog.store.database import Database
from tests.examples import examples
from tests.shop_on_file import NOW, Story, context_of, kept, stories

pytestmark = pytest.mark.thorough


def seen(database: Database) -> Look:
    context = context_of(database)
    with context.reading() as connection:
        return look(context, connection)


def stands(state: ZoneState) -> Hashable:
    """Return all that a person is told of a zone, but its name."""
    verdict, progress = state.verdict, state.progress
    return (
        verdict.answer,
        verdict.low,
        verdict.high,
        verdict.closes,
        verdict.binds.rule,
        frozenset(finding.rule for finding in verdict.findings),
        tuple((layer.coat.id, layer.factor, len(layer.checks)) for layer in state.layers),
        tuple((stage, state.stages[stage]) for stage in state.stages),
        tuple(entry.id for entry in state.entries),
        progress.done,
        tuple(fault.name for fault in state.faults),
        tuple(sorted((stage, each.answer, each.high) for stage, each in state.handling.items())),
    )


def by_face(database: Database) -> dict[tuple[str, int, str], set[Hashable]]:
    """Return how the zones of each face stand."""
    found: dict[tuple[str, int, str], set[Hashable]] = {}
    for state in seen(database).bench.zones:
        spot = (state.part.name, state.piece.number, state.face.name)
        found.setdefault(spot, set()).add(stands(state))
    return found


def screens(database: Database) -> Iterator[Hashable]:
    """Yield what is said of rags, of the evening and of the weeks to come."""
    context = context_of(database)
    rags = seen(database).bench.rags
    yield tuple((item.product, item.state, item.since, item.entries) for item in rags)
    yield ready(context)
    yield plain(plan_page(plan(context), context.clock, verbose=True))


def divided(database: Database, zone: str = "", into: str = "left,right") -> None:
    """Divide the first face of every part, or a zone of it."""
    for part in seen(database).shop.parts:
        which = part.faces[0].name + (f"/{zone}" if zone else "")
        edit_part(context_of(database), part.path, PartEdit(faces=(f"{which}={into}",)))


@examples(20)
@given(stories())
def test_dividing_a_face_changes_no_verdict_and_no_line(story: Story):
    with kept(story) as database:
        before, said = by_face(database), list(screens(database))
        divided(database)
        assert by_face(database) == before
        divided(database, "left", "left,strip,rim")
        assert by_face(database) == before
        assert list(screens(database)) == said


@examples(15)
@given(stories(), st.data())
def test_what_was_taken_back_is_gone_from_both_halves(story: Story, data: st.DataObject):
    with kept(story) as database:
        acts = sorted({entry.act for entry in seen(database).log.entries})
        if not acts:
            return
        act = data.draw(st.sampled_from(acts))
        divided(database)
        undo(context_of(database), act)
        after = by_face(database)
    with kept(story) as database:
        undo(context_of(database), act)
        assert by_face(database) == after


@examples(15)
@given(stories())
def test_what_is_logged_on_one_zone_is_of_that_alone(story: Story):
    with kept(story) as database:
        divided(database)
        before = by_face(database)
        zone = next(z for z in seen(database).bench.zones if z.zone.name == "left")
        where = f"{zone.part.path}:{zone.piece.number}"
        log_check(
            context_of(database),
            parts=(where,),
            face=f"{zone.face.name}/left",
            found=Found.TACKY,
            test=Test.TOUCH,
            place="",
            at=at(NOW),
        )
        left, right = (
            next(
                z
                for z in seen(database).bench.zones
                if z.zone.name == name and z.piece.id == zone.piece.id
            )
            for name in ("left", "right")
        )
        assert len(left.entries) == len(right.entries) + 1
        spot = (zone.part.name, zone.piece.number, zone.face.name)
        if zone.layers:
            assert stands(left) != stands(right)
        (alone,) = before[spot]
        assert isinstance(alone, tuple)
        assert [entry.id for entry in right.entries] == list(alone[8])
