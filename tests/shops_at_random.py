"""Invented shops drawn by a number: schedules of the trade on any wood, in any air, half done.

The orders of work are common practice; pieces, hours and air are anything.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from datetime import timedelta

from msgspec.structs import replace

from finishlog.core.air.usual_day import UsualDay, UsualHour
from finishlog.core.log.entries import AnyEntry
from finishlog.core.log.words import Operation
from finishlog.core.plan.plan import plan
from finishlog.core.shop.things import FaceKind, Log, Part
from tests.compiled_plan import Made
from tests.planned import EVENINGS, open_from, shop_with
from tests.shop_of import FACTS, Doing, Story, at

SAND, SCUFF, RUB = Operation.SAND, Operation.SCUFF, Operation.RUB
SCHEDULES: tuple[tuple[Doing, ...], ...] = (
    (SAND, "shellac-2lb", SCUFF, "waterborne-clear", "waterborne-clear", "waterborne-clear"),
    (SAND, "hardwax-oil", "hardwax-oil"),
    (SAND, "oil-polyurethane", "oil-polyurethane", "oil-polyurethane", RUB),
    (SAND, "wiping-stain", "shellac-1lb", "alkyd-varnish", "alkyd-varnish"),
    (SAND, "lacquer-sanding-sealer", "lacquer-sprayed", "lacquer-sprayed", "lacquer-sprayed"),
    (SAND, "water-dye", "shellac-2lb", "waterborne-oil-modified", "waterborne-oil-modified"),
    (SAND, "oil-varnish-blend", "oil-varnish-blend", "oil-varnish-blend", "paste-wax"),
    (SAND, "boiled-linseed-oil", "boiled-linseed-oil"),
    (SAND, "acrylic-primer", SCUFF, "latex-enamel", "latex-enamel"),
    (SAND, "oil-primer", "oil-enamel", "oil-enamel"),
    (SAND, "wiping-varnish", "wiping-varnish", "wiping-varnish"),
    (SAND, "vinyl-sealer", "conversion-varnish"),
    (SAND, "paste-filler", "shellac-2lb", "lacquer-brushed", "lacquer-brushed"),
    (SAND, "spar-varnish", "spar-varnish", Operation.HARDWARE),
    (SAND, "tung-oil", "tung-oil"),
    (SAND, "shellac-2lb", "shellac-2lb", "shellac-2lb", "paste-wax"),
    (SAND, "milk-paint", "milk-paint", "waterborne-clear"),
    (SAND, "waterborne-two-part", "waterborne-two-part"),
    (SAND, "gel-stain", "oil-polyurethane", "oil-polyurethane"),
    (SAND, "glaze", "waterborne-clear", "waterborne-clear"),
    (Operation.SAND, Operation.SOLVENT_WIPE, "shellac-2lb", "waterborne-clear"),
    (SAND, Operation.RAISE_GRAIN, SAND, "waterborne-clear", "waterborne-clear"),
)
WOODS = ("oak", "ash", "walnut", "cherry", "maple", "pine", "teak", "rosewood", "mahogany", None)
FACES = (("all round",), ("back", "front"), ("top",), ("inside", "outside"))
HIDDEN = frozenset({"back", "inside"})
HOURS = (
    EVENINGS,
    open_from(*((day, "08:00", "17:00") for day in range(5))),
    open_from(*((day, "19:00", "21:30") for day in range(7))),
    open_from((1, "17:00", "22:00"), (3, "17:00", "22:00"), (5, "09:00", "18:00")),
)


def shop_at_random(number: int, parts: int = 6) -> Made:
    """Draw a shop: so many parts, some of them glued up, in the white or half done."""
    dice = random.Random(number)
    story = Story()
    _air(dice, story)
    schedules = dice.sample(SCHEDULES, 4)
    for n in range(parts):
        _part(dice, story, f"part{n}", dice.choice(schedules))
    if dice.random() < 0.4:
        story.part(
            "case",
            Operation.GLUE_UP,
            *dice.choice(schedules)[1:2],
            faces=(),
            needs={"part0": 1, "part1": 1},
        )
    hours = dice.choice(HOURS)
    made = Made(shop_with(story, hours), story.log(0), FACTS, at(0), story.zone)
    return _half_done(made, timedelta(days=dice.uniform(1, 9))) if dice.random() < 0.4 else made


def _air(dice: random.Random, story: Story) -> None:
    kind = dice.randrange(4)
    if kind == 0:
        hours = (
            UsualHour(0, dice.uniform(12, 17), 60),
            UsualHour(7 * 60, dice.uniform(11, 15), 62),
            UsualHour(16 * 60, dice.uniform(16, 23), 55),
        )
        heated = dice.choice((None, (17 * 60 + 30, 22 * 60)))
        days = dice.choice(((0, 1, 2, 3, 4, 5, 6), (0, 2, 4, 5)))
        usual = UsualDay(hours, heated=heated, heated_c=20.0, valid_from=at(-200))
        story.usual(replace(usual, heated_days=days))
    elif kind == 1:
        story.cold_nights(dice.uniform(8, 16))
    if dice.random() < 0.5:
        story.another_room("shed", dice.choice((None, 12.0, 60.0)))
        story.read(-1.0, dice.uniform(15, 22), dice.uniform(40, 65), room=2)
    story.read(-0.5, dice.uniform(16, 24), dice.uniform(40, 65))


def _part(dice: random.Random, story: Story, name: str, steps: Sequence[Doing]) -> Part:
    part = story.part(
        name,
        *steps,
        pieces=dice.choice((1, 1, 2, 4)),
        faces=dice.choice(FACES),
        edges=dice.choice(((), ("edge",))),
        joints=dice.choice(((), ("tenon",))),
        species=dice.choice(WOODS),
        room=dice.choice(list(story.rooms)),
    )
    faces = tuple(replace(f, kind=FaceKind.HIDDEN) if f.name in HIDDEN else f for f in part.faces)
    story.parts[-1] = replace(part, faces=faces)
    return story.parts[-1]


def _half_done(made: Made, ago: timedelta) -> Made:
    """Return a shop as it stands some days on, when what was planned for these was done."""
    ahead = plan(made.shop, made.log, made.facts, made.now, made.zone)
    now = made.now + ago
    tasks = [t for session in ahead.sessions for t in session.tasks if t.end <= now]
    planned = [entry for task in tasks for entry in task.entries]
    done = [_as_logged(entry, number) for number, entry in enumerate(planned, 10_000)]
    entries = sorted((*made.log.entries, *done), key=lambda e: e.when.order)
    return Made(made.shop, Log(tuple(entries)), made.facts, now, made.zone)


def _as_logged(entry: AnyEntry, number: int) -> AnyEntry:
    """Return a planned entry as it is on record once it was done."""
    return replace(entry, id=number, act=number, typed_at=entry.when.latest)
