-- Lengths ending in _nm are whole nanometres, times ending in _micros UTC microseconds.
CREATE TABLE run (
  id INTEGER PRIMARY KEY,
  started_micros INTEGER NOT NULL,
  version TEXT NOT NULL
) STRICT;

CREATE TABLE job (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  part TEXT NOT NULL,
  machine TEXT NOT NULL,
  station TEXT NOT NULL,
  section TEXT NOT NULL CHECK (json_valid(section)),
  material_lot TEXT NOT NULL,
  measured_face TEXT NOT NULL,
  specification TEXT NOT NULL CHECK (json_valid(specification)),
  plan TEXT NOT NULL CHECK (json_valid(plan)),
  state TEXT NOT NULL,
  opened_micros INTEGER NOT NULL
) STRICT;
CREATE INDEX job_by_machine ON job (machine);
CREATE INDEX job_by_state ON job (state);
CREATE INDEX job_by_opened ON job (opened_micros);
CREATE INDEX job_by_name ON job (name);

CREATE TABLE active_job (
  station TEXT PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES job
) STRICT, WITHOUT ROWID;

CREATE TABLE job_event (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES job,
  machine TEXT NOT NULL,
  kind TEXT NOT NULL,
  after_reading_id INTEGER NOT NULL,
  at_micros INTEGER NOT NULL,
  setting_before REAL,
  setting_after REAL,
  material_lot TEXT NOT NULL,
  note TEXT NOT NULL,
  made_by TEXT NOT NULL
) STRICT;
CREATE INDEX job_event_by_job ON job_event (job_id);
CREATE INDEX job_event_by_machine ON job_event (machine);

CREATE TABLE bridge (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  span_mm REAL NOT NULL,
  span_uncertainty_mm REAL NOT NULL,
  foot_radius_mm REAL NOT NULL,
  foot_radius_uncertainty_mm REAL NOT NULL,
  skew_limit_degrees REAL NOT NULL,
  replaced_by INTEGER REFERENCES bridge
) STRICT;

CREATE TABLE mount (
  id INTEGER PRIMARY KEY,
  station TEXT NOT NULL,
  bridge_id INTEGER NOT NULL REFERENCES bridge,
  at_micros INTEGER NOT NULL,
  made_by TEXT NOT NULL
) STRICT;
CREATE INDEX mount_by_station ON mount (station);

CREATE TABLE zero (
  id INTEGER PRIMARY KEY,
  station TEXT NOT NULL,
  bridge_id INTEGER NOT NULL REFERENCES bridge,
  value_nm INTEGER NOT NULL,
  scatter_nm INTEGER NOT NULL,
  sample_count INTEGER NOT NULL,
  taken_micros INTEGER NOT NULL,
  taken_by TEXT NOT NULL
) STRICT;
CREATE INDEX zero_by_station ON zero (station);

CREATE TABLE calibration (
  id INTEGER PRIMARY KEY,
  station TEXT NOT NULL,
  bridge_id INTEGER NOT NULL REFERENCES bridge,
  span_mm REAL NOT NULL,
  zero_offset_mm REAL NOT NULL,
  foot_radius_mm REAL NOT NULL,
  covariance TEXT NOT NULL CHECK (json_valid(covariance)),
  degrees_of_freedom REAL NOT NULL,
  taken_micros INTEGER NOT NULL,
  due_micros INTEGER NOT NULL,
  taken_by TEXT NOT NULL,
  summary TEXT NOT NULL
) STRICT;
CREATE INDEX calibration_by_station ON calibration (station, bridge_id);

CREATE TABLE master (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  face TEXT NOT NULL,
  radius_mm REAL NOT NULL,
  expanded_uncertainty_mm REAL NOT NULL
) STRICT;

CREATE TABLE interim_check (
  id INTEGER PRIMARY KEY,
  station TEXT NOT NULL,
  bridge_id INTEGER NOT NULL REFERENCES bridge,
  master_id INTEGER NOT NULL REFERENCES master,
  radius_mm REAL NOT NULL,
  master_radius_mm REAL NOT NULL,
  limit_mm REAL NOT NULL,
  passed INTEGER NOT NULL CHECK (passed IN (0, 1)),
  taken_micros INTEGER NOT NULL,
  taken_by TEXT NOT NULL
) STRICT;
CREATE INDEX interim_check_by_station ON interim_check (station, bridge_id);

CREATE TABLE set_up (
  id INTEGER PRIMARY KEY,
  body TEXT NOT NULL UNIQUE CHECK (json_valid(body))
) STRICT;

CREATE TABLE reading (
  id INTEGER PRIMARY KEY,
  station TEXT NOT NULL,
  station_sequence INTEGER NOT NULL,
  job_id INTEGER NOT NULL REFERENCES job,
  piece INTEGER NOT NULL,
  position TEXT NOT NULL,
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
  radius_mm REAL,
  lower_mm REAL NOT NULL,
  upper_mm REAL,
  curvature_per_mm REAL NOT NULL,
  standard_uncertainty_per_mm REAL NOT NULL,
  coverage_factor REAL NOT NULL,
  degrees_of_freedom REAL NOT NULL,
  decision TEXT NOT NULL,
  marks TEXT NOT NULL,
  clock TEXT NOT NULL,
  raw_hex TEXT NOT NULL,
  run_id INTEGER NOT NULL REFERENCES run,
  UNIQUE (station, station_sequence)
) STRICT;
CREATE INDEX reading_by_job ON reading (job_id);
CREATE INDEX reading_by_position ON reading (job_id, position);
CREATE INDEX reading_by_time ON reading (job_id, wall_micros);
CREATE INDEX reading_not_conforming ON reading (job_id, decision) WHERE decision <> 'CONFORMS';

-- Kept by the writer with each commit, so that counts need no scan.
CREATE TABLE job_total (
  job_id INTEGER PRIMARY KEY REFERENCES job,
  readings INTEGER NOT NULL,
  first_reading_id INTEGER NOT NULL,
  last_reading_id INTEGER NOT NULL
) STRICT;

CREATE TABLE exclusion (
  id INTEGER PRIMARY KEY,
  reading_id INTEGER NOT NULL REFERENCES reading,
  job_id INTEGER NOT NULL REFERENCES job,
  excluded INTEGER NOT NULL CHECK (excluded IN (0, 1)),
  reason TEXT NOT NULL,
  at_micros INTEGER NOT NULL,
  made_by TEXT NOT NULL
) STRICT;
CREATE INDEX exclusion_by_job ON exclusion (job_id);
CREATE INDEX exclusion_by_reading ON exclusion (reading_id);

CREATE TABLE change (
  id INTEGER PRIMARY KEY,
  at_micros INTEGER NOT NULL,
  made_by TEXT NOT NULL,
  what TEXT NOT NULL,
  old_value TEXT NOT NULL,
  new_value TEXT NOT NULL,
  why TEXT NOT NULL
) STRICT;

CREATE TABLE incident (
  id INTEGER PRIMARY KEY,
  station TEXT NOT NULL,
  kind TEXT NOT NULL,
  from_micros INTEGER NOT NULL,
  to_micros INTEGER NOT NULL,
  lost INTEGER NOT NULL,
  detail TEXT NOT NULL
) STRICT;
CREATE INDEX incident_by_station ON incident (station);

CREATE TABLE checkpoint (
  owner TEXT NOT NULL,
  level INTEGER NOT NULL,
  reading_id INTEGER NOT NULL,
  state BLOB NOT NULL,
  UNIQUE (owner, level)
) STRICT;

CREATE TABLE trace_block (
  id INTEGER PRIMARY KEY,
  station TEXT NOT NULL,
  first_sample INTEGER NOT NULL,
  last_sample INTEGER NOT NULL,
  sample_count INTEGER NOT NULL,
  last_wall_micros INTEGER NOT NULL,
  merged INTEGER NOT NULL CHECK (merged IN (0, 1)),
  body BLOB NOT NULL,
  UNIQUE (station, first_sample)
) STRICT;
CREATE INDEX trace_block_by_time ON trace_block (last_wall_micros);
CREATE INDEX trace_block_loose ON trace_block (station, first_sample) WHERE merged = 0;
