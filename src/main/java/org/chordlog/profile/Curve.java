package org.chordlog.profile;

import java.util.Arrays;
import org.chordlog.radius.RadiusModel;

/** Places and bends, in the order of place, of the filled bins of a profile between two places. */
final class Curve {
  final double[] placeMm;
  final double[] bendPerMm;
  final int[] bin;

  private Curve(double[] placeMm, double[] bendPerMm, int[] bin) {
    this.placeMm = placeMm;
    this.bendPerMm = bendPerMm;
    this.bin = bin;
  }

  static Curve of(Profile profile, RadiusModel model, double fromMm, double toMm) {
    double[] places = new double[profile.bins()];
    double[] bends = new double[profile.bins()];
    int[] bins = new int[profile.bins()];
    int n = 0;
    for (int i = 0; i < profile.bins(); i++) {
      if (profile.count(i) > 0 && profile.placeMm(i) >= fromMm && profile.placeMm(i) <= toMm) {
        places[n] = profile.placeMm(i);
        bends[n] = model.bendPerMm(profile.depthNm(i));
        bins[n++] = i;
      }
    }
    return new Curve(Arrays.copyOf(places, n), Arrays.copyOf(bends, n), Arrays.copyOf(bins, n));
  }

  Curve between(double fromMm, double toMm) {
    int from = 0;
    while (from < size() && placeMm[from] < fromMm) {
      from++;
    }
    int to = size();
    while (to > from && placeMm[to - 1] > toMm) {
      to--;
    }
    return new Curve(
        Arrays.copyOfRange(placeMm, from, to),
        Arrays.copyOfRange(bendPerMm, from, to),
        Arrays.copyOfRange(bin, from, to));
  }

  int size() {
    return placeMm.length;
  }

  double mean() {
    double sum = 0;
    for (double bend : bendPerMm) {
      sum += bend;
    }
    return sum / size();
  }

  /** Standard deviation, with size less one. */
  double deviation() {
    double mean = mean();
    double sum = 0;
    for (double bend : bendPerMm) {
      sum += (bend - mean) * (bend - mean);
    }
    return Math.sqrt(sum / Math.max(1, size() - 1));
  }

  /** The bend below which that share of the bins lies, interpolated. */
  double percentile(double share) {
    return Percentile.of(bendPerMm, share);
  }
}
