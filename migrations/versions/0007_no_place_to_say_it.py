"""What there was no place to say: a coat broken off or flooded on, more tests, where on a face.

Frozen: what the tables become stands here alone, so that this revision always makes the same.
"""

from __future__ import annotations

import re

from alembic import op  # noqa: TID253

from finishlog.store.remade_sqlite import remake

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
    remake("film_check", lambda sql: _held(_held(sql, "test", TESTS), "found", FOUND))


def _held(sql: str, column: str, listed: str) -> str:
    """Hold a column of `film_check` to another closed set."""
    rule = f"ck_film_check_{column} CHECK"
    return re.sub(rf"{rule} \([^)]*\)\)", f"{rule} ({column} IN ({listed}))", sql)


def downgrade() -> None:
    raise NotImplementedError("go back by restoring the backup made before the upgrade")
