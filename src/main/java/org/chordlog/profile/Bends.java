package org.chordlog.profile;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Arcs along a piece: straight ends, fitted edges as even rises up to the level next to them, and
 * in between a bin each. {@code window} is the window that an arc's sampling error goes with.
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record Bends(
    double fromMm,
    double[] places,
    double[] lengths,
    double[] curvatures,
    boolean[] measured,
    int[] window) {
  private static final double STEP_MM = 5;

  static Bends of(
      Profile profile, PieceResult result, EvaluationSettings settings, double from, double to) {
    return new Maker(profile, result, settings, from, to).bends();
  }

  /** Where the arc of that number begins. */
  double placeMm(int arc) {
    return places[arc];
  }

  private static final class Maker {
    private final Zone zone;
    private final PieceResult result;
    private final EvaluationSettings settings;
    private final Curve curve;
    private final double from;
    private final double to;
    private final double startLevel;
    private final double endLevel;
    private final List<double[]> arcs = new ArrayList<>();

    Maker(
        Profile profile, PieceResult result, EvaluationSettings settings, double from, double to) {
      this.result = result;
      this.settings = settings;
      this.from = from;
      this.to = to;
      zone = result.zone();
      curve = Curve.of(profile, settings.model(), zone.fromMm(), zone.toMm());
      double span = settings.model().spanMm();
      startLevel = curve.between(zone.fromMm(), zone.fromMm() + span).mean();
      endLevel = curve.between(zone.toMm() - span, zone.toMm()).mean();
    }

    Bends bends() {
      fitted(from, Math.min(to, zone.fromMm()));
      measured();
      fitted(Math.max(from, zone.toMm()), to);
      int n = arcs.size();
      double[] places = new double[n + 1];
      double[] lengths = new double[n];
      double[] curvatures = new double[n];
      boolean[] measured = new boolean[n];
      int[] window = new int[n];
      for (int i = 0; i < n; i++) {
        double[] arc = arcs.get(i);
        places[i] = arc[0];
        places[i + 1] = arc[1];
        curvatures[i] = arc[2];
        lengths[i] = Shape.onMeasuredFace(arc[1] - arc[0], arc[2], settings);
        measured[i] = arc[3] > 0;
        window[i] = window((arc[0] + arc[1]) / 2);
      }
      return new Bends(from, places, lengths, curvatures, measured, window);
    }

    private int window(double placeMm) {
      int w = (int) Math.floor((placeMm - zone.fromMm()) / result.windowMm());
      return Math.max(0, Math.min(result.mean().windows() - 1, w));
    }

    private void fitted(double start, double end) {
      for (double s = start; s < end; s += STEP_MM) {
        double e = Math.min(end, s + STEP_MM);
        arcs.add(new double[] {s, e, fitted((s + e) / 2), 0});
      }
    }

    private double fitted(double placeMm) {
      double before =
          zone.start() == null ? 1 : ramp(placeMm - zone.start().placeMm(), zone.start());
      double after = zone.end() == null ? 1 : ramp(zone.end().placeMm() - placeMm, zone.end());
      return placeMm < zone.fromMm() ? before * startLevel : after * endLevel;
    }

    private static double ramp(double beyondMm, @Nullable Edge edge) {
      if (edge == null || edge.riseMm() == 0) {
        return beyondMm < 0 ? 0 : 1;
      }
      return Math.max(0, Math.min(1, 0.5 + beyondMm / edge.riseMm()));
    }

    /** From half way to the bin before to half way to the next. */
    private void measured() {
      double start = Math.max(from, zone.fromMm());
      double stop = Math.min(to, zone.toMm());
      for (int i = 0; i < curve.size(); i++) {
        boolean last = i == curve.size() - 1;
        double end = last ? stop : (curve.placeMm[i] + curve.placeMm[i + 1]) / 2;
        end = Math.min(stop, end);
        if (end > start) {
          arcs.add(new double[] {start, end, curve.bendPerMm[i], 1});
          start = end;
        }
      }
    }
  }
}
