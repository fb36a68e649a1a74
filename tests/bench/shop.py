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
from finishlog.core.log.entries import Operation, Target, When, at
from finishlog.core.shop.things import Step, ThingKind
from finishlog.facts.load import Facts
from finishlog.store.database import open_database
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.add import NewPart, add_part, add_product, add_project, add_room
from finishlog.store.things.archive import archive

NOW = datetime(2026, 11, 24, 21, 5, tzinfo=UTC)
OPEN_PROJECTS, OPEN_PARTS, PIECES = 4, 10, 2
CLASSES = {"sealer": "shellac-2lb", "topcoat": "waterborne-clear", "oil": "hardwax-oil"}
WOODS = ("ash", "cherry", "walnut", "maple", "oak")


@dataclass(frozen=True)
class Scale:
    """How much lies behind the open parts."""

    projects: int
    parts: int
    coats: int


# A fifth of ten busy years is built in a minute; `--full` builds them all.
A_FIFTH = Scale(projects=200, parts=2_000, coats=20_000)
TEN_YEARS = Scale(projects=1_000, parts=10_000, coats=100_000)


@dataclass
class Builder:
    """Fills a database through the store, a few transactions in all."""

    connection: Connection
    ledger: Ledger
    products: dict[str, int]
    figures: dict[str, FigureSet]
    room: int

    def coat(self, targets: frozenset[Target], product: str, moment: datetime) -> None:
        self.ledger.coat(
            at(moment),
            targets,
            product=self.products[product],
            figures=self.figures[product],
            scuffed_before=True,
        )


def build(path: Path, behind: Scale | None = None) -> None:
    """Make the shop; what is behind is older than everything open."""
    database = open_database(path, NOW)
    with database.writing("bench", "invented", NOW, "UTC") as ledger:
        builder = _builder(ledger)
        if behind:
            _history(builder, behind)
        _open_parts(builder)


def _builder(ledger: Ledger) -> Builder:
    facts, connection = Facts(), ledger.connection
    products, figures = {}, {}
    for name, key in CLASSES.items():
        products[name] = add_product(connection, name, key, NOW)
        figures[name] = judged_by(facts.finish_class(key), {}, None, facts.version)
    return Builder(connection, ledger, products, figures, add_room(connection, "finishing"))


def _history(builder: Builder, behind: Scale) -> None:
    """Add archived projects with their parts and coats over ten years, and daily readings."""
    a_day = timedelta(days=1)
    begin = NOW - 3650 * a_day
    for day in range(3640):
        builder.ledger.reading(
            at(begin + day * a_day), room=builder.room, air=Air(15 + day % 7, 50 + day % 15)
        )
    each = behind.parts // behind.projects
    coats = behind.coats // behind.parts
    for number in range(behind.projects):
        when = begin + 3600 * a_day * number / behind.projects
        project = add_project(builder.connection, f"old{number}", when)
        for part, targets in _parts(builder, project, each, WOODS[number % len(WOODS)]):
            product = ("topcoat", "oil")[number % 2]
            for coat in range(coats):
                builder.coat(targets, product, when + coat * a_day)
            archive(builder.ledger, ThingKind.PART, part, when + 30 * a_day)
        archive(builder.ledger, ThingKind.PROJECT, project, when + 30 * a_day)


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
        builder.ledger.reading(at(moment), room=builder.room, air=Air(17.2 - hour % 3, 58))
    for number in range(OPEN_PROJECTS):
        project = add_project(builder.connection, f"piece{number}", NOW - timedelta(days=20))
        parts = _parts(builder, project, OPEN_PARTS, WOODS[number])
        for place, (_, targets) in enumerate(parts):
            _evenings(builder, targets, place)


def _evenings(builder: Builder, targets: frozenset[Target], place: int) -> None:
    """A part that is so many steps along: none, sanded, sealed, one coat, two coats."""
    begin = NOW - timedelta(days=4, hours=place)
    if place % 5 > 0:
        builder.ledger.work(at(begin), targets, operation=Operation.SAND, grit="P220")
    for coat in range(place % 5 - 1):
        product = "topcoat" if coat else "sealer"
        builder.coat(targets, product, begin + timedelta(hours=2 + 24 * coat))


def read_by_a_logger(path: Path, count: int = 100_000) -> None:
    """Add a logger's file that ends at NOW, a reading every ten minutes, to the demo's room."""
    step = timedelta(minutes=10)
    moments = [NOW - step * n for n in range(count - 1, -1, -1)]
    readings = [(moment, _air_of_a_day(moment, n)) for n, moment in enumerate(moments)]
    with open_database(path, NOW).writing("air", "air import logger.csv", NOW, "UTC") as ledger:
        span = When(moments[0], moments[-1])
        ledger.air_imported(span, room=1, file_name="logger.csv", readings=readings)


def _air_of_a_day(moment: datetime, n: int) -> Air:
    """Draw a cool day with a little unrest in it, as a logger rounds it."""
    turn = sin((moment.hour + moment.minute / 60 - 9) / 24 * tau)
    unrest = (n * 7919 % 11 - 5) / 50
    return Air(round(16 + 3 * turn + unrest, 1), round(60 - 5 * turn - 5 * unrest, 1))
