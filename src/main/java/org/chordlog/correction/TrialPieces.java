package org.chordlog.correction;

import java.util.OptionalInt;
import org.chordlog.measure.Check;

/**
 * How many trial pieces a set-up needs. After n of them, each answered by 1/n of its error, the
 * level is known to σ/√n, so the next piece varies by σ√(1 + 1/n) about the target.
 */
final class TrialPieces {
  /** Capability commonly asked for (common practice, no source). */
  static final double ASKED = 1.33;

  private TrialPieces() {}

  /** √(1 + 1/n). */
  static double spreadFactor(int pieces) {
    return Math.sqrt(1 + 1.0 / Check.within("pieces", pieces, 1, Integer.MAX_VALUE));
  }

  /** Capability of the pieces that the next one needs for it to be as good as {@link #ASKED}. */
  static double capabilityNeeded(int pieces) {
    return ASKED * spreadFactor(pieces);
  }

  /** Least n with an effective capability of {@link #ASKED}; empty if no number is enough. */
  static OptionalInt needed(double capability) {
    double ratio = Check.positive("capability", capability) / ASKED;
    double room = ratio * ratio - 1;
    return room > 1e-9 && 1 / room < Integer.MAX_VALUE
        ? OptionalInt.of((int) Math.ceil(1 / room))
        : OptionalInt.empty();
  }
}
