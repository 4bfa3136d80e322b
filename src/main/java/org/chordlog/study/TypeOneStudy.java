package org.chordlog.study;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Decimals;
import org.chordlog.stats.math.Interval;
import org.chordlog.stats.math.NoncentralT;
import org.chordlog.stats.math.Normal;
import org.chordlog.study.FigureMaker.About;
import org.jspecify.annotations.Nullable;

/**
 * Type 1: repeatability and bias on one master against a share of the tolerance, Cg =
 * (K/100)·T/(L·s) and Cgk = ((K/200)·T − |bias|)/((L/2)·s) (ISO 22514-7 annex, from memory).
 */
public final class TypeOneStudy {
  private static final int FEW = 25;
  private static final double MOST_RESOLUTION = 5;
  private static final String SOURCE = "ISO 22514-7, annex";

  /** Beyond it the noncentral t loses digits, and the large-sample interval is as good. */
  private static final double MOST_EXACT = 15;

  private final Replicates sample;
  private final Inputs inputs;
  private final StudySettings settings;
  private final double confidence;

  /**
   * {@code tolerancePercent} K and {@code sigmas} L; {@code toleranceWidth} T, {@code reference}
   * and {@code resolution} in the study's unit.
   */
  public record Inputs(
      double toleranceWidth,
      double reference,
      @Nullable Double resolution,
      double tolerancePercent,
      double sigmas) {
    public Inputs {
      Check.positive("tolerance", toleranceWidth);
      Check.finite("reference", reference);
      Check.within("K", tolerancePercent, 1, 100);
      Check.positive("L", sigmas);
      if (resolution != null) {
        Check.positive("resolution", resolution);
      }
    }

    /** K = 20 %, L = 6. */
    public static Inputs usual(double toleranceWidth, double reference) {
      return new Inputs(toleranceWidth, reference, null, 20, 6);
    }

    public Inputs withResolution(double known) {
      return new Inputs(toleranceWidth, reference, known, tolerancePercent, sigmas);
    }
  }

  private TypeOneStudy(double[] values, Inputs inputs, StudySettings settings) {
    sample = Replicates.of(values);
    this.inputs = inputs;
    this.settings = settings;
    confidence = settings.evaluation().confidence();
  }

  public static StudyResult of(double[] values, Inputs inputs, StudySettings settings) {
    return new TypeOneStudy(values, inputs, settings).result();
  }

  private StudyResult result() {
    FigureMaker make = new FigureMaker(settings);
    Interval cg = cg();
    Interval cgk = cgk();
    double k = inputs.tolerancePercent();
    Findings findings = new Findings(StudyKind.TYPE1, sample.size());
    findings
        .figure(make.value(BiasStudy.about("mean", "mean"), sample.difference(0, confidence)))
        .figure(
            make.deviation(
                about("standardDeviation", "repeatability", "chi-square"),
                sample.variance(confidence)))
        .figure(
            make.difference(
                BiasStudy.about("bias", "bias on the master"),
                sample.difference(inputs.reference(), confidence)))
        .figure(
            make.figure(about("Cg", "repeatability in the tolerance", "chi-square"), cg, "")
                .atLeast(settings.criteria().cg()))
        .figure(
            make.figure(
                    about("Cgk", "repeatability and bias in the tolerance", "noncentral t"),
                    cgk,
                    "")
                .atLeast(settings.criteria().cg()))
        .figure(
            make.figure(
                about(
                    "percentRepeatability", "repeatability, share of the tolerance", "chi-square"),
                over(k, cg),
                "%"))
        .figure(
            make.figure(
                about(
                    "percentRepeatabilityAndBias",
                    "repeatability and bias, share of the tolerance",
                    "noncentral t"),
                over(k, cgk),
                "%"));
    findings.test(sample.test(inputs.reference()));
    cautions(findings);
    return findings.result();
  }

  private Interval cg() {
    Interval variance = sample.variance(confidence);
    double width = inputs.tolerancePercent() / 100 * inputs.toleranceWidth() / inputs.sigmas();
    return new Interval(
        width / sample.deviation(),
        width / Math.sqrt(variance.upper()),
        width / Math.sqrt(variance.lower()));
  }

  /** √n·((K/200)·T − |bias|)/s is noncentral t (Owen 1965), taken for the nearer side. */
  private Interval cgk() {
    double half = inputs.tolerancePercent() / 200 * inputs.toleranceWidth();
    double bias = Math.abs(sample.mean() - inputs.reference());
    double scale = Math.sqrt(sample.count()) * inputs.sigmas() / 2;
    double t = Math.sqrt(sample.count()) * (half - bias) / sample.deviation();
    return new Interval(t / scale, end(t, true) / scale, end(t, false) / scale);
  }

  private double end(double t, boolean lower) {
    double tail = (1 - confidence) / 2;
    double degrees = sample.degreesOfFreedom();
    if (Math.abs(t) <= MOST_EXACT * Math.sqrt(sample.count())) {
      return NoncentralT.noncentrality(t, degrees, lower ? 1 - tail : tail);
    }
    double half = Normal.quantile(1 - tail) * Math.sqrt(1 + t * t / (2 * degrees));
    return lower ? t - half : t + half;
  }

  /** An index at or below 0 has no bound here. */
  private static Interval over(double k, Interval index) {
    return new Interval(over(k, index.value()), over(k, index.upper()), over(k, index.lower()));
  }

  private static double over(double k, double index) {
    return index > 0 ? k / index : Double.NaN;
  }

  private void cautions(Findings findings) {
    if (sample.count() < FEW) {
      findings.caution("Fewer than 25 readings: 50 are usual, 25 the least.");
    }
    Double resolution = inputs.resolution();
    if (resolution == null) {
      findings.caution("The resolution was not given; it has to be at most 5 % of the tolerance.");
      return;
    }
    double percent = 100 * resolution / inputs.toleranceWidth();
    findings.caution(
        "Resolution is "
            + Decimals.significant(percent)
            + " % of the tolerance, "
            + (percent > MOST_RESOLUTION ? "more than" : "within")
            + " the 5 % that are allowed.");
  }

  private static About about(String name, String words, String by) {
    return new About(name, words, "interval by " + by, SOURCE);
  }

  /** {@link BadInput} unless both limits are there. */
  public static double width(Tolerance tolerance) {
    Double width = tolerance.width();
    if (width == null) {
      throw new BadInput("tolerance", "one limit or none", "has no width", "both limits");
    }
    return width;
  }
}
