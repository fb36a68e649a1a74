"""Load a project from a file: what is missing is put on record, nothing there is changes.

One transaction: a file that cannot be loaded whole leaves nothing. What differs from what there
is comes back with the command that would change it.
"""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct
from msgspec.structs import replace

from finishlog.acts.answers.made import Made, Reaches, a_name
from finishlog.acts.things.differences import (
    Difference,
    of_part,
    of_product,
    of_project,
    of_room,
    of_steps,
    was_put_away,
)
from finishlog.acts.things.faces import read_faces
from finishlog.acts.things.lessons import what_steps_hurt
from finishlog.acts.things.own_rules import put_says
from finishlog.acts.things.parts import check_needs, how_many, put_part
from finishlog.acts.things.products import put_product
from finishlog.acts.things.project_file import PartInFile, ProductInFile, ProjectFile, at_place
from finishlog.acts.things.rooms import put_room
from finishlog.acts.things.steps import put_steps
from finishlog.asks.bench.open_cans import BeforeLine
from finishlog.asks.things.classes import class_key
from finishlog.context import Context
from finishlog.core.findings import Finding
from finishlog.core.shop.names import Thing, called
from finishlog.core.shop.things import Project, Shop, ThingKind
from finishlog.errors import UsageFault
from finishlog.picking import pick_room, pick_schedule
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.add import add_project
from finishlog.store.things.archive import put_away
from finishlog.store.things.changes import ADDED, changed
from finishlog.store.things.read_shop import read_schedules, read_shop


class Loaded(Struct, frozen=True):
    """What was added, how much was there already, and what differs. `only_checked`: no trace.

    `warnings`: what went wrong here before with the steps of parts that were added.
    """

    file: str
    project: str
    added: tuple[str, ...]
    as_it_was: int
    differs: tuple[Difference, ...]
    only_checked: bool
    warnings: tuple[Finding, ...] = ()
    # Of steps that were added: what stands ready before their cans are opened, whom they reach.
    before: tuple[BeforeLine, ...] = ()
    people: tuple[Reaches, ...] = ()


class _NotKept(Exception):
    """Ends a transaction that is to leave nothing."""


def load(context: Context, file: ProjectFile, *, check: bool) -> Loaded:
    """Load a file; with `check`, or when there is nothing to add, nothing is written."""
    done: _Loading | None = None
    try:
        with context.writing("project load") as ledger:
            done = _Loading(context, ledger, file)
            done.everything()
            if check or not done.added:
                raise _NotKept
    except _NotKept:
        pass
    assert done is not None
    added, differs = tuple(done.added), tuple(done.differs)
    warnings = tuple(dict.fromkeys(done.warnings))
    told = Loaded(file.file, file.project, added, done.as_it_was, differs, check, warnings)
    return replace(told, before=done.hurts.before, people=done.hurts.people)


class _Loading:
    """One file on its way into the shop."""

    def __init__(self, context: Context, ledger: Ledger, file: ProjectFile) -> None:
        self.context, self.ledger, self.file = context, ledger, file
        self.added: list[str] = []
        self.differs: list[Difference] = []
        self.warnings: list[Finding] = []
        self.as_it_was = 0
        self.hurts = Made("steps", "")

    def everything(self) -> None:
        """Load it in the order in which one needs the other."""
        self._rooms()
        self._products()
        self._steps()
        if self.file.project:
            self._parts(self._project())

    def _shop(self) -> Shop:
        """Read what there is by now, with what was put away."""
        return read_shop(self.ledger.connection, self.context.clock.now, include_archived=True)

    def _compare(self, kind: ThingKind, thing: Thing, found: Iterable[Difference]) -> None:
        """Note how a thing that is there differs from the file."""
        away = {each.id for each in put_away(self.ledger.connection, kind)}
        differs = [was_put_away(kind, thing.name)] if thing.id in away else list(found)
        self.differs += differs
        self.as_it_was += not differs

    def _rooms(self) -> None:
        for room in self.file.rooms:
            shop = self._shop()
            known = _known(room.name, shop.rooms.values(), shop, ThingKind.ROOM)
            if known:
                self._compare(ThingKind.ROOM, known, of_room(room, known))
                continue
            with at_place(self.file.file, f"[rooms.{room.name}]"):
                put_room(
                    self.ledger, self.context.clock, room.name, room.coldest_c, room.note or ""
                )
            self.added.append(f"room {room.name}")

    def _products(self) -> None:
        new: list[ProductInFile] = []
        for product in self.file.products:
            shop, name = self._shop(), product.typed.name
            known = _known(name, shop.products.values(), shop, ThingKind.PRODUCT)
            with at_place(self.file.file, f"[products.{name}] class"):
                class_key(self.context.facts, product.typed.class_typed)
            with at_place(self.file.file, f"[products.{name}]"):
                if known:
                    found = of_product(product, known, shop, self.context.facts)
                    self._compare(ThingKind.PRODUCT, known, found)
                    continue
                put_product(self.context, self.ledger, product.typed)
            new.append(product)
            self.added.append(f"product {name}")
        self._says(product for product in new if product.says)

    def _says(self, products: Iterable[ProductInFile]) -> None:
        """Put on record what new products say beyond their labels: they may name one another."""
        for product in products:
            shop, name = self._shop(), product.typed.name
            added = next(p for p in shop.products.values() if p.name == name)
            with at_place(self.file.file, f"[products.{name}] says"):
                for each in product.says:
                    put_says(self.context, self.ledger, added, each.typed, shop)

    def _steps(self) -> None:
        new: list[str] = []
        for steps in self.file.steps:
            shop = self._shop()
            schedules = read_schedules(self.ledger.connection, include_archived=True)
            known = _known(steps.name, schedules, shop, ThingKind.STEPS)
            with at_place(self.file.file, f"[steps] {steps.name}"):
                if known:
                    self._compare(
                        ThingKind.STEPS, known, of_steps(steps, known, shop, self.context.facts)
                    )
                    continue
                put_steps(self.context, self.ledger, steps.name, steps.steps, "")
            self.added.append(f"steps {steps.name}")
            new.append(steps.name)
        there = read_schedules(self.ledger.connection)
        steps_of = [step for each in there if each.name in new for step in each.steps]
        if new:
            self.hurts = what_steps_hurt(self.context, self.ledger, steps_of, self.hurts, new)

    def _project(self) -> Project:
        file, shop = self.file, self._shop()
        known = _known(file.project, shop.projects, shop, ThingKind.PROJECT)
        if known:
            self._compare(ThingKind.PROJECT, known, of_project(file, known, self.context.clock))
            return known
        with at_place(file.file, "project"):
            name = a_name(file.project, "project")
        with at_place(file.file, "due"):
            if file.due and file.due < self.context.clock.now:
                raise UsageFault("this day is past", "write a day to come: 2027-06-30")
        added = add_project(
            self.ledger.connection,
            name,
            self.context.clock.now,
            due=file.due,
            note=file.note or "",
            used_for=file.used_for or "",
        )
        changed(self.ledger, ThingKind.PROJECT, added, ADDED, "", name)
        self.added.append(f"project {name}")
        return Project(added, name, file.due, file.note or "", file.used_for)

    def _parts(self, project: Project) -> None:
        for part in self.file.parts:
            shop = self._shop()
            mine = [p for p in shop.parts if p.project == project.id]
            known = _known(part.typed.path, mine, shop, ThingKind.PART)
            self._check(part)
            if known:
                self._compare(ThingKind.PART, known, of_part(part, known, shop))
                continue
            self._check_what_is_new(part, project)
            path = f"{project.name}/{part.typed.path}"
            with at_place(self.file.file, f"[parts.{part.typed.path}]"):
                made = put_part(self.context, self.ledger, replace(part.typed, path=path))
            self.warnings += made.warnings
            self.added.append(f"part {path}")

    def _check(self, part: PartInFile) -> None:
        """Refuse at its own key what cannot be read of a part."""
        place = f"[parts.{part.typed.path}]"
        with at_place(self.file.file, f"{place} count"):
            how_many(part.typed.count)
        with at_place(self.file.file, f"{place} faces"):
            read_faces(part.typed.faces)

    def _check_what_is_new(self, part: PartInFile, project: Project) -> None:
        """Refuse at its own key what a new part needs and is not there."""
        typed, shop = part.typed, read_shop(self.ledger.connection, self.context.clock.now)
        place = f"[parts.{typed.path}]"
        with at_place(self.file.file, f"{place} of"):
            check_needs(shop, project.id, typed.needs)
        with at_place(self.file.file, f"{place} room"):
            if typed.room:
                pick_room(shop, typed.room)
        with at_place(self.file.file, f"{place} steps"):
            if typed.steps:
                pick_schedule(shop, read_schedules(self.ledger.connection), typed.steps)


def _known(name: str, among: Iterable[Thing], shop: Shop, kind: ThingKind) -> Thing | None:
    """Find a thing by its whole name, or the whole name it had before."""
    things = list(among)
    whole = called(name, things, lambda thing: thing.name)
    if whole:
        return whole[0]
    low = name.casefold()
    old = {a.thing for a in shop.aliases if a.kind is kind and a.old_name.casefold() == low}
    return next((thing for thing in things if thing.id in old), None)
