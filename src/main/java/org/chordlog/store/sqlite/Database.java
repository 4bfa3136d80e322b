package org.chordlog.store.sqlite;

/** What the tables use: reads on their own connections, writes through the writer. */
record Database(Readers readers, Writes writes) {
  <T> T read(Sql.Body<T> body) {
    return readers.read(body);
  }

  /** Done and committed when it returns. */
  <T> T write(Sql.Body<T> body) {
    return writes.call(body);
  }
}
