package org.chordlog.stats.capability;

import org.chordlog.stats.math.Interval;
import org.chordlog.stats.math.NoncentralT;

/**
 * Exact confidence limits of (mean − limit)/3s of a normal characteristic: 3√n times the index is
 * noncentral t with n − 1 degrees of freedom (Owen 1965; ISO 22514-2 refers to it).
 */
public final class ExactInterval {
  /** Beyond it the integration loses digits. */
  private static final double MOST_INDEX = 5;

  private ExactInterval() {}

  static boolean possible(double index, long n) {
    return n >= 2 && Math.abs(index) <= MOST_INDEX;
  }

  /** The index with its exact 95 % interval, of {@code n} readings. */
  public static Interval of(double index, long n) {
    double error = (1 - Interval.CONFIDENCE) / 2;
    return new Interval(index, limit(index, n, 1 - error), limit(index, n, error));
  }

  private static double limit(double index, long n, double below) {
    double scale = 3 * Math.sqrt((double) n);
    return NoncentralT.noncentrality(scale * index, n - 1.0, below) / scale;
  }
}
