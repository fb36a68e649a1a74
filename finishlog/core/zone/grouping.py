"""Show alike things together: a batch is one line until its pieces differ."""

from __future__ import annotations

from collections.abc import Collection, Hashable, Iterable, Mapping, Sequence
from typing import Self

from msgspec import Struct

from finishlog.core.film.checks import standing_failures
from finishlog.core.shop.things import FaceKind, Part, zone_among
from finishlog.core.zone.kept import kept
from finishlog.core.zone.state import ZoneState


class Label(str):
    """Some pieces and faces of a part as a line names them: `doors ×2, back`.

    `full`: with its project, `cabinet/doors ×2, back`; `uncounted`: where how many there are was
    said before, and the faces with it.
    """

    full: str
    uncounted: str

    def __new__(cls, short: str, full: str = "", uncounted: str = "") -> Self:
        """Make a label of its three forms."""
        label = super().__new__(cls, short)
        label.full, label.uncounted = full, uncounted
        return label


class Group(Struct, frozen=True):
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
    def label(self) -> Label:
        """Name the group: `doors ×2, back`, `legs:1-3`."""
        return describe(self.part, self.pieces, self.faces)


def describe(part: Part, pieces: Sequence[int], faces: Sequence[str]) -> Label:
    """Name some pieces and faces of a part; all of them go without saying.

    Some pieces are named as they are typed, so that a line can be typed back.
    """
    which, on = "", f", {' and '.join(faces)}" if faces else ""
    counted = len(part.pieces) > 1 and set(pieces) >= {p.number for p in part.pieces}
    if counted:
        which = f" ×{len(part.pieces)}"
    elif len(part.pieces) > 1:
        which = f":{spans(pieces)}"
    short = f"{part.called}{which}{on}"
    return Label(short, f"{part.path}{which}{on}", part.called if counted else short)


def typed_as(part: Part, pieces: Collection[int]) -> str:
    """Write some pieces of a part as a selector: `cabinet/legs:1-3`; all of them as the part."""
    every = set(pieces) >= {p.number for p in part.pieces}
    return part.path if every else f"{part.path}:{spans(pieces)}"


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
    """Return what makes two zones alike: the same next step, answer, times and failed checks."""
    verdict, step = state.verdict, state.progress.next
    return (
        step.operation if step else None,
        step.product if step else None,
        state.progress.coat_number(step) if step else None,
        tuple((layer.coat.product, layer.coat.stopped) for layer in state.layers),
        verdict.answer,
        verdict.binds,
        verdict.low,
        verdict.high,
        verdict.closes,
        state.top.coat.id if state.top else None,
        tuple(f.fault.id for f in state.faults),
        tuple(a.off.id for a in state.attempts),
        state.old_finish,
        kept(state),
        tuple(check.found for check in standing_failures(state.checks)),
    )


def groups(states: Iterable[ZoneState]) -> tuple[Group, ...]:
    """Put zones that stand alike together, in the order they come.

    The pieces of a group have the same zones in it: `chairs:1,3, seat` means both seats.
    """
    by_key: dict[Hashable, dict[int, list[ZoneState]]] = {}
    for state in states:
        of_pieces = by_key.setdefault((state.part.id, standing(state)), {})
        of_pieces.setdefault(state.piece.id, []).append(state)
    return tuple(group_of(found) for pieces in by_key.values() for found in _same_zones(pieces))


def labels_of(states: Iterable[ZoneState]) -> tuple[str, ...]:
    """Name zones, whether they stand alike or not: part by part, pieces of the same zones at once.

    A zone that is there twice is named once.
    """
    by_part: dict[int, dict[int, list[ZoneState]]] = {}
    for state in {s.target: s for s in states}.values():
        by_part.setdefault(state.part.id, {}).setdefault(state.piece.id, []).append(state)
    return tuple(
        group_of(found).label for pieces in by_part.values() for found in _same_zones(pieces)
    )


def _same_zones(pieces: Mapping[int, Sequence[ZoneState]]) -> Iterable[Sequence[ZoneState]]:
    """Put pieces together that stand alike in the same zones."""
    by_zones: dict[frozenset[int], list[ZoneState]] = {}
    for states in pieces.values():
        by_zones.setdefault(frozenset(s.zone.id for s in states), []).extend(states)
    return by_zones.values()


def group_of(states: Sequence[ZoneState]) -> Group:
    """Put zones of one part into one group, whether they stand alike or not."""
    part = states[0].part
    pieces = tuple(sorted({s.piece.number for s in states}))
    return Group(part, pieces, _faces(part, states), tuple(states))


def _faces(part: Part, states: Sequence[ZoneState]) -> tuple[str, ...]:
    """Name the faces where they are not all of them; of an assembly, its members too.

    Edges go with the faces: without them it is still the whole part.
    """
    if any(s.joined for s in states):
        names = dict.fromkeys(on_a_member(s, states) for s in states)
        return () if len(names) > 3 else tuple(names)
    here = {s.zone.id for s in states}
    finished = [f for f in part.faces if f.kind in {FaceKind.SHOW, FaceKind.HIDDEN}]
    if finished and here >= {z.id for f in finished for z in f.zones}:
        return ()
    return tuple(dict.fromkeys(zone_among(s.face, s.zone, here) for s in states))


def on_a_member(state: ZoneState, states: Sequence[ZoneState]) -> str:
    """Name a zone of an assembly by the member that brought it."""
    finished = [f.name for f in state.member.faces if f.kind is not FaceKind.JOINT]
    name = zone_among(state.face, state.zone, {s.zone.id for s in states})
    member = f"{state.member.called}{_which(state.member, states)}"
    return member if finished == [name] else f"{member} {name}"


def _which(member: Part, states: Sequence[ZoneState]) -> str:
    """Number the pieces of a member where the assembly holds more of it than these."""
    here = {s.member_piece.number for s in states if s.member.id == member.id}
    assembled = {s.piece.id for s in states}
    holds = sum(n.count for n in states[0].part.needs if n.part == member.id) * len(assembled)
    return f":{spans(here)}" if len(here) < holds else ""
