package org.chordlog.store.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import org.chordlog.store.StoreException;
import org.chordlog.store.sql.Reads;
import org.chordlog.store.sql.Sql;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** A few read-only connections, each lent to one caller at a time; any thread. */
final class Readers implements Reads, AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Readers.class);
  private static final int CONNECTIONS = 3;
  private static final int WAIT_SECONDS = 10;

  private volatile boolean closed;
  private volatile boolean gaveUp;
  private final int waitSeconds;
  private final BlockingQueue<Connection> idle = new ArrayBlockingQueue<>(CONNECTIONS);

  Readers(Path file) throws SQLException {
    this(file, WAIT_SECONDS);
  }

  /** Waits so long at most for a connection. */
  Readers(Path file, int waitSeconds) throws SQLException {
    this.waitSeconds = waitSeconds;
    for (int i = 0; i < CONNECTIONS; i++) {
      idle.add(Connections.reader(file));
    }
  }

  @Override
  public <T> T read(Sql.Body<T> body) {
    Connection connection = borrow();
    try {
      return body.run(connection);
    } catch (SQLException e) {
      throw new StoreException("can't read the database: " + e.getMessage(), e);
    } finally {
      giveBack(connection);
    }
  }

  /** Closes it where nobody waits for it any more. */
  private void giveBack(Connection connection) {
    idle.add(connection);
    if (gaveUp && idle.remove(connection)) {
      try {
        connection.close();
      } catch (SQLException e) {
        LOG.atWarn().setCause(e).log("a connection could not be closed");
      }
    }
  }

  private Connection borrow() {
    if (closed) {
      throw new StoreException("the store is closed", null);
    }
    Connection connection = await(System.nanoTime() + TimeUnit.SECONDS.toNanos(waitSeconds));
    if (connection == null) {
      throw new StoreException("too many readers at once: no connection became free", null);
    }
    return connection;
  }

  private @Nullable Connection await(long untilNanos) {
    try {
      return idle.poll(untilNanos - System.nanoTime(), TimeUnit.NANOSECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new StoreException("interrupted", e);
    }
  }

  /** Waits for readers under way; one that takes too long closes its connection when it ends. */
  @Override
  public void close() {
    closed = true;
    long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(waitSeconds);
    Closing closing = new Closing();
    for (int i = 0; i < CONNECTIONS; i++) {
      closing.step(() -> closeOne(until));
    }
    gaveUp = true;
    closing.step(this::closeIdle);
    closing.tell();
  }

  private void closeOne(long untilNanos) throws SQLException {
    Connection connection = await(untilNanos);
    if (connection == null) {
      throw new StoreException("a reader did not end within " + waitSeconds + " s", null);
    }
    connection.close();
  }

  /** Those that came back meanwhile. */
  private void closeIdle() throws SQLException {
    for (Connection each = idle.poll(); each != null; each = idle.poll()) {
      each.close();
    }
  }
}
