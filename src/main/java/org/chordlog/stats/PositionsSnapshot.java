package org.chordlog.stats;

import java.util.List;
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

  public PositionsSnapshot {
    rows = List.copyOf(rows);
  }
}
