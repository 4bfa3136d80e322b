-- What a plant's database has still to hear of: the newest change of every record that is not a
-- reading or belongs to one, once, in the order of the changes. key: the id of the record, its station,
-- or 1,000,000 * job + revision; mark: tells two histories with the same revisions apart. A record that
-- changes again moves to the end. Triggers write it, so that no statement can forget it.
CREATE TABLE change_feed (
  revision INTEGER PRIMARY KEY,
  table_name TEXT NOT NULL,
  key ANY NOT NULL,
  mark INTEGER NOT NULL,
  UNIQUE (table_name, key)
) STRICT;

-- How often the history of this database was begun anew: by a restore, or where it was found to differ
-- from what the plant has.
ALTER TABLE identity ADD COLUMN incarnation INTEGER NOT NULL DEFAULT 1 CHECK (incarnation >= 1);

-- Everything that there is, what others name before what names it.
INSERT INTO change_feed (table_name, key, mark)
SELECT 'run', id, random() FROM run ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'bridge', id, random() FROM bridge ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'master', id, random() FROM master ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'mount', id, random() FROM mount ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'zero', id, random() FROM zero ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'calibration', id, random() FROM calibration ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'interim_check', id, random() FROM interim_check ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'set_up', id, random() FROM set_up ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'job', id, random() FROM job ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'specification_revision', job_id * 1000000 + revision, random() FROM specification_revision ORDER BY job_id, revision;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'active_job', station, random() FROM active_job ORDER BY station;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'job_event', id, random() FROM job_event ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'exclusion', id, random() FROM exclusion ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'change', id, random() FROM change ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'incident', id, random() FROM incident ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'event_withdrawal', id, random() FROM event_withdrawal ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'signal_answer', id, random() FROM signal_answer ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'roller_scale', id, random() FROM roller_scale ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'roller', id, random() FROM roller ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'gauge_study', id, random() FROM gauge_study ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'study_measurement', id, random() FROM study_measurement ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'study_drop', measurement_id, random() FROM study_drop ORDER BY measurement_id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'alert', id, random() FROM alert ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'alert_event', id, random() FROM alert_event ORDER BY id;
INSERT INTO change_feed (table_name, key, mark)
SELECT 'logbook_entry', id, random() FROM logbook_entry ORDER BY id;

CREATE TRIGGER run_added AFTER INSERT ON run BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'run', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER run_changed AFTER UPDATE ON run BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'run', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER run_removed AFTER DELETE ON run BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'run', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER bridge_added AFTER INSERT ON bridge BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'bridge', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER bridge_changed AFTER UPDATE ON bridge BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'bridge', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER bridge_removed AFTER DELETE ON bridge BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'bridge', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER master_added AFTER INSERT ON master BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'master', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER master_changed AFTER UPDATE ON master BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'master', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER master_removed AFTER DELETE ON master BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'master', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER mount_added AFTER INSERT ON mount BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'mount', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER mount_changed AFTER UPDATE ON mount BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'mount', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER mount_removed AFTER DELETE ON mount BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'mount', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER zero_added AFTER INSERT ON zero BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'zero', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER zero_changed AFTER UPDATE ON zero BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'zero', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER zero_removed AFTER DELETE ON zero BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'zero', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER calibration_added AFTER INSERT ON calibration BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'calibration', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER calibration_changed AFTER UPDATE ON calibration BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'calibration', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER calibration_removed AFTER DELETE ON calibration BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'calibration', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER interim_check_added AFTER INSERT ON interim_check BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'interim_check', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER interim_check_changed AFTER UPDATE ON interim_check BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'interim_check', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER interim_check_removed AFTER DELETE ON interim_check BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'interim_check', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER set_up_added AFTER INSERT ON set_up BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'set_up', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER set_up_changed AFTER UPDATE ON set_up BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'set_up', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER set_up_removed AFTER DELETE ON set_up BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'set_up', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER job_added AFTER INSERT ON job BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'job', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER job_changed AFTER UPDATE ON job BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'job', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER job_removed AFTER DELETE ON job BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'job', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER specification_revision_added AFTER INSERT ON specification_revision BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'specification_revision', NEW.job_id * 1000000 + NEW.revision, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER specification_revision_changed AFTER UPDATE ON specification_revision BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'specification_revision', NEW.job_id * 1000000 + NEW.revision, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER specification_revision_removed AFTER DELETE ON specification_revision BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'specification_revision', OLD.job_id * 1000000 + OLD.revision, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER active_job_added AFTER INSERT ON active_job BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'active_job', NEW.station, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER active_job_changed AFTER UPDATE ON active_job BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'active_job', NEW.station, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER active_job_removed AFTER DELETE ON active_job BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'active_job', OLD.station, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER job_event_added AFTER INSERT ON job_event BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'job_event', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER job_event_changed AFTER UPDATE ON job_event BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'job_event', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER job_event_removed AFTER DELETE ON job_event BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'job_event', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER exclusion_added AFTER INSERT ON exclusion BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'exclusion', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER exclusion_changed AFTER UPDATE ON exclusion BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'exclusion', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER exclusion_removed AFTER DELETE ON exclusion BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'exclusion', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER change_added AFTER INSERT ON change BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'change', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER change_changed AFTER UPDATE ON change BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'change', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER change_removed AFTER DELETE ON change BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'change', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER incident_added AFTER INSERT ON incident BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'incident', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER incident_changed AFTER UPDATE ON incident BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'incident', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER incident_removed AFTER DELETE ON incident BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'incident', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER event_withdrawal_added AFTER INSERT ON event_withdrawal BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'event_withdrawal', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER event_withdrawal_changed AFTER UPDATE ON event_withdrawal BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'event_withdrawal', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER event_withdrawal_removed AFTER DELETE ON event_withdrawal BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'event_withdrawal', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER signal_answer_added AFTER INSERT ON signal_answer BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'signal_answer', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER signal_answer_changed AFTER UPDATE ON signal_answer BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'signal_answer', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER signal_answer_removed AFTER DELETE ON signal_answer BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'signal_answer', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER roller_scale_added AFTER INSERT ON roller_scale BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'roller_scale', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER roller_scale_changed AFTER UPDATE ON roller_scale BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'roller_scale', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER roller_scale_removed AFTER DELETE ON roller_scale BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'roller_scale', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER roller_added AFTER INSERT ON roller BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'roller', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER roller_changed AFTER UPDATE ON roller BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'roller', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER roller_removed AFTER DELETE ON roller BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'roller', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER gauge_study_added AFTER INSERT ON gauge_study BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'gauge_study', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER gauge_study_changed AFTER UPDATE ON gauge_study BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'gauge_study', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER gauge_study_removed AFTER DELETE ON gauge_study BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'gauge_study', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER study_measurement_added AFTER INSERT ON study_measurement BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'study_measurement', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER study_measurement_changed AFTER UPDATE ON study_measurement BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'study_measurement', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER study_measurement_removed AFTER DELETE ON study_measurement BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'study_measurement', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER study_drop_added AFTER INSERT ON study_drop BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'study_drop', NEW.measurement_id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER study_drop_changed AFTER UPDATE ON study_drop BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'study_drop', NEW.measurement_id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER study_drop_removed AFTER DELETE ON study_drop BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'study_drop', OLD.measurement_id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER alert_added AFTER INSERT ON alert BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'alert', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER alert_changed AFTER UPDATE ON alert BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'alert', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER alert_removed AFTER DELETE ON alert BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'alert', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER alert_event_added AFTER INSERT ON alert_event BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'alert_event', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER alert_event_changed AFTER UPDATE ON alert_event BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'alert_event', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER alert_event_removed AFTER DELETE ON alert_event BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'alert_event', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER logbook_entry_added AFTER INSERT ON logbook_entry BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'logbook_entry', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER logbook_entry_changed AFTER UPDATE ON logbook_entry BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'logbook_entry', NEW.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
CREATE TRIGGER logbook_entry_removed AFTER DELETE ON logbook_entry BEGIN
  INSERT INTO change_feed SELECT coalesce(max(revision), 0) + 1, 'logbook_entry', OLD.id, random()
  FROM change_feed WHERE true
  ON CONFLICT (table_name, key) DO UPDATE SET revision = excluded.revision, mark = excluded.mark;
END;
