"""What the can says beyond recoat: a window with a gap in it.

Frozen: nothing here is read from the program, so that this revision always makes the same tables.
"""

from __future__ import annotations

from alembic import op  # noqa: TID253

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None


def upgrade() -> None:
    for table in ("product_window", "figure_set"):
        op.execute(f"ALTER TABLE {table} ADD COLUMN again_opens_h FLOAT")
        op.execute(f"ALTER TABLE {table} ADD COLUMN again_closes_h FLOAT")
        op.execute(f"ALTER TABLE {table} ADD COLUMN again_scuffed BOOLEAN")


def downgrade() -> None:
    raise NotImplementedError("go back by restoring the backup made before the upgrade")
