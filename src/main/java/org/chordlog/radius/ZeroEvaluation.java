package org.chordlog.radius;

import java.util.List;
import java.util.stream.LongStream;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Fault;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;

/** Zero from the samples on a flat: mean, standard deviation (0 of a single sample), count. */
public record ZeroEvaluation(long valueNm, long scatterNm, int sampleCount) {
  /** Most scatter in tolerances of stillness: three steps, as a capture takes at rest. */
  private static final double MOST_SCATTER = 1.5;

  /** Standard errors by which the halves of the samples may differ; 0.3 % of still ones do. */
  private static final double MOST_APART = 3;

  /**
   * {@link BadInput} while the plunger moves, when the samples scatter more than a capture takes,
   * or when there are fewer than {@code leastCount}. A spread within the tolerance is still in any
   * case; beyond it the plunger moves where the later half of the samples lies apart from the
   * earlier one by more than their scatter explains.
   */
  public static ZeroEvaluation of(long[] valuesNm, long toleranceNm, int leastCount) {
    Check.within("samples", valuesNm.length, Math.max(1, leastCount), Integer.MAX_VALUE);
    long least = LongStream.of(valuesNm).min().getAsLong();
    long spread = LongStream.of(valuesNm).max().getAsLong() - least;
    ZeroEvaluation found = still(valuesNm, least);
    if (spread > toleranceNm && moves(valuesNm, least)) {
      throw moving(spread, toleranceNm);
    }
    if (found.scatterNm > MOST_SCATTER * toleranceNm) {
      throw noisy(found.scatterNm, Math.round(MOST_SCATTER * toleranceNm));
    }
    return found;
  }

  /** Spread that is still in any case: two steps, as a value between two steps shows. */
  public static long stillnessNm(Indicator indicator) {
    return 2 * Length.nm(indicator.resolutionMm());
  }

  private static ZeroEvaluation still(long[] valuesNm, long offset) {
    SummaryStatistics statistics = statistics(valuesNm, 0, valuesNm.length, offset);
    long mean = offset + Math.round(statistics.getMean());
    long scatter = Math.round(statistics.getStandardDeviation());
    return new ZeroEvaluation(mean, scatter, valuesNm.length);
  }

  /** By the scatter within the halves; a middle sample belongs to neither. */
  private static boolean moves(long[] valuesNm, long offset) {
    int half = valuesNm.length / 2;
    SummaryStatistics early = statistics(valuesNm, 0, half, offset);
    SummaryStatistics late = statistics(valuesNm, valuesNm.length - half, valuesNm.length, offset);
    double variance = (early.getVariance() + late.getVariance()) / half;
    double apart = late.getMean() - early.getMean();
    return apart * apart > MOST_APART * MOST_APART * variance;
  }

  private static SummaryStatistics statistics(long[] values, int from, int to, long offset) {
    SummaryStatistics statistics = new SummaryStatistics();
    for (int i = from; i < to; i++) {
      statistics.addValue((double) (values[i] - offset));
    }
    return statistics;
  }

  private static BadInput noisy(long scatter, long most) {
    return refused(
        "can't be taken: the indicator's values scatter by a standard deviation of %s",
        scatter, most);
  }

  private static BadInput moving(long spread, long tolerance) {
    return refused("can't be taken: the plunger moves, by %s", spread, tolerance);
  }

  private static BadInput refused(String problem, long seenNm, long mostNm) {
    Sentence seen = Sentence.of(problem, Quantity.stated(Length.mm(seenNm)));
    Sentence allowed = Sentence.of("up to %s", Quantity.stated(Length.mm(mostNm)));
    return new BadInput(List.of(new Fault("zero", "", seen, allowed)));
  }
}
