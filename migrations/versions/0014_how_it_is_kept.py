"""How a piece is kept while nothing is done to it: stored is work too, and says how.

Frozen: nothing here is read from the program, so that this revision always makes the same tables.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from alembic import op  # noqa: TID253
from sqlalchemy import text

revision = "0014"
down_revision = "0013"
branch_labels = None
depends_on = None

WORK = """coat shape sand raise-grain denib scuff mask untape wipe buff rub-out glue-up
    hardware solvent-wipe rinse steel-wool mend level sun stack pack store use"""
KEPT = "stickers stacked wrapped shut-in standing flat"


def upgrade() -> None:
    op.execute("ALTER TABLE work ADD COLUMN kept TEXT")
    for table in ("work", "step", "part_step"):
        _widen(table, "operation", WORK)
    rule = f"CONSTRAINT ck_work_kept CHECK (kept IN ({_listed(KEPT.split())}))"
    _remake("work", lambda sql: f"{sql[: sql.rindex(')')]}, {rule})")


def _listed(words: list[str]) -> str:
    return ", ".join(f"'{word}'" for word in words)


def _widen(table: str, column: str, words: str) -> None:
    """Let a closed set hold more words."""
    check = f"CONSTRAINT ck_{table}_{column} CHECK ({column} IN ({_listed(words.split())}))"

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
