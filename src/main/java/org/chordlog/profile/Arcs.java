package org.chordlog.profile;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.radius.Faces;
import org.jspecify.annotations.Nullable;

/**
 * Divides a piece into arcs: straight ends, fitted edges as even rises up to the level next to
 * them, and in between a bin each.
 */
final class Arcs {
  private static final double STEP_MM = 5;

  private final Zone zone;
  private final PieceResult result;
  private final double faceStepMm;
  private final Curve curve;
  private final double startLevel;
  private final double endLevel;
  private final List<Arc> arcs = new ArrayList<>();

  private Arcs(Profile profile, PieceResult result, EvaluationSettings settings) {
    this.result = result;
    zone = result.zone();
    faceStepMm =
        Faces.stepMm(
            settings.model().setUp().section(),
            settings.model().setUp().measuredFace(),
            settings.lengthFace());
    curve = Curve.of(profile, settings.model(), zone.fromMm(), zone.toMm());
    double span = settings.model().spanMm();
    startLevel = curve.between(zone.fromMm(), zone.fromMm() + span).mean();
    endLevel = curve.between(zone.toMm() - span, zone.toMm()).mean();
  }

  /** From one place to another. */
  static List<Arc> of(
      Profile profile, PieceResult result, EvaluationSettings settings, double from, double to) {
    Arcs made = new Arcs(profile, result, settings);
    made.fitted(from, Math.min(to, made.zone.fromMm()));
    made.measured(Math.max(from, made.zone.fromMm()), Math.min(to, made.zone.toMm()));
    made.fitted(Math.max(from, made.zone.toMm()), to);
    return List.copyOf(made.arcs);
  }

  private void fitted(double start, double end) {
    for (double s = start; s < end; s += STEP_MM) {
      double stop = Math.min(end, s + STEP_MM);
      add(s, stop, fitted((s + stop) / 2), false);
    }
  }

  private void add(double from, double to, double bend, boolean measured) {
    int w = (int) Math.floor(((from + to) / 2 - zone.fromMm()) / result.windowMm());
    int window = Math.max(0, Math.min(result.mean().windows() - 1, w));
    double length = onMeasuredFace(to - from, bend, faceStepMm);
    arcs.add(new Arc(from, to, length, bend, measured, window));
  }

  /** Length along the measured face of one along another, which is that much further out. */
  static double onMeasuredFace(double lengthMm, double bendPerMm, double faceStepMm) {
    return lengthMm / (1 + faceStepMm * bendPerMm);
  }

  private double fitted(double placeMm) {
    if (placeMm < zone.fromMm()) {
      return startLevel * rise(zone.start(), placeMm, 1);
    }
    return endLevel * rise(zone.end(), placeMm, -1);
  }

  private static double rise(@Nullable Edge edge, double placeMm, int sign) {
    if (edge == null) {
      return 1;
    }
    double beyond = sign * (placeMm - edge.placeMm());
    double sharp = beyond < 0 ? 0 : 1;
    return edge.riseMm() == 0 ? sharp : Math.max(0, Math.min(1, 0.5 + beyond / edge.riseMm()));
  }

  /** From half way to the bin before to half way to the next. */
  private void measured(double start, double stop) {
    double from = start;
    for (int i = 0; i < curve.size(); i++) {
      boolean last = i == curve.size() - 1;
      double half = last ? stop : (curve.placeMm[i] + curve.placeMm[i + 1]) / 2;
      double to = Math.min(stop, half);
      if (to > from) {
        add(from, to, curve.bendPerMm[i], true);
        from = to;
      }
    }
  }
}
