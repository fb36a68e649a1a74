"""Tables of what happened, and of the figures that coats were judged by. Only ever added to."""

from __future__ import annotations

from enum import StrEnum

from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Column,
    Float,
    ForeignKey,
    Index,
    Integer,
    String,
    Table,
    Text,
    UniqueConstraint,
)
from sqlalchemy.sql.schema import SchemaItem

from finishlog.core.finish.classes import Method
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import (
    ContainerDeed,
    FaultKind,
    Found,
    Operation,
    Outcome,
    RagsDeed,
    Stripping,
    Sureness,
    Test,
)
from finishlog.core.shop.things import ThingKind
from finishlog.store.schema.columns import (
    UtcDateTime,
    all_or_nothing,
    metadata,
    note,
    one_of,
    refers_to,
    row_id,
)
from finishlog.store.schema.things import window_checks, window_columns


class EntryKind(StrEnum):
    """The kinds of things that happen; each has a table of its own for the rest."""

    COAT = "coat"
    WORK = "work"
    CHECK = "check"
    FAULT = "fault"
    STRIPPED = "stripped"
    JOINED = "joined"
    MOVED = "moved"
    READING = "reading"
    # A logger's file; the temperature or moisture of a piece; a heater that runs for once.
    AIR_IMPORT = "air-import"
    PIECE_READING = "piece-reading"
    HEAT = "heat"
    CONTAINER = "container"
    RAGS = "rags"
    AWAY = "away"
    HANDOVER = "handover"
    SET_ASIDE = "set-aside"
    RESUMED = "resumed"
    REVIEW = "review"
    NOTE = "note"
    PHOTO = "photo"
    PROMISE = "promise"
    WITHDRAWAL = "withdrawal"


class DownTo(StrEnum):
    """What is left when a film has come off."""

    BARE = "bare"
    COAT = "coat"


# Content-addressed: all coats that were judged by the same figures share one set.
figure_set = Table(
    "figure_set",
    metadata,
    row_id(),
    Column("digest", String(64), nullable=False),
    Column("class_key", Text, nullable=False),
    Column("facts_version", Text, nullable=False),
    *window_columns(optional=False),
    *window_checks(),
    UniqueConstraint("digest"),
)

figure_set_stage = Table(
    "figure_set_stage",
    metadata,
    Column("set_id", ForeignKey("figure_set.id"), primary_key=True),
    Column("stage", Text, primary_key=True),
    Column("low_h", Float, nullable=False),
    Column("typical_h", Float, nullable=False),
    Column("high_h", Float, nullable=False),
    Column("source", Text, nullable=False),
    Column("at_temperature_c", Float, nullable=False),
    Column("at_humidity_pct", Float, nullable=False),
    note(),
    one_of("stage", Stage),
    all_or_nothing("low_h", "typical_h", "high_h", name="range"),
)

# One command.
act = Table(
    "act",
    metadata,
    row_id(),
    Column("uuid", String(36), nullable=False),
    Column("verb", Text, nullable=False),
    Column("typed_at", UtcDateTime, nullable=False),
    Column("words", Text, nullable=False),
    Column("time_zone", Text, nullable=False),
    Column("finishlog_version", Text, nullable=False),
    UniqueConstraint("uuid"),
)

entry = Table(
    "entry",
    metadata,
    row_id(),
    Column("uuid", String(36), nullable=False),
    Column("act_id", ForeignKey("act.id"), nullable=False, index=True),
    Column("kind", Text, nullable=False),
    Column("earliest_at", UtcDateTime, nullable=False),
    Column("latest_at", UtcDateTime, nullable=False),
    Column("sureness", Text, nullable=False),
    Column("tie", Integer, nullable=False),
    Column("time_zone", Text, nullable=False),
    Column("supersedes_id", ForeignKey("entry.id"), index=True),
    UniqueConstraint("uuid"),
    one_of("kind", EntryKind),
    one_of("sureness", Sureness),
    CheckConstraint("earliest_at <= latest_at", name="span"),
    CheckConstraint("supersedes_id < id", name="supersedes"),
    Index(None, "kind", "latest_at"),
)

entry_target = Table(
    "entry_target",
    metadata,
    Column("entry_id", ForeignKey("entry.id"), primary_key=True),
    Column("piece_id", ForeignKey("piece.id"), primary_key=True),
    Column("zone_id", ForeignKey("zone.id"), primary_key=True),
    Index(None, "piece_id", "zone_id"),
)


def _detail(name: str, *columns: SchemaItem) -> Table:
    """Build the table that holds what only one kind of entry has."""
    return Table(
        name, metadata, Column("entry_id", ForeignKey("entry.id"), primary_key=True), *columns
    )


def _pieces_of(name: str) -> Table:
    """Build the list of pieces of a kind of entry."""
    piece: Column[int] = Column("piece_id", ForeignKey("piece.id"), primary_key=True, index=True)
    return _detail(name, piece)


coat = _detail(
    "coat",
    refers_to("product"),
    refers_to("figure_set"),
    Column("method", Text),
    Column("scuffed_before", Boolean),
    Column("wet_film_um", Float),
    refers_to("container", optional=True),
    Column("hands_on_min", Float),
    note(),
    one_of("method", Method),
    CheckConstraint("wet_film_um > 0", name="wet_film"),
    CheckConstraint("hands_on_min >= 0", name="hands_on"),
    Index(None, "container_id"),
)

work = _detail(
    "work",
    Column("operation", Text, nullable=False),
    Column("grit", Text, nullable=False, server_default=""),
    note(),
    one_of("operation", Operation),
)

film_check = _detail(
    "film_check",
    Column("test", Text, nullable=False),
    Column("found", Text, nullable=False),
    note(),
    one_of("test", Test),
    one_of("found", Found),
)

fault = _detail(
    "fault",
    Column("what", Text, nullable=False),
    Column("place", Text, nullable=False, server_default=""),
    Column("remedy", Text, nullable=False, server_default=""),
    one_of("what", FaultKind),
)

stripped = _detail(
    "stripped",
    Column("operation", Text, nullable=False),
    Column("down_to", Text, nullable=False),
    # The coat that is still there, when it went down to a coat.
    refers_to("entry", "survives_entry_id", optional=True),
    note(),
    one_of("operation", Stripping),
    one_of("down_to", DownTo),
)

joined = _detail(
    "joined",
    refers_to("piece", "into_piece_id"),
    Column("glue", Text, nullable=False, server_default=""),
    Index(None, "into_piece_id"),
)
joined_member = _pieces_of("joined_member")
moved = _detail("moved", refers_to("room"))
moved_piece = _pieces_of("moved_piece")

reading = _detail(
    "reading",
    refers_to("room"),
    Column("temperature_c", Float, nullable=False),
    Column("humidity_pct", Float, nullable=False),
    # What was read, where the humidity was worked out from a wet bulb.
    Column("wet_bulb_c", Float),
    # Only a thermometer was read.
    Column("humidity_supposed", Boolean),
    CheckConstraint("humidity_pct BETWEEN 0 AND 100", name="humidity"),
)

# One file of a logger, taken in by one act. `count` is how many of its readings were kept.
air_import = _detail(
    "air_import",
    refers_to("room"),
    Column("file_name", Text, nullable=False),
    Column("count", Integer, nullable=False),
)

# The readings of a file: many, so one entry stands for all of them.
logged_air = Table(
    "logged_air",
    metadata,
    Column("entry_id", ForeignKey("air_import.entry_id"), primary_key=True),
    Column("at", UtcDateTime, primary_key=True),
    Column("temperature_c", Float, nullable=False),
    Column("humidity_pct", Float, nullable=False),
    CheckConstraint("humidity_pct BETWEEN 0 AND 100", name="humidity"),
    sqlite_with_rowid=False,
)

piece_reading = _detail(
    "piece_reading",
    Column("temperature_c", Float),
    Column("moisture_pct", Float),
    CheckConstraint("moisture_pct BETWEEN 0 AND 200", name="moisture"),
    CheckConstraint("temperature_c IS NOT NULL OR moisture_pct IS NOT NULL", name="something"),
)

# From the entry's earliest to its latest instant; no temperature: as warm as the room gets.
heat = _detail("heat", refers_to("room"), Column("temperature_c", Float))

container_event = _detail(
    "container_event",
    refers_to("container"),
    Column("deed", Text, nullable=False),
    note(),
    one_of("deed", ContainerDeed),
    Index(None, "container_id"),
)

rags_event = _detail(
    "rags_event",
    Column("deed", Text, nullable=False),
    # The first coat of the item; None: everything open.
    refers_to("entry", "item_entry_id", optional=True),
    one_of("deed", RagsDeed),
)

# From the earliest to the latest moment of the entry nobody is in the shop.
away = _detail("away", Column("reason", Text, nullable=False, server_default=""))
handover = _detail("handover", note())
set_aside = _detail("set_aside", Column("reason", Text, nullable=False, server_default=""))
resumed = _detail("resumed")
review = _detail(
    "review",
    Column("outcome", Text, nullable=False),
    Column("text", Text, nullable=False, server_default=""),
    one_of("outcome", Outcome),
)
written_note = _detail(
    "note", Column("text", Text, nullable=False), Column("outcome", Boolean, nullable=False)
)
photo = _detail("photo", Column("path", Text, nullable=False), note())
promise = _detail("promise", Column("text", Text, nullable=False))

# "Withdrawn by" is never written into the log: it is read off these rows (store.log.in_force).
withdrawal = _detail("withdrawal", Column("act_id", ForeignKey("act.id"), nullable=False))

# What an act changed about a thing: an edit never silently overwrites.
thing_change = Table(
    "thing_change",
    metadata,
    row_id(),
    Column("act_id", ForeignKey("act.id"), nullable=False, index=True),
    Column("kind", Text, nullable=False),
    # An id of the kind's table: no foreign key can name six tables.
    Column("thing_id", Integer, nullable=False),
    Column("what", Text, nullable=False),
    Column("was", Text, nullable=False, server_default=""),
    Column("becomes", Text, nullable=False, server_default=""),
    one_of("kind", ThingKind),
    Index(None, "kind", "thing_id"),
)
