-- The database of a plant, version 1 (PostgreSQL 15 or later). Schema plant: a table for each table of
-- a workshop computer (an edge), with the edge, its incarnation (how often its records began anew) and,
-- where rows may change, the number of their newest change. Schema edge: the same tables as one edge has
-- them, of the edge that the session has set. Lengths ending in _nm are whole nanometres, times ending
-- in _micros UTC microseconds, truth is 0 or 1. No record has a foreign key: parts arrive in any order.
CREATE SCHEMA plant;
CREATE SCHEMA edge;

CREATE TABLE plant.version (
  version int NOT NULL,
  made_micros bigint NOT NULL
);

CREATE FUNCTION plant.now_micros() RETURNS bigint LANGUAGE sql VOLATILE PARALLEL SAFE AS
$$ SELECT (extract(epoch FROM clock_timestamp()) * 1000000)::bigint $$;

-- The edge that this session reads and writes.
CREATE FUNCTION plant.current_edge() RETURNS uuid LANGUAGE sql STABLE PARALLEL SAFE AS
$$ SELECT nullif(current_setting('chordlog.edge', true), '')::uuid $$;

CREATE TABLE plant.edge (
  edge_id uuid PRIMARY KEY,
  name text COLLATE "C" NOT NULL UNIQUE,
  site text COLLATE "C" NOT NULL DEFAULT '',
  incarnation int NOT NULL DEFAULT 1 CHECK (incarnation >= 1),
  schema_version int NOT NULL DEFAULT 0,
  program_version text NOT NULL DEFAULT '',
  made_micros bigint NOT NULL DEFAULT plant.now_micros(),
  -- What it said when it last spoke.
  seen_micros bigint NOT NULL DEFAULT 0,
  clock_ahead_micros bigint NOT NULL DEFAULT 0,
  backlog_rows bigint NOT NULL DEFAULT 0,
  newest_edge_micros bigint NOT NULL DEFAULT 0,
  trouble text NOT NULL DEFAULT ''
);

-- What belongs to the plant itself: its people, tokens, sessions and alerts.
INSERT INTO plant.edge (edge_id, name) VALUES ('00000000-0000-0000-0000-000000000000', '');

CREATE FUNCTION plant.current_incarnation() RETURNS int LANGUAGE sql STABLE PARALLEL SAFE AS
$$ SELECT incarnation FROM plant.edge WHERE edge_id = plant.current_edge() $$;

-- Histories of an edge: rows of an incarnation hold up to the reading after which the next one began.
CREATE TABLE plant.branch (
  edge_id uuid NOT NULL,
  incarnation int NOT NULL,
  begins_after_reading_id bigint NOT NULL,
  begun_micros bigint NOT NULL,
  why text NOT NULL,
  PRIMARY KEY (edge_id, incarnation)
);

-- The ledger: what arrived, written in the commits of the rows; the authority on it.
CREATE TABLE plant.batch (
  edge_id uuid NOT NULL,
  incarnation int NOT NULL,
  number bigint NOT NULL,
  last_reading_id bigint NOT NULL,
  last_revision bigint NOT NULL,
  feed_mark bigint NOT NULL,
  seal_seq bigint NOT NULL,
  seal_hash text NOT NULL,
  rows bigint NOT NULL,
  batches bigint NOT NULL,
  begun_micros bigint NOT NULL,
  received_micros bigint NOT NULL,
  PRIMARY KEY (edge_id, incarnation, number)
);

-- Logins of edges. edge_id: the database that first signed in with it, from when on no other may.
CREATE TABLE plant.login (
  name text COLLATE "C" PRIMARY KEY,
  edge_name text COLLATE "C" NOT NULL UNIQUE,
  site text COLLATE "C" NOT NULL,
  edge_id uuid UNIQUE
);

-- What people at the plant ask of an edge; answer: why it was refused, empty where it was done.
CREATE TABLE plant.request (
  id bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  edge_id uuid NOT NULL,
  kind text NOT NULL,
  body text NOT NULL,
  made_micros bigint NOT NULL,
  made_by text NOT NULL,
  answered_micros bigint,
  answer text
);
CREATE INDEX request_by_edge ON plant.request (edge_id, id);

-- The next id of a table of this edge. The caller holds the edge's lock for writing, so ids become
-- visible in their order.
CREATE FUNCTION plant.next_id(of_table text) RETURNS bigint LANGUAGE plpgsql VOLATILE AS $$
DECLARE
  found bigint;
BEGIN
  EXECUTE format('SELECT coalesce(max(id), 0) + 1 FROM edge.%I', of_table) INTO found;
  RETURN found;
END $$;

CREATE TABLE plant.run (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('run'),
  started_micros bigint NOT NULL,
  version text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE TABLE plant.bridge (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('bridge'),
  name text COLLATE "C" NOT NULL,
  span_mm double precision NOT NULL,
  span_uncertainty_mm double precision NOT NULL,
  foot_radius_mm double precision NOT NULL,
  foot_radius_uncertainty_mm double precision NOT NULL,
  skew_limit_degrees double precision NOT NULL,
  replaced_by bigint,
  foot_kind text COLLATE "C",
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE TABLE plant.master (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('master'),
  name text COLLATE "C" NOT NULL,
  face text COLLATE "C" NOT NULL,
  radius_mm double precision NOT NULL,
  expanded_uncertainty_mm double precision NOT NULL,
  check_limit_mm double precision,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE TABLE plant.mount (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('mount'),
  station text COLLATE "C" NOT NULL,
  bridge_id bigint NOT NULL,
  at_micros bigint NOT NULL,
  made_by text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX mount_by_station ON plant.mount (edge_id, incarnation, station);

CREATE TABLE plant.zero (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('zero'),
  station text COLLATE "C" NOT NULL,
  bridge_id bigint NOT NULL,
  value_nm bigint NOT NULL,
  scatter_nm bigint NOT NULL,
  sample_count bigint NOT NULL,
  taken_micros bigint NOT NULL,
  taken_by text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX zero_by_station ON plant.zero (edge_id, incarnation, station);

CREATE TABLE plant.calibration (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('calibration'),
  station text COLLATE "C" NOT NULL,
  bridge_id bigint NOT NULL,
  span_mm double precision NOT NULL,
  zero_offset_mm double precision NOT NULL,
  foot_radius_mm double precision NOT NULL,
  covariance text COLLATE "C" NOT NULL,
  degrees_of_freedom double precision NOT NULL,
  taken_micros bigint NOT NULL,
  due_micros bigint NOT NULL,
  taken_by text COLLATE "C" NOT NULL,
  summary text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX calibration_by_station ON plant.calibration (edge_id, incarnation, station, bridge_id);

CREATE TABLE plant.interim_check (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('interim_check'),
  station text COLLATE "C" NOT NULL,
  bridge_id bigint NOT NULL,
  master_id bigint NOT NULL,
  radius_mm double precision NOT NULL,
  master_radius_mm double precision NOT NULL,
  limit_mm double precision NOT NULL,
  passed bigint NOT NULL CHECK (passed IN (0, 1)),
  taken_micros bigint NOT NULL,
  taken_by text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX interim_check_by_station ON plant.interim_check (edge_id, incarnation, station, bridge_id);

CREATE TABLE plant.set_up (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('set_up'),
  body text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX set_up_by_body ON plant.set_up USING hash (body);

CREATE TABLE plant.job (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('job'),
  name text COLLATE "C" NOT NULL,
  part text COLLATE "C" NOT NULL,
  machine text COLLATE "C" NOT NULL,
  station text COLLATE "C" NOT NULL,
  section text COLLATE "C" NOT NULL,
  material_lot text COLLATE "C" NOT NULL,
  measured_face text COLLATE "C" NOT NULL,
  specification text COLLATE "C" NOT NULL,
  plan text COLLATE "C" NOT NULL,
  state text COLLATE "C" NOT NULL,
  opened_micros bigint NOT NULL,
  customer text COLLATE "C",
  drawing_revision text COLLATE "C",
  developed_length_mm double precision,
  developed_angle_degrees double precision,
  revision bigint NOT NULL DEFAULT 1,
  search_text text COLLATE "C" NOT NULL DEFAULT '',
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX job_by_machine ON plant.job (edge_id, incarnation, machine);

CREATE INDEX job_by_state ON plant.job (edge_id, incarnation, state);

CREATE INDEX job_by_opened ON plant.job (edge_id, incarnation, opened_micros);

CREATE INDEX job_by_name ON plant.job (edge_id, incarnation, name);

-- Of all edges, those that were opened last first.
CREATE INDEX job_newest ON plant.job (opened_micros DESC, edge_id, id DESC);

CREATE INDEX job_newest_of_state ON plant.job (state, opened_micros DESC, edge_id, id DESC);

-- A part of a text is found by an index where PostgreSQL's own extension pg_trgm is installed and
-- may be used; elsewhere jobs are read from the newest on until the page is full.
DO $$
DECLARE
  home text;
BEGIN
  IF EXISTS (SELECT FROM pg_available_extensions WHERE name = 'pg_trgm') THEN
    CREATE EXTENSION IF NOT EXISTS pg_trgm WITH SCHEMA plant;
    SELECT n.nspname INTO home FROM pg_extension x JOIN pg_namespace n ON n.oid = x.extnamespace
    WHERE x.extname = 'pg_trgm';
    EXECUTE format('CREATE INDEX job_by_text ON plant.job USING gin (search_text %I.gin_trgm_ops)', home);
  END IF;
EXCEPTION WHEN insufficient_privilege THEN
  RAISE NOTICE 'pg_trgm may not be created here: searching jobs reads all of them';
END $$;

CREATE TABLE plant.specification_revision (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  job_id bigint NOT NULL,
  revision bigint NOT NULL CHECK (revision >= 1),
  at_micros bigint NOT NULL,
  made_by text COLLATE "C" NOT NULL,
  why text COLLATE "C" NOT NULL,
  specification text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, job_id, revision)
);

CREATE TABLE plant.active_job (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  station text COLLATE "C" NOT NULL,
  job_id bigint NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, station)
);

CREATE TABLE plant.job_event (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('job_event'),
  job_id bigint NOT NULL,
  machine text COLLATE "C" NOT NULL,
  kind text COLLATE "C" NOT NULL,
  after_reading_id bigint NOT NULL,
  at_micros bigint NOT NULL,
  setting_before double precision,
  setting_after double precision,
  material_lot text COLLATE "C" NOT NULL,
  note text COLLATE "C" NOT NULL,
  made_by text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX job_event_by_job ON plant.job_event (edge_id, incarnation, job_id);

CREATE INDEX job_event_by_machine ON plant.job_event (edge_id, incarnation, machine);

CREATE TABLE plant.exclusion (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('exclusion'),
  reading_id bigint NOT NULL,
  job_id bigint NOT NULL,
  excluded bigint NOT NULL CHECK (excluded IN (0, 1)),
  reason text COLLATE "C" NOT NULL,
  at_micros bigint NOT NULL,
  made_by text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX exclusion_by_job ON plant.exclusion (edge_id, incarnation, job_id);

CREATE INDEX exclusion_by_reading ON plant.exclusion (edge_id, incarnation, reading_id);

CREATE TABLE plant.change (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('change'),
  at_micros bigint NOT NULL,
  made_by text COLLATE "C" NOT NULL,
  what text COLLATE "C" NOT NULL,
  old_value text COLLATE "C" NOT NULL,
  new_value text COLLATE "C" NOT NULL,
  why text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE TABLE plant.incident (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('incident'),
  station text COLLATE "C" NOT NULL,
  kind text COLLATE "C" NOT NULL,
  from_micros bigint NOT NULL,
  to_micros bigint NOT NULL,
  lost bigint NOT NULL,
  detail text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX incident_by_station ON plant.incident (edge_id, incarnation, station);

CREATE TABLE plant.event_withdrawal (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('event_withdrawal'),
  event_id bigint NOT NULL,
  reason text COLLATE "C" NOT NULL,
  at_micros bigint NOT NULL,
  made_by text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX event_withdrawal_by_event ON plant.event_withdrawal (edge_id, incarnation, event_id);

CREATE TABLE plant.signal_answer (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('signal_answer'),
  job_id bigint NOT NULL,
  characteristic text COLLATE "C" NOT NULL,
  chart text COLLATE "C" NOT NULL,
  reading_id bigint NOT NULL,
  cause text COLLATE "C" NOT NULL,
  action text COLLATE "C" NOT NULL,
  at_micros bigint NOT NULL,
  made_by text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX signal_answer_by_job ON plant.signal_answer (edge_id, incarnation, job_id);

CREATE TABLE plant.roller_scale (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('roller_scale'),
  machine text COLLATE "C" NOT NULL,
  name text COLLATE "C" NOT NULL,
  unit text COLLATE "C" NOT NULL,
  tighter text COLLATE "C" NOT NULL,
  step double precision,
  lost_motion double precision,
  move_uncertainty double precision,
  gain_per_mm double precision,
  gain_uncertainty_per_mm double precision,
  at_micros bigint NOT NULL,
  made_by text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX roller_scale_by_name ON plant.roller_scale (edge_id, incarnation, machine, name);

CREATE TABLE plant.roller (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('roller'),
  machine text COLLATE "C" NOT NULL,
  name text COLLATE "C" NOT NULL,
  diameter_mm double precision NOT NULL,
  diameter_uncertainty_mm double precision NOT NULL,
  side text COLLATE "C" NOT NULL,
  driven bigint NOT NULL CHECK (driven IN (0, 1)),
  removed bigint NOT NULL CHECK (removed IN (0, 1)),
  at_micros bigint NOT NULL,
  made_by text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX roller_by_name ON plant.roller (edge_id, incarnation, machine, name);

CREATE TABLE plant.gauge_study (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('gauge_study'),
  station text COLLATE "C" NOT NULL,
  name text COLLATE "C" NOT NULL,
  design text COLLATE "C" NOT NULL,
  subject text COLLATE "C" NOT NULL,
  state text COLLATE "C" NOT NULL,
  made_micros bigint NOT NULL,
  made_by text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX gauge_study_running ON plant.gauge_study (edge_id, incarnation, station) WHERE state = 'RUNNING';

CREATE TABLE plant.study_measurement (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('study_measurement'),
  study_id bigint NOT NULL,
  step bigint NOT NULL CHECK (step >= 1),
  mode text COLLATE "C" NOT NULL,
  value_nm bigint NOT NULL,
  scatter_nm bigint NOT NULL,
  sample_count bigint NOT NULL,
  first_sample bigint NOT NULL,
  last_sample bigint NOT NULL,
  monotonic_nanos bigint NOT NULL,
  wall_micros bigint NOT NULL,
  depth_nm bigint NOT NULL,
  set_up_id bigint NOT NULL,
  curvature_per_mm double precision NOT NULL,
  standard_uncertainty_per_mm double precision NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX study_measurement_by_study ON plant.study_measurement (edge_id, incarnation, study_id);

CREATE TABLE plant.study_drop (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  measurement_id bigint NOT NULL,
  reason text COLLATE "C" NOT NULL,
  at_micros bigint NOT NULL,
  made_by text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, measurement_id)
);

CREATE TABLE plant.alert (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('alert'),
  kind text COLLATE "C" NOT NULL,
  about text COLLATE "C" NOT NULL,
  subject text COLLATE "C" NOT NULL,
  state text COLLATE "C" NOT NULL,
  last_event_id bigint NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX alert_open ON plant.alert (edge_id, incarnation, kind, about, subject) WHERE state <> 'NORMAL';

CREATE INDEX alert_by_key ON plant.alert (edge_id, incarnation, kind, about, subject, id);

CREATE TABLE plant.alert_event (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('alert_event'),
  alert_id bigint NOT NULL,
  revision bigint NOT NULL CHECK (revision >= 1),
  kind text COLLATE "C" NOT NULL,
  about text COLLATE "C" NOT NULL,
  subject text COLLATE "C" NOT NULL,
  what text COLLATE "C" NOT NULL,
  from_state text COLLATE "C" NOT NULL,
  state text COLLATE "C" NOT NULL,
  present bigint NOT NULL CHECK (present IN (0, 1)),
  unsteady bigint NOT NULL CHECK (unsteady IN (0, 1)),
  since_micros bigint NOT NULL,
  changed_micros bigint NOT NULL,
  shelved_until_micros bigint NOT NULL,
  figures text COLLATE "C" NOT NULL,
  detail text COLLATE "C" NOT NULL,
  first_reading_id bigint NOT NULL,
  last_reading_id bigint NOT NULL,
  assigned_to text COLLATE "C" NOT NULL,
  at_micros bigint NOT NULL,
  made_by text COLLATE "C" NOT NULL,
  note text COLLATE "C" NOT NULL,
  event_key text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX alert_event_by_key ON plant.alert_event (edge_id, incarnation, event_key) WHERE event_key <> '';

CREATE INDEX alert_event_of_key ON plant.alert_event (edge_id, incarnation, kind, about, subject, at_micros);

CREATE INDEX alert_event_raised ON plant.alert_event (edge_id, incarnation, at_micros) WHERE what = 'RAISED';

CREATE TABLE plant.logbook_entry (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('logbook_entry'),
  machine text COLLATE "C" NOT NULL,
  kind text COLLATE "C" NOT NULL,
  roller text COLLATE "C" NOT NULL,
  state_before text COLLATE "C" NOT NULL,
  state_after text COLLATE "C" NOT NULL,
  note text COLLATE "C" NOT NULL,
  done_micros bigint NOT NULL,
  done_by text COLLATE "C" NOT NULL,
  corrects_id bigint,
  why text COLLATE "C" NOT NULL,
  withdraws bigint NOT NULL CHECK (withdraws IN (0, 1)),
  at_micros bigint NOT NULL,
  made_by text COLLATE "C" NOT NULL,
  feed_revision bigint NOT NULL DEFAULT 0,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX logbook_entry_by_machine ON plant.logbook_entry (edge_id, incarnation, machine, id);

CREATE INDEX logbook_entry_by_corrected ON plant.logbook_entry (edge_id, incarnation, corrects_id);

-- Written by who delivers readings, in the same commit.
CREATE TABLE plant.job_total (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  job_id bigint NOT NULL,
  readings bigint NOT NULL,
  first_reading_id bigint NOT NULL,
  last_reading_id bigint NOT NULL,
  PRIMARY KEY (edge_id, incarnation, job_id)
);

-- By edge, so that the database can be spread over computers by it.
CREATE TABLE plant.reading (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL,
  station text COLLATE "C" NOT NULL,
  station_sequence bigint NOT NULL,
  job_id bigint NOT NULL,
  piece bigint NOT NULL,
  position text COLLATE "C" NOT NULL,
  mode text COLLATE "C" NOT NULL,
  value_nm bigint NOT NULL,
  scatter_nm bigint NOT NULL,
  sample_count bigint NOT NULL,
  first_sample bigint NOT NULL,
  last_sample bigint NOT NULL,
  monotonic_nanos bigint NOT NULL,
  wall_micros bigint NOT NULL,
  depth_nm bigint NOT NULL,
  set_up_id bigint NOT NULL,
  radius_mm double precision,
  lower_mm double precision NOT NULL,
  upper_mm double precision,
  curvature_per_mm double precision NOT NULL,
  standard_uncertainty_per_mm double precision NOT NULL,
  coverage_factor double precision NOT NULL,
  degrees_of_freedom double precision NOT NULL,
  decision text COLLATE "C" NOT NULL,
  marks text COLLATE "C" NOT NULL,
  clock text COLLATE "C" NOT NULL,
  raw_hex text COLLATE "C" NOT NULL,
  run_id bigint NOT NULL,
  kind text COLLATE "C" NOT NULL DEFAULT 'PRODUCT',
  pass bigint NOT NULL DEFAULT 1,
  revision bigint,
  measured_by text COLLATE "C",
  material_lot text COLLATE "C",
  PRIMARY KEY (edge_id, id, incarnation)
) PARTITION BY HASH (edge_id);
CREATE TABLE plant.reading_0 PARTITION OF plant.reading FOR VALUES WITH (MODULUS 8, REMAINDER 0);
CREATE TABLE plant.reading_1 PARTITION OF plant.reading FOR VALUES WITH (MODULUS 8, REMAINDER 1);
CREATE TABLE plant.reading_2 PARTITION OF plant.reading FOR VALUES WITH (MODULUS 8, REMAINDER 2);
CREATE TABLE plant.reading_3 PARTITION OF plant.reading FOR VALUES WITH (MODULUS 8, REMAINDER 3);
CREATE TABLE plant.reading_4 PARTITION OF plant.reading FOR VALUES WITH (MODULUS 8, REMAINDER 4);
CREATE TABLE plant.reading_5 PARTITION OF plant.reading FOR VALUES WITH (MODULUS 8, REMAINDER 5);
CREATE TABLE plant.reading_6 PARTITION OF plant.reading FOR VALUES WITH (MODULUS 8, REMAINDER 6);
CREATE TABLE plant.reading_7 PARTITION OF plant.reading FOR VALUES WITH (MODULUS 8, REMAINDER 7);

CREATE INDEX reading_by_job ON plant.reading (edge_id, job_id, id);
CREATE INDEX reading_by_time ON plant.reading (edge_id, job_id, wall_micros, id);
CREATE INDEX reading_not_conforming ON plant.reading (edge_id, job_id, decision, id)
  WHERE decision <> 'CONFORMS';
CREATE INDEX reading_by_sequence ON plant.reading (edge_id, station, station_sequence);
CREATE INDEX reading_wall ON plant.reading USING brin (wall_micros);

CREATE TABLE plant.profile (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  reading_id bigint NOT NULL,
  pass bigint NOT NULL CHECK (pass >= 1),
  basis text COLLATE "C" NOT NULL,
  packed bytea NOT NULL,
  PRIMARY KEY (edge_id, reading_id, pass, incarnation)
) PARTITION BY HASH (edge_id);
CREATE TABLE plant.profile_0 PARTITION OF plant.profile FOR VALUES WITH (MODULUS 8, REMAINDER 0);
CREATE TABLE plant.profile_1 PARTITION OF plant.profile FOR VALUES WITH (MODULUS 8, REMAINDER 1);
CREATE TABLE plant.profile_2 PARTITION OF plant.profile FOR VALUES WITH (MODULUS 8, REMAINDER 2);
CREATE TABLE plant.profile_3 PARTITION OF plant.profile FOR VALUES WITH (MODULUS 8, REMAINDER 3);
CREATE TABLE plant.profile_4 PARTITION OF plant.profile FOR VALUES WITH (MODULUS 8, REMAINDER 4);
CREATE TABLE plant.profile_5 PARTITION OF plant.profile FOR VALUES WITH (MODULUS 8, REMAINDER 5);
CREATE TABLE plant.profile_6 PARTITION OF plant.profile FOR VALUES WITH (MODULUS 8, REMAINDER 6);
CREATE TABLE plant.profile_7 PARTITION OF plant.profile FOR VALUES WITH (MODULUS 8, REMAINDER 7);

-- What follows is the plant's own; edges do not deliver it.

CREATE TABLE plant.account (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('account'),
  name text COLLATE "C" NOT NULL,
  roles text COLLATE "C" NOT NULL,
  disabled bigint NOT NULL CHECK (disabled IN (0, 1)),
  password text COLLATE "C" NOT NULL,
  pin text COLLATE "C" NOT NULL,
  badge text COLLATE "C" NOT NULL,
  code text COLLATE "C" NOT NULL,
  code_until_micros bigint NOT NULL,
  identity text COLLATE "C" NOT NULL DEFAULT '',
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE UNIQUE INDEX account_by_badge ON plant.account (edge_id, incarnation, badge) WHERE badge <> '';

CREATE UNIQUE INDEX account_by_identity ON plant.account (edge_id, incarnation, identity) WHERE identity <> '';

CREATE UNIQUE INDEX account_by_name ON plant.account (edge_id, incarnation, lower(name));

CREATE TABLE plant.access_token (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('access_token'),
  name text COLLATE "C" NOT NULL,
  secret text COLLATE "C" NOT NULL,
  rights text COLLATE "C" NOT NULL,
  until_micros bigint NOT NULL,
  revoked bigint NOT NULL CHECK (revoked IN (0, 1)),
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE UNIQUE INDEX access_token_by_name ON plant.access_token (edge_id, incarnation, lower(name));
CREATE UNIQUE INDEX access_token_by_secret ON plant.access_token (edge_id, incarnation, secret);

CREATE TABLE plant.session (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  secret text COLLATE "C" NOT NULL,
  account_id bigint NOT NULL,
  screen text COLLATE "C" NOT NULL,
  began_micros bigint NOT NULL,
  PRIMARY KEY (edge_id, incarnation, secret)
);

CREATE TABLE plant.checkpoint (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  owner text COLLATE "C" NOT NULL,
  level bigint NOT NULL,
  reading_id bigint NOT NULL,
  state bytea NOT NULL,
  PRIMARY KEY (edge_id, incarnation, owner, level)
);

CREATE TABLE plant.trace_block (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('trace_block'),
  station text COLLATE "C" NOT NULL,
  first_sample bigint NOT NULL,
  last_sample bigint NOT NULL,
  sample_count bigint NOT NULL,
  last_wall_micros bigint NOT NULL,
  merged bigint NOT NULL CHECK (merged IN (0, 1)),
  body bytea NOT NULL,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX trace_block_by_time ON plant.trace_block (edge_id, incarnation, last_wall_micros);

CREATE INDEX trace_block_loose ON plant.trace_block (edge_id, incarnation, station, first_sample) WHERE merged = 0;

CREATE UNIQUE INDEX trace_block_once ON plant.trace_block (edge_id, incarnation, station, first_sample);

CREATE TABLE plant.seal (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  seq bigint NOT NULL,
  at_micros bigint NOT NULL,
  body bytea NOT NULL,
  hash bytea NOT NULL,
  PRIMARY KEY (edge_id, incarnation, seq)
);

CREATE TABLE plant.alert_cursor (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  name text COLLATE "C" NOT NULL,
  id bigint NOT NULL,
  PRIMARY KEY (edge_id, incarnation, name)
);

CREATE TABLE plant.alert_delivery (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('alert_delivery'),
  channel text COLLATE "C" NOT NULL,
  recipient text COLLATE "C" NOT NULL,
  made_micros bigint NOT NULL,
  state text COLLATE "C" NOT NULL,
  attempts bigint NOT NULL,
  progress_micros bigint NOT NULL,
  problem text COLLATE "C" NOT NULL,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX alert_delivery_due ON plant.alert_delivery (edge_id, incarnation, state, channel, progress_micros);

CREATE INDEX alert_delivery_to ON plant.alert_delivery (edge_id, incarnation, channel, recipient, progress_micros);

CREATE TABLE plant.alert_message (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  id bigint NOT NULL DEFAULT plant.next_id('alert_message'),
  channel text COLLATE "C" NOT NULL,
  recipient text COLLATE "C" NOT NULL,
  topic text COLLATE "C" NOT NULL,
  number bigint NOT NULL,
  alert_id bigint NOT NULL,
  at_micros bigint NOT NULL,
  delivery_id bigint,
  PRIMARY KEY (edge_id, incarnation, id)
);

CREATE INDEX alert_message_unsent ON plant.alert_message (edge_id, incarnation, channel, recipient, id) WHERE delivery_id IS NULL;

CREATE INDEX alert_message_of_delivery ON plant.alert_message (edge_id, incarnation, delivery_id);

CREATE UNIQUE INDEX alert_message_once ON plant.alert_message (edge_id, incarnation, topic, number, channel, recipient);

-- One edge as it is now: with the rights of who asks, so that row security holds.

CREATE VIEW edge.run WITH (security_invoker = true) AS SELECT
  r.id, r.started_micros, r.version
FROM plant.run r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.bridge WITH (security_invoker = true) AS SELECT
  r.id, r.name, r.span_mm, r.span_uncertainty_mm, r.foot_radius_mm, r.foot_radius_uncertainty_mm,
  r.skew_limit_degrees, r.replaced_by, r.foot_kind
FROM plant.bridge r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.master WITH (security_invoker = true) AS SELECT
  r.id, r.name, r.face, r.radius_mm, r.expanded_uncertainty_mm, r.check_limit_mm
FROM plant.master r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.mount WITH (security_invoker = true) AS SELECT
  r.id, r.station, r.bridge_id, r.at_micros, r.made_by
FROM plant.mount r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.zero WITH (security_invoker = true) AS SELECT
  r.id, r.station, r.bridge_id, r.value_nm, r.scatter_nm, r.sample_count, r.taken_micros, r.taken_by
FROM plant.zero r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.calibration WITH (security_invoker = true) AS SELECT
  r.id, r.station, r.bridge_id, r.span_mm, r.zero_offset_mm, r.foot_radius_mm, r.covariance,
  r.degrees_of_freedom, r.taken_micros, r.due_micros, r.taken_by, r.summary
FROM plant.calibration r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.interim_check WITH (security_invoker = true) AS SELECT
  r.id, r.station, r.bridge_id, r.master_id, r.radius_mm, r.master_radius_mm, r.limit_mm, r.passed,
  r.taken_micros, r.taken_by
FROM plant.interim_check r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.set_up WITH (security_invoker = true) AS SELECT
  r.id, r.body
FROM plant.set_up r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.job WITH (security_invoker = true) AS SELECT
  r.id, r.name, r.part, r.machine, r.station, r.section, r.material_lot, r.measured_face,
  r.specification, r.plan, r.state, r.opened_micros, r.customer, r.drawing_revision,
  r.developed_length_mm, r.developed_angle_degrees, r.revision, r.search_text
FROM plant.job r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.specification_revision WITH (security_invoker = true) AS SELECT
  r.job_id, r.revision, r.at_micros, r.made_by, r.why, r.specification
FROM plant.specification_revision r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.active_job WITH (security_invoker = true) AS SELECT
  r.station, r.job_id
FROM plant.active_job r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.job_event WITH (security_invoker = true) AS SELECT
  r.id, r.job_id, r.machine, r.kind, r.after_reading_id, r.at_micros, r.setting_before,
  r.setting_after, r.material_lot, r.note, r.made_by
FROM plant.job_event r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.exclusion WITH (security_invoker = true) AS SELECT
  r.id, r.reading_id, r.job_id, r.excluded, r.reason, r.at_micros, r.made_by
FROM plant.exclusion r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.change WITH (security_invoker = true) AS SELECT
  r.id, r.at_micros, r.made_by, r.what, r.old_value, r.new_value, r.why
FROM plant.change r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.incident WITH (security_invoker = true) AS SELECT
  r.id, r.station, r.kind, r.from_micros, r.to_micros, r.lost, r.detail
FROM plant.incident r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.event_withdrawal WITH (security_invoker = true) AS SELECT
  r.id, r.event_id, r.reason, r.at_micros, r.made_by
FROM plant.event_withdrawal r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.signal_answer WITH (security_invoker = true) AS SELECT
  r.id, r.job_id, r.characteristic, r.chart, r.reading_id, r.cause, r.action, r.at_micros, r.made_by
FROM plant.signal_answer r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.roller_scale WITH (security_invoker = true) AS SELECT
  r.id, r.machine, r.name, r.unit, r.tighter, r.step, r.lost_motion, r.move_uncertainty,
  r.gain_per_mm, r.gain_uncertainty_per_mm, r.at_micros, r.made_by
FROM plant.roller_scale r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.roller WITH (security_invoker = true) AS SELECT
  r.id, r.machine, r.name, r.diameter_mm, r.diameter_uncertainty_mm, r.side, r.driven, r.removed,
  r.at_micros, r.made_by
FROM plant.roller r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.gauge_study WITH (security_invoker = true) AS SELECT
  r.id, r.station, r.name, r.design, r.subject, r.state, r.made_micros, r.made_by
FROM plant.gauge_study r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.study_measurement WITH (security_invoker = true) AS SELECT
  r.id, r.study_id, r.step, r.mode, r.value_nm, r.scatter_nm, r.sample_count, r.first_sample,
  r.last_sample, r.monotonic_nanos, r.wall_micros, r.depth_nm, r.set_up_id, r.curvature_per_mm,
  r.standard_uncertainty_per_mm
FROM plant.study_measurement r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.study_drop WITH (security_invoker = true) AS SELECT
  r.measurement_id, r.reason, r.at_micros, r.made_by
FROM plant.study_drop r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.alert WITH (security_invoker = true) AS SELECT
  r.id, r.kind, r.about, r.subject, r.state, r.last_event_id
FROM plant.alert r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.alert_event WITH (security_invoker = true) AS SELECT
  r.id, r.alert_id, r.revision, r.kind, r.about, r.subject, r.what, r.from_state, r.state,
  r.present, r.unsteady, r.since_micros, r.changed_micros, r.shelved_until_micros, r.figures,
  r.detail, r.first_reading_id, r.last_reading_id, r.assigned_to, r.at_micros, r.made_by, r.note,
  r.event_key
FROM plant.alert_event r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.logbook_entry WITH (security_invoker = true) AS SELECT
  r.id, r.machine, r.kind, r.roller, r.state_before, r.state_after, r.note, r.done_micros,
  r.done_by, r.corrects_id, r.why, r.withdraws, r.at_micros, r.made_by
FROM plant.logbook_entry r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.job_total WITH (security_invoker = true) AS SELECT
  r.job_id, r.readings, r.first_reading_id, r.last_reading_id
FROM plant.job_total r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.account WITH (security_invoker = true) AS SELECT
  r.id, r.name, r.roles, r.disabled, r.password, r.pin, r.badge, r.code, r.code_until_micros,
  r.identity
FROM plant.account r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.access_token WITH (security_invoker = true) AS SELECT
  r.id, r.name, r.secret, r.rights, r.until_micros, r.revoked
FROM plant.access_token r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.session WITH (security_invoker = true) AS SELECT
  r.secret, r.account_id, r.screen, r.began_micros
FROM plant.session r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.checkpoint WITH (security_invoker = true) AS SELECT
  r.owner, r.level, r.reading_id, r.state
FROM plant.checkpoint r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.trace_block WITH (security_invoker = true) AS SELECT
  r.id, r.station, r.first_sample, r.last_sample, r.sample_count, r.last_wall_micros, r.merged,
  r.body
FROM plant.trace_block r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.seal WITH (security_invoker = true) AS SELECT
  r.seq, r.at_micros, r.body, r.hash
FROM plant.seal r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.alert_cursor WITH (security_invoker = true) AS SELECT
  r.name, r.id
FROM plant.alert_cursor r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.alert_delivery WITH (security_invoker = true) AS SELECT
  r.id, r.channel, r.recipient, r.made_micros, r.state, r.attempts, r.progress_micros, r.problem
FROM plant.alert_delivery r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.alert_message WITH (security_invoker = true) AS SELECT
  r.id, r.channel, r.recipient, r.topic, r.number, r.alert_id, r.at_micros, r.delivery_id
FROM plant.alert_message r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

CREATE VIEW edge.reading WITH (security_invoker = true) AS SELECT
  r.id, r.station, r.station_sequence, r.job_id, r.piece, r.position, r.mode, r.value_nm,
  r.scatter_nm, r.sample_count, r.first_sample, r.last_sample, r.monotonic_nanos, r.wall_micros,
  r.depth_nm, r.set_up_id, r.radius_mm, r.lower_mm, r.upper_mm, r.curvature_per_mm,
  r.standard_uncertainty_per_mm, r.coverage_factor, r.degrees_of_freedom, r.decision, r.marks,
  r.clock, r.raw_hex, r.run_id, r.kind, r.pass, r.revision, r.measured_by, r.material_lot
FROM plant.reading r
WHERE r.edge_id = plant.current_edge()
  AND (r.incarnation = (SELECT plant.current_incarnation())
    OR r.id <= (SELECT min(b.begins_after_reading_id) FROM plant.branch b
      WHERE b.edge_id = r.edge_id AND b.incarnation > r.incarnation
        AND b.incarnation <= (SELECT plant.current_incarnation())));

CREATE VIEW edge.profile WITH (security_invoker = true) AS SELECT
  r.reading_id, r.pass, r.basis, r.packed
FROM plant.profile r
WHERE r.edge_id = plant.current_edge()
  AND (r.incarnation = (SELECT plant.current_incarnation())
    OR r.reading_id <= (SELECT min(b.begins_after_reading_id) FROM plant.branch b
      WHERE b.edge_id = r.edge_id AND b.incarnation > r.incarnation
        AND b.incarnation <= (SELECT plant.current_incarnation())));

CREATE VIEW edge.identity WITH (security_invoker = true) AS
SELECT 1::bigint AS only_row, e.edge_id::text AS uuid, e.incarnation
FROM plant.edge e
WHERE e.edge_id = plant.current_edge();

-- Roles of the whole server: chordlog_edge delivers, chordlog_plant looks.
DO $$
BEGIN
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'chordlog_edge') THEN
    CREATE ROLE chordlog_edge NOLOGIN;
  END IF;
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'chordlog_plant') THEN
    CREATE ROLE chordlog_plant NOLOGIN;
  END IF;
EXCEPTION WHEN duplicate_object THEN -- by another database at the same time
  NULL;
END $$;

-- The edge that whoever signed in delivers for.
CREATE FUNCTION plant.own_edge() RETURNS uuid LANGUAGE sql STABLE SECURITY DEFINER
SET search_path = plant, pg_temp AS
$$ SELECT edge_id FROM plant.login WHERE name = session_user $$;

-- An edge's first word at each connection: the login belongs to the first database that used it.
CREATE FUNCTION plant.register(asked uuid, layout int, program text) RETURNS void
LANGUAGE plpgsql SECURITY DEFINER SET search_path = plant, pg_temp AS $$
DECLARE
  mine plant.login;
BEGIN
  SELECT * INTO mine FROM plant.login WHERE name = session_user FOR UPDATE;
  IF NOT FOUND THEN
    RAISE EXCEPTION 'the login % belongs to no workshop computer: chordlog plant add-edge makes one',
      session_user USING ERRCODE = '42501';
  END IF;
  IF mine.edge_id IS NULL THEN
    IF EXISTS (SELECT FROM plant.edge WHERE edge_id = asked) THEN
      RAISE EXCEPTION 'database % is delivered with another login already', asked
        USING ERRCODE = '42501';
    END IF;
    INSERT INTO plant.edge (edge_id, name, site) VALUES (asked, mine.edge_name, mine.site);
    UPDATE plant.login SET edge_id = asked WHERE name = session_user;
  ELSIF mine.edge_id <> asked THEN
    RAISE EXCEPTION 'the login % belongs to database %, not to %: each workshop computer needs one of its own',
      session_user, mine.edge_id, asked USING ERRCODE = '42501';
  END IF;
  UPDATE plant.edge
  SET schema_version = layout, program_version = program, seen_micros = plant.now_micros()
  WHERE edge_id = asked;
END $$;

REVOKE ALL ON FUNCTION plant.register(uuid, int, text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION plant.register(uuid, int, text) TO chordlog_edge;
GRANT USAGE ON SCHEMA plant, edge TO chordlog_edge, chordlog_plant;
GRANT SELECT ON plant.version TO chordlog_edge, chordlog_plant;
GRANT SELECT ON ALL TABLES IN SCHEMA edge TO chordlog_edge;
GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA edge TO chordlog_plant;

GRANT SELECT ON plant.edge, plant.branch, plant.batch, plant.request TO chordlog_edge, chordlog_plant;
GRANT UPDATE (incarnation, seen_micros, clock_ahead_micros, backlog_rows, newest_edge_micros, trouble)
  ON plant.edge TO chordlog_edge;
GRANT INSERT ON plant.branch TO chordlog_edge;
GRANT INSERT, UPDATE ON plant.batch TO chordlog_edge;
GRANT UPDATE (answered_micros, answer) ON plant.request TO chordlog_edge;
GRANT INSERT ON plant.request TO chordlog_plant;
GRANT SELECT ON plant.login TO chordlog_plant;

-- Row security. An edge sees and writes rows of its own alone; the plant sees all, and writes what is
-- its own and the requests.
DO $$
DECLARE
  mine constant text := 'edge_id = (SELECT plant.own_edge())';
  plants constant text := 'edge_id = ''00000000-0000-0000-0000-000000000000''';
  facts constant text[] := ARRAY[
    'run', 'bridge', 'master', 'mount', 'zero', 'calibration', 'interim_check', 'set_up', 'job',
    'specification_revision', 'active_job', 'job_event', 'exclusion', 'change', 'incident',
    'event_withdrawal', 'signal_answer', 'roller_scale', 'roller', 'gauge_study',
    'study_measurement', 'study_drop', 'alert', 'alert_event', 'logbook_entry', 'job_total'];
  added constant text[] := ARRAY['reading', 'profile'];
  own constant text[] := ARRAY[
    'account', 'access_token', 'session', 'checkpoint', 'trace_block', 'seal', 'alert_cursor',
    'alert_delivery', 'alert_message'];
  others constant text[] := ARRAY['edge', 'branch', 'batch', 'request'];
  each text;
BEGIN
  FOREACH each IN ARRAY facts || added || own || others LOOP
    EXECUTE format('ALTER TABLE plant.%I ENABLE ROW LEVEL SECURITY', each);
    EXECUTE format('CREATE POLICY plant_reads ON plant.%I FOR SELECT TO chordlog_plant USING (true)', each);
    EXECUTE format('GRANT SELECT ON plant.%I TO chordlog_plant', each);
  END LOOP;
  FOREACH each IN ARRAY facts || added || others LOOP
    EXECUTE format('CREATE POLICY edge_own ON plant.%I TO chordlog_edge USING (%s) WITH CHECK (%s)', each, mine, mine);
    EXECUTE format('GRANT SELECT ON plant.%I TO chordlog_edge', each);
  END LOOP;
  FOREACH each IN ARRAY facts || added LOOP
    EXECUTE format('GRANT INSERT ON plant.%I TO chordlog_edge', each);
  END LOOP;
  FOREACH each IN ARRAY facts LOOP
    EXECUTE format('GRANT UPDATE, DELETE ON plant.%I TO chordlog_edge', each);
  END LOOP;
  FOREACH each IN ARRAY facts || own LOOP
    EXECUTE format('GRANT INSERT, UPDATE, DELETE ON plant.%I TO chordlog_plant', each);
    EXECUTE format('CREATE POLICY plant_writes ON plant.%I TO chordlog_plant USING (%s) WITH CHECK (%s)', each,
      CASE each WHEN 'checkpoint' THEN 'true' ELSE plants END,
      CASE each WHEN 'checkpoint' THEN 'true' ELSE plants END);
  END LOOP;
  CREATE POLICY plant_asks ON plant.request FOR INSERT TO chordlog_plant WITH CHECK (true);
END $$;
