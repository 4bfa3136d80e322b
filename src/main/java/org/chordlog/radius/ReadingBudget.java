package org.chordlog.radius;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.chordlog.measure.Zero;
import org.jspecify.annotations.Nullable;

/**
 * The budget of one reading, line by line: in mm of radius on the specified face, or, for a flat,
 * in curvature (1/km), where a radius has no meaning.
 */
final class ReadingBudget {
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
    ReadingBudget budget = new ReadingBudget(model, slope, flat ? 1e6 : toRadius);
    budget.depth(scatterNm, sampleCount);
    budget.bridge();
    budget.skew();
    return Budget.of(budget.unit(), budget.lines, budget.bias());
  }

  private void depth(long scatterNm, int sampleCount) {
    Indicator indicator = model.setUp().indicator();
    double step = Math.sqrt(model.spread().step());
    String half = "± " + plain(indicator.resolutionMm() / 2) + " mm";
    line("step of the reading", half, Distribution.RECTANGULAR, step, slope.byDepth(), null);
    line("step of the zero", half, Distribution.RECTANGULAR, step, slope.byDepth(), null);
    line(
        "permissible error",
        "± " + plain(indicator.permissibleErrorMm()) + " mm",
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
      String value = "s " + plain(Length.mm(scatterNm)) + " mm, n " + count;
      double u = Math.sqrt(DepthSpread.ofMean(scatterNm, count));
      @Nullable Double degrees = count > 1 ? count - 1.0 : null;
      line(source, value, Distribution.STUDENT_T, u, slope.byDepth(), degrees);
    }
  }

  private void bridge() {
    EffectiveBridge bridge = model.bridge();
    String span = plain(bridge.spanMm()) + " mm";
    String foot = plain(bridge.footRadiusMm()) + " mm";
    if (bridge.calibrated()) {
      calibration(bridge, span, foot);
      return;
    }
    line("span", span, Distribution.NORMAL, Math.sqrt(bridge.ss()), slope.bySpan(), null);
    line("foot radius", foot, Distribution.NORMAL, Math.sqrt(bridge.rr()), slope.byFoot(), null);
  }

  private void calibration(EffectiveBridge bridge, String span, String foot) {
    String zero = plain(bridge.zeroOffsetMm()) + " mm";
    double variance = bridge.variance(slope.bySpan(), -slope.byDepth(), slope.byFoot());
    lines.add(
        BudgetLine.of(
            "calibration",
            "span " + span + ", zero offset " + zero + ", foot radius " + foot,
            unit(),
            Distribution.JOINT,
            Math.sqrt(variance) * Math.abs(scale),
            1,
            finite(bridge.degreesOfFreedom())));
  }

  /** The spread alone: the mean bias shifts the interval instead. */
  private void skew() {
    double limit = model.setUp().bridge().skewLimitDegrees();
    String bias = limit == 0 ? "" : String.format(Locale.ROOT, ", bias %.2g %s", bias(), unit());
    lines.add(
        BudgetLine.of(
            "skew out of the bend plane",
            "± " + plain(limit) + "°" + bias,
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

  private String unit() {
    return scale == 1e6 ? "1/km" : "mm";
  }

  private void line(
      String source,
      String value,
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
    return String.format(Locale.ROOT, "%.4f", value).replaceAll("\\.?0+$", "");
  }
}
