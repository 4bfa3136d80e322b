package org.chordlog.chart;

import java.util.List;
import org.chordlog.stats.math.Factors;

/**
 * How far repeats are apart, cell by cell, with centre and 3-sigma limits for their common scatter:
 * ranges with D3 and D4, of more than {@value #MOST_IN_RANGE} repeats standard deviations with B3
 * and B4 (ISO 7870-2; ASTM E2587).
 */
record CellSpread(boolean ranges, List<Double> values, double centre, double lower, double upper) {
  /** Beyond it a range wastes much of what the repeats tell; common practice. */
  static final int MOST_IN_RANGE = 10;

  /** Every cell has as many values: two or more. */
  static CellSpread of(List<StudySnapshot.Cell> cells) {
    int repeats = cells.get(0).values().size();
    boolean ranges = repeats <= MOST_IN_RANGE;
    List<Double> values =
        cells.stream().map(each -> ranges ? range(each) : deviation(each)).toList();
    double centre = values.stream().mapToDouble(each -> each).average().orElseThrow();
    if (ranges) {
      Factors factors = Factors.of(repeats);
      return new CellSpread(
          true, values, centre, factors.d3Limit() * centre, factors.d4Limit() * centre);
    }
    double c4 = Factors.c4(repeats);
    double away = 3 * Math.sqrt(1 - c4 * c4) / c4;
    return new CellSpread(
        false, values, centre, Math.max(0, 1 - away) * centre, (1 + away) * centre);
  }

  String word() {
    return ranges ? "range" : "std. deviation";
  }

  boolean above(int cell) {
    return values.get(cell) > upper;
  }

  private static double range(StudySnapshot.Cell cell) {
    double most = cell.values().stream().mapToDouble(each -> each).max().orElseThrow();
    return most - cell.values().stream().mapToDouble(each -> each).min().orElseThrow();
  }

  private static double deviation(StudySnapshot.Cell cell) {
    double mean = cell.mean();
    double squares =
        cell.values().stream().mapToDouble(each -> (each - mean) * (each - mean)).sum();
    return Math.sqrt(squares / (cell.values().size() - 1));
  }
}
