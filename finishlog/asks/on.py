"""What is on a part: its coats by face, and what comes next."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from finishlog.asks.look import Look, look
from finishlog.asks.standing import Standing, product_name, standing_of
from finishlog.clock import Clock
from finishlog.core.grouping import Group, groups
from finishlog.core.records import AnyEntry, Coat, Work
from finishlog.core.shop import FaceKind, Shop, Step
from finishlog.facts.load import Facts
from finishlog.store.database import Database


@dataclass(frozen=True, slots=True)
class CoatLine:
    """One layer, with the abrading that followed it."""

    product: str
    put_on: datetime
    abraded: tuple[str, ...]
    act: int


@dataclass(frozen=True, slots=True)
class On:
    """One group of a part: coats oldest first, steps still to come, what no step asked for."""

    standing: Standing
    species: str
    joint: bool
    coats: tuple[CoatLine, ...]
    to_come: tuple[str, ...]
    passed_over: tuple[str, ...]
    aside: tuple[str, ...]


def on(database: Database, facts: Facts, clock: Clock, parts: Iterable[int]) -> tuple[On, ...]:
    """Answer for the parts with these ids."""
    wanted = frozenset(parts)
    with database.reading() as connection:
        seen = look(connection, facts, clock)
    zones = [z for z in seen.bench.zones if {z.part.id, z.member.id} & wanted]
    return tuple(_on(group, seen) for group in groups(zones))


def _on(group: Group, seen: Look) -> On:
    state = group.first
    progress = state.progress
    return On(
        standing=standing_of(group, seen),
        species=state.species or "",
        joint=state.face.kind is FaceKind.JOINT,
        coats=tuple(
            CoatLine(
                layer.coat.product_name,
                layer.put_on,
                tuple(work.operation.value for work in layer.abraded),
                layer.coat.act,
            )
            for layer in state.layers
        ),
        to_come=tuple(step_words(s, seen.shop) for s in progress.steps[progress.done :]),
        passed_over=tuple(
            step_words(s, seen.shop)
            for n, s in enumerate(progress.steps[: progress.done])
            if n not in progress.matched
        ),
        aside=tuple(_words(entry) for entry in progress.aside) if progress.steps else (),
    )


def step_words(step: Step, shop: Shop) -> str:
    """Write a step as it is typed: `sealer`, `scuff`, `topcoat@back`."""
    name = product_name(step.product, shop) or step.operation.value
    return f"{name}@{','.join(step.faces)}" if step.faces else name


def _words(entry: AnyEntry) -> str:
    if isinstance(entry, Coat):
        return entry.product_name
    return entry.operation.value if isinstance(entry, Work) else ""
