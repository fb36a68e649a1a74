"""What a self-heating finish leaves behind: rags, dust, scrapings, what a stripper lifts."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from finishlog.core.attempts import what_stays
from finishlog.core.book import Book
from finishlog.core.records import (
    AnyEntry,
    Check,
    Coat,
    Found,
    Operation,
    Stripped,
    Stripping,
    Target,
    Work,
)

_RAISES_DUST = frozenset({Operation.SAND, Operation.SCUFF, Operation.DENIB})


class Waste(StrEnum):
    """What an item is made of: all of it heats like rags."""

    RAGS = "rags"
    DUST = "dust and sander bag"
    SCRAPINGS = "scrapings"
    STRIPPINGS = "stripped finish, pads, cloths"


# How a film came off, and what that leaves.
_LEAVES = {
    Stripping.SCRAPE: Waste.SCRAPINGS,
    Stripping.SAND_THROUGH: Waste.DUST,
    Stripping.STRIP: Waste.STRIPPINGS,
    Stripping.WASH: Waste.STRIPPINGS,
}
_SOFT = frozenset({Found.TACKY, Found.GUMS})
SOFT_FILM = "from a film that was still soft: it heats more than rags do"


@dataclass(frozen=True, slots=True)
class Wetting:
    """Rags that got wet: `moment` at the earliest, `latest` at the latest."""

    entry: int
    product: str
    moment: datetime
    latest: datetime
    targets: frozenset[Target]
    waste: Waste
    soft: bool = False
    # A paste: it skins over, and stays wet within.
    thick: bool = False


# What reached each zone so far: coats, checks and strippings.
_Told = dict[Target, list[AnyEntry]]


def what_wets(entries: Iterable[AnyEntry], book: Book) -> Iterable[Wetting]:
    """Yield coats that self-heat, and what sanding or taking off a young film of them leaves."""
    told: _Told = {}
    for entry in entries:
        if isinstance(entry, Coat):
            if entry.scuffed_before:
                yield from _off_the_film(entry, Waste.DUST, told, book)
            if book.finish_class(entry.figures.class_key).self_heating:
                thick = entry.figures.class_key in book.rags.thick
                yield _wetting(entry, entry.product_name, entry.targets, Waste.RAGS, thick=thick)
        elif isinstance(entry, Stripped):
            yield from _off_the_film(entry, _LEAVES[entry.operation], told, book)
        elif isinstance(entry, Work) and entry.operation in _RAISES_DUST:
            yield from _off_the_film(entry, Waste.DUST, told, book)
        if isinstance(entry, Coat | Check | Stripped):
            for target in entry.targets:
                told.setdefault(target, []).append(entry)


def _off_the_film(
    entry: Work | Coat | Stripped, waste: Waste, told: _Told, book: Book
) -> Iterable[Wetting]:
    young = timedelta(days=book.rags.film_counts_until_d.value)
    by_product: dict[str, set[Target]] = {}
    soft: set[str] = set()
    for target in entry.targets & told.keys():
        story = what_stays(told[target])
        coat = _newest_hot(story, book)
        if coat and entry.when.earliest - coat.when.latest < young:
            by_product.setdefault(coat.product_name, set()).add(target)
            if _is_soft(story):
                soft.add(coat.product_name)
    for product, targets in by_product.items():
        yield _wetting(entry, product, frozenset(targets), waste, soft=product in soft)


def _newest_hot(story: Sequence[AnyEntry], book: Book) -> Coat | None:
    hot = (
        e
        for e in reversed(story)
        if isinstance(e, Coat) and book.finish_class(e.figures.class_key).self_heating
    )
    return next(hot, None)


def _is_soft(story: Sequence[AnyEntry]) -> bool:
    """Tell whether the last check found the film soft."""
    last = [e for e in story if isinstance(e, Check)][-1:]
    return bool(last) and last[0].found in _SOFT


def _wetting(
    entry: Coat | Work | Stripped,
    product: str,
    targets: frozenset[Target],
    waste: Waste,
    *,
    soft: bool = False,
    thick: bool = False,
) -> Wetting:
    when = entry.when
    return Wetting(entry.id, product, when.earliest, when.latest, targets, waste, soft, thick)
