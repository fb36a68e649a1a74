"""What was observed holds the next act: a failed check, a fault, until what answers it."""

from __future__ import annotations

from collections.abc import Hashable, Iterator
from datetime import datetime

from msgspec.structs import replace

from finishlog.core.film import checks as film_checks
from finishlog.core.film.faults import StandingFault, patch_due
from finishlog.core.findings import Act, Answer, Deed, Finding, Level, also, finding, plainly
from finishlog.core.finish.classes import COMMON_PRACTICE, WindowKind
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Check
from finishlog.core.log.where import same_words
from finishlog.core.log.words import Found, Operation
from finishlog.core.published.facts import Facts
from finishlog.core.rules.air.coating_air import driest_asked
from finishlog.core.rules.film.soft import soft_until
from finishlog.core.rules.film.underneath import asks_h, rows
from finishlog.core.rules.reads import AIR, BROKEN_OFF, FAULTS, LAYERS, SAYS, STAGE
from finishlog.core.rules.rule import COAT, EVERY, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import OFF, Asked
from finishlog.core.zone.state import ZoneState

_MENDS = frozenset({Operation.MEND})


@rule(
    "check-failed",
    binds=EVERY,
    source=COMMON_PRACTICE,
    reads=f"{LAYERS} {BROKEN_OFF} {SAYS} {STAGE} check.test check.found check.place coat.method"
    " product.class_key product.label",
    mended_by="off",
)
def check_failed(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A failed check beats the clock, for all that needs what the film lacks, on all of its zone.

    A pass answers it at its own place alone; of several places each is told, the newest binds.
    What is as soft as it may still be is left alone until its time is over, and checked then.
    """
    held = [check for check, stages in zone.held if asked.stage in stages]
    if not held and asked.over is not None:
        held = [*_under_the_pair(zone, asked, around)]
    failures = film_checks.last_of_each_place(held)
    due = soft_until(zone.top, around.now)
    for failure in reversed(failures):
        found = finding(
            "check-failed",
            Level.STOP,
            answer=Answer.BLOCKED if failure is failures[-1] else None,
            test=failure.test.value,
            found=failure.found.value,
            place=failure.place,
        )
        found = replace(found, acts=(failure.act,))
        yield found if due is None else replace(found, deed=Deed.LEAVE, high=due)


def _under_the_pair(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Check]:
    """Yield the failures that a coat minds which asks more of a film than a coat of its own.

    It waits so many hours for that film; what the film's figures promised by then, it lacks.
    """
    for each in rows(zone, asked, around) if zone.held else ():
        figures, asks = each.layer.coat.figures.stages, asks_h(each)
        own = figures.get(Stage.RECOAT)
        if own is not None and asks > own.high_h:
            due = {stage for stage, figure in figures.items() if figure.high_h <= asks}
            mine = [(c, stages) for c, stages in zone.held if c in each.layer.checks]
            yield from (check for check, stages in mine if stages & due)


@rule(
    "still-prints",
    binds=COAT,
    source=COMMON_PRACTICE,
    reads=f"{LAYERS} check.found product.class_key product.label_window",
)
def still_prints(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A film that prints asks for a test before the next coat, unless that melts into it."""
    top = zone.top
    if top is None or top.coat.figures.window.kind is WindowKind.MELTS_IN:
        return
    if any(c.found is Found.PRINTS for c in film_checks.standing_failures(top.checks)):
        yield replace(finding("still-prints", answer=Answer.TEST), plain=True)


@rule("repair-first", binds=EVERY, source="facts: faults", reads=FAULTS, mended_by="glue-up")
def repair_first(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """What has to be done again before any other step: an open joint."""
    for fault in zone.faults:
        if fault.known.waits_for:
            found = plainly("repair-first", Answer.WAITS, **_named(fault))
            yield replace(found, acts=(fault.fault.act,))
            return


@rule(
    "fault",
    binds=EVERY,
    source="facts: faults",
    reads=f"{FAULTS} {LAYERS} {BROKEN_OFF} {AIR} fault.when product.name product.label",
)
def fault(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A fault stands in sight; it keeps a zone from the stages that it bars, until it is mended.

    What is done about it is never barred, and makes it a note. One found twice is one.
    """
    there = {_found_twice(each): each for each in zone.faults}.values()
    barring = [each for each in there if _bars(each, zone, asked, around)][-1:]
    for each in there:
        remedies = tuple(r.rstrip(".") for r in each.remedies(around.now))
        stands = each.left_to_stand(around.now)
        found = finding(
            "fault",
            each.known.level,
            each.known.source,
            answer=Answer.BLOCKED if each in barring else None,
            of=each.coat.product_name if each.coat else None,
            means=each.known.means,
            remedies=remedies,
            ends=_ends(each),
            dry_to=dry_to(each, zone, around.now, around.facts),
            least=stands[0] if stands else None,
            most=stands[1] if stands else None,
        )
        deed = Deed.CHECK_AGAIN if _by_check_alone(each) else Deed.MEND
        deed = Deed.LEAVE if stands else deed
        early = bool(stands and stands[0])
        mended_by = _mended_by(each, zone, asked, around) if not early else frozenset({OFF})
        found = replace(also(found, **_named(each)), deed=deed, mended_by=mended_by)
        yield replace(found, acts=(each.fault.act,))


def dry_to(of: StandingFault, zone: ZoneState, now: datetime, facts: Facts) -> float | None:
    """Return to what (% RH) the air is dried before a remedy that wets the film; None: it may be.

    What blushed in damp air blushes again under a mist.
    """
    coat = of.puts_on(now)
    if coat is None:
        return None
    most = driest_asked(facts.finish_class(coat.figures.class_key), zone.room, now)
    return most.value if most else None


def _found_twice(of: StandingFault) -> Hashable:
    """Return what a fault that was logged again shares with itself: another place tells apart."""
    return of.known.kind, same_words(of.fault.place), of.coat and of.coat.id


def _named(of: StandingFault) -> dict[str, str]:
    return {
        "fault": of.known.name,
        "place": of.fault.place,
        "waits": of.known.waits_for,
    }


def _mended_by(of: StandingFault, zone: ZoneState, asked: Asked, around: Around) -> frozenset[str]:
    """Name what mends it, or is on the way there: a coat only where it is this one."""
    known = of.known
    by = {*known.answered_by, *known.on_the_way, *(() if known.not_by_mending else _MENDS)}
    balances = known.balanced_by_coats and _is_barer(zone, around)
    if asked.over is not None and (of.ends_with(asked.over) or balances):
        by.add(Operation.COAT)
    return frozenset({OFF, *(each.value for each in by)})


def _bars(of: StandingFault, zone: ZoneState, asked: Asked, around: Around) -> bool:
    # What has to be done again says so itself.
    if of.known.waits_for:
        return False
    if asked.act is Act.REST:
        return of.known.level is Level.STOP
    # By hand nothing is asked of a film that is not there.
    if asked.over is None and zone.top is None:
        return False
    if asked.does in _mended_by(of, zone, asked, around) or asked.stage is None:
        return False
    return of.keeps_from(asked.stage)


def _is_barer(zone: ZoneState, around: Around) -> bool:
    """Tell whether a face carries fewer coats than another one of its piece."""
    faces = around.by_piece.get(zone.member_piece.id, ())
    return any(len(each.coats) > len(zone.coats) for each in faces)


def _by_check_alone(of: StandingFault) -> bool:
    return bool(of.known.answered_by_checks) and of.known.not_by_mending


def _ends(of: StandingFault) -> tuple[str, ...]:
    """Name the checks that end a fault which nothing else ends."""
    found = sorted(f.value for f in of.known.answered_by_checks)
    return tuple(found) if _by_check_alone(of) else ()


@rule(
    "patch-first",
    binds=COAT,
    source="facts: faults",
    reads=f"{BROKEN_OFF} check.found fault.what stripped.survives",
)
def patch_first(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """After some faults a small patch is coated and scratched before the rest."""
    due = patch_due(zone.entries, around.facts)
    if due is not None:
        found = finding("patch-first", answer=Answer.TEST, fault=due.what.value)
        yield replace(found, plain=True, acts=(due.act,))
