"""What a piece weighs, wood that is turned or cut, and a label that speaks of several airs.

Frozen: nothing here is read from the program, so that this revision always makes the same tables.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from alembic import op  # noqa: TID253
from sqlalchemy import text

revision = "0009"
down_revision = "0008"
branch_labels = None
depends_on = None

# The same stage in colder air, where the can gives it: [°C, low, typical, high hours] each.
COLDER = """
ALTER TABLE product_figure ADD COLUMN colder TEXT DEFAULT '[]' NOT NULL;
ALTER TABLE figure_set_stage ADD COLUMN colder TEXT DEFAULT '[]' NOT NULL;
"""
OPERATIONS = """coat shape sand raise-grain denib scuff mask untape wipe buff rub-out glue-up
    hardware solvent-wipe rinse steel-wool mend level sun stack pack use"""
MEASURED = "temperature_c IS NOT NULL OR moisture_pct IS NOT NULL"

# Said of the column where it is added, and of the table where that is made anew.
WEIGHT = "CONSTRAINT ck_piece_reading_weight CHECK (weight_g > 0)"


def upgrade() -> None:
    for statement in COLDER.strip().splitlines():
        op.execute(statement)
    op.execute(
        f"ALTER TABLE piece_reading ADD COLUMN weight_g FLOAT {WEIGHT}",
    )
    _remake(
        "piece_reading",
        lambda sql: sql.replace(MEASURED, f"{MEASURED} OR weight_g IS NOT NULL").replace(
            f" {WEIGHT}", f", {WEIGHT}"
        ),
    )
    for table in ("work", "step", "part_step"):
        _widen(table, "operation", OPERATIONS)


def _widen(table: str, column: str, words: str) -> None:
    """Let a closed set hold more words."""
    listed = ", ".join(f"'{word}'" for word in words.split())
    check = f"CONSTRAINT ck_{table}_{column} CHECK ({column} IN ({listed}))"

    def wider(sql: str) -> str:
        found = rf"CONSTRAINT ck_{table}_{column} CHECK \({column} IN \([^)]*\)\)"
        new, count = re.subn(found, lambda _: check, sql)
        assert count == 1, f"{table}.{column} has no closed set"
        return new

    _remake(table, wider)


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
