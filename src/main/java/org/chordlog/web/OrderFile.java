package org.chordlog.web;

import java.util.List;

/** Orders as a file brings them: one row each, lengths in mm. */
final class OrderFile {
  private static final TableFile.Form FORM =
      new TableFile.Form(
          "orders",
          List.of(
              "order",
              "part",
              "lot",
              "target",
              "tolerance",
              "lower",
              "upper",
              "customer",
              "drawing_revision"),
          "order");

  private OrderFile() {}

  static List<TableFile.Row> rows(String csv) {
    return TableFile.rows(csv, FORM);
  }
}
