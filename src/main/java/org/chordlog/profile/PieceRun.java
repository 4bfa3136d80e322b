package org.chordlog.profile;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A piece that ran through, as it was seen: its profile, those of the passes before the last, and
 * the fault that forbids a reading, if there was one.
 */
public record PieceRun(
    Part part, Profile profile, List<Profile> passes, Seen seen, @Nullable Refused fault) {
  /** The first and last sample and their times. */
  public record Seen(long firstSequence, long lastSequence, long beganNanos, long endedNanos) {
    /** Of a piece whose samples are not at hand. */
    static final Seen UNKNOWN = new Seen(0, 0, 0, 0);
  }

  public PieceRun {
    passes = List.copyOf(passes);
  }

  public long firstSequence() {
    return seen.firstSequence();
  }

  public long lastSequence() {
    return seen.lastSequence();
  }

  public long beganNanos() {
    return seen.beganNanos();
  }

  public long endedNanos() {
    return seen.endedNanos();
  }
}
