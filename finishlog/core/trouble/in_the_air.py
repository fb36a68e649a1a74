"""What the air that a film met says of its trouble: damp, cold, heat."""

from __future__ import annotations

from finishlog.core.air.psychrometrics import Air
from finishlog.core.findings import Finding, celsius, finding, pct
from finishlog.core.finish.rate_law import rate
from finishlog.core.finish.stages import Stage
from finishlog.core.published.fault_kinds import Evidence
from finishlog.core.trouble.in_the_film import is_asked
from finishlog.core.trouble.scene import Look, Missing, Scene, read_of

# Our own rule: at less than this of the label's pace the cold is worth a word.
_SLOW_PACE = 0.75
# Our own rule: a film may meet no limit and dry in damp all the same.
_DAMP_PCT = 70.0


def humid(of: Scene) -> Look:
    """Damp over the class's limit, or damp at all; readings through the whole time rule it out."""
    limit = of.layer.of.limits.blush_rh_pct or of.layer.of.limits.max_rh_pct
    met = max((air.humidity_pct for span in of.air_read for air in span.nearest), default=None)
    if met is not None and met > min(_DAMP_PCT, limit.value if limit else _DAMP_PCT):
        over = pct(limit.value) if limit and met > limit.value else None
        carried = "carried" if _was_carried_hard(of) else None
        return finding("shows-damp", measured=pct(met), wanted=over, more=carried)
    return None if of.is_read_all_through else Missing.AIR


def _was_carried_hard(of: Scene) -> bool:
    """Tell whether the damp is of the air that it was carried into when it was fully hard."""
    moves = [leg.start for leg in of.layer.air.legs[1:]]
    if not moves or not is_asked(Evidence.OTHER_AIR, of) or not of.layer.is_hard_by(moves[0]):
        return False
    before = read_of(of.layer.air.until(moves[0]))
    return all(air.humidity_pct <= _DAMP_PCT for span in before for air in span.nearest)


def cold(of: Scene) -> Look:
    """Cold below the class's limit, or so cold that its hours count for much less."""
    found = _cold(of)
    return found or (None if of.is_read_all_through else Missing.AIR)


def _cold(of: Scene) -> Finding | None:
    airs = [air for span in of.air_read for air in span.nearest]
    if not airs:
        return None
    figure = of.layer.coat.figures.stages.get(Stage.RECOAT)
    coldest = min(airs, key=lambda air: air.temperature_c)
    met, limit = coldest.temperature_c, of.layer.of.limits.min_c
    if limit and met < limit.least:
        return finding("shows-cold", measured=celsius(met), wanted=celsius(limit.value))
    if figure is None:
        return None
    # Damp that slows it is not the cold.
    no_damper = Air(met, min(coldest.humidity_pct, figure.at.humidity_pct))
    if rate(of.layer.law(figure), no_damper) < _SLOW_PACE:
        label = celsius(figure.at.temperature_c)
        return finding("shows-slow-cold", measured=celsius(met), wanted=label)
    return None


def hot(of: Scene) -> Look:
    """Heat over the class's limit; no thermometer in the room sees the sun on a part."""
    met = max((air.temperature_c for span in of.air_read for air in span.nearest), default=None)
    limit = of.layer.of.limits.max_c
    if met is None or limit is None or met <= limit.most:
        return Missing.SUN
    return finding("shows-heat", measured=celsius(met), wanted=celsius(limit.value))
