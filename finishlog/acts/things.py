"""Set up what there is: projects, parts, finishing schedules, products, rooms, shop hours."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from finishlog.asks.classes import class_key
from finishlog.asks.look import look
from finishlog.asks.settings import TEMPERATURE
from finishlog.clock import Clock
from finishlog.core.finishes import Figure, RecoatWindow
from finishlog.core.records import Operation
from finishlog.core.shop import FaceKind, Need, Shop, Step
from finishlog.core.shop_hours import WeeklyHours
from finishlog.core.stages import Stage
from finishlog.core.units import Temperature
from finishlog.errors import NotFound, UsageFault
from finishlog.facts.load import Facts
from finishlog.picking import operation_word, pick_product, pick_project, pick_room
from finishlog.store.database import Database
from finishlog.store.labels import put_label_figure, put_label_window
from finishlog.store.read_shop import read_shop, read_steps
from finishlog.store.things import (
    NewFace,
    NewPart,
    add_part,
    add_product,
    add_project,
    add_room,
    add_steps,
    archive_part,
    assign_steps,
)
from finishlog.store.usual import put_setting, put_shop_hours, put_usual_day

MOST_PIECES = 999
_LONGEST_NAME = 60
_NAME = re.compile(r"[^\W_][\w .'+-]*", re.UNICODE)


@dataclass(frozen=True, slots=True)
class Made:
    """A thing as it was put on record."""

    kind: str
    name: str
    detail: str = ""


def a_name(typed: str, kind: str) -> str:
    """Read a name; UsageFault when it would be taken for something else."""
    name = typed.strip()
    if not _NAME.fullmatch(name) or len(name) > _LONGEST_NAME:
        raise UsageFault(
            f"{typed[:_LONGEST_NAME]!r} cannot name a {kind}",
            f"use up to {_LONGEST_NAME} letters, figures, dashes; no / : @ * or comma",
        )
    if name.casefold().replace(" ", "-") in set(Operation):
        raise UsageFault(f"{name!r} is a kind of work, it cannot name a {kind}", "choose another")
    return name


def new_project(
    database: Database, clock: Clock, words: str, name: str, due: datetime | None, note: str
) -> Made:
    """Put a project on record."""
    name = a_name(name, "project")
    with database.writing("project new", words, clock.now, clock.zone.key) as ledger:
        add_project(ledger.connection, name, clock.now, due=due, note=note)
    return Made("project", name)


@dataclass(frozen=True, slots=True)
class PartTyped:
    """A part as typed: `path` is PROJECT/NAME; faces `front`, `tenon:joint`; needs `side:2`."""

    path: str
    count: int = 1
    species: str | None = None
    faces: tuple[str, ...] = ()
    steps: str | None = None
    room: str | None = None
    needs: tuple[str, ...] = ()
    board: bool = False
    note: str = ""


def new_part(database: Database, facts: Facts, clock: Clock, words: str, typed: PartTyped) -> Made:
    """Put a part on record; its project too, when that is new."""
    project_name, _, name = typed.path.rpartition("/")
    name = a_name(name, "part")
    if not 1 <= typed.count <= MOST_PIECES:
        raise UsageFault(
            f"a part has at least one piece and at most {MOST_PIECES}, not {typed.count}",
            "type --count 12",
        )
    with database.writing("part new", words, clock.now, clock.zone.key) as ledger:
        shop = read_shop(ledger.connection, clock.now)
        project = _project(shop, project_name)
        if project is None:
            new_name = a_name(project_name, "project")
            project = add_project(ledger.connection, new_name, clock.now)
        new = NewPart(
            name,
            pieces=typed.count,
            species=typed.species,
            faces=_faces(typed),
            steps=_schedule(read_steps(ledger.connection), typed.steps),
            steps_name=typed.steps or "",
            needs=_needs(shop, project, typed.needs),
            room=pick_room(shop, typed.room).id if typed.room else None,
            is_board=typed.board,
            note=typed.note,
        )
        add_part(ledger.connection, project, new, clock.now)
    detail = f"×{typed.count}" if typed.count > 1 else ""
    if typed.species and facts.species_named(typed.species) is None:
        detail = f"{detail} no rules are known for {typed.species!r}, look at the spelling".strip()
    return Made("part", f"{project_name}/{name}" if project_name else name, detail)


def _project(shop: Shop, name: str) -> int | None:
    """Find the project; without a name, the only one there is. None: it is new."""
    if not name:
        if len(shop.projects) == 1:
            return shop.projects[0].id
        raise UsageFault("which project is the part of?", "type it as PROJECT/PART")
    try:
        return pick_project(shop, name).id
    except NotFound:
        return None


def _faces(part: PartTyped) -> tuple[NewFace, ...]:
    """Read the faces; an assembly has its members' faces and none of its own."""
    if part.needs and part.faces:
        raise UsageFault("an assembly has the faces of its members", "leave out --face")
    if not part.faces:
        return () if part.needs else (NewFace("all round"),)
    names = [text.partition(":")[0].strip().casefold() for text in part.faces]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        raise UsageFault(f"the face {twice!r} is named twice", "name each face once")
    faces = []
    for text in part.faces:
        name, _, kind = text.partition(":")
        try:
            faces.append(NewFace(a_name(name, "face"), FaceKind(kind or "show")))
        except ValueError:
            raise UsageFault(
                f"{kind!r} is no kind of face", "write front, back:hidden or tenon:joint"
            ) from None
    return tuple(faces)


def _schedule(known: Mapping[str, Sequence[Step]], name: str | None) -> tuple[Step, ...]:
    if name is None:
        return ()
    if name not in known:
        names = ", ".join(sorted(known)) or "none yet"
        raise NotFound(f"no steps are called {name!r}", f"there are: {names}")
    return tuple(known[name])


def _needs(shop: Shop, project: int, typed: Sequence[str]) -> tuple[Need, ...]:
    parts = {p.name: p.id for p in shop.parts if p.project == project}
    needs = []
    for text in typed:
        name, _, count = text.partition(":")
        if name not in parts:
            raise NotFound(f"no part {name!r} in this project yet", "make the members first")
        if count and not (count.isdigit() and 1 <= int(count) <= MOST_PIECES):
            raise UsageFault(f"{text!r} does not say how many", "write side:2")
        needs.append(Need(parts[name], int(count or 1)))
    return tuple(needs)


def archive(
    database: Database, facts: Facts, clock: Clock, words: str, parts: Sequence[int]
) -> Made:
    """Put parts away: no screen of the day shows them, `past` and `history` do.

    Refused while rags of theirs are open: those must stay in sight.
    """
    with database.writing("part archive", words, clock.now, clock.zone.key) as ledger:
        seen = look(ledger.connection, facts, clock)
        pieces = {p.id for part in seen.shop.parts if part.id in parts for p in part.pieces}
        for item in seen.bench.rags:
            if item.is_open and any(t.piece in pieces for t in item.targets):
                raise UsageFault(
                    f"rags of {item.product} are still open on it",
                    "see to them first: finishlog rags",
                )
        for part in parts:
            archive_part(ledger.connection, part, clock.now)
    return Made("archive", f"{len(parts)} part(s)")


def new_steps(
    database: Database, clock: Clock, words: str, name: str, typed: Sequence[str], note: str
) -> Made:
    """Put a finishing schedule on record."""
    name = a_name(name, "set of steps")
    with database.writing("steps new", words, clock.now, clock.zone.key) as ledger:
        shop = read_shop(ledger.connection, clock.now)
        steps = read_step_words(shop, typed)
        add_steps(ledger.connection, name, steps, note)
    return Made("steps", name, f"{len(steps)} steps")


def read_step_words(shop: Shop, typed: Sequence[str]) -> tuple[Step, ...]:
    """Read steps as typed: `sand`, `sealer`, `topcoat*3`, `topcoat@back`."""
    steps: list[Step] = []
    for text in typed:
        word, _, faces = text.partition("@")
        word, _, times = word.partition("*")
        if times and not (times.isdigit() and 1 <= int(times) <= 30):
            raise UsageFault(f"{text!r}: {times!r} is no number of coats", "write topcoat*3")
        operation = operation_word(word)
        product = None if operation else pick_product(shop, word).id
        for _ in range(int(times or 1)):
            steps.append(
                Step(
                    len(steps),
                    operation or Operation.COAT,
                    product,
                    tuple(f.strip() for f in faces.split(",")) if faces else (),
                )
            )
    if not steps:
        raise UsageFault(
            "a finishing schedule needs a step", "finishlog steps new NAME sand sealer"
        )
    return tuple(steps)


def give_steps(
    database: Database, clock: Clock, words: str, parts: Sequence[int], name: str
) -> Made:
    """Copy a finishing schedule onto parts."""
    with database.writing("part steps", words, clock.now, clock.zone.key) as ledger:
        steps = _schedule(read_steps(ledger.connection), name)
        for part in parts:
            assign_steps(ledger.connection, part, steps, name)
    return Made("steps", name, f"{len(steps)} steps on {len(parts)} part(s)")


@dataclass(frozen=True, slots=True)
class ProductTyped:
    """A product as typed: its class and what its label says."""

    name: str
    class_typed: str
    label: Mapping[Stage, Figure]
    window: RecoatWindow | None = None
    note: str = ""


def new_product(
    database: Database, facts: Facts, clock: Clock, words: str, typed: ProductTyped
) -> Made:
    """Put a product on record with the figures on its label."""
    name = a_name(typed.name, "product")
    key = class_key(facts, typed.class_typed)
    with database.writing("product new", words, clock.now, clock.zone.key) as ledger:
        product = add_product(ledger.connection, name, key, clock.now, note=typed.note)
        _label(ledger.connection, product, typed, clock.now)
    return Made("product", name, ", ".join([key, *_echo(typed)]))


def label_product(database: Database, clock: Clock, words: str, typed: ProductTyped) -> Made:
    """Change what a label says from now on; coats already on keep what they were judged by."""
    if not typed.label and typed.window is None:
        raise UsageFault("nothing to change on the label", "say what it says: --recoat 4h")
    with database.writing("product label", words, clock.now, clock.zone.key) as ledger:
        product = pick_product(read_shop(ledger.connection, clock.now), typed.name)
        _label(ledger.connection, product.id, typed, clock.now)
    return Made("label", product.name, ", ".join([product.class_key, *_echo(typed)]))


def _echo(typed: ProductTyped) -> list[str]:
    """Say back what was understood; UsageFault when a window closes before the recoat time."""
    recoat, closes = typed.label.get(Stage.RECOAT), typed.window.closes if typed.window else None
    if recoat and closes and closes.low_h <= recoat.low_h:
        raise UsageFault(
            f"a window of {closes.low_h:g} h closes before {recoat.low_h:g} h to recoat",
            "look at the can again: --recoat 3h --window 24h",
        )
    said = [f"{stage.value} {_hours(figure)}" for stage, figure in typed.label.items()]
    return [*said, *([f"window {_hours(closes)}"] if closes else [])]


def _hours(figure: Figure) -> str:
    ends = [f"{h:g} h" if h >= 1 else f"{60 * h:.0f} min" for h in (figure.low_h, figure.high_h)]
    return " to ".join(dict.fromkeys(ends))


def _label(connection: object, product: int, typed: ProductTyped, since: datetime) -> None:
    for stage, figure in typed.label.items():
        put_label_figure(connection, product, stage, figure, since)  # type: ignore[arg-type]
    if typed.window is not None:
        put_label_window(connection, product, typed.window, since)  # type: ignore[arg-type]


def new_room(
    database: Database, clock: Clock, words: str, name: str, coldest_c: float | None, note: str
) -> Made:
    """Put a room on record, with its coldest night (°C) when that is known."""
    name = a_name(name, "room")
    with database.writing("room new", words, clock.now, clock.zone.key) as ledger:
        room = add_room(ledger.connection, name, note=note)
        if coldest_c is not None:
            put_usual_day(ledger.connection, room, clock.now, coldest_c=coldest_c)
    return Made("room", name)


def coldest_night(
    database: Database, clock: Clock, words: str, room: str, coldest_c: float
) -> Made:
    """Say how cold a room's nights get from now on (°C)."""
    with database.writing("room night", words, clock.now, clock.zone.key) as ledger:
        known = pick_room(read_shop(ledger.connection, clock.now), room)
        put_usual_day(ledger.connection, known.id, clock.now, coldest_c=coldest_c)
    return Made("room", known.name)


def temperature_in(database: Database, clock: Clock, words: str, typed: str) -> Made:
    """Set the unit that temperatures are typed and shown in."""
    try:
        unit = Temperature(typed.strip().lstrip("°").upper())
    except ValueError:
        raise UsageFault(f"{typed!r} is no unit of temperature", "type C or F") from None
    with database.writing("shop units", words, clock.now, clock.zone.key) as ledger:
        put_setting(ledger.connection, TEMPERATURE, unit.value)
    return Made("units", f"°{unit.value}")


def shop_hours(database: Database, clock: Clock, words: str, week: Sequence[WeeklyHours]) -> Made:
    """Say when the shop is open, from now on."""
    with database.writing("shop hours", words, clock.now, clock.zone.key) as ledger:
        put_shop_hours(ledger.connection, week, clock.now)
        put_setting(ledger.connection, "time_zone", clock.zone.key)
    return Made("shop", "hours")
