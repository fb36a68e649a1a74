"""What must be done soon or is spoilt for good: surplus, a wet run, oily wood wiped with solvent.

Left on, surplus turns sticky; a run that sags can be brushed out only while it is wet.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from finishlog.core.film.checks import failed
from finishlog.core.findings import Act, Answer, Deed, Finding, Level, finding
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.rules.rule import COAT, EVERY, rule
from finishlog.core.rules.wood.bare_wood import wiped_until
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState


@rule("wipe-off", binds=EVERY, source="the class")
def wipe_off(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """The surplus of what is wiped off must be off in time."""
    top = zone.top
    by = top.wipe_off_by() if top else None
    if top is not None and by is not None and around.now < by:
        found = finding("wipe-off", answer=Answer.DEADLINE, of=top.coat.product_name)
        yield replace(found, closes=by, deed=Deed.WIPE_OFF, plain=True, acts=(top.coat.act,))


@rule("mend-by", binds=EVERY, source="facts: faults")
def mend_by(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """A remedy that works only so long is a deadline."""
    for each in zone.faults:
        if each.deadline is not None and around.now < each.deadline:
            found = finding(
                "mend-by",
                answer=Answer.DEADLINE,
                fault=each.known.name,
                place=each.fault.place,
                remedy=each.remedies(around.now)[0],
            )
            yield replace(
                found, closes=each.deadline, deed=Deed.MEND, plain=True, acts=(each.fault.act,)
            )


@rule("wiped-in-time", binds=COAT, source=COMMON_PRACTICE)
def wiped_in_time(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Where no wipe is on record it is asked whether the surplus came off in time."""
    top = zone.top
    by = top.wipe_off_by() if top else None
    if asked.over is None or top is None or by is None or around.now < by:
        return
    if not any(not failed(check.found) for check in top.checks):
        found = finding("wiped-in-time", Level.CAUTION, COMMON_PRACTICE, of=top.coat.product_name)
        yield replace(found, acts=(top.coat.act,))


@rule("coat-while-wiped", binds=COAT | {Act.REST}, source="facts: drying")
def coat_while_wiped(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Oily wood that was wiped with solvent is coated before its oil is back."""
    until = wiped_until(zone, around.facts)
    if until is not None and around.now < until:
        found = finding("coat-while-wiped", answer=Answer.DEADLINE)
        yield replace(found, closes=until, deed=Deed.COAT, plain=True)
