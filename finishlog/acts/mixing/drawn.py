"""Which can or mix did a coat come from, and what speaks against it?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from finishlog.acts.answers.warn import coats_of_this_evening
from finishlog.acts.mixing.can import NONE
from finishlog.asks.bench.open_cans import against, from_words, pick_container
from finishlog.asks.look.look import Look
from finishlog.core.commands import Do
from finishlog.core.film.stirred import was_stirred, what_settles
from finishlog.core.findings import Finding, Level, finding
from finishlog.core.log.entries import Coat
from finishlog.core.log.when import When
from finishlog.core.log.words import ContainerDeed
from finishlog.core.mixing.came_from import Hardener
from finishlog.core.mixing.containers import Container, ContainerKind, ContainerState
from finishlog.core.mixing.keeping import ages_differ
from finishlog.core.published.facts import Facts
from finishlog.core.rules.film.came_from import (
    OF_THE_CAN,
    hardener_left_out,
    hardener_untold,
    off_ratio,
)
from finishlog.core.rules.film.sheen import not_stirred, two_batches
from finishlog.core.shop.things import Product
from finishlog.core.zone.asked import NOTHING
from finishlog.errors import Ambiguous
from finishlog.picking import Zones

# The option that says which.
FROM = Do.LOG.option(from_=True)


class Drawn(Struct, frozen=True):
    """Where a coat came from. `words` empty: it was not said, and no one open mix says it."""

    container: int | None
    words: str
    warnings: tuple[Finding, ...]


def drawn_from(
    then: Look, product: Product, typed: str | None, picked: Zones, at: When, act: int
) -> Drawn:
    """Find the container of a coat, which is `act`: the one named, or the only open mix of it.

    `then` is the shop as it was at the time of the work. Ambiguous where several stand open and
    none was named: an age that is guessed is worse than one that is asked for.
    """
    if not then.shop.containers and typed in {None, NONE}:
        return Drawn(None, "", ())
    known = then.bench.cans.states
    of_it = [s for s in known.values() if s.container.product == product.id]
    if typed is None:
        good = [s for s in of_it if not s.last(ContainerDeed.CONDEMNED)]
        mixes = [s for s in good if s.is_open_mix]
        _one_is_open(mixes or [s for s in good if _is_open_can(s)], product)
        if not mixes:
            return Drawn(None, "", _of_the_only_can(of_it, at, then.facts))
        container = mixes[0].container
    elif typed.casefold() == NONE:
        return Drawn(None, "", ())
    else:
        container = pick_container(then.shop, typed)
    state = known.get(container.id)
    found = [*_misfits(container, state, product, then, act)]
    if state is not None:
        found += against(state, at.latest, then.facts)
        found += _of_other_ages(state, then, picked, at, known)
    return Drawn(container.id, from_words(container.id, then.shop, then.facts), tuple(found))


def _is_open_can(state: ContainerState) -> bool:
    is_mix = state.container.kind is ContainerKind.MIX
    return not is_mix and state.opened is not None and not state.ended


def _one_is_open(states: Sequence[ContainerState], product: Product) -> None:
    """Refuse to guess from which of several a coat came."""
    if len(states) < 2:
        return
    names = tuple(state.container.name for state in states)
    typed = " or ".join(Do.LOG.option(from_=name) for name in names)
    raise Ambiguous(
        f"{len(names)} of {product.name} stand open",
        f"say which: {typed}; {Do.LOG.option(from_=NONE)}: out of neither",
        FROM,
        (*names, NONE),
    )


def _of_the_only_can(of_it: list[ContainerState], at: When, facts: Facts) -> tuple[Finding, ...]:
    """Return what speaks against the only can of a product: it can have come from no other."""
    cans = [s for s in of_it if s.container.kind is not ContainerKind.MIX and not s.ended]
    return against(cans[0], at.latest, facts) if len(cans) == 1 else ()


def _misfits(
    container: Container, state: ContainerState | None, product: Product, then: Look, act: int
) -> Iterator[Finding]:
    if container.product != product.id:
        holds = then.shop.products[container.product].name
        yield finding(
            "holds-another",
            Level.CAUTION,
            can=container.name,
            holds=holds,
            of=product.name,
            act=act,
        )
    if state is None:
        yield finding("not-mixed-by-then", Level.CAUTION, can=container.name, act=act)
    elif container.kind is not ContainerKind.MIX and state.opened is None:
        yield finding("opening-untold", can=container.name)


def _of_other_ages(
    state: ContainerState, then: Look, picked: Zones, at: When, known: Mapping[int, ContainerState]
) -> list[Finding]:
    """Say once when the coat below came from a mix of very different age."""
    tops = {
        (z.top.coat.container, z.top.coat.when.latest)
        for z in then.bench.zones
        if z.target in picked.targets and z.top and z.top.coat.container is not None
    }
    under = [(known[container], moment) for container, moment in sorted(tops) if container in known]
    found = ages_differ(state, at.latest, under)
    return [found] if found else []


def told_once(film: Sequence[Finding], can: Sequence[Finding]) -> Iterator[Finding]:
    """Yield what is said of the film and of the can that the next coat comes from, one cause once.

    The one that weighs more is kept; of two alike that of the film, which is on the wood.
    """
    order = list(Level)
    alike = [
        (of_film, of_can)
        for of_film in film
        for of_can in can
        if OF_THE_CAN.get(of_film.rule) == of_can.rule
        and of_film.value("can") == of_can.value("can")
    ]
    left = [f if order.index(f.level) < order.index(c.level) else c for f, c in alike]
    yield from (each for each in (*film, *can) if each not in left)


def of_the_pot(
    then: Look, after: Look, product: Product, act: int, told_already: Sequence[Finding]
) -> Iterator[Finding]:
    """Yield what the coat of an act came from says of its film: its hardener, its ratio.

    What a coat of it asked this evening is not asked again.
    """
    asked = any(
        coat.product == product.id and _was_untold(then, coat)
        for coat in coats_of_this_evening(then)
    )
    said = {each.rule for each in told_already} | ({hardener_untold.id} if asked else set())
    near = after.bench.around(after.facts)
    yield from _was_it_stirred(then, after, product, act)
    for zone in after.bench.zones:
        if not any(layer.coat.act == act for layer in zone.layers):
            continue
        for rule in (hardener_left_out, hardener_untold, off_ratio, not_stirred, two_batches):
            found = (f for f in rule.find(zone, NOTHING, near) if act in f.acts)
            yield from (f for f in found if f.rule not in said)


def _was_it_stirred(then: Look, after: Look, product: Product, act: int) -> Iterator[Finding]:
    """Ask once an evening whether a can was stirred in which something settles.

    Of a coat that names no can nobody is asked: who keeps no cans here stirs them all the same.
    """
    coat = next(e for e in after.log.entries if e.act == act and isinstance(e, Coat))
    what = what_settles(coat, after.shop.products, after.facts)
    asked = any(each.product == product.id for each in coats_of_this_evening(then))
    if what is None or asked or coat.container is None:
        return
    if was_stirred(coat, after.bench.cans.came_from(coat), after.facts) is None:
        found = finding("stirred-untold", source=what.source, of=product.name, what=what.what)
        yield replace(found, acts=(act,))


def _was_untold(then: Look, coat: Coat) -> bool:
    source = then.bench.cans.came_from(coat)
    return source is not None and source.hardener is Hardener.UNTOLD


def what_is_in(then: Look, typed: str | None) -> str | None:
    """Name the product of a container: `log doors --from mix-1` says what went on."""
    if typed is None or typed.casefold() == NONE:
        return None
    return then.shop.products[pick_container(then.shop, typed).product].name
