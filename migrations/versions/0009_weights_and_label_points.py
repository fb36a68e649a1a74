"""What a piece weighs, wood that is turned or cut, and a label that speaks of several airs.

Frozen: what the tables become stands here alone, so that this revision always makes the same.
"""

from __future__ import annotations

from alembic import op  # noqa: TID253

from finishlog.store.remade_sqlite import remake, widen

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
    remake(
        "piece_reading",
        lambda sql: sql.replace(MEASURED, f"{MEASURED} OR weight_g IS NOT NULL").replace(
            f" {WEIGHT}", f", {WEIGHT}"
        ),
    )
    for table in ("work", "step", "part_step"):
        widen(table, "operation", OPERATIONS)


def downgrade() -> None:
    raise NotImplementedError("go back by restoring the backup made before the upgrade")
