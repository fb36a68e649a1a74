"""What is on a part: its coats by face, and what comes next."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta

from msgspec import Struct

from finishlog.asks.bench.open_cans import from_words
from finishlog.asks.look.entry_words import Words
from finishlog.asks.look.look import Look, look
from finishlog.asks.look.meant import Wanted
from finishlog.asks.look.standing import Standing, glue_up_standings, product_name, standing_of
from finishlog.asks.look.went_wrong import AttemptThere, attempts_there
from finishlog.context import Context
from finishlog.core.film.build import FilmBuild, film_build
from finishlog.core.film.layers import Layer
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import AnyEntry, Coat, HandedOver, Note, Photo, Review, Work
from finishlog.core.log.when import When
from finishlog.core.log.words import KEEPS, Operation
from finishlog.core.shop.things import FaceKind, Shop, Step
from finishlog.core.verdict.due import asked_of
from finishlog.core.zone.asked import NEEDS
from finishlog.core.zone.grouping import Group, groups
from finishlog.core.zone.state import ZoneState

_BORNE = frozenset({Operation.STACK, Operation.PACK, Operation.USE})


class CoatLine(Struct, frozen=True):
    """One layer, with the abrading that followed it."""

    product: str
    put_on: datetime
    abraded: tuple[str, ...]
    act: int
    # The can or mix that it came from; empty: not said.
    container: str = ""
    abraded_acts: tuple[int, ...] = ()
    # What it covered where it was broken off; None: it was finished.
    stopped: str | None = None
    # It is the very last layer, and counts as no coat.
    last: bool = False
    # Of what is wiped off: how long it was on the wood, at most, and the act of the wipe.
    wiped_after_min: float | None = None
    wiped_act: int | None = None
    # It lies below what the steps asked for: another system, or a finish that they go over.
    earlier: bool = False


class HandledLine(Struct, frozen=True):
    """That it was stacked, packed or put to use, how old its film was, and what that broke."""

    what: Operation
    at: datetime
    act: int
    age_h: float
    # The stage that was not promised yet; None: it was time.
    before: Stage | None


class AsideLine(Struct, frozen=True):
    """Something that was done though no step asked for it."""

    what: str
    act: int


class SaidLine(Struct, frozen=True):
    """What was said of it: notes, reviews, photos, that it was handed over."""

    said: str
    at: When
    act: int


class On(Struct, frozen=True):
    """One group of a part: coats oldest first, steps still to come, what no step asked for."""

    standing: Standing
    species: str
    joint: bool
    coats: tuple[CoatLine, ...]
    to_come: tuple[str, ...]
    passed_over: tuple[str, ...]
    aside: tuple[AsideLine, ...]
    # What was on it before and came off, oldest first.
    attempts: tuple[AttemptThere, ...] = ()
    said: tuple[SaidLine, ...] = ()
    handled: tuple[HandledLine, ...] = ()
    # How thick the film is in all, and what more it bears.
    film: FilmBuild | None = None


def on(context: Context, wanted: Wanted) -> tuple[On, ...]:
    """Answer for what is meant, group by group."""
    with context.reading() as connection:
        seen = look(context, connection)
    parts = tuple(_on(group, seen) for group in groups(wanted.of(seen.bench.zones)))
    waiting = (g for g in seen.bench.glue_ups if g.part.id in wanted.ids)
    return (*parts, *(_to_be_glued_up(line) for line in glue_up_standings(waiting, seen)))


def _to_be_glued_up(line: Standing) -> On:
    """Answer for an assembly that is not there yet: nothing is on it."""
    return On(line, "", False, (), (line.operation,), (), ())


def _on(group: Group, seen: Look) -> On:
    state = group.first
    told: list[AnyEntry] = [layer.wipes[0] for layer in state.layers if layer.is_wiped_off]
    told += [layer.coat for layer in state.earlier]
    behind = state.member.behind
    told += [e for e in state.progress.aside if behind is not None and behind.holds(e)]
    progress, said = state.progress, Words(seen.shop, seen.facts)
    return On(
        standing=standing_of(group, seen),
        species=", ".join(dict.fromkeys(s.species for s in group.states if s.species)),
        joint=state.face.kind is FaceKind.JOINT,
        coats=tuple(
            CoatLine(
                layer.coat.product_name,
                layer.put_on,
                tuple(work.operation.value for work in layer.abraded),
                layer.coat.act,
                from_words(layer.coat.container, seen.shop, seen.facts),
                tuple(work.act for work in layer.abraded),
                layer.coat.stopped,
                layer.of.goes_on_last,
                *_wiped(layer),
                n < len(state.earlier),
            )
            for n, layer in enumerate(state.layers)
        ),
        to_come=tuple(step_words(s, seen.shop) for s in progress.steps[progress.done :]),
        passed_over=tuple(
            step_words(s, seen.shop)
            for n, s in enumerate(progress.steps[: progress.done])
            if n not in progress.matched
        ),
        aside=tuple(
            AsideLine(_words(entry), entry.act)
            for entry in progress.aside
            if entry not in told and not _keeps(entry)
        )
        if progress.steps
        else (),
        attempts=attempts_there(state.attempts, seen.facts),
        said=tuple(
            SaidLine(said.of(entry), entry.when, entry.act)
            for entry in state.entries
            if isinstance(entry, Note | Review | Photo | HandedOver)
        ),
        handled=tuple(_handled(state)),
        film=film_build(state.layers, asked_of(state, seen.shop, seen.facts).over, seen.facts),
    )


def _wiped(layer: Layer) -> tuple[float | None, int | None]:
    if not layer.is_wiped_off:
        return None, None
    first = layer.wipes[0]
    return (first.when.latest - layer.first_on) / timedelta(minutes=1), first.act


def _handled(state: ZoneState) -> Iterator[HandledLine]:
    """Yield what a film was made to bear since its last coat."""
    top = state.top
    for entry in state.entries if top else ():
        if not isinstance(entry, Work) or entry.operation not in _BORNE:
            continue
        at, stage = entry.when.earliest, NEEDS[entry.operation]
        if top is None or at < top.put_on:
            continue
        time = state.stages.get(stage)
        early = time is not None and (time.high is None or at < time.high)
        age_h = (at - top.put_on) / timedelta(hours=1)
        yield HandledLine(entry.operation, at, entry.act, age_h, stage if early else None)


def step_words(step: Step, shop: Shop) -> str:
    """Write a step as it is typed: `sealer`, `topcoat@back`; its grit, mix, minutes or note too."""
    name = product_name(step.product, shop) or step.operation.value
    if step.note:
        name = f"{name} ({step.note})"
    return f"{name}@{','.join(step.faces)}" if step.faces else name


def _keeps(entry: AnyEntry) -> bool:
    """Tell whether it only says how a piece is kept: no step asks for that."""
    return isinstance(entry, Work) and entry.operation in KEEPS


def _words(entry: AnyEntry) -> str:
    if isinstance(entry, Coat):
        return entry.product_name
    return entry.operation.value if isinstance(entry, Work) else ""
