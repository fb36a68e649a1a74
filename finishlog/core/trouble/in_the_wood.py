"""What the wood and its preparation say of a film's trouble; and an attempt before it."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime, timedelta

from msgspec.structs import replace

from finishlog.core.film.from_can import sample_dried
from finishlog.core.film.grip import is_steel_wool
from finishlog.core.film.layers import ABRADES
from finishlog.core.film.old_finish import name_of as name_of_old
from finishlog.core.findings import Finding, celsius, finding, hours, pct
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import AnyEntry, Check, Coat, Work
from finishlog.core.log.words import SOFT, FaultKind, Operation
from finishlog.core.published.facts import Facts
from finishlog.core.published.find import plain
from finishlog.core.published.moisture import settles_pct
from finishlog.core.published.species import Species, Tannin, face_wood
from finishlog.core.rules.wood.too_wet import measured_moisture
from finishlog.core.rules.wood.weighed import Trend, weights
from finishlog.core.trouble import preparation
from finishlog.core.trouble.controls import carries_colour, name_of
from finishlog.core.trouble.scene import Look, Missing, Scene, read_of
from finishlog.core.zone.state import ZoneState

_DUST_BEFORE = timedelta(hours=1)
# Our own rule: from a heated room into an unheated one in winter.
_CRACKS_C = 20.0
# Families that fill the pores.
_WETS = frozenset({Operation.RAISE_GRAIN, Operation.RINSE})
_FILLS = frozenset({"filler", "epoxy"})


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
    if not wood.oily:
        return None
    sealed = _sealed(of, wood)
    return finding("wood-is-oily", source=wood.oily_source, wood=wood.name, mild=sealed)


def resinous_wood(of: Scene) -> Look:
    """The wood bleeds pitch."""
    wood = _wood(of)
    if wood is None:
        return _untold(of)
    if not wood.pitchy:
        return None
    sealed = _sealed(of, wood)
    return finding("wood-has-pitch", source=wood.pitchy_source, wood=wood.name, mild=sealed)


def _sealed(of: Scene, wood: Species) -> str | None:
    """Say "yes" where a barrier that is published for such wood lies on it."""
    keys = {
        key for rule in of.facts.wood_rules if wood.traits & set(rule.wood) for key in rule.barrier
    }
    return "yes" if any(y.of.key in keys and y.coat.is_whole for y in of.below) else None


def blotchy_wood(of: Scene) -> Look:
    """The wood takes colour unevenly, and it was bare."""
    wood = _wood(of)
    if wood is None:
        return _untold(of)
    if not wood.blotches or of.below:
        return None
    return finding("wood-blotches", source=wood.blotches_source, wood=wood.name)


def open_pores(of: Scene) -> Look:
    """The pores of the wood stand open, and nothing filled them."""
    wood = _wood(of)
    if wood is None:
        return _untold(of)
    if not wood.has_open_pores or any(each.of.family in _FILLS for each in of.below):
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
    """The wood was measured too wet for a finish before the coat, by a meter or by the scale."""
    return wet_by(of.layer.coat.when.latest, of.state, of.facts)


def wet_by(then: datetime, state: ZoneState, facts: Facts) -> Look:
    """The same, of what was measured until then: a coat, or a glue-up."""
    before = [e for e in state.entries if e.when.latest <= then]
    scale = weights(before, facts.moisture.weighed)
    if scale is not None and scale.trend is Trend.FALLS:
        lost = finding("wood-lost-weight", source=COMMON_PRACTICE, fell=100 * scale.fell)
        return replace(lost, acts=tuple(e.act for e in scale.readings))
    if (wetted := _wetted(before, then, facts)) is not None:
        return wetted
    read = measured_moisture(before)
    if read is None or read.moisture_pct is None:
        stands = scale is not None and scale.trend is Trend.STEADY
        return None if stands else Missing.MOISTURE
    most = facts.moisture.at_most_pct
    if read.moisture_pct <= most.value:
        return None
    return finding(
        "wood-was-wet", source=most.source, measured=pct(read.moisture_pct), wanted=pct(most.value)
    )


def _wetted(before: Sequence[AnyEntry], then: datetime, facts: Facts) -> Finding | None:
    """Say that bare wood was wetted right before: to raise its grain, or to rinse it."""
    if any(isinstance(entry, Coat) and entry.when.latest < then for entry in before):
        return None
    done = [e for e in before if isinstance(e, Work) and e.operation in _WETS]
    dries_min = facts.hands_on.wet_wood_min.high
    if not done or then >= done[-1].when.latest + timedelta(minutes=dries_min):
        return None
    age = hours((then - done[-1].when.latest) / timedelta(hours=1))
    found = finding(
        "wood-was-wetted", measured=age, wanted=hours(dries_min / 60), deed=done[-1].operation.value
    )
    return replace(found, acts=(done[-1].act,))


def other_air(of: Scene) -> Look:
    """It was carried, since its coat, into air in which wood settles elsewhere.

    A film cracks by the cold alone, which it follows less than the wood does.
    """
    if len(of.layer.air.legs) < 2:
        return None
    met = [air for span in read_of(of.met) for air in span.nearest]
    settles = [settles_pct(air) for air in met]
    if not settles:
        return Missing.AIR
    warm, cold = met[0].temperature_c, min(air.temperature_c for air in met)
    if of.kind is FaultKind.CRAZE and warm - cold >= _CRACKS_C:
        return finding("carried-into-cold", measured=celsius(cold), wanted=celsius(warm))
    low, high = min(settles), max(settles)
    if high - low < of.facts.moisture.apart_pct.value:
        return None
    return finding("carried-into-other-air", measured=pct(settles[-1]), wanted=pct(settles[0]))


def coloured_joined(of: Scene) -> Look:
    """Its colour went on after it was glued up: what lay in a groove got none."""
    films = (*of.below, of.layer)
    colour = next((y for y in films if carries_colour(y.of)), None)
    joined = of.state.joined_by
    if colour is None:
        return None
    if joined is None:
        return Missing.GLUED
    if colour.coat.when.order < joined.when.order:
        return None
    return replace(finding("coloured-when-joined"), acts=(joined.act, colour.coat.act))


def solid_wood(of: Scene) -> Look:
    """It is of solid wood, no sheet."""
    wood = of.state.species
    if not wood:
        return Missing.WOOD
    return finding("wood-is-solid", wood=wood) if face_wood(wood) == plain(wood) else None


def old_finish(of: Scene) -> Look:
    """An old finish lies below, which nobody here put on."""
    old = of.state.old_finish
    return finding("old-finish-below", old=name_of_old(old)) if old else None


def other_grit(of: Scene) -> Look:
    """What is sound was sanded with another paper."""
    names = [name_of(each) for each in of.sound]
    return preparation.other_paper(_prepared(of), [_prepared(each) for each in of.sound], names)


def grit_left_out(of: Scene) -> Look:
    """A paper was left out as the wood was sanded."""
    return preparation.grit_left_out(_prepared(of), [_prepared(each) for each in of.sound])


def began_finer(of: Scene) -> Look:
    """What is sound was begun with a coarser paper."""
    names = [name_of(each) for each in of.sound]
    return preparation.began_finer(_prepared(of), [_prepared(each) for each in of.sound], names)


def not_sanded(of: Scene) -> Look:
    """No sanding of the wood is on record, and of sound wood one is."""
    return preparation.not_sanded(_prepared(of), [_prepared(each) for each in of.sound])


def glued_up(of: Scene) -> Look:
    """It was glued up before its coat, and not sanded since."""
    return preparation.left_by_glue(_prepared(of))


def _prepared(of: Scene) -> preparation.Prepared:
    return preparation.prepared(of.state, of.layer.coat.when.latest)


def dusty(of: Scene) -> Look:
    """Somebody sanded in the room right before it, or while it was wet."""
    # By its hours: a check that found it dry days later does not tell how long it lay open.
    figure = of.layer.coat.figures.stages.get(Stage.DUST_FREE)
    dry = of.layer.waits(figure).high if figure else None
    until = dry or of.until
    raised = [
        e
        for e in of.log.entries
        if isinstance(e, Work)
        and e.operation in ABRADES
        and of.began - _DUST_BEFORE <= e.when.latest <= until
        and _in_its_room(e, of)
    ]
    if not raised:
        return Missing.SANDING
    found = finding("sanded-near", deed=raised[-1].operation.value)
    return replace(found, acts=(raised[-1].act,))


def _in_its_room(work: Work, of: Scene) -> bool:
    """Tell whether something was worked on in the room in which the film stood then."""
    then = work.when.latest
    there = {_room_of(zone, then) for zone in of.zones if zone.target in work.targets}
    return not there or _room_of(of.state, then) in there


def _room_of(zone: ZoneState, then: datetime) -> str:
    stays = [stay for stay in zone.stays if stay.since <= then]
    return stays[-1].air.name if stays else ""


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
