package org.chordlog.store.postgres;

import java.io.PrintWriter;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.SQLFeatureNotSupportedException;
import java.util.logging.Logger;
import javax.sql.DataSource;
import org.chordlog.store.PlantAddress;
import org.jspecify.annotations.Nullable;

/** New connections for the pool, each with the password as it is then. */
record PlantSource(PlantAddress address, PlantConnections.Limits limits) implements DataSource {
  @Override
  public Connection getConnection() throws SQLException {
    return PlantConnections.open(address, "chordlog plant", limits);
  }

  @Override
  public Connection getConnection(String user, String password) throws SQLException {
    return getConnection();
  }

  @Override
  public @Nullable PrintWriter getLogWriter() {
    return null;
  }

  @Override
  public void setLogWriter(@Nullable PrintWriter out) {}

  /** The settings of each connection say it. */
  @Override
  public void setLoginTimeout(int seconds) {}

  @Override
  public int getLoginTimeout() {
    return PlantConnections.LOGIN_SECONDS;
  }

  @Override
  public Logger getParentLogger() throws SQLFeatureNotSupportedException {
    throw new SQLFeatureNotSupportedException();
  }

  @Override
  public <T> T unwrap(Class<T> type) throws SQLException {
    throw new SQLException("is no " + type.getName());
  }

  @Override
  public boolean isWrapperFor(Class<?> type) {
    return false;
  }
}
