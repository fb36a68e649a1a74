"""What the can says beyond recoat: a window with a gap in it, the person's own rules.

Frozen: nothing here is read from the program, so that this revision always makes the same tables.
"""

from __future__ import annotations

from alembic import op  # noqa: TID253

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None

SAYS = """
CREATE TABLE product_says (
    id INTEGER NOT NULL,
    product_id INTEGER NOT NULL,
    own TEXT NOT NULL,
    of_names TEXT DEFAULT '[]' NOT NULL,
    of_product_id INTEGER,
    between_names TEXT DEFAULT '[]' NOT NULL,
    wait_low_h FLOAT,
    wait_typical_h FLOAT,
    wait_high_h FLOAT,
    wait_source TEXT DEFAULT '' NOT NULL,
    wait_at_temperature_c FLOAT,
    wait_at_humidity_pct FLOAT,
    wait_note TEXT DEFAULT '' NOT NULL,
    coats INTEGER,
    because TEXT DEFAULT '' NOT NULL,
    valid_from VARCHAR(27) NOT NULL,
    act_id INTEGER,
    CONSTRAINT pk_product_says PRIMARY KEY (id),
    CONSTRAINT ck_product_says_own CHECK (own IN (
        'not-over', 'needs', 'wait', 'window', 'coats-a-day', 'most-coats', 'not-on', 'overrule')),
    CONSTRAINT ck_product_says_wait CHECK (
        (wait_low_h IS NULL AND wait_typical_h IS NULL AND wait_high_h IS NULL)
        OR (wait_low_h IS NOT NULL AND wait_typical_h IS NOT NULL AND wait_high_h IS NOT NULL
        AND 0 <= wait_low_h AND wait_low_h <= wait_typical_h AND wait_typical_h <= wait_high_h)),
    CONSTRAINT ck_product_says_coats CHECK (coats > 0),
    CONSTRAINT fk_product_says_product_id FOREIGN KEY(product_id) REFERENCES product (id),
    CONSTRAINT fk_product_says_of_product_id FOREIGN KEY(of_product_id) REFERENCES product (id)
)
"""


def upgrade() -> None:
    for table in ("product_window", "figure_set"):
        op.execute(f"ALTER TABLE {table} ADD COLUMN again_opens_h FLOAT")
        op.execute(f"ALTER TABLE {table} ADD COLUMN again_closes_h FLOAT")
        op.execute(f"ALTER TABLE {table} ADD COLUMN again_scuffed BOOLEAN")
    op.execute(SAYS)
    said = "product_says (product_id, valid_from)"
    op.execute(f"CREATE INDEX ix_product_says_product_id_valid_from ON {said}")


def downgrade() -> None:
    raise NotImplementedError("go back by restoring the backup made before the upgrade")
