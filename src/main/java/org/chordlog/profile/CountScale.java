package org.chordlog.profile;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;

/**
 * How counts of an encoder become lengths: mm a count, whether it counts down as the piece goes
 * forward, and after how many bits it starts over (16 or 32; 0: never).
 */
public record CountScale(double mmPerCount, boolean reversed, int bits) {
  public CountScale {
    Check.within("mmPerCount", mmPerCount, 1e-6, 1000);
    if (bits != 0 && bits != 16 && bits != 32) {
      throw new BadInput("bits", bits, "is not a width of a counter", "0, 16, 32");
    }
  }

  /**
   * The scale that a piece of known length gives, mm a count, from the counts at which touch began
   * and ended in one direction.
   */
  public static double calibrated(double statedMm, long countsOfPiece) {
    Check.positive("statedMm", statedMm);
    if (countsOfPiece == 0) {
      throw new BadInput("countsOfPiece", 0, "do not tell a length", "not 0");
    }
    return statedMm / Math.abs(countsOfPiece);
  }
}
