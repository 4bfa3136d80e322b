package org.chordlog.report;

import java.time.Instant;
import java.time.ZoneId;
import org.chordlog.chart.ChartSource;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.SetUp;
import org.chordlog.study.BudgetComparison;
import org.chordlog.study.StudyResult;
import org.jspecify.annotations.Nullable;

/** Everything that the report of a complete study shows; equal inputs give equal bytes. */
public record StudyReport(
    GaugeStudy study, Found found, Measured measured, ChartSource charts, Printing printing) {
  /** What it found; {@code budget} is null where there is nothing to compare with. */
  public record Found(StudyResult result, @Nullable BudgetComparison budget) {}

  /** With what and when it was measured; times in microseconds. */
  public record Measured(SetUp setUp, long firstMicros, long lastMicros) {}

  /** When and in which time zone it is printed. */
  public record Printing(Instant madeAt, ZoneId zone) {}

  StudyResult result() {
    return found.result();
  }

  String time(long micros) {
    return Print.time(micros, printing.zone());
  }
}
