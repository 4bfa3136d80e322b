package org.chordlog.profile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Least squares of a series with cosine and sine of one frequency, given level and trend (or the
 * level alone) and any lines taken out before: the drop of the sum of squares, amplitude and phase.
 */
final class Harmonic {
  private final double[] places;
  private final List<double[]> basis = new ArrayList<>();
  private final double[] rest;

  /** A wave A cos(2πfs − φ) and how far it lowers the sum of squares. */
  record Line(double perMm, double drop, double amplitude, double phase) {}

  Harmonic(double[] placesMm, double[] values, boolean withTrend) {
    places = placesMm;
    rest = values.clone();
    double[] level = new double[places.length];
    Arrays.fill(level, 1);
    project(level);
    if (withTrend) {
      project(places.clone());
    }
  }

  /** Takes a direction out of the series, and out of all that comes. */
  private void project(double[] direction) {
    for (int twice = 0; twice < 2; twice++) {
      basis.forEach(known -> take(direction, known, dot(direction, known)));
    }
    double size = Math.sqrt(dot(direction, direction));
    if (size > 0) {
      for (int i = 0; i < direction.length; i++) {
        direction[i] /= size;
      }
      basis.add(direction);
      take(rest, direction, dot(rest, direction));
    }
  }

  /** Takes the wave of that frequency out. */
  void takeOut(double perMm) {
    project(wave(perMm, 0));
    project(wave(perMm, -Math.PI / 2));
  }

  Line at(double perMm) {
    double[] cosine = wave(perMm, 0);
    double[] sine = wave(perMm, -Math.PI / 2);
    for (double[] known : basis) {
      take(cosine, known, dot(cosine, known));
      take(sine, known, dot(sine, known));
    }
    double cc = dot(cosine, cosine);
    double ss = dot(sine, sine);
    double cs = dot(cosine, sine);
    double yc = dot(rest, cosine);
    double ys = dot(rest, sine);
    double determinant = cc * ss - cs * cs;
    if (!(determinant > 1e-12 * cc * ss)) {
      return new Line(perMm, 0, 0, 0);
    }
    double a = (yc * ss - ys * cs) / determinant;
    double b = (ys * cc - yc * cs) / determinant;
    return new Line(perMm, a * yc + b * ys, Math.hypot(a, b), StrictMath.atan2(b, a));
  }

  /** Sum of squares that is left. */
  double sumOfSquares() {
    return dot(rest, rest);
  }

  private double[] wave(double perMm, double phase) {
    double[] wave = new double[places.length];
    for (int i = 0; i < wave.length; i++) {
      wave[i] = StrictMath.cos(2 * Math.PI * perMm * places[i] + phase);
    }
    return wave;
  }

  private static void take(double[] from, double[] direction, double amount) {
    for (int i = 0; i < from.length; i++) {
      from[i] -= amount * direction[i];
    }
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
