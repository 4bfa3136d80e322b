package org.chordlog.store.sqlite;

import org.chordlog.store.sql.Dialect;

/** SQLite's words (sqlite.org/json1.html, sqlite.org/lang_corefunc.html). */
final class SqliteDialect implements Dialect {
  @Override
  public String wholeNumber(String column, String... path) {
    return column + " ->> '$." + String.join(".", path) + "'";
  }

  @Override
  public String wholeNumbersOf() {
    return "SELECT value FROM json_each(?)";
  }

  @Override
  public String contains(String text, String part) {
    return "instr(" + text + ", " + part + ") > 0";
  }
}
