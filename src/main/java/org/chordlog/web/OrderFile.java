package org.chordlog.web;

import java.util.List;
import java.util.Map;

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

  /** Columns by the names of what a job is made of. */
  private static final Map<String, String> COLUMNS =
      Map.of(
          "name", "order",
          "materialLot", "lot",
          "targetMm", "target",
          "lowerLimitMm", "lower",
          "upperLimitMm", "upper",
          "drawingRevision", "drawing_revision");

  private OrderFile() {}

  /** Of what is at fault with a job; another name stays. */
  static String column(String field) {
    String last = field.substring(field.lastIndexOf('.') + 1);
    return COLUMNS.getOrDefault(last, last);
  }

  static List<TableFile.Row> rows(String csv) {
    return TableFile.rows(csv, FORM);
  }
}
