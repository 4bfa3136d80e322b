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
  private static final int SHOWN = 12;

  private final CsvColumns columns;
  private final AnalyseColumns.Found at;

  RowNotes(CsvColumns columns, AnalyseColumns.Found at) {
    this.columns = columns;
    this.at = at;
  }

  List<String> said() {
    List<String> said = new ArrayList<>();
    if (!columns.heading().isEmpty()) {
      said.add("The first line names the columns: " + names() + ".");
    }
    int position = columns.only("position");
    if (at.position() < 0 && position >= 0 && comeAgain(position)) {
      said.add(
          "All positions were taken together; --position-column position keeps them apart"
              + " and compares them, as a job's page does.");
    }
    List<String> jobs = AnalyseColumns.jobs(columns);
    if (jobs.size() > 1 && at.nominal() < 0) {
      said.add(
          "Caution: readings of "
              + jobs.size()
              + " jobs were taken together, as if they were of one: "
              + shortened(jobs)
              + ". Export one job alone, or name the column of their nominals (--nominal-column).");
    }
    String again = RowsAgain.caution(columns, apart());
    if (!again.isEmpty()) {
      said.add(again);
    }
    return said;
  }

  /** Whether two readings hardly have all cells in common. */
  private boolean apart() {
    RowTimes times = RowTimes.of(columns, at.time());
    return columns.only("id") >= 0 || (times != null && times.withinDays());
  }

  private String names() {
    return shortened(columns.heading().stream().filter(each -> !each.isEmpty()).toList());
  }

  private static String shortened(List<String> names) {
    return String.join(", ", names.subList(0, Math.min(names.size(), SHOWN)))
        + (names.size() > SHOWN ? " … (" + names.size() + ")" : "");
  }

  /** Several, at several readings each: not a length along the piece that each has for itself. */
  private boolean comeAgain(int column) {
    Set<String> texts =
        IntStream.range(0, columns.rows())
            .mapToObj(row -> columns.cell(row, column))
            .collect(Collectors.toSet());
    return texts.size() > 1 && texts.size() <= columns.rows() / 2;
  }
}
