package org.chordlog.store.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.chordlog.store.sql.Sql;
import org.chordlog.timer.TimedWork;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Copies the WAL back into the database file on a connection and thread of its own, so that the
 * writer need not do it during a commit that a reading waits for. It never waits for the writer or
 * for readers (PASSIVE, sqlite.org/pragma.html#pragma_wal_checkpoint); whatever it could not copy,
 * the writer copies once the WAL has {@link Connections#WAL_PAGES}.
 *
 * <p>After {@link #start} the connection belongs to the thread "store-checkpoint" alone.
 */
final class WalCheckpointer implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(WalCheckpointer.class);
  private static final int CLOSE_SECONDS = 5;

  private final Connection connection;
  private final LongSupplier lastCommitMicros;
  private long seenMicros;
  private final ScheduledExecutorService rounds = TimedWork.timer("store-checkpoint");

  /** A round without a commit before it does nothing. */
  WalCheckpointer(Path file, LongSupplier lastCommitMicros) throws SQLException {
    this.connection = Connections.writer(file);
    this.lastCommitMicros = lastCommitMicros;
  }

  void start(long everyMillis) {
    var unused =
        rounds.scheduleWithFixedDelay(
            TimedWork.of(this::round), everyMillis, everyMillis, TimeUnit.MILLISECONDS);
  }

  private void round() {
    long last = lastCommitMicros.getAsLong();
    if (last == seenMicros) {
      return;
    }
    seenMicros = last;
    try {
      long unused = Sql.number(connection, "PRAGMA wal_checkpoint(PASSIVE)");
    } catch (SQLException e) {
      LOG.atDebug().setCause(e).log("the WAL is left to the writer");
    }
  }

  @Override
  public void close() {
    Threads.end(rounds, CLOSE_SECONDS);
    try {
      connection.close();
    } catch (SQLException e) {
      LOG.atWarn().setCause(e).log("a connection could not be closed");
    }
  }
}
