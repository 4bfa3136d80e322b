package org.chordlog.radius;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Zero;
import org.jspecify.annotations.Nullable;

/**
 * The budget of one reading, line by line: in mm of radius on the specified face, or, for a flat,
 * in curvature (1/km), where a radius has no meaning.
 */
final class ReadingBudget {
  private static final double PER_KM = 1e6;
  private final RadiusModel model;
  private final Slope slope;
  private final double scale;
  private final List<BudgetLine> lines = new ArrayList<>();

  private ReadingBudget(RadiusModel model, Slope slope, double scale) {
    this.model = model;
    this.slope = slope;
    this.scale = scale;
  }

  static Budget of(RadiusModel model, long depthNm, long scatterNm, int sampleCount) {
    Slope slope = model.slope(depthNm);
    boolean flat = model.estimate(depthNm, scatterNm, sampleCount).flat();
    double kappa = slope.curvaturePerMm();
    double toRadius = -Math.signum(kappa) / (kappa * kappa);
    ReadingBudget budget = new ReadingBudget(model, slope, flat ? PER_KM : toRadius);
    budget.depth(scatterNm, sampleCount);
    budget.bridge();
    budget.skew();
    return Budget.of(budget.unit(), budget.lines, budget.bias());
  }

  private void depth(long scatterNm, int sampleCount) {
    Indicator indicator = model.setUp().indicator();
    double step = Math.sqrt(model.spread().step());
    Sentence half = limit(indicator.resolutionMm() / 2);
    line("step of the reading", half, Distribution.RECTANGULAR, step, slope.byDepth(), null);
    line("step of the zero", half, Distribution.RECTANGULAR, step, slope.byDepth(), null);
    line(
        "permissible error",
        limit(indicator.permissibleErrorMm()),
        Distribution.RECTANGULAR,
        Math.sqrt(model.spread().permissible()),
        slope.byDepth(),
        null);
    @Nullable Zero zero = model.setUp().zero();
    if (zero != null) {
      scatter("scatter of the zero", zero.scatterNm(), zero.sampleCount());
    }
    scatter("scatter of the reading", scatterNm, sampleCount);
  }

  private void scatter(String source, long scatterNm, int count) {
    if (scatterNm > 0) {
      Sentence value = Sentence.of("s %s, n %d", Quantity.uncertainty(Length.mm(scatterNm)), count);
      double u = Math.sqrt(DepthSpread.ofMean(scatterNm, count));
      @Nullable Double degrees = count > 1 ? count - 1.0 : null;
      line(source, value, Distribution.STUDENT_T, u, slope.byDepth(), degrees);
    }
  }

  private void bridge() {
    EffectiveBridge bridge = model.bridge();
    if (bridge.calibrated()) {
      calibration(bridge);
      return;
    }
    nominal("span", bridge.spanMm(), bridge.ss(), slope.bySpan());
    nominal("foot radius", bridge.footRadiusMm(), bridge.rr(), slope.byFoot());
  }

  private void nominal(String source, double statedMm, double variance, double byCurvature) {
    Sentence value = Sentence.of("%s", Quantity.stated(statedMm));
    line(source, value, Distribution.NORMAL, Math.sqrt(variance), byCurvature, null);
  }

  private void calibration(EffectiveBridge bridge) {
    Sentence fitted =
        Sentence.of(
            "span %s, zero offset %s, foot radius %s",
            fitted(bridge.spanMm(), bridge.ss()),
            fitted(bridge.zeroOffsetMm(), bridge.zz()),
            fitted(bridge.footRadiusMm(), bridge.rr()));
    double variance = bridge.variance(slope.bySpan(), -slope.byDepth(), slope.byFoot());
    lines.add(
        BudgetLine.of(
            "calibration",
            fitted,
            unit(),
            Distribution.JOINT,
            Math.sqrt(variance) * Math.abs(scale),
            1,
            finite(bridge.degreesOfFreedom())));
  }

  /** The spread alone: the mean bias shifts the interval instead. */
  private void skew() {
    double limit = model.setUp().bridge().skewLimitDegrees();
    Sentence turned =
        limit == 0
            ? Sentence.of("± %s°", plain(limit))
            : Sentence.of("± %s°, bias %s", plain(limit), ofRadius(bias()));
    lines.add(
        BudgetLine.of(
            "skew out of the bend plane",
            turned,
            model.skew().factor(),
            Distribution.ONE_WAY,
            model.skew().spread().deviation(),
            model.skew().weight(slope.curvaturePerMm()) * scale,
            null));
  }

  /** What the value shown reads too much, in the mean of all angles within the limit. */
  private double bias() {
    return model.skew().bias(slope.curvaturePerMm()) * scale;
  }

  private Object ofRadius(double value) {
    return flat()
        ? String.format(Locale.ROOT, "%.2g %s", value, unit())
        : Quantity.uncertainty(value);
  }

  private static Sentence limit(double statedMm) {
    return Sentence.of("± %s", Quantity.stated(statedMm));
  }

  private static Quantity fitted(double mm, double variance) {
    return Quantity.of(mm, 2 * Math.sqrt(variance));
  }

  private boolean flat() {
    return scale == PER_KM;
  }

  private String unit() {
    return flat() ? "1/km" : "mm";
  }

  private void line(
      String source,
      Sentence value,
      Distribution distribution,
      double uMm,
      double byCurvature,
      @Nullable Double degrees) {
    lines.add(BudgetLine.of(source, value, "mm", distribution, uMm, byCurvature * scale, degrees));
  }

  private static @Nullable Double finite(double degrees) {
    return degrees >= StudentT.MOST_DEGREES ? null : degrees;
  }

  private static String plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }
}
