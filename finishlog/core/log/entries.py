"""What happened: the kinds of entries, each declared once."""

# No `from __future__ import annotations`: the fields of an entry are read as they are declared.
from datetime import UTC, datetime
from typing import Annotated, ClassVar, NamedTuple

from msgspec import Meta, Struct

from finishlog.core.air.psychrometrics import Air
from finishlog.core.finish.classes import FigureSet, Method
from finishlog.core.log.fields import Field
from finishlog.core.log.when import When
from finishlog.core.log.words import (
    ContainerDeed,
    FaultKind,
    Filter,
    Found,
    Keeping,
    MaskKept,
    Operation,
    Outcome,
    RagsDeed,
    RespiratorDeed,
    Stripping,
    Test,
)


class Target(NamedTuple):
    """One zone of one piece, by database id."""

    piece: int
    zone: int


# The person's own words: `amend --note`.
_Words = Annotated[str, Field(amend="text")]
_Room = Annotated[int, Field(of="room")]
# Where on the face, in the person's words: `left edge`; empty: all over.
_Place = Annotated[str, Field(amend="where")]


class Entry(Struct, frozen=True, kw_only=True, tag_field="kind"):
    """One thing that happened; a kind is declared here alone, its tag is what the log calls it.

    `targets` are the zones that it reached; `id`, `act` and `typed_at` the ledger gives.
    """

    id: int = 0
    act: int = 0
    when: When
    typed_at: datetime = datetime.max.replace(tzinfo=UTC)
    targets: frozenset[Target] = frozenset()

    # What its table is called, where that is not its tag.
    table: ClassVar[str] = ""
    # It is not amended: undone, and logged again.
    stays: ClassVar[bool] = False


class Coat(Entry, frozen=True, kw_only=True, tag="coat"):
    """One application of a product."""

    product: Annotated[int, Field(of="product", amend="product")]
    product_name: Annotated[str, Field(name_of="product")] = ""
    figures: Annotated[FigureSet, Field(of="figure_set", column="figure_set_id")]
    method: Annotated[Method | None, Field(amend="method")] = None
    # None: not said. Assumed not done where it matters.
    scuffed_before: Annotated[bool | None, Field(amend="scuffed")] = None
    # Flooded on, so that it stood on the wood until it was wiped off; False: thin. None: not said.
    flooded: Annotated[bool | None, Field(amend="flooded")] = None
    wet_film_um: Annotated[float | None, Field(unit="um"), Meta(gt=0)] = None
    # The can, mix or jar that it came from, when that was said.
    container: Annotated[int | None, Field(of="container", amend="container", indexed=True)] = None
    # The can was stirred right before; False: it was not. None: not said.
    stirred: Annotated[bool | None, Field(amend="stirred")] = None
    # What it went on with, in the person's words: `gun1`; several with commas: `gun1, air line`.
    tool: Annotated[str, Field(amend="tool")] = ""
    hands_on_min: Annotated[float | None, Field(unit="min"), Meta(ge=0)] = None
    # How much of it went on, as it was measured. None: not said.
    amount_ml: Annotated[float | None, Field(unit="ml", amend="amount"), Meta(gt=0)] = None
    # Broken off: what it covered by then, in words. None: it was finished.
    stopped: Annotated[str | None, Field(amend="stopped")] = None
    note: _Words = ""

    @property
    def is_whole(self) -> bool:
        """Tell whether it was finished: one that was broken off covers nothing for certain."""
        return self.stopped is None


class Work(Entry, frozen=True, kw_only=True, tag="work"):
    """Anything done by hand that is not a coat."""

    operation: Operation
    grit: Annotated[str, Field(amend="grit")] = ""
    # Of stacking, packing, storing: how it is kept from then on. None: not said.
    kept: Annotated[Keeping | None, Field(amend="kept")] = None
    # Of mending: which fault was made good, by its place.
    place: _Place = ""
    note: _Words = ""


class Check(Entry, frozen=True, kw_only=True, tag="check"):
    """A test made on a film."""

    table = "film_check"

    test: Test
    found: Annotated[Found, Field(amend="found")]
    # It was not so before: it took until now. None: not said.
    only_now: Annotated[bool | None, Field(amend="only_now")] = None
    place: _Place = ""
    note: _Words = ""


class Fault(Entry, frozen=True, kw_only=True, tag="fault"):
    """What went wrong, where on the piece, and what was done about it."""

    what: FaultKind
    place: _Place = ""
    remedy: _Words = ""


class Stripped(Entry, frozen=True, kw_only=True, tag="stripped"):
    """A film taken off: to bare wood, or down to the coat entry `survives`."""

    operation: Stripping
    survives: Annotated[int | None, Field(of="entry")] = None
    note: _Words = ""


class Joined(Entry, frozen=True, kw_only=True, tag="joined"):
    """Pieces glued up into one piece of an assembly."""

    into: Annotated[int, Field(of="piece", indexed=True)]
    members: Annotated[frozenset[int], Field(of="piece")]
    # Key of the glue in facts/data/glues.toml; empty: not said.
    glue: Annotated[str, Field(amend="glue")] = ""


class Moved(Entry, frozen=True, kw_only=True, tag="moved"):
    """Pieces carried into a room."""

    pieces: Annotated[frozenset[int], Field(of="piece")]
    room: Annotated[int, Field(of="room", amend="room")]


class Reading(Entry, frozen=True, kw_only=True, tag="reading"):
    """Temperature and humidity of a room."""

    room: _Room
    air: Annotated[Air, Field(amend="air")]
    # As read, where the humidity was worked out from it.
    wet_bulb_c: Annotated[float | None, Field(unit="c")] = None
    # Only a thermometer was read: how much water the air holds is supposed.
    humidity_supposed: bool | None = None


class AirImported(Entry, frozen=True, kw_only=True, tag="air-import"):
    """The readings of a logger's file, `count` of them, between `when.earliest` and `latest`."""

    stays = True

    room: _Room
    file_name: str
    count: Annotated[int, Field(unit="reading")]


class PieceReading(Entry, frozen=True, kw_only=True, tag="piece-reading"):
    """The temperature of a surface (°C), the moisture of its wood (%), or what it weighs (g).

    Several pieces that were weighed at once are weighed together.
    """

    temperature_c: Annotated[float | None, Field(unit="c", amend="surface")] = None
    moisture_pct: Annotated[
        float | None, Field(unit="pct", amend="moisture"), Meta(ge=0, le=200)
    ] = None
    weight_g: Annotated[float | None, Field(unit="g", amend="weight"), Meta(gt=0)] = None


class Heated(Entry, frozen=True, kw_only=True, tag="heat"):
    """A heater that runs for once, from `when.earliest` to `when.latest`; may lie in the future.

    `temperature_c` None: as warm as the room gets when it is heated.
    """

    stays = True

    room: _Room
    temperature_c: Annotated[float | None, Field(unit="c")] = None


class ContainerEvent(Entry, frozen=True, kw_only=True, tag="container"):
    """Something done with a can, mix or jar, or that befell it."""

    table = "container_event"

    container: Annotated[int, Field(of="container", indexed=True)]
    deed: ContainerDeed
    note: _Words = ""


class Cleaned(Entry, frozen=True, kw_only=True, tag="cleaned"):
    """A tool cleaned through: a gun, a brush, an air line, by what the person calls it."""

    tool: str
    note: _Words = ""


class Respirator(Entry, frozen=True, kw_only=True, tag="respirator"):
    """Something done with a respirator, by what the person calls it."""

    name: str
    deed: RespiratorDeed
    # What it holds back, as it was opened. None: not said again.
    holds: Filter | None = None
    worn_min: Annotated[float | None, Field(unit="min"), Meta(gt=0)] = None
    # How it is kept from then on. None: not said.
    kept: MaskKept | None = None
    note: _Words = ""


class RagsEvent(Entry, frozen=True, kw_only=True, tag="rags"):
    """Something done with rags. `item` names one item by its first coat's entry; None: all open."""

    table = "rags_event"

    deed: RagsDeed
    item: Annotated[int | None, Field(of="entry")] = None


class Away(Entry, frozen=True, kw_only=True, tag="away"):
    """The shop stands shut from `when.earliest` to `when.latest`."""

    reason: _Words = ""


class HandedOver(Entry, frozen=True, kw_only=True, tag="handover"):
    """A piece left the shop."""

    note: _Words = ""


class SetAside(Entry, frozen=True, kw_only=True, tag="set-aside"):
    """Work on a part stops on purpose; `reason` also says what was meant to come next."""

    reason: _Words = ""


class Resumed(Entry, frozen=True, kw_only=True, tag="resumed"):
    """Work on a part goes on."""


class Review(Entry, frozen=True, kw_only=True, tag="review"):
    """How a finish came out, at hand-over or later."""

    outcome: Annotated[Outcome, Field(amend="outcome")]
    text: _Words = ""


class Note(Entry, frozen=True, kw_only=True, tag="note"):
    """Words about a part, or an outcome."""

    text: _Words
    outcome: bool = False
    # To be heeded when its finish is done once more.
    next_time: bool | None = None


class Photo(Entry, frozen=True, kw_only=True, tag="photo"):
    """A picture, by where its file lies; the file itself is not kept."""

    path: str
    note: _Words = ""


AnyEntry = (
    Coat
    | Work
    | Check
    | Fault
    | Stripped
    | Joined
    | Moved
    | Reading
    | AirImported
    | PieceReading
    | Heated
    | ContainerEvent
    | Cleaned
    | Respirator
    | RagsEvent
    | Away
    | HandedOver
    | SetAside
    | Resumed
    | Review
    | Note
    | Photo
)
