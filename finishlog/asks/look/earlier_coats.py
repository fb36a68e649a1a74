"""Earlier coats of a product beside one that is slow: their air, their thickness, how long.

Before a can is suspected what it did last time is laid beside what it does now: a colder night or
a thicker coat explains more than a bad can.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from msgspec import Struct

from finishlog.asks.look.entry_words import Named
from finishlog.asks.look.look import Look
from finishlog.core.air.met import AirMet, air_met
from finishlog.core.air.psychrometrics import Air
from finishlog.core.film.checks import failed
from finishlog.core.film.layers import Layer
from finishlog.core.log.entries import AnyEntry, Check, Coat, Stripped, Target
from finishlog.core.log.words import SOFT
from finishlog.core.zone.stood_in import rooms_of_pieces
from finishlog.store.log.read_log import read_log
from finishlog.store.things.read_shop import read_shop

if TYPE_CHECKING:
    from sqlalchemy import Connection

# So many are laid beside it, the newest first.
_SHOWN = 3


class CoatBeside(Struct, frozen=True):
    """One coat of a product: where, in which air, how thick, and how long until it was dry.

    `air`: as it went on, where it was read; `coldest_c`: the coldest until then. `hours`: until it
    was coated again, or `passed` a check; of the coat that is asked about until now.
    """

    parts: tuple[str, ...]
    put_on: datetime
    air: Air | None
    coldest_c: float | None
    wet_film_um: float | None
    hours: float
    passed: bool
    act: int


class Beside(Struct, frozen=True):
    """A coat that was found soft, and earlier ones of its product that dried."""

    now: CoatBeside
    earlier: tuple[CoatBeside, ...]


def is_slow(layer: Layer | None) -> bool:
    """Tell whether the last check found a film soft."""
    return layer is not None and bool(layer.checks) and layer.checks[-1].found in SOFT


def beside(connection: Connection, layer: Layer, seen: Look) -> Beside | None:
    """Lay the earlier coats of its product beside a slow one; None: none of them dried."""
    now = seen.clock.now
    shop, log = read_shop(connection, now, include_archived=True), read_log(connection)
    stays, named = rooms_of_pieces(shop, log, seen.clock.zone), Named(shop)
    reached: dict[Target, list[AnyEntry]] = defaultdict(list)
    for entry in log.entries:
        for target in entry.targets:
            reached[target].append(entry)
    found: dict[int, CoatBeside] = {}
    for target, entries in reached.items():
        air = stays.get(target.piece, ())
        for n, coat in enumerate(entries):
            is_one = isinstance(coat, Coat) and coat.product == layer.coat.product
            if not is_one or not isinstance(coat, Coat) or not coat.is_whole:
                continue
            ended = _dried(entries[n + 1 :])
            if coat.id in found or ended is None or coat.id == layer.coat.id:
                continue
            met = air_met(air, coat.when.latest)
            found[coat.id] = _line(coat, met, ended.when.earliest, ended, named)
    earlier = sorted(found.values(), key=lambda c: c.put_on, reverse=True)[:_SHOWN]
    if not earlier:
        return None
    return Beside(_line(layer.coat, layer.air, now, None, named), tuple(earlier))


def _dried(after: Sequence[AnyEntry]) -> Coat | Check | None:
    """Return the coat that went over a coat, or the check that it passed; None: neither.

    What was found soft and then covered, or came off, tells of no time.
    """
    for entry in after:
        if isinstance(entry, Stripped):
            return None
        if isinstance(entry, Coat) or (isinstance(entry, Check) and not failed(entry.found)):
            return entry
    return None


def _line(
    coat: Coat, met: AirMet, until: datetime, ended: Coat | Check | None, named: Named
) -> CoatBeside:
    read = [span for span in met.until(until) if span.measured]
    cold = [span.coldest_c for span in read if span.coldest_c is not None]
    reading = met.legs[0].room.measured_at(met.start)
    return CoatBeside(
        parts=named.zones(coat.targets),
        put_on=coat.when.latest,
        air=reading.air if reading else None,
        coldest_c=min(cold, default=None),
        wet_film_um=coat.wet_film_um,
        hours=round((until - coat.when.latest) / timedelta(hours=1), 1),
        passed=isinstance(ended, Check),
        act=coat.act,
    )
