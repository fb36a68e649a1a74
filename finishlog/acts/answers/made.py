"""What an act that changes the list of things answers with, and what may be a name."""

from __future__ import annotations

import re
from collections.abc import Iterable

from msgspec import Struct

from finishlog.asks.bench.open_cans import BeforeLine
from finishlog.asks.look.look import Look
from finishlog.core.commands import Do
from finishlog.core.findings import Finding
from finishlog.core.finish.hazard import Hazard
from finishlog.core.log.words import Operation
from finishlog.core.mixing.chemistry import Ingredient
from finishlog.core.published.care import UsedFor
from finishlog.core.published.facts import Facts
from finishlog.core.published.safety_notes import SafetyNote, StaysOut, notes_for
from finishlog.core.safety.hazards import hazards_in, hazards_of
from finishlog.core.shop.things import ThingKind
from finishlog.errors import UsageFault
from finishlog.picking import Zones
from finishlog.store.log.ledger import Ledger
from finishlog.store.things.naming import lend_name

# What brings a thing of a kind back.
RESTORE = {
    ThingKind.PROJECT: Do.PROJECT_RESTORE,
    ThingKind.PART: Do.PART_RESTORE,
    ThingKind.PRODUCT: Do.PRODUCT_RESTORE,
    ThingKind.ROOM: Do.ROOM_RESTORE,
    ThingKind.STEPS: Do.STEPS_RESTORE,
    ThingKind.CONTAINER: Do.CAN_RESTORE,
}

_LONGEST_NAME = 60
_NAME = re.compile(r"[^\W_][\w .'+-]*", re.UNICODE)


class Reaches(Struct, frozen=True):
    """A room in which what was chosen reaches somebody: where they stay and whom to ask."""

    room: str
    of: StaysOut


class Made(Struct, frozen=True):
    """A thing as it was put on record or changed; `notes`: what to know before work on it.

    `warnings`: what went wrong here before with such steps.
    """

    kind: str
    name: str
    detail: str = ""
    notes: tuple[SafetyNote, ...] = ()
    warnings: tuple[Finding, ...] = ()
    # What stands ready before what was chosen is opened.
    before: tuple[BeforeLine, ...] = ()
    # Rooms on record where somebody lives whom it reaches.
    people: tuple[Reaches, ...] = ()


class Shelved(Made, frozen=True):
    """A thing that was put away or brought back; `kind` says which: `put away: room`."""


def a_name(typed: str, kind: str) -> str:
    """Read a name; UsageFault when it would be taken for something else."""
    name = typed.strip()
    if not _NAME.fullmatch(name) or len(name) > _LONGEST_NAME:
        raise UsageFault(
            f"{typed[:_LONGEST_NAME]!r} cannot name a {kind}",
            f"use up to {_LONGEST_NAME} letters, figures, dashes; no / : @ * or comma",
        )
    # No command takes a room and work in one place: the room of the shelves may be called store.
    is_work = name.casefold().replace(" ", "-") in set(Operation)
    if is_work and kind != ThingKind.ROOM:
        raise UsageFault(f"{name!r} is a kind of work, it cannot name a {kind}", "choose another")
    return name


def free_name(ledger: Ledger, kind: ThingKind, name: str, within: int | None = None) -> str:
    """Free a name for a new thing; say so when one that was put away had it."""
    lent = lend_name(ledger, kind, name, within)
    if not lent:
        return ""
    return (
        f"the {name} that was put away is called {lent} now; "
        f"if you meant that one: {RESTORE[kind](lent)}"
    )


# Who uses a piece, and the notes that come with that.
NOTES_FOR = {UsedFor.CHILD: Hazard.CHILDREN, UsedFor.FOOD: Hazard.FOOD}


def notes_of_use(facts: Facts, names: Iterable[str], known: str = "") -> tuple[SafetyNote, ...]:
    """Choose the notes of a piece for food or a child, by who it is for, else by its names."""
    uses = [UsedFor(known)] if known else [u for n in names for u in facts.care.uses_of(n)]
    return notes_for(facts.notes, [NOTES_FOR[use] for use in uses]) if uses else ()


def uses_of_first_coat(then: Look, picked: Zones, comes: Ingredient) -> tuple[Hazard, ...]:
    """Name what the first coat asks of who will use a piece: once a project.

    By what was told of it, or its name; and the nuts that are pressed into what `comes`.
    """
    facts, projects = then.facts, {p.id: p for p in then.shop.projects}
    mine = {z.part.project for z in then.bench.zones if z.target in picked.targets}
    coats = [(z.part.project, layer.coat) for z in then.bench.zones for layer in z.layers]
    uses: dict[UsedFor, None] = {}
    for key in sorted(mine.difference(project for project, _ in coats).intersection(projects)):
        told = projects[key].used_for
        uses |= dict.fromkeys((told,) if told else facts.care.uses_of(projects[key].name))
    found = [NOTES_FOR[use] for use in uses]
    if Hazard.NUT_OIL in hazards_in(comes, facts):
        before = (coat for project, coat in coats if project in mine)
        if not any(Hazard.NUT_OIL in hazards_of(coat, then.shop, facts) for coat in before):
            found.append(Hazard.NUT_OIL)
    return tuple(found)


def in_words(*bits: str) -> str:
    """Join what there is to say about a thing."""
    return "; ".join(bit for bit in bits if bit)
