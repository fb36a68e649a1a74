"""What kind of place a room is, what burns in it, how it is aired, and which rooms it leads to.

Frozen: what the tables become stands here alone, so that this revision always makes the same.
"""

from __future__ import annotations

from alembic import op  # noqa: TID253

from finishlog.store.remade_sqlite import remake

revision = "0011"
down_revision = "0010"
branch_labels = None
depends_on = None

COLUMNS = """
ALTER TABLE room ADD COLUMN has TEXT;
ALTER TABLE room ADD COLUMN kind TEXT DEFAULT '' NOT NULL;
ALTER TABLE room ADD COLUMN volume_m3 FLOAT;
ALTER TABLE room ADD COLUMN exhaust_m3_h FLOAT;
ALTER TABLE room ADD COLUMN mixing FLOAT;
ALTER TABLE room ADD COLUMN lives TEXT DEFAULT '' NOT NULL;
ALTER TABLE room ADD COLUMN put_out TEXT DEFAULT '' NOT NULL;
ALTER TABLE room ADD COLUMN out_at VARCHAR(27);
"""
RULES = """
CONSTRAINT ck_room_kind CHECK (kind IN ('', 'basement', 'garage', 'attached', 'dwelling', 'outdoors'));
CONSTRAINT ck_room_volume CHECK (volume_m3 > 0);
CONSTRAINT ck_room_exhaust CHECK (exhaust_m3_h >= 0);
CONSTRAINT ck_room_mixing CHECK (mixing BETWEEN 1 AND 10);
"""  # noqa: E501

# What leads from a room to another, told once for each pair.
JOINED = """
CREATE TABLE room_join (
    room_id INTEGER NOT NULL,
    to_room_id INTEGER NOT NULL,
    opening TEXT NOT NULL,
    CONSTRAINT pk_room_join PRIMARY KEY (room_id, to_room_id),
    CONSTRAINT ck_room_join_opening CHECK (opening IN ('door', 'gap', 'duct')),
    CONSTRAINT fk_room_join_room_id FOREIGN KEY(room_id) REFERENCES room (id),
    CONSTRAINT fk_room_join_to_room_id FOREIGN KEY(to_room_id) REFERENCES room (id)
)
"""


def upgrade() -> None:
    for statement in (*COLUMNS.strip().splitlines(), JOINED):
        op.execute(statement)
    rules = RULES.strip().replace(";\n", ", ").rstrip(";")
    remake("room", lambda sql: f"{sql[: sql.rindex(')')]}, {rules})")


def downgrade() -> None:
    raise NotImplementedError("go back by restoring the backup made before the upgrade")
