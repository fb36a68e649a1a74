"""Cans and mixes in the database: nothing overwritten, and cheap where there are none."""

from __future__ import annotations

import pytest
from conftest import NOW, Bench
from msgspec.structs import replace
from sqlalchemy.exc import IntegrityError

from finishlog.core.mixing.containers import Container, ContainerKind, MixPart
from finishlog.core.shop.things import Log
from finishlog.store.things.containers import (
    add_container,
    change_parts,
    put_away,
    read_containers,
    with_containers_of,
)

PARTS = (
    MixPart("flakes", 1.0, weight_g=120.0),
    MixPart("white spirit", 8.3, volume_ml=1000.0),
)


def make(bench: Bench, name: str = "jar", parts: tuple[MixPart, ...] = PARTS) -> Container:
    new = Container(
        0, name, ContainerKind.MIX, bench.product, NOW, None, 1100.0, "A7", "", parts, "can-1"
    )
    with bench.db.writing("mix", "mix", NOW, "Europe/Berlin") as ledger:
        made = add_container(ledger, new)
    return replace(new, id=made)


def read(bench: Bench, **named: bool) -> dict[int, Container]:
    with bench.db.reading() as connection:
        return read_containers(connection, **named)


def amend(bench: Bench, of: Container, grams: float) -> int:
    with bench.db.writing("amend", "amend", NOW, "Europe/Berlin") as ledger:
        becomes = (MixPart("flakes", 1.0, weight_g=grams), of.parts[1])
        change_parts(ledger, of, becomes)
        return ledger.act_id


def test_a_container_is_read_as_it_was_put_there(bench: Bench):
    made = make(bench)
    assert read(bench) == {made.id: made}


def test_of_amended_amounts_the_last_whose_act_stands_holds(bench: Bench):
    made = make(bench)
    amend(bench, made, 90.0)
    second = amend(bench, made, 60.0)
    assert read(bench)[made.id].parts[0].weight_g == 60.0
    with bench.db.writing("undo", "undo", NOW, "Europe/Berlin") as ledger:
        undo = ledger.act_id
        ledger.withdraw(second)
    assert read(bench)[made.id].parts[0].weight_g == 90.0
    with bench.db.writing("undo", "undo", NOW, "Europe/Berlin") as ledger:
        ledger.withdraw(undo)
    assert read(bench)[made.id].parts[0].weight_g == 60.0
    assert read(bench)[made.id].parts[1].volume_ml == 1000.0


def test_what_was_put_away_is_read_when_a_coat_names_it(bench: Bench):
    made = make(bench)
    coat = bench.coat(container=made.id)
    with bench.db.writing("tidy", "tidy", NOW, "Europe/Berlin") as ledger:
        put_away(ledger, [made.id], NOW)
    assert read(bench) == {}
    with bench.db.reading() as connection:
        from finishlog.store.log.read_log import read_log

        log = read_log(connection)
        found = with_containers_of(connection, bench.shop(), log).containers
        assert with_containers_of(connection, bench.shop(), Log(())).containers == {}
    assert [entry.id for entry in log.entries] == [coat]
    assert found == {made.id: replace(made, archived=True)}


def test_two_containers_never_share_a_name(bench: Bench):
    make(bench)
    with pytest.raises(IntegrityError):
        make(bench)


def test_a_shop_without_cans_is_asked_one_question_more_and_no_second(bench: Bench):
    count: list[str] = []
    with bench.db.reading() as connection:
        connection.connection.driver_connection.set_trace_callback(count.append)
        assert read_containers(connection) == {}
        connection.connection.driver_connection.set_trace_callback(None)
    assert len(count) == 1
