package org.chordlog.cli.statistics;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.chordlog.cli.common.CsvColumns;
import org.chordlog.cli.common.RowsAgain;

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
    boolean apart = RowTimes.of(columns, at.time()) != null || columns.has("id");
    String again = RowsAgain.caution(columns, apart);
    if (!again.isEmpty()) {
      said.add(again);
    }
    return said;
  }

  private Set<String> texts(int column) {
    return IntStream.range(0, columns.rows())
        .mapToObj(row -> columns.cell(row, column))
        .collect(Collectors.toSet());
  }
}
