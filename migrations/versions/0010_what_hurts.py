"""What hurts whoever does it: a test for lead, and what one breathes through.

Frozen: what the tables become stands here alone, so that this revision always makes the same.
"""

from __future__ import annotations

from alembic import op  # noqa: TID253

from finishlog.store.remade_sqlite import widen

revision = "0010"
down_revision = "0009"
branch_labels = None
depends_on = None

# A respirator, in the person's own words: opened, worn, gone.
RESPIRATOR = """
CREATE TABLE respirator (
    entry_id INTEGER NOT NULL,
    name TEXT NOT NULL,
    deed TEXT NOT NULL,
    holds TEXT,
    worn_min FLOAT,
    note TEXT DEFAULT '' NOT NULL,
    CONSTRAINT pk_respirator PRIMARY KEY (entry_id),
    CONSTRAINT ck_respirator_deed CHECK (deed IN ('opened', 'worn', 'gone')),
    CONSTRAINT ck_respirator_holds CHECK (holds IN ('particles', 'organic-vapour', 'formaldehyde',
        'ammonia', 'supplied-air')),
    CONSTRAINT ck_respirator_worn CHECK (worn_min > 0),
    CONSTRAINT fk_respirator_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
)
"""

WORDS = {
    ("entry", "kind"): """coat work check fault stripped joined moved reading air-import
        piece-reading heat container cleaned respirator rags away handover set-aside resumed review
        note photo promise withdrawal""",
    ("film_check", "test"): """touch thumbnail sand smell scratch solvent-rub straightedge
        control-sample raking-light lead-test""",
    ("film_check", "found"): """tacky gums prints smells flakes dry no-print powder no-smell holds
        softens resists cupped flat sample-soft sample-dry glue scratches snipe looks-clean lead
        no-lead""",
}


def upgrade() -> None:
    op.execute(RESPIRATOR)
    for deed in ("UPDATE", "DELETE"):
        op.execute(
            f"CREATE TRIGGER no_{deed.lower()}_of_respirator BEFORE {deed} ON respirator BEGIN"
            f" SELECT RAISE(ABORT, 'the log is only added to: no {deed} of respirator'); END"
        )
    for (table, column), words in WORDS.items():
        widen(table, column, words)


def downgrade() -> None:
    raise NotImplementedError("go back by restoring the backup made before the upgrade")
