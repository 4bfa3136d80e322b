package org.chordlog.profile;

import java.util.Arrays;

/**
 * The evaluated length in equal windows of a quarter span, or two bins if that is longer: mean
 * place and mean bend of each, and how much a window's mean scatters. What is correlated within a
 * window is in its mean.
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
    double[] scatter = WindowScatter.of(bendPerMm, marked);
    boolean enough = n >= 4 && scatter[1] > 0;
    scatterPerMm = enough ? Math.sqrt(scatter[0]) : zone.deviation();
    degrees = Math.max(1, enough ? scatter[1] : zone.size() - 1.0);
  }

  static Windows of(Curve zone, Zone where, double halfSpanMm, double widthMm, Spots spots) {
    int count = (int) Math.max(1, where.lengthMm() / lengthMm(halfSpanMm, widthMm));
    return new Windows(zone, where.fromMm(), where.lengthMm() / count, count, spots);
  }

  /** Length asked for. */
  static double lengthMm(double halfSpanMm, double widthMm) {
    return Math.max(halfSpanMm / 2, 2 * widthMm);
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
