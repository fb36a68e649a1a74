"""One zone as it stands: its layers, how far along its steps, when its film reaches each stage."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import reduce

from finishlog.core.finishes import FinishClass, Method
from finishlog.core.layers import Layer, StageTime, later
from finishlog.core.progress import Progress
from finishlog.core.records import Target
from finishlog.core.room_air import RoomAir
from finishlog.core.shop import Face, Part, Piece, Step, Zone
from finishlog.core.stages import Stage
from finishlog.core.verdicts import Answer, Verdict


@dataclass(frozen=True, slots=True)
class ZoneState:
    """One zone of one piece: its layers, where it stands, what comes next and whether it may.

    `part` and `piece` are what the zone belongs to now: the assembly, once it is glued up into
    one. `member` and `member_piece` are what it was made as.
    """

    target: Target
    part: Part
    piece: Piece
    member: Part
    member_piece: Piece
    face: Face
    zone: Zone
    layers: tuple[Layer, ...]
    progress: Progress
    room: RoomAir
    set_aside: bool
    species: str | None
    stages: Mapping[Stage, StageTime] = field(default_factory=dict)
    verdict: Verdict = field(default_factory=lambda: Verdict(Answer.DONE, ""))

    @property
    def joined(self) -> bool:
        """Tell whether the piece is glued up into an assembly."""
        return self.piece.id != self.member_piece.id

    @property
    def top(self) -> Layer | None:
        """The newest layer; None in the white."""
        return self.layers[-1] if self.layers else None


@dataclass(frozen=True, slots=True)
class Asked:
    """What is asked of a zone: a step, or a product when the part has no steps."""

    step: Step | None
    over: FinishClass | None
    method: Method | None = None


def milestones(layers: Sequence[Layer]) -> dict[Stage, StageTime]:
    """Return when the whole film reaches each stage: every layer must have."""
    found: dict[Stage, StageTime] = {}
    for stage in Stage:
        times = [time for layer in layers if (time := layer.stage(stage))]
        top = layers[-1].stage(stage) if layers else None
        # What is done to the surface asks the top layer; a passed check speaks for all below it.
        if stage in {Stage.RECOAT, Stage.SAND} or (top and top.proved_by):
            times = [top] if top else []
        if times:
            found[stage] = reduce(later, times)
    return found
