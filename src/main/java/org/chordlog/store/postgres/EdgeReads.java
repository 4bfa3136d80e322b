package org.chordlog.store.postgres;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.atomic.AtomicBoolean;
import javax.sql.DataSource;
import org.chordlog.store.StoreException;
import org.chordlog.store.sql.Reads;
import org.chordlog.store.sql.Sql;

/** Connections of a pool, lent with the rows of one edge in sight; any thread. */
record EdgeReads(DataSource pool, String edge, AtomicBoolean closed) implements Reads {
  @Override
  public <T> T read(Sql.Body<T> body) {
    requireOpen();
    try (Connection connection = pool.getConnection()) {
      show(connection);
      return body.run(connection);
    } catch (SQLException e) {
      throw new StoreException("can't read: " + PostgresFailures.sentence(e), e);
    }
  }

  void requireOpen() {
    if (closed.get()) {
      throw new StoreException("the store is closed", null);
    }
  }

  /** The views show this edge alone from now on. */
  void show(Connection connection) throws SQLException {
    Sql.list(connection, "SELECT set_config('chordlog.edge', ?, false)", row -> true, edge);
  }
}
