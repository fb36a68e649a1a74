"""What is looked at when something went wrong, and what a look at the log gives."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime, timedelta
from enum import StrEnum

from msgspec import Struct

from finishlog.core.air.room import READING_STAYS
from finishlog.core.air.span import AirSpan, Known
from finishlog.core.film.checks import DENIES
from finishlog.core.film.layers import Layer
from finishlog.core.findings import Finding
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import FaultKind, Found
from finishlog.core.published.facts import Facts
from finishlog.core.shop.things import Log
from finishlog.core.zone.state import ZoneState


class Missing(StrEnum):
    """What nobody logged, without which a cause is neither shown nor ruled out."""

    AIR = "air"
    SUN = "sun"
    SCUFFING = "scuffing"
    WIPING = "wiping"
    THICKNESS = "thickness"
    CAN = "can"
    THEIR_CAN = "their-can"
    WOOD = "wood"
    OF_THE_WOOD = "of-the-wood"
    MOISTURE = "moisture"
    SANDING = "sanding"
    HANDLING = "handling"
    SAME_CAN = "same-can"
    GRIT = "grit"
    IRON = "iron"
    STIRRED = "stirred"
    TOOL = "tool"
    ADDED = "added"
    SANDED = "sanded"
    GLUED = "glued"
    BUFFED = "buffed"
    # Nothing that a log holds would tell.
    UNSEEN = "unseen"


# What a look gives: what the log shows, what is missing, or None: the log speaks against it.
Look = Finding | Missing | None


# What is made while a film forms: the air that it meets later does no such thing.
_FORMS_WITH_THE_FILM = frozenset(
    {
        FaultKind.RUN,
        FaultKind.BUBBLE,
        FaultKind.PEEL,
        FaultKind.CRAZE,
        FaultKind.DUST,
        FaultKind.BRUSH_MARK,
        FaultKind.ORANGE_PEEL,
        FaultKind.LAP_MARK,
        FaultKind.WRONG_SHEEN,
    }
)


def read_of(met: Iterable[AirSpan]) -> list[AirSpan]:
    """Return the part of some air that somebody read."""
    return [span for span in met if span.measured and span.airs]


def is_read_through(met: Iterable[AirSpan]) -> bool:
    """Tell whether readings cover all of some air, none of them for longer than it speaks for."""
    held = timedelta()
    for span in met:
        if not span.measured or not span.airs or span.end is None:
            return False
        held += span.end - span.start if span.known is Known.HELD else timedelta()
    return held <= READING_STAYS


class Scene(Struct, frozen=True):
    """The coat in trouble, what lies below it, the wood, the air, the log.

    `sound`: the same for films like it that nothing is wrong with, the most alike first.
    """

    layer: Layer
    below: tuple[Layer, ...]
    until: datetime
    state: ZoneState
    log: Log
    zones: Sequence[ZoneState]
    facts: Facts
    # The fault on it; None: a check failed, and `found` this.
    kind: FaultKind | None = None
    found: Found | None = None
    sound: tuple[Scene, ...] = ()
    # Of a sound film: what it met later than at the age of the one in trouble proves nothing.
    compared: datetime | None = None

    @property
    def under(self) -> Layer | None:
        """The layer right below; None: bare wood."""
        return self.below[-1] if self.below else None

    @property
    def began(self) -> datetime:
        """The earliest moment of the coat."""
        return self.layer.coat.when.earliest

    @property
    def met(self) -> Iterator[AirSpan]:
        """The air from the coat to the trouble; a wrinkle comes from the coat below: its air."""
        return self._met_until(self.until)

    def _met_until(self, end: datetime) -> Iterator[AirSpan]:
        from_below = self.kind is FaultKind.WRINKLE and self.under is not None
        of = self.under if from_below and self.under else self.layer
        return of.air.until(min(end, self.until, self.compared or end))

    @property
    def made_in(self) -> Iterator[AirSpan]:
        """The air that may have made the trouble.

        Of what forms with the film that which it met while it formed; of a film that is soft that
        which it met until its hours were over by the label: later air came too late for either.
        """
        soft = DENIES.get(self.found, ())[:1] if self.found and self.kind is None else ()
        wanted = (Stage.RECOAT,) if self.kind in _FORMS_WITH_THE_FILM else soft
        figures = (self.layer.coat.figures.stages.get(stage) for stage in wanted)
        formed = (self.layer.label_waits(figure).high for figure in figures if figure)
        ends = [end for end in formed if end]
        return self._met_until(min(ends, default=self.until))

    @property
    def air_read(self) -> list[AirSpan]:
        """The part of that air that somebody read."""
        return read_of(self.made_in)

    @property
    def is_read_all_through(self) -> bool:
        """Tell whether readings cover it: only then do they rule anything out."""
        return is_read_through(self.made_in)
