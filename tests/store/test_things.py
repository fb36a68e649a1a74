"""What there is comes back as it was set up, as it holds at the moment asked."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest
from conftest import NOW, Bench

from finishlog.core.air.psychrometrics import Air
from finishlog.core.finish.classes import Figure, RecoatWindow, WindowKind
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Operation
from finishlog.core.shop.hours import WeeklyHours
from finishlog.core.shop.things import FaceKind, Project, Room, Step, ThingKind
from finishlog.errors import UsageFault
from finishlog.store.things.add import (
    NewPart,
    add_part,
    add_product,
    add_project,
    add_room,
    add_steps,
    assign_steps,
)
from finishlog.store.things.archive import archive
from finishlog.store.things.labels import put_label_figure, put_label_window
from finishlog.store.things.read_shop import read_schedules, read_shop
from finishlog.store.things.usual import put_setting, put_shop_hours, put_usual_day, read_settings

WEEK_AGO = NOW - timedelta(days=7)
RECOAT = Figure(4, 5, 6, "your can", Air(21, 50), "as printed")


def changing(bench: Bench):
    return bench.db.writing("edit", "", NOW, "Europe/Berlin")


def test_a_part_comes_back_with_its_pieces_faces_and_zones(bench: Bench):
    doors = bench.part("doors")
    assert (doors.path, doors.species, doors.is_board) == ("cabinet/doors", "ash", False)
    assert [piece.number for piece in doors.pieces] == [1, 2]
    front, back = doors.faces
    assert (front.name, front.kind) == ("front", FaceKind.SHOW)
    assert [(zone.name, zone.species) for zone in front.zones] == [("", None), ("inlay", "walnut")]
    assert (back.kind, len(back.zones)) == (FaceKind.HIDDEN, 1)


def test_an_assembly_says_what_it_needs_and_where_it_stands(bench: Bench):
    case, sides = bench.part("case"), bench.part("sides")
    assert [(need.part, need.count) for need in case.needs] == [(sides.id, 2)]
    assert case.room == bench.room


def test_a_project_keeps_its_due_date_and_note(bench: Bench):
    due = datetime(2026, 12, 5, 12, tzinfo=UTC)
    with changing(bench) as ledger:
        stools = add_project(ledger.connection, "stools", NOW, due=due, note="four of them")
    assert bench.shop().projects[-1] == Project(stools, "stools", due, "four of them")


SCHEDULE = (
    Step(1, Operation.SAND, note="180"),
    Step(2, Operation.COAT, product=1, faces=("back", "front: end grain, „quoted“")),
)


def test_steps_are_copied_to_a_part_and_a_later_change_does_not_reach_back(bench: Bench):
    with changing(bench) as ledger:
        add_steps(ledger.connection, "plain", SCHEDULE)
        (copied,) = [s.steps for s in read_schedules(ledger.connection)]
        assign_steps(ledger.connection, bench.part("doors").id, copied, "plain")
        add_steps(ledger.connection, "plainer", SCHEDULE[:1])
    assert bench.part("doors").steps == SCHEDULE
    assert bench.part("doors").steps_name == "plain"
    with bench.db.reading() as connection:
        known = {s.name: s.steps for s in read_schedules(connection)}
    assert known == {"plain": SCHEDULE, "plainer": SCHEDULE[:1]}


def test_assigning_again_replaces_the_steps_of_that_part_only(bench: Bench):
    doors, sides = bench.part("doors").id, bench.part("sides").id
    with changing(bench) as ledger:
        assign_steps(ledger.connection, doors, SCHEDULE, "plain")
        assign_steps(ledger.connection, sides, SCHEDULE, "plain")
        assign_steps(ledger.connection, doors, SCHEDULE[:1])
    assert (bench.part("doors").steps, bench.part("doors").steps_name) == (SCHEDULE[:1], "")
    assert bench.part("sides").steps == SCHEDULE


def test_a_sample_board_is_a_part_with_steps_from_the_start(bench: Bench):
    with changing(bench) as ledger:
        project = bench.shop().projects[0].id
        board = NewPart("board", species="ash", steps=SCHEDULE, is_board=True)
        add_part(ledger.connection, project, board, NOW)
    assert bench.part("board").is_board
    assert bench.part("board").steps == SCHEDULE


def test_a_label_holds_from_its_date_on(bench: Bench):
    later = Figure(8, 9, 10, "your can")
    with changing(bench) as ledger:
        put_label_figure(ledger.connection, bench.product, Stage.RECOAT, RECOAT, WEEK_AGO)
        put_label_figure(ledger.connection, bench.product, Stage.RECOAT, later, NOW)
    product = bench.product
    before = WEEK_AGO - timedelta(seconds=1)
    assert bench.shop(before).products[product].label == {}
    assert bench.shop(WEEK_AGO).products[product].label == {Stage.RECOAT: RECOAT}
    assert bench.shop(NOW).products[product].label == {Stage.RECOAT: later}


def test_of_two_labels_of_one_moment_the_last_typed_holds(bench: Bench):
    with changing(bench) as ledger:
        put_label_figure(ledger.connection, bench.product, Stage.SAND, RECOAT, NOW)
        put_label_figure(ledger.connection, bench.product, Stage.TOUCH, RECOAT, NOW)
        put_label_figure(ledger.connection, bench.product, Stage.SAND, None, NOW)
    assert bench.shop().products[bench.product].label == {Stage.TOUCH: RECOAT}


@pytest.mark.parametrize(
    "window",
    [
        RecoatWindow(WindowKind.MELTS_IN, "your can"),
        RecoatWindow(WindowKind.CLOSES, "your can", RECOAT, "then wait for full hardness"),
    ],
    ids=["melts in", "closes"],
)
def test_a_label_window_comes_back_and_can_be_taken_back(window: RecoatWindow, bench: Bench):
    with changing(bench) as ledger:
        put_label_window(ledger.connection, bench.product, window, WEEK_AGO)
        put_label_window(ledger.connection, bench.product, None, NOW)
    assert bench.shop(WEEK_AGO).products[bench.product].label_window == window
    assert bench.shop(NOW).products[bench.product].label_window is None


def test_the_coldest_night_holds_from_its_date_on(bench: Bench):
    with changing(bench) as ledger:
        put_usual_day(ledger.connection, bench.room, WEEK_AGO, coldest_c=12.5)
        put_usual_day(ledger.connection, bench.room, NOW, coldest_c=6.0)
    room = bench.room
    assert bench.shop(WEEK_AGO - timedelta(days=1)).rooms[room] == Room(room, "finishing room")
    assert bench.shop(WEEK_AGO).rooms[room].coldest_night_c == 12.5
    assert bench.shop(NOW).rooms[room].coldest_night_c == 6.0


MONDAY_EVENING = (WeeklyHours(0, 18 * 60, 23 * 60),)
SATURDAY = (WeeklyHours(5, 9 * 60, 13 * 60), WeeklyHours(5, 20 * 60, 60))


def test_shop_hours_keep_every_week_with_its_date(bench: Bench):
    with changing(bench) as ledger:
        put_shop_hours(ledger.connection, SATURDAY, NOW)
        put_shop_hours(ledger.connection, MONDAY_EVENING, WEEK_AGO)
        put_shop_hours(ledger.connection, (), NOW + timedelta(days=30))
    assert bench.shop().hours.patterns == (
        (WEEK_AGO, MONDAY_EVENING),
        (NOW, SATURDAY),
        (NOW + timedelta(days=30), ()),
    )


def test_of_two_weeks_set_for_one_moment_the_last_typed_holds(bench: Bench):
    with changing(bench) as ledger:
        put_shop_hours(ledger.connection, SATURDAY, NOW)
        put_shop_hours(ledger.connection, MONDAY_EVENING, NOW)
    assert bench.shop().hours.patterns == ((NOW, MONDAY_EVENING),)


def test_a_setting_is_replaced_and_the_time_zone_is_the_shops(bench: Bench):
    assert bench.shop().hours.time_zone == "UTC"
    with changing(bench) as ledger:
        put_setting(ledger.connection, "time_zone", "Asia/Tokyo")
        put_setting(ledger.connection, "time_zone", "Europe/Berlin")
        assert read_settings(ledger.connection) == {"time_zone": "Europe/Berlin"}
    assert bench.shop().hours.time_zone == "Europe/Berlin"


def test_what_is_archived_leaves_the_daily_screens_and_can_still_be_read(bench: Bench):
    with changing(bench) as ledger:
        archive(ledger, ThingKind.PART, bench.part("doors").id, NOW)
    assert [part.name for part in bench.shop().parts] == ["sides", "case"]
    with changing(bench) as ledger:
        archive(ledger, ThingKind.PROJECT, bench.shop().projects[0].id, NOW)
    assert (bench.shop().projects, bench.shop().parts) == ((), ())
    with bench.db.reading() as connection:
        everything = read_shop(connection, NOW, include_archived=True)
    assert [part.path for part in everything.parts] == [
        "cabinet/doors",
        "cabinet/sides",
        "cabinet/case",
    ]


def test_a_name_that_is_taken_is_refused_in_words(bench: Bench):
    cabinet = bench.shop().projects[0].id
    with changing(bench) as ledger:
        adding = ledger.connection
        for add in (
            lambda: add_project(adding, "cabinet", NOW),
            lambda: add_part(adding, cabinet, NewPart("doors"), NOW),
            lambda: add_product(adding, "varnish", "oil-varnish", NOW),
            lambda: add_room(adding, "finishing room"),
        ):
            with pytest.raises(UsageFault, match="there is already a"):
                add()


def test_the_same_part_name_may_stand_in_another_project(bench: Bench):
    with changing(bench) as ledger:
        other = add_project(ledger.connection, "chest", NOW)
        add_part(ledger.connection, other, NewPart("doors"), NOW)
    assert [part.path for part in bench.shop().parts][-1] == "chest/doors"
