package org.chordlog.report;

import java.io.IOException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.chordlog.measure.Length;
import org.chordlog.measure.Reading;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.Summary;

/** Readings and statistics as CSV (RFC 4180), numbers in full, times in UTC. */
public final class Csv {
  private static final CSVFormat READINGS =
      CSVFormat.RFC4180
          .builder()
          .setHeader(
              "reading",
              "utc",
              "piece",
              "position",
              "depth_mm",
              "radius_mm",
              "radius_lower_mm",
              "radius_upper_mm",
              "decision",
              "marks",
              "excluded_reason",
              "raw_hex")
          .get();
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

  /** The readings of a report, in order; an open end of an interval is empty. */
  public static void readings(JobReport report, Appendable out) throws IOException {
    CSVPrinter printer = new CSVPrinter(out, READINGS);
    for (Reading reading : report.readings()) {
      printer.printRecord(
          reading.id(),
          Instant.EPOCH.plus(reading.wallMicros(), ChronoUnit.MICROS),
          reading.piece(),
          reading.position(),
          Length.mm(reading.depthNm()),
          reading.radius().radiusMm(),
          reading.radius().lowerMm(),
          reading.radius().upperMm(),
          lower(reading.decision()),
          String.join(" ", reading.marks().stream().map(Csv::lower).sorted().toList()),
          report.exclusion(reading.id()),
          reading.rawHex());
    }
    printer.flush();
  }

  public static void figures(List<Summary> summaries, Appendable out) throws IOException {
    CSVPrinter printer = new CSVPrinter(out, FIGURES);
    for (Summary summary : summaries) {
      for (Figure figure : summary.figures()) {
        printer.printRecord(
            summary.characteristic(),
            lower(summary.scope()),
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

  private static String lower(Enum<?> name) {
    return name.name().toLowerCase(Locale.ROOT);
  }
}
