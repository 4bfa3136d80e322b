package org.chordlog.store.sqlite;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import org.jspecify.annotations.Nullable;

/** Sets the values of a statement one after the other, and adds them to the row's bytes. */
final class Binder {
  private final PreparedStatement statement;
  private final RowBytes bytes;
  private int index;

  Binder(PreparedStatement statement, RowBytes bytes) {
    this.statement = statement;
    this.bytes = bytes;
    bytes.begin();
  }

  Binder add(long value) throws SQLException {
    statement.setLong(++index, value);
    bytes.add(value);
    return this;
  }

  Binder add(double value) throws SQLException {
    statement.setDouble(++index, value);
    bytes.add(value);
    return this;
  }

  Binder add(@Nullable String value) throws SQLException {
    statement.setString(++index, value);
    bytes.add(value);
    return this;
  }

  Binder addNullable(@Nullable Double value) throws SQLException {
    if (value != null) {
      return add((double) value);
    }
    statement.setNull(++index, Types.REAL);
    bytes.addNothing();
    return this;
  }

  Binder addNullable(@Nullable Integer value) throws SQLException {
    if (value != null) {
      return add((long) value);
    }
    statement.setNull(++index, Types.INTEGER);
    bytes.addNothing();
    return this;
  }
}
