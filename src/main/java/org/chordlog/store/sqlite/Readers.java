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

/** A few read-only connections, each lent to one caller at a time; any thread. */
final class Readers implements Reads, AutoCloseable {
  private static final int CONNECTIONS = 3;
  private static final int WAIT_SECONDS = 10;

  private volatile boolean closed;
  private final BlockingQueue<Connection> idle = new ArrayBlockingQueue<>(CONNECTIONS);

  Readers(Path file) throws SQLException {
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
      idle.add(connection);
    }
  }

  private Connection borrow() {
    if (closed) {
      throw new StoreException("the store is closed", null);
    }
    return await();
  }

  private Connection await() {
    try {
      Connection connection = idle.poll(WAIT_SECONDS, TimeUnit.SECONDS);
      if (connection == null) {
        throw new StoreException("too many readers at once: no connection became free", null);
      }
      return connection;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new StoreException("interrupted", e);
    }
  }

  /** Waits for readers under way. */
  @Override
  public void close() throws SQLException {
    closed = true;
    for (int i = 0; i < CONNECTIONS; i++) {
      await().close();
    }
  }
}
