package org.chordlog.store.sqlite;

import java.nio.file.Path;
import org.chordlog.store.StoreHealth;

/** What is open while the store is. */
interface Opened extends AutoCloseable {
  Path file();

  Database database();

  StoreHealth health();

  @Override
  void close();
}
