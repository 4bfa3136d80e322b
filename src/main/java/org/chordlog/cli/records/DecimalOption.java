package org.chordlog.cli.records;

import org.chordlog.report.DecimalMark;
import picocli.CommandLine.Option;

/** How numbers of CSV files are written. */
final class DecimalOption {
  @Option(
      names = "--decimal",
      paramLabel = "MARK",
      description = {
        "Of numbers in CSV: point or comma.",
        "With a comma, semicolons are between the cells. Default: point."
      })
  DecimalMark mark = DecimalMark.POINT;
}
