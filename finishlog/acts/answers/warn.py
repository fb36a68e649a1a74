"""What to heed about an act, judged by the bench as it was just before."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta

from msgspec.structs import replace

from finishlog.acts.answers.air_of_coat import EVENING, put_on_tonight
from finishlog.acts.answers.binding import answered, not_scuffed, once_each, too_young
from finishlog.asks.look.look import Look
from finishlog.core.bench.state import verdict_on, verdict_on_work
from finishlog.core.film.grip import GRIPS
from finishlog.core.findings import (
    AT_HOME,
    COATS_A_DAY,
    HEATER_UNTOLD,
    HURTS,
    NIGHT_UNTOLD,
    SPARKS,
    Answer,
    Deed,
    Finding,
    Level,
    finding,
    minutes,
)
from finishlog.core.finish.classes import COMMON_PRACTICE, FinishClass, Method
from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.overcoat import OvercoatAnswer, PutOn, is_lifted, rule_between
from finishlog.core.log.entries import Coat, Work
from finishlog.core.log.words import Keeping, Operation
from finishlog.core.mixing.chemistry import Ingredient
from finishlog.core.published.facts import Facts
from finishlog.core.rules.air.coating_air import AIR_RULES
from finishlog.core.rules.wood.bleached import dust_of_bleach
from finishlog.core.safety.hazards import hazards_of
from finishlog.core.shop.things import FaceKind
from finishlog.core.zone.grouping import labels_of
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import Verdict
from finishlog.picking import Zones

# Of the room: told again when it is another, or when it is sprayed.
_TOLD_ONCE_A_NIGHT = frozenset({SPARKS, AT_HOME})

# What presses into a young film, by the work that brings it there.
_PRESSES = frozenset({Operation.STACK, Operation.PACK, Operation.STORE})

# A wait is shown to the half hour, rounded.
_WITHIN = timedelta(minutes=15)


def warnings_before(
    then: Look,
    picked: Zones,
    act: int,
    *,
    operation: Operation = Operation.COAT,
    over: FinishClass | None = None,
    method: Method | None = None,
    scuffed: bool | None = None,
    comes: Ingredient | None = None,
    product: int | None = None,
    grit: str = "",
    film_um: float | None = None,
    kept: Keeping | None = None,
) -> tuple[Finding, ...]:
    """Return cautions and stops about what `act` logs; empty: nothing speaks against it.

    `comes`: what is brought onto the wood, with what was noted about it; `grit`: the paper;
    `film_um`: how thick the coat went on; `kept`: how it is stored.
    """
    found: list[tuple[Finding, ZoneState]] = []
    too_early = "pressed" if operation in _PRESSES else ""
    for state in (z for z in then.bench.zones if z.target in picked.targets):
        of_it: list[Finding] = []
        if over is not None:
            of_it += _dust_of_scuffing(state, then.facts) if scuffed else ()
            verdict = verdict_on(
                state, then.bench, over, method, then.facts, comes, product, film_um
            )
            if _asked_tonight(then):
                verdict = _without_the_night(verdict)
            of_it += [*_joint(state), *_shuts_out(state, over, then)]
            too_early = "wiped off" if over.wipe_off_h else ""
        else:
            verdict = verdict_on_work(state, then.bench, operation, then.facts, comes, grit, kept)
        if _heater_asked_tonight(then):
            left = tuple(f for f in verdict.findings if f.rule != HEATER_UNTOLD)
            verdict = replace(verdict, findings=left)
        if over is not None and _told_tonight(then, state, over, method):
            left = tuple(f for f in verdict.findings if f.rule not in _TOLD_ONCE_A_NIGHT)
            verdict = replace(verdict, findings=left)
        early = _a_little_early(state, verdict, then.bench.now) if over is not None else None
        if early is not None:
            of_it.append(early)
            verdict = replace(verdict, answer=Answer.GO)
        of_it += _of(verdict, state, then, too_early, act, scuffed=bool(scuffed))
        if over is not None and not scuffed and not verdict.scuff_first:
            of_it += _skipped(state, act)
        if over is not None and len(then.bench.rooms_in_use | {state.room.id}) > 1:
            of_it = _of_its_room(of_it, state, then)
        found += ((each, state) for each in of_it)
    return most_weighty(_named(each, states) for each, states in once_each(found).items())


def coats_of_this_evening(then: Look) -> list[Coat]:
    """Return the coats that were typed this evening: what they asked is not asked again."""
    lately = then.bench.now - EVENING
    return [e for e in then.log.entries if isinstance(e, Coat) and e.typed_at > lately]


def _asked_tonight(then: Look) -> bool:
    """Tell whether a coat of this evening has asked how cold the night gets already."""
    classes = {coat.figures.class_key for coat in coats_of_this_evening(then)}
    return any(then.facts.finish_class(key).limits.warm_first_h for key in classes)


def _heater_asked_tonight(then: Look) -> bool:
    """Tell whether a coat of this evening has asked what heats the room already."""
    coats = coats_of_this_evening(then)
    return any(Hazard.FLAMMABLE in hazards_of(coat, then.shop, then.facts) for coat in coats)


def _told_tonight(then: Look, state: ZoneState, over: FinishClass, method: Method | None) -> bool:
    """Tell whether a coat that gives off vapour went on so in the room this evening already."""
    sprays = (method or over.methods[0]) is Method.SPRAY
    return any(
        ((layer.coat.method or layer.of.methods[0]) is Method.SPRAY) is sprays
        and Hazard.FLAMMABLE in hazards_of(layer.coat, then.shop, then.facts)
        for layer in put_on_tonight(then, state.room.id)
    )


def _without_the_night(verdict: Verdict) -> Verdict:
    """Leave out the question for the coldest night, and the doubt that is nothing else."""
    left = tuple(f for f in verdict.findings if f.rule != NIGHT_UNTOLD)
    only = verdict.binds.rule == NIGHT_UNTOLD
    answer = Answer.GO if only else verdict.answer
    return replace(verdict, answer=answer, findings=left)


def _named(finding: Finding, states: Sequence[ZoneState]) -> Finding:
    """Name the parts that a finding is about; who must get out reads that first."""
    return finding if finding.get_out else replace(finding, on=labels_of(states))


def _scuffed_in_vain(state: ZoneState) -> Work | None:
    """Return the scuffing of a film that was too young for it to give grip; None: there is none."""
    scuffs = [w for w in state.top.abraded if w.operation in GRIPS] if state.top else []
    return scuffs[-1] if scuffs else None


def _of(
    verdict: Verdict, state: ZoneState, then: Look, too_early: str, act: int, *, scuffed: bool
) -> Iterable[Finding]:
    """Yield the binding reason as a warning, then the findings that weigh.

    `too_early`: what happens to a film too young for it; empty: as by a coat. `act`: what is
    logged.
    """
    weighs = [f for f in verdict.findings if f.level is not Level.NOTE]
    if verdict.answer is Answer.DRYING:
        # That it comes too early says already that it is a coat too many for a day.
        weighs = [f for f in weighs if f.rule != COATS_A_DAY]
    quiet = {Answer.GO, Answer.DONE, Answer.SET_ASIDE, Answer.SCUFF}
    # What binds speaks for itself, with its own remedy.
    said = verdict.binds in weighs
    in_time = verdict.answer is Answer.DEADLINE and verdict.deed is Deed.COAT
    if verdict.answer not in quiet and not said and not in_time:
        yield answered(verdict, state, then, too_early)
    if scuffed:
        weighs = [f for f in weighs if not f.scuff]
    elif verdict.scuff_first and not any(f.scuff for f in weighs):
        scuff = _scuffed_in_vain(state)
        yield too_young(scuff, act) if scuff else not_scuffed(state, then.bench.now, act)
    yield from weighs


def _dust_of_scuffing(state: ZoneState, facts: Facts) -> Iterable[Finding]:
    """Stop what was scuffed out of wood with a bleach in it."""
    dust = dust_of_bleach(state.entries, Operation.SCUFF, facts)
    yield from (dust,) if dust is not None else ()


def _a_little_early(state: ZoneState, verdict: Verdict, now: datetime) -> Finding | None:
    """Say in few words of a coat that its wait was hardly over; None: it was, or was far from it.

    Times are shown to the half hour: a quarter of an hour, and of a short wait a tenth, is within
    it. The wait itself keeps its length (`ready`).
    """
    if verdict.answer is not Answer.DRYING or verdict.low is None or state.top is None:
        return None
    early = verdict.low - now
    if early > min(_WITHIN, (verdict.low - state.top.dries_since) / 10):
        return None
    to_the_minute = minutes(round(early / timedelta(minutes=1)))
    return finding("a-little-early", Level.CAUTION, measured=to_the_minute)


def _skipped(state: ZoneState, act: int) -> Iterable[Finding]:
    """Warn of a coat where the step that is due is to scuff the film."""
    due = state.progress.next
    is_due = state.layers and due is not None and due.operation is Operation.SCUFF
    if is_due and _scuffed_in_vain(state) is None:
        yield finding("scuff-is-due", Level.CAUTION, act=act)


def _of_its_room(found: Iterable[Finding], state: ZoneState, then: Look) -> list[Finding]:
    """Say whose air it is, where parts stand in several rooms."""
    name = "".join(r.name for r in then.shop.rooms.values() if r.id == state.room.id)
    return [replace(f, room=name) if name and f.rule in AIR_RULES else f for f in found]


def _joint(state: ZoneState) -> Iterable[Finding]:
    if state.face.kind is FaceKind.JOINT:
        face = f"{state.member.called} {state.face.name}"
        yield finding("glue-face", Level.CAUTION, COMMON_PRACTICE, face=face)


def _shuts_out(state: ZoneState, over: FinishClass, then: Look) -> Iterable[Finding]:
    """Warn of coats that are still to come and do not go over this one: wax now, varnish later.

    What comes between may seal it off by then.
    """
    between: list[PutOn] = []
    for step in state.progress.steps[state.progress.done :]:
        if step.operation is not Operation.COAT or step.product is None:
            continue
        product = then.shop.products[step.product]
        later = then.facts.finish_class(product.class_key)
        rule = rule_between(then.facts, over, later)
        lifted = rule is not None and is_lifted(rule, over, between, then.facts, hard=True)
        if later.key != over.key:
            between.append(PutOn(later))
        if rule is not None and rule.answer is OvercoatAnswer.AVOID and not lifted:
            yield finding(
                "shuts-out",
                Level.CAUTION,
                rule.source,
                of=product.name,
                reason=rule.reason,
                remedy=rule.remedy,
            )


def most_weighty(found: Iterable[Finding]) -> tuple[Finding, ...]:
    """Return findings once each, what stops first, and of that what hurts people."""
    order = {Level.STOP: 0, Level.CAUTION: 1, Level.NOTE: 2}
    weighed = sorted(dict.fromkeys(found), key=lambda f: (order[f.level], f.rule not in HURTS))
    return tuple(weighed)
