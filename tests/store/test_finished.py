"""Which finishes are found to have gone wrong, on which wood, and what is read of them."""

from __future__ import annotations

from conftest import NOW, Bench, hours_ago
from msgspec.structs import replace

from finishlog.core.air.psychrometrics import Air
from finishlog.core.log.entries import Check, Entry, Fault, Reading, Review, Stripped
from finishlog.core.log.words import FaultKind, Found, Outcome, Stripping, Test
from finishlog.core.shop.things import ThingKind
from finishlog.store.log.finished import read_finished, reviewed, went_wrong
from finishlog.store.things.add import NewZone
from finishlog.store.things.archive import archive
from finishlog.store.things.edit import divide_zone

PEELS = [FaultKind.PEEL]


def told(bench: Bench, *entries: Entry, on: str = "doors", supersedes: int | None = None) -> int:
    """Record some entries of a part, the first an hour after the coat."""
    with bench.db.writing("review", "", NOW, "UTC") as ledger:
        for each in entries:
            last = ledger.record(replace(each, targets=bench.targets(on)), supersedes=supersedes)
    return last


def failed(bench: Bench) -> set[tuple[int, int, str | None]]:
    with bench.db.reading() as connection:
        return {tuple(each) for each in went_wrong(connection, PEELS)}


REVIEW = Review(when=hours_ago(1), outcome=Outcome.FAILED)


def test_what_went_wrong_is_found_with_the_wood_of_each_zone(bench: Bench):
    first, second = bench.pieces("doors")
    fault = told(bench, Fault(when=hours_ago(2), what=FaultKind.PEEL))
    told(bench, Fault(when=hours_ago(2), what=FaultKind.DUST), on="sides")
    told(bench, replace(REVIEW, outcome=Outcome.GOOD), on="sides")
    told(bench, Check(when=hours_ago(2), test=Test.SCRATCH, found=Found.HOLDS), on="sides")
    assert failed(bench) == {(fault, p, w) for p in (first, second) for w in ("ash", "walnut")}


def test_a_failed_review_a_film_that_flakes_and_one_that_came_off_are_found(bench: Bench):
    found = {
        told(bench, entry, on="sides")
        for entry in (
            REVIEW,
            Check(when=hours_ago(2), test=Test.SCRATCH, found=Found.FLAKES),
            Stripped(when=hours_ago(2), operation=Stripping.STRIP),
        )
    }
    assert {entry for entry, _, _ in failed(bench)} == found


def test_good_and_fair_reviews_are_found_apart_the_newest_alone(bench: Bench):
    ids = [told(bench, replace(REVIEW, outcome=each), on="sides") for each in Outcome]
    with bench.db.reading() as connection:
        assert {each.entry for each in reviewed(connection)} == set(ids[:2])


def test_what_was_put_away_is_read_as_it_holds_now_and_without_the_air(bench: Bench):
    bench.coat("sides", hours_ago(5))
    coat = bench.coat("doors", hours_ago(5))
    first = told(bench, REVIEW)
    now_is = told(bench, replace(REVIEW, outcome=Outcome.FAIR), supersedes=first)
    with bench.db.writing("air", "", NOW, "UTC") as ledger:
        ledger.record(Reading(when=hours_ago(3), room=bench.room, air=Air(20, 50)))
        archive(ledger, ThingKind.PART, bench.part("doors").id, NOW)
        found = list(read_finished(ledger.connection, {each[1] for each in failed(bench)}))
    assert {tuple(e.id for e in each.entries) for each in found} == {(coat, now_is)}
    assert sorted({each.wood for each in found}) == ["ash", "walnut"]


def test_a_face_that_was_divided_since_is_found_by_the_wood_of_each_zone(bench: Bench):
    fault = told(bench, Fault(when=hours_ago(2), what=FaultKind.PEEL))
    part = bench.part("doors")
    back = next(face for face in part.faces if face.name == "back")
    with bench.db.writing("part edit", "", NOW, "UTC") as ledger:
        into = [NewZone("field"), NewZone("string", "holly")]
        divide_zone(ledger, part, back, back.zones[0], into)
    assert {wood for entry, _, wood in failed(bench) if entry == fault} == {
        "ash", "holly", "walnut"
    }  # fmt: skip
    with bench.db.reading() as connection:
        found = list(read_finished(connection, bench.pieces("doors")))
    assert {each.wood for each in found} == {"ash", "holly", "walnut"}


def test_what_is_recorded_meanwhile_is_found(bench: Bench):
    with bench.db.writing("review", "", NOW, "UTC") as ledger:
        connection, targets = ledger.connection, bench.targets("sides")
        assert (went_wrong(connection, PEELS), reviewed(connection)) == ([], [])
        bad = ledger.record(replace(REVIEW, targets=targets))
        good = ledger.record(replace(REVIEW, outcome=Outcome.GOOD, targets=targets))
        assert {each.entry for each in went_wrong(connection, PEELS)} == {bad}
        assert {each.entry for each in reviewed(connection)} == {good}


def test_no_look_goes_through_all_that_was_ever_reached(bench: Bench):
    """Ten years behind may cost a start nothing: entries are found by their keys."""
    asked: list[str] = []
    with bench.db.reading() as connection:
        raw = connection.connection.driver_connection
        assert raw is not None
        raw.set_trace_callback(asked.append)
        went_wrong(connection, PEELS)
        reviewed(connection)
        raw.set_trace_callback(None)
        for statement in asked:
            plan = connection.exec_driver_sql(f"EXPLAIN QUERY PLAN {statement}").all()
            steps = [row[3] for row in plan]
            assert any("SEARCH entry_target" in step for step in steps), steps
            assert not [step for step in steps if step.startswith("SCAN entry")]
    assert len(asked) == 2
