"""Every rule there is: one list; its order is the order of ties, and in which findings are told."""

from __future__ import annotations

from collections.abc import Container, Mapping

from msgspec.structs import replace

from finishlog.core.findings import Act, Answer, Finding, Level
from finishlog.core.rules.air import coating_air, flame, warming
from finishlog.core.rules.film import (
    again,
    broken_off,
    came_from,
    clocks,
    damage,
    deadlines,
    deeds,
    grip,
    lessons,
    observed,
    put_to_use,
    sheen,
    soft,
    tested,
    the_can,
    underneath,
)
from finishlog.core.rules.hazard import breath, cartridge, chromate, lead, shut_room
from finishlog.core.rules.near import joint, kept, meets, place, same_film, tape, wet_nearby
from finishlog.core.rules.rule import Rule
from finishlog.core.rules.wood import (
    bare_wood,
    bleached,
    in_store,
    iron,
    prepared,
    settling,
    too_wet,
    weighed,
)
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.state import ZoneState

RULES: tuple[Rule, ...] = (
    deadlines.wipe_off,
    deadlines.bleeds_back,
    deadlines.mend_by,
    damage.suspect,
    underneath.wrong_below,
    deadlines.wiped_late,
    again.change_method,
    came_from.hardener_left_out,
    came_from.off_ratio,
    came_from.from_wrong_thinner,
    came_from.from_frozen,
    came_from.from_condemned,
    came_from.sample_soft,
    soft.stalled,
    observed.repair_first,
    joint.joint_young,
    joint.cold_joint,
    joint.glued_on_finish,
    bleached.dust,
    bleached.met,
    bleached.not_rinsed,
    bleached.shut_in,
    bleached.bleached_skin,
    observed.check_failed,
    tested.comes_off_coloured,
    tested.sample_first,
    observed.fault,
    broken_off.broken_off,
    lead.lead,
    breath.sprayed,
    chromate.dust,
    breath.heated,
    breath.by_your_sheet,
    breath.dust,
    shut_room.chlorinated,
    came_from.hardener_untold,
    came_from.from_old,
    grip.unwashed,
    grip.unwashed_under,
    soft.dried_late_below,
    deeds.too_thick_at_once,
    clocks.film_clock,
    clocks.recoat_clock,
    clocks.may_wrinkle,
    clocks.steps_behind,
    damage.perhaps_cold,
    observed.patch_first,
    damage.not_proved_through,
    put_to_use.hard_before_use,
    came_from.past_pot_life,
    came_from.mixes_apart,
    grip.unscuffed_below,
    underneath.pair,
    the_can.which_kind,
    the_can.ways,
    underneath.pair_on_wood,
    underneath.last_chance,
    the_can.not_over,
    the_can.needs,
    the_can.not_on,
    the_can.most_coats,
    the_can.coats_a_day,
    the_can.wait,
    the_can.window,
    bare_wood.wood,
    bare_wood.solvent_wipe,
    underneath.old_finish,
    iron.iron,
    iron.iron_to_come,
    iron.no_steel_wool,
    deadlines.wiped_in_time,
    deeds.thick_film,
    deeds.coats_a_day,
    deeds.too_much_film,
    deeds.over_its_limit,
    grip.scuffed_long_ago,
    grip.scuff_grit,
    coating_air.air,
    too_wet.wood_too_wet,
    weighed.weight_falls,
    settling.moisture_old,
    in_store.in_store,
    settling.from_other_air,
    settling.wood_too_dry,
    settling.moisture_trend,
    weighed.weight_told,
    prepared.wood_wetted,
    prepared.grain_raised,
    prepared.sanded_long_ago,
    prepared.glue_face_old,
    prepared.last_grit,
    prepared.look_first,
    bare_wood.oily_wood_below,
    bare_wood.on_the_wood,
    sheen.not_stirred,
    sheen.two_batches,
    lessons.went_wrong_before,
    place.inside_closed,
    meets.film_in_runner,
    meets.shuts_while_soft,
    kept.kept_too_young,
    kept.no_air,
    kept.look_again,
    kept.unpack_first,
    warming.warms_under_film,
    tape.tape_left,
    tape.tape_on_young_film,
    flame.heater,
    cartridge.cartridge,
    flame.flame,
    flame.at_home,
    flame.place_untold,
    wet_nearby.other_face,
    same_film.failed_beside,
    wet_nearby.dust_on_wet,
    coating_air.wood_warms_up,
    observed.still_prints,
    tested.was_cupped,
    deadlines.coat_while_wiped,
)

BINDING: Mapping[Act, tuple[Rule, ...]] = {
    act: tuple(rule for rule in RULES if act in rule.binds) for act in Act
}


def findings_of(
    zone: ZoneState, asked: Asked, around: Around, *, but: Container[str] = ()
) -> tuple[Finding, ...]:
    """Return what every rule finds that may bind the act asked; not those with an id in `but`."""
    rules = (rule for rule in BINDING[asked.act] if rule.id not in but)
    found = (
        _to_its_remedy(finding, rule, asked)
        for rule in rules
        for finding in rule.find(zone, asked, around)
    )
    return tuple(dict.fromkeys(found))


def _to_its_remedy(found: Finding, by: Rule, asked: Asked) -> Finding:
    """Return a finding as a note where what is asked is its own remedy: it warns of that no more.

    A deadline goes on running until the remedy is being done.
    """
    if not asked.does or asked.does not in by.mended_by | found.mended_by:
        return found
    if found.answer is Answer.DEADLINE and not asked.done:
        return found
    return replace(found, level=Level.NOTE, answer=None, scuff=False, plain=False)
