"""What a log shows for or against a likely cause: one look for each kind of evidence."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import datetime, timedelta

from msgspec import Struct

from finishlog.core.air.span import AirSpan
from finishlog.core.film.layers import ABRADES, Layer
from finishlog.core.film.surplus import wiped_late
from finishlog.core.finish.classes import Figure, WindowKind
from finishlog.core.finish.overcoat import OvercoatAnswer, rule_for
from finishlog.core.finish.rate_law import rate
from finishlog.core.finish.stages import Stage, shown
from finishlog.core.log.entries import Check, ContainerEvent, Work
from finishlog.core.log.words import ContainerDeed, Found, Operation
from finishlog.core.measure.quantities import celsius, micrometres
from finishlog.core.published.facts import Facts
from finishlog.core.published.fault_kinds import Evidence
from finishlog.core.rules.near.glue_up import is_coated_joint
from finishlog.core.shop.things import Log
from finishlog.core.zone.asked import NEEDS
from finishlog.core.zone.grouping import describe
from finishlog.core.zone.state import ZoneState

# Families that go on giving off oil or solvent into what lies over them.
_OILS = frozenset({"oil", "oil-varnish", "stain", "filler", "glaze", "wax"})
# Our own rule: at less than this of the label's pace the cold is worth a word.
_SLOW_PACE = 0.75
_DUST_BEFORE = timedelta(hours=1)


class Scene(Struct, frozen=True):
    """What is looked at: the coat in trouble, what lies below it, the wood, the air, the log."""

    layer: Layer
    below: tuple[Layer, ...]
    until: datetime
    state: ZoneState
    log: Log
    zones: Sequence[ZoneState]
    facts: Facts
    # The trouble came from the coat below: it is its air that counts.
    from_below: bool = False

    @property
    def under(self) -> Layer | None:
        """The layer right below; None: bare wood."""
        return self.below[-1] if self.below else None

    @property
    def began(self) -> datetime:
        """The earliest moment of the coat."""
        return self.layer.coat.when.earliest

    def air(self) -> Iterator[AirSpan]:
        """Yield the air that was read from the coat to the trouble."""
        of = self.under if self.from_below and self.under else self.layer
        return (s for s in of.air.until(self.until) if s.measured and s.airs)


# What a look at the log gives: what it shows; '' when it speaks against it; None, and then what is
# missing, when nobody logged it.
Look = tuple[str | None, str]
_NO: Look = ("", "")


def _humid(of: Scene) -> Look:
    limit = of.layer.of.limits.blush_rh_pct or of.layer.of.limits.max_rh_pct
    met = [air.humidity_pct for span in of.air() for air in span.nearest]
    if not met:
        return None, "the air"
    if limit is None or max(met) <= limit.value:
        return _NO
    return f"{max(met):.0f} % RH, the limit is {limit.value:.0f} %", ""


def _cold(of: Scene) -> Look:
    spans = list(of.air())
    if not spans:
        return None, "the air"
    figure = of.layer.coat.figures.stages.get(Stage.RECOAT)
    coldest = min((air for s in spans for air in s.nearest), key=lambda air: air.temperature_c)
    met, limit = coldest.temperature_c, of.layer.of.limits.min_c
    if limit and met < limit.value:
        return f"{celsius(met)}, it needs {celsius(limit.value)}", ""
    if figure and rate(of.layer.law(figure), coldest) < _SLOW_PACE:
        return f"down to {celsius(met)}, its hours count at {celsius(figure.at.temperature_c)}", ""
    return _NO


def _hot(of: Scene) -> Look:
    met = [air.temperature_c for span in of.air() for air in span.nearest]
    limit = of.layer.of.limits.max_c
    if not met:
        return None, "the air"
    if limit is None or max(met) <= limit.value:
        return _NO
    return f"{celsius(max(met))}, the limit is {celsius(limit.value)}", ""


def _young_below(of: Scene) -> Look:
    if of.under is None:
        return _NO
    figure = of.under.coat.figures.stages.get(Stage.RECOAT)
    ready = of.under.waits(figure).high if figure else None
    if figure is None or (ready is not None and ready <= of.began):
        return _NO
    age = _hours(of.began - of.under.put_on)
    more = ", in that air more" if of.began - of.under.put_on >= _h(figure.high_h) else ""
    name = of.under.coat.product_name
    return f"{name} went on {age} before; {figure.high_h:g} h is usual{more}", ""


def _window(of: Scene) -> Look:
    closes = of.under.closes(of.began) if of.under else None
    if closes is None or of.began <= closes:
        return _NO
    return f"it had closed {_hours(of.began - closes)} before", ""


def _not_scuffed(of: Scene) -> Look:
    if of.under is None or of.under.coat.figures.window.kind is WindowKind.MELTS_IN:
        return _NO
    if of.under.abraded or of.layer.coat.scuffed_before:
        return _NO
    if of.layer.coat.scuffed_before is None:
        return None, "whether it was scuffed"
    return "logged as not scuffed", ""


def _not_wiped(of: Scene) -> Look:
    late = wiped_late((of.layer,))
    if late is not None and late.surely and of.layer.of.wipe_off_h is not None:
        most = timedelta(hours=of.layer.of.wipe_off_h.high_h)
        return f"wiped {_hours(late.after)} after it, at most {_hours(most)}", ""
    if of.layer.stands_flooded:
        return "flooded on, and no wipe is on record", ""
    if of.layer.wipe_off_by() is None and late is None:
        return _NO
    if of.layer.coat.flooded is None:
        return None, "whether it was flooded on, and when the surplus was wiped off"
    return None, "when the surplus was wiped off"


def _unsuited(of: Scene) -> Look:
    if of.under is None or of.under.of.key == of.layer.of.key:
        return _NO
    rules = of.facts.overcoats_between(of.under.of, of.layer.of)
    rule = rule_for(rules, of.under.of, of.layer.of, of.layer.coat.method)
    if rule and rule.answer in {OvercoatAnswer.AVOID, OvercoatAnswer.BARRIER}:
        return rule.reason.rstrip("."), ""
    return _NO


def _oil_below(of: Scene) -> Look:
    oily = [layer for layer in of.below if layer.of.family in _OILS]
    if not oily:
        return _NO
    oil = oily[-1]
    said = f"{oil.coat.product_name} went on {_hours(of.began - oil.put_on)} before"
    rules = of.facts.overcoats_between(oil.of, of.layer.of)
    rule = rule_for(rules, oil.of, of.layer.of, of.layer.coat.method)
    if rule is None or rule.wait is None:
        return said, ""
    if of.began - oil.put_on >= _h(rule.wait.high_h):
        return _NO
    return f"{said}; {_span(rule.wait)} is usual", ""


def _thick(of: Scene) -> Look:
    usual, laid = of.layer.of.wet_film_um, of.layer.coat.wet_film_um
    if of.layer.is_wiped_off or (laid is None and of.layer.coat.flooded is False):
        return _NO
    if laid is None:
        return None, "how thick it went on"
    if usual is None or laid <= usual.high:
        return _NO
    return f"{micrometres(laid)} wet, {micrometres(usual.high)} is usual at most", ""


def _old_can(of: Scene) -> Look:
    keeps, can = of.layer.of.shelf_opened_d, of.layer.coat.container
    opened = [
        e.when.earliest
        for e in of.log.entries
        if isinstance(e, ContainerEvent) and e.container == can and e.deed is ContainerDeed.OPENED
    ]
    if can is None or not opened:
        return None, "which can it came from, and since when that is open"
    days = (of.began - opened[0]).days
    if keeps is None or days <= keeps.low:
        return _NO
    return f"open for {days} days, it keeps {keeps.low:.0f}", ""


def _oily_wood(of: Scene) -> Look:
    wood = of.facts.species_named(of.state.species) if of.state.species else None
    if wood is None:
        return None, "which wood it is"
    return (f"{wood.name} is oily", "") if wood.oily else _NO


def _blotchy_wood(of: Scene) -> Look:
    wood = of.facts.species_named(of.state.species) if of.state.species else None
    if wood is None:
        return None, "which wood it is"
    if not wood.blotches or of.below:
        return _NO
    return f"{wood.name} blotches, and it was bare", ""


def _dusty(of: Scene) -> Look:
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
        return None, "whether anybody sanded in the room"
    return f"{raised[-1].operation.value} logged within the hour or while it was wet", ""


def _handled(of: Scene) -> Look:
    for entry in of.state.entries:
        if not isinstance(entry, Work) or entry.when.earliest < of.layer.put_on:
            continue
        stage = NEEDS.get(entry.operation)
        time = of.layer.stage(stage) if stage and entry.operation not in ABRADES else None
        if stage and time and (time.high is None or entry.when.earliest < time.high):
            age = _hours(entry.when.earliest - of.layer.put_on)
            return f"{entry.operation.value} after {age}, before {shown(stage)}", ""
    return None, "when it was clamped, stacked, packed or used"


def _sanded(of: Scene) -> Look:
    done = [
        e
        for e in of.state.entries
        if isinstance(e, Work)
        and e.operation in {*ABRADES, Operation.RUB, Operation.STEEL_WOOL}
        and of.layer.put_on <= e.when.latest <= of.until
    ]
    if not done:
        return None, "when it was sanded or rubbed"
    sand = of.layer.stage(Stage.SAND)
    if sand and sand.high and done[-1].when.earliest >= sand.high:
        return _NO
    return (
        f"{done[-1].operation.value} {_hours(done[-1].when.latest - of.layer.put_on)} after it",
        "",
    )


def _one_face(of: Scene) -> Look:
    piece = of.state.member_piece.id
    faces = {z.face.name: len(z.layers) for z in of.zones if z.member_piece.id == piece}
    if len(set(faces.values())) < 2:
        return _NO
    return ", ".join(f"{face} {coats}" for face, coats in faces.items()), ""


def coated_joints(state: ZoneState, zones: Sequence[ZoneState]) -> str:
    """Name the glue faces of the same assembly with finish on them, all of them; empty: none."""
    alike: dict[tuple[int, str, int], list[ZoneState]] = {}
    for zone in zones:
        if zone.piece.id == state.piece.id and is_coated_joint(zone) and zone.top is not None:
            key = (zone.member.id, zone.face.name, zone.top.coat.id)
            alike.setdefault(key, []).append(zone)
    return "; ".join(_coated_joint(found) for found in alike.values())


def _coated_joint(alike: Sequence[ZoneState]) -> str:
    first = alike[0]
    assert first.top is not None
    numbers = sorted({zone.member_piece.number for zone in alike})
    coat = first.top.coat
    where = describe(first.member, numbers, (first.face.name,))
    return f"{coat.product_name} on {where} (act {coat.act})"


def _glue_face(of: Scene) -> Look:
    return coated_joints(of.state, of.zones), ""


def _earlier_too(of: Scene) -> Look:
    soft = {Found.TACKY, Found.GUMS, Found.PRINTS}
    for attempt in reversed(of.state.attempts):
        found = [f for f in attempt.found if isinstance(f, Check) and f.found in soft]
        cans = {attempt.coats[-1].container, of.layer.coat.container}
        if found and len(cans) > 1:
            return f"{attempt.coats[-1].product_name} from another can stayed soft there too", ""
        if found and cans == {None}:
            return None, "whether both attempts came from the same can"
    return _NO


def _span(of: Figure) -> str:
    return f"{of.low_h:g} h" if of.low_h == of.high_h else f"{of.low_h:g} to {of.high_h:g} h"


def _hours(length: timedelta) -> str:
    hours = length / timedelta(hours=1)
    return f"{hours:.0f} h" if hours < 72 else f"{length.days} days"


def _h(hours: float) -> timedelta:
    return timedelta(hours=hours)


LOOKS: Mapping[Evidence, Callable[[Scene], Look]] = {
    Evidence.HUMID: _humid,
    Evidence.COLD: _cold,
    Evidence.HOT: _hot,
    Evidence.BELOW_TOO_YOUNG: _young_below,
    Evidence.WINDOW_MISSED: _window,
    Evidence.NOT_SCUFFED: _not_scuffed,
    Evidence.NOT_WIPED: _not_wiped,
    Evidence.UNSUITED_BELOW: _unsuited,
    Evidence.OIL_BELOW: _oil_below,
    Evidence.THICK: _thick,
    Evidence.OLD_CONTAINER: _old_can,
    Evidence.OILY_WOOD: _oily_wood,
    Evidence.BLOTCHY_WOOD: _blotchy_wood,
    Evidence.DUSTY: _dusty,
    Evidence.HANDLED_EARLY: _handled,
    Evidence.SANDED_BEFORE: _sanded,
    Evidence.ONE_FACE: _one_face,
    Evidence.GLUE_FACE_COATED: _glue_face,
    Evidence.EARLIER_TOO: _earlier_too,
}
