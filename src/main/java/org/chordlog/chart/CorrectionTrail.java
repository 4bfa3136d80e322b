package org.chordlog.chart;

import java.util.List;
import org.chordlog.correction.CorrectionSnapshot;
import org.chordlog.correction.TrailPoint;
import org.chordlog.measure.Lengths;

/**
 * The newest pieces and events of a machine as its correction filter saw them; {@code unit} is that
 * of the scale by which the rollers are set, {@code lengths} say those of the piece.
 */
public record CorrectionTrail(
    String machine, String unit, List<TrailPoint> points, Lengths lengths) {
  public CorrectionTrail {
    points = List.copyOf(points);
  }

  public static CorrectionTrail of(String machine, CorrectionSnapshot now) {
    return new CorrectionTrail(machine, now.learned().scale().unit(), now.trail(), Lengths.MM);
  }

  /** That job's part of it. */
  public CorrectionTrail ofJob(long job) {
    return new CorrectionTrail(
        machine, unit, points.stream().filter(each -> each.where().job() == job).toList(), lengths);
  }

  CorrectionTrail in(Lengths other) {
    return new CorrectionTrail(machine, unit, points, other);
  }

  /** How many pieces there are in it. */
  public int pieces() {
    return (int) points.stream().filter(each -> each.kind() == TrailPoint.Kind.PIECE).count();
  }

  /** Whether there is anything to draw. */
  public boolean measured() {
    return pieces() > 0;
  }
}
