package org.chordlog.profile;

/**
 * The part of a touch that is one piece, mm from where touch began. Where it is open the bend goes
 * on beyond it: a stretch of endless stock, numbered from 1; a whole piece has number 0.
 */
public record Part(double fromMm, double toMm, boolean openStart, boolean openEnd, int stretch) {
  static Part whole(double touchMm) {
    return new Part(0, touchMm, false, false, 0);
  }

  double lengthMm() {
    return toMm - fromMm;
  }
}
