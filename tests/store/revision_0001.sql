-- A small invented shop as revision 0001 wrote it.
PRAGMA application_id = 1718512743;
BEGIN TRANSACTION;
CREATE TABLE act (
    id INTEGER NOT NULL, uuid VARCHAR(36) NOT NULL, verb TEXT NOT NULL,
    typed_at VARCHAR(27) NOT NULL, words TEXT NOT NULL, time_zone TEXT NOT NULL,
    finishlog_version TEXT NOT NULL,
    CONSTRAINT pk_act PRIMARY KEY (id),
    CONSTRAINT uq_act_uuid UNIQUE (uuid)
);
INSERT INTO "act" VALUES(1,'2d8b7070-9e85-47c0-bd8e-e88aa5ed557f','room new','2026-11-20T17:00:00.000000Z','room new bench --night 13C','Europe/Berlin','0.1.0');
INSERT INTO "act" VALUES(2,'0e31c679-ff4e-4510-966b-d615fb7b6781','product new','2026-11-20T17:00:00.000000Z','product new sealer --class shellac-2lb','Europe/Berlin','0.1.0');
INSERT INTO "act" VALUES(3,'8752c334-fe9a-4c7c-96f8-245305ddb65e','product new','2026-11-20T17:00:00.000000Z','product new oil --class hardwax-oil --recoat 12h','Europe/Berlin','0.1.0');
INSERT INTO "act" VALUES(4,'bc683e4e-0cd7-4678-8688-30df46cd98f1','steps new','2026-11-20T17:00:00.000000Z','steps new clear sand sealer','Europe/Berlin','0.1.0');
INSERT INTO "act" VALUES(5,'5b2d7336-a29d-488c-bf97-8e8bd0e1710e','part new','2026-11-20T17:00:00.000000Z','part new cabinet/panel --species ash --face back:hidden --face front --steps clear','Europe/Berlin','0.1.0');
INSERT INTO "act" VALUES(6,'45fe0b9b-e417-41a0-9c59-343b8c18cb1c','part new','2026-11-20T17:00:00.000000Z','part new cabinet/legs -n 2 --species ash','Europe/Berlin','0.1.0');
INSERT INTO "act" VALUES(7,'618e8d1c-3a3e-4a3d-81c6-2d8d28865b24','part new','2026-11-20T17:00:00.000000Z','part new cabinet/base --of legs:2','Europe/Berlin','0.1.0');
INSERT INTO "act" VALUES(8,'c864a70c-0fad-401a-8db3-523b960cd8d4','air','2026-11-20T17:05:00.000000Z','air 20C 50%','Europe/Berlin','0.1.0');
INSERT INTO "act" VALUES(9,'40cf9e08-5c9e-4ab1-a82d-661320ff61d9','log','2026-11-20T17:10:00.000000Z','log panel sand --grit P220','Europe/Berlin','0.1.0');
INSERT INTO "act" VALUES(10,'b0c90b23-b5de-4a4a-9f00-6a709baa7715','log','2026-11-20T17:20:00.000000Z','log panel@back','Europe/Berlin','0.1.0');
INSERT INTO "act" VALUES(11,'433a9290-a539-4339-bdd1-6c58df71887b','log','2026-11-20T17:20:00.000000Z','log legs oil','Europe/Berlin','0.1.0');
INSERT INTO "act" VALUES(12,'9ae13621-d89d-40ba-9a20-66cf5c8fb3ec','rags','2026-11-20T17:30:00.000000Z','rags spread','Europe/Berlin','0.1.0');
INSERT INTO "act" VALUES(13,'fb6f786e-b0ca-4793-aa51-80aaf49b8e39','check','2026-11-20T18:00:00.000000Z','check panel@back tacky','Europe/Berlin','0.1.0');
INSERT INTO "act" VALUES(14,'67dbe2be-cc0d-4064-a148-3101d607e7fd','amend','2026-11-20T18:00:00.000000Z','amend 11 --at 18:15','Europe/Berlin','0.1.0');
INSERT INTO "act" VALUES(15,'269afea0-5592-4623-9de4-cbe6c7ebe5e7','note','2026-11-20T18:00:00.000000Z','note panel -t ''a knot''','Europe/Berlin','0.1.0');
INSERT INTO "act" VALUES(16,'30a0b987-1e36-4107-b63f-ff5c3b970d39','undo','2026-11-20T18:00:00.000000Z','undo','Europe/Berlin','0.1.0');
INSERT INTO "act" VALUES(17,'5a4b15f0-c18c-4386-af38-09773382f342','log','2026-11-24T18:00:00.000000Z','log base glue-up','Europe/Berlin','0.1.0');
CREATE TABLE alembic_version (
	version_num VARCHAR(32) NOT NULL, 
	CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num)
);
INSERT INTO "alembic_version" VALUES('0001');
CREATE TABLE alias (
    id INTEGER NOT NULL, kind TEXT NOT NULL, old_name TEXT NOT NULL, thing_id INTEGER NOT NULL,
    CONSTRAINT pk_alias PRIMARY KEY (id),
    CONSTRAINT ck_alias_kind CHECK (kind IN ('project', 'part', 'product', 'room', 'steps',
        'container'))
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
INSERT INTO "assembly_need" VALUES(1,3,2,2);
CREATE TABLE coat (entry_id INTEGER NOT NULL, 
        product_id INTEGER NOT NULL, figure_set_id INTEGER NOT NULL, method TEXT,
        scuffed_before BOOLEAN, wet_film_um FLOAT, container_id INTEGER, hands_on_min FLOAT,
        note TEXT DEFAULT '' NOT NULL,
        CONSTRAINT ck_coat_method CHECK (method IN ('brush', 'wipe', 'spray')),
        CONSTRAINT ck_coat_wet_film CHECK (wet_film_um > 0),
        CONSTRAINT ck_coat_hands_on CHECK (hands_on_min >= 0),
        CONSTRAINT fk_coat_product_id FOREIGN KEY(product_id) REFERENCES product (id),
        CONSTRAINT fk_coat_figure_set_id FOREIGN KEY(figure_set_id) REFERENCES figure_set (id),
        CONSTRAINT fk_coat_container_id FOREIGN KEY(container_id) REFERENCES container (id)
    , CONSTRAINT pk_coat PRIMARY KEY (entry_id), CONSTRAINT fk_coat_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id));
INSERT INTO "coat" VALUES(3,1,1,NULL,NULL,NULL,NULL,NULL,'');
INSERT INTO "coat" VALUES(4,2,2,NULL,NULL,NULL,NULL,NULL,'');
INSERT INTO "coat" VALUES(7,2,2,NULL,NULL,NULL,NULL,NULL,'');
CREATE TABLE container (
    id INTEGER NOT NULL, uuid VARCHAR(36) NOT NULL, name TEXT NOT NULL, kind TEXT NOT NULL,
    product_id INTEGER NOT NULL, opened_at VARCHAR(27), note TEXT DEFAULT '' NOT NULL,
    CONSTRAINT pk_container PRIMARY KEY (id),
    CONSTRAINT uq_container_uuid UNIQUE (uuid),
    CONSTRAINT uq_container_name UNIQUE (name),
    CONSTRAINT ck_container_kind CHECK (kind IN ('can', 'mix', 'jar')),
    CONSTRAINT fk_container_product_id FOREIGN KEY(product_id) REFERENCES product (id)
);
CREATE TABLE container_event (entry_id INTEGER NOT NULL, 
        container_id INTEGER NOT NULL, deed TEXT NOT NULL,
        CONSTRAINT ck_container_event_deed CHECK (deed IN ('opened', 'mixed', 'emptied',
            'thrown-out')),
        CONSTRAINT fk_container_event_container_id FOREIGN KEY(container_id)
            REFERENCES container (id)
    , CONSTRAINT pk_container_event PRIMARY KEY (entry_id), CONSTRAINT fk_container_event_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id));
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
INSERT INTO "entry" VALUES(1,'57b15acb-f344-4ee7-ad71-4a7e59f78715',8,'reading','2026-11-20T17:05:00.000000Z','2026-11-20T17:05:00.000000Z','exact',0,'Europe/Berlin',NULL);
INSERT INTO "entry" VALUES(2,'990921f5-2c4b-4b30-8142-06d8d75830e0',9,'work','2026-11-20T17:10:00.000000Z','2026-11-20T17:10:00.000000Z','exact',0,'Europe/Berlin',NULL);
INSERT INTO "entry" VALUES(3,'35c0c6c4-2e25-4180-b848-495a67944b60',10,'coat','2026-11-20T17:20:00.000000Z','2026-11-20T17:20:00.000000Z','exact',0,'Europe/Berlin',NULL);
INSERT INTO "entry" VALUES(4,'b035bb61-7039-4a14-906f-786bd31080ee',11,'coat','2026-11-20T17:20:00.000000Z','2026-11-20T17:20:00.000000Z','exact',0,'Europe/Berlin',NULL);
INSERT INTO "entry" VALUES(5,'c1dae327-02b2-4c98-aeac-494432c3918d',12,'rags','2026-11-20T17:30:00.000000Z','2026-11-20T17:30:00.000000Z','exact',0,'Europe/Berlin',NULL);
INSERT INTO "entry" VALUES(6,'a129bac8-383f-4df1-8a0a-755714a922e4',13,'check','2026-11-20T18:00:00.000000Z','2026-11-20T18:00:00.000000Z','exact',0,'Europe/Berlin',NULL);
INSERT INTO "entry" VALUES(7,'cc1b800b-01f6-43ad-8e42-0edce8677bb6',14,'coat','2026-11-20T17:15:00.000000Z','2026-11-20T17:15:00.000000Z','exact',0,'Europe/Berlin',4);
INSERT INTO "entry" VALUES(8,'5ee989d8-4f28-40b4-863d-653141402027',15,'note','2026-11-20T18:00:00.000000Z','2026-11-20T18:00:00.000000Z','exact',0,'Europe/Berlin',NULL);
INSERT INTO "entry" VALUES(9,'c26ffb72-6721-4391-a64c-ad66db8bb99c',16,'withdrawal','2026-11-20T18:00:00.000000Z','2026-11-20T18:00:00.000000Z','exact',0,'Europe/Berlin',NULL);
INSERT INTO "entry" VALUES(10,'20a7d591-fdbe-4a34-945e-0ebf4f443b45',17,'joined','2026-11-24T18:00:00.000000Z','2026-11-24T18:00:00.000000Z','exact',0,'Europe/Berlin',NULL);
CREATE TABLE entry_target (
    entry_id INTEGER NOT NULL, piece_id INTEGER NOT NULL, zone_id INTEGER NOT NULL,
    CONSTRAINT pk_entry_target PRIMARY KEY (entry_id, piece_id, zone_id),
    CONSTRAINT fk_entry_target_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id),
    CONSTRAINT fk_entry_target_piece_id FOREIGN KEY(piece_id) REFERENCES piece (id),
    CONSTRAINT fk_entry_target_zone_id FOREIGN KEY(zone_id) REFERENCES zone (id)
);
INSERT INTO "entry_target" VALUES(2,1,1);
INSERT INTO "entry_target" VALUES(2,1,2);
INSERT INTO "entry_target" VALUES(3,1,1);
INSERT INTO "entry_target" VALUES(4,2,3);
INSERT INTO "entry_target" VALUES(4,3,3);
INSERT INTO "entry_target" VALUES(6,1,1);
INSERT INTO "entry_target" VALUES(7,2,3);
INSERT INTO "entry_target" VALUES(7,3,3);
INSERT INTO "entry_target" VALUES(8,1,1);
INSERT INTO "entry_target" VALUES(8,1,2);
INSERT INTO "entry_target" VALUES(10,2,3);
INSERT INTO "entry_target" VALUES(10,3,3);
CREATE TABLE face (
    id INTEGER NOT NULL, part_id INTEGER NOT NULL, position INTEGER NOT NULL, name TEXT NOT NULL,
    kind TEXT NOT NULL,
    CONSTRAINT pk_face PRIMARY KEY (id),
    CONSTRAINT uq_face_part_id_name UNIQUE (part_id, name),
    CONSTRAINT ck_face_kind CHECK (kind IN ('show', 'hidden', 'joint')),
    CONSTRAINT fk_face_part_id FOREIGN KEY(part_id) REFERENCES part (id)
);
INSERT INTO "face" VALUES(1,1,1,'back','hidden');
INSERT INTO "face" VALUES(2,1,2,'front','show');
INSERT INTO "face" VALUES(3,2,1,'all round','show');
CREATE TABLE fault (entry_id INTEGER NOT NULL, what TEXT NOT NULL, place TEXT DEFAULT '' NOT NULL, remedy TEXT DEFAULT '' NOT NULL, CONSTRAINT pk_fault PRIMARY KEY (entry_id), CONSTRAINT fk_fault_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id));
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
INSERT INTO "figure_set" VALUES(1,'dc8cf2fd01635f1ee2fd28cf7e68270e5546d581904bd760985322041a3dd97b','shellac-2lb','2026.11','melts in for ever','common practice','Alcohol dissolves the coat below at any age.',NULL,NULL,NULL,'',NULL,NULL,'');
INSERT INTO "figure_set" VALUES(2,'6c77598547a760e379c034351256d784fe79633b0b15c05c24566f1d63b7288b','hardwax-oil','2026.11','always scuff','common practice','Scuff every time unless the can says otherwise. A 36 h window is in use (common practice); it is not relied on.',NULL,NULL,NULL,'',NULL,NULL,'');
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
INSERT INTO "figure_set_stage" VALUES(1,'touch',0.166667,0.25,0.333333,'common practice',23.0,50.0,'');
INSERT INTO "figure_set_stage" VALUES(1,'dust-free',0.25,0.333333,0.5,'common practice',23.0,50.0,'');
INSERT INTO "figure_set_stage" VALUES(1,'tack-free',0.5,0.5,1.0,'common practice',23.0,50.0,'');
INSERT INTO "figure_set_stage" VALUES(1,'turn',1.0,1.0,1.0,'tm-43-0139',23.0,50.0,'Handled at 1 h; it prints under a caul at that age.');
INSERT INTO "figure_set_stage" VALUES(1,'clamp',12.0,12.0,12.0,'common practice',23.0,50.0,'Overnight, padded cauls.');
INSERT INTO "figure_set_stage" VALUES(1,'stack',48.0,48.0,48.0,'pack-and-stack',23.0,50.0,'At least 48 h, with separators; longer when humid.');
INSERT INTO "figure_set_stage" VALUES(1,'pack',72.0,96.0,168.0,'common practice',23.0,50.0,'');
INSERT INTO "figure_set_stage" VALUES(1,'cured',168.0,336.0,336.0,'common practice',23.0,50.0,'7 to 14 days to rub-hard; the Army''s full hardness at 24 h is the softer sense of the word.');
INSERT INTO "figure_set_stage" VALUES(1,'recoat',2.0,2.0,3.0,'tm-43-0139',23.0,50.0,'2 to 3 h; used although a 2 lb cut often takes less, the cautious one.');
INSERT INTO "figure_set_stage" VALUES(1,'sand',1.0,2.0,3.0,'common practice',23.0,50.0,'');
INSERT INTO "figure_set_stage" VALUES(1,'close',12.0,24.0,48.0,'common practice',23.0,50.0,'');
INSERT INTO "figure_set_stage" VALUES(1,'light-use',24.0,24.0,72.0,'common practice',23.0,50.0,'The longer end is used.');
INSERT INTO "figure_set_stage" VALUES(1,'rub',48.0,168.0,336.0,'rub-out-2011',23.0,50.0,'At least 2 days; 7 to 14 days are common practice.');
INSERT INTO "figure_set_stage" VALUES(2,'touch',8.0,12.0,24.0,'common practice',23.0,50.0,'The longer end is used.');
INSERT INTO "figure_set_stage" VALUES(2,'dust-free',8.0,12.0,24.0,'common practice',23.0,50.0,'');
INSERT INTO "figure_set_stage" VALUES(2,'tack-free',12.0,24.0,24.0,'common practice',23.0,50.0,'');
INSERT INTO "figure_set_stage" VALUES(2,'turn',24.0,24.0,24.0,'common practice',23.0,50.0,'');
INSERT INTO "figure_set_stage" VALUES(2,'clamp',72.0,72.0,72.0,'common practice',23.0,50.0,'Padded cauls.');
INSERT INTO "figure_set_stage" VALUES(2,'stack',72.0,120.0,120.0,'common practice',23.0,50.0,'Oil wants longer than the general 48 h; the longer one is used.');
INSERT INTO "figure_set_stage" VALUES(2,'pack',120.0,168.0,168.0,'common practice',23.0,50.0,'');
INSERT INTO "figure_set_stage" VALUES(2,'cured',168.0,504.0,504.0,'hardwax-oil-article',23.0,50.0,'One week with drier, about three without; three are used until the can says that it holds drier.');
INSERT INTO "figure_set_stage" VALUES(2,'recoat',12.0,12.0,12.0,'your can',23.0,50.0,'');
INSERT INTO "figure_set_stage" VALUES(2,'sand',24.0,24.0,24.0,'common practice',23.0,50.0,'Pad only.');
INSERT INTO "figure_set_stage" VALUES(2,'close',168.0,336.0,504.0,'common practice',23.0,50.0,'Not inside closed cases at all.');
INSERT INTO "figure_set_stage" VALUES(2,'light-use',48.0,168.0,168.0,'common practice',23.0,50.0,'Gently.');
CREATE TABLE film_check (entry_id INTEGER NOT NULL, 
        test TEXT NOT NULL, found TEXT NOT NULL,
        CONSTRAINT ck_film_check_test CHECK (test IN ('touch', 'thumbnail', 'sand', 'smell',
            'scratch')),
        CONSTRAINT ck_film_check_found CHECK (found IN ('tacky', 'gums', 'prints', 'smells',
            'flakes', 'dry', 'no-print', 'powder', 'no-smell', 'holds'))
    , CONSTRAINT pk_film_check PRIMARY KEY (entry_id), CONSTRAINT fk_film_check_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id));
INSERT INTO "film_check" VALUES(6,'touch','tacky');
CREATE TABLE handover (entry_id INTEGER NOT NULL,  CONSTRAINT pk_handover PRIMARY KEY (entry_id), CONSTRAINT fk_handover_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id));
CREATE TABLE joined (entry_id INTEGER NOT NULL, 
        into_piece_id INTEGER NOT NULL,
        CONSTRAINT fk_joined_into_piece_id FOREIGN KEY(into_piece_id) REFERENCES piece (id)
    , CONSTRAINT pk_joined PRIMARY KEY (entry_id), CONSTRAINT fk_joined_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id));
INSERT INTO "joined" VALUES(10,4);
CREATE TABLE joined_member (
    entry_id INTEGER NOT NULL, piece_id INTEGER NOT NULL,
    CONSTRAINT pk_joined_member PRIMARY KEY (entry_id, piece_id),
    CONSTRAINT fk_joined_member_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id),
    CONSTRAINT fk_joined_member_piece_id FOREIGN KEY(piece_id) REFERENCES piece (id)
);
INSERT INTO "joined_member" VALUES(10,2);
INSERT INTO "joined_member" VALUES(10,3);
CREATE TABLE mix_part (
    id INTEGER NOT NULL, container_id INTEGER NOT NULL, product_id INTEGER, name TEXT NOT NULL,
    parts FLOAT NOT NULL,
    CONSTRAINT pk_mix_part PRIMARY KEY (id),
    CONSTRAINT uq_mix_part_container_id_name UNIQUE (container_id, name),
    CONSTRAINT ck_mix_part_parts CHECK (parts > 0),
    CONSTRAINT fk_mix_part_container_id FOREIGN KEY(container_id) REFERENCES container (id),
    CONSTRAINT fk_mix_part_product_id FOREIGN KEY(product_id) REFERENCES product (id)
);
CREATE TABLE moved (entry_id INTEGER NOT NULL, 
        room_id INTEGER NOT NULL,
        CONSTRAINT fk_moved_room_id FOREIGN KEY(room_id) REFERENCES room (id)
    , CONSTRAINT pk_moved PRIMARY KEY (entry_id), CONSTRAINT fk_moved_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id));
CREATE TABLE moved_piece (
    entry_id INTEGER NOT NULL, piece_id INTEGER NOT NULL,
    CONSTRAINT pk_moved_piece PRIMARY KEY (entry_id, piece_id),
    CONSTRAINT fk_moved_piece_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id),
    CONSTRAINT fk_moved_piece_piece_id FOREIGN KEY(piece_id) REFERENCES piece (id)
);
CREATE TABLE note (entry_id INTEGER NOT NULL, text TEXT NOT NULL, outcome BOOLEAN NOT NULL, CONSTRAINT pk_note PRIMARY KEY (entry_id), CONSTRAINT fk_note_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id));
INSERT INTO "note" VALUES(8,'a knot',0);
CREATE TABLE part (
    id INTEGER NOT NULL, project_id INTEGER NOT NULL, name TEXT NOT NULL, species TEXT,
    is_board BOOLEAN NOT NULL, steps_name TEXT DEFAULT '' NOT NULL, room_id INTEGER,
    note TEXT DEFAULT '' NOT NULL, added_at VARCHAR(27) NOT NULL, archived_at VARCHAR(27),
    CONSTRAINT pk_part PRIMARY KEY (id),
    CONSTRAINT uq_part_project_id_name UNIQUE (project_id, name),
    CONSTRAINT fk_part_project_id FOREIGN KEY(project_id) REFERENCES project (id),
    CONSTRAINT fk_part_room_id FOREIGN KEY(room_id) REFERENCES room (id)
);
INSERT INTO "part" VALUES(1,1,'panel','ash',0,'clear',NULL,'','2026-11-20T17:00:00.000000Z',NULL);
INSERT INTO "part" VALUES(2,1,'legs','ash',0,'',NULL,'','2026-11-20T17:00:00.000000Z',NULL);
INSERT INTO "part" VALUES(3,1,'base',NULL,0,'',NULL,'','2026-11-20T17:00:00.000000Z',NULL);
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
INSERT INTO "part_step" VALUES(1,1,0,'sand',NULL,'[]','');
INSERT INTO "part_step" VALUES(2,1,1,'coat',1,'[]','');
CREATE TABLE photo (entry_id INTEGER NOT NULL, path TEXT NOT NULL, CONSTRAINT pk_photo PRIMARY KEY (entry_id), CONSTRAINT fk_photo_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id));
CREATE TABLE piece (
    id INTEGER NOT NULL, part_id INTEGER NOT NULL, number INTEGER NOT NULL,
    CONSTRAINT pk_piece PRIMARY KEY (id),
    CONSTRAINT uq_piece_part_id_number UNIQUE (part_id, number),
    CONSTRAINT ck_piece_number CHECK (number >= 1),
    CONSTRAINT fk_piece_part_id FOREIGN KEY(part_id) REFERENCES part (id)
);
INSERT INTO "piece" VALUES(1,1,1);
INSERT INTO "piece" VALUES(2,2,1);
INSERT INTO "piece" VALUES(3,2,2);
INSERT INTO "piece" VALUES(4,3,1);
CREATE TABLE product (
    id INTEGER NOT NULL, name TEXT NOT NULL, class_key TEXT NOT NULL,
    note TEXT DEFAULT '' NOT NULL, added_at VARCHAR(27) NOT NULL,
    CONSTRAINT pk_product PRIMARY KEY (id),
    CONSTRAINT uq_product_name UNIQUE (name)
);
INSERT INTO "product" VALUES(1,'sealer','shellac-2lb','','2026-11-20T17:00:00.000000Z');
INSERT INTO "product" VALUES(2,'oil','hardwax-oil','','2026-11-20T17:00:00.000000Z');
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
INSERT INTO "product_figure" VALUES(1,2,'recoat',12.0,12.0,12.0,23.0,50.0,'your can','','2026-11-20T17:00:00.000000Z');
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
CREATE TABLE project (
    id INTEGER NOT NULL, name TEXT NOT NULL, due_at VARCHAR(27), note TEXT DEFAULT '' NOT NULL,
    added_at VARCHAR(27) NOT NULL, archived_at VARCHAR(27),
    CONSTRAINT pk_project PRIMARY KEY (id),
    CONSTRAINT uq_project_name UNIQUE (name)
);
INSERT INTO "project" VALUES(1,'cabinet',NULL,'','2026-11-20T17:00:00.000000Z',NULL);
CREATE TABLE promise (entry_id INTEGER NOT NULL, text TEXT NOT NULL, CONSTRAINT pk_promise PRIMARY KEY (entry_id), CONSTRAINT fk_promise_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id));
CREATE TABLE rags_event (entry_id INTEGER NOT NULL, 
        deed TEXT NOT NULL, item_entry_id INTEGER,
        CONSTRAINT ck_rags_event_deed CHECK (deed IN ('spread', 'water', 'lifted', 'can',
            'stiff', 'gone')),
        CONSTRAINT fk_rags_event_item_entry_id FOREIGN KEY(item_entry_id) REFERENCES entry (id)
    , CONSTRAINT pk_rags_event PRIMARY KEY (entry_id), CONSTRAINT fk_rags_event_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id));
INSERT INTO "rags_event" VALUES(5,'spread',4);
CREATE TABLE reading (entry_id INTEGER NOT NULL, 
        room_id INTEGER NOT NULL, temperature_c FLOAT NOT NULL, humidity_pct FLOAT NOT NULL,
        CONSTRAINT ck_reading_humidity CHECK (humidity_pct BETWEEN 0 AND 100),
        CONSTRAINT fk_reading_room_id FOREIGN KEY(room_id) REFERENCES room (id)
    , CONSTRAINT pk_reading PRIMARY KEY (entry_id), CONSTRAINT fk_reading_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id));
INSERT INTO "reading" VALUES(1,1,20.0,50.0);
CREATE TABLE resumed (entry_id INTEGER NOT NULL,  CONSTRAINT pk_resumed PRIMARY KEY (entry_id), CONSTRAINT fk_resumed_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id));
CREATE TABLE review (entry_id INTEGER NOT NULL, outcome TEXT NOT NULL, CONSTRAINT pk_review PRIMARY KEY (entry_id), CONSTRAINT fk_review_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id));
CREATE TABLE room (
    id INTEGER NOT NULL, name TEXT NOT NULL, note TEXT DEFAULT '' NOT NULL,
    CONSTRAINT pk_room PRIMARY KEY (id),
    CONSTRAINT uq_room_name UNIQUE (name)
);
INSERT INTO "room" VALUES(1,'bench','');
CREATE TABLE set_aside (entry_id INTEGER NOT NULL, reason TEXT DEFAULT '' NOT NULL, CONSTRAINT pk_set_aside PRIMARY KEY (entry_id), CONSTRAINT fk_set_aside_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id));
CREATE TABLE setting (
    key TEXT NOT NULL, value TEXT NOT NULL,
    CONSTRAINT pk_setting PRIMARY KEY (key)
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
CREATE TABLE shop_week (
    id INTEGER NOT NULL, valid_from VARCHAR(27) NOT NULL,
    CONSTRAINT pk_shop_week PRIMARY KEY (id)
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
INSERT INTO "step" VALUES(1,1,0,'sand',NULL,'[]','');
INSERT INTO "step" VALUES(2,1,1,'coat',1,'[]','');
CREATE TABLE steps (
    id INTEGER NOT NULL, name TEXT NOT NULL, note TEXT DEFAULT '' NOT NULL,
    CONSTRAINT pk_steps PRIMARY KEY (id),
    CONSTRAINT uq_steps_name UNIQUE (name)
);
INSERT INTO "steps" VALUES(1,'clear','');
CREATE TABLE stripped (entry_id INTEGER NOT NULL, 
        operation TEXT NOT NULL, down_to TEXT NOT NULL, survives_entry_id INTEGER,
        CONSTRAINT ck_stripped_operation CHECK (operation IN ('strip', 'sand-through')),
        CONSTRAINT ck_stripped_down_to CHECK (down_to IN ('bare', 'coat')),
        CONSTRAINT fk_stripped_survives_entry_id FOREIGN KEY(survives_entry_id)
            REFERENCES entry (id)
    , CONSTRAINT pk_stripped PRIMARY KEY (entry_id), CONSTRAINT fk_stripped_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id));
CREATE TABLE usual_day (
    id INTEGER NOT NULL, room_id INTEGER NOT NULL, valid_from VARCHAR(27) NOT NULL,
    coldest_c FLOAT, temperature_c FLOAT, humidity_pct FLOAT,
    CONSTRAINT pk_usual_day PRIMARY KEY (id),
    CONSTRAINT ck_usual_day_humidity CHECK (humidity_pct BETWEEN 0 AND 100),
    CONSTRAINT fk_usual_day_room_id FOREIGN KEY(room_id) REFERENCES room (id)
);
INSERT INTO "usual_day" VALUES(1,1,'2026-11-20T17:00:00.000000Z',13.0,NULL,NULL);
CREATE TABLE withdrawal (entry_id INTEGER NOT NULL, 
        act_id INTEGER NOT NULL,
        CONSTRAINT fk_withdrawal_act_id FOREIGN KEY(act_id) REFERENCES act (id)
    , CONSTRAINT pk_withdrawal PRIMARY KEY (entry_id), CONSTRAINT fk_withdrawal_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id));
INSERT INTO "withdrawal" VALUES(9,15);
CREATE TABLE work (entry_id INTEGER NOT NULL, 
        operation TEXT NOT NULL, grit TEXT DEFAULT '' NOT NULL,
        CONSTRAINT ck_work_operation CHECK (operation IN ('coat', 'sand', 'raise-grain', 'denib',
            'scuff', 'mask', 'untape', 'wipe', 'buff', 'rub-out', 'glue-up', 'hardware'))
    , CONSTRAINT pk_work PRIMARY KEY (entry_id), CONSTRAINT fk_work_entry_id FOREIGN KEY(entry_id) REFERENCES entry (id));
INSERT INTO "work" VALUES(2,'sand','P220');
CREATE TABLE zone (
    id INTEGER NOT NULL, face_id INTEGER NOT NULL, position INTEGER NOT NULL,
    name TEXT DEFAULT '' NOT NULL, species TEXT,
    CONSTRAINT pk_zone PRIMARY KEY (id),
    CONSTRAINT uq_zone_face_id_name UNIQUE (face_id, name),
    CONSTRAINT fk_zone_face_id FOREIGN KEY(face_id) REFERENCES face (id)
);
INSERT INTO "zone" VALUES(1,1,1,'',NULL);
INSERT INTO "zone" VALUES(2,2,1,'',NULL);
INSERT INTO "zone" VALUES(3,3,1,'',NULL);
CREATE INDEX ix_usual_day_room_id_valid_from ON usual_day (room_id, valid_from);
CREATE INDEX ix_shop_hours_shop_week_id ON shop_hours (shop_week_id);
CREATE INDEX ix_alias_kind_old_name ON alias (kind, old_name);
CREATE INDEX ix_project_archived_at ON project (archived_at);
CREATE INDEX ix_product_figure_product_id_stage_valid_from
    ON product_figure (product_id, stage, valid_from);
CREATE INDEX ix_product_window_product_id_valid_from ON product_window (product_id, valid_from);
CREATE INDEX ix_entry_act_id ON entry (act_id);
CREATE INDEX ix_entry_kind_latest_at ON entry (kind, latest_at);
CREATE INDEX ix_entry_supersedes_id ON entry (supersedes_id);
CREATE INDEX ix_entry_target_piece_id_zone_id ON entry_target (piece_id, zone_id);
CREATE INDEX ix_joined_member_piece_id ON joined_member (piece_id);
CREATE INDEX ix_moved_piece_piece_id ON moved_piece (piece_id);
CREATE INDEX ix_joined_into_piece_id ON joined (into_piece_id);
CREATE TRIGGER no_update_of_figure_set BEFORE UPDATE ON figure_set BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of figure_set'); END;
CREATE TRIGGER no_delete_of_figure_set BEFORE DELETE ON figure_set BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of figure_set'); END;
CREATE TRIGGER no_update_of_figure_set_stage BEFORE UPDATE ON figure_set_stage BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of figure_set_stage'); END;
CREATE TRIGGER no_delete_of_figure_set_stage BEFORE DELETE ON figure_set_stage BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of figure_set_stage'); END;
CREATE TRIGGER no_update_of_act BEFORE UPDATE ON act BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of act'); END;
CREATE TRIGGER no_delete_of_act BEFORE DELETE ON act BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of act'); END;
CREATE TRIGGER no_update_of_entry BEFORE UPDATE ON entry BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of entry'); END;
CREATE TRIGGER no_delete_of_entry BEFORE DELETE ON entry BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of entry'); END;
CREATE TRIGGER no_update_of_entry_target BEFORE UPDATE ON entry_target BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of entry_target'); END;
CREATE TRIGGER no_delete_of_entry_target BEFORE DELETE ON entry_target BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of entry_target'); END;
CREATE TRIGGER no_update_of_coat BEFORE UPDATE ON coat BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of coat'); END;
CREATE TRIGGER no_delete_of_coat BEFORE DELETE ON coat BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of coat'); END;
CREATE TRIGGER no_update_of_work BEFORE UPDATE ON work BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of work'); END;
CREATE TRIGGER no_delete_of_work BEFORE DELETE ON work BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of work'); END;
CREATE TRIGGER no_update_of_film_check BEFORE UPDATE ON film_check BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of film_check'); END;
CREATE TRIGGER no_delete_of_film_check BEFORE DELETE ON film_check BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of film_check'); END;
CREATE TRIGGER no_update_of_fault BEFORE UPDATE ON fault BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of fault'); END;
CREATE TRIGGER no_delete_of_fault BEFORE DELETE ON fault BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of fault'); END;
CREATE TRIGGER no_update_of_stripped BEFORE UPDATE ON stripped BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of stripped'); END;
CREATE TRIGGER no_delete_of_stripped BEFORE DELETE ON stripped BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of stripped'); END;
CREATE TRIGGER no_update_of_joined BEFORE UPDATE ON joined BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of joined'); END;
CREATE TRIGGER no_delete_of_joined BEFORE DELETE ON joined BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of joined'); END;
CREATE TRIGGER no_update_of_joined_member BEFORE UPDATE ON joined_member BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of joined_member'); END;
CREATE TRIGGER no_delete_of_joined_member BEFORE DELETE ON joined_member BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of joined_member'); END;
CREATE TRIGGER no_update_of_moved BEFORE UPDATE ON moved BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of moved'); END;
CREATE TRIGGER no_delete_of_moved BEFORE DELETE ON moved BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of moved'); END;
CREATE TRIGGER no_update_of_moved_piece BEFORE UPDATE ON moved_piece BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of moved_piece'); END;
CREATE TRIGGER no_delete_of_moved_piece BEFORE DELETE ON moved_piece BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of moved_piece'); END;
CREATE TRIGGER no_update_of_reading BEFORE UPDATE ON reading BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of reading'); END;
CREATE TRIGGER no_delete_of_reading BEFORE DELETE ON reading BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of reading'); END;
CREATE TRIGGER no_update_of_container_event BEFORE UPDATE ON container_event BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of container_event'); END;
CREATE TRIGGER no_delete_of_container_event BEFORE DELETE ON container_event BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of container_event'); END;
CREATE TRIGGER no_update_of_rags_event BEFORE UPDATE ON rags_event BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of rags_event'); END;
CREATE TRIGGER no_delete_of_rags_event BEFORE DELETE ON rags_event BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of rags_event'); END;
CREATE TRIGGER no_update_of_handover BEFORE UPDATE ON handover BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of handover'); END;
CREATE TRIGGER no_delete_of_handover BEFORE DELETE ON handover BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of handover'); END;
CREATE TRIGGER no_update_of_set_aside BEFORE UPDATE ON set_aside BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of set_aside'); END;
CREATE TRIGGER no_delete_of_set_aside BEFORE DELETE ON set_aside BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of set_aside'); END;
CREATE TRIGGER no_update_of_resumed BEFORE UPDATE ON resumed BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of resumed'); END;
CREATE TRIGGER no_delete_of_resumed BEFORE DELETE ON resumed BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of resumed'); END;
CREATE TRIGGER no_update_of_review BEFORE UPDATE ON review BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of review'); END;
CREATE TRIGGER no_delete_of_review BEFORE DELETE ON review BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of review'); END;
CREATE TRIGGER no_update_of_note BEFORE UPDATE ON note BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of note'); END;
CREATE TRIGGER no_delete_of_note BEFORE DELETE ON note BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of note'); END;
CREATE TRIGGER no_update_of_photo BEFORE UPDATE ON photo BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of photo'); END;
CREATE TRIGGER no_delete_of_photo BEFORE DELETE ON photo BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of photo'); END;
CREATE TRIGGER no_update_of_promise BEFORE UPDATE ON promise BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of promise'); END;
CREATE TRIGGER no_delete_of_promise BEFORE DELETE ON promise BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of promise'); END;
CREATE TRIGGER no_update_of_withdrawal BEFORE UPDATE ON withdrawal BEGIN SELECT RAISE(ABORT, 'the log is only added to: no UPDATE of withdrawal'); END;
CREATE TRIGGER no_delete_of_withdrawal BEFORE DELETE ON withdrawal BEGIN SELECT RAISE(ABORT, 'the log is only added to: no DELETE of withdrawal'); END;
COMMIT;
