"""Log that a film came off: to bare wood, or down to a coat that stays."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from itertools import pairwise

from msgspec import Struct

from finishlog.acts.answers.evening_notes import notes_of_stripping
from finishlog.acts.answers.warn import most_weighty
from finishlog.asks.bench.rags import RagsLine, open_rags
from finishlog.asks.look.look import Look, look
from finishlog.asks.look.standing import Standing, standings
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.film.attempts import melts_into
from finishlog.core.film.layers import Layer
from finishlog.core.film.old_finish import name_of
from finishlog.core.findings import HURTS, Act, Finding, Level, finding
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.log.entries import Coat, Stripped, Target
from finishlog.core.log.when import When
from finishlog.core.log.words import Operation, Stripping
from finishlog.core.measure.whole_number import whole_number
from finishlog.core.published.facts import Facts
from finishlog.core.published.safety_notes import SafetyNote
from finishlog.core.rules.all import RULES
from finishlog.core.rules.wood.bleached import dust_of_bleach
from finishlog.core.safety.whats_in import in_work
from finishlog.core.zone.asked import Asked, taking_off
from finishlog.core.zone.grouping import groups
from finishlog.core.zone.state import ZoneState
from finishlog.errors import NotFound, UsageFault
from finishlog.picking import pick_zones
from finishlog.store.log.ledger import Ledger

BARE = "bare"
# What is about the person, and not about the film.
_WHO = tuple(rule for rule in RULES if rule.id in HURTS and Act.TAKE_OFF in rule.binds)


class CoatThere(Struct, frozen=True):
    """A coat by its product, when it went on, and its act."""

    product: str
    put_on: When
    act: int


class TakenOff(Struct, frozen=True):
    """What came off some zones, oldest first, and the coat that stays (None: bare wood)."""

    label: str
    coats: tuple[CoatThere, ...]
    stays: CoatThere | None
    # What it had on it when it came in, where that came off too.
    old_finish: str = ""


class Off(Struct, frozen=True):
    """A stripping as recorded, and what follows from it."""

    act: int
    operation: Stripping
    at: When
    labels: tuple[str, ...]
    took: tuple[TakenOff, ...]
    warnings: tuple[Finding, ...]
    after: tuple[Standing, ...]
    rags: tuple[RagsLine, ...]
    notes: tuple[SafetyNote, ...]


def log_off(
    context: Context,
    *,
    parts: Sequence[str],
    to: str,
    operation: Stripping,
    face: str | None,
    at: When,
    note: str,
) -> Off:
    """Record it; each zone goes down to its own coat of that name."""
    with context.writing("off") as ledger:
        now = look(context, ledger.connection)
        return off_in(
            ledger, now, parts=parts, to=to, operation=operation, face=face, at=at, note=note
        )


def off_in(
    ledger: Ledger,
    now: Look,
    *,
    parts: Sequence[str],
    to: str,
    operation: Stripping,
    face: str | None,
    at: When,
    note: str,
) -> Off:
    """Record it within an act, which may record more."""
    then = now.as_of(at.latest)
    picked = pick_zones(then.shop, then.bench, parts, face)
    states = [z for z in then.bench.zones if z.target in picked.targets]
    down_to = _down_to(states, to, now.facts)
    by_survivor: dict[int | None, set[Target]] = defaultdict(set)
    for state in states:
        by_survivor[down_to[state.target]].add(state.target)
    for survivor, targets in by_survivor.items():
        ledger.record(
            Stripped(
                when=at,
                targets=frozenset(targets),
                operation=operation,
                survives=survivor,
                note=note,
            )
        )
    after = now.after(ledger)
    mine = [z for z in after.bench.zones if z.target in picked.targets]
    return Off(
        act=ledger.act_id,
        operation=operation,
        at=at,
        labels=picked.labels,
        took=_took(states, down_to),
        warnings=(
            *_hurts(states, then, taking_off(operation, in_work(note))),
            *_dust_of_bleach(states, operation, down_to, now.facts),
            *_warnings(states, down_to, operation),
        ),
        after=standings([z for z in mine if not z.is_bare_joint] or mine, after),
        rags=open_rags(after, now),
        notes=_notes(ledger.act_id, now, after),
    )


def stripping_word(strip: bool, sanded: bool, scraped: bool, washed: bool) -> Stripping:
    """Read how it came off; by default stripped."""
    said = [
        how
        for how, typed in (
            (Stripping.STRIP, strip),
            (Stripping.SAND_THROUGH, sanded),
            (Stripping.SCRAPE, scraped),
            (Stripping.WASH, washed),
        )
        if typed
    ]
    if len(said) > 1:
        raise UsageFault(
            "it came off in two ways at once",
            f"say one: {Do.OFF.options('strip', 'sanded', 'scraped')} or "
            f"{Do.OFF.option(washed=True)}",
        )
    return said[0] if said else Stripping.STRIP


def _down_to(states: Sequence[ZoneState], to: str, facts: Facts) -> dict[Target, int | None]:
    """Find, zone by zone, the coat that stays: by act number, product or class."""
    if to.strip().casefold() == BARE:
        return {state.target: None for state in states}
    found: dict[Target, int | None] = {}
    for state in (s for s in states if s.layers):
        named = _called(state.layers, to, facts)
        if not named:
            raise NotFound(f"no coat called {to!r} is on {_on(state)}")
        if len(named) > 1:
            acts = [str(layer.coat.act) for layer in named]
            raise UsageFault(
                f"{len(named)} coats of {named[0].coat.product_name} are on {state.part.called}",
                f"say which by its act: {Do.OFF.option(to=acts[0])} (acts {', '.join(acts)})",
            )
        found[state.target] = named[0].coat.id
    if not found:
        raise NotFound(f"no coat called {to!r} is there: the wood is bare")
    return found | {s.target: None for s in states if not s.layers}


def _called(layers: Sequence[Layer], to: str, facts: Facts) -> list[Layer]:
    """Return the coats that are meant: by their act, a product of that name, or else a class."""
    word = to.strip().casefold()
    act = whole_number(word)
    if act is not None:
        return [layer for layer in layers if layer.coat.act == act]
    named = [layer for layer in layers if layer.coat.product_name.casefold().startswith(word)]
    return named or [layer for layer in layers if layer.of.key in facts.find_class(word)]


def _on(state: ZoneState) -> str:
    there = ", ".join(f"{x.coat.product_name} (act {x.coat.act})" for x in state.layers)
    return f"{state.part.called}, {state.face.name}; on it: {there}"


def _took(states: Sequence[ZoneState], down_to: dict[Target, int | None]) -> tuple[TakenOff, ...]:
    """Say what came off, alike zones together."""
    found: list[TakenOff] = []
    for group in groups(states):
        layers = group.first.layers
        survivor = down_to[group.first.target]
        at = next((n for n, x in enumerate(layers) if x.coat.id == survivor), -1)
        gone = tuple(_there(x.coat) for x in layers[at + 1 :])
        old = group.first.old_finish if at < 0 else None
        stays = _there(layers[at].coat) if at >= 0 else None
        found.append(TakenOff(group.label, gone, stays, name_of(old) if old else ""))
    return tuple(found)


def _there(coat: Coat) -> CoatThere:
    return CoatThere(coat.product_name, coat.when, coat.act)


def _dust_of_bleach(
    states: Sequence[ZoneState],
    operation: Stripping,
    down_to: dict[Target, int | None],
    facts: Facts,
) -> tuple[Finding, ...]:
    """Stop the dust of a bleach that was sanded or scraped off the wood unrinsed."""
    if operation not in {Stripping.SAND_THROUGH, Stripping.SCRAPE}:
        return ()
    found = (
        dust_of_bleach(z.entries, Operation.SAND, facts, through=down_to.get(z.target) is None)
        for z in states
    )
    return tuple(dict.fromkeys(f for f in found if f is not None))


def _hurts(states: Sequence[ZoneState], then: Look, asked: Asked) -> Iterable[Finding]:
    """Say what hurts whoever takes it off: a flame in the vapour, lead, a solvent in a room."""
    near = then.bench.around(then.facts)
    found = (f for rule in _WHO for state in states for f in rule.find(state, asked, near))
    return most_weighty(f for f in found if f.level is not Level.NOTE)


def _warnings(
    states: Sequence[ZoneState], down_to: dict[Target, int | None], operation: Stripping
) -> Iterable[Finding]:
    if all(s.is_bare_wood for s in states):
        yield finding("no-film-there", source=COMMON_PRACTICE)
    stays = [layer for s in states for layer in s.layers if layer.coat.id == down_to.get(s.target)]
    if stays and operation in {Stripping.STRIP, Stripping.WASH}:
        yield finding("stripper-goes-on", Level.CAUTION, COMMON_PRACTICE)
    pairs = (pair for s in states for pair in pairwise(s.layers))
    if any(under in stays and melts_into(over.coat, under.coat) for under, over in pairs):
        yield finding("melted-into-one", Level.CAUTION, COMMON_PRACTICE)


def _notes(act: int, now: Look, after: Look) -> tuple[SafetyNote, ...]:
    mine = [e for e in after.log.entries if e.act == act and isinstance(e, Stripped)]
    if not mine:
        return ()
    return notes_of_stripping(mine[0], now, after)


def off_command(context: Context, act: int) -> str:
    """Write the command that takes the coat of an act off again, down to the coat below it."""
    with context.reading() as connection:
        seen = look(context, connection)
    for state in seen.bench.zones:
        for n, layer in enumerate(state.layers):
            if layer.coat.act == act:
                to = str(state.layers[n - 1].coat.act) if n else BARE
                return Do.OFF(*_typed(act, seen), to=to)
    return Do.OFF("PART", to=BARE)


def _typed(act: int, seen: Look) -> tuple[str, ...]:
    """Name the parts of an act as they are typed."""
    coated = [z for z in seen.bench.zones if any(x.coat.act == act for x in z.layers)]
    return tuple(dict.fromkeys(z.part.path for z in coated))
