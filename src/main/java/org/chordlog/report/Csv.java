package org.chordlog.report;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.chordlog.measure.CsvText;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.Summary;

/** Statistics as CSV (RFC 4180), numbers in full. */
public final class Csv {
  private static final CSVFormat FIGURES =
      CSVFormat.RFC4180
          .builder()
          .setHeader(
              "characteristic",
              "scope",
              "readings",
              "figure",
              "value",
              "lower",
              "upper",
              "confidence",
              "unit",
              "method",
              "source")
          .get();

  private Csv() {}

  public static void figures(List<Summary> summaries, Appendable out) throws IOException {
    CSVPrinter printer = new CSVPrinter(out, FIGURES);
    for (Summary summary : summaries) {
      for (Figure figure : summary.figures()) {
        printer.printRecord(
            CsvText.harmless(summary.characteristic()),
            summary.scope().name().toLowerCase(Locale.ROOT),
            summary.count(),
            figure.name(),
            figure.value(),
            figure.lower(),
            figure.upper(),
            figure.confidence(),
            figure.unit(),
            figure.method(),
            figure.source());
      }
    }
    printer.flush();
  }
}
