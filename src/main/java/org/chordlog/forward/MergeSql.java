package org.chordlog.forward;

import java.util.List;
import java.util.stream.Collectors;
import org.chordlog.store.FeedTable;

/**
 * Statements that bring rows of one table into the plant: copied into a temporary table first, then
 * merged, so that rows that came before are not doubled and older states replace no newer ones.
 */
record MergeSql(FeedTable table, List<String> columns) {
  private static final String REVISION = "feed_revision";

  MergeSql {
    columns = List.copyOf(columns);
  }

  /** Columns without the rules of the plant's table; empty again after each transaction. */
  String stage() {
    return "CREATE TEMP TABLE %s ON COMMIT DELETE ROWS AS SELECT %s FROM plant.%s WITH NO DATA"
        .formatted(staged(), staged(""), table.table());
  }

  String copy() {
    return "COPY %s FROM STDIN".formatted(staged());
  }

  /** With the edge and its incarnation as the only parameters. */
  String merge() {
    return switch (table) {
      case READING -> readings();
      case PROFILE -> insert() + " ON CONFLICT DO NOTHING";
      default -> insert() + newerOnly();
    };
  }

  private String insert() {
    return "INSERT INTO plant.%s (edge_id, incarnation, %s) SELECT ?::uuid, ?, %s FROM %s"
        .formatted(table.table(), staged(""), staged(""), staged());
  }

  private String newerOnly() {
    String set =
        columns.stream()
            .filter(each -> !table.key().contains(each))
            .map(each -> "%1$s = excluded.%1$s".formatted(quoted(each)))
            .collect(Collectors.joining(", "));
    return " ON CONFLICT (edge_id, incarnation, %s) DO UPDATE SET %s, %3$s = excluded.%3$s WHERE %4$s.%3$s < excluded.%3$s"
        .formatted(String.join(", ", table.key()), set, REVISION, table.table())
        .replace("SET , ", "SET ");
  }

  /** Those that are new are added to the totals of their jobs. */
  private String readings() {
    return "WITH added AS ("
        + insert()
        + " ON CONFLICT DO NOTHING RETURNING edge_id, incarnation, job_id, id, kind)"
        + " INSERT INTO plant.job_total AS t"
        + " (edge_id, incarnation, job_id, readings, first_reading_id, last_reading_id)"
        + " SELECT edge_id, incarnation, job_id, count(*), min(id), max(id) FROM added"
        + " WHERE kind = 'PRODUCT' GROUP BY edge_id, incarnation, job_id"
        + " ON CONFLICT (edge_id, incarnation, job_id) DO UPDATE SET"
        + " readings = t.readings + excluded.readings,"
        + " first_reading_id = least(t.first_reading_id, excluded.first_reading_id),"
        + " last_reading_id = greatest(t.last_reading_id, excluded.last_reading_id)";
  }

  private String staged() {
    return "staged_" + table.table();
  }

  private String staged(String prefix) {
    String names =
        columns.stream().map(each -> prefix + quoted(each)).collect(Collectors.joining(", "));
    return table.holdsFacts() ? names + ", " + prefix + REVISION : names;
  }

  private static String quoted(String column) {
    return '"' + column + '"';
  }
}
