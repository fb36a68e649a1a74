"""What was done before, with its real intervals, its air, and how it came out.

What worked comes first and failures are kept: they teach the most.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime

from msgspec import Struct

from finishlog.asks.look.entry_words import Words
from finishlog.asks.look.standing import product_name
from finishlog.asks.past.recipe import PastAttempt, air_at, attempts_of
from finishlog.asks.past.search import Search, Sought, Story, is_wood, search
from finishlog.context import Context
from finishlog.core.air.met import Stay
from finishlog.core.air.psychrometrics import Air
from finishlog.core.film.progress import progress, steps_for
from finishlog.core.log.entries import (
    AnyEntry,
    Coat,
    HandedOver,
    Joined,
    Note,
    Photo,
    Review,
    Stripped,
    Target,
)
from finishlog.core.log.when import When
from finishlog.core.log.words import Outcome
from finishlog.core.published.facts import Facts
from finishlog.core.shop.things import Face, FaceKind, Log, Part, Shop, Zone, zone_among
from finishlog.core.zone.grouping import describe
from finishlog.core.zone.stood_in import rooms_of_pieces
from finishlog.errors import NotFound
from finishlog.store.log.read_log import read_log
from finishlog.store.things.containers import with_containers_of
from finishlog.store.things.read_shop import read_shop

OTHER_WOOD = "the same can looks and dries otherwise on another wood: a sample board first"


class PastSaid(Struct, frozen=True):
    """How it came out, or a picture: `outcome` None where no verdict was given."""

    outcome: Outcome | None
    said: str
    at: When
    act: int


class PastFinish(Struct, frozen=True):
    """What some pieces and faces of a part carry, attempt after attempt, the last one on it.

    `outcome` is the last review of what is on it; `off`: nothing is, it was taken off. `in_work`:
    steps are still to come.
    """

    part: str
    label: str
    faces: tuple[str, ...]
    into: str
    is_board: bool
    species: str
    steps: str
    attempts: tuple[PastAttempt, ...]
    in_work: bool
    off: bool
    outcome: Outcome | None
    reviews: tuple[PastSaid, ...]
    outcomes: tuple[str, ...]
    notes: tuple[str, ...]
    photos: tuple[PastSaid, ...]
    handed_over: datetime | None
    last: datetime


class Counts(Struct, frozen=True):
    """How many finishes came out how. `described`: told in words, without a verdict."""

    finishes: int
    good: int
    fair: int
    failed: int
    described: int
    not_said: int
    in_work: int
    taken_off: int


class Past(Struct, frozen=True):
    """Every finish on record that is about what was sought: what worked first."""

    sought: tuple[tuple[str, tuple[Sought, ...]], ...]
    counts: Counts
    remarks: tuple[str, ...]
    finishes: tuple[PastFinish, ...]


def past(context: Context, words: Sequence[str]) -> Past:
    """Answer for what all the words are about; without words, for everything."""
    with context.reading() as connection:
        shop = read_shop(connection, context.clock.now, include_archived=True)
        log = read_log(connection, _pieces_of_wood(shop, words, context.facts))
        shop = with_containers_of(connection, shop, log)
    stays = rooms_of_pieces(shop, log)
    told = _told(shop, log, stays)
    stories = [story for story, _ in told]
    searches = [search(word, shop, stories, context.facts) for word in words]
    found = _finishes(told, searches, shop, log, stays, context.facts)
    if not found:
        raise _nothing(words, stories)
    found.sort(key=lambda f: (_rank(f), -f.last.timestamp()))
    return Past(
        tuple((s.word, s.read_as) for s in searches),
        _counts(found),
        _remarks(searches, found),
        tuple(found),
    )


def _pieces_of_wood(shop: Shop, words: Sequence[str], facts: Facts) -> list[int] | None:
    """Return the pieces that a wood among the words leaves to look at; None: all of them."""
    for word in words:
        is_meant = is_wood(word, facts)
        parts = [p for p in shop.parts if any(map(is_meant, _woods(p)))]
        if parts:
            return [piece.id for part in parts for piece in part.pieces]
    return None


def _woods(part: Part) -> set[str]:
    zones = (zone.species for face in part.faces for zone in face.zones)
    return {wood for wood in (part.species, *zones) if wood}


# A story and the zones that have it: face and zone of a piece.
_Told = list[tuple[Story, list[tuple[int, Face, Zone]]]]


_Stays = Mapping[int, Sequence[Stay]]


def _told(shop: Shop, log: Log, stays: _Stays) -> _Told:
    """Put the zones of each part that one story reached together; glue faces and edges go along."""
    by_target: dict[Target, list[AnyEntry]] = defaultdict(list)
    for entry in log.entries:
        for target in entry.targets:
            by_target[target].append(entry)
    found: dict[object, tuple[Story, list[tuple[int, Face, Zone]]]] = {}
    for part in shop.parts:
        for piece in part.pieces:
            for face in part.faces:
                for zone in face.zones if face.kind in {FaceKind.SHOW, FaceKind.HIDDEN} else ():
                    entries = by_target.get(Target(piece.id, zone.id), [])
                    if any(isinstance(e, Coat) for e in entries):
                        wood = zone.species or part.species or ""
                        # Which piece of an assembly it went into makes no other finish.
                        tale = tuple(e.id for e in entries if not isinstance(e, Joined))
                        key = (part.id, wood, tale)
                        if key not in found:
                            airs = _airs(entries, stays.get(piece.id, ()))
                            found[key] = Story(part, wood, tuple(entries), airs), []
                        story = found[key]
                        story[1].append((piece.id, face, zone))
    return list(found.values())


def _airs(entries: Iterable[AnyEntry], stays: Sequence[Stay]) -> tuple[Air, ...]:
    """Return the air that each coat went on in, where it was read."""
    read = (air_at(stays, e.when.latest) for e in entries if isinstance(e, Coat))
    return tuple(air for air in read if air is not None)


def _finishes(
    told: _Told,
    searches: Sequence[Search],
    shop: Shop,
    log: Log,
    stays: _Stays,
    facts: Facts,
) -> list[PastFinish]:
    coats = {e.id: e.product_name for e in log.entries if isinstance(e, Coat)}
    words = Words(shop, facts, coats)
    names = {piece.id: part.path for part in shop.parts for piece in part.pieces}
    into = {
        m: names.get(e.into, "") for e in log.entries if isinstance(e, Joined) for m in e.members
    }
    return [
        _finish(
            story,
            zones,
            attempts_of(story.entries, stays.get(zones[0][0], ()), words),
            into.get(zones[0][0], ""),
            shop,
        )
        for story, zones in told
        if all(each.fits(story) for each in searches)
    ]


def _finish(
    story: Story,
    zones: Sequence[tuple[int, Face, Zone]],
    attempts: tuple[PastAttempt, ...],
    into: str,
    shop: Shop,
) -> PastFinish:
    part, entries = story.part, story.entries
    numbers = sorted({p.number for p in part.pieces if p.id in {piece for piece, _, _ in zones}})
    last_off = max((n for n, e in enumerate(entries) if isinstance(e, Stripped)), default=-1)
    reviews = [e for e in entries[last_off + 1 :] if isinstance(e, Review)]
    notes = [e for e in entries if isinstance(e, Note)]
    _, face, zone = zones[0]
    here = {zone.id for _, _, zone in zones}
    done = progress(steps_for(face, part.steps, zone), entries, part.behind)
    return PastFinish(
        part=part.path,
        label=describe(part, numbers, ()).full,
        faces=tuple(dict.fromkeys(zone_among(f, z, here) for _, f, z in zones)),
        into=into,
        is_board=part.is_board,
        species=story.species,
        steps=part.steps_name or _planned(part, shop),
        attempts=attempts,
        in_work=done.next is not None and not into,
        off=bool(attempts) and attempts[-1].off is not None and not attempts[-1].off.down_to,
        outcome=reviews[-1].outcome if reviews else None,
        reviews=tuple(
            PastSaid(e.outcome, e.text, e.when, e.act) for e in entries if isinstance(e, Review)
        ),
        outcomes=tuple(e.text for e in notes if e.outcome),
        notes=tuple(e.text for e in notes if not e.outcome),
        photos=tuple(
            PastSaid(None, f"{e.path}, {e.note}" if e.note else e.path, e.when, e.act)
            for e in entries
            if isinstance(e, Photo)
        ),
        handed_over=max(
            (e.when.latest for e in entries if isinstance(e, HandedOver)), default=None
        ),
        last=max(e.when.latest for e in entries if isinstance(e, Coat | Stripped)),
    )


def _planned(part: Part, shop: Shop) -> str:
    return ", ".join(product_name(s.product, shop) or s.operation.value for s in part.steps)


def _rank(finish: PastFinish) -> int:
    """Sort what worked first, then what failed and why, then what nobody spoke of."""
    if finish.outcome is not None:
        return [Outcome.GOOD, Outcome.FAIR, Outcome.FAILED].index(finish.outcome) * 2
    if finish.outcomes:
        return 3
    return 5 if finish.attempts[-1].off or len(finish.attempts) > 1 else 6


def _counts(found: Sequence[PastFinish]) -> Counts:
    def came_out(outcome: Outcome) -> int:
        return sum(1 for f in found if f.outcome is outcome)

    silent = [f for f in found if f.outcome is None and not f.outcomes and not f.off]
    return Counts(
        finishes=len(found),
        good=came_out(Outcome.GOOD),
        fair=came_out(Outcome.FAIR),
        failed=came_out(Outcome.FAILED),
        described=sum(1 for f in found if f.outcome is None and f.outcomes),
        not_said=sum(1 for f in silent if not f.in_work),
        in_work=sum(1 for f in silent if f.in_work),
        taken_off=sum(1 for f in found for a in f.attempts if a.off),
    )


def _remarks(searches: Sequence[Search], found: Sequence[PastFinish]) -> tuple[str, ...]:
    of_a_wood = any(Sought.WOOD in s.read_as for s in searches)
    of_a_can = any({Sought.PRODUCT, Sought.CLASS, Sought.STEPS} & {*s.read_as} for s in searches)
    woods = {f.species for f in found}
    return (OTHER_WOOD,) if len(woods) > 1 or (of_a_can and not of_a_wood) else ()


def _nothing(words: Sequence[str], stories: Iterable[Story]) -> NotFound:
    told = list(stories)
    woods = ", ".join(sorted({s.species for s in told if s.species})) or "none yet"
    products = {e.product_name for s in told for e in s.entries if isinstance(e, Coat)}
    sought = " ".join(words)
    near = _near(words, {s.species for s in told} | products)
    hint = f"{near}woods on record: {woods}"
    if products:
        hint += f"; products: {', '.join(sorted(products))}; or any words that were noted"
    return NotFound(f"no finish about {sought!r} is on record" if sought else "no finish yet", hint)


def _near(words: Sequence[str], known: set[str]) -> str:
    """Offer what is called nearly so on record."""
    from difflib import get_close_matches

    called = {bit.casefold(): name for name in known for bit in (*name.split(), name)}
    near = [n for word in words for n in get_close_matches(word.casefold(), called, 2, 0.7)]
    found = [called[each] for each in near]
    return f"did you mean {' or '.join(dict.fromkeys(found))}? " if found else ""
