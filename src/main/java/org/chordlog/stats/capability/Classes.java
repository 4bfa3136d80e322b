package org.chordlog.stats.capability;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.stats.control.Axis;
import org.chordlog.stats.control.Estimate;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.math.JohnsonFit;
import org.chordlog.stats.math.Moments;
import org.chordlog.stats.math.Normal;
import org.jspecify.annotations.Nullable;

/**
 * The newest values (up to {@value Window#SIZE}) in classes of the width of Scott (1979), 3.49 s
 * n^(−1/3), with the fitted normal curves; where normality is refused at 5 %, a Johnson one before
 * them.
 */
public final class Classes {
  private static final double SCOTT = 3.49;
  private static final int MOST = 60;
  private static final int STEPS = 96;
  private static final double REACH = 4;

  private final StatisticsPlan plan;
  private final Shape shape;
  private final double[] values;
  private final Moments moments;

  private Classes(StatisticsPlan plan, Shape shape) {
    this.plan = plan;
    this.shape = shape;
    values = shape.values();
    moments = shape.moments();
  }

  /** The newest values in classes. */
  public static DistributionSnapshot of(StatisticsPlan plan, Evidence evidence) {
    Classes classes = new Classes(plan, evidence.shape());
    List<DistributionSnapshot.Curve> curves = new ArrayList<>();
    classes.fitted(curves);
    classes.curve("normal, overall", classes.moments.deviation(), curves);
    Estimate within = evidence.within();
    classes.curve("normal, within", within == null ? Double.NaN : within.sigma(), curves);
    return classes.snapshot(curves);
  }

  private DistributionSnapshot snapshot(List<DistributionSnapshot.Curve> curves) {
    @Nullable Double mean = values.length == 0 ? null : moments.mean();
    return new DistributionSnapshot(
        new Axis(plan.quantity(), plan.unit()),
        values.length == 0 ? List.of() : bins(),
        curves,
        new Limits(plan.limits().lower(), plan.limits().upper(), plan.limits().target()),
        mean,
        values.length);
  }

  /** Class limits are multiples of the width, so that they stay where they are. */
  private List<DistributionSnapshot.Bin> bins() {
    double width = width();
    long first = (long) Math.floor(moments.least() / width);
    int count = (int) ((long) Math.floor(moments.most() / width) - first) + 1;
    long[] counts = new long[count];
    for (double value : values) {
      counts[(int) ((long) Math.floor(value / width) - first)]++;
    }
    List<DistributionSnapshot.Bin> bins = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double low = (double) (first + i) * width;
      bins.add(new DistributionSnapshot.Bin(low, low + width, counts[i]));
    }
    return bins;
  }

  private double width() {
    double spread = moments.most() - moments.least();
    double size = Math.max(Math.abs(moments.most()), Math.abs(moments.least()));
    if (!(spread > 1e-9 * size)) {
      return size == 0 ? 1 : 1e-3 * size;
    }
    double scott = SCOTT * moments.deviation() / Math.cbrt((double) values.length);
    return Math.max(scott, spread / MOST);
  }

  private void fitted(List<DistributionSnapshot.Curve> curves) {
    Shape.Fitted fitted = shape.fitted();
    if (fitted == null) {
      return;
    }
    JohnsonFit fit = fitted.distribution();
    List<DistributionSnapshot.Density> densities = new ArrayList<>();
    for (int i = 0; i <= STEPS; i++) {
      double z = REACH * (2.0 * i / STEPS - 1);
      densities.add(new DistributionSnapshot.Density(fit.quantile(z), fit.density(z)));
    }
    curves.add(new DistributionSnapshot.Curve(fit.family(), densities));
  }

  private void curve(String name, double sigma, List<DistributionSnapshot.Curve> curves) {
    if (!(sigma > 0)) {
      return;
    }
    List<DistributionSnapshot.Density> densities = new ArrayList<>();
    for (int i = 0; i <= STEPS; i++) {
      double z = REACH * (2.0 * i / STEPS - 1);
      densities.add(
          new DistributionSnapshot.Density(moments.mean() + z * sigma, Normal.density(z) / sigma));
    }
    curves.add(new DistributionSnapshot.Curve(name, densities));
  }
}
