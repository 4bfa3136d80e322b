package org.chordlog.radius;

import java.util.List;

/**
 * An uncertainty budget in {@code unit} of the result: the lines, the combined standard uncertainty
 * (GUM 5.1.2), the effective degrees of freedom (Welch-Satterthwaite, GUM G.4.1; a million stands
 * for infinitely many), k for 95.45 % and U = k·u. {@code bias} is what the value is known to be
 * off by in the mean: the interval of ± U stands around the value less the bias.
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
