package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/** Everything but the depth that a radius is computed from; stored with each reading. */
public record SetUp(
    Bridge bridge,
    Indicator indicator,
    @Nullable Zero zero,
    @Nullable Calibration calibration,
    Section section,
    Face measuredFace,
    Face specifiedFace) {
  public SetUp {
    if (measuredFace == Face.CENTRELINE) {
      throw new BadInput("measuredFace", measuredFace, "can't carry a bridge", "OUTER, INNER");
    }
  }
}
