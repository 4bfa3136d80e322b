package org.chordlog.report;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVPrinter;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.Summary;
import org.jspecify.annotations.Nullable;

/** Statistics as CSV (RFC 4180), numbers in full. */
public final class Csv {
  private static final String[] FIGURES = {
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
    "source"
  };

  private Csv() {}

  public static void figures(List<Summary> summaries, DecimalMark mark, Appendable out)
      throws IOException {
    CSVPrinter printer = new CSVPrinter(out, mark.format());
    printer.printRecord((Object[]) FIGURES);
    for (Summary summary : summaries) {
      for (Figure figure : summary.figures()) {
        for (Object cell : cells(summary, figure)) {
          printer.print(mark.cell(cell));
        }
        printer.println();
      }
    }
    printer.flush();
  }

  private static @Nullable Object[] cells(Summary summary, Figure figure) {
    return new @Nullable Object[] {
      summary.characteristic(),
      summary.scope().name().toLowerCase(Locale.ROOT),
      summary.count(),
      figure.name(),
      figure.value(),
      figure.lower(),
      figure.upper(),
      figure.confidence(),
      figure.unit(),
      figure.method(),
      figure.source()
    };
  }
}
