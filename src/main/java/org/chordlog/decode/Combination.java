package org.chordlog.decode;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;

/** Two channels of an indicator that together give the depth. */
public record Combination(Kind kind, int first, int second) {
  /** The channel number of combined values; those of an indicator are lower. */
  public static final int CHANNEL = 16;

  /** What is made of the two: first less second, or their mean (halves to even). */
  public enum Kind {
    DIFFERENCE {
      @Override
      long of(long firstNm, long secondNm) {
        return firstNm - secondNm;
      }
    },
    MEAN {
      @Override
      long of(long firstNm, long secondNm) {
        long sum = firstNm + secondNm;
        long floor = Math.floorDiv(sum, 2);
        return sum % 2 != 0 && floor % 2 != 0 ? floor + 1 : floor;
      }
    };

    abstract long of(long firstNm, long secondNm);
  }

  public Combination {
    kind = kind == null ? Kind.DIFFERENCE : kind;
    Check.within("first", first, 0, ProfileChannels.MOST);
    Check.within("second", second, 0, ProfileChannels.MOST);
    if (first == second) {
      throw new BadInput("second", second, "is the first channel too", "another channel");
    }
  }
}
