package org.chordlog.cli.statistics;

import org.chordlog.chart.ViewUnit;
import org.chordlog.measure.Lengths;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Unit of the values, where they are lengths: told by option or by the column's name. */
final class ColumnUnit {
  @Option(
      names = "--unit",
      paramLabel = "UNIT",
      description = {
        "Unit of values and limits, mm or inch: figures have the digits of pages and reports.",
        "Without it mm or inch where the column's name ends in _mm or _in, else none."
      })
  private @Nullable ViewUnit unit;

  /** How lengths of the column are said; null where it is not known to hold lengths. */
  @Nullable Lengths of(String column) {
    if (unit != null) {
      return unit.lengths();
    }
    if (column.endsWith("_mm")) {
      return Lengths.MM;
    }
    return column.endsWith("_in") ? Lengths.INCH : null;
  }
}
