"""The first schema: what there is, what happened, what coats were judged by.

Frozen: nothing here is read from the program, so that this revision always makes the same tables.
"""

from __future__ import annotations

from alembic import op  # noqa: TID253

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None

# "fnlg": marks the file as finishlog's own.
APPLICATION_ID = 0x666E6C67

TABLES = """
CREATE TABLE room (
    id INTEGER NOT NULL, name TEXT NOT NULL, note TEXT DEFAULT '' NOT NULL,
    CONSTRAINT pk_room PRIMARY KEY (id),
    CONSTRAINT uq_room_name UNIQUE (name)
);
CREATE TABLE usual_day (
    id INTEGER NOT NULL, room_id INTEGER NOT NULL, valid_from VARCHAR(27) NOT NULL,
    coldest_c FLOAT, temperature_c FLOAT, humidity_pct FLOAT,
    CONSTRAINT pk_usual_day PRIMARY KEY (id),
    CONSTRAINT ck_usual_day_humidity CHECK (humidity_pct BETWEEN 0 AND 100),
    CONSTRAINT fk_usual_day_room_id FOREIGN KEY(room_id) REFERENCES room (id)
);
CREATE INDEX ix_usual_day_room_id_valid_from ON usual_day (room_id, valid_from);
CREATE TABLE shop_week (
    id INTEGER NOT NULL, valid_from VARCHAR(27) NOT NULL,
    CONSTRAINT pk_shop_week PRIMARY KEY (id)
);
CREATE TABLE shop_hours (
    id INTEGER NOT NULL, shop_week_id INTEGER NOT NULL, weekday INTEGER NOT NULL,
    opens_min INTEGER NOT NULL, closes_min INTEGER NOT NULL,
    CONSTRAINT pk_shop_hours PRIMARY KEY (id),
    CONSTRAINT ck_shop_hours_weekday CHECK (weekday BETWEEN 0 AND 6),
    CONSTRAINT ck_shop_hours_opens CHECK (opens_min BETWEEN 0 AND 1439),
    CONSTRAINT ck_shop_hours_closes CHECK (closes_min BETWEEN 0 AND 1440),
    CONSTRAINT fk_shop_hours_shop_week_id FOREIGN KEY(shop_week_id) REFERENCES shop_week (id)
);
CREATE INDEX ix_shop_hours_shop_week_id ON shop_hours (shop_week_id);
CREATE TABLE setting (
    key TEXT NOT NULL, value TEXT NOT NULL,
    CONSTRAINT pk_setting PRIMARY KEY (key)
);
CREATE TABLE alias (
    id INTEGER NOT NULL, kind TEXT NOT NULL, old_name TEXT NOT NULL, thing_id INTEGER NOT NULL,
    CONSTRAINT pk_alias PRIMARY KEY (id),
    CONSTRAINT ck_alias_kind CHECK (kind IN ('project', 'part', 'product', 'room', 'steps',
        'container'))
);
CREATE INDEX ix_alias_kind_old_name ON alias (kind, old_name);
CREATE TABLE project (
    id INTEGER NOT NULL, name TEXT NOT NULL, due_at VARCHAR(27), note TEXT DEFAULT '' NOT NULL,
    added_at VARCHAR(27) NOT NULL, archived_at VARCHAR(27),
    CONSTRAINT pk_project PRIMARY KEY (id),
    CONSTRAINT uq_project_name UNIQUE (name)
);
CREATE INDEX ix_project_archived_at ON project (archived_at);
CREATE TABLE part (
    id INTEGER NOT NULL, project_id INTEGER NOT NULL, name TEXT NOT NULL, species TEXT,
    is_board BOOLEAN NOT NULL, steps_name TEXT DEFAULT '' NOT NULL, room_id INTEGER,
    note TEXT DEFAULT '' NOT NULL, added_at VARCHAR(27) NOT NULL, archived_at VARCHAR(27),
    CONSTRAINT pk_part PRIMARY KEY (id),
    CONSTRAINT uq_part_project_id_name UNIQUE (project_id, name),
    CONSTRAINT fk_part_project_id FOREIGN KEY(project_id) REFERENCES project (id),
    CONSTRAINT fk_part_room_id FOREIGN KEY(room_id) REFERENCES room (id)
);
CREATE TABLE piece (
    id INTEGER NOT NULL, part_id INTEGER NOT NULL, number INTEGER NOT NULL,
    CONSTRAINT pk_piece PRIMARY KEY (id),
    CONSTRAINT uq_piece_part_id_number UNIQUE (part_id, number),
    CONSTRAINT ck_piece_number CHECK (number >= 1),
    CONSTRAINT fk_piece_part_id FOREIGN KEY(part_id) REFERENCES part (id)
);
CREATE TABLE face (
    id INTEGER NOT NULL, part_id INTEGER NOT NULL, position INTEGER NOT NULL, name TEXT NOT NULL,
    kind TEXT NOT NULL,
    CONSTRAINT pk_face PRIMARY KEY (id),
    CONSTRAINT uq_face_part_id_name UNIQUE (part_id, name),
    CONSTRAINT ck_face_kind CHECK (kind IN ('show', 'hidden', 'joint')),
    CONSTRAINT fk_face_part_id FOREIGN KEY(part_id) REFERENCES part (id)
);
CREATE TABLE zone (
    id INTEGER NOT NULL, face_id INTEGER NOT NULL, position INTEGER NOT NULL,
    name TEXT DEFAULT '' NOT NULL, species TEXT,
    CONSTRAINT pk_zone PRIMARY KEY (id),
    CONSTRAINT uq_zone_face_id_name UNIQUE (face_id, name),
    CONSTRAINT fk_zone_face_id FOREIGN KEY(face_id) REFERENCES face (id)
);
CREATE TABLE assembly_need (
    id INTEGER NOT NULL, part_id INTEGER NOT NULL, member_part_id INTEGER NOT NULL,
    count INTEGER NOT NULL,
    CONSTRAINT pk_assembly_need PRIMARY KEY (id),
    CONSTRAINT uq_assembly_need_part_id_member_part_id UNIQUE (part_id, member_part_id),
    CONSTRAINT ck_assembly_need_count CHECK (count >= 1),
    CONSTRAINT ck_assembly_need_not_of_itself CHECK (part_id <> member_part_id),
    CONSTRAINT fk_assembly_need_part_id FOREIGN KEY(part_id) REFERENCES part (id),
    CONSTRAINT fk_assembly_need_member_part_id FOREIGN KEY(member_part_id) REFERENCES part (id)
);
CREATE TABLE product (
    id INTEGER NOT NULL, name TEXT NOT NULL, class_key TEXT NOT NULL,
    note TEXT DEFAULT '' NOT NULL, added_at VARCHAR(27) NOT NULL,
    CONSTRAINT pk_product PRIMARY KEY (id),
    CONSTRAINT uq_product_name UNIQUE (name)
);
CREATE TABLE product_figure (
    id INTEGER NOT NULL, product_id INTEGER NOT NULL, stage TEXT NOT NULL, low_h FLOAT,
    typical_h FLOAT, high_h FLOAT, at_temperature_c FLOAT, at_humidity_pct FLOAT,
    source TEXT DEFAULT '' NOT NULL, note TEXT DEFAULT '' NOT NULL,
    valid_from VARCHAR(27) NOT NULL,
    CONSTRAINT pk_product_figure PRIMARY KEY (id),
    CONSTRAINT ck_product_figure_stage CHECK (stage IN ('touch', 'dust-free', 'tack-free',
        'turn', 'clamp', 'stack', 'pack', 'cured', 'recoat', 'sand', 'close', 'light-use',
        'rub')),
    CONSTRAINT ck_product_figure_range CHECK (
        (low_h IS NULL AND typical_h IS NULL AND high_h IS NULL)
        OR (low_h IS NOT NULL AND typical_h IS NOT NULL AND high_h IS NOT NULL
        AND 0 <= low_h AND low_h <= typical_h AND typical_h <= high_h)),
    CONSTRAINT fk_product_figure_product_id FOREIGN KEY(product_id) REFERENCES product (id)
);
CREATE INDEX ix_product_figure_product_id_stage_valid_from
    ON product_figure (product_id, stage, valid_from);
CREATE TABLE product_window (
    id INTEGER NOT NULL, product_id INTEGER NOT NULL, window_kind TEXT,
    window_source TEXT DEFAULT '' NOT NULL, window_note TEXT DEFAULT '' NOT NULL,
    closes_low_h FLOAT, closes_typical_h FLOAT, closes_high_h FLOAT,
    closes_source TEXT DEFAULT '' NOT NULL, closes_at_temperature_c FLOAT,
    closes_at_humidity_pct FLOAT, closes_note TEXT DEFAULT '' NOT NULL,
    valid_from VARCHAR(27) NOT NULL,
    CONSTRAINT pk_product_window PRIMARY KEY (id),
    CONSTRAINT ck_product_window_window_kind CHECK (window_kind IN (
        'melts in for ever', 'closes at a time', 'always scuff', 'not applicable')),
    CONSTRAINT ck_product_window_closes CHECK (
        (closes_low_h IS NULL AND closes_typical_h IS NULL AND closes_high_h IS NULL)
        OR (closes_low_h IS NOT NULL AND closes_typical_h IS NOT NULL AND closes_high_h IS NOT NULL
        AND 0 <= closes_low_h AND closes_low_h <= closes_typical_h
        AND closes_typical_h <= closes_high_h)),
    CONSTRAINT fk_product_window_product_id FOREIGN KEY(product_id) REFERENCES product (id)
);
CREATE INDEX ix_product_window_product_id_valid_from ON product_window (product_id, valid_from);
CREATE TABLE steps (
    id INTEGER NOT NULL, name TEXT NOT NULL, note TEXT DEFAULT '' NOT NULL,
    CONSTRAINT pk_steps PRIMARY KEY (id),
    CONSTRAINT uq_steps_name UNIQUE (name)
);
CREATE TABLE step (
    id INTEGER NOT NULL, steps_id INTEGER NOT NULL, position INTEGER NOT NULL,
    operation TEXT NOT NULL, product_id INTEGER, faces TEXT NOT NULL,
    note TEXT DEFAULT '' NOT NULL,
    CONSTRAINT pk_step PRIMARY KEY (id),
    CONSTRAINT uq_step_steps_id_position UNIQUE (steps_id, position),
    CONSTRAINT ck_step_operation CHECK (operation IN ('coat', 'sand', 'raise-grain', 'denib',
        'scuff', 'mask', 'untape', 'wipe', 'buff', 'rub-out', 'glue-up', 'hardware')),
    CONSTRAINT fk_step_steps_id FOREIGN KEY(steps_id) REFERENCES steps (id),
    CONSTRAINT fk_step_product_id FOREIGN KEY(product_id) REFERENCES product (id)
);
CREATE TABLE part_step (
    id INTEGER NOT NULL, part_id INTEGER NOT NULL, position INTEGER NOT NULL,
    operation TEXT NOT NULL, product_id INTEGER, faces TEXT NOT NULL,
    note TEXT DEFAULT '' NOT NULL,
    CONSTRAINT pk_part_step PRIMARY KEY (id),
    CONSTRAINT uq_part_step_part_id_position UNIQUE (part_id, position),
    CONSTRAINT ck_part_step_operation CHECK (operation IN ('coat', 'sand', 'raise-grain',
        'denib', 'scuff', 'mask', 'untape', 'wipe', 'buff', 'rub-out', 'glue-up', 'hardware')),
    CONSTRAINT fk_part_step_part_id FOREIGN KEY(part_id) REFERENCES part (id),
    CONSTRAINT fk_part_step_product_id FOREIGN KEY(product_id) REFERENCES product (id)
);
CREATE TABLE container (
    id INTEGER NOT NULL, uuid VARCHAR(36) NOT NULL, name TEXT NOT NULL, kind TEXT NOT NULL,
    product_id INTEGER NOT NULL, opened_at VARCHAR(27), note TEXT DEFAULT '' NOT NULL,
    CONSTRAINT pk_container PRIMARY KEY (id),
    CONSTRAINT uq_container_uuid UNIQUE (uuid),
    CONSTRAINT uq_container_name UNIQUE (name),
    CONSTRAINT ck_container_kind CHECK (kind IN ('can', 'mix', 'jar')),
    CONSTRAINT fk_container_product_id FOREIGN KEY(product_id) REFERENCES product (id)
);
CREATE TABLE mix_part (
    id INTEGER NOT NULL, container_id INTEGER NOT NULL, product_id INTEGER, name TEXT NOT NULL,
    parts FLOAT NOT NULL,
    CONSTRAINT pk_mix_part PRIMARY KEY (id),
    CONSTRAINT uq_mix_part_container_id_name UNIQUE (container_id, name),
    CONSTRAINT ck_mix_part_parts CHECK (parts > 0),
    CONSTRAINT fk_mix_part_container_id FOREIGN KEY(container_id) REFERENCES container (id),
    CONSTRAINT fk_mix_part_product_id FOREIGN KEY(product_id) REFERENCES product (id)
);
CREATE TABLE figure_set (
    id INTEGER NOT NULL, digest VARCHAR(64) NOT NULL, class_key TEXT NOT NULL,
    facts_version TEXT NOT NULL, window_kind TEXT NOT NULL, window_source TEXT DEFAULT '' NOT NULL,
    window_note TEXT DEFAULT '' NOT NULL, closes_low_h FLOAT, closes_typical_h FLOAT,
    closes_high_h FLOAT, closes_source TEXT DEFAULT '' NOT NULL, closes_at_temperature_c FLOAT,
    closes_at_humidity_pct FLOAT, closes_note TEXT DEFAULT '' NOT NULL,
    CONSTRAINT pk_figure_set PRIMARY KEY (id),
    CONSTRAINT ck_figure_set_window_kind CHECK (window_kind IN (
        'melts in for ever', 'closes at a time', 'always scuff', 'not applicable')),
    CONSTRAINT ck_figure_set_closes CHECK (
        (closes_low_h IS NULL AND closes_typical_h IS NULL AND closes_high_h IS NULL)
        OR (closes_low_h IS NOT NULL AND closes_typical_h IS NOT NULL AND closes_high_h IS NOT NULL
        AND 0 <= closes_low_h AND closes_low_h <= closes_typical_h
        AND closes_typical_h <= closes_high_h)),
    CONSTRAINT uq_figure_set_digest UNIQUE (digest)
);
CREATE TABLE figure_set_stage (
    set_id INTEGER NOT NULL, stage TEXT NOT NULL, low_h FLOAT NOT NULL, typical_h FLOAT NOT NULL,
    high_h FLOAT NOT NULL, source TEXT NOT NULL, at_temperature_c FLOAT NOT NULL,
    at_humidity_pct FLOAT NOT NULL, note TEXT DEFAULT '' NOT NULL,
    CONSTRAINT pk_figure_set_stage PRIMARY KEY (set_id, stage),
    CONSTRAINT ck_figure_set_stage_stage CHECK (stage IN ('touch', 'dust-free', 'tack-free',
        'turn', 'clamp', 'stack', 'pack', 'cured', 'recoat', 'sand', 'close', 'light-use',
        'rub')),
    CONSTRAINT ck_figure_set_stage_range CHECK (
        (low_h IS NULL AND typical_h IS NULL AND high_h IS NULL)
        OR (low_h IS NOT NULL AND typical_h IS NOT NULL AND high_h IS NOT NULL
        AND 0 <= low_h AND low_h <= typical_h AND typical_h <= high_h)),
    CONSTRAINT fk_figure_set_stage_set_id FOREIGN KEY(set_id) REFERENCES figure_set (id)
);
CREATE TABLE act (
    id INTEGER NOT NULL, uuid VARCHAR(36) NOT NULL, verb TEXT NOT NULL,
    typed_at VARCHAR(27) NOT NULL, words TEXT NOT NULL, time_zone TEXT NOT NULL,
    finishlog_version TEXT NOT NULL,
    CONSTRAINT pk_act PRIMARY KEY (id),
    CONSTRAINT uq_act_uuid UNIQUE (uuid)
);
CREATE TABLE entry (
    id INTEGER NOT NULL, uuid VARCHAR(36) NOT NULL, act_id INTEGER NOT NULL, kind TEXT NOT NULL,
    earliest_at VARCHAR(27) NOT NULL, latest_at VARCHAR(27) NOT NULL, sureness TEXT NOT NULL,
    tie INTEGER NOT NULL, time_zone TEXT NOT NULL, supersedes_id INTEGER,
    CONSTRAINT pk_entry PRIMARY KEY (id),
    CONSTRAINT uq_entry_uuid UNIQUE (uuid),
    CONSTRAINT ck_entry_kind CHECK (kind IN ('coat', 'work', 'check', 'fault', 'stripped',
        'joined', 'moved', 'reading', 'container', 'rags', 'handover', 'set-aside', 'resumed',
        'review', 'note', 'photo', 'promise', 'withdrawal')),
    CONSTRAINT ck_entry_sureness CHECK (sureness IN ('exact', 'about', 'that part of the day')),
    CONSTRAINT ck_entry_span CHECK (earliest_at <= latest_at),
    CONSTRAINT ck_entry_supersedes CHECK (supersedes_id < id),
    CONSTRAINT fk_entry_act_id FOREIGN KEY(act_id) REFERENCES act (id),
    CONSTRAINT fk_entry_supersedes_id FOREIGN KEY(supersedes_id) REFERENCES entry (id)
);
CREATE INDEX ix_entry_act_id ON entry (act_id);
CREATE INDEX ix_entry_kind_latest_at ON entry (kind, latest_at);
CREATE INDEX ix_entry_supersedes_id ON entry (supersedes_id);
CREATE TABLE entry_target (
    entry_id INTEGER NOT NULL, piece_id INTEGER NOT NULL, zone_id INTEGER NOT NULL,
    CONSTRAINT pk_entry_target PRIMARY KEY (entry_id, piece_id, zone_id),
    CONSTRAINT fk_entry_target_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id),
    CONSTRAINT fk_entry_target_piece_id FOREIGN KEY(piece_id) REFERENCES piece (id),
    CONSTRAINT fk_entry_target_zone_id FOREIGN KEY(zone_id) REFERENCES zone (id)
);
CREATE INDEX ix_entry_target_piece_id_zone_id ON entry_target (piece_id, zone_id);
CREATE TABLE joined_member (
    entry_id INTEGER NOT NULL, piece_id INTEGER NOT NULL,
    CONSTRAINT pk_joined_member PRIMARY KEY (entry_id, piece_id),
    CONSTRAINT fk_joined_member_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id),
    CONSTRAINT fk_joined_member_piece_id FOREIGN KEY(piece_id) REFERENCES piece (id)
);
CREATE INDEX ix_joined_member_piece_id ON joined_member (piece_id);
CREATE TABLE moved_piece (
    entry_id INTEGER NOT NULL, piece_id INTEGER NOT NULL,
    CONSTRAINT pk_moved_piece PRIMARY KEY (entry_id, piece_id),
    CONSTRAINT fk_moved_piece_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id),
    CONSTRAINT fk_moved_piece_piece_id FOREIGN KEY(piece_id) REFERENCES piece (id)
);
CREATE INDEX ix_moved_piece_piece_id ON moved_piece (piece_id);
"""

# One table for each kind of entry, keyed by the entry: what only that kind has.
DETAILS = {
    "coat": """
        product_id INTEGER NOT NULL, figure_set_id INTEGER NOT NULL, method TEXT,
        scuffed_before BOOLEAN, wet_film_um FLOAT, container_id INTEGER, hands_on_min FLOAT,
        note TEXT DEFAULT '' NOT NULL,
        CONSTRAINT ck_coat_method CHECK (method IN ('brush', 'wipe', 'spray')),
        CONSTRAINT ck_coat_wet_film CHECK (wet_film_um > 0),
        CONSTRAINT ck_coat_hands_on CHECK (hands_on_min >= 0),
        CONSTRAINT fk_coat_product_id FOREIGN KEY(product_id) REFERENCES product (id),
        CONSTRAINT fk_coat_figure_set_id FOREIGN KEY(figure_set_id) REFERENCES figure_set (id),
        CONSTRAINT fk_coat_container_id FOREIGN KEY(container_id) REFERENCES container (id)
    """,
    "work": """
        operation TEXT NOT NULL, grit TEXT DEFAULT '' NOT NULL,
        CONSTRAINT ck_work_operation CHECK (operation IN ('coat', 'sand', 'raise-grain', 'denib',
            'scuff', 'mask', 'untape', 'wipe', 'buff', 'rub-out', 'glue-up', 'hardware'))
    """,
    "film_check": """
        test TEXT NOT NULL, found TEXT NOT NULL,
        CONSTRAINT ck_film_check_test CHECK (test IN ('touch', 'thumbnail', 'sand', 'smell',
            'scratch')),
        CONSTRAINT ck_film_check_found CHECK (found IN ('tacky', 'gums', 'prints', 'smells',
            'flakes', 'dry', 'no-print', 'powder', 'no-smell', 'holds'))
    """,
    "fault": "what TEXT NOT NULL, place TEXT DEFAULT '' NOT NULL, remedy TEXT DEFAULT '' NOT NULL",
    "stripped": """
        operation TEXT NOT NULL, down_to TEXT NOT NULL, survives_entry_id INTEGER,
        CONSTRAINT ck_stripped_operation CHECK (operation IN ('strip', 'sand-through')),
        CONSTRAINT ck_stripped_down_to CHECK (down_to IN ('bare', 'coat')),
        CONSTRAINT fk_stripped_survives_entry_id FOREIGN KEY(survives_entry_id)
            REFERENCES entry (id)
    """,
    "joined": """
        into_piece_id INTEGER NOT NULL,
        CONSTRAINT fk_joined_into_piece_id FOREIGN KEY(into_piece_id) REFERENCES piece (id)
    """,
    "moved": """
        room_id INTEGER NOT NULL,
        CONSTRAINT fk_moved_room_id FOREIGN KEY(room_id) REFERENCES room (id)
    """,
    "reading": """
        room_id INTEGER NOT NULL, temperature_c FLOAT NOT NULL, humidity_pct FLOAT NOT NULL,
        CONSTRAINT ck_reading_humidity CHECK (humidity_pct BETWEEN 0 AND 100),
        CONSTRAINT fk_reading_room_id FOREIGN KEY(room_id) REFERENCES room (id)
    """,
    "container_event": """
        container_id INTEGER NOT NULL, deed TEXT NOT NULL,
        CONSTRAINT ck_container_event_deed CHECK (deed IN ('opened', 'mixed', 'emptied',
            'thrown-out')),
        CONSTRAINT fk_container_event_container_id FOREIGN KEY(container_id)
            REFERENCES container (id)
    """,
    "rags_event": """
        deed TEXT NOT NULL, item_entry_id INTEGER,
        CONSTRAINT ck_rags_event_deed CHECK (deed IN ('spread', 'water', 'lifted', 'can',
            'stiff', 'gone')),
        CONSTRAINT fk_rags_event_item_entry_id FOREIGN KEY(item_entry_id) REFERENCES entry (id)
    """,
    "handover": "",
    "set_aside": "reason TEXT DEFAULT '' NOT NULL",
    "resumed": "",
    "review": "outcome TEXT NOT NULL",
    "note": "text TEXT NOT NULL, outcome BOOLEAN NOT NULL",
    "photo": "path TEXT NOT NULL",
    "promise": "text TEXT NOT NULL",
    "withdrawal": """
        act_id INTEGER NOT NULL,
        CONSTRAINT fk_withdrawal_act_id FOREIGN KEY(act_id) REFERENCES act (id)
    """,
}

APPEND_ONLY = """
figure_set figure_set_stage act entry entry_target coat work film_check fault stripped joined
joined_member moved moved_piece reading container_event rags_event handover set_aside resumed
review note photo promise withdrawal
"""


def upgrade() -> None:
    op.execute(f"PRAGMA application_id = {APPLICATION_ID}")
    for statement in filter(str.strip, TABLES.split(";")):
        op.execute(statement)
    for table, columns in DETAILS.items():
        _detail(table, columns)
    op.create_index("ix_joined_into_piece_id", "joined", ["into_piece_id"])
    for table in APPEND_ONLY.split():
        _keep(table)


def _detail(table: str, columns: str) -> None:
    op.execute(
        f"CREATE TABLE {table} (entry_id INTEGER NOT NULL, {columns + ',' if columns else ''}"
        f" CONSTRAINT pk_{table} PRIMARY KEY (entry_id),"
        f" CONSTRAINT fk_{table}_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id))"
    )


def _keep(table: str) -> None:
    """Let nothing change or delete a row of the log."""
    for deed in ("UPDATE", "DELETE"):
        op.execute(
            f"CREATE TRIGGER no_{deed.lower()}_of_{table} BEFORE {deed} ON {table} BEGIN"
            f" SELECT RAISE(ABORT, 'the log is only added to: no {deed} of {table}'); END"
        )


def downgrade() -> None:
    raise NotImplementedError("go back by restoring the backup made before the upgrade")
