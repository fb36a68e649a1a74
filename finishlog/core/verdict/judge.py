"""The verdict on one zone: may the next step be done now, and if not, what binds?"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import datetime, timedelta

from msgspec.structs import replace

from finishlog.core.air.heater import WHAT
from finishlog.core.air.room import RoomAir
from finishlog.core.clock.air_to_come import allowed_from
from finishlog.core.clock.counting import outside
from finishlog.core.film import checks as film_checks
from finishlog.core.film.damage import damage_words, is_suspect, perhaps_too_cold
from finishlog.core.film.faults import patch_due
from finishlog.core.film.layers import ABRADES, Layer
from finishlog.core.film.old_finish import finding_of_sanding, findings_over
from finishlog.core.findings import NO_FLAME, Finding, Level
from finishlog.core.finish.classes import COMMON_PRACTICE, FinishClass, Method, WindowKind
from finishlog.core.finish.stages import Stage, shown
from finishlog.core.log.words import Found, Operation
from finishlog.core.measure.quantities import celsius
from finishlog.core.published.facts import Facts
from finishlog.core.rules.bare_wood import after_the_wipe, steel_wool_findings
from finishlog.core.rules.bleached import dust_of_bleach, met_in_the_wood
from finishlog.core.rules.cauls import cold_joint, held_by_glue
from finishlog.core.rules.coating_air import air_findings, cold_wood_until, felt_lately
from finishlog.core.rules.deadlines import coat_while_wiped, running, surplus_doubt
from finishlog.core.rules.fault_verdicts import (
    blocked_by_fault,
    fault_findings,
    to_mend,
    waits_for_repair,
)
from finishlog.core.rules.still_soft import is_hot, past_hope
from finishlog.core.rules.too_wet import moisture_findings
from finishlog.core.rules.underneath import Underneath, fault_in_the_stack, look_through
from finishlog.core.rules.wet_nearby import Around, Wet
from finishlog.core.rules.windows import by_the_clocks, by_time
from finishlog.core.safety.ignition import lit_by, vapour_until
from finishlog.core.zone.state import Asked, ZoneState
from finishlog.core.zone.verdict import MAY_ACT, Answer, Verdict

# What a piece of work asks of the film under it; work not named asks nothing. common practice
NEEDS: Mapping[Operation, Stage] = {
    Operation.SCUFF: Stage.SAND,
    Operation.DENIB: Stage.SAND,
    Operation.SAND: Stage.SAND,
    Operation.STEEL_WOOL: Stage.SAND,
    Operation.MASK: Stage.CLAMP,
    Operation.UNTAPE: Stage.TACK_FREE,
    Operation.RUB: Stage.RUB,
    Operation.HARDWARE: Stage.STACK,
    Operation.GLUE_UP: Stage.CLAMP,
    Operation.STACK: Stage.STACK,
    Operation.PACK: Stage.PACK,
    Operation.USE: Stage.LIGHT_USE,
}


def decide(state: ZoneState, asked: Asked, near: Around, facts: Facts) -> Verdict:
    """Give the verdict on what is asked. What binds first decides; faults stay in sight."""
    if state.set_aside:
        return _set_aside(state, asked, near, facts)
    doing = asked.step.operation if asked.step else None
    verdict = _with(_decide(state, asked, near, facts), fault_findings(state, near.now, doing))
    cold = cold_joint(state, facts) if verdict.answer in MAY_ACT else None
    if cold is None:
        return verdict
    return _with(
        replace(verdict, answer=Answer.TEST, because=cold.sentence, binds=cold, wait=None), (cold,)
    )


def _set_aside(state: ZoneState, asked: Asked, near: Around, facts: Facts) -> Verdict:
    """Say what it needs once it is taken up again; until then no alarm comes from it."""
    then = decide(replace(state, set_aside=False), asked, near, facts)
    if then.answer in {Answer.GO, Answer.DONE, Answer.SCUFF}:
        needs = "scuff it first" if then.scuff_first else "go on"
    else:
        needs = f"{then.answer.value}{', then scuff' if then.scuff_first else ''}: {then.because}"
    return Verdict(Answer.SET_ASIDE, needs, scuff_first=then.scuff_first, fault=then.fault)


def _decide(state: ZoneState, asked: Asked, near: Around, facts: Facts) -> Verdict:
    standing = _standing(state, near.now, facts)
    stopped = running(state, near.now) or standing or waits_for_repair(state)
    if stopped:
        return stopped
    held = held_by_glue(state, _operation(asked), near.now, facts)
    if held:
        return held
    if asked.step is None and asked.over is None:
        done = Verdict(Answer.DONE, "every step is behind" if state.progress.steps else "no steps")
        return to_mend(state, near.now) or coat_while_wiped(state, done, near.now, facts)
    if asked.over is None:
        assert asked.step is not None
        return _work(state, asked.step.operation, near, facts)
    coat = _coat(state, asked.over, asked.method, near, facts)
    met = met_in_the_wood(state.entries, asked.comes, facts, done=False) if asked.comes else None
    if met is None or met.level is not Level.STOP:
        return _with(coat, (met,) if met else ())
    return replace(_bound_by(Answer.UNDERNEATH, met), findings=(met, *coat.findings))


def decide_coat(
    state: ZoneState, over: FinishClass, method: Method | None, near: Around, facts: Facts
) -> Verdict:
    """Give the verdict on a coat that is going on whatever else is due; nothing is left unsaid."""
    coat = _coat(state, over, method, near, facts)
    stopped = (
        _standing(state, near.now, facts)
        or waits_for_repair(state)
        or held_by_glue(state, Operation.COAT, near.now, facts)
    )
    findings = (*coat.findings, *fault_findings(state, near.now))
    return _with(stopped, findings) if stopped else replace(coat, findings=findings)


def _operation(asked: Asked) -> Operation:
    """Name what is asked; where nothing is, only the clamps matter."""
    if asked.step is not None:
        return asked.step.operation
    return Operation.COAT if asked.over is not None else Operation.MASK


def _standing(state: ZoneState, now: datetime, facts: Facts) -> Verdict | None:
    """Return what holds whatever is asked next: set aside, a suspect or a dead film."""
    if state.set_aside:
        return Verdict(Answer.SET_ASIDE, "set aside")
    top = state.top
    if top is None:
        return None
    cold = next((layer for layer in state.layers if is_suspect(layer)), None)
    if cold is not None:
        because, finding = damage_words(cold)
        return _bound_by(Answer.SUSPECT, finding, because)
    wrong = fault_in_the_stack(state.layers, facts, on_wood=state.old_finish is None)
    if wrong is not None:
        wrong = replace(wrong, remedy="scratch a hidden spot; if it flakes, take it off")
        return _bound_by(Answer.UNDERNEATH, wrong)
    return _stalled(top, facts, hot=is_hot(state.room, now, facts))


def _stalled(top: Layer, facts: Facts, *, hot: bool) -> Verdict | None:
    """Return the verdict on a film that failed again and again when it was long due."""
    failures = film_checks.standing_failures(top.checks)
    if not failures:
        return None
    found = failures[-1].found
    if past_hope(top):
        return _past_hope(found)
    slow = timedelta(hours=facts.drying.slow_after_h.value)
    figure = top.coat.figures.stages.get(film_checks.DENIES[found])
    due = top.label_waits(figure).high if figure else top.put_on
    if due is None or not film_checks.stalled(top.checks, max(due, top.put_on + slow), slow):
        return None
    return _bound_by(
        Answer.STALLED,
        Finding(
            Level.STOP,
            "no progress over repeated checks: more time alone may not cure it",
            f"{'cool' if hot else 'warm'} and change the air ({NO_FLAME}); if it does not "
            "change, take it off",
            facts.drying.slow_after_h.source,
        ),
        f"still {found.value}, and no better than before",
    )


def _past_hope(found: Found) -> Verdict:
    """Return the verdict on a film that is soft when it might be fully hard."""
    return _bound_by(
        Answer.STALLED,
        Finding(
            Level.STOP,
            "more waiting is unlikely to help it now",
            "take it off, and begin again",
            COMMON_PRACTICE,
        ),
        f"still {found.value} when by its class it might be fully hard",
    )


def _blocked(state: ZoneState, stage: Stage) -> Verdict | None:
    failure = film_checks.blocking(state.checks, stage)
    if failure is None:
        return None
    return _bound_by(
        Answer.BLOCKED,
        Finding(
            Level.STOP,
            f"the {failure.test.value} check found it {failure.found.value}",
            "check again later; a failed check beats the clock",
        ),
        f"{failure.test.value} failed: {failure.found.value}",
    )


def _work(state: ZoneState, operation: Operation, near: Around, facts: Facts) -> Verdict:
    """Give the verdict on work by hand."""
    poison = dust_of_bleach(state.entries, operation, facts)
    if poison is not None:
        return _bound_by(Answer.UNDERNEATH, poison)
    verdict = _film_allows(state, operation, near.now)
    old = state.old_finish if operation in ABRADES and not state.layers else None
    if old and verdict.answer in MAY_ACT:
        lead = finding_of_sanding(old)
        verdict = replace(verdict, answer=Answer.TEST, because=lead.sentence, findings=(lead,))
    if operation in ABRADES and verdict.answer in MAY_ACT:
        return _dust(state, near) or verdict
    return verdict


def _film_allows(state: ZoneState, operation: Operation, now: datetime) -> Verdict:
    stage, top = NEEDS.get(operation), state.top
    if stage is None or top is None:
        return Verdict(Answer.GO, "nothing under it has to dry")
    blocked = _blocked(state, stage) or blocked_by_fault(state, stage, now, operation)
    if blocked:
        return blocked
    time = state.stages.get(stage)
    if time is None:
        return Verdict(Answer.TEST, f"no figure for {shown(stage)} of {top.of.name}")
    return by_time(time, now, shown(stage)) or Verdict(
        Answer.GO, f"{shown(stage)} reached", time.low, time.high, wait=time
    )


def _dust(state: ZoneState, near: Around) -> Verdict | None:
    wet = near.other_face(state)
    if wet is not None:
        return _after(wet, f"{wet.what} must bear turning first")
    wet = near.spoilt_by_dust(state)
    if wet is not None:
        dust = f"dust would settle in the wet film of {wet.what}"
        return _after(replace(wet, what=f"{wet.what} to be dust-free"), dust)
    return None


def _after(wet: Wet, because: str, timed: Verdict | None = None) -> Verdict:
    return Verdict(
        Answer.WAITS,
        because,
        high=wet.until,
        closes=timed.closes if timed else None,
        waits_for=wet.what,
        wait=wet.wait,
    )


def _coat(
    state: ZoneState, over: FinishClass, method: Method | None, near: Around, facts: Facts
) -> Verdict:
    """Give the verdict on one more coat."""
    under = _underneath(state, over, method, near.now, facts)
    under = after_the_wipe(under, state, near.now, facts)
    iron = steel_wool_findings(state, over, facts)
    surplus = surplus_doubt(state, near.now)
    air = air_findings(over, method, state.room, near.now, facts.drying, state.stays, state.entries)
    # Wood too wet asks for a sample first, as doubtful air does.
    air = (*air, *moisture_findings(state, near.now, facts))
    lit = _lit(state, over, near.now)
    findings = (*under.findings, *iron, *([surplus] if surplus else ()), *air, *lit)
    blocked = _blocked(state, Stage.RECOAT) or blocked_by_fault(state, Stage.RECOAT, near.now)
    if blocked:
        return _with(blocked, findings)
    if under.forbids or iron:
        stop = next(f for f in findings if f.level is Level.STOP)
        return replace(_bound_by(Answer.UNDERNEATH, stop), findings=findings)
    timed = by_the_clocks(state, over, under, near.now)
    if timed.answer not in MAY_ACT:
        return _with(timed, findings)
    verdict = _now(state, over, timed, under, air, near, facts)
    verdict = _warming_up(state, over, verdict, near, facts)
    burns = next((f for f in lit if f.level is Level.STOP), None)
    if burns is not None and verdict.answer in MAY_ACT:
        heat = state.room.heater_between(near.now, vapour_until(over, near.now))
        high = heat.end if heat else None
        verdict = replace(_bound_by(Answer.WAITS, burns), high=high, waits_for=_out(state.room))
        return replace(verdict, findings=findings)
    return _with(coat_while_wiped(state, verdict, near.now, facts), findings)


def _underneath(
    state: ZoneState, over: FinishClass, method: Method | None, now: datetime, facts: Facts
) -> Underneath:
    """Ask what lies there about one more coat: the layers, then the wood or an old finish."""
    old = state.old_finish
    under = look_through(state.layers, over, state.species, facts, now, method, on_wood=old is None)
    found = findings_over(old, state.entries)
    wants_test = under.wants_test or bool(found)
    return replace(under, findings=(*under.findings, *found), wants_test=wants_test)


def _out(room: RoomAir) -> str:
    return f"{WHAT[room.heater]} to be out" if room.heater else "the heater to be out"


def _lit(state: ZoneState, over: FinishClass, now: datetime) -> tuple[Finding, ...]:
    """Return what speaks against vapour that burns beside the heater that is on record."""
    heat = state.room.heater_between(now, vapour_until(over, now))
    found = lit_by((over,), state.room.heater, heat, state.room.name)
    return (found,) if found else ()


def _warming_up(
    state: ZoneState, over: FinishClass, verdict: Verdict, near: Around, facts: Facts
) -> Verdict:
    """Hold a coat back from wood that was just carried in from the cold."""
    until = cold_wood_until(over, state.room, near.now, facts.drying, state.stays)
    if until is None or verdict.answer not in MAY_ACT:
        return verdict
    because = "the wood is still cold from where it stood"
    return _after(Wet("the wood to warm up", until), because, verdict)


def _now(
    state: ZoneState,
    over: FinishClass,
    timed: Verdict,
    under: Underneath,
    air: tuple[Finding, ...],
    near: Around,
    facts: Facts,
) -> Verdict:
    """Give the verdict once the clocks allow a coat: the other face, the air, the dust, doubts."""
    wet = near.other_face(state)
    if wet is not None:
        return _after(wet, f"{wet.what} must bear turning first", timed)
    stop = next((f for f in air if f.level is Level.STOP), None)
    if stop:
        margin, felt = facts.drying.dew_margin_c.value, felt_lately(state.entries)
        high = allowed_from(over.limits, margin, state.room, near.now, felt)
        answer = Answer.NOT_IN_THIS_AIR
        return replace(
            timed, answer=answer, because=stop.sentence, high=high, binds=stop, wait=None
        )
    unsure, doubt = _unsure(state, under, air, facts)
    if unsure and timed.answer is not Answer.TEST:
        return replace(timed, answer=Answer.TEST, because=unsure, binds=doubt, wait=None)
    dusty = _dust(state, near) if timed.answer is Answer.SCUFF else None
    if dusty is not None:
        return dusty
    return timed


def _not_proven_through(top: Layer | None) -> str:
    """Say what a film met that its hours do not show: dry on top only, until it sands to powder."""
    if top is None or not top.of.builds_film or Stage.SAND not in top.coat.figures.stages:
        return ""
    met = top.wet_outside_limits()
    proved = any(c.found is Found.POWDER for c in top.checks)
    if met is None or proved or top.coat.figures.window.kind is WindowKind.MELTS_IN:
        return ""
    air = next(a for a in met.nearest if outside(top.of.limits, a.temperature_c, a.humidity_pct))
    return (
        f"it met {celsius(air.temperature_c)}, {air.humidity_pct:.0f} % RH while wet: sand a spot, "
        "it has to powder"
    )


def _bound_by(answer: Answer, finding: Finding, because: str = "") -> Verdict:
    """Return the verdict of the finding that binds; `because`: in fewer words than its own."""
    return Verdict(answer, because or finding.sentence, findings=(finding,), binds=finding)


def _with(verdict: Verdict, findings: tuple[Finding, ...]) -> Verdict:
    return replace(verdict, findings=(*verdict.findings, *findings))


def _unsure(
    state: ZoneState, under: Underneath, air: tuple[Finding, ...], facts: Facts
) -> tuple[str, Finding | None]:
    """Return what asks for a test first, and the finding that does where one does; else ''."""
    cold = next((c for layer in state.layers if (c := perhaps_too_cold(layer))), None)
    if cold is not None:
        return f"it may have met {celsius(cold)} in its first hours: scratch it", None
    fault = patch_due(state.entries, facts)
    if fault is not None:
        return f"after {fault.what.value}: coat a small patch first, scratch it: it holds?", None
    through = _not_proven_through(state.top)
    if through:
        return through, None
    if under.wants_test:
        return "what is underneath is not sure to take it", _caution(under.findings)
    doubtful = _caution(air)
    if doubtful is not None:
        return doubtful.sentence, doubtful
    top = state.top
    prints = top and any(c.found is Found.PRINTS for c in film_checks.standing_failures(top.checks))
    if prints and top and top.coat.figures.window.kind is not WindowKind.MELTS_IN:
        return "it still prints", None
    return "", None


def _caution(found: Iterable[Finding]) -> Finding | None:
    return next((f for f in found if f.level is Level.CAUTION), None)
