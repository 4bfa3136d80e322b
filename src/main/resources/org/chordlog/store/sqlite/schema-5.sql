-- Alerts: what is the same over the life of one, whether it is over, and its newest event.
CREATE TABLE alert (
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL,
  about TEXT NOT NULL,
  subject TEXT NOT NULL,
  state TEXT NOT NULL,
  last_event_id INTEGER NOT NULL
) STRICT;
CREATE UNIQUE INDEX alert_open ON alert (kind, about, subject) WHERE state <> 'NORMAL';
CREATE INDEX alert_by_key ON alert (kind, about, subject, id);

-- What happened to them, each with the alert as it was after it; rows are added and never changed.
CREATE TABLE alert_event (
  id INTEGER PRIMARY KEY,
  alert_id INTEGER NOT NULL REFERENCES alert,
  revision INTEGER NOT NULL CHECK (revision >= 1),
  kind TEXT NOT NULL,
  about TEXT NOT NULL,
  subject TEXT NOT NULL,
  what TEXT NOT NULL,
  from_state TEXT NOT NULL,
  state TEXT NOT NULL,
  present INTEGER NOT NULL CHECK (present IN (0, 1)),
  unsteady INTEGER NOT NULL CHECK (unsteady IN (0, 1)),
  since_micros INTEGER NOT NULL,
  changed_micros INTEGER NOT NULL,
  shelved_until_micros INTEGER NOT NULL,
  figures TEXT NOT NULL CHECK (json_valid(figures)),
  detail TEXT NOT NULL,
  first_reading_id INTEGER NOT NULL,
  last_reading_id INTEGER NOT NULL,
  assigned_to TEXT NOT NULL,
  at_micros INTEGER NOT NULL,
  made_by TEXT NOT NULL,
  note TEXT NOT NULL,
  event_key TEXT NOT NULL,
  UNIQUE (alert_id, revision)
) STRICT;
CREATE UNIQUE INDEX alert_event_by_key ON alert_event (event_key) WHERE event_key <> '';
CREATE INDEX alert_event_of_key ON alert_event (kind, about, subject, at_micros);
CREATE INDEX alert_event_raised ON alert_event (at_micros) WHERE what = 'RAISED';

-- How far readers of records have come, by their own names.
CREATE TABLE alert_cursor (
  name TEXT PRIMARY KEY,
  id INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
