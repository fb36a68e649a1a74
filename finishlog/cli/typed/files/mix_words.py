"""Read a mix as it is typed: `base:500ml hardener:50ml`, `10:1`, `varnish:2 "white spirit":1`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import datetime, timedelta

from finishlog.cli.typed.figures import amounts
from finishlog.cli.typed.figures.numbers import NUMBER, number, plain, quantity
from finishlog.cli.typed.times import durations
from finishlog.cli.typed.times.moments import moment
from finishlog.clock import Clock
from finishlog.core.measure.units import Volume
from finishlog.core.mixing.containers import MixPart
from finishlog.core.mixing.recipes import MixAsked, of_ratio
from finishlog.errors import UsageFault

_RATIO = rf"{NUMBER}(?::{NUMBER})+"
_FORMS = "type base:500ml hardener:50ml, 10:1, varnish:2 'mineral spirits:1', or --cut 2lb"
# A cut begins with its number: `2lb`, `1 1/2 lb`, `240 g/L`; everything else names a can.
_CUT = re.compile(r"[\d./, ]+ ?(?:#|lbs?\b|pounds?\b|g ?/ ?l\b|g per l)", re.IGNORECASE)
_LONGEST_NAME = 40


def read_mix(
    words: Sequence[str],
    *,
    cut: str | None,
    jar: str | None,
    thin_from: str | None,
    thin_to: str | None,
    unit: Volume,
) -> tuple[MixAsked, str | None]:
    """Read what is asked, and the name of the can that it is drawn from, if one was named."""
    source, strong = (None, None) if thin_from is None else _from(thin_from)
    asked = MixAsked(
        parts=_parts(words, unit),
        jar_l=amounts.volume(jar, unit) if jar is not None else None,
        cut=amounts.cut(cut) if cut is not None else None,
        thin_from=strong,
        thin_to=amounts.cut(thin_to) if thin_to is not None else None,
    )
    if strong is not None and thin_to is None:
        raise UsageFault(f"{thin_from!r} is a cut: thinned to which?", "add --to 1lb")
    if asked.cut is not None and asked.thin_to is not None:
        raise UsageFault("--cut makes a cut of flakes, --to thins one", "type one of the two")
    return asked, source


def _from(typed: str) -> tuple[str | None, float | None]:
    """Read `--from`: a cut, or the name of a can or mix."""
    return (None, amounts.cut(typed)) if _CUT.match(typed.strip()) else (typed, None)


def _parts(words: Sequence[str], unit: Volume) -> tuple[MixPart, ...]:
    if len(words) == 1 and re.fullmatch(_RATIO, words[0]):
        numbers = [number(each) for each in words[0].split(":")]
        if not all(numbers):
            raise UsageFault(f"{words[0]!r} has a part of nothing", _FORMS)
        try:
            return of_ratio(numbers)
        except ValueError as fault:
            raise UsageFault(f"{words[0]!r}: {fault}", _FORMS) from None
    found = read_parts(words, unit)
    names = [part.name.casefold() for part in found]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        raise UsageFault(f"{twice!r} stands there twice", "give each part one amount")
    return found


def read_parts(words: Sequence[str], unit: Volume) -> tuple[MixPart, ...]:
    """Read parts with their amounts or shares; UsageFault for what is none.

    `unit`: what the shop measures volumes in.
    """
    return tuple(_part(word, unit) for word in words)


def _part(word: str, unit: Volume) -> MixPart:
    name, _, typed = word.rpartition(":")
    name = name.strip()
    if not name or len(name) > _LONGEST_NAME or any(sign in name for sign in ":;+"):
        raise UsageFault(f"{word!r} is no part of a mix", _FORMS)
    share = quantity(plain(typed))
    if share is not None:
        if share <= 0:
            raise UsageFault(f"{word!r} is a part of nothing", _FORMS)
        return MixPart(name, share)
    amount = amounts.amount(typed, home=unit)
    volume = 1000 * amount.volume_l if amount.volume_l is not None else None
    return MixPart(name, 1.0, volume_ml=volume, weight_g=amount.weight_g)


def read_end(typed: str, clock: Clock) -> datetime | timedelta:
    """Read until when a mix may be used: how long it lasts, `4h`, or a moment, `22:00`."""
    if re.search(r"[a-z]", plain(typed)) and durations.length(typed) is not None:
        return durations.duration(typed)
    return moment(typed, clock.now, clock.zone, future=True).earliest
