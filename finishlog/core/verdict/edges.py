"""Edges: they get the coats and the sanding of both faces beside them, and no turn of their own.

What lies on them counts like any film. A face that may take its coat waits all the same while the
edges, which got the other face's coat an hour ago, are too young for it (common practice).
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable, Sequence
from datetime import datetime
from functools import partial

from msgspec.structs import replace

from finishlog.core.findings import Act, Answer, Level, finding
from finishlog.core.finish.classes import COMMON_PRACTICE
from finishlog.core.log.entries import Target
from finishlog.core.rules.all import findings_of
from finishlog.core.shop.things import FaceKind
from finishlog.core.verdict.fold import decide, fold
from finishlog.core.zone.around import Around
from finishlog.core.zone.asked import NOTHING, Asked
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import MAY_ACT, Told, Verdict, of

# What an edge answers of its own film; the air and the dust are the faces' to answer.
_TOO_YOUNG = frozenset({Answer.DRYING, Answer.DEAD_ZONE, Answer.BLOCKED})
_OF_ITS_FILM = _TOO_YOUNG | {
    Answer.DEADLINE,
    Answer.STALLED,
    Answer.SUSPECT,
    Answer.UNDERNEATH,
    Answer.SET_ASIDE,
}
_OF_ITS_PLACE = frozenset({Answer.WAITS, Answer.NOT_IN_THIS_AIR})
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
    states: Sequence[ZoneState],
    asked: Callable[[ZoneState], Asked],
    coat: Callable[[ZoneState], Asked],
    near: Around,
) -> tuple[ZoneState, ...]:
    """Give zones their verdicts: an edge its own, and a face waits for edges that are too young.

    `asked`: what comes next on a zone; `coat`: which coat, an edge gets that of its first face.
    """
    edges: dict[int, list[ZoneState]] = defaultdict(list)
    faces: dict[int, list[ZoneState]] = defaultdict(list)
    for state in states:
        if follows_its_faces(state):
            edges[state.target.piece].append(state)
        elif state.face.kind in {FaceKind.SHOW, FaceKind.HIDDEN}:
            faces[state.target.piece].append(state)

    def verdict(state: ZoneState) -> Verdict:
        piece = state.target.piece
        if follows_its_faces(state):
            return _edge(state, [asked(face) for face in faces.get(piece, ())], near)
        return _face(state, edges.get(piece, ()), asked(state), near)

    def recoat(state: ZoneState, told: Told) -> Verdict:
        piece = state.target.piece
        if follows_its_faces(state):
            return decide(state, coat(next(iter(faces.get(piece, ())), state)), near)
        if asked(state).over is not None:
            return told.verdict
        return _face(state, edges.get(piece, ()), coat(state), near)

    def judged(state: ZoneState) -> ZoneState:
        told = Told(partial(verdict, state))
        return replace(state, told=told, told_of_coat=Told(partial(recoat, state, told)))

    return tuple(map(judged, states))


def _edge(state: ZoneState, asked: Sequence[Asked], near: Around) -> Verdict:
    """Return what the film of an edge answers to the next coats of its faces."""
    for each in (*asked, NOTHING):
        verdict = _of_its_film(state, each, near)
        if verdict.answer in _OF_ITS_FILM:
            return verdict
    with_faces = finding("goes-with-faces", answer=Answer.DONE)
    return of(replace(with_faces, plain=True))


def _of_its_film(edge: ZoneState, asked: Asked, near: Around) -> Verdict:
    """Return what an edge answers: the air, the dust and what lies beside are the faces' to say."""
    if edge.set_aside:
        return decide(edge, asked, near)
    found = findings_of(edge, asked, near)
    return fold([f for f in found if f.answer not in _OF_ITS_PLACE], asked)


def _face(state: ZoneState, edges: Sequence[ZoneState], asked: Asked, near: Around) -> Verdict:
    verdict = decide(state, asked, near)
    if verdict.answer not in MAY_ACT or asked.act is Act.REST:
        return verdict
    for edge in edges:
        verdict = _bound_by(edge, _of_its_film(edge, asked, near), verdict)
        if verdict.answer is Answer.WAITS:
            break
    return verdict


def _later(of_face: Verdict, of_edge: Verdict) -> datetime | None:
    """Return by when a face and its edge surely are ready: the younger film decides."""
    return max((v.high for v in (of_face, of_edge) if v.high is not None), default=None)


def _bound_by(edge: ZoneState, of_edge: Verdict, of_face: Verdict) -> Verdict:
    """Join the verdict of a face with that of an edge which gets the same coat."""
    name, binds = edge.face.name, of_edge.binds
    if of_edge.answer in _HOLDS_UP:
        held = finding("edge-holds-up", source=COMMON_PRACTICE, edge=name)
        held = replace(
            held, answer=Answer.WAITS, high=of_edge.high, wait=of_edge.wait, because_of=binds
        )
        return replace(
            of_face,
            answer=Answer.WAITS,
            binds=held,
            high=of_edge.high,
            findings=(*of_face.findings, held),
        )
    is_younger = _later(of_face, of_edge) != of_face.high
    if of_edge.answer is Answer.TEST and (of_face.answer is not Answer.TEST or is_younger):
        asks = finding("edge-asks", answer=Answer.TEST, edge=name)
        asks = replace(asks, wait=of_edge.wait, because_of=binds, plain=True)
        return replace(of_face, answer=Answer.TEST, binds=asks, high=_later(of_face, of_edge))
    if of_edge.scuff_first and not of_face.scuff_first:
        scuff = finding("edge-to-scuff", Level.CAUTION, COMMON_PRACTICE, edge=name)
        return replace(of_face, findings=(*of_face.findings, scuff))
    return of_face
