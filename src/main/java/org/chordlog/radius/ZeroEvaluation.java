package org.chordlog.radius;

import java.util.stream.LongStream;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;

/** Zero from the samples on a flat: mean, standard deviation (0 of a single sample), count. */
public record ZeroEvaluation(long valueNm, long scatterNm, int sampleCount) {
  /**
   * {@link BadInput} while the plunger moves, that is, when the samples spread over more than the
   * tolerance, or when there are fewer than {@code leastCount}.
   */
  public static ZeroEvaluation of(long[] valuesNm, long toleranceNm, int leastCount) {
    Check.within("samples", valuesNm.length, Math.max(1, leastCount), Integer.MAX_VALUE);
    long least = LongStream.of(valuesNm).min().getAsLong();
    long spread = LongStream.of(valuesNm).max().getAsLong() - least;
    if (spread > toleranceNm) {
      throw moving(spread, toleranceNm);
    }
    return still(valuesNm, least);
  }

  /** Spread at rest: two steps of the indicator, which a value between two steps already shows. */
  public static long stillnessNm(Indicator indicator) {
    return 2 * Length.nm(indicator.resolutionMm());
  }

  private static ZeroEvaluation still(long[] valuesNm, long offset) {
    SummaryStatistics statistics = new SummaryStatistics();
    LongStream.of(valuesNm).forEach(value -> statistics.addValue((double) (value - offset)));
    long mean = offset + Math.round(statistics.getMean());
    long scatter = Math.round(statistics.getStandardDeviation());
    return new ZeroEvaluation(mean, scatter, valuesNm.length);
  }

  private static BadInput moving(long spread, long tolerance) {
    String allowed = "a spread up to " + Length.mm(tolerance) + " mm";
    return new BadInput(
        "zero", Length.mm(spread) + " mm", "is the spread: the plunger moves", allowed);
  }
}
