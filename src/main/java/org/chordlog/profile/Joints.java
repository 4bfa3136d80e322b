package org.chordlog.profile;

import java.util.ArrayList;
import java.util.List;

/**
 * Notes while a touch goes on where two pieces may have met: the depth was below half of what it
 * had been over nearly a span, and rose again. O(1) a bin.
 */
final class Joints {
  private static final double NEARLY = 0.8;
  private static final double SMOOTHING = 0.2;

  /** Place and first sample of what may be the next piece's bend. */
  record Joint(double placeMm, long sequence, long nanos) {}

  private final List<Joint> joints = new ArrayList<>();
  private final double spanMm;
  private final double leastLevel;
  private double smoothed;
  private double level;
  private double lowFromMm = Double.NaN;

  /** A level below the least is no bend. */
  Joints(double spanMm, double leastLevel) {
    this.spanMm = spanMm;
    this.leastLevel = leastLevel;
  }

  /** A depth, positive in the sense of the bend, at a place not reached before. */
  void at(double placeMm, double depth, long sequence, long nanos) {
    smoothed += SMOOTHING * (depth - smoothed);
    level = Math.max(level, smoothed);
    if (level > leastLevel && 2 * smoothed < level) {
      lowFromMm = Double.isNaN(lowFromMm) ? placeMm : lowFromMm;
      return;
    }
    if (placeMm - lowFromMm > NEARLY * spanMm) {
      joints.add(new Joint(placeMm, sequence, nanos));
    }
    lowFromMm = Double.NaN;
  }

  /** Whether a joint is a whole span behind that place, so that it is time to look for it. */
  boolean dueAt(double placeMm) {
    return !joints.isEmpty() && placeMm > joints.get(0).placeMm() + spanMm;
  }

  /** The joint at a cut, which is where the bend behind it begins; that and those before it go. */
  Joint take(double cutMm) {
    Joint found = joints.remove(0);
    while (!joints.isEmpty() && found.placeMm() < cutMm) {
      found = joints.remove(0);
    }
    return found;
  }

  boolean behind(double cutMm) {
    return joints.stream().anyMatch(joint -> joint.placeMm() >= cutMm);
  }

  /** Forgets those before a place, which were none. */
  void dropBefore(double placeMm) {
    joints.removeIf(joint -> joint.placeMm() < placeMm);
  }
}
