"""Put parts on record, give them steps, put them away and bring them back."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from finishlog.acts.answers.made import Made, Shelved, a_name, free_name, in_words, notes_of_use
from finishlog.acts.things.archiving import open_rags_forbid, what_they_need
from finishlog.acts.things.faces import ALL_ROUND, copied, read_faces
from finishlog.acts.things.lessons import told_of_steps
from finishlog.acts.things.other_wood import other_wood
from finishlog.acts.things.projects import ask_for_whom
from finishlog.acts.things.steps import how_many_steps
from finishlog.asks.look.look import look
from finishlog.asks.things.species import near_woods
from finishlog.clock import Clock
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.film.old_finish import name_of
from finishlog.core.log.words import Operation
from finishlog.core.measure.whole_number import whole_number
from finishlog.core.published.facts import Facts
from finishlog.core.published.safety_notes import SafetyNote
from finishlog.core.shop.names import PathName
from finishlog.core.shop.things import (
    FaceKind,
    Need,
    OldFinish,
    Part,
    Schedule,
    Shop,
    Step,
    ThingKind,
)
from finishlog.errors import NotFound, UsageFault
from finishlog.picking import pick_project, pick_room, pick_schedule, pick_whole
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.add import NewFace, NewPart, add_part, add_project, assign_steps
from finishlog.store.things.archive import archive, restore
from finishlog.store.things.changes import ADDED, BEHIND, OVER, changed, read_changes
from finishlog.store.things.naming import rename
from finishlog.store.things.read_shop import read_schedules, read_shop

MOST_PIECES = 999
NO_OLD_FINISH = "none"


class PartTyped(Struct, frozen=True):
    """A part as typed: `path` is PROJECT/NAME; faces `front`, `tenon:joint`; needs `side:2`.

    `like` names a part whose wood, faces, steps and room it takes where nothing else is said.
    """

    path: str
    count: int = 1
    species: str | None = None
    faces: tuple[str, ...] = ()
    steps: str | None = None
    room: str | None = None
    needs: tuple[str, ...] = ()
    board: bool = False
    note: str = ""
    like: str | None = None
    old_finish: str | None = None


def new_part(context: Context, typed: PartTyped) -> Made:
    """Put a part on record; its project too, when that is new."""
    with context.writing("part new") as ledger:
        return put_part(context, ledger, typed)


def put_part(context: Context, ledger: Ledger, typed: PartTyped) -> Made:
    """Put a part on record within an act."""
    project_name, name = PathName.read(typed.path)
    name = a_name(name, "part")
    how_many(typed.count)
    shop = read_shop(ledger.connection, context.clock.now)
    project, project_name, of_project = _project(ledger, context.clock, shop, project_name)
    new = _like(shop, typed.like) if typed.like else NewPart(name)
    new = _as_typed(ledger, shop, project, replace(new, name=name), typed)
    lent = free_name(ledger, ThingKind.PART, name, within=project)
    part = add_part(ledger.connection, project, new, context.clock.now)
    changed(ledger, ThingKind.PART, part, ADDED, "", name)
    count = f"×{typed.count}" if typed.count > 1 else ""
    detail = in_words(
        count,
        unknown_wood(context.facts, new),
        lent,
        of_project,
        unheard_of(new.steps, new.faces),
        unmasked(new.steps, new.faces),
        f"{name_of(new.old_finish)} is on it" if new.old_finish else "",
        other_wood(context, ledger, new.steps_name, {part: new.species}),
    )
    asked, notes = _of_its_use(context.facts, shop, project, project_name, name)
    # A board is where it is tried again.
    again = () if new.is_board else new.steps
    bare = new.old_finish is None
    warnings = told_of_steps(context, ledger, shop, again, woods_of(new), on_bare_wood=bare)
    return Made("part", f"{project_name}/{name}", in_words(detail, asked), notes, warnings)


def _of_its_use(
    facts: Facts, before: Shop, project: int, project_name: str, name: str
) -> tuple[str, tuple[SafetyNote, ...]]:
    """Say what a piece for food or a child asks for, where the project did not say so already."""
    known = next((p for p in before.projects if p.id == project), None)
    if known is not None and (known.used_for or facts.care.uses_of(known.name)):
        return "", ()
    names = [name] if known else [project_name, name]
    return ask_for_whom(facts, project_name, *names), notes_of_use(facts, names)


def how_many(count: int) -> None:
    """Refuse a number of pieces that no part has."""
    if not 1 <= count <= MOST_PIECES:
        raise UsageFault(
            f"a part has at least one piece and at most {MOST_PIECES}, not {count}",
            f"type {Do.PART_NEW.option(count=12)}",
        )


def woods_of(part: NewPart | Part) -> list[str | None]:
    """Return the wood of a part, and those that its zones have of their own."""
    return [part.species, *(z.species for f in part.faces for z in f.zones if z.species)]


def unknown_wood(facts: Facts, part: NewPart) -> str:
    """Say which wood no rules are known for: it may be misspelt."""
    unknown = [wood for wood in woods_of(part) if wood and facts.species_named(wood) is None]
    return no_rules_for(facts, unknown[0]) if unknown else ""


def no_rules_for(facts: Facts, wood: str) -> str:
    """Say that nothing is known of a wood, and which ones are called nearly so."""
    near = near_woods(facts, wood)
    if not near:
        return f"no rules are known for {wood!r}, look at the spelling"
    return (
        f"no rules are known for {wood!r}; did you mean {' or '.join(near)}? "
        f"{Do.PART_EDIT('PART', species=near[0])}"
    )


def unheard_of(steps: Sequence[Step], faces: Sequence[NewFace]) -> str:
    """Say which faces the steps name that the part does not have."""
    names = {f.name.casefold() for f in faces}
    names |= {f"{f.name}/{z.name}".casefold() for f in faces for z in f.zones if z.name}
    missing = {f for s in steps for f in s.faces if f.casefold() not in names}
    some = ", ".join(sorted(missing))
    return f"its steps name {some}, which it does not have" if missing and faces else ""


def unmasked(steps: Sequence[Step], faces: Sequence[NewFace]) -> str:
    """Say which glue faces the steps leave without tape while they coat what is beside them."""
    joints = [f.name for f in faces if f.kind is FaceKind.JOINT]
    coats = any(s.operation is Operation.COAT for s in steps)
    if not joints or not coats or any(s.operation is Operation.MASK for s in steps):
        return ""
    names = " and ".join(joints)
    return f"{names} to be kept bare: mask before the first coat, untape before the glue-up"


def _project(ledger: Ledger, clock: Clock, shop: Shop, name: str) -> tuple[int, str, str]:
    """Find or make the project: its id, its name, and what there is to say of it."""
    if not name:
        if len(shop.projects) == 1:
            return shop.projects[0].id, shop.projects[0].name, ""
        raise UsageFault("which project is the part of?", "type it as PROJECT/PART")
    try:
        found = pick_project(shop, name)
    except NotFound:
        name = a_name(name, "project")
        lent = free_name(ledger, ThingKind.PROJECT, name)
        return add_project(ledger.connection, name, clock.now), name, lent
    return found.id, found.name, ""


def _like(shop: Shop, typed: str) -> NewPart:
    """Return a part like one there is."""
    part, *others = pick_whole(shop, [typed])
    if others:
        raise UsageFault(f"{typed!r} is more than one part", "name the one it is to be like")
    return NewPart(
        part.name,
        species=part.species,
        faces=copied(part.faces),
        steps=part.steps,
        steps_name=part.steps_name,
        needs=part.needs,
        room=part.room,
        is_board=part.is_board,
    )


def _as_typed(ledger: Ledger, shop: Shop, project: int, new: NewPart, typed: PartTyped) -> NewPart:
    """Lay what was typed over a part."""
    needs = check_needs(shop, project, typed.needs) or (new.needs if typed.like else ())
    if needs and (typed.faces or typed.old_finish):
        raise UsageFault(
            "an assembly has the faces of its members",
            f"leave out {Do.PART_NEW.option(face=True)} and {Do.PART_NEW.option(old_finish=True)}",
        )
    faces = read_faces(typed.faces) or (new.faces if typed.like else (ALL_ROUND,))
    steps, steps_name = new.steps, new.steps_name
    if typed.steps is not None:
        schedule = pick_schedule(shop, read_schedules(ledger.connection), typed.steps)
        steps, steps_name = schedule.steps, schedule.name
    return replace(
        new,
        pieces=typed.count,
        species=typed.species or new.species,
        faces=() if needs else faces,
        steps=steps,
        steps_name=steps_name,
        needs=needs,
        room=pick_room(shop, typed.room).id if typed.room else new.room,
        is_board=typed.board or new.is_board,
        note=typed.note,
        old_finish=read_old_finish(typed.old_finish),
    )


def read_old_finish(typed: str | None) -> OldFinish | None:
    """Read what was on a part when it came in; `none`, or nothing said: bare wood."""
    word = NO_OLD_FINISH if typed is None else typed.strip().casefold()
    if word == NO_OLD_FINISH:
        return None
    try:
        return OldFinish(word)
    except ValueError:
        kinds = ", ".join(kind.value for kind in OldFinish)
        raise UsageFault(
            f"no old finish is called {typed!r}", f"type one of: {kinds}, or {NO_OLD_FINISH}"
        ) from None


def check_needs(shop: Shop, project: int, typed: Sequence[str]) -> tuple[Need, ...]:
    """Read what one piece of an assembly is made of, `side:2`."""
    parts = {p.name: p.id for p in shop.parts if p.project == project}
    needs = []
    for text in typed:
        name, _, count = text.partition(":")
        if name not in parts:
            raise NotFound(f"no part {name!r} in this project yet", "make the members first")
        how_many = whole_number(count or "1")
        if how_many is None or not 1 <= how_many <= MOST_PIECES:
            raise UsageFault(f"{text!r} does not say how many", "write side:2")
        needs.append(Need(parts[name], how_many))
    return tuple(needs)


def give_steps(context: Context, parts: Sequence[int], name: str) -> Made:
    """Copy a finishing schedule onto parts; say where it was on another wood before."""
    with context.writing("part steps") as ledger:
        shop = read_shop(ledger.connection, context.clock.now)
        schedule = pick_schedule(shop, read_schedules(ledger.connection), name)
        mine = [part for part in shop.parts if part.id in parts]
        new = [part for part in mine if not part.is_board]
        for part in mine:
            assign_steps(ledger.connection, part.id, schedule.steps, schedule.name)
            changed(ledger, ThingKind.PART, part.id, "steps", part.steps_name, schedule.name)
        _begin_behind(context, ledger, mine, schedule)
        on = f"{how_many_steps(schedule.steps)} on {', '.join(part.path for part in mine)}"
        odd = dict.fromkeys(
            said(schedule.steps, copied(part.faces))
            for part in mine
            for said in (unheard_of, unmasked)
        )
        woods = {part.id: part.species for part in mine}
        wood = other_wood(context, ledger, schedule.name, woods)
        warnings = told_of_steps(
            context,
            ledger,
            shop,
            schedule.steps,
            [of for part in new for of in woods_of(part)],
            on_bare_wood=not all(part.old_finish for part in new),
        )
    return Made("steps", schedule.name, in_words(on, *odd, wood), warnings=warnings)


def _begin_behind(
    context: Context, ledger: Ledger, parts: Sequence[Part], schedule: Schedule
) -> None:
    """Let steps that go over a finish credit nothing from before they were put on record.

    Where they were done since, all of them, they begin once more where they are given.
    """
    told = read_changes(ledger.connection, ThingKind.STEPS, [schedule.id])
    over = next((str(change.act) for change in told if change.what == OVER), "")
    for part in parts:
        if over or part.behind:
            changed(ledger, ThingKind.PART, part.id, BEHIND, "", over)
    if not over:
        return
    zones = look(context, ledger.connection).bench.zones
    for part in parts:
        mine = [z.progress for z in zones if z.member.id == part.id and z.progress.steps]
        if mine and all(each.next is None for each in mine):
            changed(ledger, ThingKind.PART, part.id, BEHIND, over, str(ledger.act_id))


def rename_part(context: Context, typed: str, new: str) -> Made:
    """Give a part another name in its project; the old one still finds it."""
    with context.writing("part rename") as ledger:
        part = one_part(read_shop(ledger.connection, context.clock.now), typed)
        project, name = PathName.read(new)
        if project and project.casefold() != part.project_name.casefold():
            raise UsageFault(
                f"{part.path} stays in its project", f"type the new name alone: {name}"
            )
        rename(ledger, ThingKind.PART, part.id, a_name(name, "part"))
    return Made("part", f"{part.project_name}/{name.strip()}", f"{part.name} still finds it")


def one_part(shop: Shop, typed: str) -> Part:
    """Find exactly one part."""
    found = pick_whole(shop, [typed])
    if len(found) > 1:
        raise UsageFault(f"{typed!r} is more than one part", "name one")
    return found[0]


def archive_parts(context: Context, parts: Sequence[int]) -> Made:
    """Put parts away: no screen of the day shows them, `past` and `history` do."""
    with context.writing("part archive") as ledger:
        seen = look(context, ledger.connection)
        mine = [part for part in seen.shop.parts if part.id in parts]
        open_rags_forbid(seen, mine)
        for part in mine:
            archive(ledger, ThingKind.PART, part.id, context.clock.now)
    return Shelved("put away: part", ", ".join(part.path for part in mine))


def restore_parts(context: Context, typed: Sequence[str]) -> Made:
    """Bring parts back that were put away, with the products and rooms that they need."""
    with context.writing("part restore") as ledger:
        everything = read_shop(ledger.connection, context.clock.now, include_archived=True)
        living = read_shop(ledger.connection, context.clock.now)
        open_parts = {part.id for part in living.parts}
        gone = tuple(part for part in everything.parts if part.id not in open_parts)
        mine = _put_away(replace(everything, parts=gone), typed)
        for part in mine:
            if part.project not in {project.id for project in living.projects}:
                raise UsageFault(
                    f"its project {part.project_name} was put away",
                    Do.PROJECT_RESTORE(part.project_name),
                )
            restore(ledger, ThingKind.PART, part.id)
        also = what_they_need(ledger, context.clock, mine)
    return Shelved("back: part", ", ".join(part.path for part in mine), also)


def _put_away(shop: Shop, typed: Sequence[str]) -> list[Part]:
    try:
        return list(pick_whole(shop, typed))
    except NotFound as fault:
        names = ", ".join(part.path for part in shop.parts[-5:]) or "none"
        raise NotFound(f"{fault.message} among those put away", f"put away: {names}") from None
