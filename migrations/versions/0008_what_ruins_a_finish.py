"""What ruins a finish: a look at the wood, a can not stirred, a tool not cleaned, what slides.

Frozen: what the tables become stands here alone, so that this revision always makes the same.
"""

from __future__ import annotations

from alembic import op  # noqa: TID253

from finishlog.store.remade_sqlite import listed, remake, widen

revision = "0008"
down_revision = "0007"
branch_labels = None
depends_on = None

COLUMNS = """
ALTER TABLE coat ADD COLUMN stirred BOOLEAN;
ALTER TABLE coat ADD COLUMN tool TEXT DEFAULT '' NOT NULL;
ALTER TABLE product ADD COLUMN sheen TEXT DEFAULT '' NOT NULL;
ALTER TABLE face ADD COLUMN meets TEXT DEFAULT '' NOT NULL;
"""

# A brush, a gun or an air line that was cleaned, in the person's own words.
CLEANED = """
CREATE TABLE cleaned (
    entry_id INTEGER NOT NULL,
    tool TEXT NOT NULL,
    note TEXT DEFAULT '' NOT NULL,
    CONSTRAINT pk_cleaned PRIMARY KEY (entry_id),
    CONSTRAINT fk_cleaned_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
)
"""

WORDS = {
    ("entry", "kind"): """coat work check fault stripped joined moved reading air-import
        piece-reading heat container cleaned rags away handover set-aside resumed review note photo
        promise withdrawal""",
    ("film_check", "test"): """touch thumbnail sand smell scratch solvent-rub straightedge
        control-sample raking-light""",
    ("film_check", "found"): """tacky gums prints smells flakes dry no-print powder no-smell holds
        softens resists cupped flat sample-soft sample-dry glue scratches snipe looks-clean""",
    ("fault", "what"): """run blush fisheye wrinkle blister bubble peel craze dust brush-mark
        orange-peel lap-mark blotch wrong-colour wrong-sheen left-thick bleed-back rubbed-through
        print-mark dent glue-spot scratches snipe open-joint cupped other""",
    (
        "container_event",
        "deed",
    ): """opened mixed topped-up stirred unstirred strained frozen tested tinted
        condemned emptied thrown-out""",
}
SHEENS = "matte velvet eggshell satin semi-gloss gloss high-gloss"
MEETS = "slides shuts"


def upgrade() -> None:
    for statement in (*COLUMNS.strip().splitlines(), CLEANED):
        op.execute(statement)
    for deed in ("UPDATE", "DELETE"):
        op.execute(
            f"CREATE TRIGGER no_{deed.lower()}_of_cleaned BEFORE {deed} ON cleaned BEGIN"
            f" SELECT RAISE(ABORT, 'the log is only added to: no {deed} of cleaned'); END"
        )
    for (table, column), words in WORDS.items():
        widen(table, column, words)
    _hold("product", "sheen", SHEENS)
    _hold("face", "meets", MEETS)


def _hold(table: str, column: str, words: str) -> None:
    """Hold a column to a closed set, or to nothing said."""
    rule = f"CONSTRAINT ck_{table}_{column} CHECK ({column} IN ({listed(['', *words.split()])}))"
    remake(table, lambda sql: f"{sql[: sql.rindex(')')]}, {rule})")


def downgrade() -> None:
    raise NotImplementedError("go back by restoring the backup made before the upgrade")
