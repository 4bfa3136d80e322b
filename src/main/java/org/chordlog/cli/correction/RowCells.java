package org.chordlog.cli.correction;

import java.util.EnumMap;
import java.util.Map;
import java.util.stream.IntStream;
import org.chordlog.cli.common.CsvColumns;

/** Cells of a CSV file by what they mean. */
final class RowCells {
  /** What a column means. */
  enum Meaning {
    RADIUS,
    UNCERTAINTY,
    PIECE,
    POSITION,
    SET_UP,
    LOT,
    YIELD,
    BEFORE,
    AFTER
  }

  private final CsvColumns columns;
  private final Map<Meaning, Integer> at = new EnumMap<>(Meaning.class);

  RowCells(CsvColumns columns) {
    this.columns = columns;
  }

  void put(Meaning meaning, int column) {
    if (column >= 0) {
      at.put(meaning, column);
    }
  }

  int rows() {
    return columns.rows();
  }

  long line(int row) {
    return columns.line(row);
  }

  /** Without blanks around it; empty where there is no such column. */
  String text(Meaning meaning, int row) {
    Integer column = at.get(meaning);
    return column == null ? "" : columns.cell(row, column).strip();
  }

  /** As {@link #text}, of a number. */
  String numeral(Meaning meaning, int row) {
    Integer column = at.get(meaning);
    return column == null ? "" : columns.numeral(row, column);
  }

  /** As the file says of a reading that does not count. */
  boolean isExcluded(int row) {
    return columns.isExcluded(row);
  }

  /** Whether a cell of that column is not empty. */
  boolean hasAny(Meaning meaning) {
    return IntStream.range(0, rows()).anyMatch(row -> !numeral(meaning, row).isEmpty());
  }

  boolean has(Meaning meaning) {
    return at.containsKey(meaning);
  }
}
