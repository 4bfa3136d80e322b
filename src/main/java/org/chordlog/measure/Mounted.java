package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/**
 * A bridge on a station. {@code otherAtMicros}: when another one was put on last; null where none
 * ever was.
 */
public record Mounted(Bridge bridge, @Nullable Long otherAtMicros) {
  /**
   * Whether a zero holds for it as it is mounted: one of another bridge does not, nor one that was
   * set before this bridge was taken off for another and put back, since it does not come to sit as
   * it did.
   */
  public boolean keeps(Zero zero) {
    return keeps(zero.bridgeId(), zero.takenAtMicros());
  }

  /** The same of what was found with that bridge at that time. */
  public boolean keeps(long bridgeId, long atMicros) {
    return bridgeId == bridge.id() && (otherAtMicros == null || atMicros >= otherAtMicros);
  }
}
