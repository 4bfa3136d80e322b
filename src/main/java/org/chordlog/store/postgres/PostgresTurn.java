package org.chordlog.store.postgres;

import java.sql.Connection;
import java.sql.SQLException;
import org.chordlog.measure.BadInput;
import org.chordlog.store.Plant;
import org.chordlog.store.PlantAddress;
import org.chordlog.store.sql.Sql;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** An advisory lock, held by a connection of its own that is asked for a sign of life each time. */
final class PostgresTurn implements Plant.Turn {
  private static final Logger LOG = LoggerFactory.getLogger(PostgresTurn.class);

  /** The server gives the turn away where the computer of whoever has it is cut off. */
  private static final String ENDS = "SELECT set_config('idle_session_timeout', '90s', false)";

  private static final String LOCK =
      "SELECT pg_try_advisory_lock(hashtextextended('chordlog turn ' || ?, 0))::int";

  private final PlantAddress address;
  private final String of;
  private @Nullable Connection connection;
  private boolean held;
  private boolean closed;

  PostgresTurn(PlantAddress address, String of) {
    this.address = address;
    this.of = of;
  }

  @Override
  public synchronized boolean mine() {
    if (closed) {
      return false;
    }
    try {
      Connection open = open();
      held = held ? Sql.number(open, "SELECT 1") == 1 : Sql.number(open, LOCK, of) == 1;
      return held;
    } catch (SQLException | BadInput e) {
      LOG.atDebug().addKeyValue("turn", of).setCause(e).log("the plant does not answer");
      drop();
      return false;
    }
  }

  private Connection open() throws SQLException {
    Connection known = connection;
    if (known != null) {
      return known;
    }
    Connection made = PlantConnections.open(address, "chordlog turn " + of);
    connection = made;
    Sql.list(made, ENDS, row -> true);
    return made;
  }

  private void drop() {
    held = false;
    Connection known = connection;
    connection = null;
    try {
      if (known != null) {
        known.close();
      }
    } catch (SQLException e) {
      LOG.atDebug().setCause(e).log("the connection did not end well");
    }
  }

  @Override
  public synchronized void close() {
    closed = true;
    drop();
  }
}
