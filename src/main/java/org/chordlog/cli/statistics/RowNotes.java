package org.chordlog.cli.statistics;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.chordlog.cli.common.CsvColumns;

/** What is said of how a file was read, besides the order of its rows. */
final class RowNotes {
  private final CsvColumns columns;
  private final AnalyseColumns.Found at;

  RowNotes(CsvColumns columns, AnalyseColumns.Found at) {
    this.columns = columns;
    this.at = at;
  }

  List<String> said() {
    List<String> said = new ArrayList<>();
    if (!columns.heading().isEmpty()) {
      said.add("The first line names the columns: " + String.join(", ", columns.heading()) + ".");
    }
    int position = columns.index("position");
    if (at.position() < 0 && position >= 0 && texts(position).size() > 1) {
      said.add(
          "All positions were taken together; --position-column position keeps them apart"
              + " and compares them.");
    }
    List<Long> again = again();
    if (!again.isEmpty()) {
      said.add(
          "Caution: "
              + AnalysisText.lines(again)
              + (again.size() == 1 ? " is" : " are")
              + " there twice, equal in every cell, and counted twice."
              + " Was the file put together twice?");
    }
    return said;
  }

  private Set<String> texts(int column) {
    return IntStream.range(0, columns.rows())
        .mapToObj(row -> columns.cell(row, column))
        .collect(Collectors.toSet());
  }

  /**
   * Lines equal to earlier ones: any, where rows have a time or an id, which no two readings have
   * in common; else only where the second half of the file is the first one.
   */
  private List<Long> again() {
    List<String> rows = IntStream.range(0, columns.rows()).mapToObj(this::whole).toList();
    int half = rows.size() / 2;
    if (RowTimes.of(columns, at.time()) != null || columns.has("id")) {
      Set<String> seen = new HashSet<>();
      return IntStream.range(0, rows.size())
          .filter(row -> !seen.add(rows.get(row)))
          .mapToObj(columns::line)
          .toList();
    }
    boolean doubled =
        columns.width() > 1
            && half > 1
            && rows.subList(0, half).equals(rows.subList(half, rows.size()))
            && new HashSet<>(rows).size() > 1;
    return doubled
        ? IntStream.range(half, rows.size()).mapToObj(columns::line).toList()
        : List.of();
  }

  private String whole(int row) {
    return IntStream.range(0, columns.width())
        .mapToObj(column -> columns.cell(row, column))
        .collect(Collectors.joining("\u001F"));
  }
}
