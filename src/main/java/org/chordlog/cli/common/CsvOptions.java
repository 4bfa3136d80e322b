package org.chordlog.cli.common;

import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.CsvHeading;
import org.chordlog.measure.Fault;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What somebody knows of a CSV file better than it can be told from its cells. */
public final class CsvOptions {
  /** For files of which nothing is said. */
  static final CsvOptions NONE = new CsvOptions();

  @Option(
      names = "--first-line",
      paramLabel = "WHAT",
      description = "What the first line of FILE is, where it is told wrongly: names or data.")
  private @Nullable FirstLine firstLine;

  @Option(
      names = "--all-rows",
      description = "Each row is data, also what seems to sum up others or to be there twice.")
  private boolean allRows;

  /** What it is: names of the columns, or data. */
  enum FirstLine {
    NAMES,
    DATA
  }

  /** Whether no row is to be taken for another than a row of data. */
  public boolean allRows() {
    return allRows;
  }

  boolean isHeaded(List<List<String>> rows) {
    if (firstLine != null) {
      return firstLine == FirstLine.NAMES;
    }
    try {
      return CsvHeading.isIn(rows);
    } catch (BadInput doubtful) {
      Fault fault = doubtful.faults().get(0);
      String allowed = fault.allowed() + "; --first-line names or data says which it is";
      throw new BadInput(fault.field(), fault.value(), fault.problem().toString(), allowed);
    }
  }
}
