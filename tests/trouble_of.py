"""A shop where things go wrong: faults, and films that come off again, told in a few words."""

from __future__ import annotations

from finishlog.core.log.entries import Coat, Fault, Joined, Stripped
from finishlog.core.log.words import FaultKind, Stripping
from finishlog.core.shop.things import Part
from tests.shop_of import Hour, Story


class Trouble(Story):
    """A story in which a film may go wrong and come off."""

    def fault(
        self,
        hour: Hour,
        kind: FaultKind,
        on: Part | None = None,
        *,
        face: str | None = None,
        place: str = "",
    ) -> Fault:
        """Find something wrong with a film."""
        head = self._head(hour, self._reach(on, face, None))
        return self._happened(Fault(**head, what=kind, place=place))

    def off(
        self,
        hour: Hour,
        to: Coat | None = None,
        on: Part | None = None,
        *,
        how: Stripping = Stripping.STRIP,
        face: str | None = None,
        note: str = "",
    ) -> Stripped:
        """Take a film off: down to a coat, or to bare wood."""
        head = self._head(hour, self._reach(on, face, None))
        survives = None if to is None else to.id
        return self._happened(Stripped(**head, operation=how, survives=survives, note=note))

    def glue_again(self, hour: Hour, assembly: Part, member: Part) -> Joined:
        """Glue all pieces of one part up into an assembly once more."""
        head = self._head(hour, self._reach(member, None, None))
        ids = frozenset(piece.id for piece in member.pieces)
        return self._happened(Joined(**head, into=assembly.pieces[0].id, members=ids))


def door(*steps: object, **options: object) -> Trouble:
    """Tell of one door in steady air that is read all the time."""
    story = Trouble()
    story.part("door", *steps, **options)  # type: ignore[arg-type]
    story.steady(since=-12.0)
    return story
