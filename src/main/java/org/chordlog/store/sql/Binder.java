package org.chordlog.store.sql;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import org.jspecify.annotations.Nullable;

/** Sets the values of a statement one after the other. */
final class Binder implements RowValues {
  private final PreparedStatement statement;
  private int index;

  Binder(PreparedStatement statement) {
    this.statement = statement;
  }

  @Override
  public Binder add(long value) throws SQLException {
    statement.setLong(++index, value);
    return this;
  }

  @Override
  public Binder add(double value) throws SQLException {
    statement.setDouble(++index, value);
    return this;
  }

  @Override
  public Binder add(@Nullable String value) throws SQLException {
    statement.setString(++index, value);
    return this;
  }

  @Override
  public Binder addNullable(@Nullable Double value) throws SQLException {
    if (value != null) {
      return add((double) value);
    }
    statement.setNull(++index, Types.REAL);
    return this;
  }

  @Override
  public Binder addNullable(@Nullable Integer value) throws SQLException {
    if (value != null) {
      return add((long) value);
    }
    statement.setNull(++index, Types.INTEGER);
    return this;
  }
}
