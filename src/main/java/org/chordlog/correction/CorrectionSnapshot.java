package org.chordlog.correction;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Everything that a machine's filter has to say at one moment. {@code setting}: number on the scale
 * as far as it follows from what was recorded, else null; {@code rest}: only after a reading near
 * the start of a piece; {@code start}: where to set the scale, only until the first piece.
 */
public record CorrectionSnapshot(
    Advice advice,
    List<Notice> notices,
    Learned learned,
    @Nullable Double setting,
    @Nullable StartSetting start,
    @Nullable RestOfPiece rest,
    List<TrailPoint> trail) {
  /**
   * {@code scatterMm}: standard deviation of pieces about their level; {@code promises}: how often
   * followed advice improved the level.
   */
  public record Learned(
      MachineScale scale,
      @Nullable GainEstimate gain,
      double scatterMm,
      @Nullable Readiness readiness,
      Kept promises) {}

  /** Advice that was followed, how often the level improved, and the mean of what was stated. */
  public record Kept(long given, long kept, double meanStated) {}

  CorrectionSnapshot with(Advice other) {
    return new CorrectionSnapshot(other, notices, learned, setting, start, rest, trail);
  }

  CorrectionSnapshot with(@Nullable RestOfPiece restOfPiece) {
    return new CorrectionSnapshot(advice, notices, learned, setting, start, restOfPiece, trail);
  }
}
