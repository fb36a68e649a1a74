"""A zone that was divided: its record is that of each of its zones, and the log is as it was."""

from __future__ import annotations

from collections.abc import Sequence

from conftest import NOW, Bench, hours_ago
from sqlalchemy import select
from test_names_sqlite import queried

from finishlog.core.log.entries import Check, Target
from finishlog.core.log.words import Found, Test
from finishlog.core.shop.things import Step, Zone
from finishlog.store.log.pace_coats import CheckedCoat, checked_coats, failed_lately
from finishlog.store.log.read_log import read_log
from finishlog.store.names_sqlite import read_names
from finishlog.store.schema.log import entry_target
from finishlog.store.things.add import NewZone, assign_steps
from finishlog.store.things.edit import divide_zone


def zones(bench: Bench, face: str = "back") -> dict[str, Zone]:
    of = next(f for f in bench.part("doors").faces if f.name == face)
    return {zone.name: zone for zone in of.zones}


def divide(bench: Bench, zone: str, *into: str, face: str = "back") -> None:
    part = bench.part("doors")
    of = next(f for f in part.faces if f.name == face)
    with bench.db.writing("part edit", "", NOW, "UTC") as ledger:
        divide_zone(ledger, part, of, zones(bench, face)[zone], [NewZone(name) for name in into])


def check(bench: Bench, zone: str, hours: float, found: Found = Found.TACKY) -> int:
    piece, of = bench.pieces("doors")[0], zones(bench)[zone].id
    targets = frozenset({Target(piece, of)})
    with bench.db.writing("check", "", NOW, "UTC") as ledger:
        return ledger.record(
            Check(when=hours_ago(hours), targets=targets, test=Test.TOUCH, found=found)
        )


def reached(bench: Bench, entry: int) -> set[int]:
    """The zones of the back that an entry reached."""
    mine = {zone.id for zone in zones(bench).values()}
    with bench.db.reading() as connection:
        log = read_log(connection, bench.pieces("doors"))
    return {t.zone for e in log.entries if e.id == entry for t in e.targets} & mine


def named(bench: Bench, *names: str) -> set[int]:
    return {zone.id for name, zone in zones(bench).items() if name in names}


def rows(bench: Bench) -> Sequence[object]:
    with bench.db.reading() as connection:
        return connection.execute(select(entry_target)).all()


def checked(bench: Bench) -> list[CheckedCoat]:
    with bench.db.reading() as connection:
        return list(checked_coats(connection, [bench.product], 24))


def test_what_was_logged_on_the_whole_is_of_each_and_nothing_is_written(bench: Bench):
    coat = bench.coat("doors", hours_ago(30))
    before = rows(bench)
    divide(bench, "", "left", "right")
    assert list(zones(bench)) == ["left", "right"]
    assert reached(bench, coat) == named(bench, "left", "right")
    assert rows(bench) == before


def test_divided_again_one_keeps_its_name_and_place_and_the_other_what_is_its_own(bench: Bench):
    coat = bench.coat("doors", hours_ago(30))
    divide(bench, "", "left", "right")
    left, right = check(bench, "left", 20), check(bench, "right", 19)
    divide(bench, "left", "left", "strip")
    assert list(zones(bench)) == ["left", "strip", "right"]
    assert reached(bench, coat) == named(bench, "left", "strip", "right")
    assert reached(bench, left) == named(bench, "left", "strip")
    assert reached(bench, right) == named(bench, "right")
    assert reached(bench, check(bench, "strip", 18)) == named(bench, "strip")


def test_the_wood_of_a_zone_is_that_of_its_zones(bench: Bench):
    divide(bench, "inlay", "inlay", "stringing", face="front")
    assert zones(bench, "front")["stringing"].species == "walnut"


def test_steps_that_name_the_zone_name_its_zones(bench: Bench):
    part = bench.part("doors")
    steps = [
        Step(1, "scuff", None, ("front/inlay", "back")),  # type: ignore[arg-type]
        Step(2, "scuff", None, ("back",)),  # type: ignore[arg-type]
    ]
    with bench.db.writing("part steps", "", NOW, "UTC") as ledger:
        assign_steps(ledger.connection, part.id, steps, "ours")
    divide(bench, "inlay", "inlay", "rim", face="front")
    divide(bench, "", "left", "right")
    named = [step.faces for step in bench.part("doors").steps]
    assert named == [("front/inlay", "front/rim", "back"), ("back",)]
    assert bench.part("doors").steps_name == "ours"


def test_a_pace_is_learnt_once_from_before_and_after(bench: Bench):
    """The coat went on the whole, its checks came before and after, on one half and the other."""
    coat = bench.coat("doors", hours_ago(30))
    check(bench, "", 25)
    divide(bench, "", "left", "right")
    check(bench, "left", 20, Found.DRY)
    check(bench, "right", 15)
    (found,) = checked(bench)
    assert found.entry == coat
    assert {t.zone for t in found.targets} == named(bench, "left", "right")
    assert found.end == hours_ago(15).latest


def test_a_failed_check_on_a_new_zone_finds_the_coat_of_the_whole(bench: Bench):
    bench.coat("doors", hours_ago(30))
    divide(bench, "", "left", "right")
    check(bench, "right", 15)
    with bench.db.reading() as connection:
        assert failed_lately(connection, {bench.product}) == {bench.product}


def test_a_coat_told_late_is_found_by_a_check_of_the_whole(bench: Bench):
    check(bench, "", 15)
    divide(bench, "", "left", "right")
    coat = bench.coat("doors", hours_ago(30))
    assert [found.entry for found in checked(bench)] == [coat]


def test_the_next_coat_on_one_half_ends_what_that_tells(bench: Bench):
    bench.coat("doors", hours_ago(30))
    divide(bench, "", "left", "right")
    bench.coat("doors", hours_ago(20))
    check(bench, "left", 10)
    assert len(checked(bench)) == 1


def test_only_the_zones_there_are_now_are_offered(bench: Bench):
    divide(bench, "", "left", "right")
    divide(bench, "left", "left", "strip")
    assert read_names(bench.db.path) == queried(bench.db)
