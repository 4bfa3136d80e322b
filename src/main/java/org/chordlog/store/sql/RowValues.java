package org.chordlog.store.sql;

import java.sql.SQLException;
import org.jspecify.annotations.Nullable;

/** Takes the values of a row one after the other. */
interface RowValues {
  RowValues add(long value) throws SQLException;

  RowValues add(double value) throws SQLException;

  RowValues add(@Nullable String value) throws SQLException;

  RowValues addNullable(@Nullable Double value) throws SQLException;

  RowValues addNullable(@Nullable Integer value) throws SQLException;
}
