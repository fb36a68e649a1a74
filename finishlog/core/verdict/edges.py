"""Edges: they get the coats and the sanding of both faces beside them, and no turn of their own.

What lies on them counts like any film. A face that may take its coat waits all the same while the
edges, which got the other face's coat an hour ago, are too young for it (common practice).
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence

from msgspec.structs import replace

from finishlog.core.commands import Do
from finishlog.core.findings import Finding, Level
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.log.entries import Target
from finishlog.core.published.facts import Facts
from finishlog.core.rules.wet_nearby import Around
from finishlog.core.shop.things import FaceKind
from finishlog.core.verdict.judge import decide
from finishlog.core.zone.state import Asked, ZoneState
from finishlog.core.zone.verdict import MAY_ACT, Answer, Verdict

KEEP_OFF = f"or keep this coat off them: {Do.LOG.option(no_edges=True)}"

# What an edge answers of its own film; the air and the dust are the faces' to answer.
_TOO_YOUNG = frozenset({Answer.DRYING, Answer.DEAD_ZONE, Answer.BLOCKED})
_OF_ITS_FILM = _TOO_YOUNG | {
    Answer.DEADLINE,
    Answer.STALLED,
    Answer.SUSPECT,
    Answer.UNDERNEATH,
    Answer.SET_ASIDE,
}
_HOLDS_UP = _OF_ITS_FILM - {Answer.SET_ASIDE}


def follows_its_faces(state: ZoneState) -> bool:
    """Tell whether a zone is an edge that no step names."""
    return state.face.kind is FaceKind.EDGE and not state.progress.steps


def edges_of(states: Iterable[ZoneState], targets: Iterable[Target]) -> frozenset[Target]:
    """Return the edges that a coat or work on some faces also reaches, piece by piece."""
    wanted = frozenset(targets)
    seen = list(states)
    finished = {FaceKind.SHOW, FaceKind.HIDDEN}
    pieces = {s.target.piece for s in seen if s.target in wanted and s.face.kind in finished}
    return frozenset(
        s.target for s in seen if s.target.piece in pieces and s.face.kind is FaceKind.EDGE
    )


def with_edges(
    states: Sequence[ZoneState], asked: Mapping[Target, Asked], near: Around, facts: Facts
) -> tuple[ZoneState, ...]:
    """Give edges their verdicts, and make faces wait for edges that are too young."""
    edges: dict[int, list[ZoneState]] = defaultdict(list)
    faces: dict[int, list[ZoneState]] = defaultdict(list)
    for state in states:
        if follows_its_faces(state):
            edges[state.target.piece].append(state)
        elif state.face.kind in {FaceKind.SHOW, FaceKind.HIDDEN}:
            faces[state.target.piece].append(state)
    if not edges:
        return tuple(states)
    return tuple(
        _edge(state, [asked[f.target] for f in faces[state.target.piece]], near, facts)
        if follows_its_faces(state)
        else _face(state, edges.get(state.target.piece, ()), asked[state.target], near, facts)
        for state in states
    )


def _edge(state: ZoneState, asked: Sequence[Asked], near: Around, facts: Facts) -> ZoneState:
    """Return an edge with what its own film answers to the next coats of its faces."""
    nothing = Asked(None, None)
    for each in (*asked, nothing):
        verdict = decide(state, each, near, facts)
        if verdict.answer in _OF_ITS_FILM:
            return replace(state, verdict=verdict)
    return replace(state, verdict=Verdict(Answer.DONE, "goes with its faces"))


def _face(
    state: ZoneState, edges: Sequence[ZoneState], asked: Asked, near: Around, facts: Facts
) -> ZoneState:
    if state.verdict.answer not in MAY_ACT:
        return state
    verdict = state.verdict
    for edge in edges if asked.step or asked.over else ():
        verdict = _bound_by(edge, decide(edge, asked, near, facts), verdict)
        if verdict.answer is Answer.WAITS:
            break
    return replace(state, verdict=verdict)


def _bound_by(edge: ZoneState, of_edge: Verdict, of_face: Verdict) -> Verdict:
    """Join the verdict of a face with that of an edge which gets the same coat."""
    name = edge.face.name
    if of_edge.answer in _HOLDS_UP:
        finding = Finding(
            Level.NOTE, f"what goes on the face runs over {name} too", KEEP_OFF, COMMON_PRACTICE
        )
        return replace(
            of_face,
            answer=Answer.WAITS,
            because=f"{name}: {of_edge.because}",
            high=of_edge.high,
            waits_for=name,
            findings=(*of_face.findings, finding),
            binds=finding,
            wait=of_edge.wait,
            fault=None,
        )
    if of_edge.answer is Answer.TEST and of_face.answer is not Answer.TEST:
        return replace(
            of_face, answer=Answer.TEST, because=f"{name}: {of_edge.because}", wait=of_edge.wait
        )
    if of_edge.scuff_first and not of_face.scuff_first:
        finding = Finding(Level.CAUTION, f"{name} must be scuffed first", KEEP_OFF, COMMON_PRACTICE)
        return replace(of_face, findings=(*of_face.findings, finding))
    return of_face
