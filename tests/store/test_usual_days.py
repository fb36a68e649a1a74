"""A room's usual days come back as they hold at the moment asked, season by season."""

from __future__ import annotations

from datetime import timedelta

from conftest import NOW, Bench

from finishlog.core.air.usual_day import EVERY_DAY, UsualDay, UsualHour
from finishlog.store.things.usual import NO_HEATING, put_usual_day, read_usual_days

WEEK_AGO = NOW - timedelta(days=7)
WINTER = (11, 3)
MORNING = UsualHour(420, 12.0)
EVENING = UsualHour(1020, 18.0, 55.0)


def test_a_later_day_of_the_same_season_replaces_the_earlier_from_its_date_on(bench: Bench):
    room = bench.room
    with bench.db.writing("edit", "", NOW, "Europe/Berlin") as ledger:
        put_usual_day(ledger.connection, room, WEEK_AGO, hours=[MORNING, EVENING])
        put_usual_day(ledger.connection, room, WEEK_AGO, hours=[MORNING], season=WINTER)
        put_usual_day(ledger.connection, room, NOW, hours=[EVENING])
    with bench.db.reading() as connection:
        before = read_usual_days(connection, WEEK_AGO - timedelta(seconds=1))
        then = read_usual_days(connection, WEEK_AGO)
        now = read_usual_days(connection, NOW)
    assert before == {}
    winter = UsualDay((MORNING,), WINTER, valid_from=WEEK_AGO)
    assert then[room] == (winter, UsualDay((MORNING, EVENING), valid_from=WEEK_AGO))
    replaced = UsualDay((MORNING, EVENING), valid_from=WEEK_AGO, replaced_at=NOW)
    assert now[room] == (UsualDay((EVENING,), valid_from=NOW), winter, replaced), "then stays then"
    assert bench.shop().rooms[room].usual == now[room]


def test_what_is_not_said_stays_as_it_was(bench: Bench):
    room = bench.room
    with bench.db.writing("edit", "", NOW, "Europe/Berlin") as ledger:
        put_usual_day(ledger.connection, room, WEEK_AGO, coldest_c=9.0)
        put_usual_day(ledger.connection, room, WEEK_AGO, hours=[MORNING])
        put_usual_day(ledger.connection, room, WEEK_AGO, heated=(960, 1380, 18.0, (0, 1, 2)))
    with bench.db.reading() as connection:
        (day,) = read_usual_days(connection, NOW)[room]
    assert day == UsualDay((MORNING,), None, (960, 1380), 18.0, (0, 1, 2), 9.0, WEEK_AGO)


def test_a_season_takes_the_rest_of_the_year_where_it_says_nothing(bench: Bench):
    room = bench.room
    with bench.db.writing("edit", "", NOW, "Europe/Berlin") as ledger:
        put_usual_day(
            ledger.connection, room, WEEK_AGO, hours=[MORNING], heated=(960, 0, None, EVERY_DAY)
        )
        put_usual_day(ledger.connection, room, WEEK_AGO, hours=[EVENING], season=WINTER)
        put_usual_day(ledger.connection, room, WEEK_AGO, heated=NO_HEATING, season=(6, 8))
    with bench.db.reading() as connection:
        summer, winter, _ = read_usual_days(connection, NOW)[room]
    assert (winter.hours, winter.heated) == ((EVENING,), (960, 0))
    assert (summer.hours, summer.heated) == ((MORNING,), None)
