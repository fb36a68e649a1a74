"""What is asked of the driver is what SQLAlchemy would have read: here they take turns.

What is kept in SQL is what the questions say: `FINISHLOG_WRITE_GOLDEN=1` writes it anew.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from datetime import timedelta
from importlib import import_module
from pathlib import Path

import pytest
from conftest import NOW, Bench
from msgspec.json import decode, encode, format
from sqlalchemy import bindparam, func, or_, select, union_all

import finishlog.store
from finishlog.core.log.fields import fields_of
from finishlog.core.log.kinds import KINDS
from finishlog.core.log.words import FaultKind
from finishlog.core.published.fault_kinds import Blames
from finishlog.core.shop.things import ThingKind
from finishlog.facts.load import load_facts
from finishlog.store.log import finished, heads
from finishlog.store.log.rows import asked_of, listed_of
from finishlog.store.schema.asked import KEPT, Built, InSql, Question, among, ask
from finishlog.store.schema.columns import metadata
from finishlog.store.schema.rows import rows_of, up_to, whole
from finishlog.store.schema.tables import face, part, piece, product, zone
from finishlog.store.things import changes
from finishlog.store.things.usual import put_usual_day

# A set within the question, a moment within it, columns of one name, an expression, a limit.
QUESTIONS = (
    select(zone, face).join_from(zone, face).order_by(zone.c.id),
    select(part.c.name, part.c.added_at).where(part.c.name.in_(("case", "doors", "nothing"))),
    select(part.c.id).where(part.c.added_at.in_((NOW, NOW - timedelta(days=1)))),
    select(func.max(part.c.added_at).label("last"), func.count().label("n")).where(
        part.c.added_at > NOW - timedelta(9)
    ),
    union_all(select(piece.c.id.label("each")), select(face.c.id)).order_by("each"),
    select(product.c.name).order_by(product.c.id.desc()).limit(2),
)


def asked(built: Built) -> Question:
    return Question("", lambda: built)


def test_rows_have_the_values_and_names_that_sqlalchemy_gives(bench: Bench):
    put_on_record = bench.coat()
    with bench.db.reading() as connection:
        for built in (*map(select, metadata.sorted_tables), *QUESTIONS):
            theirs = connection.execute(built).all()
            ours = ask(connection, asked(built))
            assert ours == theirs
            assert [row._fields for row in ours] == [row._fields for row in theirs]
        assert [row.id for row in ask(connection, whole("entry"))] == [put_on_record]


def test_what_is_told_is_written_as_the_file_holds_it(bench: Bench):
    with bench.db.writing("room", "room usual", NOW, "Europe/Berlin") as ledger:
        for days in range(3):
            put_usual_day(
                ledger.connection, bench.room, NOW - timedelta(days), coldest_c=9.0 + days
            )
        for days, held in ((-1, 3), (0, 3), (1, 2), (2.5, 0)):
            told = ask(ledger.connection, up_to("usual_day"), now=NOW - timedelta(days))
            assert len(told) == held
            assert all(row.valid_from <= NOW - timedelta(days) for row in told)


def test_two_sets_of_ids_and_a_moment_in_one_question(bench: Bench):
    pieces = [*sorted(bench.pieces("doors")), 998, 999]
    either = (
        select(piece.c.id)
        .join_from(piece, part)
        .where(or_(among(piece.c.id, "some"), among(piece.c.id, "others")))
        .where(part.c.added_at <= bindparam("until", type_=part.c.added_at.type))
        .order_by(piece.c.id)
    )
    with bench.db.reading() as connection:

        def found(some: list[int], others: set[int], until: timedelta = timedelta(1)) -> list[int]:
            rows = ask(connection, asked(either), some=some, others=others, until=NOW + until)
            return [row.id for row in rows]

        assert len(pieces) > 3
        assert found(pieces[:1], {998}) == pieces[:1]
        assert found([], {*pieces}) == pieces[:-2]
        assert found([], set()) == []
        assert found(pieces, {*pieces}, timedelta(days=-900)) == []


def test_of_many_thousand_ids_each_row_comes_once(bench: Bench):
    with bench.db.reading() as connection:
        all_there_are = sorted(row.id for row in ask(connection, whole("zone")))
        found = rows_of(connection, whole("zone", by="id"), range(-5000, 5000))
        assert sorted(row.id for row in found) == all_there_are


def test_what_nobody_says_how_to_narrow_is_not_narrowed():
    with pytest.raises(LookupError, match="zone up to now"):
        assert up_to("zone").of_some


def questions() -> Iterator[Question]:
    """Go through all questions that a start may ask: modules have them, and kinds of entries."""
    root = Path(finishlog.store.__file__).parent
    for file in sorted(root.glob("*/*.py")):
        module = import_module(f"finishlog.store.{file.parent.name}.{file.stem}")
        for value in vars(module).values():
            held = value.values() if isinstance(value, dict) else [value]
            yield from (each for each in held if isinstance(each, Question))
    for kind in KINDS.values():
        yield asked_of(kind)[1]
        yield from (listed_of(kind, f) for f in fields_of(kind) if f.type is frozenset)
    yield heads._naming(len(KINDS))
    yield finished._wrong(blamed())
    yield from map(changes._of_kind, (None, *ThingKind))


def blamed() -> frozenset[FaultKind]:
    return frozenset(
        known.kind for known in load_facts().faults if known.blames is not Blames.NOTHING
    )


def test_what_is_kept_in_sql_is_what_the_questions_say():
    put = {way.name: way.put() for question in questions() for way in question.ways}
    if os.environ.get("FINISHLOG_WRITE_GOLDEN"):
        KEPT.write_bytes(format(encode(dict(sorted(put.items())))) + b"\n")
    kept = decode(KEPT.read_bytes(), type=dict[str, InSql])
    assert kept == decode(encode(put), type=dict[str, InSql])
    assert len(kept) > 100


def test_no_two_questions_have_one_name():
    texts: dict[str, set[str]] = {}
    for question in questions():
        for way in question.ways:
            texts.setdefault(way.name, set()).add(way.put().text)
    assert "" not in texts
    assert [name for name, said in texts.items() if len(said) > 1] == []
