package org.chordlog.profile;

import org.jspecify.annotations.Nullable;

/**
 * The evaluated length of a piece, mm from where touch began, and the edges it lies between; an
 * edge is null where the bend goes on.
 */
public record Zone(double fromMm, double toMm, @Nullable Edge start, @Nullable Edge end) {
  public double lengthMm() {
    return toMm - fromMm;
  }
}
