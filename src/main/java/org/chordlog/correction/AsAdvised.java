package org.chordlog.correction;

import java.util.List;
import java.util.Optional;
import org.chordlog.correction.TrailPoint.Kind;

/**
 * The newest pieces of a job as they were bent, and as they would have been had each advice been
 * followed: the effect of what was done is taken off each piece, that of the advice put on, both by
 * what one unit of the scale was found to do. Lost motion and errors of moves are left out.
 */
public record AsAdvised(int pieces, Course bent, Course advised, Doubt doubt) {
  private static final int LEAST_PIECES = 10;

  /** Standard uncertainties of the gain that {@link Doubt} covers. */
  private static final double COVERAGE = 2;

  /** Root mean square deviation from the target, pieces out of tolerance, corrections. */
  public record Course(double rootMeanSquareMm, int out, int corrections) {}

  /**
   * As advised, if one unit of the scale did less or more than it was found to do, by {@code
   * relative} of it (k = 2).
   */
  public record Doubt(double relative, Course less, Course more) {}

  /**
   * {@code job}: a machine's trail while that job was on it. What was before another target or
   * scale, or before a correction that nobody knows the amount of, can't be compared and is left
   * out. Empty where fewer than ten pieces are left, or where the gain is known so badly that no
   * amount can be named.
   */
  public static Optional<AsAdvised> of(
      List<TrailPoint> job, Aim aim, MachineScale scale, Tuning tuning) {
    List<TrailPoint> compared = job.subList(firstOfRest(job, aim), job.size());
    long pieces = compared.stream().filter(each -> each.kind() == Kind.PIECE).count();
    if (pieces < LEAST_PIECES) {
      return Optional.empty();
    }
    TrailPoint.Gain gain = compared.get(compared.size() - 1).gain();
    double range = COVERAGE * gain.standardUncertainty() / Math.abs(gain.perMmPerUnit());
    return range < 1
        ? Optional.of(of(new AdvisedReplay.Past(compared, aim, scale, tuning), range))
        : Optional.empty();
  }

  private static AsAdvised of(AdvisedReplay.Past past, double range) {
    AdvisedReplay found = AdvisedReplay.of(past, 1);
    return new AsAdvised(
        found.pieces(),
        found.bent(),
        found.advised(),
        new Doubt(
            range,
            AdvisedReplay.of(past, 1 - range).advised(),
            AdvisedReplay.of(past, 1 + range).advised()));
  }

  /** Index of the first point after all that can't be compared. */
  private static int firstOfRest(List<TrailPoint> job, Aim aim) {
    int first = job.size();
    while (first > 0 && comparable(job.get(first - 1), aim)) {
      first--;
    }
    return first;
  }

  private static boolean comparable(TrailPoint point, Aim aim) {
    return switch (point.kind()) {
      case CORRECTION -> !Double.isNaN(point.move().done());
      case TARGET, SCALE -> false;
      case PIECE, LOT, SET_UP -> point.where().targetMm() == aim.targetMm();
    };
  }
}
