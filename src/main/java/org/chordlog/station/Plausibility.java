package org.chordlog.station;

import org.chordlog.measure.Job;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * Asks before a depth far from the job's radius counts as a piece. What was confirmed once is not
 * asked again in that job. Used by the station's thread alone.
 */
final class Plausibility {
  /** Curvature against the target's: a bend that flat or that tight is asked about. */
  private static final double FLATTEST = 0.4;

  private static final double TIGHTEST = 2.5;
  private static final double LIKE_CONFIRMED = 1.5;
  private long jobId;
  private double confirmedPerMm;

  /** What is asked; null where the depth may count. */
  @Nullable Sentence question(Job job, RadiusEstimate radius) {
    double share = Math.abs(radius.curvaturePerMm()) * job.specification().targetMm();
    boolean far = share < FLATTEST || share > TIGHTEST;
    return far && !isLikeConfirmed(job, radius)
        ? Sentence.of(
            "R %s where %s is asked for: is this a piece of the job?",
            Quantity.fixed(1 / Math.abs(radius.curvaturePerMm()), 0),
            Quantity.stated(job.specification().targetMm()))
        : null;
  }

  private boolean isLikeConfirmed(Job job, RadiusEstimate radius) {
    double ratio = Math.abs(radius.curvaturePerMm()) / confirmedPerMm;
    return job.id() == jobId && ratio < LIKE_CONFIRMED && ratio > 1 / LIKE_CONFIRMED;
  }

  void confirm(Job job, RadiusEstimate radius) {
    jobId = job.id();
    confirmedPerMm = Math.abs(radius.curvaturePerMm());
  }
}
