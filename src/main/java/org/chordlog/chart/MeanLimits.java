package org.chordlog.chart;

import java.util.List;
import java.util.stream.IntStream;
import org.chordlog.stats.math.Factors;
import org.jspecify.annotations.Nullable;

/**
 * Centre and 3-sigma limits of the means of cells that should be alike, from what repeats within a
 * cell scatter by (ISO 7870-2: A2 with ranges, A3 with standard deviations); with one repeat from
 * the moving range of the cells, two or more.
 */
record MeanLimits(double centre, double lower, double upper) {
  static MeanLimits of(List<StudySnapshot.Cell> cells, @Nullable CellSpread spread) {
    double centre = cells.stream().mapToDouble(StudySnapshot.Cell::mean).average().orElseThrow();
    double away = spread == null ? ofMovingRange(cells) : away(cells.get(0), spread);
    return new MeanLimits(centre, centre - away, centre + away);
  }

  private static double away(StudySnapshot.Cell cell, CellSpread spread) {
    int repeats = cell.values().size();
    double perSigma =
        spread.ranges() ? Factors.of(repeats).a2() : 3 / (Factors.c4(repeats) * Math.sqrt(repeats));
    return perSigma * spread.centre();
  }

  private static double ofMovingRange(List<StudySnapshot.Cell> cells) {
    double range =
        IntStream.range(1, cells.size())
            .mapToDouble(i -> Math.abs(cells.get(i).mean() - cells.get(i - 1).mean()))
            .average()
            .orElse(0);
    return Factors.of(2).e2() * range;
  }

  boolean beyond(StudySnapshot.Cell cell) {
    return cell.mean() < lower || cell.mean() > upper;
  }
}
