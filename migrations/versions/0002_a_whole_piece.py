"""What a whole piece needs: edges, cans and mixes, faults and reviews in full, being away.

Frozen: what the tables become stands here alone, so that this revision always makes the same.
"""

from __future__ import annotations

from alembic import op  # noqa: TID253

from finishlog.store.remade_sqlite import remake, widen

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None

OPERATIONS = """coat sand raise-grain denib scuff mask untape wipe buff rub-out glue-up hardware
solvent-wipe rinse steel-wool mend level sun stack pack use"""

# The closed sets of words that grew: (table, column, words).
WIDER = (
    ("face", "kind", "show hidden joint edge"),
    ("step", "operation", OPERATIONS),
    ("part_step", "operation", OPERATIONS),
    ("work", "operation", OPERATIONS),
    ("stripped", "operation", "strip sand-through scrape wash"),
    (
        "container_event",
        "deed",
        "opened mixed topped-up frozen tested condemned emptied thrown-out",
    ),
    (
        "entry",
        "kind",
        "coat work check fault stripped joined moved reading container rags away handover"
        " set-aside resumed review note photo promise withdrawal",
    ),
)

COLUMNS = """
ALTER TABLE project ADD COLUMN used_for TEXT DEFAULT '' NOT NULL;
ALTER TABLE room ADD COLUMN archived_at VARCHAR(27);
ALTER TABLE steps ADD COLUMN archived_at VARCHAR(27);
ALTER TABLE product ADD COLUMN archived_at VARCHAR(27);
ALTER TABLE product ADD COLUMN method TEXT;
ALTER TABLE product ADD COLUMN sheen TEXT DEFAULT '' NOT NULL;
ALTER TABLE container ADD COLUMN made_at VARCHAR(27);
ALTER TABLE container ADD COLUMN use_by_at VARCHAR(27);
ALTER TABLE container ADD COLUMN amount_ml FLOAT;
ALTER TABLE container ADD COLUMN batch TEXT DEFAULT '' NOT NULL;
ALTER TABLE container ADD COLUMN archived_at VARCHAR(27);
ALTER TABLE mix_part ADD COLUMN volume_ml FLOAT;
ALTER TABLE mix_part ADD COLUMN weight_g FLOAT;
ALTER TABLE work ADD COLUMN note TEXT DEFAULT '' NOT NULL;
ALTER TABLE film_check ADD COLUMN note TEXT DEFAULT '' NOT NULL;
ALTER TABLE stripped ADD COLUMN note TEXT DEFAULT '' NOT NULL;
ALTER TABLE joined ADD COLUMN glue TEXT DEFAULT '' NOT NULL;
ALTER TABLE container_event ADD COLUMN note TEXT DEFAULT '' NOT NULL;
ALTER TABLE handover ADD COLUMN note TEXT DEFAULT '' NOT NULL;
ALTER TABLE review ADD COLUMN text TEXT DEFAULT '' NOT NULL;
ALTER TABLE photo ADD COLUMN note TEXT DEFAULT '' NOT NULL;
CREATE TABLE away (
    entry_id INTEGER NOT NULL, reason TEXT DEFAULT '' NOT NULL,
    CONSTRAINT pk_away PRIMARY KEY (entry_id),
    CONSTRAINT fk_away_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
);
CREATE TABLE thing_change (
    id INTEGER NOT NULL, act_id INTEGER NOT NULL, kind TEXT NOT NULL, thing_id INTEGER NOT NULL,
    what TEXT NOT NULL, was TEXT DEFAULT '' NOT NULL, becomes TEXT DEFAULT '' NOT NULL,
    CONSTRAINT pk_thing_change PRIMARY KEY (id),
    CONSTRAINT ck_thing_change_kind CHECK (kind IN ('project', 'part', 'product', 'room',
        'steps', 'container')),
    CONSTRAINT fk_thing_change_act_id FOREIGN KEY(act_id) REFERENCES act (id)
);
CREATE INDEX ix_thing_change_act_id ON thing_change (act_id);
CREATE INDEX ix_thing_change_kind_thing_id ON thing_change (kind, thing_id);
"""

# Rules on the new columns: (table, name, condition).
RULES = (
    ("product", "method", "method IN ('brush', 'wipe', 'spray')"),
    ("container", "amount", "amount_ml > 0"),
    ("mix_part", "volume", "volume_ml > 0"),
    ("mix_part", "weight", "weight_g > 0"),
    ("review", "outcome", "outcome IN ('good', 'fair', 'failed')"),
)


def upgrade() -> None:
    for statement in filter(str.strip, COLUMNS.split(";")):
        op.execute(statement)
    for table, column, words in WIDER:
        widen(table, column, words)
    for table, name, condition in RULES:
        _hold(table, f"CONSTRAINT ck_{table}_{name} CHECK ({condition})")
    for table in ("away", "thing_change"):
        _keep(table)


def _hold(table: str, rule: str) -> None:
    """Hold the rows of a table to one more rule."""
    remake(table, lambda sql: f"{sql[: sql.rindex(')')]}, {rule})")


def _keep(table: str) -> None:
    """Let nothing change or delete a row of the log."""
    for deed in ("UPDATE", "DELETE"):
        op.execute(
            f"CREATE TRIGGER no_{deed.lower()}_of_{table} BEFORE {deed} ON {table} BEGIN"
            f" SELECT RAISE(ABORT, 'the log is only added to: no {deed} of {table}'); END"
        )


def downgrade() -> None:
    raise NotImplementedError("go back by restoring the backup made before the upgrade")
