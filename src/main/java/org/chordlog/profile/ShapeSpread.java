package org.chordlog.profile;

import java.util.List;
import java.util.function.IntToDoubleFunction;

/**
 * How an error of curvature along a path moves it: an arc's error δκ over its length Δ turns all
 * behind it, so a point p moves by δκΔ times a quarter turn of p − pᵢ.
 */
final class ShapeSpread {
  private final ArcPath path;
  private final List<Arc> arcs;
  private final double commonShare;
  private final double scatterPerMm;
  private final int windows;
  private final int end;
  private final int top;
  private final double chord;

  ShapeSpread(ArcPath path, List<Arc> arcs, PieceResult result, EvaluationSettings settings) {
    this.path = path;
    this.arcs = arcs;
    MeanBend mean = result.mean();
    double common =
        settings.model().estimateOfMean(mean.depthNm(), 0, 0).standardUncertaintyPerMm();
    double curvature = Math.abs(mean.radius().curvaturePerMm());
    commonShare = common / curvature;
    scatterPerMm = mean.samplePerMm() * Math.sqrt(mean.windows());
    windows = mean.windows();
    end = path.arcs();
    chord = Math.hypot(path.x[end], path.y[end]);
    top = highest();
  }

  private int highest() {
    int best = 0;
    for (int i = 0; i <= end; i++) {
      best = Math.abs(height(i)) > Math.abs(height(best)) ? i : best;
    }
    return best;
  }

  int top() {
    return top;
  }

  /** Height of a point over the chord from start to end. */
  double height(int point) {
    return chord == 0 ? 0 : (path.y[end] * path.x[point] - path.x[end] * path.y[point]) / chord;
  }

  double ofX() {
    return of(arc -> moveX(arc, end));
  }

  double ofY() {
    return of(arc -> moveY(arc, end));
  }

  double ofTurn() {
    return of(arc -> arcs.get(arc).lengthMm());
  }

  double ofChord() {
    return of(arc -> (path.x[end] * moveX(arc, end) + path.y[end] * moveY(arc, end)) / chord);
  }

  /** The height turns with the chord, too. */
  double ofRise() {
    double along = (path.x[end] * path.x[top] + path.y[end] * path.y[top]) / chord / chord;
    return of(arc -> across(arc, top) - along * across(arc, end));
  }

  private double across(int arc, int point) {
    return (path.y[end] * moveX(arc, point) - path.x[end] * moveY(arc, point)) / chord;
  }

  /** What one unit of curvature at an arc moves a point by. */
  private double moveX(int arc, int point) {
    return arc < point ? -arcs.get(arc).lengthMm() * (path.y[point] - path.middleY(arc)) : 0;
  }

  private double moveY(int arc, int point) {
    return arc < point ? arcs.get(arc).lengthMm() * (path.x[point] - path.middleX(arc)) : 0;
  }

  private double of(IntToDoubleFunction influence) {
    double common = 0;
    double[] sampled = new double[windows];
    for (int arc = 0; arc < end; arc++) {
      double moved = influence.applyAsDouble(arc);
      common += moved * arcs.get(arc).bendPerMm() * commonShare;
      sampled[arcs.get(arc).window()] += arcs.get(arc).bendPerMm() == 0 ? 0 : moved * scatterPerMm;
    }
    double sum = common * common;
    for (double window : sampled) {
      sum += window * window;
    }
    return Math.sqrt(sum);
  }
}
