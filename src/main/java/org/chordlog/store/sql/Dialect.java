package org.chordlog.store.sql;

/** What databases say in different words. */
public interface Dialect {
  /** A whole number within a column of JSON, by the names that lead to it. */
  String wholeNumber(String column, String... path);

  /** A subquery of one column: the whole numbers in the JSON array that is its one argument. */
  String wholeNumbersOf();

  /** A condition: the first text contains the second. */
  String contains(String text, String part);
}
