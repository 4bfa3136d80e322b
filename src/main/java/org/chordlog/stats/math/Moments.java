package org.chordlog.stats.math;

/**
 * Running mean and central moments up to the fourth, minimum and maximum: Welford (1962), higher
 * moments after Pébay (2008, SAND2008-6212), on values less the first one.
 */
public final class Moments {
  private long n;
  private double first;
  private double mean;
  private double m2;
  private double m3;
  private double m4;
  private double least = Double.POSITIVE_INFINITY;
  private double most = Double.NEGATIVE_INFINITY;

  /** Takes in the next value. */
  public void add(double value) {
    if (n == 0) {
      first = value;
    }
    long before = n++;
    double delta = value - first - mean;
    double step = delta / n;
    double term = delta * step * before;
    mean += step;
    m4 +=
        term * step * step * ((double) n * n - 3.0 * n + 3) + 6 * step * step * m2 - 4 * step * m3;
    m3 += term * step * (n - 2) - 3 * step * m2;
    m2 += term;
    least = Math.min(least, value);
    most = Math.max(most, value);
  }

  /** Count of values. */
  public long n() {
    return n;
  }

  /** NaN before the first value. */
  public double mean() {
    return n == 0 ? Double.NaN : first + mean;
  }

  /** With denominator n − 1; NaN below two values. */
  public double variance() {
    return n < 2 ? Double.NaN : m2 / (n - 1);
  }

  /** Standard deviation, denominator n − 1; NaN below two values. */
  public double deviation() {
    return Math.sqrt(variance());
  }

  /** The least value so far. */
  public double least() {
    return least;
  }

  /** The greatest value so far. */
  public double most() {
    return most;
  }

  /** Sum of the squared differences from the mean. */
  public double sumOfSquares() {
    return m2;
  }

  /** Adjusted Fisher-Pearson skewness G1; NaN below three values or without variation. */
  public double skewness() {
    return n < 3 || m2 == 0
        ? Double.NaN
        : Math.sqrt((double) n * (n - 1))
            / (n - 2)
            * Math.sqrt((double) n)
            * m3
            / Math.pow(m2, 1.5);
  }

  /** Excess kurtosis G2; NaN below four values or without variation. */
  public double kurtosis() {
    return n < 4 || m2 == 0
        ? Double.NaN
        : (n - 1.0) / ((n - 2.0) * (n - 3.0)) * ((n + 1.0) * (n * m4 / (m2 * m2) - 3) + 6);
  }

  /** Writes the whole state. */
  public void pack(Packer packer) {
    packer.put(n).put(first).put(mean).put(m2).put(m3).put(m4).put(least).put(most);
  }

  /** Reads the state that was written. */
  public static Moments unpack(Unpacker from) {
    Moments moments = new Moments();
    moments.n = from.aLong();
    moments.first = from.aDouble();
    moments.mean = from.aDouble();
    moments.m2 = from.aDouble();
    moments.m3 = from.aDouble();
    moments.m4 = from.aDouble();
    moments.least = from.aDouble();
    moments.most = from.aDouble();
    return moments;
  }
}
