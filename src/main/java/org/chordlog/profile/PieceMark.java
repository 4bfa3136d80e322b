package org.chordlog.profile;

import java.util.function.DoubleFunction;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;

/**
 * What a reader of a profile must know about it; nothing that is marked is left out of the mean.
 */
public record PieceMark(Kind kind, double placeMm, double amount) {
  /** What it is, and how it is said with its amount and place. */
  public enum Kind {
    /** A bump that was recognised by its two shadows; mm high. */
    BUMP("bump of %2$s on the face (seam, scale) at %1$s", PieceMark::depth),
    /** The same downwards; mm deep. */
    DENT("dent of %2$s in the face at %1$s", PieceMark::depth),
    /** Stands out from its neighbours; mm of depth. */
    SPOT("the depth stands out by %2$s at %1$s", PieceMark::depth),
    /** Seconds. */
    STOPPED("the feed stood still for %2$.0f s at %1$s"),
    /** mm. */
    JOGGED("run back by %2$s at %1$s", PieceMark::along),
    /** mm. */
    UNCHANGED("the value did not change along %2$s at %1$s", PieceMark::along),
    /** mm. */
    NO_VALUES("no values along %2$s at %1$s", PieceMark::along),
    /** Percent of the bins. */
    SPARSE("%2$.0f %% of the bins in the evaluated length are empty"),
    /** mm between values. */
    COARSE(
        "values come only every %2$s, coarser than a quarter of the half span", PieceMark::along),
    /** Percent off the stated length. */
    LENGTH_DOUBTFUL(
        "the touch is off the stated length by %2$s %%: lengths are not relied on",
        percent -> Lengths.signed(percent, 1)),
    /** mm apart. */
    EDGES_DISAGREE("the edge at %1$s is %2$s from where it is stated to be", PieceMark::along),
    /** Percent from one window to the next. */
    START_UNEVEN(
        "the bend is not yet even at the start: %2$s %%", percent -> Lengths.signed(percent, 2)),
    /** Percent. */
    END_UNEVEN(
        "the bend is no longer even at the end: %2$s %%", percent -> Lengths.signed(percent, 2)),
    /** Percent of the bins. */
    EARLIER_PASS("%2$.0f %% of the evaluated length were not passed in the last pass"),
    /** Percent between the means of the last two passes. */
    NO_CHANGE("no change in the last pass (%2$s %%)", percent -> Lengths.signed(percent, 3)),
    /** Percent of the feed's tolerance. */
    STATED_FEED("by a stated feed (± %2$.0f %%): stops and reversals would not be seen");

    private final String pattern;
    private final DoubleFunction<Object> said;

    Kind(String pattern) {
      this(pattern, amount -> amount);
    }

    Kind(String pattern, DoubleFunction<Object> said) {
      this.pattern = pattern;
      this.said = said;
    }
  }

  /** One phrase for people. */
  public Sentence words() {
    return Sentence.of(kind.pattern, along(placeMm), kind.said.apply(amount));
  }

  private static Quantity along(double mm) {
    return Quantity.fixed(mm, 0);
  }

  private static Quantity depth(double mm) {
    return Quantity.fixed(mm, 3);
  }
}
