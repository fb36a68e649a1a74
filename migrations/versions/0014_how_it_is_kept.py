"""How a piece is kept while nothing is done to it: stored is work too, and says how.

Frozen: what the tables become stands here alone, so that this revision always makes the same.
"""

from __future__ import annotations

from alembic import op  # noqa: TID253

from finishlog.store.remade_sqlite import listed, remake, widen

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
        widen(table, "operation", WORK)
    rule = f"CONSTRAINT ck_work_kept CHECK (kept IN ({listed(KEPT.split())}))"
    remake("work", lambda sql: f"{sql[: sql.rindex(')')]}, {rule})")


def downgrade() -> None:
    raise NotImplementedError("go back by restoring the backup made before the upgrade")
