"""A film that failed a check within its time is planned on: its clock says when it passes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime

from msgspec import Struct

from finishlog.core.film.checks import last_of_each_place, standing_failures, test_that_finds
from finishlog.core.findings import Answer
from finishlog.core.log.entries import Check, Target
from finishlog.core.log.words import Found
from finishlog.core.rules.film.soft import dry_again
from finishlog.core.shop.things import Part
from finishlog.core.zone.state import ZoneState

# What the same test finds once the film is there.
_PASSES: Mapping[Found, Found] = {
    Found.TACKY: Found.DRY,
    Found.GUMS: Found.POWDER,
    Found.PRINTS: Found.NO_PRINT,
}


class Expected(Struct, frozen=True):
    """A check that is counted on: of which part, when, and what has to be found, at its places."""

    part: Part
    target: Target
    at: datetime
    found: Found
    places: tuple[str, ...]


def expected(zones: Sequence[ZoneState], now: datetime) -> Iterator[Expected]:
    """Yield the checks that films soft within their time are counted on to pass, once.

    Late, or by no clock: no date can be counted on.
    """
    for zone in zones:
        top = zone.top
        if top is None or zone.set_aside or zone.verdict.answer is not Answer.BLOCKED:
            continue
        time, failures = dry_again(top), standing_failures(top.checks)
        if time is None or time.high is None or not {f.found for f in failures} <= _PASSES.keys():
            continue
        for found in dict.fromkeys(failure.found for failure in failures):
            same = last_of_each_place([f for f in failures if f.found is found])
            places = tuple(f.place for f in same)
            yield Expected(zone.part, zone.target, max(time.high, now), _PASSES[found], places)


def entries(of: Expected, head: Mapping[str, object]) -> Iterator[Check]:
    """Yield an expected check as the log will hold it, place by place."""
    for place in of.places:
        yield Check(**head, test=test_that_finds(of.found), found=of.found, place=place)  # type: ignore[arg-type]
