"""A real database file for every test, and a small invented shop to log about."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from finishlog.core.air.psychrometrics import Air
from finishlog.core.finish.classes import YOUR_CAN, Figure, FigureSet, RecoatWindow, WindowKind
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Coat, Target
from finishlog.core.log.when import When, at
from finishlog.core.shop.things import FaceKind, Need, Part, Shop
from finishlog.store.database import Database, open_database
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.add import (
    NewFace,
    NewPart,
    NewZone,
    add_part,
    add_product,
    add_project,
    add_room,
)
from finishlog.store.things.read_shop import read_shop

NOW = datetime(2026, 11, 24, 21, 5, tzinfo=UTC)

# Invented figures: the store keeps whatever it is given.
FIGURES = FigureSet(
    class_key="oil-varnish",
    facts_version="2026.1",
    stages={
        Stage.RECOAT: Figure(6.0, 8.0, 24.0, YOUR_CAN, Air(21.0, 50.0), "in good air"),
        Stage.TOUCH: Figure(2.0, 3.0, 4.0, "common practice"),
    },
    window=RecoatWindow(
        WindowKind.CLOSES,
        YOUR_CAN,
        Figure(24.0, 36.0, 48.0, YOUR_CAN, Air(21.0, 50.0)),
        "then scuff",
    ),
)


def hours_ago(hours: float, tie: int = 0) -> When:
    return at(NOW - timedelta(hours=hours), tie)


@dataclass(frozen=True)
class Bench:
    """A shop with a cabinet: two doors, two sides and the case made of the sides."""

    db: Database
    product: int
    room: int

    def shop(self, now: datetime = NOW) -> Shop:
        with self.db.reading() as connection:
            return read_shop(connection, now)

    def part(self, name: str) -> Part:
        return next(part for part in self.shop().parts if part.name == name)

    def pieces(self, name: str) -> list[int]:
        return [piece.id for piece in self.part(name).pieces]

    def targets(self, name: str) -> frozenset[Target]:
        part = self.part(name)
        zones = [zone.id for face in part.faces for zone in face.zones]
        return frozenset(Target(piece.id, zone) for piece in part.pieces for zone in zones)

    def coat(self, name: str = "doors", when: When | None = None, **more: object) -> int:
        with self.db.writing("log", f"log {name}", NOW, "Europe/Berlin") as ledger:
            return self.coat_in(ledger, name, when, **more)

    def coat_in(
        self, ledger: Ledger, name: str = "doors", when: When | None = None, **more: object
    ) -> int:
        supersedes = more.pop("supersedes", None)
        coat = Coat(
            when=when or hours_ago(1),
            targets=self.targets(name),
            **{"product": self.product, "figures": FIGURES, **more},
        )
        return ledger.record(coat, supersedes=supersedes)

    def undo(self, act: int) -> int:
        """Take an act back and return the act that did it."""
        with self.db.writing("undo", f"undo {act}", NOW, "Europe/Berlin") as ledger:
            ledger.withdraw(act)
            return ledger.act_id


@pytest.fixture(scope="session")
def blank(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """An empty database, made once by the migrations."""
    path = tmp_path_factory.mktemp("blank") / "shop.db"
    open_database(path, NOW)
    return path


@pytest.fixture
def fresh(blank: Path, tmp_path: Path) -> Callable[[], Path]:
    """Hand out a copy of the empty database (nothing has it open, so a plain copy is whole)."""

    def copy(name: str = "shop.db") -> Path:
        return Path(shutil.copy(blank, tmp_path / name))

    return copy


@pytest.fixture
def db(fresh: Callable[[], Path]) -> Database:
    return open_database(fresh(), NOW, patience_s=0.2)


@pytest.fixture
def bench(db: Database) -> Bench:
    with db.writing("project new", "project new cabinet", NOW, "Europe/Berlin") as ledger:
        return fill(db, ledger)


def fill(db: Database, ledger: Ledger) -> Bench:
    connection = ledger.connection
    room = add_room(connection, "finishing room")
    product = add_product(connection, "varnish", "oil-varnish", NOW)
    cabinet = add_project(connection, "cabinet", NOW)
    faces = (
        NewFace("front", FaceKind.SHOW, (NewZone(), NewZone("inlay", "walnut"))),
        NewFace("back", FaceKind.HIDDEN),
    )
    add_part(connection, cabinet, NewPart("doors", 2, "ash", faces), NOW)
    sides = add_part(connection, cabinet, NewPart("sides", 2, "ash"), NOW)
    case = NewPart("case", 1, "ash", needs=(Need(sides, 2),), room=room)
    add_part(connection, cabinet, case, NOW)
    return Bench(db, product, room)
