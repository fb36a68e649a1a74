"""What is looked for has an index, what is one of a few words is held to them.

Frozen: nothing here is read from the program, so that this revision always makes the same tables.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from alembic import op  # noqa: TID253
from sqlalchemy import text

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
    _remake("product", lambda sql: re.sub(r"\s*sheen TEXT DEFAULT '' NOT NULL,", "", sql))


def _hold(table: str, column: str, words: list[str]) -> None:
    """Hold a column to a closed set."""
    listed = ", ".join(f"'{word}'" for word in words)
    rule = f"CONSTRAINT ck_{table}_{column} CHECK ({column} IN ({listed}))"
    _remake(table, lambda sql: f"{sql[: sql.rindex(')')]}, {rule})")


def _remake(table: str, change: Callable[[str], str]) -> None:
    """Copy a table into a changed one of the same name, with its indexes and triggers.

    SQLite cannot alter a CHECK. Foreign keys are off while migrations run.
    """
    connection = op.get_bind()
    rows = connection.execute(
        text("SELECT type, sql FROM sqlite_master WHERE tbl_name = :t AND sql IS NOT NULL"),
        {"t": table},
    ).all()
    made = next(sql for kind, sql in rows if kind == "table")
    head = re.match(rf'CREATE TABLE "?{table}"?', made)
    assert head, made
    op.execute("CREATE TABLE remade" + change(made)[head.end() :])
    names = [row[1] for row in connection.execute(text("PRAGMA table_info(remade)"))]
    listed = ", ".join(names)
    op.execute(f"INSERT INTO remade ({listed}) SELECT {listed} FROM {table}")
    op.execute(f"DROP TABLE {table}")
    op.execute(f"ALTER TABLE remade RENAME TO {table}")
    for kind, sql in rows:
        if kind != "table":
            op.execute(sql)


def downgrade() -> None:
    raise NotImplementedError("go back by restoring the backup made before the upgrade")
