"""What is around a zone: the moment, the facts, other faces of its piece, wet films in its room."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from enum import StrEnum
from functools import reduce

from msgspec import Struct

from finishlog.core.film import checks as film_checks
from finishlog.core.film.damage import is_suspect
from finishlog.core.film.from_can import undated
from finishlog.core.film.lessons import Lessons
from finishlog.core.finish.classes import FinishClass, Range
from finishlog.core.finish.hazard import Hazard
from finishlog.core.finish.stage_time import StageTime, later
from finishlog.core.finish.stages import Stage
from finishlog.core.published.facts import Facts
from finishlog.core.shop.own_rules import Own, OwnRule, most_at_once_um
from finishlog.core.shop.respirators import Mask
from finishlog.core.shop.things import FaceKind, Product
from finishlog.core.zone.state import ZoneState


class WetDoubt(StrEnum):
    """Why no clock speaks for a wet film."""

    NONE = ""
    CHECK = "failed a check"
    SUSPECT = "is suspect"


class Wet(Struct, frozen=True):
    """Something wet, by name, and until when (None: no date in this air), by which clock.

    `doubt`: why no date tells when it is ready.
    """

    name: str
    until: datetime | None
    doubt: WetDoubt = WetDoubt.NONE
    wait: StageTime | None = None


class Around(Struct, frozen=True):
    """The zones as looked at from one of them."""

    by_piece: Mapping[int, Sequence[ZoneState]]
    wet_films: Mapping[int | None, Sequence[tuple[ZoneState, datetime | None]]]
    now: datetime
    facts: Facts
    # As the person knows them, by their ids.
    products: Mapping[int, Product] = {}
    # How finishes came out here.
    lessons: Lessons = Lessons.none
    # Glue faces that went into an assembly with finish on them, by its pieces.
    glued_on_finish: Mapping[int, Sequence[ZoneState]] = {}
    # What there is to breathe through.
    masks: tuple[Mask, ...] = ()

    def breathes_through(self, hazard: Hazard) -> bool:
        """Tell whether something on record is made for a hazard; never that it is enough."""
        return self.facts.respirators.is_held(hazard, (mask.holds for mask in self.masks))

    def own_rules(self, product: int | None, own: Own) -> Sequence[OwnRule]:
        """Return what the person says of a product about one thing."""
        known = self.products.get(product) if product is not None else None
        return [rule for rule in known.own_rules if rule.own is own] if known else ()

    def most_at_once_um(self, product: int | None, of: FinishClass | None) -> Range | None:
        """Return how thick one coat of a product may go on wet (µm); None: nothing tells."""
        return most_at_once_um(of, self.own_rules(product, Own.THICKEST)) if of else None

    def overruled(self, product: int | None, row: str) -> OwnRule | None:
        """Return the word of the person that a published row does not hold for a product."""
        words = self.own_rules(product, Own.OVERRULE)
        return next((rule for rule in reversed(words) if row in rule.of), None)

    def other_face(self, state: ZoneState) -> Wet | None:
        """Return another face of the same piece that cannot bear turning yet.

        The piece is turned only for a face that was not the last to be coated: it already lies on
        the others. A hidden face may lie on points from when it may bear them: their small marks
        are accepted there (common practice).
        """
        for other in self.by_piece.get(state.member_piece.id, ()):
            if other.face.id == state.face.id or not _newer(other, state):
                continue
            if other.top and film_checks.blocking(other.top.checks, Stage.TURN):
                return Wet(other.face.name, None, WetDoubt.CHECK)
            if any(is_suspect(layer) for layer in other.layers) or undated(other.layers):
                return Wet(other.face.name, None, WetDoubt.SUSPECT)
            turn = other.stages.get(Stage.TURN)
            if turn is None:
                continue
            wait = turn.from_its_low_end if other.face.kind is FaceKind.HIDDEN else turn
            if wait.high is None or wait.high > self.now:
                return Wet(other.face.name, wait.high, wait=wait)
        return None

    def spoilt_by_dust(self, state: ZoneState) -> Wet | None:
        """Return the films of other pieces in the room that are not dust-free yet.

        No sanding before they are (common practice). Oils that are wiped off build no film.
        """
        others = [
            (other, until)
            for other, until in self.wet_films.get(state.room.id, ())
            if other.member_piece.id != state.member_piece.id
        ]
        if not others:
            return None
        names = ", ".join(dict.fromkeys(other.part.called for other, _ in others))
        moments = [until for _, until in others if until is not None]
        slowest = reduce(later, (other.stages[Stage.DUST_FREE] for other, _ in others))
        return Wet(names, max(moments) if len(moments) == len(others) else None, wait=slowest)


def around(
    states: Iterable[ZoneState],
    now: datetime,
    facts: Facts,
    products: Mapping[int, Product],
    lessons: Lessons = Lessons.none,
    masks: tuple[Mask, ...] = (),
) -> Around:
    """Sort zones by piece and room."""
    by_piece: dict[int, list[ZoneState]] = defaultdict(list)
    wet: dict[int | None, list[tuple[ZoneState, datetime | None]]] = defaultdict(list)
    dirty: dict[int, list[ZoneState]] = defaultdict(list)
    for state in (s for s in states if s.handed_over is None):
        if state.joined and state.face.kind is FaceKind.JOINT and state.layers:
            dirty[state.piece.id].append(state)
        by_piece[state.member_piece.id].append(state)
        builds_film = state.top is not None and state.top.of.builds_film
        until = state.stages.get(Stage.DUST_FREE) if builds_film else None
        if until and _is_wet(until.high, now):
            wet[state.room.id].append((state, until.high))
    for faces in by_piece.values():
        # An edge is wet with a face: the face is what a person would name.
        faces.sort(key=lambda state: state.face.kind is FaceKind.EDGE)
    return Around(by_piece, wet, now, facts, products, lessons, dirty, masks)


def _newer(other: ZoneState, state: ZoneState) -> bool:
    """Tell whether another face was coated after this one."""
    if other.top is None:
        return False
    return state.top is None or other.top.put_on > state.top.put_on


def _is_wet(until: datetime | None, now: datetime) -> bool:
    return until is None or until > now
