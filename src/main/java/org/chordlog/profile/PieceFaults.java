package org.chordlog.profile;

import org.chordlog.profile.Refused.Reason;
import org.jspecify.annotations.Nullable;

/** Why a piece can't be measured; the first fault found counts. */
final class PieceFaults {
  private static final long REVERSED_NM = 50_000_000;

  private final FineBins bins;
  private final boolean lengthMeasured;
  private final ValueWatch watch;
  private @Nullable Refused first;

  PieceFaults(TrackSettings settings, FineBins bins) {
    this.bins = bins;
    lengthMeasured = settings.source().measured();
    watch = new ValueWatch(settings.stepNm());
  }

  boolean none() {
    return first == null;
  }

  @Nullable Refused first() {
    return first;
  }

  void refuse(Refused why) {
    if (first == null) {
      first = why;
    }
  }

  /** No values came for a while. */
  void interrupted() {
    watch.interrupted();
  }

  /** A value at a place on the piece. */
  void at(long placeNm, long nanos, long depthNm, PieceFeed feed) {
    watch.unchanged(placeNm, depthNm, feed);
    if (lengthMeasured && first == null) {
      first = watch.at(placeNm, nanos, depthNm);
    }
    if (placeNm < -REVERSED_NM && feed.farthestNm() < REVERSED_NM) {
      refuse(
          new Refused(
              Reason.LENGTH_REVERSED,
              "The length fell from where the piece came in: it counts the other way, or the piece"
                  + " came in backwards."));
    }
    if (!bins.holds(placeNm)) {
      refuse(
          new Refused(
              Reason.PIECES_NOT_TOLD,
              "The touch is longer than 100 m: state the length of a stretch for endless stock."));
    }
  }
}
