package org.chordlog.profile;

import org.chordlog.measure.Decimals;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;

/**
 * What a reader of a profile must know about it; nothing that is marked is left out of the mean.
 */
public record PieceMark(Kind kind, double placeMm, double amount) {
  /** What it is, and how it is said with its amount and place. */
  public enum Kind {
    /** A bump that was recognised by its two shadows; mm high. */
    BUMP("bump of %2$s on the face (seam, scale) at %1$s", As.DEPTH),
    /** The same downwards; mm deep. */
    DENT("dent of %2$s in the face at %1$s", As.DEPTH),
    /** Stands out from its neighbours; mm of depth. */
    SPOT("the depth stands out by %2$s at %1$s", As.DEPTH),
    /** Seconds. */
    STOPPED("the feed stood still for %2$.0f s at %1$s"),
    /** mm. */
    JOGGED("run back by %2$s at %1$s", As.PLACE),
    /** mm. */
    UNCHANGED("the value did not change along %2$s at %1$s", As.PLACE),
    /** mm. */
    NO_VALUES("no values along %2$s at %1$s", As.PLACE),
    /** Percent of the bins. */
    SPARSE("%2$.0f %% of the bins in the evaluated length are empty"),
    /** mm between values. */
    COARSE("values come only every %2$s, coarser than a quarter of the half span", As.PLACE),
    /** Percent off the stated length. */
    LENGTH_DOUBTFUL(
        "the touch is off the stated length by %2$s %%: lengths are not relied on", As.PERCENT_1),
    /** mm apart. */
    EDGES_DISAGREE("the edge at %1$s is %2$s from where it is stated to be", As.PLACE),
    /** Percent from one window to the next. */
    START_UNEVEN("the bend is not yet even at the start: %2$s %%", As.PERCENT_2),
    /** Percent. */
    END_UNEVEN("the bend is no longer even at the end: %2$s %%", As.PERCENT_2),
    /** Percent of the bins. */
    EARLIER_PASS("%2$.0f %% of the evaluated length were not passed in the last pass"),
    /** Percent between the means of the last two passes. */
    NO_CHANGE("no change in the last pass (%2$s %%)", As.PERCENT_3),
    /** Percent of the feed's tolerance. */
    STATED_FEED("by a stated feed (± %2$.0f %%): stops and reversals would not be seen");

    private final String pattern;
    private final As said;

    Kind(String pattern) {
      this(pattern, As.NUMBER);
    }

    Kind(String pattern, As said) {
      this.pattern = pattern;
      this.said = said;
    }
  }

  /** What the amount of a mark is, and so how it is said. */
  private enum As {
    NUMBER,
    PLACE,
    DEPTH,
    PERCENT_1,
    PERCENT_2,
    PERCENT_3;

    Object of(double amount) {
      return switch (this) {
        case NUMBER -> amount;
        case PLACE -> along(amount);
        case DEPTH -> depth(amount);
        case PERCENT_1 -> Decimals.signed(amount, 1);
        case PERCENT_2 -> Decimals.signed(amount, 2);
        case PERCENT_3 -> Decimals.signed(amount, 3);
      };
    }
  }

  /** One phrase for people. */
  public Sentence words() {
    return Sentence.of(kind.pattern, along(placeMm), kind.said.of(amount));
  }

  private static Quantity along(double mm) {
    return Quantity.fixed(mm, 0);
  }

  private static Quantity depth(double mm) {
    return Quantity.fixed(mm, 3);
  }
}
