"""An edge gets the coats of both faces beside it; the face waits for it, never the schedule.

The rules are common practice: nobody coats an edge for itself, what runs over it lies there, and
a coat over a film that is too young wrinkles or clouds it, on an edge as on a face.
"""

from __future__ import annotations

import pytest

from finishlog.core.findings import Answer
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Coat
from finishlog.core.log.words import Found, Operation
from finishlog.core.shop.things import FaceKind
from finishlog.core.verdict.edges import edges_of
from finishlog.core.zone.verdict import MAY_ACT
from tests.shop_of import SHELLAC, VARNISH, WATERBORNE, Story, at, figure
from tests.worded_in import because, in_si, remedy, waits_for

QUICK = {Stage.RECOAT: figure(2), Stage.TURN: figure(0.5)}


def door(*steps: object) -> Story:
    story = Story()
    story.part("door", *steps, faces=("front", "back"), edges=("edges",))  # type: ignore[arg-type]
    return story.steady(since=-12.0)


def coat(story: Story, hour: float, face: str, class_key: str = SHELLAC, **options) -> Coat:
    """Coat a face; it runs over the edges too."""
    made = story.coat(hour, class_key, face=face, **options)
    story.entries.remove(made)
    edges = edges_of(story.look(hour).zones, made.targets)
    both = Coat(
        **{
            name: getattr(made, name)
            for name in ("id", "act", "when", "typed_at", "product", "product_name", "figures")
        },
        targets=made.targets | edges,
    )
    story.entries.append(both)
    return both


def test_a_coat_on_either_face_reaches_the_edges_of_its_piece_alone():
    story = Story()
    story.part("door", pieces=2, faces=("front", "back"), joints=("tenon",), edges=("edges",))
    zones = story.look(0).zones
    front = {z.target for z in zones if z.face.name == "front" and z.piece.number == 1}
    (edge,) = edges_of(zones, front)
    assert next(z for z in zones if z.target == edge).face.kind is FaceKind.EDGE
    assert edge.piece == next(iter(front)).piece
    tenon = {z.target for z in zones if z.face.kind is FaceKind.JOINT}
    assert edges_of(zones, tenon) == frozenset(), "a tenon is no face that a coat runs off"
    assert edges_of(zones, [edge]) == frozenset(), "an edge by itself reaches nothing more"


def test_an_edge_has_no_steps_and_never_holds_the_part_up():
    story = door(SHELLAC)
    coat(story, 0, "front")
    coat(story, 4, "back")
    edge = story.state(48, face="edges")
    assert edge.progress.steps == ()
    assert edge.verdict.answer is Answer.DONE
    assert {story.verdict(48, face=f).answer for f in ("front", "back")} == {Answer.DONE}


def test_a_step_that_names_the_edge_makes_it_a_face_of_its_own():
    story = door(SHELLAC, (VARNISH, "edges"))
    assert [s.product for s in story.state(0, face="edges").progress.steps] == [
        story.product(VARNISH)
    ]


def test_what_ran_over_an_edge_is_counted_there():
    story = door(SHELLAC, SHELLAC)
    coat(story, 0, "front")
    coat(story, 4, "back")
    assert len(story.state(5, face="edges").layers) == 2
    assert len(story.state(5, face="front").layers) == 1


def test_the_back_waits_for_the_edges_that_got_the_fronts_coat_an_hour_ago():
    story = door(SHELLAC)
    coat(story, 0, "front", label=QUICK)
    verdict = story.verdict(1, face="back")
    assert (verdict.answer, waits_for(verdict)) == (Answer.WAITS, "edges")
    assert verdict.high == at(2), "the edges' own recoat time, not the turning of the front"
    assert any("--no-edges" in in_si(remedy(finding)) for finding in verdict.findings)
    assert story.verdict(2.1, face="back").answer in MAY_ACT


def test_without_an_edge_the_back_may_go_on_once_the_front_bears_turning():
    story = Story()
    story.part("door", SHELLAC, faces=("front", "back"))
    story.steady(since=-12.0)
    story.coat(0, SHELLAC, face="front", label=QUICK)
    assert story.verdict(1, face="back").answer in MAY_ACT


def test_a_coat_kept_off_the_edges_leaves_them_their_own_clock():
    story = door(SHELLAC, SHELLAC)
    coat(story, 0, "front", label=QUICK)
    story.coat(3, SHELLAC, face="back", label=QUICK)
    assert len(story.state(4, face="edges").layers) == 1
    assert story.verdict(4, face="front").answer in MAY_ACT, "its edges are four hours old"


def test_edges_too_soft_to_sand_keep_the_face_from_being_scuffed():
    story = door(SHELLAC, Operation.SCUFF, SHELLAC)
    coat(story, 0, "front", label={**QUICK, Stage.SAND: figure(2)})
    coat(story, 3, "back", label={**QUICK, Stage.SAND: figure(2)})
    early = story.verdict(4, face="front")
    assert (early.answer, waits_for(early)) == (Answer.WAITS, "edges")
    assert story.verdict(5.1, face="front").answer is Answer.GO


def test_a_failed_check_on_the_edges_holds_the_faces():
    story = door(SHELLAC, SHELLAC)
    coat(story, 0, "front", label=QUICK)
    coat(story, 3, "back", label=QUICK)
    story.check(9, Found.TACKY, face="edges")
    for face in ("front", "back"):
        assert story.verdict(10, face=face).answer is Answer.WAITS
        assert "edges" in because(story.verdict(10, face=face))


def test_the_edges_count_for_what_the_whole_part_waits_for():
    """Clamping, stacking and packing press on the edges too."""
    story = door(WATERBORNE)
    coat(story, 0, "front", WATERBORNE)
    coat(story, 30, "back", WATERBORNE)
    edge, front = (story.state(31, face=f).stages[Stage.STACK] for f in ("edges", "front"))
    assert edge.high is not None
    assert front.high is not None
    assert edge.high > front.high


@pytest.mark.parametrize("face", ["front", "back"])
def test_wet_with_the_other_face_it_is_the_face_that_is_named(face: str):
    story = door(VARNISH)
    other = "back" if face == "front" else "front"
    coat(story, 0, other, VARNISH)
    assert waits_for(story.verdict(1, face=face)) in {f"face {other}", "edges"}
