"""How a revision alters a CHECK: SQLite cannot, so the table is copied into a changed one.

What a table becomes stands in the revision alone; here is only how. Foreign keys are off while
migrations run (`upgrade`).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable

from alembic import op  # noqa: TID253
from sqlalchemy import text


def listed(words: Iterable[str]) -> str:
    """Write words as SQL texts."""
    return ", ".join(f"'{word}'" for word in words)


def widen(table: str, column: str, words: str) -> None:
    """Let the closed set of a column hold these words; AssertionError where it has none."""
    check = f"CONSTRAINT ck_{table}_{column} CHECK ({column} IN ({listed(words.split())}))"

    def wider(sql: str) -> str:
        found = rf"CONSTRAINT ck_{table}_{column} CHECK \({column} IN \([^)]*\)\)"
        new, count = re.subn(found, lambda _: check, sql)
        assert count == 1, f"{table}.{column} has no closed set"
        return new

    remake(table, wider)


def remake(table: str, change: Callable[[str], str]) -> None:
    """Copy a table into a changed one of the same name, with its indexes and triggers.

    `change`: makes of the SQL that made it the SQL that makes it anew.
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
    names = ", ".join(row[1] for row in connection.execute(text("PRAGMA table_info(remade)")))
    op.execute(f"INSERT INTO remade ({names}) SELECT {names} FROM {table}")
    op.execute(f"DROP TABLE {table}")
    op.execute(f"ALTER TABLE remade RENAME TO {table}")
    for kind, sql in rows:
        if kind != "table":
            op.execute(sql)
