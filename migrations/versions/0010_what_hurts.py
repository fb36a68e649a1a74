"""What hurts whoever does it: a test for lead, and what one breathes through.

Frozen: nothing here is read from the program, so that this revision always makes the same tables.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from alembic import op  # noqa: TID253
from sqlalchemy import text

revision = "0010"
down_revision = "0009"
branch_labels = None
depends_on = None

# A respirator, in the person's own words: opened, worn, gone.
RESPIRATOR = """
CREATE TABLE respirator (
    entry_id INTEGER NOT NULL,
    name TEXT NOT NULL,
    deed TEXT NOT NULL,
    holds TEXT,
    worn_min FLOAT,
    note TEXT DEFAULT '' NOT NULL,
    CONSTRAINT pk_respirator PRIMARY KEY (entry_id),
    CONSTRAINT ck_respirator_deed CHECK (deed IN ('opened', 'worn', 'gone')),
    CONSTRAINT ck_respirator_holds CHECK (holds IN ('particles', 'organic-vapour', 'formaldehyde',
        'ammonia', 'supplied-air')),
    CONSTRAINT ck_respirator_worn CHECK (worn_min > 0),
    CONSTRAINT fk_respirator_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
)
"""

WORDS = {
    ("entry", "kind"): """coat work check fault stripped joined moved reading air-import
        piece-reading heat container cleaned respirator rags away handover set-aside resumed review
        note photo promise withdrawal""",
    ("film_check", "test"): """touch thumbnail sand smell scratch solvent-rub straightedge
        control-sample raking-light lead-test""",
    ("film_check", "found"): """tacky gums prints smells flakes dry no-print powder no-smell holds
        softens resists cupped flat sample-soft sample-dry glue scratches snipe looks-clean lead
        no-lead""",
}


def upgrade() -> None:
    op.execute(RESPIRATOR)
    for deed in ("UPDATE", "DELETE"):
        op.execute(
            f"CREATE TRIGGER no_{deed.lower()}_of_respirator BEFORE {deed} ON respirator BEGIN"
            f" SELECT RAISE(ABORT, 'the log is only added to: no {deed} of respirator'); END"
        )
    for (table, column), words in WORDS.items():
        _widen(table, column, words)


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
