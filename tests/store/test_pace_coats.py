"""Which coats tell of a pace, and how little of the log is read for them."""

from __future__ import annotations

from datetime import timedelta

from conftest import NOW, Bench, hours_ago
from sqlalchemy import func, select

from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.span import AirPoint
from finishlog.core.log.entries import AirImported, Check, Joined, Reading, Work
from finishlog.core.log.when import When
from finishlog.core.log.words import Found, Operation, Test
from finishlog.store.log.heads import with_assemblies
from finishlog.store.log.pace_coats import CheckedCoat, checked_coats, failed_lately
from finishlog.store.log.read_log import read_log
from finishlog.store.schema.log import act


def check(bench: Bench, part: str, hours: float, found: Found = Found.DRY) -> int:
    zones = bench.targets(part)
    with bench.db.writing("check", "", NOW, "UTC") as ledger:
        return ledger.record(
            Check(when=hours_ago(hours), targets=zones, test=Test.TOUCH, found=found)
        )


def sanded(bench: Bench, part: str, hours: float, operation: Operation = Operation.SAND) -> None:
    with bench.db.writing("log", "", NOW, "UTC") as ledger:
        ledger.record(Work(when=hours_ago(hours), targets=bench.targets(part), operation=operation))


def last_act(bench: Bench) -> int:
    with bench.db.reading() as connection:
        return connection.scalar(select(func.max(act.c.id)))


def checked(bench: Bench, newest: int = 24) -> list[CheckedCoat]:
    with bench.db.reading() as connection:
        return list(checked_coats(connection, [bench.product], newest))


def entries(bench: Bench, newest: int = 24) -> list[int]:
    return [coat.entry for coat in checked(bench, newest)]


def test_coats_that_were_checked_or_sanded_before_their_next_coat(bench: Bench):
    first = bench.coat("doors", hours_ago(100))
    second = bench.coat("doors", hours_ago(80))
    third = bench.coat("doors", hours_ago(60))
    bench.coat("sides", hours_ago(50))
    check(bench, "doors", 90)
    sanded(bench, "doors", 55)
    assert entries(bench) == [third, first]
    sanded(bench, "doors", 70, Operation.WIPE)
    assert second not in entries(bench)


def test_the_newest_checked_come_first_and_no_more_than_asked(bench: Bench):
    coats = []
    for n in range(5):
        coats.append(bench.coat("doors", hours_ago(100 - 10 * n)))
        check(bench, "doors", 95 - 10 * n)
    assert entries(bench, newest=3) == coats[:1:-1]


def test_one_zone_stands_for_all_with_the_same_checks(bench: Bench):
    coat = bench.coat("doors", hours_ago(30))
    check(bench, "doors", 20)
    check(bench, "doors", 10)
    (found,) = checked(bench)
    assert found.entry == coat
    assert len(found.targets) == 1
    assert (found.start, found.end) == (hours_ago(30).latest, hours_ago(10).latest)


def test_what_was_taken_back_or_corrected_is_seen_as_it_is_now(bench: Bench):
    coat = bench.coat("doors", hours_ago(30))
    with bench.db.writing("amend", "", NOW, "UTC") as ledger:
        amended = bench.coat_in(ledger, "doors", hours_ago(35), supersedes=coat)
    check(bench, "doors", 20)
    checked_in = last_act(bench)
    assert entries(bench) == [amended]
    # A coat that was a slip of the tongue lay over it for a while.
    bench.coat("doors", hours_ago(25))
    assert entries(bench) != [amended]
    bench.undo(last_act(bench))
    assert entries(bench) == [amended]
    bench.undo(checked_in)
    assert entries(bench) == []


def test_only_a_failed_check_sends_anybody_looking(bench: Bench):
    bench.coat("doors", hours_ago(30))
    check(bench, "doors", 20)
    check(bench, "doors", 18, Found.SMELLS)
    with bench.db.reading() as connection:
        assert failed_lately(connection, {bench.product}) == set()
    check(bench, "doors", 15, Found.TACKY)
    with bench.db.reading() as connection:
        assert failed_lately(connection, {bench.product, 99}) == {bench.product}


def test_an_assembly_comes_with_its_members(bench: Bench):
    case, sides = bench.pieces("case"), bench.pieces("sides")
    with bench.db.writing("log", "", NOW, "UTC") as ledger:
        ledger.record(Joined(when=hours_ago(8), into=case[0], members=frozenset(sides)))
    with bench.db.reading() as connection:
        assert with_assemblies(connection, sides[:1]) == {sides[0], case[0]}
        assert with_assemblies(connection, []) == set()


def test_only_the_air_of_a_stretch_and_two_days_before_it_is_read(bench: Bench):
    bench.coat("doors", hours_ago(100))
    points = [(NOW - timedelta(hours=h), Air(18, 50)) for h in range(400, 0, -1)]
    with bench.db.writing("air", "", NOW, "UTC") as ledger:
        for hours in (300, 149, 148, 120, 90, 89, 10):
            ledger.record(Reading(when=hours_ago(hours), room=bench.room, air=Air(17, 58)))
        span = When(points[0][0], points[-1][0])
        ledger.record_air(
            AirImported(when=span, room=bench.room, file_name="log.csv", count=len(points)), points
        )
    start, end = hours_ago(100).latest, hours_ago(90).latest
    with bench.db.reading() as connection:
        log = read_log(connection, bench.pieces("doors"), [(start, end), (start, start)])
        none = read_log(connection, bench.pieces("doors"), [])
    read = [e.when.latest for e in log.entries if isinstance(e, Reading)]
    assert read == [hours_ago(h).latest for h in (148, 120, 90)]
    logged: list[AirPoint] = list(log.logged_air[bench.room])
    assert (logged[0].at, logged[-1].at) == (start - timedelta(days=2), end)
    assert len(logged) == 59
    assert not any(isinstance(e, Reading | AirImported) for e in none.entries)
