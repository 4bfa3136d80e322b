package org.chordlog.stats;

import java.util.List;
import java.util.Optional;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.StatisticsPlan;
import org.jspecify.annotations.Nullable;

/** The positions of a job side by side, in the order of its plan. */
public record PositionsSnapshot(
    String quantity,
    String unit,
    List<Row> rows,
    @Nullable Double lowerSpecificationLimit,
    @Nullable Double upperSpecificationLimit,
    @Nullable Double target) {
  /** One position: mean with its 95 % confidence interval, least and most value; n may be 0. */
  public record Row(
      String position,
      long count,
      double mean,
      @Nullable Double meanLower,
      @Nullable Double meanUpper,
      double least,
      double most) {}

  static PositionsSnapshot of(StatisticsPlan plan, List<Summary> summaries) {
    Limits limits = plan.limits();
    return new PositionsSnapshot(
        plan.quantity(),
        plan.unit(),
        summaries.stream().map(PositionsSnapshot::row).toList(),
        limits.lower(),
        limits.upper(),
        limits.target());
  }

  private static Row row(Summary summary) {
    Optional<Figure> mean = summary.figure("mean");
    return new Row(
        summary.characteristic(),
        summary.figure("mean").isPresent() ? summary.count() : 0,
        value(summary, "mean"),
        mean.map(Figure::lower).orElse(null),
        mean.map(Figure::upper).orElse(null),
        value(summary, "minimum"),
        value(summary, "maximum"));
  }

  private static double value(Summary summary, String name) {
    Double value = summary.figure(name).map(Figure::value).orElse(null);
    return value == null ? 0 : value;
  }

  public PositionsSnapshot {
    rows = List.copyOf(rows);
  }
}
