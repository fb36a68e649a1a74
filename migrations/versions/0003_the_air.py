"""The air hour by hour: loggers' files, wet bulbs, usual days, heaters; wood's own readings.

Frozen: what the tables become stands here alone, so that this revision always makes the same.
"""

from __future__ import annotations

from alembic import op  # noqa: TID253

from finishlog.store.remade_sqlite import widen

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None

KINDS = """coat work check fault stripped joined moved reading air-import piece-reading heat
container rags away handover set-aside resumed review note photo promise withdrawal"""

COLUMNS = """
ALTER TABLE reading ADD COLUMN wet_bulb_c FLOAT;
ALTER TABLE usual_day ADD COLUMN season_from INTEGER;
ALTER TABLE usual_day ADD COLUMN season_until INTEGER;
ALTER TABLE usual_day ADD COLUMN heated_from_min INTEGER;
ALTER TABLE usual_day ADD COLUMN heated_until_min INTEGER;
ALTER TABLE usual_day ADD COLUMN heated_c FLOAT;
"""

TABLES = (
    """
CREATE TABLE usual_hour (
    usual_day_id INTEGER NOT NULL,
    minute INTEGER NOT NULL,
    temperature_c FLOAT NOT NULL,
    humidity_pct FLOAT,
    CONSTRAINT pk_usual_hour PRIMARY KEY (usual_day_id, minute),
    CONSTRAINT ck_usual_hour_minute CHECK (minute BETWEEN 0 AND 1439),
    CONSTRAINT ck_usual_hour_humidity CHECK (humidity_pct BETWEEN 0 AND 100),
    CONSTRAINT fk_usual_hour_usual_day_id FOREIGN KEY(usual_day_id) REFERENCES usual_day (id)
)
""",
    """
CREATE TABLE air_import (
    entry_id INTEGER NOT NULL,
    room_id INTEGER NOT NULL,
    file_name TEXT NOT NULL,
    count INTEGER NOT NULL,
    CONSTRAINT pk_air_import PRIMARY KEY (entry_id),
    CONSTRAINT fk_air_import_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id),
    CONSTRAINT fk_air_import_room_id FOREIGN KEY(room_id) REFERENCES room (id)
)
""",
    """
CREATE TABLE logged_air (
    entry_id INTEGER NOT NULL,
    at VARCHAR(27) NOT NULL,
    temperature_c FLOAT NOT NULL,
    humidity_pct FLOAT NOT NULL,
    CONSTRAINT pk_logged_air PRIMARY KEY (entry_id, at),
    CONSTRAINT ck_logged_air_humidity CHECK (humidity_pct BETWEEN 0 AND 100),
    CONSTRAINT fk_logged_air_entry_id FOREIGN KEY(entry_id) REFERENCES air_import (entry_id)
)
 WITHOUT ROWID
""",
    """
CREATE TABLE piece_reading (
    entry_id INTEGER NOT NULL,
    temperature_c FLOAT,
    moisture_pct FLOAT,
    CONSTRAINT pk_piece_reading PRIMARY KEY (entry_id),
    CONSTRAINT ck_piece_reading_moisture CHECK (moisture_pct BETWEEN 0 AND 200),
    CONSTRAINT ck_piece_reading_something
        CHECK (temperature_c IS NOT NULL OR moisture_pct IS NOT NULL),
    CONSTRAINT fk_piece_reading_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id)
)
""",
    """
CREATE TABLE heat (
    entry_id INTEGER NOT NULL,
    room_id INTEGER NOT NULL,
    temperature_c FLOAT,
    CONSTRAINT pk_heat PRIMARY KEY (entry_id),
    CONSTRAINT fk_heat_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id),
    CONSTRAINT fk_heat_room_id FOREIGN KEY(room_id) REFERENCES room (id)
)
""",
)

KEPT = ("air_import", "logged_air", "piece_reading", "heat")


def upgrade() -> None:
    for statement in (*COLUMNS.strip().splitlines(), *TABLES):
        op.execute(statement)
    widen("entry", "kind", KINDS)
    for table in KEPT:
        _keep(table)


def _keep(table: str) -> None:
    """Let nothing change or delete a row of the log."""
    for deed in ("UPDATE", "DELETE"):
        op.execute(
            f"CREATE TRIGGER no_{deed.lower()}_of_{table} BEFORE {deed} ON {table} BEGIN"
            f" SELECT RAISE(ABORT, 'the log is only added to: no {deed} of {table}'); END"
        )


def downgrade() -> None:
    raise NotImplementedError("go back by restoring the backup made before the upgrade")
