package org.chordlog.profile;

import java.util.Locale;

/**
 * What a reader of a profile must know about it; nothing that is marked is left out of the mean.
 */
public record PieceMark(Kind kind, double placeMm, double amount) {
  /** What it is, and how it is said with its amount and place. */
  public enum Kind {
    /** A bump that was recognised by its two shadows; mm high. */
    BUMP("bump of %2$.3f mm on the face (seam, scale) at %1$.2f m"),
    /** The same downwards; mm deep. */
    DENT("dent of %2$.3f mm in the face at %1$.2f m"),
    /** Stands out from its neighbours; mm of depth. */
    SPOT("the depth stands out by %2$.3f mm at %1$.2f m"),
    /** Seconds. */
    STOPPED("the feed stood still for %2$.0f s at %1$.2f m"),
    /** mm. */
    JOGGED("run back by %2$.0f mm at %1$.2f m"),
    /** mm. */
    UNCHANGED("the value did not change along %2$.0f mm at %1$.2f m"),
    /** mm. */
    NO_VALUES("no values along %2$.0f mm at %1$.2f m"),
    /** Percent of the bins. */
    SPARSE("%2$.0f %% of the bins in the evaluated length are empty"),
    /** mm between values. */
    COARSE("values come each %2$.0f mm, coarser than a quarter of the half span"),
    /** Percent off the stated length. */
    LENGTH_DOUBTFUL("the touch is off the stated length by %2$.1f %%: lengths are not relied on"),
    /** mm apart. */
    EDGES_DISAGREE("the edge at %1$.2f m is %2$.0f mm from where it is stated to be"),
    /** Percent from one window to the next. */
    START_UNEVEN("the bend is not yet even at the start: %2$+.2f %%"),
    /** Percent. */
    END_UNEVEN("the bend is no longer even at the end: %2$+.2f %%"),
    /** Percent of the bins. */
    EARLIER_PASS("%2$.0f %% of the evaluated length were not passed in the last pass"),
    /** Percent between the means of the last two passes. */
    NO_CHANGE("no change in the last pass (%2$+.3f %%)"),
    /** Percent of the feed's tolerance. */
    STATED_FEED("by a stated feed (± %2$.0f %%): stops and reversals would not be seen");

    private final String words;

    Kind(String words) {
      this.words = words;
    }
  }

  /** One phrase for people. */
  public String words() {
    return String.format(Locale.ROOT, kind.words, placeMm / 1000, amount);
  }
}
