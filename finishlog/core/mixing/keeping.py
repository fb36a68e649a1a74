"""May it still be used? What speaks against a can, jar or mix, and the test that settles it.

No age proves a finish bad and none proves it good: past its keeping a test decides. Pot life is
different: a mix that is past it must not go on, whatever it looks like.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta

from msgspec import Struct

from finishlog.core.findings import POT_LIFE, Finding, Level, finding
from finishlog.core.finish.classes import COMMON_PRACTICE, Range
from finishlog.core.log.entries import ContainerEvent
from finishlog.core.log.words import ContainerDeed
from finishlog.core.mixing.containers import ContainerKind, ContainerState, Lid
from finishlog.core.published.keeping import KeepingFigures

# Our own rule: what passed a test is not asked for another for so long.
TEST_SPEAKS_FOR = timedelta(days=7)
# Our own rule: layers of a finish that hardens in the pot want the same age of mix; beyond this
# part of the pot life they differ, and beyond these hours where no pot life is known.
AGES_DIFFER = 0.5
AGES_DIFFER_H = 4.0

# What hardens, nobody knows how soon: it may grow hot, and look good when it is past use.
UNKNOWN_END = f"{Lid.NOT_TIGHT}, do not use it tomorrow"

_DAY = timedelta(days=1)
WATER = "water"


def keeping_findings(
    state: ContainerState, now: datetime, figures: KeepingFigures
) -> tuple[Finding, ...]:
    """Return what speaks against using it at a moment; empty: nothing does."""
    return (
        *_marked(state),
        *_frost(state, figures),
        *_pot_life(state, now),
        *_topped_up(state),
        *_mixed_otherwise(state),
        *_shelf(state, now, figures),
    )


def _marked(state: ContainerState) -> Iterator[Finding]:
    name = state.container.name
    condemned, ended = state.last(ContainerDeed.CONDEMNED), state.ended
    if condemned is not None:
        yield finding("can-condemned", Level.STOP, can=name, note=condemned.note)
    if ended is not None:
        yield finding("can-ended", Level.CAUTION, can=name, deed=ended.deed.value)


def _frost(state: ContainerState, figures: KeepingFigures) -> Iterator[Finding]:
    frozen = state.last(ContainerDeed.FROZEN)
    if frozen is None or _after(state.last(ContainerDeed.TESTED), frozen):
        return
    frost = figures.frost_on_water if holds_water(state) else figures.frost_on_others
    name = state.container.name
    yield finding(
        "can-froze",
        Level.STOP if frost.stops else Level.CAUTION,
        frost.source,
        can=name,
        reason=frost.reason,
        remedy=frost.remedy,
    )


def holds_water(state: ContainerState) -> bool:
    """Tell whether what is in it freezes like water."""
    return state.of.carrier == WATER or state.of.family == "waterborne"


def frost_ahead(state: ContainerState, coldest_c: float, figures: KeepingFigures) -> bool:
    """Tell whether what is in it is still good, and may freeze where it gets so cold (°C)."""
    gone = state.ended or state.last(ContainerDeed.CONDEMNED) or state.container.archived
    return not gone and holds_water(state) and coldest_c < figures.keep_above_c.value


def _after(event: ContainerEvent | None, other: ContainerEvent) -> bool:
    return event is not None and (event.when.order, event.id) > (other.when.order, other.id)


def _pot_life(state: ContainerState, now: datetime) -> Iterator[Finding]:
    name = state.container.name
    if state.use_by is not None and now > state.use_by:
        past = now - state.use_by
        yield finding(POT_LIFE, Level.STOP, _pot_life_source(state), can=name, past=past)
    elif state.lid is Lid.NEVER:
        yield finding("never-close", Level.CAUTION, COMMON_PRACTICE, can=name)
    elif state.reacts and state.use_by is None:
        yield finding("pot-life-unknown", Level.CAUTION, can=name)


def _pot_life_source(state: ContainerState) -> str:
    figure = state.pot_life
    return "" if state.container.use_by_at or figure is None else figure.source


def _topped_up(state: ContainerState) -> Iterator[Finding]:
    if state.reacts and state.last(ContainerDeed.TOPPED_UP) is not None:
        yield finding("topped-up", Level.CAUTION, COMMON_PRACTICE, can=state.container.name)


def _mixed_otherwise(state: ContainerState) -> Iterator[Finding]:
    """Say of a can that what is in it is not what its label says: part of it was poured off."""
    name, tested = state.container.name, state.last(ContainerDeed.TESTED)
    poured = state.last(ContainerDeed.UNSTIRRED)
    if poured is not None and not _after(tested, poured):
        yield finding("can-unstirred", Level.CAUTION, COMMON_PRACTICE, can=name)
    if state.last(ContainerDeed.TINTED) is not None:
        yield finding("can-tinted", Level.CAUTION, COMMON_PRACTICE, can=name)


def _shelf(state: ContainerState, now: datetime, figures: KeepingFigures) -> Iterator[Finding]:
    """Say when it is older than its class is known to keep, and how to test it."""
    old = too_old(state, now)
    if old is not None:
        yield finding(
            "can-old",
            Level.CAUTION,
            old.keeps.source,
            can=state.container.name,
            since=old.since,
            age=old.age,
            of=state.of.name,
            keeps=keeps_words(old.keeps),
            test=figures.test_for(state.of.family).test,
        )


class TooOld(Struct, frozen=True):
    """A finish that is too old to be trusted untested: since when it counts, and how old it is.

    `promised_d`: the end of what it keeps by which it is too old.
    """

    since: str
    age: timedelta
    keeps: Range
    promised_d: float


def too_old(state: ContainerState, now: datetime) -> TooOld | None:
    """Tell whether what is in it is too old to be trusted untested; None: it is not.

    Open, the short end of what its class keeps is the promise. Closed it keeps longer, nobody
    prints how long (common practice): past the long end it is tested all the same.
    """
    keeps, tested = state.of.shelf_opened_d, state.last(ContainerDeed.TESTED)
    if keeps is None or state.reacts or (tested and now - tested.when.latest <= TEST_SPEAKS_FOR):
        return None
    since, made = _open_since(state), state.made
    if since is not None and now - since > keeps.low * _DAY:
        word = "mixed" if state.container.kind is ContainerKind.MIX else "opened"
        return TooOld(word, now - since, keeps, keeps.low)
    if made is not None and now - made > keeps.high * _DAY:
        return TooOld("made", now - made, keeps, keeps.high)
    return None


def keeps_words(keeps: Range) -> str:
    """Say how long an opened can keeps, with the readings that differ: `91 to 365 d`."""
    said = [
        f"{r.low:g} d" if r.low == r.high else f"{r.low:g} to {r.high:g} d"
        for r in (keeps, *keeps.also)
    ]
    return ", others say ".join(dict.fromkeys(said))


def _hours_apart(state: ContainerState) -> float:
    """Return by how much the ages of two mixes may differ."""
    own, figure = state.container.own_pot_life_h, state.pot_life
    hours = own if own is not None else (figure.low_h if figure else None)
    return AGES_DIFFER_H if hours is None else AGES_DIFFER * hours


def _open_since(state: ContainerState) -> datetime | None:
    """Return since when air is at it; a mix since it was mixed, a closed can not yet."""
    return state.made if state.container.kind is ContainerKind.MIX else state.opened


def ages_differ(
    state: ContainerState, moment: datetime, under: Sequence[tuple[ContainerState, datetime]]
) -> Finding | None:
    """Say when layers that harden come from mixes of very different age as they went on.

    `under`: the containers of the layers below, with the moment at which each went on.
    """
    age = state.age_at(moment)
    if not state.reacts or age is None:
        return None
    apart = timedelta(hours=_hours_apart(state))
    for other, then in under:
        before = other.age_at(then)
        if other.container.id == state.container.id or not other.reacts or before is None:
            continue
        if abs(age - before) > apart:
            return finding(
                "mix-ages-differ", Level.CAUTION, COMMON_PRACTICE, under=before, this=age
            )
    return None
