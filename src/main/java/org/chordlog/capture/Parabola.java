package org.chordlog.capture;

/**
 * The parabola of least squares over evenly spaced values, by orthogonal polynomials: {@code mean +
 * slope·p + bend·(p² − centre)}, p the place counted from the middle.
 */
record Parabola(int count, double mean, double slope, double bend, double sumOfSquaredResiduals) {
  /** Over at least three values. */
  static Parabola over(double[] values) {
    int n = values.length;
    double middle = (n - 1) / 2.0;
    double centre = (n * (double) n - 1) / 12;
    double sum = 0;
    double first = 0;
    double second = 0;
    for (int i = 0; i < n; i++) {
      double p = i - middle;
      sum += values[i];
      first += p * values[i];
      second += (p * p - centre) * values[i];
    }
    double slope = first / (n * centre);
    double bend = 5 * second / (n * centre * (4 * centre - 1));
    return new Parabola(n, sum / n, slope, bend, 0).withResiduals(values);
  }

  private Parabola withResiduals(double[] values) {
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      double off = values[i] - at(i - (count - 1) / 2.0);
      sum += off * off;
    }
    return new Parabola(count, mean, slope, bend, sum);
  }

  private double at(double place) {
    return mean + slope * place + bend * (place * place - (count * (double) count - 1) / 12);
  }

  /** Whether it has its highest point among the values. */
  boolean peaks() {
    return bend < 0 && Math.abs(slope) <= -bend * (count - 1);
  }

  double peak() {
    return at(-slope / (2 * bend));
  }

  /** How much it rises or falls over the values. */
  double range() {
    double half = (count - 1) / 2.0;
    return Math.abs(slope) * 2 * half + Math.abs(bend) * half * half;
  }
}
