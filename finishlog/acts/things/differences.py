"""How a project file differs from what there is, and what to type to make it so."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct
from msgspec.structs import replace

from finishlog.acts.answers.made import RESTORE
from finishlog.acts.things.faces import read_faces
from finishlog.acts.things.own_rules import own_rules
from finishlog.acts.things.products import typed_hours, typed_window, window_words
from finishlog.acts.things.project_file import (
    PartInFile,
    ProductInFile,
    ProjectFile,
    RoomInFile,
    StepsInFile,
)
from finishlog.acts.things.steps import read_step_words
from finishlog.asks.bench.on import step_words
from finishlog.asks.things.classes import class_key
from finishlog.asks.things.own_words import own_words
from finishlog.clock import Clock
from finishlog.core.air.psychrometrics import STANDARD_AIR
from finishlog.core.commands import Do
from finishlog.core.finish.classes import Figure, RecoatWindow
from finishlog.core.log.shown_times import clock_words
from finishlog.core.measure.quantities import celsius
from finishlog.core.published.facts import Facts
from finishlog.core.shop.things import (
    Face,
    Part,
    Product,
    Project,
    Room,
    Schedule,
    Shop,
    ThingKind,
    Zone,
    face_words,
)


class Difference(Struct, frozen=True):
    """One thing that the file says otherwise: `now_is` in the shop, `in_file`, what to type."""

    what: str
    now_is: str
    in_file: str
    to_change: str


def was_put_away(kind: ThingKind, name: str) -> Difference:
    """Say that a thing of the file was put away."""
    return Difference(f"{kind.value} {name}", "put away", "in use", RESTORE[kind](name))


def of_room(file: RoomInFile, room: Room) -> Iterator[Difference]:
    """Compare a room."""
    what = f"room {room.name}"
    if file.coldest_c is not None and file.coldest_c != room.coldest_night_c:
        known = room.coldest_night_c
        was = celsius(known, 1) if known is not None else "not said"
        night = f"{file.coldest_c:g}C"
        yield Difference(
            f"{what}, night", was, celsius(file.coldest_c, 1), Do.ROOM_NIGHT(room.name, night)
        )
    if file.note is not None and file.note != room.note:
        change = Do.ROOM_EDIT(room.name, note=file.note)
        yield Difference(f"{what}, note", room.note, file.note, change)


def of_product(
    file: ProductInFile, product: Product, shop: Shop, facts: Facts
) -> Iterator[Difference]:
    """Compare a product: its class, its note, and what its label says."""
    typed, what = file.typed, f"product {product.name}"
    key = class_key(facts, typed.class_typed)
    if key != product.class_key:
        change = Do.PRODUCT_EDIT(product.name, class_=key)
        yield Difference(f"{what}, class", product.class_key, key, change)
    if "note" in file.given and typed.note != product.note:
        change = Do.PRODUCT_EDIT(product.name, note=typed.note)
        yield Difference(f"{what}, note", product.note, typed.note, change)
    sheen = typed.sheen
    if sheen is not None and sheen is not product.sheen:
        change = Do.PRODUCT_EDIT(product.name, sheen=sheen)
        yield Difference(f"{what}, sheen", product.sheen or "not said", sheen, change)
    for stage, figure in typed.label.items():
        known = product.label.get(stage)
        if not _same(figure, known):
            change = _label(product, stage.value, figure, typed_hours(figure))
            yield Difference(f"{what}, {stage.value}", _span(known), _span(figure), change)
    if typed.window and not _same_window(typed.window, product.label_window):
        was = window_words(product.label_window) if product.label_window else "not said"
        yield Difference(
            f"{what}, window", was, window_words(typed.window), _window(product, typed.window)
        )

    said = {replace(rule, act=None) for rule in product.own_rules}
    for each in file.says:
        missing = [r for r in own_rules(each.typed, product, shop, facts) if r not in said]
        if missing:
            words = ", ".join(own_words(rule, shop.products) for rule in missing)
            change = Do.PRODUCT_SAYS(product.name, **each.words)
            yield Difference(f"{what}, says", "not said", words, change)


def _same_window(one: RecoatWindow, other: RecoatWindow | None) -> bool:
    """Tell whether two windows say the same hours at the same air."""
    if other is None or (one.kind, one.again) != (other.kind, other.again):
        return False
    return one.closes is None or _same(one.closes, other.closes)


def _window(product: Product, window: RecoatWindow) -> str:
    assert window.closes is not None
    return _label(product, "window", window.closes, typed_window(window))


def _same(one: Figure, other: Figure | None) -> bool:
    """Tell whether two figures say the same hours at the same air."""
    return other is not None and (one.low_h, one.high_h, one.at, one.colder) == (
        other.low_h,
        other.high_h,
        other.at,
        other.colder,
    )


def _label(product: Product, option: str, figure: Figure, typed: str) -> str:
    air = figure.at
    options = {option: typed}
    if air != STANDARD_AIR:
        options["label_air"] = f"{air.temperature_c:g}C {air.humidity_pct:g}%"
    return Do.PRODUCT_LABEL(product.name, **options)


def _span(figure: Figure | None) -> str:
    return typed_hours(figure) if figure else "not said"


def of_steps(
    file: StepsInFile, schedule: Schedule, shop: Shop, facts: Facts
) -> Iterator[Difference]:
    """Compare a finishing schedule."""
    wanted = [step_words(step, shop) for step in read_step_words(shop, file.steps, facts)]
    known = [step_words(step, shop) for step in schedule.steps]
    if wanted != known:
        change = Do.STEPS_EDIT(schedule.name, *file.steps)
        yield Difference(f"steps {schedule.name}", ", ".join(known), ", ".join(wanted), change)


def of_project(file: ProjectFile, project: Project, clock: Clock) -> Iterator[Difference]:
    """Compare a project's date and note."""
    what = f"project {project.name}"
    if file.due is not None and file.due != project.due:
        day = f"{file.due.astimezone(clock.zone):%Y-%m-%d %H:%M}"
        change = Do.PROJECT_EDIT(project.name, due=day)
        known, wanted = (
            clock_words(due, clock.now, clock.zone) if due else "no date"
            for due in (project.due, file.due)
        )
        yield Difference(f"{what}, due", known, wanted, change)
    if file.used_for is not None and file.used_for is not project.used_for:
        change = Do.PROJECT_EDIT(project.name, for_=file.used_for.value)
        known = project.used_for.value if project.used_for else "anyone"
        yield Difference(f"{what}, for", known, file.used_for.value, change)
    if file.note is not None and file.note != project.note:
        change = Do.PROJECT_EDIT(project.name, note=file.note)
        yield Difference(f"{what}, note", project.note, file.note, change)


def of_part(file: PartInFile, part: Part, shop: Shop) -> Iterator[Difference]:
    """Compare a part by what the file says of it."""
    typed, what = file.typed, f"part {part.path}"
    room = shop.rooms.get(part.room) if part.room is not None else None
    values = {
        "count": (str(len(part.pieces)), str(typed.count)),
        "species": (part.species or "", typed.species or ""),
        "room": (room.name if room else "", typed.room or ""),
        "note": (part.note, typed.note),
        "old-finish": (part.old_finish or "", typed.old_finish or ""),
    }
    for key, (known, wanted) in values.items():
        if key.replace("-", "_") in file.given and known.casefold() != wanted.casefold():
            change = Do.PART_EDIT(part.path, **{key: wanted})
            yield Difference(f"{what}, {key}", known or "not said", wanted, change)
    if "board" in file.given and typed.board is not part.is_board:
        change = Do.PART_EDIT(part.path, **{"board" if typed.board else "no_board": True})
        yield Difference(f"{what}, board", str(part.is_board), str(typed.board), change)
    if "steps" in file.given and (typed.steps or "").casefold() != part.steps_name.casefold():
        change = Do.PART_STEPS(part.path, as_=typed.steps or "")
        yield Difference(f"{what}, steps", part.steps_name or "none", typed.steps or "", change)
    if "faces" in file.given:
        yield from _faces(file, part)
    if "of" in file.given:
        yield from _needs(file, part, shop)


def _faces(file: PartInFile, part: Part) -> Iterator[Difference]:
    wanted = [
        face_words(
            Face(0, f.name, f.kind, tuple(Zone(0, z.name, z.species) for z in f.zones), f.meets)
        )
        for f in read_faces(file.typed.faces)
    ]
    known = [face_words(face) for face in part.faces]
    missing = [words for words in wanted if words not in known]
    if missing:
        change = Do.PART_EDIT(part.path, face=missing)
        yield Difference(f"part {part.path}, faces", "; ".join(known), "; ".join(wanted), change)


def _needs(file: PartInFile, part: Part, shop: Shop) -> Iterator[Difference]:
    names = {p.id: p.name for p in shop.parts}
    known = [f"{names.get(need.part, '')}:{need.count}" for need in part.needs]
    wanted = [text if ":" in text else f"{text}:1" for text in file.typed.needs]
    if sorted(known) != sorted(wanted):
        change = Do.PART_NEW(f"{part.project_name}/NAME", of=wanted)
        yield Difference(f"part {part.path}, of", ", ".join(known), ", ".join(wanted), change)
