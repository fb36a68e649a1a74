"""How much of a finish a coat took, and whether a respirator hung open or lay in a bag.

Frozen: what the tables become stands here alone, so that this revision always makes the same.
"""

from __future__ import annotations

from alembic import op  # noqa: TID253

from finishlog.store.remade_sqlite import remake

revision = "0016"
down_revision = "0015"
branch_labels = None
depends_on = None

RULES = {
    "coat": "CONSTRAINT ck_coat_amount CHECK (amount_ml > 0)",
    "respirator": "CONSTRAINT ck_respirator_kept CHECK (kept IN ('open', 'bag'))",
}


def upgrade() -> None:
    op.execute("ALTER TABLE coat ADD COLUMN amount_ml FLOAT")
    op.execute("ALTER TABLE respirator ADD COLUMN kept TEXT")
    for table, rule in RULES.items():
        _hold_to(table, rule)


def _hold_to(table: str, rule: str) -> None:
    remake(table, lambda sql: f"{sql[: sql.rindex(')')]}, {rule})")


def downgrade() -> None:
    raise NotImplementedError("go back by restoring the backup made before the upgrade")
