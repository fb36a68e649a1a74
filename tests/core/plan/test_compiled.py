"""A compiled shop, task by task: what becomes of a label's hours, a window, a cold morning.

Hours are those of the classes' figures (finishlog/facts/data/classes), read here by their keys;
what goes over what and in which order is common practice.
"""

from __future__ import annotations

from math import ceil

from msgspec.structs import replace

from finishlog.core.air.usual_day import UsualDay, UsualHour
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Operation
from finishlog.core.plan.compiled.lag_sums import begun_before, later_of, sooner_of
from finishlog.core.plan.compiled.minutes import origin_of
from finishlog.core.plan.compiled.shop import Compiled
from finishlog.core.plan.search.shop import NEVER, QUARTER, Task, closes, waits
from finishlog.core.shop.things import FaceKind
from tests.compiled_plan import Made, laid_out, told_of
from tests.planned import EVENINGS, open_from, shop_with
from tests.shop_of import FACTS, SHELLAC, VARNISH, WATERBORNE, Story, at

SAND, SCUFF = Operation.SAND, Operation.SCUFF
ALL_DAY = open_from(*((day, "00:00", "00:00") for day in range(7)))


def compiled(story: Story, hours=EVENINGS) -> Compiled:
    """Compile the shop of a story as it is at its hour 0."""
    return made_of(story, hours).compiled()


def made_of(story: Story, hours=EVENINGS) -> Made:
    return Made(shop_with(story, hours), story.log(0), FACTS, at(0), story.zone)


def in_label_air() -> Story:
    """Begin in a room that was read at the label's air and stays so, by day and night."""
    story = Story()
    story.usual(UsualDay((UsualHour(0, 23.0, 50.0),), valid_from=at(-50)))
    story.read(-0.5, 23.0, 50.0)
    return story


def hours_of(class_key: str, stage: Stage) -> float:
    return FACTS.finish_class(class_key).stages[stage].high_h


def after(task: Task, number: int):
    return next(each.ready for each in task.after if each.task == number)


def test_in_the_air_of_the_label_a_lag_is_the_hours_of_the_label():
    story = in_label_air()
    story.part("door", SAND, SHELLAC, WATERBORNE, WATERBORNE, species="ash")
    shop = compiled(story).shop
    sand, sealer, first, second = shop.tasks
    assert after(first, 1) == 60 * hours_of(SHELLAC, Stage.RECOAT)
    assert after(second, 2) == 60 * hours_of(WATERBORNE, Stage.RECOAT)
    assert (sand.product, sand.is_dusty, sealer.after[0].task) == (None, True, 0)


def test_a_window_counts_from_the_first_piece_and_a_wait_from_the_last():
    """A window closes so long after a coat began, for the last piece of the next one too."""
    story = in_label_air()
    story.part("door", SAND, WATERBORNE, WATERBORNE, pieces=4, species="ash")
    _, first, second = compiled(story).shop.tasks
    label = FACTS.finish_class(WATERBORNE).window.closes
    window = second.window
    assert label is not None
    assert window is not None
    assert window.task == 1
    last_piece = second.minutes * 3 // 4
    assert window.closes == 60 * label.low_h - first.minutes - last_piece
    assert window.sands == 60 * hours_of(WATERBORNE, Stage.SAND)
    assert window.abrade > 0


def test_a_film_that_is_scuffed_every_time_has_a_task_for_it_and_no_window():
    story = in_label_air()
    story.part("door", SAND, VARNISH, VARNISH, species="ash")
    made = compiled(story)
    doings = [doing.operation for doing in made.doings]
    assert doings == [SAND, Operation.COAT, SCUFF, Operation.COAT]
    scuff, second = made.shop.tasks[2:]
    assert after(scuff, 1) == 60 * hours_of(VARNISH, Stage.SAND)
    assert second.window is None
    assert scuff.is_dusty


def test_a_piece_is_not_turned_onto_a_face_before_it_bears_it():
    """The hidden face is coated first, and bears points from the low end of its hours."""
    story = in_label_air()
    part = story.part("door", SAND, SHELLAC, faces=("back", "front"), species="ash")
    faces = (replace(part.faces[0], kind=FaceKind.HIDDEN), part.faces[1])
    story.parts[0] = replace(part, faces=faces)
    _, back, front = compiled(story).shop.tasks
    turn = FACTS.finish_class(SHELLAC).stages[Stage.TURN]
    assert after(front, 1) == 60 * turn.low_h
    assert (back.is_show, front.is_show) == (False, True)


def test_what_the_night_slows_down_takes_longer_the_later_it_went_on():
    story = Story()
    hours = (
        UsualHour(0, 12.0, 60.0),
        UsualHour(8 * 60, 12.0, 60.0),
        UsualHour(15 * 60, 21.0, 50.0),
    )
    story.usual(UsualDay(hours, valid_from=at(-50)))
    story.read(-0.5, 20.0, 52.0)
    story.part("door", SAND, SHELLAC, SHELLAC, species="ash")
    made = compiled(story, ALL_DAY)
    lag = after(made.shop.tasks[2], 1)
    day = 3 * 24 * 60
    passes = [waits(lag, end) - end for end in range(day, day + 24 * 60, 30)]
    label = 60 * hours_of(SHELLAC, Stage.RECOAT)
    assert min(passes) >= label
    assert max(passes) > 1.5 * label
    reached = [waits(lag, end) for end in range(day, day + 24 * 60)]
    assert reached == sorted(reached), "later is never sooner"


def test_a_coat_does_not_go_on_in_the_cold_of_a_morning():
    """Below its least temperature the class stays in its can; by day it goes on."""
    story = Story()
    hours = UsualHour(0, 9.0, 40.0), UsualHour(8 * 60, 9.0, 40.0), UsualHour(13 * 60, 21.0, 35.0)
    story.usual(UsualDay(hours, valid_from=at(-50)))
    story.read(-0.5, 20.0, 52.0)
    story.part("door", SAND, WATERBORNE, species="ash")
    made = compiled(story, ALL_DAY)
    sand, coat = made.shop.tasks
    assert sand.blocked == ()
    later = [span for span in coat.blocked if span[0] > 24 * 60]
    blocked = {m for a, b in later for m in range(a, b, QUARTER)}
    clock = {(18 * 60 + m) % (24 * 60) // 60 for m in blocked}
    assert {1, 5, 7} <= clock
    assert not {14, 16, 18} & clock


def test_parts_that_are_alike_are_asked_once():
    """A story is told for the first of them; every other one plays it with its own pieces."""
    story = in_label_air()
    for name in ("left", "right", "lid"):
        story.part(name, SAND, SHELLAC, WATERBORNE, species="ash", pieces=2)
    made = compiled(story)
    assert len({id(doing.deed) for doing in made.doings}) == 3
    assert len(made.shop.tasks) == 9
    on = [{t.piece for t in doing.on} for doing in made.doings if doing.operation is SAND]
    assert on == [{p.id for p in part.pieces} for part in story.parts]


def test_an_assembly_is_glued_up_when_all_members_bear_cauls():
    story = in_label_air()
    story.part("side", SAND, SHELLAC, pieces=2, joints=("tenon",), species="ash")
    story.part("rail", SAND, "lacquer-brushed", joints=("tenon",), species="ash")
    story.part("frame", Operation.GLUE_UP, SHELLAC, faces=(), needs={"side": 2, "rail": 1})
    made = compiled(story)
    glue_up = next(n for n, d in enumerate(made.doings) if d.operation is Operation.GLUE_UP)
    lags = {
        FACTS.finish_class(story.products[made.doings[each.task].product or 0].class_key).key:
        each.ready for each in made.shop.tasks[glue_up].after
        if made.doings[each.task].product is not None
    }  # fmt: skip
    assert lags == {key: 60 * hours_of(key, Stage.CLAMP) for key in (SHELLAC, "lacquer-brushed")}
    glue = FACTS.glue_named("any")
    assert glue is not None
    last = made.shop.tasks[-1]
    assert after(last, glue_up) == 60 * glue.before_finish.high_h


def test_a_part_waits_for_the_coat_that_its_board_has_not_had_yet():
    """As the plan made forward: the board's own coat first, until it may be touched."""
    story = in_label_air()
    story.part("lid", SAND, SHELLAC, WATERBORNE, species="ash")
    board = story.part("board", SAND, SHELLAC, WATERBORNE, species="ash")
    story.parts[1] = replace(board, is_board=True)
    made = compiled(story)
    on = {(d.part.name, d.product): n for n, d in enumerate(made.doings) if d.product}
    for key in (SHELLAC, WATERBORNE):
        product = story.product(key)
        wait = after(made.shop.tasks[on["lid", product]], on["board", product])
        assert wait == ceil(60 * hours_of(key, Stage.TOUCH))
    story.coat(-0.01, SHELLAC, story.parts[1])
    story.parts[1] = replace(story.parts[1], steps=story.parts[1].steps[2:])
    lid = next(t for t, d in zip(compiled(story).shop.tasks, compiled(story).doings, strict=True)
               if d.part.name == "lid" and d.product == story.product(SHELLAC))  # fmt: skip
    assert lid.not_before > 0


def test_what_is_blocked_is_left_out_with_its_reason():
    story = in_label_air()
    story.part("door", SAND, SHELLAC, WATERBORNE, species="ash")
    story.coat(-60, STAIN_OVER_NOTHING, mixed=False)
    made = compiled(story)
    assert [left.part.name for left in made.left] == ["door"]
    assert made.shop.tasks == ()


STAIN_OVER_NOTHING = "waterborne-two-part"


def test_what_a_rule_asks_that_is_no_clock_is_waited_for_as_the_story_found_it():
    """Wood that was wetted dries before it is sanded: so long after the water, whenever that is."""
    story = in_label_air()
    story.part("door", SAND, Operation.RAISE_GRAIN, SAND, WATERBORNE, species="ash")
    made = compiled(story)
    raised, sand = made.shop.tasks[1:3]
    assert after(sand, 1) >= FACTS.hands_on.wet_wood_min.low
    assert [found.rule for _, found in made.once] == ["wood-wetted"]
    assert raised.minutes > 0


def test_plans_of_a_compiled_shop_pass_the_bench():
    story = in_label_air()
    story.part("door", SAND, SHELLAC, SCUFF, WATERBORNE, WATERBORNE, pieces=2, edges=("edge",),
               faces=("back", "front"), species="oak")  # fmt: skip
    story.part("top", SAND, VARNISH, VARNISH, species="cherry")
    made = made_of(story)
    shop = made.compiled()
    for dice in range(4):
        found = laid_out(shop.shop, dice)
        assert found.is_whole
        assert [t for t in told_of(made, shop, found) if t.against or t.is_late] == []


def test_lags_put_together():
    table = tuple(QUARTER * q + 100 for q in range(8))
    assert later_of(30, 40) == 40
    assert later_of(table, 60) == table
    assert sooner_of(table, 60) == tuple(QUARTER * q + 60 for q in range(8))
    assert begun_before(120, 20) == 100
    assert begun_before(NEVER, 20) == NEVER
    counted = begun_before(table, 30)
    assert all(waits(counted, end) == end + 70 for end in range(30, 7 * QUARTER))
    assert closes(table, 20) == 120


def test_minutes_are_counted_from_a_quarter_hour():
    origin = origin_of(at(0.1), at(48) - at(0))
    assert origin.moment == at(0)
    assert origin.up(at(0.1)) == 6
    assert (origin.up(at(1.001)), origin.down(at(1.999))) == (61, 119)
    assert origin.at(90) == at(1.5)
