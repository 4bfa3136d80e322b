package org.chordlog.store.sql;

/** What reads the database; any thread. */
public interface Reads {
  /** Lends a connection; {@link org.chordlog.store.StoreException} where the database fails. */
  <T> T read(Sql.Body<T> body);
}
