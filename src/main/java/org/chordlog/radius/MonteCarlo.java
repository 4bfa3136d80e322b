package org.chordlog.radius;

import java.util.Arrays;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.measure.Check;

/**
 * Propagation of distributions for one reading (JCGM 101:2008, clause 7): the inputs of the budget
 * are drawn, the geometry is computed exactly, nothing is linearised. The same seed gives the same
 * figures.
 */
public final class MonteCarlo {
  public static final int LEAST_TRIALS = 10_000;
  public static final int MOST_TRIALS = 10_000_000;
  private static final double TAIL = (1 - 0.9544997361036416) / 2;

  private final RadiusModel model;
  private final Draws draws;

  private MonteCarlo(RadiusModel model, Draws draws) {
    this.model = model;
    this.draws = draws;
  }

  /** Takes 8 bytes a trial. */
  public static MonteCarloResult run(
      RadiusModel model, long depthNm, long scatterNm, int sampleCount, int trials, long seed) {
    Check.within("trials", trials, LEAST_TRIALS, MOST_TRIALS);
    model.estimate(depthNm, scatterNm, sampleCount);
    Draws draws = new Draws(model, scatterNm, sampleCount, new Well19937c(seed));
    return new MonteCarlo(model, draws).of(model.depthMm(depthNm), trials, seed);
  }

  private MonteCarloResult of(double depthMm, int trials, long seed) {
    double[] bends = new double[trials];
    for (int i = 0; i < trials; i++) {
      bends[i] = bend(depthMm);
    }
    Arrays.sort(bends);
    double mean = Arrays.stream(bends).average().orElseThrow();
    double squares = Arrays.stream(bends).map(b -> (b - mean) * (b - mean)).sum();
    int skipped = (int) Math.round(TAIL * trials);
    return new MonteCarloResult(
        trials,
        seed,
        mean,
        Math.sqrt(squares / (trials - 1)),
        bends[skipped],
        bends[trials - 1 - skipped]);
  }

  /** Curvature on the specified face in the sense of the bend, 1/mm, of one draw. */
  private double bend(double depthMm) {
    draws.next();
    double depth = depthMm + draws.depthMm();
    double seen = Slope.at(depth, draws.spanMm(), draws.footRadiusMm()).curvaturePerMm();
    double along = model.skew().along(seen, draws.tangent());
    return model.bendOnSpecifiedFace(along);
  }
}
