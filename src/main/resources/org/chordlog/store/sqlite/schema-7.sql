-- The log books of the machines: what was done on them. An entry that names another one in corrects_id
-- replaces it, or takes it back where withdraws is 1.
CREATE TABLE logbook_entry (
  id INTEGER PRIMARY KEY,
  machine TEXT NOT NULL,
  kind TEXT NOT NULL,
  roller TEXT NOT NULL,
  state_before TEXT NOT NULL,
  state_after TEXT NOT NULL,
  note TEXT NOT NULL,
  done_micros INTEGER NOT NULL,
  done_by TEXT NOT NULL,
  corrects_id INTEGER UNIQUE REFERENCES logbook_entry (id),
  why TEXT NOT NULL,
  withdraws INTEGER NOT NULL CHECK (withdraws IN (0, 1)),
  at_micros INTEGER NOT NULL,
  made_by TEXT NOT NULL
) STRICT;
CREATE INDEX logbook_entry_by_machine ON logbook_entry (machine, id);
