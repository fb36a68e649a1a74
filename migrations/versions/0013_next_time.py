"""What comes again next time: wood bared as a panel shrank, smeared wax, and words for next time.

Frozen: what the tables become stands here alone, so that this revision always makes the same.
"""

from __future__ import annotations

from alembic import op  # noqa: TID253

from finishlog.store.remade_sqlite import widen

revision = "0013"
down_revision = "0012"
branch_labels = None
depends_on = None

WORDS = {
    ("fault", "what"): """run blush fisheye wrinkle blister bubble peel craze dust brush-mark
        orange-peel lap-mark blotch wrong-colour wrong-sheen left-thick bleed-back rubbed-through
        print-mark dent glue-spot scratches snipe open-joint cupped bare-strip smear other""",
}


def upgrade() -> None:
    op.execute("ALTER TABLE note ADD COLUMN next_time BOOLEAN")
    for (table, column), words in WORDS.items():
        widen(table, column, words)


def downgrade() -> None:
    raise NotImplementedError("go back by restoring the backup made before the upgrade")
