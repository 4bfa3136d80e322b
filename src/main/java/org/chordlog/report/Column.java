package org.chordlog.report;

/** A column of a table: its head, its share of the width, and whether it holds numbers. */
record Column(String head, float width, boolean number) {
  static Column words(String head, double width) {
    return new Column(head, (float) width, false);
  }

  /** Head and cells are aligned to the right. */
  static Column number(String head, double width) {
    return new Column(head, (float) width, true);
  }
}
