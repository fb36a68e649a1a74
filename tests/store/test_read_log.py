"""Reading for some pieces gives what the whole log says of them, and the air they need."""

from __future__ import annotations

from conftest import NOW, Bench, hours_ago
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from finishlog.core.air.psychrometrics import Air
from finishlog.core.log.entries import AnyEntry, Joined, Moved, RagsEvent, Reading, Work
from finishlog.core.log.words import Operation, RagsDeed
from finishlog.store.log.read_log import read_log
from finishlog.store.schema import rows


def entries(bench: Bench, pieces: list[int] | None = None) -> tuple[AnyEntry, ...]:
    with bench.db.reading() as connection:
        return read_log(connection, pieces).entries


def reading(bench: Bench, hours: float) -> int:
    with bench.db.writing("air", "air 17 58", NOW, "UTC") as ledger:
        return ledger.record(Reading(when=hours_ago(hours), room=bench.room, air=Air(17, 58)))


def touches(entry: AnyEntry, pieces: set[int]) -> bool:
    reached = {target.piece for target in entry.targets}
    if isinstance(entry, Moved):
        reached |= entry.pieces
    if isinstance(entry, Joined):
        reached |= {entry.into, *entry.members}
    return bool(reached & pieces)


def busy_evening(bench: Bench) -> None:
    """Coats, a move and a glue-up, two of them corrected."""
    bench.coat("doors", hours_ago(30))
    side = bench.coat("sides", hours_ago(29))
    with bench.db.writing("log", "", NOW, "UTC") as ledger:
        ledger.record(
            Moved(when=hours_ago(9), pieces=frozenset(bench.pieces("sides")), room=bench.room)
        )
        case, sides = bench.pieces("case"), bench.pieces("sides")
        ledger.record(Joined(when=hours_ago(8), into=case[0], members=frozenset(sides)))
        ledger.record(
            Work(
                when=hours_ago(7),
                targets=bench.targets("case"),
                operation=Operation.SAND,
                grit="240",
            )
        )
        bench.coat_in(ledger, "sides", hours_ago(28), supersedes=side)
    bench.coat("case", hours_ago(5))
    bench.coat("doors", hours_ago(4))
    bench.undo(6)


def test_some_pieces_get_what_the_whole_log_says_of_them(bench: Bench):
    busy_evening(bench)
    whole = entries(bench)
    for part in ("doors", "sides", "case"):
        pieces = bench.pieces(part)
        expected = tuple(entry for entry in whole if touches(entry, set(pieces)))
        assert expected
        assert entries(bench, pieces) == expected


def test_no_pieces_have_no_entries(bench: Bench):
    busy_evening(bench)
    assert entries(bench, []) == ()


def test_many_ids_are_asked_in_shares(bench: Bench, monkeypatch):
    busy_evening(bench)
    pieces = [piece for part in bench.shop().parts for piece in bench.pieces(part.name)]
    at_once = entries(bench, pieces)
    monkeypatch.setattr(rows, "_AT_ONCE", 1)
    assert entries(bench, pieces) == at_once == entries(bench)


def test_the_air_of_two_days_before_the_first_coat_comes_along(bench: Bench):
    bench.coat("doors", hours_ago(24))
    bench.coat("sides", hours_ago(240))
    long_before = reading(bench, 24 + 49)
    day_before = reading(bench, 24 + 47)
    tonight = reading(bench, 1)
    found = entries(bench, bench.pieces("doors"))
    assert [e.id for e in found if isinstance(e, Reading)] == [day_before, tonight]
    whole = [e.id for e in entries(bench) if isinstance(e, Reading)]
    assert whole == [long_before, day_before, tonight]


def test_without_a_coat_the_latest_air_is_still_known(bench: Bench):
    reading(bench, 1000)
    latest = reading(bench, 100)
    assert [entry.id for entry in entries(bench, bench.pieces("doors"))] == [latest]


def test_a_reading_corrected_to_another_day_is_not_read_twice(bench: Bench):
    bench.coat("doors", hours_ago(24))
    wrong_day = reading(bench, 1)
    with bench.db.writing("amend", "", NOW, "UTC") as ledger:
        air = Air(9, 80)
        ledger.record(Reading(when=hours_ago(500), room=bench.room, air=air), supersedes=wrong_day)
    assert not [e for e in entries(bench, bench.pieces("doors")) if isinstance(e, Reading)]


def test_rags_come_along_with_any_pieces(bench: Bench):
    bench.coat("doors", hours_ago(3))
    with bench.db.writing("rags", "rags spread", NOW, "UTC") as ledger:
        event = ledger.record(RagsEvent(when=hours_ago(2), deed=RagsDeed.SPREAD))
    found = entries(bench, bench.pieces("doors"))
    assert [e.id for e in found if isinstance(e, RagsEvent)] == [event]


def test_one_zone_finds_what_reached_it(bench: Bench):
    coat = bench.coat("doors")
    bench.coat("sides")
    with bench.db.reading() as connection:
        log = read_log(connection)
    for target in bench.targets("doors"):
        assert [entry.id for entry in log.reaching(target)] == [coat]


# Every example writes to the disk: how long that takes proves nothing.
@settings(
    max_examples=20, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(st.lists(st.integers(-500, 500), min_size=1, max_size=6))
def test_the_order_is_that_of_the_work_not_of_the_typing(bench: Bench, hours: list[int]):
    for each in hours:
        bench.coat("doors", hours_ago(500 + each))
    times = [entry.when.latest for entry in entries(bench)]
    assert times == sorted(times)
