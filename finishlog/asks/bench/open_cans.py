"""What stands open in cans, jars and mixes; what stands ready before the next is opened."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from datetime import UTC, datetime, timedelta

from msgspec import Struct

from finishlog.asks.bench.rags import parts_of
from finishlog.asks.look.look import Look
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.findings import Finding, Level, finding
from finishlog.core.finish.classes import Method
from finishlog.core.finish.hazard import Hazard
from finishlog.core.log.entries import Coat
from finishlog.core.measure.quantities import grams, grams_per_litre, millilitres
from finishlog.core.mixing.came_from import wrong_thinner
from finishlog.core.mixing.chemistry import mixed_findings
from finishlog.core.mixing.containers import (
    Container,
    ContainerKind,
    ContainerState,
    Lid,
    MixPart,
)
from finishlog.core.mixing.keeping import keeping_findings
from finishlog.core.mixing.mixes import cut_g_per_l, ratio_words
from finishlog.core.published.facts import Facts
from finishlog.core.published.safety_notes import Before
from finishlog.core.safety.oily_waste import hazards_of_coating, is_sprayed
from finishlog.core.safety.whats_in import in_coat, in_product
from finishlog.core.shop.names import find
from finishlog.core.shop.things import Shop, Step, ThingKind
from finishlog.errors import Ambiguous, NotFound

_LAST = datetime.max.replace(tzinfo=UTC)
# What stands ready before cans are opened: so much at a time, the most dangerous first.
_AT_MOST = 3
# Said in full once so often: who opened such a can lately has heard it.
_LATELY = timedelta(days=30)


class MixLine(Struct, frozen=True):
    """A mix that stands open. `use_by` None: it does not harden in the pot, or nothing says when.

    `made_at` is the earliest moment that it may have been mixed; `ratio` is `10:1` or a cut.
    """

    name: str
    product: str
    ratio: str
    made_at: datetime
    use_by: datetime | None
    overdue: bool
    lid: Lid
    findings: tuple[Finding, ...]
    acts: tuple[int, ...] = ()


class CanInDoubt(Struct, frozen=True):
    """A can of something that is due, and what speaks against using it."""

    name: str
    product: str
    findings: tuple[Finding, ...]


def against(state: ContainerState, moment: datetime, facts: Facts) -> tuple[Finding, ...]:
    """Return what speaks against what is in it, what is most dangerous first."""
    keeping = keeping_findings(state, moment, facts.keeping)
    if not state.holds or state.ended:
        return keeping
    mixed = mixed_findings(state.holds, state.of.family, facts.chemistry)
    return (*mixed, *misthinned(state, facts), *keeping)


def misthinned(state: ContainerState, facts: Facts) -> Iterator[Finding]:
    """Yield that a finish stands mixed with what it is not thinned with."""
    met = wrong_thinner(state, facts.chemistry)
    if met is not None:
        yield finding(
            "wrong-thinner",
            Level.CAUTION,
            met.source,
            of=state.of.name,
            by=met.by,
            thinner=met.name,
        )


def open_mixes(seen: Look) -> tuple[MixLine, ...]:
    """Return the mixes that stand open: first what ends soonest, last what has no end."""
    if not seen.shop.containers:
        return ()
    mixes = [state for state in seen.bench.cans.states.values() if state.is_open_mix]
    mixes.sort(key=lambda s: (s.use_by or _LAST, s.made or seen.clock.now, s.container.id))
    return tuple(_mix_line(seen.context, state, seen.shop) for state in mixes)


def _mix_line(context: Context, state: ContainerState, shop: Shop) -> MixLine:
    return MixLine(
        name=state.container.name,
        product=shop.products[state.container.product].name,
        ratio=mixed_words(state.container, context.facts),
        made_at=state.made or context.clock.now,
        use_by=state.use_by,
        overdue=state.use_by is not None and context.clock.now > state.use_by,
        lid=state.lid,
        acts=tuple(sorted({event.act for event in state.events})),
        findings=against(state, context.clock.now, context.facts),
    )


def cans_in_doubt(seen: Look, products: Iterable[int]) -> tuple[CanInDoubt, ...]:
    """Return the cans and jars of some products that want a test first or must not be used."""
    wanted = frozenset(products)
    if not seen.shop.containers:
        return ()
    found = []
    for state in seen.bench.cans.states.values():
        can = state.container
        if can.kind is ContainerKind.MIX or can.product not in wanted or state.ended:
            continue
        doubts = against(state, seen.clock.now, seen.facts)
        if any(f.level is not Level.NOTE for f in doubts):
            found.append(CanInDoubt(can.name, seen.shop.products[can.product].name, doubts))
    return tuple(found)


def mixed_words(container: Container, facts: Facts) -> str:
    """Say what a mix is: its ratio, or its cut; empty when nothing says so."""
    cut = cut_g_per_l(container.parts, facts.mixing)
    return ratio_words(container.parts) if cut is None else grams_per_litre(cut)


def mixed_of(container: Container, facts: Facts) -> str:
    """Say how a mix is made again: what to what, or how much in a litre; empty: not said."""
    ratio = mixed_words(container, facts)
    if not ratio or cut_g_per_l(container.parts, facts.mixing) is not None:
        return ratio
    return f"{':'.join(part.name for part in container.parts)} {ratio}"


def part_words(part: MixPart) -> str:
    """Say one part: so many grams of flakes, so much base, `2 parts varnish`."""
    if part.volume_ml is not None:
        within = f" (with {grams(part.weight_g)} flakes)" if part.weight_g is not None else ""
        return f"{millilitres(part.volume_ml)} {part.name}{within}"
    if part.weight_g is not None:
        return f"{grams(part.weight_g)} {part.name}"
    return f"{part.parts:g} part{'' if part.parts == 1 else 's'} {part.name}"


def from_words(container: int | None, shop: Shop, facts: Facts) -> str:
    """Say where a coat came from: `mix-3, 10:1, batch A7`; empty when that was not said."""
    known = shop.containers.get(container) if container is not None else None
    if known is None:
        return ""
    batch = f"batch {known.batch}" if known.batch else ""
    drawn = f"drawn from {known.drawn_from}" if known.drawn_from else ""
    said = (known.name, mixed_words(known, facts), drawn, batch)
    return ", ".join(word for word in said if word)


def pick_container(shop: Shop, typed: str) -> Container:
    """Find a container by name, by a name it had, or by a unique beginning."""
    living = [each for each in shop.containers.values() if not each.archived]
    found = find(typed, living, shop.aliases, ThingKind.CONTAINER)
    if len(found) == 1:
        return found[0]
    if found:
        names = tuple(each.name for each in found)
        words = f"type one of: {', '.join(names)}"
        raise Ambiguous(f"{typed!r} fits {len(found)} cans or mixes", words, typed, names)
    names_there = ", ".join(each.name for each in living) or "none yet"
    raise NotFound(
        f"no can or mix is called {typed!r}",
        f"there are: {names_there}; {Do.CAN_NEW(typed, product='PRODUCT')}",
    )


def coats_from(seen: Look, container: int) -> tuple[str, ...]:
    """Name the parts that coats from a container went on, among those that are open.

    What was drawn from it first, into a mix or a jar, came from it too.
    """
    named: list[str] = []
    for entry in seen.log.entries:
        source = seen.bench.cans.came_from(entry) if isinstance(entry, Coat) else None
        if source and any(each.container.id == container for each in source.sources):
            named += parts_of(entry.targets, seen.shop)
    return tuple(dict.fromkeys(named))


class BeforeLine(Struct, frozen=True):
    """One thing to have ready, and the products that ask for it, by name; `level`: its weight."""

    hazard: Hazard
    text: str
    source: str
    products: tuple[str, ...]
    level: Level = Level.NOTE


class Opens(Struct, frozen=True):
    """A product, by its id, that is to be opened. `room` None: nobody says where.

    `method` None: as its class goes on.
    """

    product: int
    room: int | None = None
    method: Method | None = None


# A hazard, the room that it was met in, and whether it was sprayed there. None: wherever.
_Met = tuple[Hazard, int | None, bool]


def before_work(
    opens: Iterable[Opens], seen: Look, told: Collection[Hazard] = ()
) -> tuple[BeforeLine, ...]:
    """Say it of what is to be opened whose hazards no coat of the last month met in that way.

    In another room, or sprayed where it was brushed, it is said again; `told`: it was, just now.
    """
    shop, facts = seen.shop, seen.facts
    due = [each for each in dict.fromkeys(opens) if each.product in shop.products]
    if not due:
        return ()
    met = _met_lately(seen)
    anywhere = {(hazard, sprayed) for hazard, _, sprayed in met}
    brings: dict[Hazard, list[str]] = {}
    for each in sorted(due, key=lambda each: each.product):
        product = shop.products[each.product]
        of = facts.finish_class(product.class_key)
        sprayed = is_sprayed(each.method, of)
        for hazard in hazards_of_coating(of, each.method, in_product(product), facts):
            known = bool({(hazard, each.room, sprayed), (hazard, None, sprayed)} & met)
            if each.room is None:
                known = (hazard, sprayed) in anywhere
            if hazard not in told and not known:
                brings.setdefault(hazard, []).append(product.name)
    lines = (_line(row, brings[row.hazard], seen) for row in facts.before if row.hazard in brings)
    return tuple(lines)[:_AT_MOST]


def _line(row: Before, products: Iterable[str], seen: Look) -> BeforeLine:
    """Say what a hazard asks for; it is no caution where a mask on record is made for it."""
    there = (mask.holds for mask in seen.bench.masks)
    masked = seen.facts.respirators.is_held(row.hazard, there)
    level = Level.NOTE if masked else row.level
    return BeforeLine(row.hazard, row.text, row.source, tuple(dict.fromkeys(products)), level)


def before_steps(
    steps: Iterable[Step], seen: Look, told: Collection[Hazard] = ()
) -> tuple[BeforeLine, ...]:
    """Say it of what steps open, wherever that will be."""
    return before_work((Opens(s.product) for s in steps if s.product is not None), seen, told)


def _met_lately(seen: Look) -> frozenset[_Met]:
    """Return what coats of the last month met: where they went on, and wherever."""
    rooms: dict[int, set[int | None]] = {}
    for zone in seen.bench.zones:
        for layer in zone.layers:
            rooms.setdefault(layer.coat.id, set()).add(layer.air.legs[0].room.id)
    since = seen.clock.now - _LATELY
    ways: dict[tuple[int, int | None, Method | None, int | None], Coat] = {}
    for coat in (e for e in seen.log.entries if isinstance(e, Coat)):
        if coat.when.latest > since:
            # Of what came off, or was put away, nobody knows the room any more: wherever.
            for room in rooms.get(coat.id, {None}):
                ways[coat.product, coat.container, coat.method, room] = coat
    return frozenset(met for (*_, room), coat in ways.items() for met in _meets(coat, room, seen))


def _meets(coat: Coat, room: int | None, seen: Look) -> Iterator[_Met]:
    of = seen.facts.finish_class(coat.figures.class_key)
    sprayed = is_sprayed(coat.method, of)
    for hazard in hazards_of_coating(of, coat.method, in_coat(coat, seen.shop), seen.facts):
        yield hazard, room, sprayed
