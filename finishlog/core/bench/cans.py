"""Cans, jars and mixes as the log leaves them, and as each stood when a coat came from it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cached_property

from finishlog.core.air.room import RoomAir
from finishlog.core.film.stirred import what_settles
from finishlog.core.finish.classes import FinishClass
from finishlog.core.log.entries import AnyEntry, Check, Coat, ContainerEvent
from finishlog.core.log.when import When
from finishlog.core.log.words import ContainerDeed, Found
from finishlog.core.mixing.came_from import (
    CameFrom,
    Hardener,
    hardener_in,
    hardener_pct,
    needs_hardener,
    wrong_thinner,
)
from finishlog.core.mixing.chemistry import classes_in, contents, hardens
from finishlog.core.mixing.containers import (
    Container,
    ContainerKind,
    ContainerState,
    container_state,
    events_by_container,
)
from finishlog.core.published.facts import Facts
from finishlog.core.safety.whats_in import called, in_container, names_in
from finishlog.core.shop.things import Shop


def state_of(
    container: Container,
    events: Sequence[ContainerEvent],
    shop: Shop,
    rooms: Mapping[int, RoomAir],
    facts: Facts,
) -> ContainerState:
    """Work out how one container stands, by its events in the order of the work and what is in it.

    Of all that went into a mix the shortest pot life counts.
    """
    of = facts.finish_class(shop.products[container.product].class_key)
    factor = facts.rates["pot-life"].factor_per_10c
    if container.kind is ContainerKind.CAN:
        return container_state(container, events, of, rooms, factor)
    inside = in_container(container, shop, events)
    known = [facts.finish_class(key).pot_life_h for key in classes_in(inside)]
    return container_state(
        container,
        events,
        of,
        rooms,
        factor,
        holds=contents(inside, facts.chemistry),
        pot_life=min((f for f in known if f), key=lambda f: f.low_h, default=None),
    )


class Cans:
    """What stands in the shop to be put on; worked out where it is asked for, and kept."""

    def __init__(
        self,
        shop: Shop,
        entries: Iterable[AnyEntry],
        rooms: Mapping[int, RoomAir],
        facts: Facts,
    ) -> None:
        self._shop, self._rooms, self._facts = shop, rooms, facts
        self._entries = entries if shop.containers else ()
        self._known: dict[tuple[int | None, int, When, str], CameFrom] = {}

    @cached_property
    def _events(self) -> Mapping[int, Sequence[ContainerEvent]]:
        return events_of(self._entries, self._shop, self._facts)

    @cached_property
    def states(self) -> dict[int, ContainerState]:
        """Every container as it stands; a mix whose mixing was undone is left out."""
        found = {
            each.id: self._state(each, self._events.get(each.id, ()))
            for each in self._shop.containers.values()
        }
        return {key: state for key, state in found.items() if state.was_made}

    def came_from(self, coat: Coat) -> CameFrom | None:
        """Return what a coat came from, as it was then; None: nothing needs to be known of it.

        A coat that is only planned will be mixed as it should be.
        """
        of = self._facts.finish_class(coat.figures.class_key)
        if coat.act < 0 or (coat.container is None and not needs_hardener(of)):
            return None
        key = (coat.container, coat.product, coat.when, coat.note)
        if key not in self._known:
            self._known[key] = self._came_from(coat, of)
        return self._known[key]

    def _came_from(self, coat: Coat, of: FinishClass) -> CameFrom:
        named = self._then(coat.container, coat.when)
        mixes = [] if named else [*self._open_mixes(coat)]
        state = mixes[0] if len(mixes) == 1 else named
        parts = state.container.parts if state else ()
        sources = tuple(self._sources(state, coat.when))
        ids = {source.container.id for source in sources}
        return CameFrom(
            state,
            self._hardener(coat, of, state, bool(mixes)),
            coat.when.latest,
            hardener_pct(parts, self._facts.chemistry) if needs_hardener(of) else None,
            sources,
            tuple(e for key in ids for e in self._events.get(key, ()) if not _by(e, coat.when)),
            next(filter(None, (wrong_thinner(s, self._facts.chemistry) for s in sources)), None),
        )

    def _hardener(
        self, coat: Coat, of: FinishClass, state: ContainerState | None, some_mix: bool
    ) -> Hardener:
        if not needs_hardener(of):
            return Hardener.NOT_NEEDED
        if some_mix or hardens(self._facts.chemistry.in_note(coat.note)):
            return Hardener.IN_IT
        if state is None or state.container.kind is not ContainerKind.MIX:
            return Hardener.UNTOLD
        return Hardener.IN_IT if self._has_hardener(state) else Hardener.LEFT_OUT

    def _has_hardener(self, state: ContainerState) -> bool:
        can = state.container
        inside = in_container(can, self._shop, state.events)
        return hardener_in(can.parts, names_in(inside), self._facts.chemistry)

    def _open_mixes(self, coat: Coat) -> Iterator[ContainerState]:
        """Yield the mixes with a hardener of its product that stood there then."""
        for each in self._shop.containers.values():
            if each.product != coat.product or each.kind is not ContainerKind.MIX:
                continue
            then = self._then(each.id, coat.when)
            if then and then.events and not then.ended and self._has_hardener(then):
                yield then

    def _sources(self, state: ContainerState | None, when: When) -> Iterator[ContainerState]:
        """Yield it, and what it was drawn from, each as it was when it was drawn."""
        seen: set[int] = set()
        while state is not None and state.container.id not in seen:
            seen.add(state.container.id)
            yield state
            source = called(state.container.drawn_from, self._shop)
            when = state.events[0].when if state.events else when
            state = self._then(source.id, when) if source else None

    def _then(self, container: int | None, when: When) -> ContainerState | None:
        """Return a container as it was at a time; None: there is none, or it never was mixed."""
        known = self._shop.containers.get(container) if container is not None else None
        if known is None:
            return None
        events = self._events.get(known.id, ())
        if known.kind is ContainerKind.MIX and not events and not known.archived:
            return None
        return self._state(known, [e for e in events if _by(e, when)])

    def _state(self, container: Container, events: Sequence[ContainerEvent]) -> ContainerState:
        return state_of(container, events, self._shop, self._rooms, self._facts)


def events_of(
    entries: Iterable[AnyEntry], shop: Shop, facts: Facts
) -> Mapping[int, Sequence[ContainerEvent]]:
    """Return what befell each container, also by what was found of coats that came from it."""
    by_coats = (*_samples(entries), *_poured_unstirred(entries, shop, facts))
    told = sorted((*entries, *by_coats), key=lambda e: e.when.order) if by_coats else entries
    return events_by_container(told)


def _poured_unstirred(
    entries: Iterable[AnyEntry], shop: Shop, facts: Facts
) -> Iterator[ContainerEvent]:
    """Yield the coats from a can that was not stirred, of what settles: the can is not as it was.

    Of a mix none: it was stirred as it was mixed, and is used up.
    """
    for coat in (e for e in entries if isinstance(e, Coat) and e.stirred is False):
        known = shop.containers.get(coat.container) if coat.container is not None else None
        if known is None or known.kind is ContainerKind.MIX:
            continue
        if what_settles(coat, shop.products, facts) is not None:
            yield _as_event(coat, known.id, ContainerDeed.UNSTIRRED)


def _as_event(entry: AnyEntry, container: int, deed: ContainerDeed) -> ContainerEvent:
    return ContainerEvent(
        id=entry.id, act=entry.act, when=entry.when, container=container, deed=deed
    )


def _samples(entries: Iterable[AnyEntry]) -> Iterator[ContainerEvent]:
    """Yield the samples that dried as what they are for their can, on whatever part it went.

    One that stayed soft may be the wood's: of the can alone it says nothing.
    """
    dried = [e for e in entries if isinstance(e, Check) and e.found is Found.SAMPLE_DRY]
    for check in dried:
        before = (
            e
            for e in entries
            if isinstance(e, Coat) and e.targets & check.targets and e.when.order < check.when.order
        )
        newest = max(before, key=lambda coat: coat.when.order, default=None)
        if newest is not None and newest.container is not None:
            yield _as_event(check, newest.container, ContainerDeed.TESTED)


def _by(event: ContainerEvent, when: When) -> bool:
    """Tell whether something had befallen a container by a time; what may have been, had."""
    return event.when.earliest <= when.latest
