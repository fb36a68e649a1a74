"""Tables of what happened, and of the figures that coats were judged by. Only ever added to."""

from __future__ import annotations

from sqlalchemy import (
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

from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import (
    AirImported,
    Check,
    Coat,
    ContainerEvent,
    Fault,
    Joined,
    Review,
    Stripped,
    Work,
)
from finishlog.core.log.kinds import KINDS, TakenBack
from finishlog.core.log.when import Sureness
from finishlog.core.shop.things import ThingKind
from finishlog.store.schema.columns import (
    UtcDateTime,
    all_or_nothing,
    colder,
    metadata,
    note,
    one_of,
    row_id,
    window_checks,
    window_columns,
)
from finishlog.store.schema.entries import add_tables, air_columns, table_of

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
    colder(),
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
    one_of("kind", KINDS),
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


for _kind in KINDS.values():
    add_tables(_kind)

# Those that have queries of their own.
coat = table_of(Coat)
work = table_of(Work)
film_check = table_of(Check)
fault = table_of(Fault)
stripped = table_of(Stripped)
review = table_of(Review)
joined = table_of(Joined)
joined_member = metadata.tables["joined_member"]
air_import = table_of(AirImported)
container_event = table_of(ContainerEvent)
# "Withdrawn by" is never written into the log: it is read off these rows (store.log.in_force).
withdrawal = table_of(TakenBack)


# The readings of a logger's file: many, so one entry stands for all of them.
logged_air = Table(
    "logged_air",
    metadata,
    Column("entry_id", ForeignKey("air_import.entry_id"), primary_key=True),
    Column("at", UtcDateTime, primary_key=True),
    *air_columns(),
    sqlite_with_rowid=False,
)

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
