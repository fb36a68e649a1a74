"""Show alike things together: a batch is one line until its pieces differ."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Sequence
from dataclasses import dataclass

from finishlog.core.shop import FaceKind, Part
from finishlog.core.zone import ZoneState


@dataclass(frozen=True, slots=True)
class Group:
    """Zones of one part that stand alike: some pieces, some faces."""

    part: Part
    pieces: tuple[int, ...]
    faces: tuple[str, ...]
    states: tuple[ZoneState, ...]

    @property
    def first(self) -> ZoneState:
        """Any one of them stands for all."""
        return self.states[0]

    @property
    def label(self) -> str:
        """Name the group: `doors ×2, back`, `legs:1-3`."""
        return describe(self.part, self.pieces, self.faces)


def describe(part: Part, pieces: Sequence[int], faces: Sequence[str]) -> str:
    """Name some pieces and faces of a part; all of them go without saying.

    Some pieces are named as they are typed, so that a line can be typed back.
    """
    name = part.name
    if len(part.pieces) > 1:
        every = set(pieces) >= {p.number for p in part.pieces}
        name += f" ×{len(part.pieces)}" if every else f":{spans(pieces)}"
    return f"{name}, {' and '.join(faces)}" if faces else name


def spans(numbers: Iterable[int]) -> str:
    """Write numbers as spans: 1, 2, 3, 5 is `1-3,5`."""
    runs: list[list[int]] = []
    for number in sorted(set(numbers)):
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ",".join(f"{r[0]}-{r[-1]}" if len(r) > 1 else str(r[0]) for r in runs)


def standing(state: ZoneState) -> Hashable:
    """Return what makes two zones alike: the same next step, answer and times."""
    verdict, step = state.verdict, state.progress.next
    return (
        step.operation if step else None,
        step.product if step else None,
        state.progress.coat_number(step) if step else None,
        tuple(layer.coat.product for layer in state.layers),
        verdict.answer,
        verdict.because,
        verdict.low,
        verdict.high,
        verdict.closes,
        verdict.waits_for,
        state.top.coat.id if state.top else None,
    )


def groups(states: Iterable[ZoneState]) -> tuple[Group, ...]:
    """Put zones that stand alike together, in the order they come."""
    by_key: dict[Hashable, list[ZoneState]] = {}
    for state in states:
        by_key.setdefault((state.part.id, standing(state)), []).append(state)
    return tuple(_group(found) for found in by_key.values())


def _group(states: Sequence[ZoneState]) -> Group:
    part = states[0].part
    pieces = tuple(sorted({s.piece.number for s in states}))
    return Group(part, pieces, _faces(part, states), tuple(states))


def _faces(part: Part, states: Sequence[ZoneState]) -> tuple[str, ...]:
    """Name the faces where they are not all of them; of an assembly, its members too."""
    found: dict[str, None] = {}
    for state in states:
        if state.joined:
            whole = [f for f in state.member.faces if f.kind is not FaceKind.JOINT]
            alone = len(whole) == 1 and state.face in whole
            name = state.member.name if alone else f"{state.member.name} {state.face.name}"
        else:
            name = state.face.name
        if state.zone.name:
            name = f"{name} {state.zone.name}"
        found.setdefault(name)
    if any(s.joined for s in states):
        return () if len(found) > 3 else tuple(found)
    finished = {f.name for f in part.faces if f.kind is not FaceKind.JOINT}
    return () if set(found) >= finished else tuple(found)
