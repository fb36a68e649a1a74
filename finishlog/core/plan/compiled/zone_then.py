"""A zone as it will stand behind some of what its story does to it, at whatever hour that was."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.air.met import air_met
from finishlog.core.bench.cans import Cans
from finishlog.core.clock.pace import Paces
from finishlog.core.film.laying import build
from finishlog.core.film.progress import progress
from finishlog.core.log.entries import AnyEntry, Joined, Target
from finishlog.core.log.when import Sureness, When
from finishlog.core.published.facts import Facts
from finishlog.core.published.species import WoodKind
from finishlog.core.rules.wood.bare_wood import kind_of_wood
from finishlog.core.zone.state import FilmStages, ZoneState


class Zones(Struct, frozen=True):
    """The zones of a story: as they stand at its beginning, and at its end, when all is glued up.

    What reached a zone by now is in its state at the beginning.
    """

    facts: Facts
    paces: Paces
    cans: Cans | None
    first: Mapping[Target, ZoneState]
    last: Mapping[Target, ZoneState]

    def then(self, target: Target, planned: Sequence[AnyEntry]) -> ZoneState:
        """Return a zone once some planned entries have reached it, in the order of the work."""
        return self._with(target, self.first[target].entries, planned)

    def bare(self, target: Target, planned: Sequence[AnyEntry]) -> ZoneState:
        """Return a zone as if nothing else than some planned entries had reached it."""
        return self._with(target, (), planned)

    def _with(
        self, target: Target, logged: Sequence[AnyEntry], planned: Sequence[AnyEntry]
    ) -> ZoneState:
        first = self.first[target]
        joined = next((e for e in reversed(planned) if isinstance(e, Joined)), None)
        of = self.last[target] if joined is not None else first
        entries = (*logged, *planned)
        shuts = of.face.meets is not None
        wood = WoodKind.OTHER
        if self.paces.learnt:
            wood = kind_of_wood(of.species, self.facts)
        layers = build(
            entries,
            self.facts,
            lambda start: air_met(of.stays, start),
            self.paces,
            wood,
            self.cans.came_from if self.cans else lambda _: None,
        )
        since = planned[planned.index(joined) + 1 :] if joined is not None else entries
        return replace(
            of,
            entries=entries,
            layers=layers,
            stages=FilmStages(layers, shuts=shuts),
            progress=progress(of.progress.steps, since, of.part.behind),
            joined_by=joined or first.joined_by,
        )


def moved(entry: AnyEntry, moment: datetime, tie: int) -> AnyEntry:
    """Return an entry as if done at a moment; `tie`: which of one moment comes first."""
    return replace(entry, when=When(moment, moment, Sureness.EXACT, tie))
