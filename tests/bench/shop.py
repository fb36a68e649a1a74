"""Invented shops to measure on: 40 open parts, with or without ten years of history."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from math import sin, tau
from pathlib import Path

from sqlalchemy import Connection

from finishlog.core.air.psychrometrics import Air
from finishlog.core.finish.classes import FigureSet, judged_by
from finishlog.core.log.entries import AirImported, Coat, Reading, Target, Work
from finishlog.core.log.when import When, at
from finishlog.core.log.words import Operation
from finishlog.core.shop.things import Step, ThingKind
from finishlog.facts.load import load_facts
from finishlog.store.database import open_database
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.add import NewPart, add_part, add_product, add_project, add_room
from finishlog.store.things.archive import archive

NOW = datetime(2026, 11, 24, 21, 5, tzinfo=UTC)
OPEN_PROJECTS, OPEN_PARTS, PIECES = 4, 10, 2
CLASSES = {"sealer": "shellac-2lb", "topcoat": "waterborne-clear", "oil": "hardwax-oil"}
WOODS = ("ash", "cherry", "walnut", "maple", "oak")


# Ten busy years are a month of the shop, a hundred times over.
MONTH = timedelta(days=36)
MONTHS = 100
PROJECTS_A_MONTH, PARTS, COATS = 10, 10, 10


@dataclass
class Builder:
    """Fills a database through the store, a few transactions in all."""

    connection: Connection
    ledger: Ledger
    products: dict[str, int]
    figures: dict[str, FigureSet]
    room: int

    def coat(self, targets: frozenset[Target], product: str, moment: datetime) -> None:
        self.ledger.record(
            Coat(
                when=at(moment),
                targets=targets,
                product=self.products[product],
                figures=self.figures[product],
                scuffed_before=True,
            )
        )


def build(path: str, *, ten_years: bool = False) -> None:
    """Make the shop; what is behind is older than everything open."""
    database = open_database(Path(path), NOW)
    with database.writing("bench", "invented", NOW, "UTC") as ledger:
        builder = _builder(ledger)
        if ten_years:
            before = _last_rows(ledger.connection)
            _a_month(builder, NOW - MONTHS * MONTH - timedelta(days=10))
            _again_and_again(ledger.connection, before)
        _open_parts(builder)


def _builder(ledger: Ledger) -> Builder:
    facts, connection = load_facts(), ledger.connection
    products, figures = {}, {}
    for name, key in CLASSES.items():
        products[name] = add_product(connection, name, key, NOW)
        figures[name] = judged_by(facts.finish_class(key), {}, None, facts.version)
    return Builder(connection, ledger, products, figures, add_room(connection, "finishing"))


def _a_month(builder: Builder, begin: datetime) -> None:
    """Coat and put away projects, and read the air every day."""
    a_day = timedelta(days=1)
    for day in range(MONTH.days):
        air = Air(15 + day % 7, 50 + day % 15)
        builder.ledger.record(Reading(when=at(begin + day * a_day), room=builder.room, air=air))
    for number in range(PROJECTS_A_MONTH):
        project = add_project(builder.connection, f"old{number}", begin)
        for part, targets in _parts(builder, project, PARTS, WOODS[number % len(WOODS)]):
            for coat in range(COATS):
                product = ("topcoat", "oil")[number % 2]
                builder.coat(targets, product, begin + (2 * number + coat) * a_day)
            archive(builder.ledger, ThingKind.PART, part, begin + MONTH)
        archive(builder.ledger, ThingKind.PROJECT, project, begin + MONTH)


def _last_rows(connection: Connection) -> dict[str, int]:
    names = connection.exec_driver_sql("SELECT name FROM sqlite_master WHERE type = 'table'")
    return {
        name: connection.exec_driver_sql(f"SELECT coalesce(max(rowid), 0) FROM {name}").scalar_one()
        for name in names.scalars().all()
        # It is keyed by its entry, and a month holds no logger's file.
        if name != "logged_air"
    }


def _again_and_again(connection: Connection, before: dict[str, int]) -> None:
    """Repeat what was added since `before`, a month later each time: in SQL, for it is a lot.

    What points to a row of the month points to the row's like in each month that follows.
    """
    after = _last_rows(connection)
    stride = max(after.values())
    connection.exec_driver_sql("PRAGMA defer_foreign_keys = ON")
    for table, last in after.items():
        if last == before[table] or table.startswith("figure_set"):
            continue
        columns = connection.exec_driver_sql(f"PRAGMA table_info({table})").all()
        references = {
            row[3]: row[2]
            for row in connection.exec_driver_sql(f"PRAGMA foreign_key_list({table})")
        }
        values = [
            _a_month_on(table, name, type_, references.get(name, ""), before, stride)
            for _, name, type_, *_ in columns
        ]
        connection.exec_driver_sql(
            "WITH RECURSIVE month(k) AS"
            f" (SELECT 1 UNION ALL SELECT k + 1 FROM month WHERE k < {MONTHS - 1})"
            f" INSERT INTO {table} SELECT {', '.join(values)} FROM month, {table}"
            f" WHERE {table}.rowid BETWEEN {before[table] + 1} AND {last} ORDER BY k"
        )


def _a_month_on(
    table: str, column: str, type_: str, refers_to: str, before: dict[str, int], stride: int
) -> str:
    """Write the value of a column `k` months on; `refers_to` names the table of its rows."""
    if column in {"id", "thing_id"}:
        return f"{column} + k * {stride}"
    if refers_to in before and not refers_to.startswith("figure_set"):
        return f"{column} + k * {stride} * ({column} > {before[refers_to]})"
    if column == "uuid":
        return "lower(hex(randomblob(16)))"
    if type_ == "VARCHAR(27)":
        moved = f"strftime('%Y-%m-%dT%H:%M:%S', {column}, (k * {MONTH.days}) || ' days')"
        return f"{moved} || '.000000Z'"
    return f"{column} || '-' || k" if (table, column) == ("project", "name") else column


def _parts(
    builder: Builder, project: int, count: int, wood: str
) -> Iterator[tuple[int, frozenset[Target]]]:
    steps = (
        Step(0, Operation.SAND),
        Step(1, Operation.COAT, builder.products["sealer"]),
        *(Step(n, Operation.COAT, builder.products["topcoat"]) for n in (2, 3, 4)),
    )
    for number in range(count):
        new = NewPart(f"part{number}", PIECES, wood, steps=steps, room=builder.room)
        part = add_part(builder.connection, project, new, NOW - timedelta(days=20))
        yield part, _targets(builder.connection, part)


def _targets(connection: Connection, part: int) -> frozenset[Target]:
    found = connection.exec_driver_sql(
        "SELECT piece.id, zone.id FROM piece JOIN face ON face.part_id = piece.part_id"
        " JOIN zone ON zone.face_id = face.id WHERE piece.part_id = ?",
        (part,),
    )
    return frozenset(Target(*row) for row in found)


def _open_parts(builder: Builder) -> None:
    """Forty parts at different steps, with readings over the last week."""
    for hour in range(0, 168, 8):
        moment = NOW - timedelta(hours=hour + 1)
        builder.ledger.record(
            Reading(when=at(moment), room=builder.room, air=Air(17.2 - hour % 3, 58))
        )
    for number in range(OPEN_PROJECTS):
        project = add_project(builder.connection, f"piece{number}", NOW - timedelta(days=20))
        parts = _parts(builder, project, OPEN_PARTS, WOODS[number])
        for place, (_, targets) in enumerate(parts):
            _evenings(builder, targets, place)


def _evenings(builder: Builder, targets: frozenset[Target], place: int) -> None:
    """A part that is so many steps along: none, sanded, sealed, one coat, two coats."""
    begin = NOW - timedelta(days=4, hours=place)
    if place % 5 > 0:
        builder.ledger.record(
            Work(when=at(begin), targets=targets, operation=Operation.SAND, grit="P220")
        )
    for coat in range(place % 5 - 1):
        product = "topcoat" if coat else "sealer"
        builder.coat(targets, product, begin + timedelta(hours=2 + 24 * coat))


def read_by_a_logger(path: str, count: int = 100_000) -> None:
    """Add a logger's file that ends at NOW, a reading every ten minutes, to the demo's room."""
    step = timedelta(minutes=10)
    moments = [NOW - step * n for n in range(count - 1, -1, -1)]
    readings = [(moment, _air_of_a_day(moment, n)) for n, moment in enumerate(moments)]
    with open_database(Path(path), NOW).writing(
        "air", "air import logger.csv", NOW, "UTC"
    ) as ledger:
        span = When(moments[0], moments[-1])
        ledger.record_air(
            AirImported(when=span, room=1, file_name="logger.csv", count=len(readings)), readings
        )


def _air_of_a_day(moment: datetime, n: int) -> Air:
    """Draw a cool day with a little unrest in it, as a logger rounds it."""
    turn = sin((moment.hour + moment.minute / 60 - 9) / 24 * tau)
    unrest = (n * 7919 % 11 - 5) / 50
    return Air(round(16 + 3 * turn + unrest, 1), round(60 - 5 * turn - 5 * unrest, 1))
