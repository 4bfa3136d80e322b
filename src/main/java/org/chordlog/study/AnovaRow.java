package org.chordlog.study;

import java.util.List;
import org.apache.commons.statistics.distribution.FDistribution;
import org.jspecify.annotations.Nullable;

/**
 * One line of an analysis of variance; {@code f} is the mean square over that of {@code against},
 * null where it is tested against nothing. The total has no mean square.
 */
public record AnovaRow(
    String source,
    double sumOfSquares,
    double degreesOfFreedom,
    @Nullable Double meanSquare,
    @Nullable Double f,
    @Nullable Double p,
    String against) {
  static AnovaRow untested(MeanSquare square) {
    return new AnovaRow(
        square.source(),
        square.sumOfSquares(),
        square.degreesOfFreedom(),
        square.value(),
        null,
        null,
        "");
  }

  static AnovaRow tested(MeanSquare square, MeanSquare against) {
    double f = square.value() / against.value();
    return new AnovaRow(
        square.source(),
        square.sumOfSquares(),
        square.degreesOfFreedom(),
        square.value(),
        Double.isFinite(f) ? (Double) f : null,
        Double.isFinite(f) ? (Double) p(f, square, against) : null,
        against.source());
  }

  static AnovaRow total(List<AnovaRow> rows) {
    double squares = rows.stream().mapToDouble(AnovaRow::sumOfSquares).sum();
    double degrees = rows.stream().mapToDouble(AnovaRow::degreesOfFreedom).sum();
    return new AnovaRow("total", squares, degrees, null, null, null, "");
  }

  static double p(double f, MeanSquare square, MeanSquare against) {
    return FDistribution.of(square.degreesOfFreedom(), against.degreesOfFreedom())
        .survivalProbability(f);
  }
}
