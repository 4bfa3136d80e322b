-- What an order says besides its limits; the revision of its limits in force; the text that a search
-- looks in, folded (written by the program, here and with each change).
ALTER TABLE job ADD COLUMN customer TEXT;
ALTER TABLE job ADD COLUMN drawing_revision TEXT;
ALTER TABLE job ADD COLUMN developed_length_mm REAL;
ALTER TABLE job ADD COLUMN developed_angle_degrees REAL;
ALTER TABLE job ADD COLUMN revision INTEGER NOT NULL DEFAULT 1;
ALTER TABLE job ADD COLUMN search_text TEXT NOT NULL DEFAULT '';

CREATE TABLE specification_revision (
  job_id INTEGER NOT NULL REFERENCES job,
  revision INTEGER NOT NULL CHECK (revision >= 1),
  at_micros INTEGER NOT NULL,
  made_by TEXT NOT NULL,
  why TEXT NOT NULL,
  specification TEXT NOT NULL CHECK (json_valid(specification)),
  PRIMARY KEY (job_id, revision)
) STRICT, WITHOUT ROWID;

-- From the record of changes: each entry of a job whose limits differ from the entry before.
INSERT INTO specification_revision
SELECT job_id, row_number() OVER (PARTITION BY job_id ORDER BY id), at_micros, made_by, why, asked
FROM (
  SELECT c.id, j.id AS job_id, c.at_micros, c.made_by, c.why,
    c.new_value -> '$.specification' AS asked,
    lag(c.new_value -> '$.specification') OVER (PARTITION BY j.id ORDER BY c.id) AS before
  FROM change c JOIN job j ON c.what = 'job ' || j.id
  WHERE json_valid(c.new_value)
)
WHERE asked IS NOT NULL AND asked IS NOT before;

INSERT INTO specification_revision
SELECT id, 1, opened_micros, '', '', specification FROM job
WHERE id NOT IN (SELECT job_id FROM specification_revision);

UPDATE job SET revision = (SELECT max(revision) FROM specification_revision WHERE job_id = job.id);

-- How the feet touch the piece; null where it is not known.
ALTER TABLE bridge ADD COLUMN foot_kind TEXT;

ALTER TABLE reading ADD COLUMN kind TEXT NOT NULL DEFAULT 'PRODUCT';
ALTER TABLE reading ADD COLUMN pass INTEGER NOT NULL DEFAULT 1;
ALTER TABLE reading ADD COLUMN revision INTEGER;
ALTER TABLE reading ADD COLUMN measured_by TEXT;
ALTER TABLE reading ADD COLUMN material_lot TEXT;

-- Revision in force at a reading's time (the first one for times before it), and the lot of the
-- newest event before the reading that names one, else the lot of the job.
UPDATE reading SET
  revision = coalesce(
    (SELECT max(s.revision) FROM specification_revision s
     WHERE s.job_id = reading.job_id AND s.at_micros <= reading.wall_micros), 1),
  material_lot = nullif(coalesce(
    (SELECT e.material_lot FROM job_event e
     WHERE e.job_id = reading.job_id AND e.kind = 'MATERIAL_LOT' AND e.material_lot <> ''
       AND e.after_reading_id < reading.id
     ORDER BY e.after_reading_id DESC, e.id DESC LIMIT 1),
    (SELECT j.material_lot FROM job j WHERE j.id = reading.job_id)), '');

CREATE TABLE event_withdrawal (
  id INTEGER PRIMARY KEY,
  event_id INTEGER NOT NULL UNIQUE REFERENCES job_event,
  reason TEXT NOT NULL,
  at_micros INTEGER NOT NULL,
  made_by TEXT NOT NULL
) STRICT;

CREATE TABLE signal_answer (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES job,
  characteristic TEXT NOT NULL,
  chart TEXT NOT NULL,
  reading_id INTEGER NOT NULL REFERENCES reading,
  cause TEXT NOT NULL,
  action TEXT NOT NULL,
  at_micros INTEGER NOT NULL,
  made_by TEXT NOT NULL
) STRICT;
CREATE INDEX signal_answer_by_job ON signal_answer (job_id);

CREATE TABLE roller_scale (
  id INTEGER PRIMARY KEY,
  machine TEXT NOT NULL,
  name TEXT NOT NULL,
  unit TEXT NOT NULL,
  tighter TEXT NOT NULL,
  step REAL,
  lost_motion REAL,
  move_uncertainty REAL,
  gain_per_mm REAL,
  gain_uncertainty_per_mm REAL,
  at_micros INTEGER NOT NULL,
  made_by TEXT NOT NULL
) STRICT;
CREATE INDEX roller_scale_by_name ON roller_scale (machine, name);

-- Rollers that the section runs over; the newest row of a name holds, unless it was removed.
CREATE TABLE roller (
  id INTEGER PRIMARY KEY,
  machine TEXT NOT NULL,
  name TEXT NOT NULL,
  diameter_mm REAL NOT NULL,
  diameter_uncertainty_mm REAL NOT NULL,
  side TEXT NOT NULL,
  driven INTEGER NOT NULL CHECK (driven IN (0, 1)),
  removed INTEGER NOT NULL CHECK (removed IN (0, 1)),
  at_micros INTEGER NOT NULL,
  made_by TEXT NOT NULL
) STRICT;
CREATE INDEX roller_by_name ON roller (machine, name);

-- The profile of a piece that ran through the gauge, for each of its passes.
CREATE TABLE profile (
  reading_id INTEGER NOT NULL REFERENCES reading,
  pass INTEGER NOT NULL CHECK (pass >= 1),
  basis TEXT NOT NULL CHECK (json_valid(basis)),
  packed BLOB NOT NULL,
  PRIMARY KEY (reading_id, pass)
) STRICT;

-- Which database this is, for documents that other programs keep; a copy has the same one. In the
-- form of a UUID of version 4 (RFC 9562, section 5.4).
CREATE TABLE identity (
  only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
  uuid TEXT NOT NULL
) STRICT;
INSERT INTO identity
SELECT 1, substr(h, 1, 8) || '-' || substr(h, 9, 4) || '-4' || substr(h, 14, 3) || '-a'
  || substr(h, 18, 3) || '-' || substr(h, 21, 12)
FROM (SELECT lower(hex(randomblob(16))) AS h);

-- Studies of the gauge. At most one is running at a station.
CREATE TABLE gauge_study (
  id INTEGER PRIMARY KEY,
  station TEXT NOT NULL,
  name TEXT NOT NULL,
  design TEXT NOT NULL CHECK (json_valid(design)),
  subject TEXT NOT NULL CHECK (json_valid(subject)),
  state TEXT NOT NULL,
  made_micros INTEGER NOT NULL,
  made_by TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX gauge_study_running ON gauge_study (station) WHERE state = 'RUNNING';

CREATE TABLE study_measurement (
  id INTEGER PRIMARY KEY,
  study_id INTEGER NOT NULL REFERENCES gauge_study,
  step INTEGER NOT NULL CHECK (step >= 1),
  mode TEXT NOT NULL,
  value_nm INTEGER NOT NULL,
  scatter_nm INTEGER NOT NULL,
  sample_count INTEGER NOT NULL,
  first_sample INTEGER NOT NULL,
  last_sample INTEGER NOT NULL,
  monotonic_nanos INTEGER NOT NULL,
  wall_micros INTEGER NOT NULL,
  depth_nm INTEGER NOT NULL,
  set_up_id INTEGER NOT NULL REFERENCES set_up,
  curvature_per_mm REAL NOT NULL,
  standard_uncertainty_per_mm REAL NOT NULL
) STRICT;
CREATE INDEX study_measurement_by_study ON study_measurement (study_id);

CREATE TABLE study_drop (
  measurement_id INTEGER PRIMARY KEY REFERENCES study_measurement,
  reason TEXT NOT NULL,
  at_micros INTEGER NOT NULL,
  made_by TEXT NOT NULL
) STRICT;

-- By how much an interim check on a master may differ, where that was stated with it.
ALTER TABLE master ADD COLUMN check_limit_mm REAL;
