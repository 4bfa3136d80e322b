package org.chordlog.store.sqlite;

/** Reads on connections of their own, writes through the writer; any thread. */
record Database(Readers readers, Writes writes) {
  <T> T read(Sql.Body<T> body) {
    return readers.read(body);
  }

  /** Committed when it returns. */
  <T> T write(Sql.Body<T> body) {
    return writes.call(body);
  }
}
