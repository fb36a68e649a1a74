"""Tables of rooms: what place each is, where it leads to, its usual days."""

from __future__ import annotations

from sqlalchemy import (
    CheckConstraint,
    Column,
    Float,
    ForeignKey,
    Index,
    Integer,
    Table,
    Text,
    UniqueConstraint,
)

from finishlog.core.air.heater import HeaterKind
from finishlog.core.air.place import Opening, PlaceKind
from finishlog.store.schema.columns import UtcDateTime, metadata, note, one_of, refers_to, row_id

room = Table(
    "room",
    metadata,
    row_id(),
    Column("name", Text, nullable=False),
    note(),
    # What heats it: sealed, fan, glow, flame; empty: not said.
    Column("heater", Text, nullable=False, server_default=""),
    Column("archived_at", UtcDateTime),
    # What stands there that burns, glows or sparks, in words of ours with blanks; none: not told.
    Column("has", Text),
    Column("kind", Text, nullable=False, server_default=""),
    Column("volume_m3", Float),
    # As it was measured; 0: none was.
    Column("exhaust_m3_h", Float),
    Column("mixing", Float),
    # Who lives where its vapour goes.
    Column("lives", Text, nullable=False, server_default=""),
    # What was put out for an evening, and when.
    Column("put_out", Text, nullable=False, server_default=""),
    Column("out_at", UtcDateTime),
    UniqueConstraint("name"),
    one_of("heater", HeaterKind, or_empty=True),
    one_of("kind", PlaceKind, or_empty=True),
    CheckConstraint("volume_m3 > 0", name="volume"),
    CheckConstraint("exhaust_m3_h >= 0", name="exhaust"),
    CheckConstraint("mixing BETWEEN 1 AND 10", name="mixing"),
)

room_join = Table(
    "room_join",
    metadata,
    Column("room_id", ForeignKey("room.id"), primary_key=True),
    Column("to_room_id", ForeignKey("room.id"), primary_key=True),
    Column("opening", Text, nullable=False),
    one_of("opening", Opening),
)

usual_day = Table(
    "usual_day",
    metadata,
    row_id(),
    refers_to("room"),
    Column("valid_from", UtcDateTime, nullable=False),
    Column("coldest_c", Float),
    Column("temperature_c", Float),
    Column("humidity_pct", Float),
    # Months of the season that it holds in, first to last (11, 3: November to March); none: always.
    Column("season_from", Integer),
    Column("season_until", Integer),
    # Minutes of the day between which the heater keeps the room at `heated_c`.
    Column("heated_from_min", Integer),
    Column("heated_until_min", Integer),
    Column("heated_c", Float),
    # The days of the week on which it begins, a bit each, Monday 1; none: every day.
    Column("heated_days", Integer),
    CheckConstraint("humidity_pct BETWEEN 0 AND 100", name="humidity"),
    Index(None, "room_id", "valid_from"),
)

# The usual day hour by hour; no humidity: the water of the hour before stays in the air.
usual_hour = Table(
    "usual_hour",
    metadata,
    Column("usual_day_id", ForeignKey("usual_day.id"), primary_key=True),
    Column("minute", Integer, primary_key=True),
    Column("temperature_c", Float, nullable=False),
    Column("humidity_pct", Float),
    CheckConstraint("minute BETWEEN 0 AND 1439", name="minute"),
    CheckConstraint("humidity_pct BETWEEN 0 AND 100", name="humidity"),
)
