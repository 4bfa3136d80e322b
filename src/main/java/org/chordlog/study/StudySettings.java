package org.chordlog.study;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/**
 * What a study is evaluated with. {@code processSigma} is the standard deviation of the process in
 * the study's unit where it is known better than the study's parts can tell; {@code seed} starts
 * the draws of the generalised intervals.
 */
public record StudySettings(
    Evaluation evaluation,
    Tolerance tolerance,
    @Nullable Double processSigma,
    FigureUnit telling,
    Criteria criteria,
    long seed) {
  /** Which constants the range method uses for its figures. */
  public enum Constants {
    /** K1 from d2, as printed tables have it. */
    AS_PUBLISHED,
    /** K1 from d2* of the ranges at hand. */
    EXACT
  }

  /**
   * {@code sigmas} standard deviations are compared with a tolerance; the interaction is pooled
   * with the repeatability where its p-value exceeds {@code poolingLevel}: 1 never, 0 always.
   */
  public record Evaluation(
      double confidence, double sigmas, double poolingLevel, Constants constants) {
    public static final Evaluation USUAL = new Evaluation(0.95, 6, 0.25, Constants.AS_PUBLISHED);

    public Evaluation {
      if (!(confidence >= 0.5 && confidence <= 0.9999)) {
        throw new BadInput("confidence", confidence, "is out of range", "0.5 to 0.9999");
      }
      Check.positive("sigmas", sigmas);
      Check.within("pooling level", poolingLevel, 0, 1);
    }
  }

  public StudySettings {
    if (processSigma != null) {
      Check.positive("process sigma", processSigma);
    }
  }

  public static StudySettings usual() {
    return new StudySettings(
        Evaluation.USUAL, Tolerance.NONE, null, FigureUnit.AS_READ, Criteria.USUAL, 1);
  }

  /** The same with another confidence and width. */
  public StudySettings with(Evaluation other) {
    return new StudySettings(other, tolerance, processSigma, telling, criteria, seed);
  }

  /** The same with another tolerance. */
  public StudySettings with(Tolerance other) {
    return new StudySettings(evaluation, other, processSigma, telling, criteria, seed);
  }

  /** The same told in another unit. */
  public StudySettings with(FigureUnit other) {
    return new StudySettings(evaluation, tolerance, processSigma, other, criteria, seed);
  }

  /** The same with other limits for the figures. */
  public StudySettings with(Criteria other) {
    return new StudySettings(evaluation, tolerance, processSigma, telling, other, seed);
  }

  /** The same with the standard deviation of the process, null where it is not known. */
  public StudySettings withProcessSigma(@Nullable Double sigma) {
    return new StudySettings(evaluation, tolerance, sigma, telling, criteria, seed);
  }

  /** The same with another seed of what is drawn. */
  public StudySettings withSeed(long other) {
    return new StudySettings(evaluation, tolerance, processSigma, telling, criteria, other);
  }
}
