"""What must be done soon or is spoilt for good: surplus, a wet run, oily wood wiped with solvent.

Left on, surplus turns sticky; a run that sags can be brushed out only while it is wet.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from msgspec.structs import replace

from finishlog.core.film import surplus
from finishlog.core.film.layers import Layer
from finishlog.core.film.surplus import is_settled
from finishlog.core.findings import LEFT_IN_PART, Act, Answer, Deed, Finding, Level, finding, hours
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.log.words import Operation
from finishlog.core.published.removal import removal_of
from finishlog.core.rules.film.observed import dry_to
from finishlog.core.rules.reads import AIR, BARE, BROKEN_OFF, FAULTS, LAYERS, WOOD
from finishlog.core.rules.rule import COAT, EVERY, LOADED, rule
from finishlog.core.rules.wood.bare_wood import wiped_until
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

# What seals a surplus in, sticks to it, or clogs on it. Sanding may be what takes it off.
ON_SURPLUS = COAT | LOADED | {Act.SCUFF, Act.RUB}
_SETTLED = "work.operation check.found check.test"


@rule(
    "wipe-off",
    binds=EVERY,
    source="the class",
    reads=f"{LAYERS} work.operation product.name product.class_key",
    mended_by="wipe solvent-wipe",
)
def wipe_off(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """The surplus of what is wiped off must be off in time."""
    top = zone.top
    by = top.wipe_off_by() if top else None
    if top is not None and by is not None and around.now < by:
        found = finding("wipe-off", answer=Answer.DEADLINE, of=top.coat.product_name)
        yield replace(found, closes=by, deed=Deed.WIPE_OFF, plain=True, acts=(top.coat.act,))


@rule(
    "mend-by",
    binds=EVERY,
    source="facts: faults",
    reads=f"{LAYERS} {FAULTS} {AIR}",
)
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
                dry_to=dry_to(each, zone, around.now, around.facts),
            )
            by = frozenset({Operation.MEND, *each.known.answered_by})
            found = replace(found, closes=each.deadline, deed=Deed.MEND, mended_by=by)
            yield replace(found, plain=True, acts=(each.fault.act,))


@rule(
    "wiped-in-time",
    binds=ON_SURPLUS,
    source=COMMON_PRACTICE,
    reads=f"{LAYERS} {BROKEN_OFF} {_SETTLED} coat.flooded product.name product.class_key",
    mended_by="solvent-wipe off",
)
def wiped_in_time(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Where no wipe is on record it is asked whether the surplus came off in time.

    What was flooded on surely had one, and is tested first; what went on thin hardly had any. Of
    what was broken off nobody takes it as done: all of it stands there.
    """
    top = zone.top
    by = top.wipe_off_by() if top else None
    if top is None or by is None or around.now < by or is_settled(top):
        return
    of, thin = top.coat.product_name, top.coat.flooded is False
    level = Level.NOTE if thin else Level.CAUTION
    found = finding("wiped-in-time", level, COMMON_PRACTICE, of=of)
    if not top.coat.is_whole:
        again = asked.over is not None and asked.over.key == top.of.key
        found = finding(
            LEFT_IN_PART,
            Level.CAUTION if again else Level.STOP,
            COMMON_PRACTICE,
            answer=Answer.BLOCKED,
            of=of,
            covered=top.coat.stopped,
            solvent=_solvent_of(top, around),
        )
        found = replace(found, deed=Deed.MEND)
    elif top.stands_flooded:
        found = finding("flooded-left", level, COMMON_PRACTICE, answer=Answer.TEST, of=of)
    yield replace(found, acts=(top.coat.act,))


def _solvent_of(layer: Layer, around: Around) -> str:
    """Name the mildest of what takes a film of this family up."""
    return removal_of(layer.of.family, around.facts.removals).ladder[0]


@rule(
    "bleeds-back",
    binds=EVERY,
    source="facts: drying",
    reads=f"{LAYERS} {WOOD} {_SETTLED} coat.flooded work.when product.name product.class_key",
    mended_by="wipe solvent-wipe",
)
def bleeds_back(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Oil that was flooded into open pores comes back out, and sets in shining spots."""
    top, facts = zone.top, around.facts
    wood = facts.species_named(zone.species) if zone.species else None
    if top is None or wood is None or not wood.has_coarse_pores or is_settled(top):
        return
    looks = surplus.looks_again(top, facts.drying.bleeds_back_h)
    due = next((look for look in looks if not look.wiped and around.now < look.sets), None)
    source, acts = facts.drying.bleeds_back_h[0].source, (top.coat.act,)
    of, where = top.coat.product_name, zone.species
    if due is not None:
        after = hours(due.after_h)
        found = finding(
            "bleeds-back", source=source, wanted=after, answer=Answer.DEADLINE, of=of, wood=where
        )
        yield replace(found, closes=due.sets, deed=Deed.WIPE_OFF, plain=True, acts=acts)
    elif looks and asked.act in ON_SURPLUS and not any(look.wiped for look in looks):
        yield replace(finding("bled-back", Level.CAUTION, source, of=of, wood=where), acts=acts)


@rule(
    "wiped-late",
    binds=ON_SURPLUS,
    source=COMMON_PRACTICE,
    reads=f"{LAYERS} {BROKEN_OFF} {_SETTLED} work.when check.when product.name product.class_key",
    mended_by="solvent-wipe off",
)
def wiped_late(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Surplus that set before it was wiped never hardens by waiting, whatever lies over it.

    Where the two times are only roughly known it may have been in time, and is asked.
    """
    for late in surplus.wiped_late(zone.layers):
        figure = late.layer.of.wipe_off_h
        assert figure is not None
        found = finding(
            "wiped-late" if late.surely else "wiped-late-perhaps",
            Level.STOP if late.surely else Level.CAUTION,
            figure.source,
            measured=hours(late.after / timedelta(hours=1)) if late.surely else None,
            wanted=hours(figure.high_h),
            answer=Answer.BLOCKED if late.surely else None,
            of=late.layer.coat.product_name,
            wipe=late.wipe.act,
            solvent=_solvent_of(late.layer, around),
            glaze="glaze" if late.layer.of.family == "glaze" else "",
            buried="" if late.layer is zone.top else "buried",
        )
        deed = Deed.MEND if late.surely else Deed.NEXT_STEP
        yield replace(found, deed=deed, acts=(late.layer.coat.act, late.wipe.act))


@rule(
    "coat-while-wiped",
    binds=COAT | {Act.REST},
    source="facts: drying",
    reads=f"{BARE} {WOOD} work.when work.operation",
)
def coat_while_wiped(zone: ZoneState, asked: Asked, around: Around) -> Iterator[Finding]:
    """Oily wood that was wiped with solvent is coated before its oil is back."""
    until = wiped_until(zone, around.facts)
    if until is not None and around.now < until:
        found = finding("coat-while-wiped", answer=Answer.DEADLINE)
        yield replace(found, closes=until, deed=Deed.COAT, plain=True)
