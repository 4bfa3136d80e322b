package org.chordlog.radius;

import java.util.List;
import org.apache.commons.math3.special.Erf;

/**
 * An uncertainty budget in {@code unit} of the result: the lines, the combined standard uncertainty
 * (GUM 5.1.2), the effective degrees of freedom (Welch-Satterthwaite, GUM G.4.1; a million stands
 * for infinitely many), k for 95.45 % and U = k·u. {@code bias} is what the value is known to be
 * off by in the mean: the interval of ± U is centred on the value less the bias.
 */
public record Budget(
    String unit,
    List<BudgetLine> lines,
    double combined,
    double degreesOfFreedom,
    double coverageFactor,
    double expanded,
    double bias) {
  /** As good as infinitely many degrees of freedom. */
  public static final double INFINITE_DEGREES = StudentT.MOST_DEGREES;

  private static final double NEGLIGIBLE = 1e-9;

  public Budget {
    lines = List.copyOf(lines);
  }

  static Budget of(String unit, List<BudgetLine> lines, double bias) {
    double variance = lines.stream().mapToDouble(line -> power(line.contribution(), 2)).sum();
    double sum = lines.stream().mapToDouble(Budget::share).sum();
    double degrees = effective(variance, sum);
    double k = StudentT.COVERAGE.quantile(degrees);
    double u = Math.sqrt(variance);
    return new Budget(unit, lines, u, degrees, k, k * u, bias);
  }

  /**
   * About which part of results ± U holds: a bound that rules the budget (rectangular) makes it
   * more than 95.45 %. The largest rectangular line is taken as that, all others together as
   * normal.
   */
  public double coverage() {
    double largest =
        lines.stream()
            .filter(line -> line.distribution() == Distribution.RECTANGULAR)
            .mapToDouble(BudgetLine::contribution)
            .max()
            .orElse(0);
    double half = largest * Math.sqrt(3);
    double reach = StudentT.COVERAGE.quantile(INFINITE_DEGREES) * combined;
    double rest = Math.sqrt(Math.max(0, combined * combined - largest * largest));
    if (half == 0) {
      return 1 - Erf.erfc(reach / combined / Math.sqrt(2));
    }
    return rest < NEGLIGIBLE * combined
        ? Math.min(1, reach / half)
        : rest / half * (integral((reach + half) / rest) - integral((reach - half) / rest)) - 1;
  }

  /** Of the standard normal distribution up to z. */
  private static double integral(double z) {
    double below = Erf.erfc(-z / Math.sqrt(2)) / 2;
    return z * below + Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI);
  }

  /** ν_eff from u² and Σ uᵢ⁴/νᵢ. */
  static double effective(double variance, double sum) {
    return sum == 0
        ? StudentT.MOST_DEGREES
        : Math.min(variance * variance / sum, StudentT.MOST_DEGREES);
  }

  private static double share(BudgetLine line) {
    Double degrees = line.degreesOfFreedom();
    return degrees == null ? 0 : power(line.contribution(), 4) / degrees;
  }

  private static double power(double x, int n) {
    return n == 2 ? x * x : x * x * x * x;
  }
}
