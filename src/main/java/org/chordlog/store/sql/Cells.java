package org.chordlog.store.sql;

import java.sql.ResultSet;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;

/** Reads the columns of a row one after the other. */
final class Cells {
  private final ResultSet row;
  private int index;

  Cells(ResultSet row) {
    this.row = row;
  }

  long aLong() throws SQLException {
    return row.getLong(++index);
  }

  int anInt() throws SQLException {
    return row.getInt(++index);
  }

  double aDouble() throws SQLException {
    return row.getDouble(++index);
  }

  String text() throws SQLException {
    return row.getString(++index);
  }

  @Nullable String nullableText() throws SQLException {
    return row.getString(++index);
  }

  @Nullable Double nullableDouble() throws SQLException {
    double value = row.getDouble(++index);
    return row.wasNull() ? null : value;
  }

  @Nullable Integer nullableInt() throws SQLException {
    int value = row.getInt(++index);
    return row.wasNull() ? null : value;
  }
}
