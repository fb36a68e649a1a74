"""Tables of what there is: projects, parts, steps, products, rooms, hours."""

from __future__ import annotations

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

import finishlog.store.schema.rooms  # noqa: F401
from finishlog.core.finish.classes import Method, Sheen
from finishlog.core.finish.stages import Stage
from finishlog.core.log.words import Operation
from finishlog.core.mixing.containers import ContainerKind
from finishlog.core.shop.own_rules import Own
from finishlog.core.shop.things import FaceKind, Meets, ThingKind
from finishlog.store.schema.columns import (
    Names,
    UtcDateTime,
    all_or_nothing,
    colder,
    metadata,
    note,
    one_of,
    refers_to,
    row_id,
    window_checks,
    window_columns,
)

project = Table(
    "project",
    metadata,
    row_id(),
    Column("name", Text, nullable=False),
    Column("due_at", UtcDateTime),
    note(),
    Column("added_at", UtcDateTime, nullable=False),
    # Ten years of closed projects stand behind a few open ones.
    Column("archived_at", UtcDateTime, index=True),
    # "food", "child": who will use it, when that matters to how hard a finish must be.
    Column("used_for", Text, nullable=False, server_default=""),
    UniqueConstraint("name"),
)

part = Table(
    "part",
    metadata,
    row_id(),
    refers_to("project"),
    Column("name", Text, nullable=False),
    Column("species", Text),
    Column("is_board", Boolean, nullable=False),
    Column("steps_name", Text, nullable=False, server_default=""),
    refers_to("room", optional=True),
    note(),
    Column("added_at", UtcDateTime, nullable=False),
    Column("archived_at", UtcDateTime),
    # "varnish", "paint", "wax", "unknown": what was on it when it came in; empty: bare wood.
    Column("old_finish", Text, nullable=False, server_default=""),
    UniqueConstraint("project_id", "name"),
)

piece = Table(
    "piece",
    metadata,
    row_id(),
    refers_to("part"),
    Column("number", Integer, nullable=False),
    UniqueConstraint("part_id", "number"),
    CheckConstraint("number >= 1", name="number"),
)

face = Table(
    "face",
    metadata,
    row_id(),
    refers_to("part"),
    Column("position", Integer, nullable=False),
    Column("name", Text, nullable=False),
    Column("kind", Text, nullable=False),
    UniqueConstraint("part_id", "name"),
    Column("meets", Text, nullable=False, server_default=""),
    one_of("kind", FaceKind),
    one_of("meets", Meets, or_empty=True),
)

zone = Table(
    "zone",
    metadata,
    row_id(),
    refers_to("face"),
    Column("position", Integer, nullable=False),
    Column("name", Text, nullable=False, server_default=""),
    # None: the wood of the part.
    Column("species", Text),
    UniqueConstraint("face_id", "name"),
)

# As what the record of a zone that came of dividing was logged: as itself, as what it was part of.
zone_was = Table(
    "zone_was",
    metadata,
    Column("zone_id", ForeignKey("zone.id"), primary_key=True),
    Column("was_zone_id", ForeignKey("zone.id"), primary_key=True, index=True),
)

assembly_need = Table(
    "assembly_need",
    metadata,
    row_id(),
    refers_to("part"),
    refers_to("part", "member_part_id"),
    Column("count", Integer, nullable=False),
    UniqueConstraint("part_id", "member_part_id"),
    CheckConstraint("count >= 1", name="count"),
    CheckConstraint("part_id <> member_part_id", name="not_of_itself"),
)

product = Table(
    "product",
    metadata,
    row_id(),
    Column("name", Text, nullable=False),
    Column("class_key", Text, nullable=False),
    note(),
    Column("added_at", UtcDateTime, nullable=False),
    Column("archived_at", UtcDateTime),
    # How it is put on when nothing is said; None: as its class usually is.
    Column("method", Text),
    Column("sheen", Text, nullable=False, server_default=""),
    # Where its safety data sheet lies.
    Column("sds", Text, nullable=False, server_default=""),
    UniqueConstraint("name"),
    one_of("method", Method),
    one_of("sheen", Sheen, or_empty=True),
)

# The label. A later row of a stage replaces the earlier one from its date on; one without hours
# says that the label no longer gives that stage.
product_figure = Table(
    "product_figure",
    metadata,
    row_id(),
    refers_to("product"),
    Column("stage", Text, nullable=False),
    Column("low_h", Float),
    Column("typical_h", Float),
    Column("high_h", Float),
    Column("at_temperature_c", Float),
    Column("at_humidity_pct", Float),
    Column("source", Text, nullable=False, server_default=""),
    note(),
    Column("valid_from", UtcDateTime, nullable=False),
    one_of("stage", Stage),
    # What undo takes back; none: the label that the product was put on record with.
    Column("act_id", Integer),
    colder(),
    all_or_nothing("low_h", "typical_h", "high_h", name="range"),
    Index(None, "product_id", "stage", "valid_from"),
)


product_window = Table(
    "product_window",
    metadata,
    row_id(),
    refers_to("product"),
    *window_columns(optional=True),
    Column("valid_from", UtcDateTime, nullable=False),
    Column("act_id", Integer),
    *window_checks(),
    Index(None, "product_id", "valid_from"),
)

# What the person says of a product beyond its label; `own` tells which of the columns speak.
product_says = Table(
    "product_says",
    metadata,
    row_id(),
    refers_to("product"),
    Column("own", Text, nullable=False),
    Column("of_names", Names, nullable=False, server_default="[]"),
    refers_to("product", "of_product_id", optional=True),
    Column("between_names", Names, nullable=False, server_default="[]"),
    Column("wait_low_h", Float),
    Column("wait_typical_h", Float),
    Column("wait_high_h", Float),
    Column("wait_source", Text, nullable=False, server_default=""),
    Column("wait_at_temperature_c", Float),
    Column("wait_at_humidity_pct", Float),
    Column("wait_note", Text, nullable=False, server_default=""),
    Column("coats", Integer),
    Column("because", Text, nullable=False, server_default=""),
    Column("valid_from", UtcDateTime, nullable=False),
    Column("act_id", Integer),  # What undo takes back; none: it came with the product.
    Column("thickest_um", Float),
    Column("figure", Float),  # Of a safety data sheet, in the unit of its kind.
    one_of("own", Own),
    all_or_nothing("wait_low_h", "wait_typical_h", "wait_high_h", name="wait"),
    CheckConstraint("coats > 0", name="coats"),
    Index(None, "product_id", "valid_from"),
)

steps = Table(
    "steps",
    metadata,
    row_id(),
    Column("name", Text, nullable=False),
    note(),
    Column("archived_at", UtcDateTime),
    UniqueConstraint("name"),
)


def _step_columns() -> list[Column[int] | Column[str] | Column[tuple[str, ...]]]:
    return [
        Column("position", Integer, nullable=False),
        Column("operation", Text, nullable=False),
        refers_to("product", optional=True),
        Column("faces", Names, nullable=False),
        note(),
    ]


step = Table(
    "step",
    metadata,
    row_id(),
    refers_to("steps"),
    *_step_columns(),
    UniqueConstraint("steps_id", "position"),
    one_of("operation", Operation),
)

# Assigning steps copies them: a schedule that changes later does not reach back.
part_step = Table(
    "part_step",
    metadata,
    row_id(),
    refers_to("part"),
    *_step_columns(),
    UniqueConstraint("part_id", "position"),
    one_of("operation", Operation),
)

container = Table(
    "container",
    metadata,
    row_id(),
    Column("uuid", String(36), nullable=False),
    Column("name", Text, nullable=False),
    Column("kind", Text, nullable=False),
    refers_to("product"),
    Column("opened_at", UtcDateTime),
    note(),
    # When the maker filled it or the person bought it; when a mix was made, and its last moment.
    Column("made_at", UtcDateTime),
    Column("use_by_at", UtcDateTime),
    Column("amount_ml", Float),
    # The maker's batch number on the can.
    Column("batch", Text, nullable=False, server_default=""),
    Column("archived_at", UtcDateTime, index=True),
    CheckConstraint("amount_ml > 0", name="amount"),
    UniqueConstraint("uuid"),
    UniqueConstraint("name"),
    one_of("kind", ContainerKind),
)

mix_part = Table(
    "mix_part",
    metadata,
    row_id(),
    refers_to("container"),
    refers_to("product", optional=True),
    Column("name", Text, nullable=False),
    Column("parts", Float, nullable=False),
    # What was measured in: a liquid by volume, flakes by weight.
    Column("volume_ml", Float),
    Column("weight_g", Float),
    UniqueConstraint("container_id", "name"),
    CheckConstraint("parts > 0", name="parts"),
    CheckConstraint("volume_ml > 0", name="volume"),
    CheckConstraint("weight_g > 0", name="weight"),
)

# A week without hours says that the shop is shut.
shop_week = Table(
    "shop_week", metadata, row_id(), Column("valid_from", UtcDateTime, nullable=False)
)

shop_hours = Table(
    "shop_hours",
    metadata,
    row_id(),
    refers_to("shop_week"),
    Column("weekday", Integer, nullable=False),
    Column("opens_min", Integer, nullable=False),
    Column("closes_min", Integer, nullable=False),
    CheckConstraint("weekday BETWEEN 0 AND 6", name="weekday"),
    CheckConstraint("opens_min BETWEEN 0 AND 1439", name="opens"),
    CheckConstraint("closes_min BETWEEN 0 AND 1440", name="closes"),
    Index(None, "shop_week_id"),
)

setting = Table(
    "setting",
    metadata,
    Column("key", Text, primary_key=True),
    Column("value", Text, nullable=False),
)

alias = Table(
    "alias",
    metadata,
    row_id(),
    Column("kind", Text, nullable=False),
    Column("old_name", Text, nullable=False),
    # An id of the kind's table: no foreign key can name six tables.
    Column("thing_id", Integer, nullable=False),
    one_of("kind", ThingKind),
    Index(None, "kind", "old_name"),
)
