package org.chordlog.report;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVPrinter;
import org.chordlog.measure.Job;
import org.chordlog.measure.Specification;
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
    "source",
    "job_id",
    "job",
    "part",
    "machine",
    "target_mm",
    "lower_limit_mm",
    "upper_limit_mm",
    "limits_revision"
  };

  private Csv() {}

  /** Of one job, whose name and limits every line has, so that files of several can be joined. */
  public static void figures(Job job, List<Summary> summaries, DecimalMark mark, Appendable out)
      throws IOException {
    CSVPrinter printer = new CSVPrinter(out, mark.format());
    printer.printRecord((Object[]) FIGURES);
    for (Summary summary : summaries) {
      for (Figure figure : summary.figures()) {
        print(cells(summary, figure), mark, printer);
        print(cells(job), mark, printer);
        printer.println();
      }
    }
    printer.flush();
  }

  private static void print(@Nullable Object[] cells, DecimalMark mark, CSVPrinter to)
      throws IOException {
    for (Object cell : cells) {
      to.print(mark.cell(cell));
    }
  }

  private static @Nullable Object[] cells(Job job) {
    Specification limits = job.specification();
    return new @Nullable Object[] {
      job.id(),
      job.name(),
      job.part(),
      job.machine(),
      limits.targetMm(),
      limits.lowerLimitMm(),
      limits.upperLimitMm(),
      job.revision()
    };
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
