package org.chordlog.profile;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A piece that ran through, as it was seen: its profile, those of the passes before the last, the
 * first and last sample and their times, and the fault that forbids a reading, if there was one.
 */
public record PieceRun(
    Part part,
    Profile profile,
    List<Profile> passes,
    long firstSequence,
    long lastSequence,
    long beganNanos,
    long endedNanos,
    @Nullable Refused fault) {
  public PieceRun {
    passes = List.copyOf(passes);
  }
}
