package org.chordlog.profile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.chordlog.radius.RadiusModel;
import org.jspecify.annotations.Nullable;

/**
 * Bins that stand out from their neighbours: by more than four robust standard deviations (1.4826
 * times the median of the distances) from the median of eleven. A bump on the face shows three
 * times, up under the plunger and half as much down under each foot, so it adds nothing to the mean
 * and is marked, never taken out.
 */
final class Spots {
  private static final int REACH = 5;
  private static final double LIMIT = 4;
  private static final double ROBUST = 1.4826;

  /** Neighbouring bins that stand out to one side; the size in mm of depth. */
  record Spot(double placeMm, double sizeMm, int firstBin, int lastBin) {}

  private final List<Spot> spots = new ArrayList<>();
  private final List<Spot> bumps = new ArrayList<>();
  private final boolean[] recognised;

  private Spots(int bins) {
    recognised = new boolean[bins];
  }

  static Spots of(Curve curve, Profile profile, RadiusModel model) {
    Spots spots = new Spots(profile.bins());
    double stepMm = model.setUp().indicator().resolutionMm();
    double byDepth = model.bendByDepth(model.depthNmOfBend(curve.percentile(0.5)));
    spots.collect(curve, stepMm * byDepth, byDepth);
    double tolerance = Math.max(10, 2 * profile.facts().widthMm());
    spots.recogniseBumps(model.spanMm() / 2, tolerance);
    return spots;
  }

  private void collect(Curve curve, double stepPerMm, double byDepth) {
    double[] off = standingOut(curve, stepPerMm);
    for (int i = 0; i < off.length; i++) {
      int last = i;
      while (last + 1 < off.length && off[last + 1] * off[i] > 0) {
        last++;
      }
      if (off[i] != 0) {
        spots.add(spot(curve, off, i, last, byDepth));
      }
      i = last;
    }
  }

  /**
   * How far each bin stands out from the median of its neighbours, 1/mm, or 0; by the scatter
   * around it and by that of the whole piece.
   */
  private static double[] standingOut(Curve curve, double stepPerMm) {
    double[] off = new double[curve.size()];
    double[] spread = new double[curve.size()];
    for (int i = 0; i < off.length; i++) {
      double[] near = neighbours(curve, i);
      double median = near[near.length / 2];
      off[i] = curve.bendPerMm[i] - median;
      for (int k = 0; k < near.length; k++) {
        near[k] = Math.abs(near[k] - median);
      }
      Arrays.sort(near);
      spread[i] = ROBUST * near[near.length / 2];
    }
    double[] sorted = spread.clone();
    Arrays.sort(sorted);
    double least = Math.max(stepPerMm, sorted[sorted.length / 2]);
    for (int i = 0; i < off.length; i++) {
      off[i] = Math.abs(off[i]) > LIMIT * Math.max(least, spread[i]) ? off[i] : 0;
    }
    return off;
  }

  private static double[] neighbours(Curve curve, int i) {
    int from = Math.max(0, Math.min(i - REACH, curve.size() - 2 * REACH - 1));
    int to = Math.min(curve.size(), from + 2 * REACH + 1);
    double[] near = Arrays.copyOfRange(curve.bendPerMm, from, to);
    Arrays.sort(near);
    return near;
  }

  private static Spot spot(Curve curve, double[] off, int first, int last, double byDepth) {
    double weights = 0;
    double places = 0;
    double most = 0;
    for (int i = first; i <= last; i++) {
      weights += Math.abs(off[i]);
      places += Math.abs(off[i]) * curve.placeMm[i];
      most = Math.abs(off[i]) > Math.abs(most) ? off[i] : most;
    }
    return new Spot(places / weights, most / byDepth, curve.bin[first], curve.bin[last]);
  }

  private void recogniseBumps(double halfSpanMm, double toleranceMm) {
    for (Spot peak : spots) {
      Spot before = opposite(peak, peak.placeMm() - halfSpanMm, toleranceMm);
      Spot after = opposite(peak, peak.placeMm() + halfSpanMm, toleranceMm);
      if (before != null && after != null) {
        bumps.add(peak);
        List.of(before, peak, after).forEach(this::recognise);
      }
    }
  }

  private @Nullable Spot opposite(Spot peak, double placeMm, double toleranceMm) {
    return spots.stream()
        .filter(spot -> spot.sizeMm() * peak.sizeMm() < 0)
        .filter(spot -> Math.abs(spot.sizeMm()) < Math.abs(peak.sizeMm()))
        .filter(spot -> Math.abs(spot.placeMm() - placeMm) <= toleranceMm)
        .findFirst()
        .orElse(null);
  }

  private void recognise(Spot spot) {
    Arrays.fill(recognised, spot.firstBin(), spot.lastBin() + 1, true);
  }

  boolean recognised(int bin) {
    return recognised[bin];
  }

  /** Bumps (or dents, with a negative size) on the face, by their peak. */
  List<Spot> bumps() {
    return List.copyOf(bumps);
  }

  /** What stands out otherwise. */
  List<Spot> others() {
    return spots.stream().filter(spot -> !recognised[spot.firstBin()]).toList();
  }
}
