package org.chordlog.radius;

import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Zero;
import org.jspecify.annotations.Nullable;

/**
 * What a depth is uncertain by, mm²: the indicator's step at reading and zero and its permissible
 * error (rectangular, GUM 4.3.7, F.2.2.1), the scatter of the zero (type A, GUM 4.2.3).
 */
record DepthSpread(double step, double permissible, double zero, double zeroDegrees) {
  static DepthSpread of(SetUp setUp) {
    return of(setUp.indicator(), setUp.zero());
  }

  static DepthSpread of(Indicator indicator, @Nullable Zero zero) {
    double step = indicator.resolutionMm() / 2;
    double permissible = indicator.permissibleErrorMm();
    return new DepthSpread(
        step * step / 3,
        permissible * permissible / 3,
        zero == null ? 0 : ofMean(zero.scatterNm(), zero.sampleCount()),
        zero == null ? 0 : zero.sampleCount() - 1);
  }

  /** Variance of the mean of samples with that standard deviation, mm². */
  static double ofMean(long scatterNm, int sampleCount) {
    double s = Length.mm(scatterNm);
    return s * s / sampleCount;
  }

  /** All that does not change from reading to reading, mm². */
  double fixed() {
    return 2 * step + permissible + zero;
  }
}
