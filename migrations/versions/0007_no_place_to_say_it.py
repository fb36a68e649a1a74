"""What there was no place to say: a coat broken off or flooded on, more tests, where on a face.

Frozen: nothing here is read from the program, so that this revision always makes the same tables.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from alembic import op  # noqa: TID253
from sqlalchemy import text

revision = "0007"
down_revision = "0006"
branch_labels = None
depends_on = None

TESTS = """
    'touch', 'thumbnail', 'sand', 'smell', 'scratch', 'solvent-rub', 'straightedge',
    'control-sample'
"""
FOUND = """
    'tacky', 'gums', 'prints', 'smells', 'flakes', 'dry', 'no-print', 'powder', 'no-smell', 'holds',
    'softens', 'resists', 'cupped', 'flat', 'sample-soft', 'sample-dry'
"""

# A face that was divided after its first coat: its zones were parts of another then.
ZONE_WAS = """
CREATE TABLE zone_was (
    zone_id INTEGER NOT NULL,
    was_zone_id INTEGER NOT NULL,
    CONSTRAINT pk_zone_was PRIMARY KEY (zone_id, was_zone_id),
    CONSTRAINT fk_zone_was_zone_id FOREIGN KEY(zone_id) REFERENCES zone (id),
    CONSTRAINT fk_zone_was_was_zone_id FOREIGN KEY(was_zone_id) REFERENCES zone (id)
)
"""


def upgrade() -> None:
    op.execute("ALTER TABLE coat ADD COLUMN stopped TEXT")
    op.execute("ALTER TABLE coat ADD COLUMN flooded BOOLEAN")
    for table in ("film_check", "work"):
        op.execute(f"ALTER TABLE {table} ADD COLUMN place TEXT DEFAULT '' NOT NULL")
    op.execute(ZONE_WAS)
    op.execute("CREATE INDEX ix_zone_was_was_zone_id ON zone_was (was_zone_id)")
    _remake("film_check", lambda sql: _held(_held(sql, "test", TESTS), "found", FOUND))


def _held(sql: str, column: str, listed: str) -> str:
    """Hold a column of `film_check` to another closed set."""
    rule = f"ck_film_check_{column} CHECK"
    return re.sub(rf"{rule} \([^)]*\)\)", f"{rule} ({column} IN ({listed}))", sql)


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
