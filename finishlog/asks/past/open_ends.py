"""What is still open on pieces that are about to leave: said, never forbidden."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import UTC, datetime

from msgspec.structs import replace

from finishlog.asks.bench.on import step_words
from finishlog.asks.bench.open_cans import open_mixes
from finishlog.asks.look.look import Look
from finishlog.core.bench.milestones import milestone
from finishlog.core.film.checks import standing_failures
from finishlog.core.findings import OVER_ITS_LIMIT, Act, Answer, Finding, Level, also, finding
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Target
from finishlog.core.log.shown_times import wait_until
from finishlog.core.mixing.containers import Lid
from finishlog.core.rules.film.put_to_use import hard_before_use
from finishlog.core.safety.hazards import hazards_of
from finishlog.core.verdict.edges import follows_its_faces
from finishlog.core.zone.around import around
from finishlog.core.zone.asked import Asked
from finishlog.core.zone.grouping import describe, labels_of
from finishlog.core.zone.state import ZoneState

_NEVER = datetime.max.replace(tzinfo=UTC)
_WRONG = {Answer.STALLED, Answer.SUSPECT, Answer.UNDERNEATH, Answer.DEADLINE}


def open_ends(then: Look, targets: frozenset[Target]) -> tuple[Finding, ...]:
    """Return what speaks against handing these zones over, as of `then`; what is worst first."""
    mine = [z for z in then.bench.zones if z.target in targets and not z.is_bare_joint]
    found = (
        *_rags(then, targets),
        *_films(mine),
        *_not_hard(mine, then),
        *_doubtful(mine),
        *_not_at_pack(mine, then),
        *_steps(mine, then),
        *_tape_and_glue(mine, then),
        *_mixes(mine, then),
        *_nuts(mine, then),
    )
    order = {Level.STOP: 0, Level.CAUTION: 1, Level.NOTE: 2}
    return tuple(sorted(dict.fromkeys(found), key=lambda f: order[f.level]))


def _named(states: Iterable[ZoneState]) -> str:
    """Name the parts that some zones belong to."""
    by_part: dict[int, list[ZoneState]] = {}
    for state in states:
        by_part.setdefault(state.part.id, []).append(state)
    return ", ".join(
        describe(found[0].part, sorted({s.piece.number for s in found}), ())
        for found in by_part.values()
    )


def _of_parts(found: Mapping[Finding, Sequence[ZoneState]]) -> Iterator[Finding]:
    """Yield findings with the parts that each is about; of none, none."""
    for each, states in found.items():
        if states:
            yield also(each, parts=_named(states))


def _rags(then: Look, targets: frozenset[Target]) -> Iterator[Finding]:
    for item in then.bench.rags:
        if item.is_open and item.targets & targets:
            yield finding(
                "rags-left",
                Level.STOP,
                COMMON_PRACTICE,
                of=item.product,
                state=item.state.value,
            )


def _films(mine: Sequence[ZoneState]) -> Iterator[Finding]:
    """Yield failed checks, faults and films that should not be there."""
    wrong: dict[Finding, list[ZoneState]] = {}
    binding: dict[Finding, list[ZoneState]] = {}
    for state in mine:
        for check in standing_failures(state.checks):
            failed = finding(
                "goes-with-failed-check",
                Level.STOP,
                test=check.test.value,
                found=check.found.value,
                place=check.place,
            )
            wrong.setdefault(failed, []).append(state)
        for fault in state.faults:
            stands = finding("goes-with-fault", Level.STOP, fault=fault.name)
            wrong.setdefault(stands, []).append(state)
        if state.verdict.answer in _WRONG:
            binding.setdefault(state.verdict.binds, []).append(state)
    yield from _of_parts(wrong)
    for binds, states in binding.items():
        on = finding("goes-with", Level.STOP, parts=_named(states), answer_is=binds.answer)
        yield replace(on, because_of=binds)


def _doubtful(mine: Sequence[ZoneState]) -> Iterator[Finding]:
    """Yield what asks for a test of a film that may never be fit to leave, and where it is over."""
    together: dict[Finding, list[ZoneState]] = {}
    for state in mine:
        for each in state.handling[Stage.PACK].findings if state.layers else ():
            if each.by_test or each.rule == OVER_ITS_LIMIT:
                together.setdefault(each, []).append(state)
    for each, states in together.items():
        yield replace(each, on=labels_of(states))


def _not_at_pack(mine: Sequence[ZoneState], then: Look) -> Iterator[Finding]:
    """Yield the pieces that must not be wrapped yet, each once, by the slowest of its films."""
    latest: dict[int, tuple[datetime, Finding]] = {}
    now, clock = then.bench.now, then.clock
    for state in mine:
        pack = milestone([state], Stage.PACK)
        if pack is None or pack.blocked or pack.reached(now):
            continue
        if pack.high is not None and pack.high > now:
            until = wait_until(pack.high, clock.now, clock.zone)
            found = finding("packed-too-soon", Level.CAUTION, COMMON_PRACTICE, until=until)
        else:
            rule = "packed-by-label" if pack.high else "packed-undated"
            found = finding(rule, Level.CAUTION, COMMON_PRACTICE)
        dated = (pack.high or _NEVER, found)
        latest[state.piece.id] = max(dated, latest.get(state.piece.id, dated), key=_date)
    together: dict[Finding, list[ZoneState]] = {}
    for state in mine:
        if state.piece.id in latest:
            together.setdefault(latest[state.piece.id][1], []).append(state)
    yield from _of_parts(together)


def _not_hard(mine: Sequence[ZoneState], then: Look) -> Iterator[Finding]:
    """Yield what food or a child would touch before it is fully hard."""
    bench, clock = then.bench, then.clock
    near = around(mine, bench.now, then.facts, bench.products, masks=bench.masks)
    together: dict[Finding, list[ZoneState]] = {}
    for state in mine:
        for soft in hard_before_use.find(state, Asked(Act.HAND_OVER), near):
            until = wait_until(soft.high, clock.now, clock.zone) if soft.high else ""
            found = finding("goes-not-hard", soft.level, soft.source, until=until)
            together.setdefault(replace(found, because_of=soft), []).append(state)
    yield from _of_parts(together)


def _date(dated: tuple[datetime, Finding]) -> datetime:
    return dated[0]


def _steps(mine: Sequence[ZoneState], then: Look) -> Iterator[Finding]:
    to_come: dict[Finding, list[ZoneState]] = {}
    aside: list[ZoneState] = []
    for state in (s for s in mine if not follows_its_faces(s)):
        left = state.progress.steps[state.progress.done :]
        if left:
            words = tuple(step_words(step, then.shop) for step in left)
            left_out = finding("steps-left-out", Level.CAUTION, steps=words)
            to_come.setdefault(left_out, []).append(state)
        if state.set_aside:
            aside.append(state)
    bare = [s for s in mine if not s.layers and not s.progress.steps and not s.entries]
    to_come[finding("goes-set-aside", Level.CAUTION)] = aside
    to_come[finding("goes-bare")] = bare
    yield from _of_parts(to_come)


def _tape_and_glue(mine: Sequence[ZoneState], then: Look) -> Iterator[Finding]:
    taped = [s for s in mine if s.masked_since]
    yield from _of_parts({finding("goes-taped", Level.CAUTION): taped})
    pieces = {s.member_piece.id for s in mine}
    for glue in then.bench.glue_ups:
        if pieces & set(glue.members):
            yield finding("goes-unglued", Level.CAUTION, part=glue.part.called)


def _mixes(mine: Sequence[ZoneState], then: Look) -> Iterator[Finding]:
    used = {layer.coat.container for state in mine for layer in state.layers}
    names = {can.name for can in then.shop.containers.values() if can.id in used}
    for mix in open_mixes(then):
        if mix.name in names:
            level = Level.NOTE if mix.lid is Lid.CLOSED else Level.CAUTION
            yield finding("mix-left-open", level, can=mix.name, lid=mix.lid.value)


def _nuts(mine: Sequence[ZoneState], then: Look) -> Iterator[Finding]:
    """Yield the oils of nuts that went on: whoever is allergic has to be told."""
    coats = {layer.coat.id: layer.coat for state in mine for layer in state.layers}.values()
    pressed = (c for c in coats if Hazard.NUT_OIL in hazards_of(c, then.shop, then.facts))
    for name in dict.fromkeys(coat.product_name for coat in pressed):
        yield finding("goes-with-nut-oil", Level.CAUTION, COMMON_PRACTICE, of=name)
