package org.chordlog.store.sqlite;

import java.nio.file.Path;
import org.chordlog.store.StoreHealth;
import org.chordlog.store.sql.Database;

/** What an open store holds, for writing or for reading only. */
interface Opened extends AutoCloseable {
  Path file();

  Database database();

  StoreHealth health();

  String epoch();

  @Override
  void close();
}
