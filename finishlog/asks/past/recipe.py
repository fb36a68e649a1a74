"""What was really done to a zone: attempt by attempt, coat by coat, with what was found since."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime, timedelta
from itertools import pairwise

from msgspec import Struct

from finishlog.asks.bench.open_cans import from_words
from finishlog.asks.look.entry_words import Words
from finishlog.asks.look.went_wrong import went_wrong_words
from finishlog.core.air.met import Stay
from finishlog.core.air.psychrometrics import Air
from finishlog.core.film.checks import failed
from finishlog.core.finish.classes import Limits, Method, Sheen
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import AnyEntry, Check, Coat, Fault, Stripped, Work
from finishlog.core.log.when import When
from finishlog.core.log.words import Operation, Stripping
from finishlog.core.measure.quantities import celsius
from finishlog.core.shop.things import Shop

_DONE_OR_FOUND = Work | Check | Fault


class PastDeed(Struct, frozen=True):
    """Work by hand, a check, a fault or its mending, in words."""

    said: str
    at: When
    act: int
    went_wrong: bool = False


class PastAir(Struct, frozen=True):
    """A room that a coat was carried into while it was wet, from when, and its air."""

    room: str
    since: datetime
    air: Air | None


class PastCoat(Struct, frozen=True):
    """One coat as it went on: real hours since the one before, against what its label asked.

    `label_closes_h`: the hours after which the coat before was to be scuffed first.
    `wiped_after_min`: from going on to wiping off, when it was wiped.
    """

    product: str
    class_name: str
    # How it shines, as its product says today.
    sheen: Sheen | None
    put_on: datetime
    act: int
    hours_since_last: float | None
    label_low_h: float | None
    label_high_h: float | None
    label_closes_h: float | None
    air: Air | None
    # What was wrong with that air for its class: it stays in sight.
    not_in_this_air: str
    method: Method | None
    scuffed_before: bool | None
    flooded: bool | None
    # Its can was stirred right before; None: not said.
    stirred: bool | None
    wet_film_um: float | None
    wiped_after_min: float | None
    # The can or mix that it came from, with its ratio or cut and batch; empty: not said.
    container: str
    # What it covered where it was broken off; None: it was finished.
    stopped: str | None
    note: str
    since: tuple[PastDeed, ...]
    # Where it dried, and the air read there last before it was tack-free; empty: where it went on.
    dried: tuple[PastAir, ...] = ()


class PastOff(Struct, frozen=True):
    """How an attempt came off, down to what (empty: bare wood), after how long, and why."""

    how: Stripping
    down_to: str
    lasted_h: float | None
    why: tuple[str, ...]
    at: When
    act: int


class PastAttempt(Struct, frozen=True):
    """One go: the work before the first coat, the coats, and what took it off, if anything did."""

    prepared: tuple[PastDeed, ...]
    coats: tuple[PastCoat, ...]
    off: PastOff | None


def attempts_of(
    entries: Sequence[AnyEntry], stays: Sequence[Stay], words: Words
) -> tuple[PastAttempt, ...]:
    """Tell what reached a zone, in the order of the work; the last attempt is what is on it."""
    ends = [n for n, entry in enumerate(entries) if isinstance(entry, Stripped)]
    found = []
    for begin, end in pairwise([-1, *ends, len(entries)]):
        off = entries[end] if end < len(entries) else None
        attempt = _attempt(entries[begin + 1 : end], off, stays, words)
        if attempt.coats or attempt.off:
            found.append(attempt)
    return tuple(found)


def _attempt(
    entries: Sequence[AnyEntry], off: AnyEntry | None, stays: Sequence[Stay], words: Words
) -> PastAttempt:
    at = [n for n, entry in enumerate(entries) if isinstance(entry, Coat)]
    first = at[0] if at else len(entries)
    return PastAttempt(
        prepared=_deeds(entries[:first], words),
        coats=tuple(
            _coat(entries, n, before, following, stays, words)
            for before, (n, following) in zip(
                [None, *at], pairwise([*at, len(entries)]), strict=False
            )
        ),
        off=_off(off, entries, words) if isinstance(off, Stripped) else None,
    )


def _deeds(entries: Iterable[AnyEntry], words: Words) -> tuple[PastDeed, ...]:
    return tuple(
        PastDeed(
            _deed(e, words),
            e.when,
            e.act,
            isinstance(e, Fault) or (isinstance(e, Check) and failed(e.found)),
        )
        for e in entries
        if isinstance(e, _DONE_OR_FOUND)
    )


# In a list of what was found a check says itself.
_FOUND = ("{test}: {found}{place: (_)}", "{note}")
_MENDED = ("mended{place: (_)}{note:: _}",)


def _deed(entry: AnyEntry, words: Words) -> str:
    if isinstance(entry, Work) and entry.operation is Operation.MEND:
        return words.of(entry, _MENDED)
    return words.of(entry, _FOUND if isinstance(entry, Check) else ())


def _coat(
    entries: Sequence[AnyEntry],
    n: int,
    before: int | None,
    following: int,
    stays: Sequence[Stay],
    words: Words,
) -> PastCoat:
    coat, last = entries[n], entries[before] if before is not None else None
    assert isinstance(coat, Coat)
    since = entries[n + 1 : following]
    asked = last.figures.stages.get(Stage.RECOAT) if isinstance(last, Coat) else None
    closes = last.figures.window.closes if isinstance(last, Coat) else None
    of, air = words.facts.finish_class(coat.figures.class_key), air_at(stays, coat.when.latest)
    return PastCoat(
        product=coat.product_name,
        class_name=of.name,
        sheen=shine_of(coat.product, words.shop),
        put_on=coat.when.latest,
        act=coat.act,
        hours_since_last=hours_between(last, coat) if isinstance(last, Coat) else None,
        label_low_h=asked.low_h if asked else None,
        label_high_h=asked.high_h if asked else None,
        label_closes_h=closes.low_h if closes else None,
        air=air,
        not_in_this_air=_beyond(of.limits, air) if air else "",
        method=coat.method,
        scuffed_before=coat.scuffed_before,
        flooded=coat.flooded,
        stirred=coat.stirred,
        wet_film_um=coat.wet_film_um,
        wiped_after_min=wiped_after_min(coat, since),
        container=from_words(coat.container, words.shop, words.facts),
        stopped=coat.stopped,
        note=coat.note,
        since=_deeds(since, words),
        dried=tuple(_carried(coat, stays, words)),
    )


def shine_of(product: int | None, shop: Shop) -> Sheen | None:
    """Return how a product shines; None: it was not said."""
    known = shop.products.get(product) if product is not None else None
    return known.sheen if known else None


def _carried(coat: Coat, stays: Sequence[Stay], words: Words) -> Iterator[PastAir]:
    """Yield the rooms that a coat was carried into before its label let it be coated again."""
    recoat = coat.figures.stages.get(Stage.RECOAT)
    dry = coat.when.latest + timedelta(hours=recoat.high_h if recoat else 0.0)
    for stay in stays:
        if coat.when.latest < stay.since < dry:
            room = words.shop.rooms.get(stay.air.id or 0)
            yield PastAir(room.name if room else "", stay.since, air_at(stays, stay.since))


def _beyond(limits: Limits, air: Air) -> str:
    """Say which limit of its class an air was beyond; empty: none."""
    if limits.min_c and air.temperature_c < limits.min_c.least:
        return f"TOO COLD, it needs {celsius(limits.min_c.value)}"
    if limits.max_c and air.temperature_c > limits.max_c.most:
        return f"TOO HOT, its limit is {celsius(limits.max_c.value)}"
    if limits.max_rh_pct and air.humidity_pct > limits.max_rh_pct.value:
        return f"TOO DAMP, its limit is {limits.max_rh_pct.value:.0f} %"
    return ""


def hours_between(last: Coat, coat: Coat) -> float:
    """Return the hours that a coat is sure to have had before the next went on."""
    return round((coat.when.earliest - last.when.latest) / timedelta(hours=1), 2)


def air_at(stays: Sequence[Stay], moment: datetime) -> Air | None:
    """Return the air of the room that a piece stood in, as read; None when it was not read."""
    here = [stay for stay in stays if stay.since <= moment][-1:]
    reading = here[0].air.measured_at(moment) if here else None
    return reading.air if reading else None


def wiped_after_min(coat: Coat, since: Iterable[AnyEntry]) -> float | None:
    """Return the minutes from a coat to the first wipe behind it; None: there was none."""
    wiped = next((e for e in since if isinstance(e, Work) and e.operation is Operation.WIPE), None)
    if wiped is None:
        return None
    return round((wiped.when.latest - coat.when.earliest) / timedelta(minutes=1), 1)


def _off(off: Stripped, entries: Sequence[AnyEntry], words: Words) -> PastOff:
    coats = [e for e in entries if isinstance(e, Coat)]
    wrong = [e for e in entries if isinstance(e, Fault | Check)]
    why = [w for e in wrong if (w := _if_wrong(e, words))]
    lasted = (off.when.latest - coats[0].when.earliest) / timedelta(hours=1) if coats else None
    return PastOff(
        how=off.operation,
        down_to=words.coats.get(off.survives, "a coat") if off.survives is not None else "",
        lasted_h=round(lasted, 2) if lasted is not None else None,
        why=tuple(dict.fromkeys([*why, *([off.note] if off.note else [])])),
        at=off.when,
        act=off.act,
    )


def _if_wrong(entry: Fault | Check, words: Words) -> str:
    if isinstance(entry, Check) and not failed(entry.found):
        return ""
    return went_wrong_words(entry, words.facts)
