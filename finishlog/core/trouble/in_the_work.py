"""What was done with a film, and when, says of its trouble: wiped, handled, sanded, buffed."""

from __future__ import annotations

from datetime import timedelta

from msgspec.structs import replace

from finishlog.core.film.layers import ABRADES, SCRATCHES
from finishlog.core.film.surplus import wiped_late
from finishlog.core.findings import Finding, also, finding, hours
from finishlog.core.finish.classes import Figure
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Work
from finishlog.core.log.words import FaultKind, Operation
from finishlog.core.published.fault_kinds import Evidence
from finishlog.core.trouble.controls import name_of
from finishlog.core.trouble.in_the_film import is_asked, wiped_there
from finishlog.core.trouble.scene import Look, Missing, Scene
from finishlog.core.zone.asked import NEEDS

_HOUR = timedelta(hours=1)
# Our own rule: wax that stood twice its longest minutes has set, and smears under the cloth.
_SET = 2.0


def not_wiped(of: Scene) -> Look:
    """Surplus that was wiped off late, or of which nobody said that it was."""
    late = wiped_late((of.layer,), by_tests=not of.compared)
    most = of.layer.of.wipe_off_h
    if late and late[0].surely and most is not None:
        return finding(
            "was-wiped-late", measured=hours(late[0].after / _HOUR), wanted=hours(most.high_h)
        )
    if of.layer.stands_flooded:
        return finding("flooded-unwiped", never="yes")
    if sound := wiped_there(of.layer, of):
        return finding("never-wiped", sound=sound)
    return None if of.layer.wipe_off_by() is None and not late else Missing.WIPING


def stood_longer(of: Scene) -> Look:
    """It was wiped later than where it came out right.

    Over its minutes it is surplus that was not wiped in time, where that is a cause of its own.
    """
    if is_asked(Evidence.NOT_WIPED, of) and isinstance(not_wiped(of), Finding):
        return None
    mine, theirs = _minutes_until_wiped(of), [_minutes_until_wiped(each) for each in of.sound]
    known = [minutes for minutes in theirs if minutes is not None]
    if mine is None or not known:
        return not_wiped(of)
    if mine <= 1.5 * max(known):
        return None
    found = finding("stood-longer", measured=hours(mine / 60), wanted=hours(max(known) / 60))
    return also(found, sound=name_of(of.sound[0]))


def _minutes_until_wiped(of: Scene) -> float | None:
    wiped = of.layer.wipes[0].when.latest if of.layer.wipes else None
    return (wiped - of.layer.put_on) / timedelta(minutes=1) if wiped else None


def handled(of: Scene) -> Look:
    """It was laid on, pressed or used before it bore that."""
    for entry in of.state.entries:
        if not isinstance(entry, Work) or entry.when.earliest < of.layer.put_on:
            continue
        stage = NEEDS.get(entry.operation)
        time = of.layer.stage(stage) if stage and entry.operation not in ABRADES else None
        if stage and time and (time.high is None or entry.when.earliest < time.high):
            age_h = (entry.when.earliest - of.layer.put_on) / _HOUR
            done, figure = entry.operation.value, time.figure
            return finding(
                "handled-early",
                measured=hours(age_h),
                wanted=hours(figure.high_h) if figure else None,
                deed=done,
                stage=stage.value,
            )
    return Missing.HANDLING


def sanded(of: Scene) -> Look:
    """It was sanded or rubbed before it could be."""
    done = [
        e
        for e in of.state.entries
        if isinstance(e, Work)
        and e.operation in {*SCRATCHES, Operation.RUB}
        and of.layer.put_on <= e.when.latest <= of.until
    ]
    if not done:
        return Missing.SANDING
    sand, last = of.layer.stage(Stage.SAND), done[-1]
    if sand and sand.high and last.when.earliest >= sand.high:
        return None
    age_h = (last.when.latest - of.layer.put_on) / _HOUR
    figure = sand.figure if sand else None
    found = finding("sanded-early", measured=hours(age_h), deed=last.operation.value)
    return replace(found, wanted=hours(figure.high_h)) if figure else found


def other_scuff(of: Scene) -> Look:
    """The film of what is sound was sanded with another paper; of what peels: the film below."""
    mine, theirs = _scuffed_with(of), [(_scuffed_with(each), each) for each in of.sound]
    known = [(grit, name_of(each)) for grit, each in theirs if grit]
    if not mine or not known:
        return Missing.GRIT
    if any(mine == grit for grit, _ in known):
        return None
    there, sound = known[0]
    return finding("another-grit", here=mine, there=there, sound=sound)


def _scuffed_with(of: Scene) -> str:
    since, until = of.layer.put_on, of.until
    if of.kind is FaultKind.PEEL:
        if of.under is None:
            return ""
        since, until = of.under.put_on, of.layer.put_on
    grits = [
        entry.grit
        for entry in of.state.entries
        if isinstance(entry, Work)
        and entry.operation in {*ABRADES, Operation.RUB}
        and entry.grit
        and since <= entry.when.latest <= until
    ]
    return str(grits[-1]) if grits else ""


def buffed_late(of: Scene) -> Look:
    """Wax was buffed when it had set, or no buffing is on record."""
    buffed, figure = _buffed(of), of.layer.coat.figures.stages.get(Stage.TOUCH)
    if figure is None:
        return None
    if buffed is None:
        return Missing.BUFFED
    return _at_the_wrong_time(buffed, figure, late=True)


def buffed_early(of: Scene) -> Look:
    """Wax was buffed while its solvent was still in it."""
    buffed, figure = _buffed(of), of.layer.coat.figures.stages.get(Stage.TOUCH)
    if buffed is None or figure is None:
        return None
    return _at_the_wrong_time(buffed, figure, late=False)


def _at_the_wrong_time(after_h: float, figure: Figure, *, late: bool) -> Look:
    # Printed minutes differ widely (also: 5 to 10): the earliest and the latest of them count.
    low = min(each.low_h for each in (figure, *figure.also))
    if (after_h <= _SET * figure.high_h) if late else (after_h >= low):
        return None
    most = figure.high_h if late else low
    return finding("buffed-when", measured=hours(after_h), wanted=hours(most))


def _buffed(of: Scene) -> float | None:
    """Return after how many hours a coat was buffed first."""
    done = (
        (e.when.latest - of.layer.put_on) / _HOUR
        for e in of.state.entries
        if isinstance(e, Work)
        and e.operation is Operation.BUFF
        and of.layer.put_on <= e.when.latest <= of.until
    )
    return next(done, None)
