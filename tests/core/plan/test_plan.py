"""A plan in the order of the trade. Parts, labels and hours are invented.

The order of work is common practice: sanded, sealed, coated in parts with like parts together,
joints kept bare, glued up only when every member bears cauls, hardware last, a sample board first.
"""

from __future__ import annotations

from datetime import timedelta

from msgspec.structs import replace

from finishlog.cli.words.finding_words import plan_reason
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Operation
from finishlog.core.plan.plan import plan
from finishlog.core.plan.results import Chore
from finishlog.core.shop.things import FaceKind, Part, Project
from tests.planned import (
    doings,
    first,
    holds,
    open_from,
    plan_of,
    shop_read,
    tasks_of,
    work_of,
)
from tests.shop_of import (
    FACTS,
    LACQUER,
    LINSEED,
    SHELLAC,
    VARNISH,
    WATERBORNE,
    Story,
    at,
    closing,
    figure,
)

SAND, SCUFF, GLUE_UP, HARDWARE = (
    Operation.SAND,
    Operation.SCUFF,
    Operation.GLUE_UP,
    Operation.HARDWARE,
)


def stool(story: Story) -> tuple[Part, Part, Part]:
    """Add two stools: seats and legs finished apart, glued up, hardware on the whole."""
    schedule = (SAND, SHELLAC, SCUFF, LACQUER, LACQUER, LACQUER)
    seat = story.part("seat", *schedule, pieces=2, joints=("mortise",))
    legs = story.part("legs", *schedule, pieces=6, joints=("tenon",))
    whole = story.part("stool", GLUE_UP, HARDWARE, pieces=2, faces=(), needs={"seat": 1, "legs": 3})
    return seat, legs, whole


def test_a_piece_is_sanded_sealed_and_coated_in_parts_then_glued_up_then_fitted():
    story = shop_read()
    seat, legs, whole = stool(story)
    made = plan_of(story)
    coats = ["coat our lacquer-sprayed"] * 3
    for part in (seat, legs):
        assert doings(made, part) == ["sand", "coat our shellac-2lb", "scuff", *coats]
    assert doings(made, whole) == ["glue-up", "hardware"]
    glued = first(made, whole, GLUE_UP)
    assert glued.start >= max(t.end for t in work_of(made) if t.part in {seat, legs})
    assert made.unplanned == ()
    holds(story, made)


def test_joints_stay_bare():
    story = shop_read()
    stool(story)
    joints = {
        (p.id, z.id)
        for part in story.parts
        for p in part.pieces
        for f in part.faces
        for z in f.zones
        if f.kind is FaceKind.JOINT
    }
    for task in work_of(plan_of(story)):
        if task.operation is not GLUE_UP:
            assert not joints & {tuple(t) for e in task.entries for t in e.targets}


def test_like_parts_are_coated_together_with_one_set_up():
    story = shop_read()
    for name in ("door", "shelf", "back"):
        story.part(name, LACQUER)
    made = plan_of(story)
    assert [t.chore for t in tasks_of(made)] == [
        Chore.SET_UP, Chore.WORK, Chore.WORK, Chore.WORK, Chore.CLEAN_UP,
    ]  # fmt: skip


def test_edges_get_the_coats_of_both_faces():
    story = shop_read()
    door = story.part("door", SHELLAC, faces=("front", "back"), edges=("edges",))
    edge = next(z.id for f in door.faces if f.kind is FaceKind.EDGE for z in f.zones)
    made = plan_of(story)
    assert len(work_of(made)) == 2
    for task in work_of(made):
        assert edge in {t.zone for e in task.entries for t in e.targets}
    holds(story, made)


def test_sanding_does_not_use_up_the_evening_of_a_coat_that_is_due():
    story = shop_read()
    for n in range(8):
        other = replace(story.part(f"leg {n}", SAND), project=2, project_name="box")
        story.parts[-1] = other
    door = story.part("door", VARNISH)
    hours = open_from(*((day, "18:00", "20:00") for day in range(7)))
    projects = (Project(1, "cabinet", at(24 * 10)), Project(2, "box"))
    shop = replace(story.shop, hours=hours, projects=projects)
    made = plan(shop, story.log(0), FACTS, at(0), story.zone)
    assert made.sessions[0].opens <= first(made, door, Operation.COAT).start
    assert first(made, door, Operation.COAT).end <= made.sessions[0].closes
    assert first(made, story.parts[0], SAND) in made.sessions[0].tasks


def test_like_products_stand_together_in_an_evening():
    story = shop_read()
    for name, product in (("a", LACQUER), ("b", SHELLAC), ("c", LACQUER), ("d", SHELLAC)):
        story.part(name, product)
    coats = [t.product for t in work_of(plan_of(story))]
    assert coats == sorted(coats, key=coats.index)
    assert sum(t.chore is Chore.SET_UP for t in tasks_of(plan_of(story))) == 2


def test_a_member_is_clamped_no_sooner_than_its_film_bears_it():
    story = shop_read()
    seat, legs, whole = stool(story)
    made = plan_of(story)
    dates = {d.part: d for d in made.parts}
    assert dates[seat].joins
    assert dates[legs].joins
    clamp = max(dates[p].clamp.high for p in (seat, legs))
    assert first(made, whole, GLUE_UP).start >= clamp
    stack, pack = dates[whole].stack, dates[whole].pack
    assert clamp < stack.high < pack.high


def test_a_sample_board_gets_each_product_first():
    story = shop_read()
    door = story.part("door", SAND, SHELLAC, LACQUER)
    board = replace(story.part("board", SAND, SHELLAC, LACQUER), is_board=True)
    story.parts[-1] = board
    made = plan_of(story)
    for product in story.products:
        on_board, on_door = (
            next(t for t in work_of(made, Operation.COAT) if (t.part, t.product) == (p, product))
            for p in (board, door)
        )
        assert on_board.end <= on_door.start
    holds(story, made)


def test_a_piece_waits_for_the_coat_that_its_board_has_not_had_yet():
    """Nothing else holds the door's lacquer up: the board has yet to be sealed."""
    story = shop_read()
    door = story.part("door", LACQUER)
    board = replace(story.part("board", SHELLAC, LACQUER), is_board=True)
    story.parts[-1] = board
    made = plan_of(story)
    lacquered = {t.part: t for t in work_of(made) if t.product == story.product(LACQUER)}
    assert lacquered[board].end <= lacquered[door].start
    touch = FACTS.finish_class(LACQUER).stages[Stage.TOUCH]
    assert lacquered[door].start - lacquered[board].end >= timedelta(hours=touch.high_h)


def test_a_board_that_cannot_be_first_does_not_hold_up_the_piece():
    story = shop_read()
    door = story.part("door", SHELLAC)
    story.parts.append(replace(story.part("board", SHELLAC, SHELLAC), is_board=True))
    story.parts.pop(-2)
    board = story.parts[-1]
    story.coat(-3, SHELLAC, board)
    story.set_aside(-1, board)
    made = plan_of(story)
    assert doings(made, door) == ["coat our shellac-2lb"]
    ((passed, why),) = made.boards_passed
    assert (passed, plan_reason(why)) == (board, "set aside")


def test_dusty_work_comes_first_then_the_dust_settles():
    story = shop_read()
    story.part("door", LACQUER)
    story.part("shelf", SAND, LACQUER)
    evening = plan_of(story).sessions[0]
    assert [t.chore.value if not t.operation else t.operation.value for t in evening.tasks] == [
        "sand", "vacuum", "set up", "coat", "coat", "clean up",
    ]  # fmt: skip
    vacuum, coat = evening.tasks[1], evening.tasks[3]
    settle = timedelta(minutes=FACTS.hands_on.settle_min.high)
    assert coat.start >= vacuum.end + settle


def test_no_sanding_while_a_film_in_the_room_is_wet():
    story = shop_read()
    story.part("door", VARNISH)
    shelf = story.part("shelf", SAND)
    story.coat(-1, VARNISH, story.named("door"))
    made = plan_of(story)
    dry = story.state(0, story.named("door")).stages[Stage.DUST_FREE].high
    assert first(made, shelf, SAND).start >= dry


def test_hidden_faces_come_before_show_faces():
    story = shop_read()
    door = story.part("door", SHELLAC, faces=("front", "back"))
    front, back = door.faces
    story.parts[0] = replace(door, faces=(front, replace(back, kind=FaceKind.HIDDEN)))
    coats = [t.label for t in work_of(plan_of(story))]
    assert coats == ["door, back", "door, front"]
    holds(story, plan_of(story))


def test_the_second_face_waits_until_the_piece_may_be_turned():
    story = shop_read()
    story.part("door", WATERBORNE, faces=("front", "back"))
    one, other = work_of(plan_of(story))
    turn = FACTS.finish_class(WATERBORNE).stages[Stage.TURN]
    assert other.start - one.end >= timedelta(hours=turn.high_h)


def test_a_coat_that_is_always_scuffed_is_scuffed_before_the_dust_settles():
    story = shop_read()
    door = story.part("door", VARNISH, VARNISH)
    made = plan_of(story)
    assert doings(made, door) == ["coat our alkyd-varnish", "scuff", "coat our alkyd-varnish"]
    assert made.missed == 0


def test_a_window_that_closes_before_its_turn_comes_costs_a_scuff_first():
    """Its window closes at 18:05, and the brush is not wet before 18:10."""
    story = shop_read()
    door = story.part("door", WATERBORNE, WATERBORNE)
    label = {Stage.RECOAT: figure(2), Stage.SAND: figure(2)}
    story.coat(-24, WATERBORNE, label=label, window=closing(24 + 5 / 60))
    made = plan_of(story)
    assert doings(made, door) == ["scuff", "coat our waterborne-clear"]
    assert made.missed == 1


def test_of_a_batch_only_what_is_coated_before_the_window_closes_goes_unscuffed():
    """Twenty doors take two hours; the window closes one hour after the brush is wet."""
    story = shop_read()
    doors = story.part("doors", WATERBORNE, WATERBORNE, pieces=20)
    label = {Stage.RECOAT: figure(2), Stage.SAND: figure(2)}
    story.coat(-24, WATERBORNE, label=label, window=closing(24 + 70 / 60))
    made = plan_of(story)
    in_time = [t for t in work_of(made, Operation.COAT) if t.closes is not None]
    assert [len(t.entries[0].targets) for t in in_time] == [10, 1]
    batch, last = in_time
    assert batch.end <= batch.closes
    assert last.start <= last.closes, "what was begun in time is finished"
    scuffed = {t for task in work_of(made, Operation.SCUFF) for t in task.entries[0].targets}
    assert len(scuffed) == 9
    assert {t.piece for t in scuffed} < {piece.id for piece in doors.pieces}
    holds(story, made)


def test_of_two_batches_the_one_whose_window_closes_first_is_coated_first():
    story = shop_read()
    doors = story.part("doors", WATERBORNE, WATERBORNE, pieces=8)
    label = {Stage.RECOAT: figure(2), Stage.SAND: figure(2)}
    story.coat(-24, WATERBORNE, doors, pieces=range(5, 9), label=label, window=closing(25))
    made = plan_of(story)
    first_coat, second_coat, *_ = work_of(made, Operation.COAT)
    assert (first_coat.label, first_coat.coat) == ("doors:5-8", (2, 2))
    assert (second_coat.label, second_coat.coat) == ("doors:1-4", (1, 2))
    assert first_coat.end <= at(1)


def test_of_doors_coated_at_two_times_those_that_close_first_come_first_whatever_their_number():
    story = shop_read()
    doors = story.part("doors", WATERBORNE, WATERBORNE, pieces=20)
    label = {Stage.RECOAT: figure(2), Stage.SAND: figure(2)}
    older, younger = range(11, 21), range(1, 11)
    window = closing(25.25)
    story.coat(-24, WATERBORNE, doors, pieces=older, label=label, window=window)
    story.coat(-20, WATERBORNE, doors, pieces=younger, label=label, window=window)
    made = plan_of(story)
    batch = work_of(made, Operation.COAT)[0]
    numbers = {p.id: p.number for p in doors.pieces}
    assert {numbers[t.piece] for t in batch.entries[0].targets} == set(older)
    assert batch.end <= at(1.25)
    assert work_of(made, Operation.SCUFF) == []
    holds(story, made)


def test_surplus_comes_off_as_it_goes_on():
    story = shop_read()
    story.part("top", LINSEED, LINSEED)
    coat = work_of(plan_of(story))[0]
    assert coat.wiped
    assert [type(e).__name__ for e in coat.entries] == ["Coat", "Work"]
    holds(story, plan_of(story))


def test_oil_put_on_minutes_ago_is_wiped_off_now():
    story = shop_read()
    top = story.part("top", LINSEED)
    story.coat((-0.2, -0.1), LINSEED)
    made = plan_of(story)
    assert work_of(made)[0].part == top
    assert work_of(made)[0].operation is Operation.WIPE
    assert work_of(made)[0].start == at(0)


def test_oily_wood_is_wiped_with_solvent_right_before_its_coat():
    story = shop_read()
    lid = story.part("lid", SAND, Operation.SOLVENT_WIPE, SHELLAC, species="cocobolo")
    made = plan_of(story)
    assert doings(made, lid) == ["sand", "coat our shellac-2lb"]
    wipe, coat = work_of(made)[1].entries
    assert wipe.operation is Operation.SOLVENT_WIPE
    assert wipe.when.latest == coat.when.earliest
    holds(story, made)


def test_wood_that_was_wiped_with_solvent_is_coated_before_anything_else():
    story = shop_read()
    lid = story.part("lid", Operation.SOLVENT_WIPE, SHELLAC, species="cocobolo")
    story.part("door", SAND)
    story.work(-0.05, Operation.SOLVENT_WIPE, lid)
    made = plan_of(story)
    assert work_of(made)[0].part == lid
    assert doings(made, lid) == ["coat our shellac-2lb"]


def test_raised_grain_dries_before_it_is_sanded():
    story = shop_read()
    story.part("lid", Operation.RAISE_GRAIN, SAND)
    wet, sand = work_of(plan_of(story))
    assert sand.start - wet.end >= timedelta(minutes=FACTS.hands_on.wet_wood_min.high)


def test_hardware_waits_for_every_face():
    story = shop_read()
    door = story.part("door", LACQUER, LACQUER, HARDWARE, faces=("front", "back"))
    made = plan_of(story)
    fitted = first(made, door, HARDWARE)
    coats = [t for t in work_of(made, Operation.COAT) if t.part == door]
    assert len(coats) == 4
    assert fitted == work_of(made)[-1]
    assert len(work_of(made, HARDWARE)) == 1
