"""What the film itself and what lies below it say of its trouble."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta
from itertools import pairwise

from finishlog.core.film.build import film_build
from finishlog.core.film.grip import met_while_it_set, unwashed_below
from finishlog.core.film.layers import Layer
from finishlog.core.film.surplus import is_settled, wiped_late
from finishlog.core.findings import also, count, finding, hours, micrometres
from finishlog.core.finish.classes import Figure, WindowKind
from finishlog.core.finish.overcoat import OvercoatAnswer, rule_between
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import FaultKind
from finishlog.core.published.fault_kinds import Evidence
from finishlog.core.trouble.controls import name_of
from finishlog.core.trouble.scene import Look, Missing, Scene
from finishlog.core.verdict.glue_up import is_coated_joint
from finishlog.core.zone.grouping import describe
from finishlog.core.zone.state import ZoneState

# Families that go on giving off oil or solvent into what lies over them.
_OILS = frozenset({"oil", "non-drying-oil", "oil-varnish", "stain", "filler", "glaze", "wax"})
# Where a young varnish or primer below is a cause of its own.
_OILS_UNDER_SOFT = _OILS - {"oil-varnish"}
# Published not to take what lies over them.
_NEVER = frozenset({OvercoatAnswer.AVOID, OvercoatAnswer.BARRIER})
# What is soft inside under a skin, by a coat below as well.
_SOFT_INSIDE = frozenset(
    {
        FaultKind.WRINKLE,
        FaultKind.BLISTER,
        FaultKind.CRAZE,
        FaultKind.PRINT_MARK,
        FaultKind.DENT,
    }
)
_HOUR = timedelta(hours=1)


def young_below(of: Scene) -> Look:
    """The coat below had not reached its recoat time, by its own figures in its air.

    That of an oil or stain is told as such, where that is a cause of its own.
    """
    if of.under is None:
        return None
    of_oil = of.under.of.family in _OILS_UNDER_SOFT and is_asked(Evidence.OIL_BELOW, of)
    if of_oil and oil_below(of) is not None:
        return None
    figure = of.under.coat.figures.stages.get(Stage.RECOAT)
    ready = of.under.waits(figure).high if figure else None
    if figure is None or (ready is not None and ready <= of.began):
        return _young_for_the_pair(of, of.under)
    age_h = (of.began - of.under.put_on) / _HOUR
    more = "in that air" if age_h >= figure.high_h else None
    name = of.under.coat.product_name
    return finding(
        "below-was-young",
        measured=hours(age_h),
        wanted=hours(figure.high_h),
        label=f"{figure.high_h:g}",
        under=name,
        more=more,
    )


def _young_for_the_pair(of: Scene, under: Layer) -> Look:
    """The film below could be recoated, and had not the hours that what lies over it wants.

    Mild between the least and the most that sources ask for.
    """
    rule = rule_between(of.facts, under.of, of.layer.of, of.layer.coat.method)
    if rule is None or rule.wait is None or rule.answer in _NEVER:
        return None
    if under.of.family in _OILS_UNDER_SOFT:
        return None
    age_h = (of.began - under.put_on) / _HOUR
    ready = under.waits(rule.wait).high
    if ready is not None and ready <= of.began:
        return None
    return finding(
        "below-was-young",
        source=rule.wait.source,
        measured=hours(age_h),
        wanted=hours(rule.wait.high_h),
        label=_span(rule.wait),
        under=under.coat.product_name,
        mild="yes" if age_h >= rule.wait.low_h else None,
    )


def window_missed(of: Scene) -> Look:
    """The recoat window of the coat below had closed."""
    closes = of.under.closes(of.began) if of.under else None
    if closes is None or of.began <= closes:
        return None
    late = hours((of.began - closes) / _HOUR)
    return finding("window-had-closed", measured=late, wanted=hours(0))


def not_scuffed(of: Scene) -> Look:
    """The coat below got no tooth, and wanted one."""
    if of.under is None or of.under.coat.figures.window.kind is WindowKind.MELTS_IN:
        return None
    if of.under.abraded or of.layer.coat.scuffed_before:
        return None
    if of.layer.coat.scuffed_before is None:
        return Missing.SCUFFING
    return finding("said-not-scuffed")


def surplus_below(of: Scene) -> Look:
    """Surplus below it set on the surface: what lies over it holds on that alone."""
    late = [each for each in wiped_late(of.below, by_tests=not of.compared) if each.surely]
    if late:
        most = late[0].layer.of.wipe_off_h
        return finding(
            "surplus-wiped-late",
            measured=hours(late[0].after / _HOUR),
            wanted=hours(most.high_h) if most else None,
            under=late[0].layer.coat.product_name,
        )
    stands = [each for each in of.below if each.stands_flooded and not is_settled(each)]
    if stands:
        return finding("surplus-unwiped", under=stands[-1].coat.product_name, never="yes")
    for each in reversed(of.below):
        if not is_settled(each) and (sound := wiped_there(each, of)):
            return finding("never-wiped-below", under=each.coat.product_name, sound=sound)
    untold = any(each.wipe_off_by() for each in of.below) or bool(wiped_late(of.below))
    return Missing.WIPING if untold else None


def wiped_there(layer: Layer, of: Scene) -> str:
    """Name a sound part on which the same was wiped off, where here no wipe is on record."""
    if layer.wipe_off_by() is None or layer.coat.flooded is False:
        return ""
    wiped = (
        name_of(each)
        for each in of.sound
        for other in each.state.layers
        if other.coat.product == layer.coat.product and other.is_wiped_off
    )
    return next(wiped, "")


def unsuited(of: Scene) -> Look:
    """What lies right below is published not to take it."""
    if of.under is None or of.under.of.key == of.layer.of.key:
        return None
    rule = rule_between(of.facts, of.under.of, of.layer.of, of.layer.coat.method)
    if rule and rule.answer in _NEVER:
        return finding("does-not-suit", source=rule.source, reason=rule.reason.rstrip("."))
    return None


def _oils(of: Scene) -> frozenset[str]:
    return _OILS_UNDER_SOFT if is_asked(Evidence.BELOW_TOO_YOUNG, of) else _OILS


def is_asked(evidence: Evidence, of: Scene) -> bool:
    """Tell whether it is a cause of such trouble."""
    causes = of.facts.fault_known(of.kind).causes if of.kind else of.facts.stall_causes
    return any(cause.evidence is evidence for cause in causes)


def oil_below(of: Scene) -> Look:
    """Oil or stain below that had not the hours which the pair wants.

    No hours: it never suits, which is a cause of its own for most kinds of trouble.
    """
    oily = [layer for layer in of.below if layer.of.family in _oils(of)]
    if not oily:
        return None
    oil = oily[-1]
    rule = rule_between(of.facts, oil.of, of.layer.of, of.layer.coat.method)
    wait = rule.wait if rule else None
    age_h = (of.began - oil.put_on) / _HOUR
    never = wait is None and rule is not None and rule.answer in _NEVER and oil is of.under
    if never and of.kind is not None:
        never = is_asked(Evidence.UNSUITED_BELOW, of)
    if never or (wait is not None and age_h >= wait.high_h):
        return None
    return finding(
        "oil-lies-below",
        measured=hours(age_h),
        wanted=hours(wait.high_h) if wait else None,
        label=_span(wait) if wait else None,
        under=oil.coat.product_name,
    )


def is_shut_off(of: Scene) -> bool:
    """Tell whether a barrier that the pair's row names lies between the oil below and the film."""
    at = max((n for n, y in enumerate(of.below) if y.of.family in _oils(of)), default=len(of.below))
    oil, between = of.below[at : at + 1], of.below[at + 1 :]
    rows = (rule_between(of.facts, y.of, of.layer.of, of.layer.coat.method) for y in oil)
    return any(row is not None and y.of.key in row.barrier for row in rows for y in between)


def unwashed(of: Scene) -> Look:
    """What the cure of a film below leaves on it was not washed off: the chain from there up."""
    films = (*of.below, of.layer)
    for under, _ in unwashed_below(films):
        left, chain = under.of.left_on_top, films[films.index(under) :]
        assert left is not None
        cold, damp = met_while_it_set(under)
        found = finding("unwashed-lies-below", source=left.source, what=left.name)
        return also(found, chain=tuple(y.coat.product_name for y in chain), cold=cold, damp=damp)
    return None


def barrier_left_out(of: Scene) -> Look:
    """What lies right below wanted a barrier over it until its hours were over, and got none."""
    if of.under is None:
        return None
    rule = rule_between(of.facts, of.under.of, of.layer.of, of.layer.coat.method)
    if rule is None or rule.answer is not OvercoatAnswer.BARRIER:
        return None
    return oil_below(of)


def thick(of: Scene) -> Look:
    """It was measured thicker than usual; or a coat below that stays soft by that was."""
    usual, laid = of.layer.of.wet_film_um, of.layer.coat.wet_film_um
    if (of.kind is None or of.kind in _SOFT_INSIDE) and (below := _thick_below(of)):
        return below
    if laid is None or usual is None:
        flooded = of.layer.coat.flooded
        if flooded and (_is_of_how_much(of) or of.layer.of.wipe_off_h is None):
            return finding("went-on-flooded")
        is_thin = flooded is False or of.layer.is_wiped_off
        return None if is_thin else Missing.THICKNESS
    if laid <= usual.high or (of.layer.is_wiped_off and of.kind is not FaultKind.BLEED_BACK):
        return None
    return finding("went-on-thick", measured=micrometres(laid), wanted=micrometres(usual.high))


def _is_of_how_much(of: Scene) -> bool:
    """Tell whether more of what is wiped off does harm: where none or little of it is sound."""
    thin = bool(of.compared) or any(each.layer.coat.flooded is False for each in of.sound)
    return of.kind is FaultKind.BLEED_BACK or (of.kind is FaultKind.LEFT_THICK and thin)


def _thick_below(of: Scene) -> Look:
    """Say that a coat below went on thick, and was covered before it had hardened through."""
    for under, over in pairwise((*of.below, of.layer)):
        usual, laid = under.of.wet_film_um, under.coat.wet_film_um
        figure = under.coat.figures.stages.get(Stage.RECOAT)
        if laid is None or usual is None or laid <= usual.high or under.is_wiped_off or not figure:
            continue
        ready = under.waits(figure).high
        if ready is None or ready > over.first_on:
            thick, name = micrometres(laid), under.coat.product_name
            return finding(
                "went-on-thick", measured=thick, wanted=micrometres(usual.high), under=name
            )
    return None


def other_coats(of: Scene) -> Look:
    """What is sound has more coats of it, or fewer."""
    mine, theirs = _coats_of_it(of), [_coats_of_it(each) for each in of.sound]
    if not theirs or mine in theirs:
        return None
    sound = name_of(of.sound[0])
    return finding("another-number", measured=count(mine), wanted=count(theirs[0]), sound=sound)


def _coats_of_it(of: Scene) -> int:
    return sum(y.coat.product == of.layer.coat.product for y in of.state.coats)


def film_in_all(of: Scene) -> Look:
    """All coats of its finish together carry more film than that bears, or are more than it is."""
    limit, most = of.layer.of.dry_film_limit_um, of.layer.of.most_coats
    alike = [each for each in (*of.below, of.layer) if each.of.key == of.layer.of.key]
    film = film_build((*of.below, of.layer), None, of.facts).total_um
    if limit is not None and film > limit.high:
        return finding("film-in-all", measured=micrometres(film), wanted=micrometres(limit.high))
    if limit is None and most is not None and len(alike) > most.high:
        return finding("coats-in-all", measured=count(len(alike)), wanted=count(most.high))
    measured = all(each.coat.wet_film_um is not None for each in alike)
    return None if measured or limit is None else Missing.THICKNESS


def one_face(of: Scene) -> Look:
    """The faces of the piece carry different numbers of coats."""
    piece = of.state.member_piece.id
    faces = {z.face.name: len(z.coats) for z in of.zones if z.member_piece.id == piece}
    if len(set(faces.values())) < 2:
        return None
    named = tuple(f"{face} {coats}" for face, coats in faces.items())
    return finding("faces-differ", faces=named)


def glue_face(of: Scene) -> Look:
    """A glue face of the same assembly has finish on it."""
    coated = coated_joints(of.state, of.zones)
    return finding("joint-coated", where=coated) if coated else None


def coated_joints(state: ZoneState, zones: Sequence[ZoneState]) -> tuple[str, ...]:
    """Name the glue faces of the same assembly with finish on them, all of them."""
    alike: dict[tuple[int, str, int], list[ZoneState]] = {}
    for zone in zones:
        if zone.piece.id == state.piece.id and is_coated_joint(zone) and zone.top is not None:
            key = (zone.member.id, zone.face.name, zone.top.coat.id)
            alike.setdefault(key, []).append(zone)
    return tuple(_coated_joint(found) for found in alike.values())


def _coated_joint(alike: Sequence[ZoneState]) -> str:
    first = alike[0]
    assert first.top is not None
    numbers = sorted({zone.member_piece.number for zone in alike})
    coat = first.top.coat
    where = describe(first.member, numbers, (first.face.name,))
    return f"{coat.product_name} on {where} (act {coat.act})"


def _span(of: Figure) -> str:
    return f"{of.low_h:g}" if of.low_h == of.high_h else f"{of.low_h:g} to {of.high_h:g}"
