"""The care card: what is on a piece, from when it may be used, what never to do to it.

Dates come from the last coat of the last part, by the same clock as everything else. The list of
what never to do has no dates: it depends on what is on the piece and what it is for.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from datetime import datetime
from itertools import groupby

from msgspec import Struct
from msgspec.structs import replace

from finishlog.asks.look.look import Look
from finishlog.asks.look.look_back import look_back
from finishlog.context import Context
from finishlog.core.bench.care_facts import last_coat, rules_on, smelt, waits_until
from finishlog.core.bench.milestones import Milestone, milestone
from finishlog.core.film.old_finish import name_of
from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Target
from finishlog.core.log.words import Found
from finishlog.core.published.care import CareKind, CareRule, UsedFor
from finishlog.core.published.facts import Facts
from finishlog.core.safety.hazards import hazards_of
from finishlog.core.shop.things import FaceKind, Part, zone_among
from finishlog.core.zone.grouping import Label, describe, on_a_member
from finishlog.core.zone.state import ZoneState
from finishlog.picking import pick_zones

ON_THE_CARD = (Stage.PACK, Stage.LIGHT_USE, Stage.RUB, Stage.CURED)


class CardCoats(Struct, frozen=True):
    """So many coats of one finish, under the person's name for it and its generic one."""

    coats: int
    product: str
    class_name: str


class CardPart(Struct, frozen=True):
    """Parts of the piece with one finish: coats from the wood up, last coat, dates."""

    label: Label
    species: str
    coats: tuple[CardCoats, ...]
    last_coat: datetime | None
    dates: tuple[Milestone, ...]
    acts: tuple[int, ...]
    # What was on it when it came in, and still is; empty: nothing.
    old_finish: str = ""


class CardLine(Struct, frozen=True):
    """One line of what to do or never to do. `parts` empty: of the whole piece.

    `used_for`: it is about who uses the piece; empty: about anybody.
    """

    kind: CareKind
    text: str
    source: str
    parts: tuple[Label, ...]
    used_for: tuple[UsedFor, ...] = ()


class ForFoodOrChild(Struct, frozen=True):
    """A piece that food or a child comes near: the longest wait advised, and its smell.

    `not_before` None: no date can be given. `smell` None: not smelt since the last coat.
    """

    used_for: UsedFor
    not_before: datetime | None
    advised_from_d: float
    advised_to_d: float
    smell: Found | None
    smelt_at: datetime | None


class CareCard(Struct, frozen=True):
    """What goes along with a piece. `dates` are those of the last part to be ready."""

    name: str
    handed_over: datetime | None
    parts: tuple[CardPart, ...]
    last_coat: datetime | None
    dates: tuple[Milestone, ...]
    lines: tuple[CardLine, ...]
    for_whom: tuple[ForFoodOrChild, ...]


def care_card(context: Context, typed: Sequence[str]) -> CareCard:
    """Write the card of what is typed, without recording anything."""
    with context.reading() as connection:
        seen, words = look_back(context, connection, typed)
    picked = pick_zones(seen.shop, seen.bench, words, None)
    return card_of(seen, picked.targets)


def card_of(seen: Look, targets: frozenset[Target]) -> CareCard:
    """Write the card of some zones; glue faces are left out."""
    mine = [
        z for z in seen.bench.zones if z.target in targets and z.face.kind is not FaceKind.JOINT
    ]
    alike = _alike(mine)
    uses = {p.id: p.used_for for p in seen.shop.projects}
    used_for = tuple(dict.fromkeys(u for z in mine if (u := uses.get(z.part.project))))
    left = [z.handed_over.when.latest for z in mine if z.handed_over]
    return CareCard(
        name=_name(mine, seen),
        handed_over=max(left) if len(left) == len(mine) and left else None,
        parts=tuple(_part(label, states) for label, states in alike),
        last_coat=last_coat(mine),
        dates=_dates(mine),
        lines=_lines(alike, seen, used_for),
        for_whom=tuple(_for_whom(u, mine, seen.facts) for u in used_for),
    )


def _name(mine: Sequence[ZoneState], seen: Look) -> str:
    """Name the projects that are here whole, and the parts of the others."""
    here = {z.part.id: z.part for z in mine} | {z.member.id: z.member for z in mine}
    names: list[str] = []
    for project in dict.fromkeys(p.project for p in here.values()):
        parts = [p for p in seen.shop.parts if p.project == project]
        if all(p.id in here for p in parts):
            names.append(parts[0].project_name)
            continue
        own = {z.part.id: z.part for z in mine if z.part.project == project}
        names += [_pieces(p, mine).full for p in own.values()]
    return ", ".join(names)


def _pieces(part: Part, mine: Iterable[ZoneState]) -> Label:
    return describe(part, sorted({z.piece.number for z in mine if z.part.id == part.id}), ())


def _alike(mine: Sequence[ZoneState]) -> list[tuple[Label, list[ZoneState]]]:
    """Put the zones of a part with one finish together, each group with its name.

    One of which something keeps the dates back stands apart from those that are sound.
    """
    found: dict[tuple[int, object], list[ZoneState]] = {}
    for state in mine:
        layers = tuple(layer.coat.product for layer in state.layers)
        held = next((each.blocked for each in _dates([state]) if each.blocked), None)
        key = (state.part.id, (layers, state.old_finish, held))
        found.setdefault(key, []).append(state)
    kinds = Counter(piece for states in found.values() for piece in {s.piece.id for s in states})
    return [
        (_label(states, any(kinds[s.piece.id] > 1 for s in states)), states)
        for states in found.values()
    ]


def _label(states: Sequence[ZoneState], faces_differ: bool) -> Label:
    part = states[0].part
    here = {s.zone.id for s in states}
    faces = dict.fromkeys(
        on_a_member(s, states) if s.joined else zone_among(s.face, s.zone, here) for s in states
    )
    numbers = sorted({s.piece.number for s in states})
    return describe(part, numbers, tuple(faces) if faces_differ else ())


def _part(label: Label, states: Sequence[ZoneState]) -> CardPart:
    layers = states[0].layers
    runs = groupby(layers, key=lambda layer: (layer.coat.product_name, layer.of.name))
    return CardPart(
        label=label,
        species=", ".join(dict.fromkeys(s.species for s in states if s.species)),
        coats=tuple(CardCoats(len(list(run)), *names) for names, run in runs),
        last_coat=last_coat(states),
        dates=_dates(states),
        acts=tuple(sorted({layer.coat.act for s in states for layer in s.layers})),
        old_finish=name_of(states[0].old_finish) if states[0].old_finish else "",
    )


def _dates(states: Sequence[ZoneState]) -> tuple[Milestone, ...]:
    """Return the dates of some zones; a film that failed a check is promised for nothing."""
    found = [m for stage in ON_THE_CARD if (m := milestone(states, stage))]
    blocked = next((m.blocked for m in found if m.blocked), None)
    return tuple(replace(m, blocked=m.blocked or blocked) for m in found)


def _there(state: ZoneState, seen: Look) -> frozenset[Hazard]:
    """Name what can hurt in any layer of a film."""
    coats = (layer.coat for layer in state.layers)
    return frozenset(h for coat in coats for h in hazards_of(coat, seen.shop, seen.facts))


def _lines(
    alike: Sequence[tuple[Label, Sequence[ZoneState]]], seen: Look, used_for: Sequence[UsedFor]
) -> tuple[CardLine, ...]:
    """Return the rules that hold on any of it, each with the parts that it is about."""
    rules = seen.facts.care.rules
    where: dict[CareRule, list[Label]] = {}
    coated = [(label, states) for label, states in alike if states[0].layers]
    for label, states in coated:
        for use in used_for or (None,):
            for rule in rules_on(rules, states[0].layers, use, _there(states[0], seen)):
                where.setdefault(rule, []).append(label)
    return tuple(
        CardLine(
            rule.kind,
            rule.text,
            rule.source,
            _of_these(where[rule], len(coated)),
            tuple(sorted(rule.used_for)),
        )
        for rule in rules
        if rule in where
    )


def _of_these(labels: Sequence[Label], of: int) -> tuple[Label, ...]:
    named = tuple(dict.fromkeys(labels))
    return () if len(named) == of else named


def _for_whom(used_for: UsedFor, mine: Sequence[ZoneState], facts: Facts) -> ForFoodOrChild:
    hard, waits = milestone(mine, Stage.CURED), waits_until(mine, facts.care)
    dated = hard is not None and hard.high is not None and not hard.blocked and not hard.missing
    smell = smelt(mine)
    return ForFoodOrChild(
        used_for=used_for,
        not_before=max(hard.high, waits) if dated and hard and hard.high and waits else None,
        advised_from_d=facts.care.waits_d.low,
        advised_to_d=facts.care.waits_d.high,
        smell=smell.found if smell else None,
        smelt_at=smell.when.latest if smell else None,
    )
