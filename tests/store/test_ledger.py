"""What is logged comes back as it was logged; one command is one transaction."""

from __future__ import annotations

from collections.abc import Callable
from datetime import timedelta
from uuid import uuid4

import pytest
from conftest import FIGURES, NOW, Bench, hours_ago
from msgspec.structs import replace
from sqlalchemy.exc import IntegrityError

from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.span import AirPoint
from finishlog.core.finish.classes import Figure, FigureSet, Method, RecoatWindow, WindowKind
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import (
    AirImported,
    Away,
    Check,
    Cleaned,
    Coat,
    ContainerEvent,
    Entry,
    Fault,
    HandedOver,
    Heated,
    Joined,
    Moved,
    Note,
    Photo,
    PieceReading,
    RagsEvent,
    Reading,
    Respirator,
    Resumed,
    Review,
    SetAside,
    Stripped,
    Target,
    Work,
)
from finishlog.core.log.kinds import OF_THE_WORK, kind_of
from finishlog.core.log.when import Sureness, When, at
from finishlog.core.log.words import (
    ContainerDeed,
    FaultKind,
    Filter,
    Found,
    MaskKept,
    Operation,
    Outcome,
    RagsDeed,
    RespiratorDeed,
    Stripping,
    Test,
)
from finishlog.core.mixing.containers import ContainerKind
from finishlog.core.shop.things import Log
from finishlog.errors import NotFound, UsageFault
from finishlog.store.database import open_database
from finishlog.store.log.ledger import Ledger
from finishlog.store.log.read_history import HistoryRow, read_history, read_records
from finishlog.store.log.read_log import read_log
from finishlog.store.schema.rows import add_row
from finishlog.store.schema.things import container
from finishlog.store.schema.whole import metadata
from finishlog.store.things.labels import put_label_figure


def log_of(bench: Bench) -> Log:
    """Read with an engine of its own, as the next command would."""
    with open_database(bench.db.path, NOW).reading() as connection:
        return read_log(connection)


def history_of(bench: Bench) -> tuple[HistoryRow, ...]:
    with bench.db.reading() as connection:
        return read_history(connection)


def writing(bench: Bench):
    return bench.db.writing("log", "log doors", NOW, "Europe/Berlin")


def _can(ledger: Ledger, bench: Bench) -> int:
    return add_row(
        ledger.connection,
        container,
        uuid=str(uuid4()),
        name=f"can {uuid4()}",
        kind=ContainerKind.CAN,
        product_id=bench.product,
    )


def test_a_coat_comes_back_whole(bench: Bench):
    this_evening = When(
        NOW - timedelta(hours=3), NOW - timedelta(hours=1), Sureness.PART_OF_DAY, tie=2
    )
    entry = bench.coat(
        when=this_evening,
        method=Method.BRUSH,
        scuffed_before=True,
        wet_film_um=90.0,
        hands_on_min=25.0,
        note="a run on the left",
    )
    assert log_of(bench).entries == (
        Coat(
            id=entry,
            act=2,
            when=this_evening,
            typed_at=NOW,
            targets=bench.targets("doors"),
            product=bench.product,
            product_name="varnish",
            figures=FIGURES,
            method=Method.BRUSH,
            scuffed_before=True,
            wet_film_um=90.0,
            hands_on_min=25.0,
            note="a run on the left",
        ),
    )


def test_what_was_not_said_of_a_coat_stays_unsaid(bench: Bench):
    bench.coat()
    (coat,) = log_of(bench).entries
    assert isinstance(coat, Coat)
    assert (coat.method, coat.scuffed_before, coat.wet_film_um) == (None, None, None)


def test_one_piece_of_a_batch_and_one_zone_of_a_face(bench: Bench):
    door = bench.part("doors")
    only = Target(door.pieces[1].id, door.faces[0].zones[1].id)
    with writing(bench) as ledger:
        ledger.record(
            Work(when=hours_ago(1), targets=frozenset([only, only]), operation=Operation.MASK)
        )
    (work,) = log_of(bench).entries
    assert work.targets == {only}


# An entry of every kind with nothing left out, and how it is recorded.
ENTRIES: dict[str, Callable[[Ledger, Bench], Entry]] = {
    "coat": lambda ledger, bench: Coat(
        when=hours_ago(1),
        targets=bench.targets("doors"),
        product=bench.product,
        product_name="varnish",
        figures=FIGURES,
        method=Method.BRUSH,
        scuffed_before=False,
        flooded=True,
        wet_film_um=90.0,
        container=_can(ledger, bench),
        hands_on_min=25.0,
        amount_ml=200.0,
        note="a run on the left",
    ),
    "work": lambda _, bench: Work(
        when=hours_ago(1),
        targets=bench.targets("doors"),
        operation=Operation.SAND,
        grit="320",
        place="the corner",
        note="by hand",
    ),
    "check": lambda _, bench: Check(
        when=hours_ago(1),
        targets=bench.targets("doors"),
        test=Test.THUMBNAIL,
        found=Found.PRINTS,
        place="left edge",
        note="of the second pass",
    ),
    "fault": lambda _, bench: Fault(
        when=hours_ago(1),
        targets=bench.targets("doors"),
        what=FaultKind.RUN,
        place="left",
        remedy="sand",
    ),
    "stripped to bare wood": lambda _, bench: Stripped(
        when=hours_ago(1),
        targets=bench.targets("doors"),
        operation=Stripping.STRIP,
        note="never hardened",
    ),
    "joined": lambda _, bench: Joined(
        when=hours_ago(1),
        targets=bench.targets("sides"),
        into=bench.pieces("case")[0],
        members=frozenset(bench.pieces("sides")),
        glue="pva",
    ),
    "moved": lambda _, bench: Moved(
        when=hours_ago(1), pieces=frozenset(bench.pieces("doors")), room=bench.room
    ),
    "reading": lambda _, bench: Reading(
        when=hours_ago(1),
        room=bench.room,
        air=Air(17.2, 58.0),
        wet_bulb_c=12.6,
        humidity_supposed=True,
    ),
    "a logger's file": lambda _, bench: AirImported(
        when=hours_ago(1), room=bench.room, file_name="shop.csv", count=1
    ),
    "the wood of a piece": lambda _, bench: PieceReading(
        when=hours_ago(1),
        targets=bench.targets("doors"),
        temperature_c=14.0,
        moisture_pct=11.0,
        weight_g=640.5,
    ),
    "a heater": lambda _, bench: Heated(when=hours_ago(1), room=bench.room, temperature_c=21.0),
    "a can froze": lambda ledger, bench: ContainerEvent(
        when=hours_ago(1), container=_can(ledger, bench), deed=ContainerDeed.FROZEN, note="milky"
    ),
    "cleaned": lambda _, __: Cleaned(when=hours_ago(1), tool="gun 1", note="gun wash, twice"),
    "a respirator": lambda _, __: Respirator(
        when=hours_ago(1),
        name="half",
        deed=RespiratorDeed.WORN,
        holds=Filter.ORGANIC_VAPOUR,
        worn_min=120.0,
        kept=MaskKept.BAG,
        note="lacquer",
    ),
    "rags": lambda _, __: RagsEvent(when=hours_ago(1), deed=RagsDeed.SPREAD),
    "away": lambda _, __: Away(when=hours_ago(1), reason="a fair"),
    "handed over": lambda _, bench: HandedOver(
        when=hours_ago(1), targets=bench.targets("doors"), note="for the kitchen"
    ),
    "set aside": lambda _, bench: SetAside(
        when=hours_ago(1), targets=bench.targets("doors"), reason="hinges to come"
    ),
    "resumed": lambda _, bench: Resumed(when=hours_ago(1), targets=bench.targets("doors")),
    "review": lambda _, bench: Review(
        when=hours_ago(1),
        targets=bench.targets("doors"),
        outcome=Outcome.FAIR,
        text="lost its sheen",
    ),
    "note": lambda _, bench: Note(
        when=hours_ago(1), targets=bench.targets("doors"), text="[no] markup: 100 %", outcome=True
    ),
    "photo": lambda _, bench: Photo(
        when=hours_ago(1), targets=bench.targets("doors"), path="doors.jpg", note="in daylight"
    ),
}


def _recorded(bench: Bench, name: str) -> Entry:
    """Record an entry; return it as it should come back."""
    with writing(bench) as ledger:
        entry = ENTRIES[name](ledger, bench)
        number = ledger.record(entry)
    return replace(entry, id=number, act=ledger.act_id, typed_at=NOW)


@pytest.mark.parametrize("name", ENTRIES)
def test_every_kind_comes_back_as_logged(name: str, bench: Bench):
    recorded = _recorded(bench, name)
    assert log_of(bench).entries == (recorded,)


@pytest.mark.parametrize("name", ENTRIES)
def test_every_kind_is_found_in_the_history_as_logged(name: str, bench: Bench):
    recorded = _recorded(bench, name)
    with bench.db.reading() as connection:
        rows = read_history(connection)
        assert read_records(connection, rows) == {recorded.id: recorded}
    assert (rows[-1].kind, rows[-1].when) == (kind_of(type(recorded)), hours_ago(1))


def test_every_kind_of_the_work_is_tried_here(bench: Bench):
    assert {type(_recorded(bench, name)) for name in ENTRIES} == set(OF_THE_WORK.values())


def test_what_loggers_read_comes_back_in_order_of_time(bench: Bench):
    with writing(bench) as ledger:
        for hours, air in ((1.0, Air(19.0, 52.0)), (2.0, Air(18.0, 55.0))):
            moment = NOW - timedelta(hours=hours)
            ledger.record_air(
                AirImported(
                    when=at(moment),
                    room=bench.room,
                    file_name="shop.csv",
                    count=1,
                ),
                [(moment, air)],
            )
    assert log_of(bench).logged_air == {
        bench.room: [
            AirPoint(NOW - timedelta(hours=2), 18.0, 55.0, ledger.act_id),
            AirPoint(NOW - timedelta(hours=1), 19.0, 52.0, ledger.act_id),
        ]
    }


def test_a_reading_of_wood_that_says_nothing_is_not_kept(bench: Bench):
    with pytest.raises(IntegrityError), writing(bench) as ledger:
        ledger.record(PieceReading(when=hours_ago(1), targets=bench.targets("doors")))


def test_rags_of_one_item_name_its_first_coat(bench: Bench):
    coat = bench.coat()
    with writing(bench) as ledger:
        ledger.record(RagsEvent(when=hours_ago(0), deed=RagsDeed.WATER, item=coat))
    event = log_of(bench).entries[-1]
    assert isinstance(event, RagsEvent)
    assert event.item == coat


def test_stripped_down_to_a_coat_names_the_coat_that_is_still_there(bench: Bench):
    sealer, _ = bench.coat(), bench.coat()
    with writing(bench) as ledger:
        ledger.record(
            Stripped(
                when=hours_ago(0),
                targets=bench.targets("doors"),
                operation=Stripping.SAND_THROUGH,
                survives=sealer,
            )
        )
    off = log_of(bench).entries[-1]
    assert isinstance(off, Stripped)
    assert off.survives == sealer


def test_an_act_without_entries_is_kept(bench: Bench):
    (row,) = history_of(bench)
    assert (row.verb, row.words, row.entry) == ("project new", "project new cabinet", None)
    assert (row.typed_at, row.time_zone, row.in_force) == (NOW, "Europe/Berlin", True)


def test_an_exception_leaves_nothing(bench: Bench):
    before = rows_everywhere(bench)

    def fails_half_way():
        with writing(bench) as ledger:
            bench.coat_in(ledger, figures=FigureSet("other", "1", {}, FIGURES.window))
            ledger.record(RagsEvent(when=hours_ago(0), deed=RagsDeed.CAN))
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        fails_half_way()
    assert rows_everywhere(bench) == before


def rows_everywhere(bench: Bench) -> dict[str, int | None]:
    with bench.db.reading() as connection:
        count = 'SELECT count(*) FROM "{}"'
        return {
            table: connection.exec_driver_sql(count.format(table)).scalar()
            for table in metadata.tables
        }


ORPHANS = {
    "a coat of no product": lambda ledger, bench: bench.coat_in(ledger, product=99),
    "a zone that is not there": lambda ledger, bench: ledger.record(
        Resumed(when=hours_ago(1), targets=frozenset({Target(bench.pieces("doors")[0], 999)}))
    ),
    "a piece that is not there": lambda ledger, bench: ledger.record(
        Moved(when=hours_ago(1), pieces=frozenset([999]), room=bench.room)
    ),
    "a room that is not there": lambda ledger, bench: ledger.record(
        Reading(when=hours_ago(1), room=99, air=Air(20, 50))
    ),
    "an amendment of nothing": lambda ledger, bench: ledger.record(
        RagsEvent(when=hours_ago(1), deed=RagsDeed.CAN), supersedes=77
    ),
}


@pytest.mark.parametrize("orphan", ORPHANS)
def test_nothing_may_point_to_nothing(orphan: str, bench: Bench):
    with pytest.raises(IntegrityError), writing(bench) as ledger:
        ORPHANS[orphan](ledger, bench)
    assert len(history_of(bench)) == 1


def test_an_unknown_act_cannot_be_taken_back(bench: Bench):
    with pytest.raises(NotFound, match="no act 99"):
        bench.undo(99)


def test_an_act_cannot_take_itself_back(bench: Bench):
    with pytest.raises(UsageFault), writing(bench) as ledger:
        ledger.withdraw(ledger.act_id)


def test_coats_judged_by_the_same_figures_share_one_set(bench: Bench):
    bench.coat()
    bench.coat("sides")
    bench.coat("case", figures=FigureSet("oil-varnish", "2026.2", FIGURES.stages, FIGURES.window))
    assert rows_everywhere(bench)["figure_set"] == 2


@pytest.mark.parametrize(
    "figures",
    [
        FigureSet("oil-varnish", "2026.1", {}, RecoatWindow(WindowKind.ALWAYS_SCUFF, "x")),
        FigureSet("oil-varnish", "2026.1", {Stage.SAND: Figure(1, 2, 3, "x")}, FIGURES.window),
        FigureSet(
            "oil-varnish",
            "2026.1",
            {**FIGURES.stages, Stage.TOUCH: Figure(2, 3, 4.5, "common practice")},
            FIGURES.window,
        ),
    ],
    ids=["no stages", "another stage", "half an hour more"],
)
def test_other_figures_are_another_set(figures: FigureSet, bench: Bench):
    bench.coat()
    bench.coat(figures=figures)
    first, second = log_of(bench).entries
    assert (first.figures, second.figures) == (FIGURES, figures)


def test_a_coat_keeps_what_it_was_judged_by_when_the_label_is_corrected(bench: Bench):
    bench.coat()
    with writing(bench) as ledger:
        corrected = Figure(12, 14, 30, "your can")
        put_label_figure(ledger.connection, bench.product, Stage.RECOAT, corrected, NOW)
    (coat,) = log_of(bench).entries
    assert bench.shop().products[bench.product].label == {Stage.RECOAT: corrected}
    assert coat.figures == FIGURES
