package org.chordlog.store.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Writes the journal back into the database beside the writer, who would otherwise do it within a
 * commit for which a reading waits. It never waits for the writer nor for readers (PASSIVE,
 * sqlite.org/pragma.html#pragma_wal_checkpoint); what it leaves, the writer does at {@link
 * Connections#JOURNAL_PAGES}.
 */
final class Checkpointer implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Checkpointer.class);
  private static final int CLOSE_SECONDS = 5;

  private final Connection connection;
  private final LongSupplier lastCommitMicros;
  private long seenMicros;
  private final ScheduledExecutorService rounds =
      Executors.newSingleThreadScheduledExecutor(task -> Threads.daemon(task, "store-checkpoint"));

  /** Does something in those rounds only that follow a commit. */
  Checkpointer(Path file, LongSupplier lastCommitMicros) throws SQLException {
    this.connection = Connections.writer(file);
    this.lastCommitMicros = lastCommitMicros;
  }

  void start(long everyMillis) {
    var unused =
        rounds.scheduleWithFixedDelay(this::round, everyMillis, everyMillis, TimeUnit.MILLISECONDS);
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
      LOG.atDebug().setCause(e).log("the journal is left to the writer");
    }
  }

  @Override
  public void close() {
    rounds.shutdown();
    try {
      rounds.awaitTermination(CLOSE_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    try {
      connection.close();
    } catch (SQLException e) {
      LOG.atWarn().setCause(e).log("a connection does not close");
    }
  }
}
