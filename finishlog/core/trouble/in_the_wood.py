"""What the wood, and the can or mix, say of a film's trouble; and an attempt before it."""

from __future__ import annotations

from datetime import timedelta

from msgspec.structs import replace

from finishlog.core.film.from_can import Why, doubts, sample_dried
from finishlog.core.film.grip import is_steel_wool
from finishlog.core.film.layers import ABRADES
from finishlog.core.findings import Figured, In, finding, pct
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Check, ContainerEvent, Work
from finishlog.core.log.words import SOFT, ContainerDeed
from finishlog.core.published.species import Species, Tannin
from finishlog.core.rules.wood.too_wet import measured_moisture
from finishlog.core.trouble.controls import last_grit, name_of
from finishlog.core.trouble.scene import Look, Missing, Scene

_DUST_BEFORE = timedelta(hours=1)


def _wood(of: Scene) -> Species | None:
    return of.facts.species_named(of.state.species) if of.state.species else None


def _untold(of: Scene) -> Missing:
    """Tell a wood that nobody named from one of which nothing is published."""
    return Missing.OF_THE_WOOD if of.state.species else Missing.WOOD


def oily_wood(of: Scene) -> Look:
    """The wood is oily of itself."""
    wood = _wood(of)
    if wood is None:
        return _untold(of)
    if sample_dried(of.layer):
        return None
    return finding("wood-is-oily", source=wood.oily_source, wood=wood.name) if wood.oily else None


def resinous_wood(of: Scene) -> Look:
    """The wood bleeds pitch."""
    wood = _wood(of)
    if wood is None:
        return _untold(of)
    if not wood.pitchy:
        return None
    return finding("wood-has-pitch", source=wood.pitchy_source, wood=wood.name)


def blotchy_wood(of: Scene) -> Look:
    """The wood takes colour unevenly, and it was bare."""
    wood = _wood(of)
    if wood is None:
        return _untold(of)
    if not wood.blotches or of.below:
        return None
    return finding("wood-blotches", source=wood.blotches_source, wood=wood.name)


def open_pores(of: Scene) -> Look:
    """The pores of the wood stand open."""
    wood = _wood(of)
    if wood is None:
        return _untold(of)
    if not wood.has_open_pores:
        return None
    source = wood.wants_filler_source if wood.has_coarse_pores else wood.pores_source
    return finding("wood-has-open-pores", source=source, wood=wood.name)


def iron(of: Scene) -> Look:
    """Steel wool touched a wood that holds tannin; other iron is on no record."""
    wood = _wood(of)
    if wood is None:
        return _untold(of)
    if wood.tannin is Tannin.NO:
        return None
    rubbed = [
        e
        for e in of.state.entries
        if isinstance(e, Work) and is_steel_wool(e.operation, e.grit) and e.when.latest <= of.until
    ]
    if not rubbed:
        return Missing.IRON
    found = finding("steel-wool-on-tannin", source=wood.tannin_source, wood=wood.name)
    return replace(found, acts=tuple(e.act for e in rubbed))


def wet_wood(of: Scene) -> Look:
    """The wood was measured too wet for a finish before the coat."""
    before = [e for e in of.state.entries if e.when.latest <= of.layer.coat.when.latest]
    read = measured_moisture(before)
    if read is None or read.moisture_pct is None:
        return Missing.MOISTURE
    most = of.facts.moisture.at_most_pct
    if read.moisture_pct <= most.value:
        return None
    return finding(
        "wood-was-wet", source=most.source, measured=pct(read.moisture_pct), wanted=pct(most.value)
    )


def old_can(of: Scene) -> Look:
    """The can had been open for longer than what is in it keeps."""
    if sample_dried(of.layer):
        return None
    keeps, can = of.layer.of.shelf_opened_d, of.layer.coat.container
    opened = [
        e.when.earliest
        for e in of.log.entries
        if isinstance(e, ContainerEvent) and e.container == can and e.deed is ContainerDeed.OPENED
    ]
    if can is None or not opened:
        return Missing.CAN
    days = (of.began - opened[0]).days
    if keeps is None or days <= keeps.low:
        return None
    kept = Figured(keeps.low, In.DAYS)
    return finding("can-was-open", measured=Figured(days, In.DAYS), wanted=kept)


def came_from(of: Scene) -> Look:
    """What the can or mix was makes the film doubtful: hardener, ratio, frost; not its age."""
    doubt = next(doubts((of.layer,), *(why for why in Why if why is not Why.TOO_OLD)), None)
    if doubt is None:
        return None if of.layer.came_from and of.layer.came_from.state else Missing.CAN
    found = finding("doubtful-can", why=doubt.cause.value, can=doubt.can)
    return replace(found, acts=doubt.acts)


def other_can(of: Scene) -> Look:
    """What is sound came from another can."""
    mine = of.layer.coat.container
    theirs = {each.layer.coat.container for each in of.sound}
    if not theirs:
        return None
    if mine is None or None in theirs:
        return Missing.CAN if mine is None else Missing.THEIR_CAN
    if mine in theirs:
        return None
    return finding("another-can", sound=name_of(of.sound[0]))


def other_grit(of: Scene) -> Look:
    """What is sound was sanded with another paper."""
    mine, theirs = last_grit(of), [last_grit(each) for each in of.sound]
    if not mine or not theirs or not all(theirs):
        return Missing.GRIT
    if mine in theirs:
        return None
    return finding("another-grit", here=mine, there=theirs[0], sound=name_of(of.sound[0]))


def dusty(of: Scene) -> Look:
    """Somebody sanded in the room right before it, or while it was wet."""
    dry = of.layer.stage(Stage.DUST_FREE)
    until = dry.high if dry and dry.high else of.until
    raised = [
        e
        for e in of.log.entries
        if isinstance(e, Work)
        and e.operation in ABRADES
        and of.began - _DUST_BEFORE <= e.when.latest <= until
    ]
    if not raised:
        return Missing.SANDING
    found = finding("sanded-near", deed=raised[-1].operation.value)
    return replace(found, acts=(raised[-1].act,))


def earlier_too(of: Scene) -> Look:
    """A film of another can stayed soft there before."""
    for attempt in reversed(of.state.attempts):
        found = [f for f in attempt.found if isinstance(f, Check) and f.found in SOFT]
        cans = {attempt.coats[-1].container, of.layer.coat.container}
        if found and len(cans) > 1:
            return finding("soft-there-before", of=attempt.coats[-1].product_name)
        if found and cans == {None}:
            return Missing.SAME_CAN
    return None
