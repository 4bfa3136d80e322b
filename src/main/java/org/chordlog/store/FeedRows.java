package org.chordlog.store;

import java.util.List;

/** Rows of one table, in the order of their changes or of their keys, with all of its columns. */
public record FeedRows(FeedTable table, List<String> columns, List<FeedRow> rows) {
  public FeedRows {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
  }
}
