"""What is looked for has an index, what is one of a few words is held to them.

Frozen: what the tables become stands here alone, so that this revision always makes the same.
"""

from __future__ import annotations

import re

from alembic import op  # noqa: TID253

from finishlog.store.remade_sqlite import remake

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None

# Every look reads what was done to the cans in use; a can asks what was coated from it.
INDEXES = (
    ("container", "archived_at"),
    ("container_event", "container_id"),
    ("coat", "container_id"),
)

FAULTS = """run blush fisheye wrinkle blister bubble peel craze dust brush-mark orange-peel lap-mark
blotch wrong-colour wrong-sheen left-thick bleed-back rubbed-through print-mark dent glue-spot
open-joint cupped other"""


def upgrade() -> None:
    for table, column in INDEXES:
        op.execute(f"CREATE INDEX ix_{table}_{column} ON {table} ({column})")
    _hold("fault", "what", FAULTS.split())
    _hold("room", "heater", ["", *["sealed", "fan", "glow", "flame"]])
    # Nobody could ever say how a product shines.
    remake("product", lambda sql: re.sub(r"\s*sheen TEXT DEFAULT '' NOT NULL,", "", sql))


def _hold(table: str, column: str, words: list[str]) -> None:
    """Hold a column to a closed set."""
    listed = ", ".join(f"'{word}'" for word in words)
    rule = f"CONSTRAINT ck_{table}_{column} CHECK ({column} IN ({listed}))"
    remake(table, lambda sql: f"{sql[: sql.rindex(')')]}, {rule})")


def downgrade() -> None:
    raise NotImplementedError("go back by restoring the backup made before the upgrade")
