"""Nothing is overwritten: what is corrected or taken back stays, and what holds is worked out."""

from __future__ import annotations

from conftest import NOW, Bench, hours_ago
from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.log.entries import Work
from finishlog.core.log.words import Operation
from finishlog.store.log.in_force import Fate, Link, Withdrawal, fates, withdrawn_acts
from finishlog.store.log.read_history import HistoryRow, read_history
from finishlog.store.log.read_log import read_log


def holding(bench: Bench, pieces: list[int] | None = None) -> list[int]:
    with bench.db.reading() as connection:
        return [entry.id for entry in read_log(connection, pieces).entries]


def history(bench: Bench, pieces: list[int] | None = None) -> list[HistoryRow]:
    with bench.db.reading() as connection:
        return [row for row in read_history(connection, pieces) if row.entry is not None]


def amend(bench: Bench, entry: int, part: str = "doors", hours: float = 2) -> tuple[int, int]:
    with bench.db.writing("amend", f"amend {entry}", NOW, "Europe/Berlin") as ledger:
        amended = bench.coat_in(ledger, part, hours_ago(hours), supersedes=entry)
    return amended, ledger.act_id


def test_an_amended_coat_holds_in_its_new_form_only(bench: Bench):
    coat = bench.coat()
    amended, _ = amend(bench, coat)
    assert holding(bench) == [amended]
    old, new = history(bench)
    assert (old.superseded_by, old.in_force) == (amended, False)
    assert (new.supersedes, new.in_force) == (coat, True)


def test_an_undone_act_holds_nothing_and_stays_in_the_history(bench: Bench):
    coat = bench.coat()
    undo = bench.undo(2)
    assert holding(bench) == []
    first, taken_back = history(bench)
    assert (first.entry, first.withdrawn_by, first.in_force) == (coat, undo, False)
    assert (taken_back.withdraws, taken_back.in_force) == (2, True)


def test_an_undo_can_be_undone(bench: Bench):
    coat = bench.coat()
    undo = bench.undo(2)
    redo = bench.undo(undo)
    assert holding(bench) == [coat]
    assert [row.withdrawn_by for row in history(bench)] == [None, redo, None]
    bench.undo(redo)
    assert holding(bench) == []


def test_an_act_undone_twice_needs_both_undone(bench: Bench):
    coat = bench.coat()
    once, twice = bench.undo(2), bench.undo(2)
    bench.undo(once)
    assert holding(bench) == []
    bench.undo(twice)
    assert holding(bench) == [coat]


def test_undoing_an_amendment_brings_back_what_it_corrected(bench: Bench):
    coat = bench.coat()
    amended, act = amend(bench, coat)
    again, _ = amend(bench, amended, hours=3)
    assert holding(bench) == [again]
    bench.undo(act)
    assert holding(bench) == [again]
    bench.undo(act + 1)
    assert holding(bench) == [coat]


def test_a_coat_that_never_happened_takes_its_amendments_along(bench: Bench):
    amend(bench, bench.coat())
    undo = bench.undo(2)
    assert holding(bench) == []
    assert [row.withdrawn_by for row in history(bench)][:2] == [undo, undo]


def test_amended_to_another_part_it_holds_there_and_no_longer_here(bench: Bench):
    meant_sides, _ = amend(bench, bench.coat("doors"), "sides")
    assert holding(bench, bench.pieces("doors")) == []
    assert holding(bench, bench.pieces("sides")) == [meant_sides]
    assert len(history(bench, bench.pieces("doors"))) == 2


def test_an_amendment_keeps_its_place_among_entries_of_the_same_minute(bench: Bench):
    with bench.db.writing("log", "log doors", NOW, "Europe/Berlin") as ledger:
        denib = ledger.record(
            Work(when=hours_ago(2), targets=bench.targets("doors"), operation=Operation.DENIB)
        )
        coat = bench.coat_in(ledger, when=hours_ago(2))
    assert holding(bench) == [denib, coat]
    with bench.db.writing("amend", "amend", NOW, "Europe/Berlin") as ledger:
        finer = ledger.record(
            Work(when=hours_ago(2), targets=bench.targets("doors"), operation=Operation.DENIB),
            supersedes=denib,
        )
    assert holding(bench) == [finer, coat]


def test_an_entry_made_late_lands_where_it_belongs(bench: Bench):
    evening = bench.coat(when=hours_ago(2))
    two_days_before = bench.coat(when=hours_ago(50))
    same_time_but_first = bench.coat(when=hours_ago(2, tie=-1))
    assert holding(bench) == [two_days_before, same_time_but_first, evening]


def test_the_history_of_a_part_shows_what_took_its_entries_back(bench: Bench):
    bench.coat("doors")
    bench.coat("sides")
    undo = bench.undo(2)
    bench.undo(3)
    redo = bench.undo(undo)
    assert [row.act for row in history(bench, bench.pieces("doors"))] == [2, undo, redo]


def stands(act: int, withdrawals: list[Withdrawal]) -> bool:
    """The rule as one would say it: nothing that stands takes it back."""
    return not any(each.act == act and stands(each.by, withdrawals) for each in withdrawals)


ACTS = 8
UNDOS = st.lists(
    st.tuples(st.integers(2, ACTS), st.integers(1, ACTS - 1)).filter(lambda by: by[0] > by[1]),
    max_size=12,
).map(lambda pairs: [Withdrawal(entry, by, act) for entry, (by, act) in enumerate(pairs)])


@given(UNDOS)
def test_an_act_stands_unless_something_that_stands_took_it_back(undos: list[Withdrawal]):
    withdrawn = withdrawn_acts(undos)
    assert {act for act in range(1, ACTS + 1) if not stands(act, undos)} == set(withdrawn)
    assert all(stands(by, undos) for by in withdrawn.values())


@st.composite
def logs(draw: st.DrawFn) -> list[Link]:
    links: list[Link] = []
    for entry in range(1, draw(st.integers(1, 10)) + 1):
        earlier = [None, *(link.entry for link in links)]
        links.append(Link(entry, entry, draw(st.sampled_from(earlier))))
    return links


@given(logs(), st.sets(st.integers(1, 10)))
def test_of_an_entry_and_its_amendments_at_most_one_holds(links: list[Link], gone: set[int]):
    withdrawn = dict.fromkeys(gone, 99)
    found = fates(links, withdrawn)
    assert found.keys() == {link.entry for link in links}
    for first in {fate.first for fate in found.values()}:
        chain = {entry: fate for entry, fate in found.items() if fate.first == first}
        holds = [entry for entry, fate in chain.items() if fate.in_force]
        assert holds == ([] if first in gone else [max(chain.keys() - gone)])


def test_a_log_without_corrections_holds_whole():
    assert fates([Link(1, 1, None), Link(2, 1, None)], {}) == {1: Fate(1), 2: Fate(2)}
