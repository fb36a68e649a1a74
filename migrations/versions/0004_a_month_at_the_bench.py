"""What a month at the bench asked for: see the statements below, each with its reason.

Frozen: nothing here is read from the program, so that this revision always makes the same tables.
"""

from __future__ import annotations

from alembic import op  # noqa: TID253

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None

COLUMNS = """
-- A thermometer alone: the water in the air is supposed, not read.
ALTER TABLE reading ADD COLUMN humidity_supposed BOOLEAN;
-- What a part that came in finished had on it, of unknown age: varnish, paint, wax, unknown.
ALTER TABLE part ADD COLUMN old_finish TEXT DEFAULT '' NOT NULL;
-- A heater that runs on some days of the week only.
ALTER TABLE usual_day ADD COLUMN heated_days INTEGER;
-- The act that changed a label, so that undo can take it back.
ALTER TABLE product_figure ADD COLUMN act_id INTEGER;
ALTER TABLE product_window ADD COLUMN act_id INTEGER;
-- What heats a room: sealed, fan, glow, flame.
ALTER TABLE room ADD COLUMN heater TEXT DEFAULT '' NOT NULL;
"""


def upgrade() -> None:
    """Add what was missing."""
    for statement in COLUMNS.split(";"):
        if statement.strip():
            op.execute(statement)


def downgrade() -> None:
    raise NotImplementedError("go back by restoring the backup made before the upgrade")
