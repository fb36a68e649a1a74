"""Random shops in a real database, told through the ledger as a person would; all invented.

The shops, their air and their work are random; the figures are the published ones.
"""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from hypothesis import strategies as st

from finishlog.clock import Clock
from finishlog.context import Context
from finishlog.core.air.psychrometrics import Air
from finishlog.core.air.usual_day import EVERY_DAY, UsualHour
from finishlog.core.film.checks import test_that_finds
from finishlog.core.finish.classes import judged_by
from finishlog.core.log.entries import (
    AirImported,
    Away,
    Check,
    Coat,
    Heated,
    Moved,
    Reading,
    Target,
    Work,
)
from finishlog.core.log.when import Sureness, When, at
from finishlog.core.log.words import Found, Operation
from finishlog.core.measure.units import Units
from finishlog.core.shop.hours import WeeklyHours
from finishlog.core.shop.things import Part, Step
from finishlog.store.database import Database, open_database
from finishlog.store.things.add import (
    NewFace,
    NewPart,
    add_part,
    add_product,
    add_project,
    add_room,
)
from finishlog.store.things.read_shop import read_shop
from finishlog.store.things.usual import put_shop_hours, put_usual_day
from tests.once import blank
from tests.shop_of import FACTS, LACQUER, SHELLAC, VARNISH, WATERBORNE

NOW = datetime(2026, 11, 24, 17, 5, 33, tzinfo=UTC)  # a Tuesday, 18:05 on the wall
CLOCK = Clock(NOW, ZoneInfo("Europe/Berlin"))
CLASSES = (SHELLAC, WATERBORNE, VARNISH, LACQUER, "conversion-varnish")
ROOMS = ("shop", "spray room")
# Coats of the first or the second product, and work by hand.
STEPS: tuple[tuple[int | Operation, ...], ...] = (
    (0, 0),
    (0, 0, 0),
    (0, 1),
    (1, 0, 0),
    (0, Operation.SCUFF, 0),
    (Operation.SAND, 0, 0),
)
FOUND = (Found.TACKY, Found.DRY, Found.PRINTS, Found.POWDER)
EVENINGS = tuple(
    WeeklyHours(day, *((18 * 60, 22 * 60) if day < 5 else (9 * 60, 17 * 60))) for day in range(7)
)
WEEKENDS = (WeeklyHours(5, 9 * 60, 18 * 60), WeeklyHours(6, 10 * 60, 16 * 60))


def context_of(database: Database, clock: Clock = CLOCK) -> Context:
    """Return what a command on a shop is given, by the published facts."""
    return Context(database, FACTS, clock, "", Units())


@dataclass(frozen=True)
class Happened:
    """One thing that happened, so many hours before now."""

    ago_h: float
    what: str
    part: int = 0
    # Piece numbers and face names; empty: all of them.
    pieces: tuple[int, ...] = ()
    face: str = ""
    value: Any = None


@dataclass(frozen=True)
class Story:
    """A shop and what happened in it."""

    products: tuple[str, str]
    rooms: tuple[dict[str, Any], ...]
    parts: tuple[dict[str, Any], ...]
    hours: tuple[WeeklyHours, ...]
    away: tuple[float, float] | None
    told: tuple[Happened, ...] = field(default=())


@contextmanager
def kept(story: Story) -> Iterator[Database]:
    """Write a story down in a database of its own."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "shop.db"
        path.write_bytes(blank())
        database = open_database(path, NOW)
        _Telling(database, story).tell()
        yield database


def ago(hours: float) -> datetime:
    """Return the instant so many hours before now."""
    return NOW - timedelta(hours=hours)


@dataclass
class _Telling:
    database: Database
    story: Story

    def tell(self) -> None:
        begun = ago(24 * 10)
        with self.database.writing("project new", "", begun, CLOCK.zone.key) as ledger:
            c = ledger.connection
            self.rooms = [self._room(c, n, each) for n, each in enumerate(self.story.rooms)]
            self.products = [add_product(c, f"our {k}", k, begun) for k in self.story.products]
            project = add_project(c, "cabinet", begun)
            for n, part in enumerate(self.story.parts):
                add_part(c, project, self._part(n, part), begun)
            put_shop_hours(c, self.story.hours, begun)
        with self.database.reading() as connection:
            self.parts = read_shop(connection, NOW).parts
        for each in sorted(self.story.told, key=lambda h: -h.ago_h):
            self._happen(each)
        if self.story.away:
            leaves, back = self.story.away
            with self._act("away") as ledger:
                ledger.record(Away(when=When(ago(-leaves), ago(-back), Sureness.EXACT)))

    def _act(self, verb: str, hours: float = 0.0) -> Any:
        return self.database.writing(verb, verb, ago(hours), CLOCK.zone.key)

    def _room(self, connection: Any, n: int, told: dict[str, Any]) -> int:
        room = add_room(connection, ROOMS[n])
        hours = [UsualHour(*hour) for hour in told["usual"]]
        if hours or told["night"] is not None:
            put_usual_day(
                connection,
                room,
                ago(24 * 10),
                coldest_c=told["night"],
                hours=hours or None,
                heated=(*told["heated"], EVERY_DAY) if hours and told["heated"] else None,
            )
        return room

    def _part(self, n: int, told: dict[str, Any]) -> NewPart:
        steps = tuple(
            Step(place, doing)
            if isinstance(doing, Operation)
            else Step(place, Operation.COAT, self.products[doing])
            for place, doing in enumerate(told["steps"], 1)
        )
        faces = tuple(NewFace(name) for name in told["faces"])
        room = self.rooms[told["room"] % len(self.rooms)]
        return NewPart(("door", "legs")[n], told["pieces"], "ash", faces, steps, room=room)

    def _targets(self, each: Happened) -> frozenset[Target]:
        part: Part = self.parts[each.part % len(self.parts)]
        return frozenset(
            Target(piece.id, zone.id)
            for piece in part.pieces
            if not each.pieces or piece.number in each.pieces
            for face in part.faces
            if not each.face or face.name == each.face or len(part.faces) == 1
            for zone in face.zones
        )

    def _happen(self, each: Happened) -> None:
        when, targets = at(ago(each.ago_h)), self._targets(each)
        room = self.rooms[each.part % len(self.rooms)]
        with self._act(each.what, max(each.ago_h, 0.0)) as ledger:
            if each.what == "air":
                ledger.record(Reading(when=when, room=room, air=Air(*each.value)))
            elif each.what == "logger":
                ledger.record_air(
                    AirImported(
                        when=when, room=room, file_name="invented.csv", count=len(each.value)
                    ),
                    each.value,
                )
            elif each.what == "heat":
                length, warm = each.value
                span = When(when.earliest, ago(each.ago_h - length), Sureness.EXACT)
                ledger.record(Heated(when=span, room=room, temperature_c=warm))
            elif each.what == "move" and targets:
                into = self.rooms[each.value % len(self.rooms)]
                ledger.record(
                    Moved(when=when, pieces=frozenset({t.piece for t in targets}), room=into)
                )
            elif each.what == "check" and targets:
                ledger.record(
                    Check(
                        when=when,
                        targets=targets,
                        test=test_that_finds(each.value),
                        found=each.value,
                    )
                )
            elif each.what == "scuff" and targets:
                ledger.record(Work(when=when, targets=targets, operation=Operation.SCUFF))
            elif each.what == "coat" and targets:
                of = FACTS.finish_class(self.story.products[each.value])
                figures = judged_by(of, {}, None, FACTS.version)
                ledger.record(
                    Coat(
                        when=when,
                        targets=targets,
                        product=self.products[each.value],
                        figures=figures,
                    )
                )


def _hour(draw: st.DrawFn, low: float, high: float) -> float:
    """Draw a number of hours in steps of a minute, at odd seconds."""
    return draw(st.integers(int(low * 60), int(high * 60))) / 60 + 0.003


def _room(draw: st.DrawFn) -> dict[str, Any]:
    kind = draw(st.sampled_from(["nothing", "night", "usual", "usual", "heated"]))
    usual: list[tuple[int, float, float | None]] = []
    heated = None
    if kind in {"usual", "heated"}:
        minutes = draw(st.lists(st.integers(0, 95), min_size=2, max_size=3, unique=True))
        damp, mild = draw(st.booleans()), draw(st.booleans())
        usual = [
            (
                15 * n,
                float(draw(st.integers(8, 24)) if mild else draw(st.integers(2, 26))),
                float(draw(st.integers(35, 70 if mild else 90))) if damp else None,
            )
            for n in sorted(minutes)
        ]
    if kind == "heated":
        begins = draw(st.integers(0, 23)) * 60
        warm = draw(st.sampled_from([None, 18.0, 21.0]))
        heated = (begins, (begins + 60 * draw(st.integers(2, 14))) % (24 * 60), warm)
    night = float(draw(st.integers(1, 16))) if kind == "night" else None
    return {"usual": usual, "heated": heated, "night": night}


def _part(draw: st.DrawFn) -> dict[str, Any]:
    return {
        "pieces": draw(st.integers(1, 3)),
        "faces": draw(st.sampled_from([("all",), ("front", "back")])),
        "steps": draw(st.sampled_from(STEPS)),
        "room": draw(st.integers(0, 1)),
    }


def _air(draw: st.DrawFn) -> tuple[float, float]:
    if draw(st.integers(0, 3)):
        return float(draw(st.integers(14, 24))), float(draw(st.integers(35, 68)))
    return float(draw(st.integers(3, 30))), float(draw(st.integers(30, 95)))


def _logger(draw: st.DrawFn) -> Happened:
    """Draw a logger's series that ended some hours ago, every ten to sixty minutes."""
    ended = _hour(draw, 0.0, 30.0)
    step = draw(st.sampled_from([10, 20, 30, 60]))
    celsius, rh = _air(draw)
    swings = draw(st.lists(st.integers(-20, 20), min_size=6, max_size=20))
    points = [
        (
            ago(ended + step / 60 * (len(swings) - n)),
            Air(celsius + swing / 10, min(99.0, rh + swing / 4)),
        )
        for n, swing in enumerate(swings)
    ]
    return Happened(ended, "logger", draw(st.integers(0, 1)), value=points)


def _something(draw: st.DrawFn) -> Happened:
    kind = draw(st.sampled_from(["coat"] * 5 + ["check", "scuff", "air", "air", "move"]))
    part = draw(st.integers(0, 1))
    hours = _hour(draw, 0.2, draw(st.sampled_from([6.0, 30.0, 60.0])))
    some = draw(st.sampled_from([(), (), (), (1,), (1, 2)]))
    face = draw(st.sampled_from(["", "", "front", "back"])) if kind != "move" else ""
    value: Any = draw(st.integers(0, 1))
    if kind == "check":
        value = draw(st.sampled_from(FOUND))
    if kind == "air":
        hours, value = _hour(draw, 0.0, 60.0), _air(draw)
    return Happened(hours, kind, part, some, face, value)


@st.composite
def stories(draw: st.DrawFn) -> Story:
    """Tell of a random shop."""
    told = [_something(draw) for _ in range(draw(st.integers(0, 3)))]
    for part in (0, 1):
        # Mostly there is a young film, in air that was read since.
        if draw(st.integers(0, 3)):
            hours = _hour(draw, 0.1, draw(st.sampled_from([2.0, 9.0, 30.0])))
            told.append(Happened(hours, "coat", part, value=draw(st.sampled_from([0, 0, 0, 1]))))
        if draw(st.integers(0, 3)):
            told.append(Happened(_hour(draw, 0, 9), "air", part, value=_air(draw)))
    if draw(st.integers(0, 2)) == 0:
        told.append(_logger(draw))
    if draw(st.integers(0, 2)) == 0:
        length, warm = _hour(draw, 1, 12), draw(st.sampled_from([None, 17.0, 22.0]))
        begins = _hour(draw, -8, 8)
        told.append(Happened(begins, "heat", draw(st.integers(0, 1)), value=(length, warm)))
    leaves = _hour(draw, 1, 40)
    away = (leaves, leaves + _hour(draw, 2, 90)) if draw(st.integers(0, 3)) == 0 else None
    one = draw(st.sampled_from(CLASSES))
    other = draw(st.sampled_from([each for each in CLASSES if each != one]))
    return Story(
        products=(one, other),
        rooms=tuple(_room(draw) for _ in range(draw(st.integers(1, 2)))),
        parts=tuple(_part(draw) for _ in range(draw(st.integers(1, 2)))),
        hours=draw(st.sampled_from([EVENINGS, EVENINGS, WEEKENDS])),
        away=away,
        told=tuple(told),
    )
