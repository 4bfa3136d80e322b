package org.chordlog.store.postgres;

import org.chordlog.store.sql.Dialect;

/** PostgreSQL's words (documentation of version 15, sections 9.4, 9.7.1 and 9.16). */
final class PostgresDialect implements Dialect {
  @Override
  public String wholeNumber(String column, String... path) {
    return "(" + column + "::jsonb #>> '{" + String.join(",", path) + "}')::bigint";
  }

  @Override
  public String wholeNumbersOf() {
    return "SELECT value::bigint FROM jsonb_array_elements_text(?::jsonb)";
  }

  /** By LIKE, so that an index of trigrams can be used (appendix F.35). */
  @Override
  public String contains(String text, String part) {
    return text
        + " LIKE '%' || replace(replace(replace("
        + part
        + "::text, '\\', '\\\\'), '%', '\\%'), '_', '\\_') || '%'";
  }
}
