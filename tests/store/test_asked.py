"""What is asked of the driver is what SQLAlchemy would have read: here they take turns."""

from __future__ import annotations

from datetime import timedelta

from conftest import NOW, Bench
from sqlalchemy import bindparam, func, or_, select, union_all

from finishlog.store.schema.asked import among, ask
from finishlog.store.schema.columns import metadata
from finishlog.store.schema.log import entry
from finishlog.store.schema.rows import rows_of, up_to, whole
from finishlog.store.schema.things import face, part, piece, product, usual_day, zone
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


def test_rows_have_the_values_and_names_that_sqlalchemy_gives(bench: Bench):
    put_on_record = bench.coat()
    with bench.db.reading() as connection:
        for question in (*map(whole, metadata.sorted_tables), *QUESTIONS):
            theirs = connection.execute(question).all()
            ours = ask(connection, question)
            assert ours == theirs
            assert [row._fields for row in ours] == [row._fields for row in theirs]
        assert [row.id for row in ask(connection, whole(entry))] == [put_on_record]


def test_what_is_told_is_written_as_the_file_holds_it(bench: Bench):
    with bench.db.writing("room", "room usual", NOW, "Europe/Berlin") as ledger:
        for days in range(3):
            put_usual_day(
                ledger.connection, bench.room, NOW - timedelta(days), coldest_c=9.0 + days
            )
        for days, held in ((-1, 3), (0, 3), (1, 2), (2.5, 0)):
            told = ask(ledger.connection, up_to(usual_day), now=NOW - timedelta(days))
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
            rows = ask(connection, either, some=some, others=others, until=NOW + until)
            return [row.id for row in rows]

        assert len(pieces) > 3
        assert found(pieces[:1], {998}) == pieces[:1]
        assert found([], {*pieces}) == pieces[:-2]
        assert found([], set()) == []
        assert found(pieces, {*pieces}, timedelta(days=-900)) == []


def test_of_many_thousand_ids_each_row_comes_once(bench: Bench):
    with bench.db.reading() as connection:
        all_there_are = sorted(row.id for row in ask(connection, whole(zone)))
        found = rows_of(connection, whole(zone), zone.c.id, range(-5000, 5000))
        assert sorted(row.id for row in found) == all_there_are
