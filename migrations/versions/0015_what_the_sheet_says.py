"""The safety data sheet of a product: where it lies, and its figures, which outrank its class.

Frozen: what the tables become stands here alone, so that this revision always makes the same.
"""

from __future__ import annotations

from alembic import op  # noqa: TID253

from finishlog.store.remade_sqlite import widen

revision = "0015"
down_revision = "0014"
branch_labels = None
depends_on = None

COLUMNS = """
ALTER TABLE product ADD COLUMN sds TEXT DEFAULT '' NOT NULL;
ALTER TABLE product_says ADD COLUMN figure FLOAT;
"""

OWN = """not-over needs wait window coats-a-day most-coats not-on overrule thickest free-of holds
    lel day-limit short-limit flash solvent density carrier"""


def upgrade() -> None:
    for statement in COLUMNS.strip().splitlines():
        op.execute(statement)
    widen("product_says", "own", OWN)


def downgrade() -> None:
    raise NotImplementedError("go back by restoring the backup made before the upgrade")
