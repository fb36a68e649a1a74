"""One zone as it stands: its layers, how far along its steps, when its film reaches each stage."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import reduce
from itertools import pairwise

from msgspec import Struct, field

from finishlog.core.air.met import Stay
from finishlog.core.air.room import RoomAir
from finishlog.core.film.attempts import Attempt, attempts_before
from finishlog.core.film.checks import held
from finishlog.core.film.faults import StandingFault
from finishlog.core.film.grip import covers
from finishlog.core.film.layers import Layer, trapped_until
from finishlog.core.film.old_finish import still_on
from finishlog.core.film.progress import Progress
from finishlog.core.finish.stage_time import StageTime, later
from finishlog.core.finish.stages import HANDLING, Stage
from finishlog.core.log.entries import AnyEntry, Check, HandedOver, Joined, Target
from finishlog.core.log.when import When
from finishlog.core.published.care import UsedFor
from finishlog.core.shop.things import Face, FaceKind, OldFinish, Part, Piece, Zone
from finishlog.core.zone.verdict import NOT_ASKED, Told, Verdict


class FilmStages(Mapping[Stage, StageTime]):
    """When the whole film reaches each stage, worked out as it is asked for.

    Every layer must have reached it; a stage for which the top layer has no figure is missing.
    """

    def __init__(self, layers: Sequence[Layer] = (), *, shuts: bool = False) -> None:
        self._layers = layers
        # It slides or shuts against another face: a film that is not fully hard sticks there.
        self._shuts = shuts and any(layer.of.builds_film for layer in layers)
        self._known: dict[Stage, StageTime | None] = {}

    def __getitem__(self, stage: Stage) -> StageTime:
        if stage not in self._known:
            waits = self._shuts and stage is Stage.CLOSE and Stage.CURED in self
            self._known[stage] = self[Stage.CURED] if waits else self._work_out(stage)
        time = self._known[stage]
        if time is None:
            raise KeyError(stage)
        return time

    def __iter__(self) -> Iterator[Stage]:
        return (stage for stage in Stage if stage in self)

    def __len__(self) -> int:
        return sum(1 for _ in self)

    def _work_out(self, stage: Stage) -> StageTime | None:
        if not self._layers:
            return None
        top = self._layers[-1].stage(stage)
        # A passed check speaks for all below it.
        if top is None or top.proved_by:
            return top
        if stage in {Stage.RECOAT, Stage.SAND}:
            # What is done to the surface asks the top layer, and what was covered too early.
            below = [trapped_until(under, over) for under, over in pairwise(self._layers)]
        else:
            below = [_covered(layer, stage) for layer in self._layers[:-1]]
        return reduce(later, [time for time in (*self._before(stage), *below, top) if time])

    def _before(self, stage: Stage) -> Iterator[StageTime]:
        """Yield the stages that a film has passed by the time that nothing is left to wait for."""
        last = (Stage.PACK, Stage.CLOSE, Stage.LIGHT_USE, Stage.RUB) if stage is Stage.CURED else ()
        return (time for each in last if (time := self._work_out(each)))


def _covered(layer: Layer, stage: Stage) -> StageTime | None:
    """Return when a covered layer bears a stage of handling.

    A stain or a glaze has no figure for packing: it must at least bear what comes before that.
    """
    if stage not in HANDLING:
        return layer.stage(stage)
    so_far = HANDLING[: HANDLING.index(stage) + 1]
    return next((time for each in reversed(so_far) if (time := layer.stage(each))), None)


class ZoneState(Struct, frozen=True):
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
    # The glue-up that made it part of an assembly; since when tape is on it.
    joined_by: Joined | None = None
    masked_since: When | None = None
    # Everything that reached it, in the order of the work; the faults that nothing has answered.
    entries: Sequence[AnyEntry] = ()
    faults: tuple[StandingFault, ...] = ()
    # Since when its piece is out of the shop (core.bench.hand_over); None: it is here.
    handed_over: HandedOver | None = None
    # A sample board whose piece left: kept to look at, it asks for nothing.
    kept: bool = False
    # Who will use it, where that decides how hard it must be.
    used_for: UsedFor | None = None
    # The rooms that its piece stood in, one after the other; the last is `room`.
    stays: tuple[Stay, ...] = ()
    stages: Mapping[Stage, StageTime] = field(default_factory=FilmStages)
    told: Told = NOT_ASKED
    # The same of the coat that comes next, also behind other work; of no coat: what the film says.
    told_of_coat: Told = NOT_ASKED
    # The verdict on each stage of handling (core.verdict.handling); empty until it is judged.
    handling: Mapping[Stage, Verdict] = field(default_factory=dict)

    @property
    def verdict(self) -> Verdict:
        """May the next step be done? Worked out as it is asked for."""
        return self.told.verdict

    @property
    def recoat(self) -> Verdict:
        """May the coat that comes next go on? It is the verdict where that coat is the step due."""
        return self.told_of_coat.verdict

    @property
    def is_here(self) -> bool:
        """Tell whether the day is about it: neither handed over nor a board kept to look at."""
        return self.handed_over is None and not self.kept

    @property
    def joined(self) -> bool:
        """Tell whether the piece is glued up into an assembly."""
        return self.piece.id != self.member_piece.id

    @property
    def old_finish(self) -> OldFinish | None:
        """The old finish that still lies on it, under whatever was put on since."""
        kept_bare = self.face.kind is FaceKind.JOINT
        return None if kept_bare else still_on(self.member.old_finish, self.entries)

    @property
    def is_bare_wood(self) -> bool:
        """Tell whether the wood lies open: no coat is on it, and no old finish."""
        return not self.layers and self.old_finish is None

    @property
    def wood_lies_open(self) -> bool:
        """Tell whether wood may lie open somewhere: no finished coat covers it, no old finish."""
        covered = any(covers(layer) for layer in self.layers)
        return not covered and self.old_finish is None

    @property
    def coats(self) -> tuple[Layer, ...]:
        """The layers that cover it: a coat that was broken off is a film, and no coat."""
        return tuple(layer for layer in self.layers if layer.coat.is_whole)

    @property
    def earlier(self) -> tuple[Layer, ...]:
        """The layers that lie below: none of these steps asked for them."""
        if not self.progress.steps:
            return ()
        aside = {entry.id for entry in self.progress.aside}
        asked = (n for n, layer in enumerate(self.layers) if layer.coat.id not in aside)
        return self.layers[: next(asked, len(self.layers))]

    @property
    def lying_open(self) -> Iterator[Layer]:
        """The layers that the next coat may meet: the top, and what it left open.

        One that was broken off did, and one that only fills holes.
        """
        for layer in reversed(self.layers):
            yield layer
            if covers(layer):
                return

    @property
    def is_bare_joint(self) -> bool:
        """Tell whether it is a glue face as it should be: with nothing on it."""
        return self.face.kind is FaceKind.JOINT and not self.layers

    @property
    def checks(self) -> tuple[Check, ...]:
        """Every check of the film, on whatever layer, in the order they were made."""
        return tuple(check for layer in self.layers for check in layer.checks)

    @property
    def held(self) -> tuple[tuple[Check, frozenset[Stage]], ...]:
        """The failed checks that stand, oldest first, each with the stages it keeps it from."""
        figures = {c.id: y.coat.figures.stages for y in self.layers for c in y.checks}
        return tuple(held(self.checks, lambda check: figures[check.id])) if figures else ()

    def date_of(self, stage: Stage) -> StageTime | None:
        """Return when its film reaches a stage; None: no figure tells, or a check that stands."""
        lacks = any(stage in stages for _, stages in self.held)
        return None if lacks else self.stages.get(stage)

    @property
    def attempts(self) -> tuple[Attempt, ...]:
        """The finishes that were taken off it, oldest first."""
        return attempts_before(self.entries)

    @property
    def top(self) -> Layer | None:
        """The newest layer; None in the white."""
        return self.layers[-1] if self.layers else None
