package org.chordlog.profile;

import java.util.List;

/**
 * The plane curve that arcs of given lengths and curvatures make one after the other, from the
 * origin along x, turning towards +y. An arc of constant curvature is exact: its chord is Δ sin u/u
 * at half its turn u = κΔ/2.
 */
final class ArcPath {
  /** Ends of the arcs, and the heading there, from the start on: one more than there are arcs. */
  final double[] x;

  final double[] y;
  final double[] heading;

  ArcPath(double[] lengths, double[] curvatures) {
    int n = lengths.length;
    x = new double[n + 1];
    y = new double[n + 1];
    heading = new double[n + 1];
    for (int i = 0; i < n; i++) {
      double half = curvatures[i] * lengths[i] / 2;
      double chord = lengths[i] * Transfer.sinc(half / Math.PI);
      x[i + 1] = x[i] + chord * StrictMath.cos(heading[i] + half);
      y[i + 1] = y[i] + chord * StrictMath.sin(heading[i] + half);
      heading[i + 1] = heading[i] + 2 * half;
    }
  }

  static ArcPath of(List<Arc> arcs) {
    return new ArcPath(
        arcs.stream().mapToDouble(Arc::lengthMm).toArray(),
        arcs.stream().mapToDouble(Arc::bendPerMm).toArray());
  }

  int arcs() {
    return x.length - 1;
  }

  double middleX(int arc) {
    return (x[arc] + x[arc + 1]) / 2;
  }

  double middleY(int arc) {
    return (y[arc] + y[arc + 1]) / 2;
  }
}
