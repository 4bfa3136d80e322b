-- People, programs and screens that may use the service. Secrets are kept as hashes only; an empty text
-- is none. Roles and rights are their names, divided by blanks.
CREATE TABLE account (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE COLLATE NOCASE,
  roles TEXT NOT NULL,
  disabled INTEGER NOT NULL CHECK (disabled IN (0, 1)),
  password TEXT NOT NULL,
  pin TEXT NOT NULL,
  badge TEXT NOT NULL,
  code TEXT NOT NULL,
  code_until_micros INTEGER NOT NULL,
  identity TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE UNIQUE INDEX account_by_badge ON account (badge) WHERE badge <> '';
CREATE UNIQUE INDEX account_by_identity ON account (identity) WHERE identity <> '';

CREATE TABLE access_token (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE COLLATE NOCASE,
  secret TEXT NOT NULL UNIQUE,
  rights TEXT NOT NULL,
  until_micros INTEGER NOT NULL,
  revoked INTEGER NOT NULL CHECK (revoked IN (0, 1))
) STRICT;

-- Those that were begun and not ended; account_id 0 with the name of a screen that people share.
CREATE TABLE session (
  secret TEXT PRIMARY KEY,
  account_id INTEGER NOT NULL,
  screen TEXT NOT NULL,
  began_micros INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
