package org.chordlog.correction;

import java.util.List;
import org.chordlog.correction.Hypothesis.Heard;
import org.chordlog.correction.LotShifts.Shift;
import org.chordlog.correction.Told.Lot.Offset;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * Level and gain of one machine as readings and moves come in, all in permil of the target's
 * curvature. A piece costs a fixed number of steps.
 */
final class LevelFilter {
  /** A reading so many standard deviations of a stray one off is no reading of this level. */
  private static final double BEYOND_STRAY = 6;

  /** Two such readings that differ by less than this many standard deviations show a new level. */
  private static final double AGREEING = 4;

  private final Tuning tuning;
  private double halfTolerance;
  private Belief belief;
  private GainMemory gain;
  private Scatter scatter;

  /** No piece since the set-up. */
  private boolean fresh = true;

  /** A reading too far off for any hypothesis, else NaN. */
  private double outlier = Double.NaN;

  private NewestReading newest = NewestReading.none();

  LevelFilter(Tuning tuning, Aim aim, GainPrior prior) {
    this(
        tuning,
        aim.halfTolerance(),
        new Belief(
            0,
            aim.permilOfDifference(prior.perMmPerUnit()),
            square(tuning.priors().setUp() * aim.halfTolerance()),
            0,
            square(aim.permilOfDifference(prior.standardUncertainty()))),
        GainMemory.of(prior));
  }

  private LevelFilter(Tuning tuning, double halfTolerance, Belief belief, GainMemory gain) {
    this.tuning = tuning;
    this.halfTolerance = halfTolerance;
    this.belief = belief;
    this.gain = gain;
    scatter = priorScatter();
  }

  private Scatter priorScatter() {
    return Scatter.prior(
        tuning.priors().scatter() * halfTolerance, tuning.priors().scatterWeight());
  }

  private double setUpVariance() {
    return square(tuning.priors().setUp() * halfTolerance);
  }

  Belief belief() {
    return belief;
  }

  NewestReading newest() {
    return newest;
  }

  double scatterVariance() {
    return scatter.variance();
  }

  boolean fresh() {
    return fresh;
  }

  boolean outlying() {
    return !Double.isNaN(outlier);
  }

  /** The gain is a curvature for a unit of the scale, so it is carried to another target. */
  void newJob(Aim before, Aim aim) {
    double unit = before.perMm(1);
    gain = gain.afterJob(belief.gain() * unit, belief.gainVariance() * unit * unit);
    halfTolerance = aim.halfTolerance();
    scatter = priorScatter();
    takeGain(aim);
    setUp();
  }

  void setUp() {
    begin(belief.withLevel(0, setUpVariance()));
  }

  /** A set-up to a number at which the level is known with that standard uncertainty. */
  void setUpNear(double standardUncertainty, double moved) {
    double variance = square(standardUncertainty) + scatter.variance() / 4;
    begin(belief.withLevel(0, Math.min(variance, setUpVariance())).moved(moved, 0));
  }

  private void begin(Belief start) {
    belief = start;
    scatter = scatter.cut();
    fresh = true;
    outlier = Double.NaN;
    newest = NewestReading.none();
  }

  void newTarget(Aim before, Aim aim) {
    double ratio = aim.targetMm() / before.targetMm();
    belief = belief.rescaled(ratio);
    scatter = scatter.rescaled(ratio);
    halfTolerance = aim.halfTolerance();
    outlier = Double.NaN;
  }

  void newScale(Aim aim, GainPrior prior) {
    this.gain = GainMemory.of(prior);
    takeGain(aim);
  }

  private void takeGain(Aim aim) {
    double unit = aim.permilOfDifference(1);
    belief = belief.withGain(gain.jobGain() * unit, gain.jobVariance() * unit * unit);
  }

  /** By what is known of the step, else by its certificate; false if nothing is known. */
  boolean anotherLot(@Nullable Shift known, @Nullable Offset certificate, Aim aim) {
    double unit = aim.permilOfDifference(1);
    if (known != null) {
      lotStep(known.perMm() * unit, known.variance() * unit * unit);
    } else if (certificate != null) {
      lotStep(certificate.perMm() * unit, square(certificate.standardUncertaintyPerMm() * unit));
    } else {
      lotStep(0, square(tuning.priors().lot() * halfTolerance));
    }
    return known != null || certificate != null;
  }

  private void lotStep(double permil, double variance) {
    belief = belief.shifted(permil, variance);
    scatter = scatter.cut();
  }

  void moved(double amount, double errorVariance) {
    belief = belief.moved(amount, errorVariance);
    scatter = scatter.cut();
  }

  /** Somebody moved the rollers by that at an unknown time since; the level has some of it. */
  void movedBefore(double amount) {
    belief = belief.widened(square(belief.gain() * amount) / 4);
  }

  /** The rollers were moved towards the target, nobody knows how far. */
  void movedSomehow() {
    double variance =
        belief.levelVariance() + square(belief.level() / 2) + square(halfTolerance / 2);
    belief = belief.withLevel(0, variance);
    scatter = scatter.cut();
  }

  /** Takes in a piece. */
  void hear(PieceInput piece) {
    double variance = Math.max(scatter.variance(), piece.readingVariance()) + piece.extraVariance();
    predict(piece.permil(), variance);
    if (!fresh && isOutlier(piece.permil(), variance)) {
      outlier = piece.permil();
      newest = new NewestReading(0, 0, 1, 0, variance, Double.NaN, Double.NaN);
      return;
    }
    judge(piece, variance);
    scatter = scatter.with(piece.permil());
    fresh = false;
    outlier = Double.NaN;
  }

  /** After a set-up the first reading tells the level, however far off it is. */
  private void predict(double permil, double variance) {
    if (!Double.isNaN(outlier) && Math.abs(permil - outlier) < AGREEING * Math.sqrt(2 * variance)) {
      setUp();
    }
    if (fresh) {
      double least = square(permil / 2);
      belief = belief.widened(Math.max(0, least - belief.levelVariance()));
    } else {
      belief = belief.widened(tuning.wander() * variance);
    }
  }

  private boolean isOutlier(double permil, double variance) {
    double forecast = belief.levelVariance() + tuning.surprises().strayFactor() * variance;
    return square(permil - belief.level()) > square(BEYOND_STRAY) * forecast;
  }

  private void judge(PieceInput piece, double variance) {
    List<Hypothesis> all =
        Hypothesis.behind(piece, belief, variance, tuning.surprises(), halfTolerance);
    double forecast = belief.levelVariance() + variance;
    double innovation = piece.permil() - belief.level();
    Heard heard = Hypothesis.hear(all, piece.permil());
    double[] w = heard.weights();
    newest =
        new NewestReading(
            w[0], w[1], w[2], w.length > 3 ? w[3] : 0, variance, forecast, innovation);
    belief = heard.belief();
  }

  private static double square(double value) {
    return value * value;
  }

  void write(Packer to) {
    to.put(halfTolerance);
    belief.write(to);
    gain.write(to);
    scatter.write(to);
    to.put(fresh).put(outlier);
    newest.write(to);
  }

  static LevelFilter read(Unpacker from, Tuning tuning) {
    LevelFilter filter =
        new LevelFilter(tuning, from.aDouble(), Belief.read(from), GainMemory.read(from));
    filter.scatter = Scatter.read(from);
    filter.fresh = from.aBoolean();
    filter.outlier = from.aDouble();
    filter.newest = NewestReading.read(from);
    return filter;
  }
}
