package org.chordlog.cli.common;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Rows of a file that are there twice, as where it was put together twice: equal in every cell to
 * an earlier one.
 */
public final class RowsAgain {
  private static final int SHOWN = 20;

  private RowsAgain() {}

  /**
   * Rows that are equal to earlier ones though all others have another text in {@code key}, which
   * no two readings have in common; none where the column is no such key.
   */
  public static Set<Integer> among(CsvColumns columns, int key) {
    Set<String> seen = new HashSet<>();
    Set<Integer> again = new TreeSet<>();
    Set<String> keys = new HashSet<>();
    for (int row = 0; row < columns.rows(); row++) {
      boolean isNew = seen.add(whole(columns, row));
      String text = columns.cell(row, key);
      if (!isNew) {
        again.add(row);
      } else if (text.isEmpty() || !keys.add(text)) {
        return Set.of();
      }
    }
    return again;
  }

  /** A sentence, or empty; {@code apart} where no two readings are equal in every cell. */
  public static String caution(CsvColumns columns, boolean apart) {
    List<Long> again = lines(columns, apart);
    return again.isEmpty()
        ? ""
        : "Caution: "
            + words(again)
            + (again.size() == 1 ? " is" : " are")
            + " there twice, equal in every cell, and counted twice."
            + " Was the file put together twice?";
  }

  /**
   * Lines equal to earlier ones: any where rows are {@code apart}; else only where the second half
   * of the file is the first one.
   */
  private static List<Long> lines(CsvColumns columns, boolean apart) {
    List<String> rows =
        IntStream.range(0, columns.rows()).mapToObj(row -> whole(columns, row)).toList();
    if (apart) {
      Set<String> seen = new HashSet<>();
      return IntStream.range(0, rows.size())
          .filter(row -> !seen.add(rows.get(row)))
          .mapToObj(columns::line)
          .toList();
    }
    int half = rows.size() / 2;
    boolean doubled =
        columns.width() > 1
            && half > 1
            && rows.subList(0, half).equals(rows.subList(half, rows.size()))
            && new HashSet<>(rows).size() > 1;
    return doubled
        ? IntStream.range(half, rows.size()).mapToObj(columns::line).toList()
        : List.of();
  }

  private static String whole(CsvColumns columns, int row) {
    return IntStream.range(0, columns.width())
        .mapToObj(column -> columns.cell(row, column))
        .collect(Collectors.joining("\u001F"));
  }

  /** As "line 7", "lines 7 to 9" or "lines 7, 9". */
  private static String words(List<Long> lines) {
    long first = lines.get(0);
    long last = lines.get(lines.size() - 1);
    if (lines.size() > 2 && last - first == lines.size() - 1) {
      return "lines " + first + " to " + last;
    }
    String listed =
        lines.stream().limit(SHOWN).map(String::valueOf).collect(Collectors.joining(", "));
    String more = lines.size() > SHOWN ? " … (" + lines.size() + ")" : "";
    return (lines.size() == 1 ? "line " : "lines ") + listed + more;
  }
}
