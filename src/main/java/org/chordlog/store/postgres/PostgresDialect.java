package org.chordlog.store.postgres;

import org.chordlog.store.sql.Dialect;

/** PostgreSQL's words (documentation of version 15, sections 9.4 and 9.16). */
final class PostgresDialect implements Dialect {
  @Override
  public String wholeNumber(String column, String... path) {
    return "(" + column + "::jsonb #>> '{" + String.join(",", path) + "}')::bigint";
  }

  @Override
  public String wholeNumbersOf() {
    return "SELECT value::bigint FROM jsonb_array_elements_text(?::jsonb)";
  }

  @Override
  public String contains(String text, String part) {
    return "strpos(" + text + ", " + part + ") > 0";
  }
}
