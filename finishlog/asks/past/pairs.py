"""Every pair of coats, one over the other, so that good days and bad days can be told apart."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from datetime import datetime, timedelta
from itertools import takewhile

from msgspec import Struct
from msgspec.structs import replace

from finishlog.asks.look.entry_words import Named
from finishlog.asks.look.went_wrong import went_wrong_words
from finishlog.asks.past.recipe import air_at, hours_between
from finishlog.context import Context
from finishlog.core.air.met import Stay
from finishlog.core.air.psychrometrics import Air
from finishlog.core.commands import Do
from finishlog.core.film.layers import ABRADES
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import AnyEntry, Check, Coat, Fault, Review, Stripped, Target, Work
from finishlog.core.log.where import in_brackets
from finishlog.core.log.words import FaultKind, Found, Outcome
from finishlog.core.published.facts import Facts
from finishlog.core.shop.things import Log, Shop
from finishlog.core.zone.stood_in import rooms_of_pieces
from finishlog.errors import NotFound
from finishlog.picking import pick_product
from finishlog.store.log.read_log import read_log
from finishlog.store.things.read_shop import read_shop


class Pair(Struct, frozen=True):
    """One coat over another on some parts.

    `wrong`: faults found since, or that it came off; empty: nothing was said. `checks`: what tests
    found until the next coat, in their order.
    `colour_wait_h`: how long the stain, dye or glaze below had before the first coat over it.
    `air_between`: the air when the lower coat went on. `scuffed` None: not on record.
    """

    parts: tuple[str, ...]
    under: str
    over: str
    put_on: datetime
    hours_between: float
    label_low_h: float | None
    label_high_h: float | None
    label_closes_h: float | None
    air: Air | None
    air_between: Air | None
    scuffed: bool | None
    wet_film_um: float | None
    colour: str
    colour_wait_h: float | None
    wrong: tuple[str, ...]
    checks: tuple[str, ...]
    outcome: Outcome | None
    acts: tuple[int, ...]


def pairs(context: Context, words: Sequence[str]) -> tuple[Pair, ...]:
    """Return the pairs of `under over`, or of every coat under one product; newest first."""
    with context.reading() as connection:
        shop = read_shop(connection, context.clock.now, include_archived=True)
        log = read_log(connection)
    *under, over = [pick_product(shop, word).id for word in words]
    found = _pairs(shop, log, context.facts, under[0] if under else None, over)
    if not found:
        raise NotFound(
            f"no coat of {words[-1]} over {words[0] if under else 'another coat'} is on record",
            f"{Do.PAST()} shows what is",
        )
    return tuple(sorted(found, key=lambda pair: pair.put_on, reverse=True))


def _pairs(shop: Shop, log: Log, facts: Facts, under: int | None, over: int) -> list[Pair]:
    """Find the pairs zone by zone; zones with the same two coats and the same ending are one."""
    stays, named = rooms_of_pieces(shop, log), Named(shop)
    by_target: dict[Target, list[AnyEntry]] = defaultdict(list)
    for entry in log.entries:
        for target in entry.targets:
            by_target[target].append(entry)
    alike: dict[tuple[int, int, tuple[str, ...]], list[Target]] = {}
    told: dict[tuple[int, int, tuple[str, ...]], Pair] = {}
    for target, entries in by_target.items():
        for n, m in _one_over_the_other(entries, under, over):
            wrong = _went_wrong(entries[m + 1 :], facts)
            key = (entries[n].id, entries[m].id, wrong)
            alike.setdefault(key, []).append(target)
            if key not in told:
                told[key] = _pair(entries, n, m, wrong, stays.get(target.piece, ()), facts)
    return [replace(pair, parts=named.zones(alike[key])) for key, pair in told.items()]


def _one_over_the_other(
    entries: Sequence[AnyEntry], under: int | None, over: int
) -> list[tuple[int, int]]:
    found: list[tuple[int, int]] = []
    last: int | None = None
    for n, entry in enumerate(entries):
        if isinstance(entry, Stripped):
            last = None
        elif isinstance(entry, Coat) and entry.is_whole:
            below = entries[last] if last is not None else None
            fits = isinstance(below, Coat) and under in {None, below.product}
            if last is not None and fits and entry.product == over:
                found.append((last, n))
            last = n
    return found


def _pair(
    entries: Sequence[AnyEntry],
    n: int,
    m: int,
    wrong: tuple[str, ...],
    stays: Sequence[Stay],
    facts: Facts,
) -> Pair:
    below, coat = entries[n], entries[m]
    assert isinstance(below, Coat)
    assert isinstance(coat, Coat)
    asked, closes = below.figures.stages.get(Stage.RECOAT), below.figures.window.closes
    between = entries[n + 1 : m]
    abraded = any(isinstance(e, Work) and e.operation in ABRADES for e in between)
    colour, wait = _colour(entries[:m], facts)
    after = entries[m + 1 :]
    reviews = [e for e in after if isinstance(e, Review)]
    return Pair(
        parts=(),
        under=below.product_name,
        over=coat.product_name,
        put_on=coat.when.latest,
        hours_between=hours_between(below, coat),
        label_low_h=asked.low_h if asked else None,
        label_high_h=asked.high_h if asked else None,
        label_closes_h=closes.low_h if closes else None,
        air=air_at(stays, coat.when.latest),
        air_between=air_at(stays, below.when.latest),
        scuffed=True if abraded else coat.scuffed_before,
        wet_film_um=coat.wet_film_um,
        colour=colour,
        colour_wait_h=wait,
        wrong=wrong,
        checks=_checks(after),
        outcome=reviews[-1].outcome if reviews else None,
        acts=(below.act, coat.act),
    )


def _colour(entries: Sequence[AnyEntry], facts: Facts) -> tuple[str, float | None]:
    """Name the last stain, dye or glaze below, and how long it had before it was covered."""
    coats = [e for e in entries if isinstance(e, Coat)]
    for coat, cover in zip(reversed(coats[:-1]), reversed(coats[1:]), strict=True):
        if facts.finish_class(coat.figures.class_key).is_colour:
            wait = (cover.when.earliest - coat.when.latest) / timedelta(hours=1)
            return coat.product_name, round(wait, 2)
    return "", None


def _checks(after: Sequence[AnyEntry]) -> tuple[str, ...]:
    since = takewhile(lambda entry: not isinstance(entry, Coat | Stripped), after)
    return tuple(
        f"{e.test.value}: {e.found.value}{in_brackets(e.place)}"
        for e in since
        if isinstance(e, Check)
    )


def _went_wrong(after: Sequence[AnyEntry], facts: Facts) -> tuple[str, ...]:
    """Return what went wrong until the next coat, and whether it was taken off.

    A film that lets go is told of every pair in it, also of those that later coats covered.
    """
    found: list[str] = []
    covered = False
    for entry in after:
        lets_go = _lets_go(entry)
        if lets_go or (isinstance(entry, Fault) and not covered):
            found.append(went_wrong_words(entry, facts))
        if isinstance(entry, Stripped):
            found += [] if covered else ["taken off"]
            break
        covered = covered or isinstance(entry, Coat)
    return tuple(dict.fromkeys(found))


def _lets_go(entry: AnyEntry) -> bool:
    """Tell whether an entry found that a film does not hold on what is below it."""
    if isinstance(entry, Check):
        return entry.found is Found.FLAKES
    return isinstance(entry, Fault) and entry.what is FaultKind.PEEL
