package org.chordlog.profile;

/**
 * How much a window's mean scatters, by second differences, so that a trend and slow true variation
 * do not enter: s² = Σ(yᵢ₋₁ − 2yᵢ + yᵢ₊₁)²/(6m) over m of them, with 18m/35 degrees of freedom for
 * white noise (the square of the trace of the quadratic form over the trace of its square, to first
 * order).
 */
final class WindowScatter {
  private WindowScatter() {}

  /** Variance and degrees of freedom; zeros where no three neighbours are unmarked. */
  static double[] of(double[] means, boolean[] marked) {
    int triples = 0;
    double sum = 0;
    for (int i = 1; i < means.length - 1; i++) {
      if (!marked[i - 1] && !marked[i] && !marked[i + 1]) {
        double second = means[i - 1] - 2 * means[i] + means[i + 1];
        sum += second * second;
        triples++;
      }
    }
    return triples == 0
        ? new double[] {0, 0}
        : new double[] {sum / (6 * triples), triples * 18.0 / 35};
  }
}
