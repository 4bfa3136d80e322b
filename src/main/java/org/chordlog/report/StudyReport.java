package org.chordlog.report;

import java.time.Instant;
import java.time.ZoneId;
import org.chordlog.chart.ChartSource;
import org.chordlog.chart.ViewUnit;
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

  /** When it is printed, and in which time zone and unit of lengths. */
  public record Printing(Instant madeAt, ZoneId zone, ViewUnit unit) {}

  StudyResult result() {
    return found.result();
  }

  PrintedLengths lengths() {
    return new PrintedLengths(printing.unit());
  }

  /** In the reader's unit. */
  ChartSource chartsInUnit() {
    return printing.unit().of(charts);
  }

  String time(long micros) {
    return Print.time(micros, printing.zone());
  }
}
