package org.chordlog.capture;

/**
 * What is right while the bridge is rocked. HIGHEST: it tips from foot to foot, which lets the
 * plunger out. LOWEST: it is turned out of the bend plane on a round section, which pushes it in.
 */
public enum Extreme {
  HIGHEST(1),
  LOWEST(-1);

  private final int sign;

  Extreme(int sign) {
    this.sign = sign;
  }

  /** Times which the extreme is the highest. */
  int sign() {
    return sign;
  }
}
