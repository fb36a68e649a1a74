"""What a check found on another face of the same film: evidence here, until this one is tested."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from msgspec.structs import replace

from finishlog.core.film import checks as film_checks
from finishlog.core.film.layers import Layer
from finishlog.core.findings import Answer, Finding, Level, finding
from finishlog.core.finish.classes import COMMON_PRACTICE, WindowKind
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Check
from finishlog.core.log.where import reaches
from finishlog.core.log.words import Found
from finishlog.core.rules.film.again import shared
from finishlog.core.rules.reads import LAYERS, MEASURED, STOOD, WOOD
from finishlog.core.rules.rule import COAT, rule
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

# Faces that were coated no further apart, the piece turned between, carry one film. Our own rule.
_ONE_FILM = timedelta(hours=8)


@rule(
    "failed-beside",
    binds=COAT,
    source=COMMON_PRACTICE,
    reads=(
        f"{LAYERS} {MEASURED} {STOOD} {WOOD} check.test check.found check.place"
        " coat.product coat.method coat.container product.class_key product.label_window face.name"
    ),
)
def failed_beside(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Another face of the same film failed a check that this one has not passed."""
    if zone.top is None or film_checks.standing_failures(zone.top.checks):
        return
    for other in around.by_piece.get(zone.member_piece.id, ()):
        failure = _holds_a_coat(other.top) if other.target != zone.target else None
        if failure is None or _passed(zone.top, failure) or not _is_one_film(zone, other):
            continue
        found = finding(
            "failed-beside",
            Level.CAUTION,
            COMMON_PRACTICE,
            answer=Answer.TEST,
            face=other.face.name,
            test=failure.test.value,
            found=failure.found.value,
            passes=film_checks.pass_of(failure.test).value,
        )
        yield replace(found, acts=(failure.act,))
        return


def _holds_a_coat(top: Layer | None) -> Check | None:
    """Return the newest failure of a film that stands against the next coat."""
    standing = film_checks.standing_failures(top.checks) if top else ()
    melts = top is not None and top.coat.figures.window.kind is WindowKind.MELTS_IN
    held = [
        check
        for check in standing
        if Stage.RECOAT in film_checks.DENIES[check.found]
        or (check.found is Found.PRINTS and not melts)
    ]
    return held[-1] if held else None


def _passed(top: Layer, failure: Check) -> bool:
    answers = film_checks.LIFTED_BY[failure.found]
    passed = (c for c in top.checks if c.found in answers and not film_checks.failed(c.found))
    return any(reaches(check.place, "") for check in passed)


def _is_one_film(zone: ZoneState, other: ZoneState) -> bool:
    """Tell whether two faces carry one film: put on by one method, in one air, on what is alike."""
    assert zone.top is not None
    assert other.top is not None
    here, there = zone.top.coat, other.top.coat
    apart = abs(here.when.latest - there.when.latest)
    alike = apart <= _ONE_FILM and _lies_on(zone) == _lies_on(other)
    return alike and shared(there, here, zone) is not None


def _lies_on(zone: ZoneState) -> str | None:
    """Return the class that the newest coat went over; of the first coat, the wood."""
    return zone.layers[-2].of.key if zone.layers[1:] else zone.species
