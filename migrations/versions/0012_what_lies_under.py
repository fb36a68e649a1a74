"""What lies under a finish: a film that took until now, and how thick one coat may be.

Frozen: what the tables become stands here alone, so that this revision always makes the same.
"""

from __future__ import annotations

from alembic import op  # noqa: TID253

from finishlog.store.remade_sqlite import widen

revision = "0012"
down_revision = "0011"
branch_labels = None
depends_on = None

COLUMNS = """
ALTER TABLE film_check ADD COLUMN only_now BOOLEAN;
ALTER TABLE product_says ADD COLUMN thickest_um FLOAT;
"""

OWN = "not-over needs wait window coats-a-day most-coats not-on overrule thickest"


def upgrade() -> None:
    for statement in COLUMNS.strip().splitlines():
        op.execute(statement)
    widen("product_says", "own", OWN)


def downgrade() -> None:
    raise NotImplementedError("go back by restoring the backup made before the upgrade")
