package org.chordlog.profile;

import java.util.ArrayList;
import java.util.List;

/**
 * The curve that a profile draws: the measured face from one place to another, mm. Where the bridge
 * could not stand the straight end and the fitted edge take the place of what was shown. Standard
 * uncertainties of chord, rise (greatest height over the chord), turn, and of how the end lies to
 * the start: what all places share adds up along the curve, what sampling adds does not.
 */
public record Shape(
    List<Point> points,
    Length chord,
    Length rise,
    Length turnDegrees,
    Length gapAlong,
    Length offsetAcross) {
  public Shape {
    points = List.copyOf(points);
  }

  /** A value with its standard uncertainty. */
  public record Length(double value, double standardUncertainty) {}

  /** A place on the curve; {@code measured} where the bridge stood on full bend. */
  public record Point(double placeMm, double xMm, double yMm, boolean measured) {}

  /** From where touch began to where it ended. */
  public static Shape of(
      Profile profile, Part part, PieceResult result, EvaluationSettings settings) {
    return of(profile, result, settings, part.fromMm(), part.toMm());
  }

  /**
   * As a ring is closed: from the middle of the rise to the middle of the fall. The gap along is
   * what is missing in the direction of the start (negative: overlap), the offset across towards
   * the centre; a turn of 360° closes without a kink.
   */
  public static Shape ofRing(Profile profile, PieceResult result, EvaluationSettings settings) {
    Zone zone = result.zone();
    double from = zone.start() == null ? zone.fromMm() : zone.start().placeMm();
    double to = zone.end() == null ? zone.toMm() : zone.end().placeMm();
    return of(profile, result, settings, from, to);
  }

  private static Shape of(
      Profile profile, PieceResult result, EvaluationSettings settings, double from, double to) {
    List<Arc> arcs = Arcs.of(profile, result, settings, from, to);
    ArcPath path = ArcPath.of(arcs);
    ShapeSpread spread = new ShapeSpread(path, arcs, result, settings);
    int end = path.arcs();
    int top = spread.top();
    return new Shape(
        points(path, arcs),
        new Length(Math.hypot(path.x[end], path.y[end]), spread.ofChord()),
        new Length(spread.height(top), spread.ofRise()),
        new Length(Math.toDegrees(path.heading[end]), Math.toDegrees(spread.ofTurn())),
        new Length(-path.x[end], spread.ofX()),
        new Length(path.y[end], spread.ofY()));
  }

  private static List<Point> points(ArcPath path, List<Arc> arcs) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < arcs.size(); i++) {
      points.add(new Point(arcs.get(i).fromMm(), path.x[i], path.y[i], arcs.get(i).measured()));
    }
    int end = arcs.size();
    points.add(new Point(arcs.get(end - 1).toMm(), path.x[end], path.y[end], false));
    return points;
  }
}
