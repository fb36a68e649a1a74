"""What is still open on pieces that are about to leave: said, never forbidden."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import UTC, datetime

from msgspec.structs import replace

from finishlog.asks.bench.on import step_words
from finishlog.asks.bench.open_cans import open_mixes
from finishlog.asks.look.look import Look
from finishlog.core.bench.milestones import milestone
from finishlog.core.commands import Do
from finishlog.core.film.checks import standing_failures
from finishlog.core.findings import Answer, Finding, Level, finding, told
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Target
from finishlog.core.log.shown_times import wait_until
from finishlog.core.mixing.containers import Lid
from finishlog.core.verdict.edges import follows_its_faces
from finishlog.core.zone.grouping import describe
from finishlog.core.zone.state import ZoneState

_NEVER = datetime.max.replace(tzinfo=UTC)
_WRONG = {Answer.STALLED, Answer.SUSPECT, Answer.UNDERNEATH, Answer.DEADLINE}


def open_ends(then: Look, targets: frozenset[Target]) -> tuple[Finding, ...]:
    """Return what speaks against handing these zones over, as of `then`; what is worst first."""
    mine = [z for z in then.bench.zones if z.target in targets and not z.is_bare_joint]
    found = (
        *_rags(then, targets),
        *_films(mine),
        *_not_at_pack(mine, then),
        *_steps(mine, then),
        *_tape_and_glue(mine, then),
        *_mixes(mine, then),
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


def _rags(then: Look, targets: frozenset[Target]) -> Iterator[Finding]:
    for item in then.bench.rags:
        if item.is_open and item.targets & targets:
            yield told(
                Level.STOP,
                f"oily rags of {item.product} are {item.state.value}",
                f"they stay on the screen until something is done with them: {Do.RAGS()}",
                COMMON_PRACTICE,
            )


def _films(mine: Sequence[ZoneState]) -> Iterator[Finding]:
    """Yield failed checks, faults and films that should not be there."""
    wrong: dict[tuple[str, str], list[ZoneState]] = {}
    binding: dict[Finding, list[ZoneState]] = {}
    for state in mine:
        for check in standing_failures(state.checks):
            said = f"the last {check.test.value} check found it {check.found.value}"
            wrong.setdefault((said, "check it again before it goes"), []).append(state)
        for fault in state.faults:
            wrong.setdefault((f"{fault.name} not mended", ""), []).append(state)
        if state.verdict.answer in _WRONG:
            binding.setdefault(state.verdict.binds, []).append(state)
    for (sentence, remedy), states in wrong.items():
        yield told(Level.STOP, f"{_named(states)}: {sentence}", remedy)
    for binds, states in binding.items():
        on = finding("goes-with", Level.STOP, parts=_named(states), answer_is=binds.answer)
        yield replace(on, because_of=binds)


def _not_at_pack(mine: Sequence[ZoneState], then: Look) -> Iterator[Finding]:
    """Yield the pieces that must not be wrapped yet, each once, by the slowest of its films."""
    latest: dict[int, tuple[datetime, str]] = {}
    now, clock = then.bench.now, then.clock
    for state in mine:
        pack = milestone([state], Stage.PACK)
        if pack is None or pack.blocked or pack.reached(now):
            continue
        if pack.high is not None and pack.high > now:
            words = f"not to be packed before {wait_until(pack.high, clock.now, clock.zone)}"
        elif pack.high is None:
            words = "no date for packing in this air"
        else:
            words = "packed by label time only: the air was not measured"
        found = (pack.high or _NEVER, words)
        latest[state.piece.id] = max(found, latest.get(state.piece.id, found))
    by_words: dict[str, list[ZoneState]] = {}
    for state in mine:
        if state.piece.id in latest:
            by_words.setdefault(latest[state.piece.id][1], []).append(state)
    for words, states in by_words.items():
        remedy = "nothing may touch it until then but air: no wrap, no blanket, no stacking"
        yield told(Level.CAUTION, f"{_named(states)}: {words}", remedy, COMMON_PRACTICE)


def _steps(mine: Sequence[ZoneState], then: Look) -> Iterator[Finding]:
    to_come: dict[tuple[str, ...], list[ZoneState]] = {}
    aside: list[ZoneState] = []
    for state in (s for s in mine if not follows_its_faces(s)):
        left = state.progress.steps[state.progress.done :]
        if left:
            words = tuple(step_words(step, then.shop) for step in left)
            to_come.setdefault(words, []).append(state)
        if state.set_aside:
            aside.append(state)
    for words, states in to_come.items():
        yield told(Level.CAUTION, f"{_named(states)}: still to come: {', '.join(words)}")
    if aside:
        yield told(Level.CAUTION, f"{_named(aside)}: set aside")
    bare = [s for s in mine if not s.layers and not s.progress.steps and not s.entries]
    if bare:
        yield told(Level.NOTE, f"{_named(bare)}: no finish on record")


def _tape_and_glue(mine: Sequence[ZoneState], then: Look) -> Iterator[Finding]:
    taped = [s for s in mine if s.masked_since]
    if taped:
        yield told(Level.CAUTION, f"{_named(taped)}: tape is still on", "take it off: untape")
    pieces = {s.member_piece.id for s in mine}
    for glue in then.bench.glue_ups:
        if pieces & set(glue.members):
            yield told(Level.CAUTION, f"{glue.part.called}: not glued up yet")


def _mixes(mine: Sequence[ZoneState], then: Look) -> Iterator[Finding]:
    used = {layer.coat.container for state in mine for layer in state.layers}
    names = {can.name for can in then.shop.containers.values() if can.id in used}
    for mix in open_mixes(then):
        if mix.name in names:
            keeps = mix.lid is Lid.CLOSED
            yield told(
                Level.NOTE if keeps else Level.CAUTION,
                f"{mix.name} still stands open",
                "empty it or keep it shut" if keeps else f"empty it, {mix.lid}",
            )
