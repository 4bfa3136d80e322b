-- Requests that changed something and carried a key, written with what they changed, so that one that
-- is sent again is not done again. The answer comes later: none where the program ended before it, or
-- where it holds a secret.
CREATE TABLE answered_request (
  request_key TEXT PRIMARY KEY,
  request TEXT NOT NULL,
  at_micros INTEGER NOT NULL,
  status INTEGER,
  media_type TEXT,
  body BLOB
) STRICT;
CREATE INDEX answered_request_by_time ON answered_request (at_micros);
