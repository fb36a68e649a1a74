"""The layers of one zone, laid one upon another from what reached it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import datetime, timedelta
from itertools import pairwise

from msgspec.structs import replace

from finishlog.core.air.met import AirMet
from finishlog.core.air.span import Known
from finishlog.core.clock.pace import PaceKey, Paces
from finishlog.core.film.attempts import melted_in, what_stays
from finishlog.core.film.checks import passed_too_soon, tells_of
from finishlog.core.film.faults import puts_colour_back, rewetted
from finishlog.core.film.layers import SCRATCHES, SURFACE_HOLDS, WARMS_UP, WIPES, Layer, laws_of
from finishlog.core.log.entries import AnyEntry, Check, Coat, PieceReading, Stripped, Work
from finishlog.core.log.words import Operation, Test
from finishlog.core.mixing.came_from import CameFrom
from finishlog.core.published.facts import Facts
from finishlog.core.published.species import WoodKind


def build(
    entries: Sequence[AnyEntry],
    facts: Facts,
    air: Callable[[datetime], AirMet],
    paces: Paces = Paces.none,
    wood: WoodKind = WoodKind.OTHER,
    came_from: Callable[[Coat], CameFrom | None] = lambda _: None,
) -> tuple[Layer, ...]:
    """Stack the layers of one zone from what reached it, oldest first; what was taken off is not.

    `entries` in the order of the work; `air` gives the air that the piece met from a moment on;
    `wood` is what the first coat lies on; `came_from` the can or mix that a coat came from.
    """
    story = _without_washed_wax(what_stays(entries), facts)
    at = [n for n, entry in enumerate(story) if isinstance(entry, Coat)]
    return tuple(
        replace(
            _layer(
                coat,
                story[n + 1 : over],
                story[n + 1 :],
                entries,
                facts,
                air,
                paces,
                wood,
                n == at[0],
            ),
            came_from=came_from(coat),
            over_filler=any(_fills(e, facts) for e in story[:n]),
        )
        for n, over in pairwise([*at, len(story)])
        if isinstance(coat := story[n], Coat)
    )


# Wax is off after two rubs with solvent and clean cloths, not after one (common practice).
_WASHES = 2


def _without_washed_wax(story: Sequence[AnyEntry], facts: Facts) -> Sequence[AnyEntry]:
    """Leave out wax that was washed off; what was done since is done on what it lay on."""
    gone = set[int]()
    washes = 0
    for entry in reversed(story):
        if isinstance(entry, Work) and entry.operation is Operation.SOLVENT_WIPE:
            washes += 1
        elif isinstance(entry, Coat):
            is_wax = facts.finish_class(entry.figures.class_key).goes_on_last
            if is_wax and washes >= _WASHES:
                gone.add(entry.id)
            else:
                washes = 0
    return [entry for entry in story if entry.id not in gone] if gone else story


def _fills(entry: AnyEntry, facts: Facts) -> bool:
    """Tell whether it is a coat of glaze or filler: a film over it lets go of more, and slower."""
    if not isinstance(entry, Coat):
        return False
    return facts.finish_class(entry.figures.class_key).family in {"glaze", "filler"}


def _layer(
    coat: Coat,
    since: Sequence[AnyEntry],
    after: Sequence[AnyEntry],
    told: Sequence[AnyEntry],
    facts: Facts,
    air: Callable[[datetime], AirMet],
    paces: Paces,
    wood: WoodKind,
    first: bool,
) -> Layer:
    """Build one layer. `since`: until the next coat; `after`: to the end; `told`: all there was."""
    of = facts.finish_class(coat.figures.class_key)
    again = _dissolved(coat, since, told, facts)
    washed = tuple(e for e in since if isinstance(e, Work) and e.operation is Operation.RINSE)
    soonest = facts.pace.passes_share
    checks = (c for c in after if isinstance(c, Check))
    believed = [c for c in checks if not passed_too_soon(c, coat, soonest)]
    made = believed[: sum(c in since for c in believed)]
    met = air(coat.when.latest)
    unread = met.span_at(coat.when.latest).known is Known.UNKNOWN
    key = PaceKey(coat.product, first, coat.method, coat.container, wood=wood, unread=unread)
    return Layer(
        coat=coat,
        of=of,
        air=met,
        window_air=air(coat.when.earliest),
        law=laws_of(of, facts),
        abraded=tuple(w for w in since if isinstance(w, Work) and w.operation in SCRATCHES),
        wipes=tuple(w for w in since if isinstance(w, Work) and w.operation in WIPES),
        washed=washed,
        checks=tuple(c for c in made if tells_of(c.test, of)),
        samples=tuple(c for c in made if c.test is Test.SAMPLE),
        scratches=tuple(c for c in believed if c.test is Test.SCRATCH),
        laid_bare=next((e for e in reversed(since) if isinstance(e, Stripped)), None),
        air_again=air(again) if again else None,
        air_rinsed=air(washed[-1].when.latest) if washed and of.after_rinse else None,
        felt=tuple(e for e in (*_felt_before(coat, told), *since) if isinstance(e, PieceReading)),
        before=air(coat.when.earliest - WARMS_UP),
        pace=paces.factor(key),
        wood=wood,
        on_a_spot=puts_colour_back(coat, told, facts),
    )


def _felt_before(coat: Coat, told: Sequence[AnyEntry]) -> tuple[PieceReading, ...]:
    """Return what was felt last of a surface, so shortly before a coat that it tells of it."""
    felt = [
        e
        for e in told
        if isinstance(e, PieceReading) and e.temperature_c is not None
        if timedelta(0) <= coat.when.earliest - e.when.latest <= SURFACE_HOLDS
    ]
    return tuple(felt[-1:])


def _dissolved(
    coat: Coat, since: Sequence[AnyEntry], told: Sequence[AnyEntry], facts: Facts
) -> datetime | None:
    """Return when a coat was last made wet again: by a mending mist, by a coat that melted in."""
    moments = [work.when.latest for work in rewetted(since, coat, facts)]
    above = melted_in(told, coat)
    if above is not None:
        moments.append(above.when.latest)
    return max(moments, default=None)
