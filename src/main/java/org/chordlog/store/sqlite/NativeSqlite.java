package org.chordlog.store.sqlite;

import org.chordlog.measure.BadInput;
import org.sqlite.SQLiteJDBCLoader;

/** The native part of SQLite, which unpacks itself into the temporary folder. */
final class NativeSqlite {
  private NativeSqlite() {}

  /** Throws BadInput that says what helps where it can't be loaded. */
  static void require() {
    try {
      boolean unused = SQLiteJDBCLoader.initialize();
    } catch (Exception | LinkageError e) {
      throw new BadInput(
          "org.sqlite.tmpdir",
          System.getProperty("org.sqlite.tmpdir", System.getProperty("java.io.tmpdir")),
          "does not let the native part of SQLite be unpacked and loaded (is it mounted noexec, or"
              + " not to be written?)",
          "start with -Dorg.sqlite.tmpdir=DIR of a folder that allows programs");
    }
  }
}
