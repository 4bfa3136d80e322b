package org.chordlog.cli.study;

import org.chordlog.cli.common.TypedNumber;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.study.BiasStudy;
import org.chordlog.study.Criteria;
import org.chordlog.study.FigureUnit;
import org.chordlog.study.StudySettings;
import org.chordlog.study.StudySettings.Constants;
import org.chordlog.study.StudySettings.Evaluation;
import org.chordlog.study.Tolerance;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/**
 * What a study is evaluated with, in the unit of the values. With {@code --nominal} values are
 * radii, which are studied as curvatures and told as lengths at that radius.
 */
final class StudyInputs {
  @Option(
      names = "--nominal",
      paramLabel = "R",
      description = "Values are radii; study their curvature, tell lengths at this radius.")
  private @Nullable String nominal;

  /** A study does not depend on the unit; what it is told in does. */
  @Option(
      names = "--unit",
      paramLabel = "UNIT",
      defaultValue = "mm",
      description = "Unit of all lengths, in and out: mm or inch (${DEFAULT-VALUE}).")
  private Unit unit = Unit.MM;

  enum Unit {
    MM("mm"),
    INCH("in");

    private final String sign;

    Unit(String sign) {
      this.sign = sign;
    }
  }

  @Option(
      names = {"--lsl", "--lower"},
      paramLabel = "L",
      description = "Lower specification limit.")
  private @Nullable String lower;

  @Option(
      names = {"--usl", "--upper"},
      paramLabel = "L",
      description = "Upper specification limit.")
  private @Nullable String upper;

  @Option(
      names = "--tolerance",
      paramLabel = "T",
      description = "Width between the limits instead.")
  private @Nullable String width;

  @Option(
      names = "--process-sigma",
      paramLabel = "S",
      description = "Standard deviation of the process, in place of that of the study's pieces.")
  private @Nullable String processSigma;

  @Option(
      names = "--sigmas",
      paramLabel = "K",
      defaultValue = "6",
      description = "Standard deviations compared with the tolerance (${DEFAULT-VALUE}).")
  private double sigmas;

  @Option(
      names = "--pooling",
      paramLabel = "P",
      defaultValue = "0.25",
      description = "Pool the interaction where its p-value is above this (${DEFAULT-VALUE}).")
  private double pooling;

  @Option(
      names = "--exact",
      description = "Range method: take d2* for the number of ranges measured, in place of d2.")
  private boolean exact;

  @Option(
      names = "--limit",
      paramLabel = "PERCENT",
      defaultValue = "30",
      description = "The gauge's share that passes, in percent (${DEFAULT-VALUE}).")
  private double limit;

  @Option(names = "--reference", paramLabel = "X", description = "Value of the master.")
  private @Nullable String reference;

  @Option(
      names = "--reference-uncertainty",
      paramLabel = "U",
      description = "Its expanded uncertainty, k = 2 (0: not added).")
  private @Nullable String referenceUncertainty;

  @Option(names = "--permitted-bias", paramLabel = "B", description = "Bias (±) that passes.")
  private @Nullable String permittedBias;

  @Option(names = "--resolution", paramLabel = "L", description = "Step of the gauge.")
  private @Nullable String resolution;

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "Start of the draws for intervals of shares (${DEFAULT-VALUE}).")
  private long seed;

  StudySettings settings() {
    Double bias = TypedNumber.given("--permitted-bias", permittedBias);
    Double sigma = TypedNumber.given("--process-sigma", processSigma);
    return StudySettings.usual()
        .with(
            new Evaluation(0.95, sigmas, pooling, exact ? Constants.EXACT : Constants.AS_PUBLISHED))
        .with(tolerance())
        .with(telling())
        .with(
            Criteria.USUAL
                .withGaugePercent(limit)
                .withPermittedBias(bias == null ? null : (Double) inStudy(bias)))
        .withProcessSigma(sigma == null ? null : (Double) inStudy(sigma))
        .withSeed(seed);
  }

  private @Nullable Double nominalMm() {
    Double radius = TypedNumber.given("--nominal", nominal);
    return radius == null ? null : (Double) Check.positive("--nominal", radius);
  }

  String unit() {
    return unit.sign;
  }

  private FigureUnit telling() {
    Double radius = nominalMm();
    return radius == null ? FigureUnit.AS_READ : FigureUnit.atNominal(radius).in(unit.sign);
  }

  /** A small difference in the values' unit as one in the study's. */
  private double inStudy(double difference) {
    Double radius = nominalMm();
    return radius == null ? difference : difference / (radius * radius);
  }

  /** Values in the study's unit. */
  double[] study(double[] values) {
    if (nominalMm() == null) {
      return values;
    }
    double[] curvatures = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      curvatures[i] = 1 / Check.positive("radius in column value", values[i]);
    }
    return curvatures;
  }

  private Tolerance tolerance() {
    Double low = TypedNumber.given("--lsl", lower);
    Double high = TypedNumber.given("--usl", upper);
    Double wide = TypedNumber.given("--tolerance", width);
    if (wide != null && (low != null || high != null)) {
      throw new BadInput("--tolerance", wide, "is given beside a limit", "limits, or their width");
    }
    if (wide != null) {
      return Tolerance.ofWidth(inStudy(Check.positive("--tolerance", wide)));
    }
    return nominalMm() == null ? new Tolerance(low, high) : Tolerance.ofRadius(low, high);
  }

  /** Of a kind that compares with it. */
  static double width(Tolerance tolerance) {
    Double width = tolerance.width();
    if (width == null) {
      throw new BadInput(
          "--tolerance",
          "nothing",
          "was given",
          "the width between the limits; or --lsl and --usl");
    }
    return width;
  }

  BiasStudy.Reference master() {
    Double value = needed("--reference", reference);
    Double uncertainty = TypedNumber.given("--reference-uncertainty", referenceUncertainty);
    return new BiasStudy.Reference(
        study(new double[] {value})[0], uncertainty == null ? 0 : inStudy(uncertainty));
  }

  BiasStudy.@Nullable Reference masterIfGiven() {
    return reference == null ? null : master();
  }

  @Nullable Double resolution() {
    Double step = TypedNumber.given("--resolution", resolution);
    return step == null ? null : (Double) inStudy(step);
  }

  private static Double needed(String option, @Nullable String text) {
    Double value = TypedNumber.given(option, text);
    if (value == null) {
      throw new BadInput(option, "nothing", "was given", "a number");
    }
    return value;
  }
}
