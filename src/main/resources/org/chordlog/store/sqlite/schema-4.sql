-- The chain of hashes over the records: one entry for each commit that added any, in the same commit.
-- body: for each record added one byte that names its table, its key (8 bytes, high byte first) and
-- the SHA-256 of its row. hash: SHA-256 over the hash of the entry before, seq, at_micros and body.
CREATE TABLE seal (
  seq INTEGER PRIMARY KEY,
  at_micros INTEGER NOT NULL,
  body BLOB NOT NULL,
  hash BLOB NOT NULL
) STRICT;
