package org.chordlog.profile;

import java.util.Arrays;

/**
 * The evaluated length in equal windows of a quarter span, or two bins if that is longer: mean
 * place and mean bend of each, and how much a window's mean scatters. The scatter comes from second
 * differences, so that a trend and slow true variation do not enter it and what is correlated
 * within a window is in its mean: s² = Σ(yᵢ₋₁ − 2yᵢ + yᵢ₊₁)²/(6m) over m of them, with 18m/35
 * degrees of freedom for white noise (the trace formula for quadratic forms, to first order).
 */
final class Windows {
  final double[] placeMm;
  final double[] bendPerMm;

  /** Whether a spot that was recognised on the face lies in the window. */
  final boolean[] marked;

  private final double scatterPerMm;
  private final double degrees;
  private final double lengthMm;

  private Windows(Curve zone, double fromMm, double lengthMm, int count, Spots spots) {
    this.lengthMm = lengthMm;
    int[] values = new int[count];
    double[] places = new double[count];
    double[] bends = new double[count];
    boolean[] marks = new boolean[count];
    for (int i = 0; i < zone.size(); i++) {
      int w = (int) Math.floor((zone.placeMm[i] - fromMm) / lengthMm);
      w = Math.max(0, Math.min(count - 1, w));
      values[w]++;
      places[w] += zone.placeMm[i];
      bends[w] += zone.bendPerMm[i];
      marks[w] |= spots.recognised(zone.bin[i]);
    }
    int n = 0;
    for (int w = 0; w < count; w++) {
      if (values[w] > 0) {
        places[n] = places[w] / values[w];
        bends[n] = bends[w] / values[w];
        marks[n++] = marks[w];
      }
    }
    placeMm = Arrays.copyOf(places, n);
    bendPerMm = Arrays.copyOf(bends, n);
    marked = Arrays.copyOf(marks, n);
    int triples = triples();
    boolean enough = n >= 4 && triples > 0;
    scatterPerMm = enough ? Math.sqrt(curvatures() / (6 * triples)) : zone.deviation();
    degrees = Math.max(1, enough ? triples * 18.0 / 35 : zone.size() - 1.0);
  }

  static Windows of(Curve zone, Zone where, double halfSpanMm, double widthMm, Spots spots) {
    int count = (int) Math.max(1, where.lengthMm() / lengthMm(halfSpanMm, widthMm));
    return new Windows(zone, where.fromMm(), where.lengthMm() / count, count, spots);
  }

  /** Length asked for. */
  static double lengthMm(double halfSpanMm, double widthMm) {
    return Math.max(halfSpanMm / 2, 2 * widthMm);
  }

  private boolean triple(int i) {
    return !marked[i - 1] && !marked[i] && !marked[i + 1];
  }

  private int triples() {
    int triples = 0;
    for (int i = 1; i < size() - 1; i++) {
      triples += triple(i) ? 1 : 0;
    }
    return triples;
  }

  private double curvatures() {
    double sum = 0;
    for (int i = 1; i < size() - 1; i++) {
      double d = bendPerMm[i - 1] - 2 * bendPerMm[i] + bendPerMm[i + 1];
      sum += triple(i) ? d * d : 0;
    }
    return sum;
  }

  int size() {
    return placeMm.length;
  }

  /** Length of each. */
  double lengthMm() {
    return lengthMm;
  }

  /** Standard deviation of one window's mean, 1/mm. */
  double scatterPerMm() {
    return scatterPerMm;
  }

  double degrees() {
    return degrees;
  }
}
