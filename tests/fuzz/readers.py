"""Random words against every reader of words: a value, or one line of refusal."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from functools import partial
from random import Random
from zoneinfo import ZoneInfo

from finishlog.acts.things.faces import read_faces
from finishlog.cli.typed.figures.amounts import amount, cut, film, volume, weight
from finishlog.cli.typed.figures.measures import (
    air,
    humidity,
    moisture,
    moisture_or_air,
    temperature,
)
from finishlog.cli.typed.figures.numbers import number, quantity
from finishlog.cli.typed.times.durations import duration, hours, minutes
from finishlog.cli.typed.times.moments import due_moment, moment
from finishlog.cli.typed.times.time_heated import away_span, heated_span
from finishlog.cli.typed.times.usual_words import read_heating, read_hours, read_season
from finishlog.cli.typed.times.week import read_week
from finishlog.core.measure.units import Temperature
from finishlog.core.shop.selectors import parse
from finishlog.errors import FinishlogError
from tests.fuzz.lines import ZONES, Find
from tests.fuzz.words import (
    AIRS,
    AMOUNTS,
    DUES,
    FACES,
    HOSTILE,
    HOURS,
    LENGTHS,
    MOMENTS,
    SELECTORS,
    USUAL,
    spoilt,
)

Reader = Callable[[str, datetime, ZoneInfo], object]
UNIT = Temperature.CELSIUS

# What reads, and what it is meant to read.
READERS: dict[str, tuple[Reader, tuple[str, ...]]] = {
    "moment": (moment, MOMENTS),
    "moment to come": (lambda text, now, zone: moment(text, now, zone, future=True), MOMENTS),
    "due_moment": (due_moment, DUES),
    "away_span": (lambda text, now, zone: away_span(text, None, now, zone), DUES),
    "heated_span": (heated_span, MOMENTS),
    **{
        read.__name__: (lambda text, _now, _zone, read=read: read(text), pool)
        for pool, reads in (
            (AMOUNTS, (amount, cut, film, volume, weight, quantity)),
            (LENGTHS, (duration, hours, minutes)),
            (AIRS, (humidity, moisture)),
            (SELECTORS, (parse,)),
            (("nov-mar", "all"), (read_season,)),
        )
        for read in reads
    },
    **{
        read.__name__: (lambda text, _now, _zone, read=read: read(text, UNIT), AIRS)
        for read in (air, moisture_or_air, temperature)
    },
    "read_hours": (lambda text, _now, _zone: read_hours((text.split() or [text]), UNIT), USUAL),
    "read_heating": (lambda text, _now, _zone: read_heating((text.split() or [text]), UNIT), HOURS),
    "read_week": (lambda text, _now, _zone: read_week(text.split() or [text]), HOURS),
    "read_faces": (lambda text, _now, _zone: read_faces([text]), FACES),
    "number": (lambda text, _now, _zone: quantity(text) is None or number(text), AMOUNTS),
}
REFUSES = {"parse": ValueError}


def read(seed: int, first: int, last: int) -> Iterator[Find]:
    """Read the words from `first` up to `last` of a seed; yield what no reader may do."""
    for at in range(first, last):
        draw = Random(f"{seed}:{at}")
        name, (reader, pool) = draw.choice(list(READERS.items()))
        word = draw.choice((draw.choice(pool), draw.choice(HOSTILE)))
        for _ in range(draw.choice((0, 1, 1, 2, 4))):
            word = spoilt(draw, word)
        zone = ZoneInfo(draw.choice(ZONES))
        now = datetime.fromtimestamp(draw.randrange(1_200_000_000, 1_900_000_000), UTC)
        wrong = _wrong_with(partial(reader, word, now, zone), REFUSES.get(name))
        if wrong:
            yield Find(f"{name}: {wrong}", f"seed {seed}, word {at}, at {now} in {zone}", (word,))


def _wrong_with(read: Callable[[], object], refuses: type[Exception] | None) -> str:
    try:
        read()
    except FinishlogError as fault:
        one_line = "\n" not in fault.message + fault.hint
        return "" if one_line else f"a refusal of several lines: {fault.message!r}, {fault.hint!r}"
    except Exception as fault:
        refused = refuses is not None and isinstance(fault, refuses)
        return "" if refused else f"{type(fault).__name__}: {fault}"
    return ""
