package org.chordlog.stats.math;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.util.FastMath;
import org.jspecify.annotations.Nullable;

/**
 * A Johnson distribution by four percentiles (Slifker and Shapiro 1980, Technometrics 22, 239-246):
 * unbounded, bounded or lognormal as the data ask.
 */
public final class JohnsonFit {
  private static final double Z = 0.524;
  private final String family;
  private final DoubleUnaryOperator toNormal;
  private final DoubleUnaryOperator fromNormal;

  private JohnsonFit(String family, DoubleUnaryOperator toNormal, DoubleUnaryOperator fromNormal) {
    this.family = family;
    this.toNormal = toNormal;
    this.fromNormal = fromNormal;
  }

  /** Name of the family that was fitted. */
  public String family() {
    return family;
  }

  /** The value below which the part Φ(z) of the fitted distribution lies. */
  public double quantile(double z) {
    return fromNormal.applyAsDouble(z);
  }

  /** Density at the value of quantile z: φ(z) over the slope of the quantile there. */
  public double density(double z) {
    double step = 1e-4;
    return Normal.density(z) * 2 * step / (quantile(z + step) - quantile(z - step));
  }

  /** Part of the fitted distribution below a value. */
  public double below(double value) {
    double z = toNormal.applyAsDouble(value);
    return Double.isNaN(z) ? (value < quantile(0) ? 0 : 1) : Normal.below(z);
  }

  /** A² of the values against the fit; infinite where a value lies outside a bounded fit. */
  public double distance(double[] values) {
    double[] z = Arrays.stream(values).map(toNormal).toArray();
    return Arrays.stream(z).allMatch(Double::isFinite)
        ? AndersonDarling.statistic(z)
        : Double.POSITIVE_INFINITY;
  }

  /** Through four percentiles of the values; null where they coincide. */
  public static @Nullable JohnsonFit of(double[] values) {
    Percentile percentile = new Percentile().withEstimationType(Percentile.EstimationType.R_5);
    percentile.setData(values);
    return through(Arrays.stream(parts()).map(part -> percentile.evaluate(100 * part)).toArray());
  }

  /** The parts of a distribution that lie below the four percentiles of a fit. */
  static double[] parts() {
    return IntStream.range(0, 4).mapToDouble(i -> Normal.below((2 * i - 3) * Z)).toArray();
  }

  /** Through the values of these four percentiles, rising; null where they coincide. */
  static @Nullable JohnsonFit through(double[] x) {
    double m = x[3] - x[2];
    double p = x[2] - x[1];
    double n = x[1] - x[0];
    if (!(m > 0 && p > 0 && n > 0)) {
      return null;
    }
    return fit(m / p, n / p, p, (x[2] + x[1]) / 2);
  }

  private static @Nullable JohnsonFit fit(double m, double n, double p, double centre) {
    double ratio = m * n;
    if (ratio > 1.001) {
      return unbounded(m, n, p, centre);
    }
    return ratio < 0.999 ? bounded(1 / m, 1 / n, p, centre) : lognormal(m, p, centre);
  }

  /** With m, n over p. */
  private static JohnsonFit unbounded(double m, double n, double p, double centre) {
    double eta = 2 * Z / FastMath.acosh((m + n) / 2);
    double root = Math.sqrt(m * n - 1);
    double gamma = eta * FastMath.asinh((n - m) / (2 * root));
    double lambda = 2 * p * root / ((m + n - 2) * Math.sqrt(m + n + 2));
    double epsilon = centre + p * (n - m) / (2 * (m + n - 2));
    return new JohnsonFit(
        "Johnson SU (unbounded)",
        x -> gamma + eta * FastMath.asinh((x - epsilon) / lambda),
        z -> epsilon + lambda * Math.sinh((z - gamma) / eta));
  }

  /** With p over m and p over n. */
  private static JohnsonFit bounded(double pm, double pn, double p, double centre) {
    double product = (1 + pm) * (1 + pn);
    double eta = Z / FastMath.acosh(Math.sqrt(product) / 2);
    double root = Math.sqrt((product - 2) * (product - 2) - 4);
    double gamma = eta * FastMath.asinh((pn - pm) * Math.sqrt(product - 4) / (2 * (pm * pn - 1)));
    double lambda = p * root / (pm * pn - 1);
    double epsilon = centre - lambda / 2 + p * (pn - pm) / (2 * (pm * pn - 1));
    return new JohnsonFit(
        "Johnson SB (bounded)",
        x -> gamma + eta * Math.log((x - epsilon) / (lambda + epsilon - x)),
        z -> epsilon + lambda / (1 + Math.exp((gamma - z) / eta)));
  }

  private static @Nullable JohnsonFit lognormal(double m, double p, double centre) {
    if (Math.abs(m - 1) < 1e-6) {
      return null;
    }
    double eta = 2 * Z / Math.log(m);
    double gamma = eta * Math.log((m - 1) / (p * Math.sqrt(m)));
    double epsilon = centre - p / 2 * (m + 1) / (m - 1);
    double sign = m > 1 ? 1 : -1;
    return sign < 0
        ? null
        : new JohnsonFit(
            "Johnson SL (three-parameter lognormal)",
            x -> gamma + eta * Math.log(x - epsilon),
            z -> epsilon + Math.exp((z - gamma) / eta));
  }
}
