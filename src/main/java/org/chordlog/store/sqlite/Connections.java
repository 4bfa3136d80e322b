package org.chordlog.store.sqlite;

import java.io.File;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.chordlog.store.StoreHealth;
import org.chordlog.store.sql.Sql;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.SynchronousMode;

/** Connections with the pragmas they need. */
final class Connections {
  static final int WAL_LIMIT_BYTES = 32 << 20;

  /** 16 MiB: size of the WAL at which the writer itself copies it back. */
  static final int WAL_PAGES = 4_096;

  static final int BUSY_MILLIS = 1_000;

  private Connections() {}

  /** Durable at each commit: a power cut loses nothing that was committed. */
  static Connection writer(Path file) throws SQLException {
    SQLiteConfig config = common();
    config.setJournalMode(JournalMode.WAL);
    config.setSynchronous(SynchronousMode.FULL);
    config.setJournalSizeLimit(WAL_LIMIT_BYTES);
    Connection connection = config.createConnection(url(file));
    long unused = Sql.number(connection, "PRAGMA wal_autocheckpoint = " + WAL_PAGES);
    return connection;
  }

  static Connection reader(Path file) throws SQLException {
    SQLiteConfig config = common();
    config.setReadOnly(true);
    return config.createConnection(url(file));
  }

  /** For a closed file that nobody writes: SQLite creates no WAL beside it. */
  static Connection immutable(Path file) throws SQLException {
    SQLiteConfig config = common();
    config.setReadOnly(true);
    return config.createConnection(url(file) + "?immutable=1");
  }

  /** For a few changes of a file that nobody else uses: nothing is left beside it. */
  static Connection single(Path file) throws SQLException {
    SQLiteConfig config = common();
    config.setJournalMode(JournalMode.DELETE);
    config.setSynchronous(SynchronousMode.FULL);
    return config.createConnection(url(file));
  }

  static StoreHealth.Space space(Path file) {
    return new StoreHealth.Space(
        file.toFile().length(), new File(file + "-wal").length(), file.toFile().getUsableSpace());
  }

  private static SQLiteConfig common() {
    NativeSqlite.require();
    SQLiteConfig config = new SQLiteConfig();
    config.enforceForeignKeys(true);
    config.setBusyTimeout(BUSY_MILLIS);
    config.setCacheSize(-8_000);
    config.setGetGeneratedKeys(false); // else one more statement after each insert
    return config;
  }

  /** As a URI, since the driver takes what follows a ? in a path for settings. */
  private static String url(Path file) {
    return "jdbc:sqlite:" + file.toUri();
  }
}
